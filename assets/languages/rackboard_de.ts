<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de">
<context>
    <name>About</name>
    <message>
        <source>Shipped with rackboard:</source>
        <translation>Mit rackboard ausgeliefert:</translation>
    </message>
    <message>
        <source>Used by rackboard, installed beside it:</source>
        <translation>Von rackboard benutzt, daneben installiert:</translation>
    </message>
    <message>
        <source>rackboard says what each glued golf-club joint on the drying rack may bear: do not move, off the rack, safe to hit.

It estimates; it does not measure the bond. It knows the epoxy&apos;s sheet and the recorded temperature. It knows nothing of a mix off its ratio, a wrong sheet, humidity, how the joint was prepared, or the heat of a large mix. When in doubt the club isn&apos;t hit.</source>
        <translation>rackboard sagt, was jede Schlägerklebung im Trockenständer aushält: nicht bewegen, vom Ständer, schlagfest.

Es schätzt; es misst die Klebung nicht. Es kennt das Datenblatt des Epoxids und die aufgezeichnete Temperatur. Es weiß nichts von falscher Mischung, falschem Datenblatt, Feuchte, der Vorbereitung der Klebung oder der Wärme eines großen Ansatzes. Im Zweifel wird mit dem Schläger nicht geschlagen.</translation>
    </message>
</context>
<context>
    <name>AboutDialog</name>
    <message>
        <source>About rackboard {0}</source>
        <translation>Über rackboard {0}</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Licence</source>
        <translation>Lizenz</translation>
    </message>
    <message>
        <source>Licences of the parts</source>
        <translation>Lizenzen der Teile</translation>
    </message>
</context>
<context>
    <name>Act</name>
    <message>
        <source>READY</source>
        <translation>FERTIG</translation>
    </message>
    <message>
        <source>a batch that isn&apos;t mixed yet</source>
        <translation>ein Ansatz, der noch nicht gemischt ist</translation>
    </message>
    <message>
        <source>a club that lies somewhere</source>
        <translation>ein Schläger, der irgendwo liegt</translation>
    </message>
    <message>
        <source>a customer who isn&apos;t erased</source>
        <translation>ein Kunde, der nicht gelöscht ist</translation>
    </message>
    <message>
        <source>a fact that is another</source>
        <translation>eine andere Angabe</translation>
    </message>
    <message>
        <source>a glued joint</source>
        <translation>eine geklebte Klebung</translation>
    </message>
    <message>
        <source>a job number</source>
        <translation>eine Auftragsnummer</translation>
    </message>
    <message>
        <source>a mixed batch</source>
        <translation>ein gemischter Ansatz</translation>
    </message>
    <message>
        <source>a name</source>
        <translation>ein Name</translation>
    </message>
    <message numerus="yes">
        <source>a name in one line, up to %n characters</source>
        <translation>
            <numerusform>ein Name in einer Zeile, höchstens %n Zeichen</numerusform>
            <numerusform>ein Name in einer Zeile, höchstens %n Zeichen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>a reason in up to %n letters</source>
        <translation>
            <numerusform>ein Grund mit höchstens %n Zeichen</numerusform>
            <numerusform>ein Grund mit höchstens %n Zeichen</numerusform>
        </translation>
    </message>
    <message>
        <source>a slot of its own for every club</source>
        <translation>ein eigener Platz für jeden Schläger</translation>
    </message>
    <message>
        <source>a slot of {place}</source>
        <translation>ein Platz von {place}</translation>
    </message>
    <message>
        <source>a temperature that was typed</source>
        <translation>eine eingetippte Temperatur</translation>
    </message>
    <message>
        <source>a time after batch {number} was mixed, {time}</source>
        <translation>eine Zeit nach dem Mischen von Ansatz {number}, {time}</translation>
    </message>
    <message>
        <source>a time up to now, {now}</source>
        <translation>eine Zeit bis jetzt, {now}</translation>
    </message>
    <message>
        <source>a zone of the shop</source>
        <translation>eine Zone der Werkstatt</translation>
    </message>
    <message>
        <source>a zone with a source</source>
        <translation>eine Zone mit einer Quelle</translation>
    </message>
    <message>
        <source>add {place}</source>
        <translation>{place} hinzufügen</translation>
    </message>
    <message>
        <source>all racked</source>
        <translation>alle im Ständer</translation>
    </message>
    <message>
        <source>an epoxy from the shelf</source>
        <translation>ein Epoxid aus dem Regal</translation>
    </message>
    <message>
        <source>an hour off after the hour on</source>
        <translation>eine Aus-Zeit nach der Ein-Zeit</translation>
    </message>
    <message>
        <source>another place</source>
        <translation>ein anderer Ort</translation>
    </message>
    <message>
        <source>answer: {outcome}</source>
        <translation>Antwort: {outcome}</translation>
    </message>
    <message>
        <source>at least one club</source>
        <translation>mindestens ein Schläger</translation>
    </message>
    <message numerus="yes">
        <source>at most %n clubs in a job</source>
        <translation>
            <numerusform>höchstens %n Schläger in einem Auftrag</numerusform>
            <numerusform>höchstens %n Schläger in einem Auftrag</numerusform>
        </translation>
    </message>
    <message>
        <source>batch</source>
        <translation>Ansatz</translation>
    </message>
    <message>
        <source>batch {number}</source>
        <translation>Ansatz {number}</translation>
    </message>
    <message>
        <source>batch {number}, not mixed</source>
        <translation>Ansatz {number}, nicht gemischt</translation>
    </message>
    <message>
        <source>change {place}</source>
        <translation>{place} ändern</translation>
    </message>
    <message>
        <source>club</source>
        <translation>Schläger</translation>
    </message>
    <message>
        <source>correct</source>
        <translation>berichtigen</translation>
    </message>
    <message>
        <source>correct batch {number}</source>
        <translation>Ansatz {number} berichtigen</translation>
    </message>
    <message>
        <source>correct the names of {one} and {two}</source>
        <translation>Namen von {one} und {two} berichtigen</translation>
    </message>
    <message>
        <source>correct the notches of {one} and {two}</source>
        <translation>Kerben von {one} und {two} berichtigen</translation>
    </message>
    <message>
        <source>correct {club}</source>
        <translation>{club} berichtigen</translation>
    </message>
    <message>
        <source>customer</source>
        <translation>Kunde</translation>
    </message>
    <message>
        <source>dark, light or the system&apos;s</source>
        <translation>dunkel, hell oder wie das System</translation>
    </message>
    <message>
        <source>demo readings</source>
        <translation>Messwerte der Demo</translation>
    </message>
    <message>
        <source>disturbed</source>
        <translation>bewegt</translation>
    </message>
    <message>
        <source>epoxy</source>
        <translation>Epoxid</translation>
    </message>
    <message>
        <source>erase customer</source>
        <translation>Kunden löschen</translation>
    </message>
    <message>
        <source>found the shop</source>
        <translation>Werkstatt anlegen</translation>
    </message>
    <message>
        <source>furnish the demo</source>
        <translation>Demo einrichten</translation>
    </message>
    <message>
        <source>glued at</source>
        <translation>geklebt um</translation>
    </message>
    <message>
        <source>high contrast</source>
        <translation>hoher Kontrast</translation>
    </message>
    <message>
        <source>import record</source>
        <translation>Aufzeichnung einlesen</translation>
    </message>
    <message>
        <source>initials</source>
        <translation>Kürzel</translation>
    </message>
    <message numerus="yes">
        <source>initials, up to %n letters</source>
        <translation>
            <numerusform>ein Kürzel mit höchstens %n Buchstaben</numerusform>
            <numerusform>ein Kürzel mit höchstens %n Buchstaben</numerusform>
        </translation>
    </message>
    <message>
        <source>job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>job number</source>
        <translation>Auftragsnummer</translation>
    </message>
    <message>
        <source>job {number}</source>
        <translation>Auftrag {number}</translation>
    </message>
    <message>
        <source>language</source>
        <translation>Sprache</translation>
    </message>
    <message>
        <source>last look at batch {number}</source>
        <translation>letzter Blick auf Ansatz {number}</translation>
    </message>
    <message>
        <source>lay out job {number}</source>
        <translation>Auftrag {number} anlegen</translation>
    </message>
    <message>
        <source>mix batch {number}</source>
        <translation>Ansatz {number} mischen</translation>
    </message>
    <message>
        <source>mixed at</source>
        <translation>gemischt um</translation>
    </message>
    <message>
        <source>mixed now</source>
        <translation>jetzt gemischt</translation>
    </message>
    <message>
        <source>move</source>
        <translation>umstellen</translation>
    </message>
    <message>
        <source>move {club} to {place}</source>
        <translation>{club} nach {place} stellen</translation>
    </message>
    <message>
        <source>moved after its working life</source>
        <translation>nach der Topfzeit bewegt</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keiner</translation>
    </message>
    <message>
        <source>not READY</source>
        <translation>nicht FERTIG</translation>
    </message>
    <message>
        <source>not mixed</source>
        <translation>nicht gemischt</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>notices and sounds</source>
        <translation>Meldungen und Töne</translation>
    </message>
    <message>
        <source>on at {on}, off at {off}</source>
        <translation>ein um {on}, aus um {off}</translation>
    </message>
    <message>
        <source>one temperature for one moment</source>
        <translation>eine Temperatur für einen Zeitpunkt</translation>
    </message>
    <message>
        <source>one that is</source>
        <translation>eine, die es gibt</translation>
    </message>
    <message>
        <source>opening hours</source>
        <translation>Öffnungszeiten</translation>
    </message>
    <message>
        <source>order of the places</source>
        <translation>Reihenfolge der Orte</translation>
    </message>
    <message>
        <source>order of the zones</source>
        <translation>Reihenfolge der Zonen</translation>
    </message>
    <message>
        <source>promise</source>
        <translation>Zusage</translation>
    </message>
    <message>
        <source>rack batch {number}</source>
        <translation>Ansatz {number} in den Ständer stellen</translation>
    </message>
    <message>
        <source>re-aimed</source>
        <translation>neu ausgerichtet</translation>
    </message>
    <message>
        <source>re-glue {club}</source>
        <translation>{club} neu kleben</translation>
    </message>
    <message>
        <source>re-glued</source>
        <translation>neu geklebt</translation>
    </message>
    <message>
        <source>reduced motion</source>
        <translation>weniger Bewegung</translation>
    </message>
    <message>
        <source>release</source>
        <translation>freigeben</translation>
    </message>
    <message>
        <source>release {club}</source>
        <translation>{club} freigeben</translation>
    </message>
    <message>
        <source>released by</source>
        <translation>freigegeben von</translation>
    </message>
    <message>
        <source>remove {place}</source>
        <translation>{place} entfernen</translation>
    </message>
    <message>
        <source>retire epoxy</source>
        <translation>Epoxid ausmustern</translation>
    </message>
    <message>
        <source>save {epoxy}</source>
        <translation>{epoxy} speichern</translation>
    </message>
    <message>
        <source>shop name</source>
        <translation>Name der Werkstatt</translation>
    </message>
    <message>
        <source>slot</source>
        <translation>Platz</translation>
    </message>
    <message>
        <source>slots</source>
        <translation>Plätze</translation>
    </message>
    <message>
        <source>swap</source>
        <translation>tauschen</translation>
    </message>
    <message>
        <source>swap {one} and {two}</source>
        <translation>{one} und {two} tauschen</translation>
    </message>
    <message>
        <source>temperature unit</source>
        <translation>Temperatureinheit</translation>
    </message>
    <message>
        <source>temperatures</source>
        <translation>Temperaturen</translation>
    </message>
    <message>
        <source>the initials of who released it</source>
        <translation>das Kürzel dessen, der freigab</translation>
    </message>
    <message>
        <source>the initials of who releases it</source>
        <translation>das Kürzel dessen, der freigibt</translation>
    </message>
    <message>
        <source>the lowest of the night, so no more than the {end} beside it</source>
        <translation>der Tiefstwert der Nacht, also nicht mehr als die {end} daneben</translation>
    </message>
    <message>
        <source>the same slot twice</source>
        <translation>derselbe Platz zweimal</translation>
    </message>
    <message>
        <source>theme</source>
        <translation>Farben</translation>
    </message>
    <message>
        <source>two clubs</source>
        <translation>zwei Schläger</translation>
    </message>
    <message>
        <source>two clubs that lie somewhere</source>
        <translation>zwei Schläger, die irgendwo liegen</translation>
    </message>
    <message>
        <source>two names</source>
        <translation>zwei Namen</translation>
    </message>
    <message>
        <source>type {zone} temperature</source>
        <translation>Temperatur von {zone} eintippen</translation>
    </message>
    <message>
        <source>use epoxy again</source>
        <translation>Epoxid wieder benutzen</translation>
    </message>
    <message>
        <source>viewing distance</source>
        <translation>Betrachtungsabstand</translation>
    </message>
    <message>
        <source>zone</source>
        <translation>Zone</translation>
    </message>
    <message>
        <source>{club} is at {place}</source>
        <translation>{club} liegt in {place}</translation>
    </message>
    <message>
        <source>{club}, not glued</source>
        <translation>{club}, nicht geklebt</translation>
    </message>
    <message>
        <source>{club}, taken apart already</source>
        <translation>{club}, schon gelöst</translation>
    </message>
    <message>
        <source>{club}, which lies nowhere</source>
        <translation>{club}, der nirgends liegt</translation>
    </message>
    <message>
        <source>{new} beside {kept}</source>
        <translation>{new} neben {kept}</translation>
    </message>
    <message>
        <source>{time}, in the future</source>
        <translation>{time}, in der Zukunft</translation>
    </message>
    <message>
        <source>{zone}: heating</source>
        <translation>{zone}: Heizung</translation>
    </message>
    <message>
        <source>{zone}: lowest of the night</source>
        <translation>{zone}: Tiefstwert der Nacht</translation>
    </message>
    <message>
        <source>{zone}: no temperature source</source>
        <translation>{zone}: keine Temperaturquelle</translation>
    </message>
    <message>
        <source>{zone}: temperature source</source>
        <translation>{zone}: Temperaturquelle</translation>
    </message>
</context>
<context>
    <name>Alert</name>
    <message>
        <source>Accept the
later times</source>
        <translation>Spätere Zeiten
annehmen</translation>
    </message>
    <message>
        <source>Alert</source>
        <translation>Meldung</translation>
    </message>
    <message>
        <source>Answer for {where} {club}…</source>
        <translation>Antworten zu {where} {club}…</translation>
    </message>
    <message>
        <source>Answer…</source>
        <translation>Antworten…</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Customer reached</source>
        <translation>Kunde erreicht</translation>
    </message>
    <message>
        <source>Got it</source>
        <translation>Gesehen</translation>
    </message>
    <message>
        <source>In 1 h</source>
        <translation>In 1 h</translation>
    </message>
    <message>
        <source>In 15 min</source>
        <translation>In 15 min</translation>
    </message>
    <message>
        <source>In 2 h</source>
        <translation>In 2 h</translation>
    </message>
    <message>
        <source>Nothing is open.</source>
        <translation>Nichts ist offen.</translation>
    </message>
    <message>
        <source>Nothing seen</source>
        <translation>Nichts zu sehen</translation>
    </message>
    <message>
        <source>Remind me
later…</source>
        <translation>Später
erinnern…</translation>
    </message>
    <message>
        <source>Show on
the board</source>
        <translation>Auf der
Tafel zeigen</translation>
    </message>
    <message>
        <source>since {time}: {state}</source>
        <translation>seit {time}: {state}</translation>
    </message>
    <message>
        <source>since {time}: {state} until {until}</source>
        <translation>seit {time}: {state} bis {until}</translation>
    </message>
</context>
<context>
    <name>AlertFact</name>
    <message numerus="yes">
        <source>%n clubs</source>
        <comment>1 club</comment>
        <translation>
            <numerusform>1 Schläger</numerusform>
            <numerusform>%n Schläger</numerusform>
        </translation>
    </message>
    <message>
        <source>asked, no answer</source>
        <translation>gefragt, keine Antwort</translation>
    </message>
    <message>
        <source>batch {batch}, {clubs}</source>
        <translation>Ansatz {batch}, {clubs}</translation>
    </message>
    <message>
        <source>knocked, pulled or turned</source>
        <translation>angestoßen, gezogen oder gedreht</translation>
    </message>
    <message>
        <source>last {air}</source>
        <translation>zuletzt {air}</translation>
    </message>
    <message>
        <source>not working: {reason}</source>
        <translation>geht nicht: {reason}</translation>
    </message>
    <message numerus="yes">
        <source>shown %n times</source>
        <comment>shown</comment>
        <translation>
            <numerusform>gezeigt</numerusform>
            <numerusform>%n-mal gezeigt</numerusform>
        </translation>
    </message>
    <message>
        <source>up to {air}, at most {limit}</source>
        <translation>bis {air}, höchstens {limit}</translation>
    </message>
    <message>
        <source>{air}, below {limit}</source>
        <translation>{air}, unter {limit}</translation>
    </message>
    <message>
        <source>{courier}: {did}</source>
        <translation>{courier}: {did}</translation>
    </message>
    <message>
        <source>{one}; {other}</source>
        <translation>{one}; {other}</translation>
    </message>
    <message>
        <source>“off the rack” of {time}</source>
        <translation>„vom Ständer“ von {time}</translation>
    </message>
    <message>
        <source>“safe to hit” of {time}</source>
        <translation>„schlagfest“ von {time}</translation>
    </message>
</context>
<context>
    <name>AlertKind</name>
    <message>
        <source>cold</source>
        <translation>kalt</translation>
    </message>
    <message>
        <source>disturbed</source>
        <translation>bewegt</translation>
    </message>
    <message>
        <source>last look</source>
        <translation>letzter Blick</translation>
    </message>
    <message>
        <source>no temperature</source>
        <translation>keine Temperatur</translation>
    </message>
    <message>
        <source>off the rack</source>
        <translation>vom Ständer</translation>
    </message>
    <message>
        <source>permission withdrawn</source>
        <translation>Freigabe zurückgezogen</translation>
    </message>
    <message>
        <source>too hot</source>
        <translation>zu heiß</translation>
    </message>
    <message>
        <source>whole job safe to hit</source>
        <translation>ganzer Auftrag schlagfest</translation>
    </message>
    <message>
        <source>working life over</source>
        <translation>Topfzeit vorbei</translation>
    </message>
</context>
<context>
    <name>AlertOutcome</name>
    <message>
        <source>back on the rack</source>
        <translation>zurück im Ständer</translation>
    </message>
    <message>
        <source>corrected</source>
        <translation>berichtigt</translation>
    </message>
    <message>
        <source>customer reached</source>
        <translation>Kunde erreicht</translation>
    </message>
    <message>
        <source>ended</source>
        <translation>beendet</translation>
    </message>
    <message>
        <source>got it</source>
        <translation>gesehen</translation>
    </message>
    <message>
        <source>never left the rack</source>
        <translation>war nie vom Ständer</translation>
    </message>
    <message>
        <source>no longer watched</source>
        <translation>nicht mehr beobachtet</translation>
    </message>
    <message>
        <source>over</source>
        <translation>vorbei</translation>
    </message>
    <message>
        <source>re-glued</source>
        <translation>neu geklebt</translation>
    </message>
    <message>
        <source>released by {who}</source>
        <translation>freigegeben von {who}</translation>
    </message>
    <message>
        <source>undone</source>
        <translation>rückgängig gemacht</translation>
    </message>
    <message>
        <source>withdrawn</source>
        <translation>zurückgezogen</translation>
    </message>
</context>
<context>
    <name>AlertState</name>
    <message>
        <source>closed</source>
        <translation>geschlossen</translation>
    </message>
    <message>
        <source>due, unseen</source>
        <translation>fällig, ungesehen</translation>
    </message>
    <message>
        <source>expired, unseen</source>
        <translation>verfallen, ungesehen</translation>
    </message>
    <message>
        <source>on, accepted</source>
        <translation>besteht, angenommen</translation>
    </message>
    <message>
        <source>on, put off</source>
        <translation>besteht, vertagt</translation>
    </message>
    <message>
        <source>on, taken</source>
        <translation>besteht, gesehen</translation>
    </message>
    <message>
        <source>on, untaken</source>
        <translation>besteht, ungesehen</translation>
    </message>
    <message>
        <source>over, put off</source>
        <translation>vorbei, vertagt</translation>
    </message>
    <message>
        <source>over, untaken</source>
        <translation>vorbei, ungesehen</translation>
    </message>
    <message>
        <source>seen</source>
        <translation>gesehen</translation>
    </message>
    <message>
        <source>taken back</source>
        <translation>zurückgenommen</translation>
    </message>
    <message>
        <source>to come</source>
        <translation>kommt noch</translation>
    </message>
</context>
<context>
    <name>Alerts</name>
    <message numerus="yes">
        <source>%n clubs for {customer}, since {time}. Twist and tap before it goes out.</source>
        <comment>1 club for {customer}, since {time}. Twist and tap before it goes out.</comment>
        <translation>
            <numerusform>1 Schläger für {customer}, seit {time}. Drehen und klopfen, bevor er hinausgeht.</numerusform>
            <numerusform>%n Schläger für {customer}, seit {time}. Drehen und klopfen, bevor sie hinausgehen.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n clubs, since {time}. Twist and tap before it goes out.</source>
        <comment>1 club, since {time}. Twist and tap before it goes out.</comment>
        <translation>
            <numerusform>1 Schläger, seit {time}. Drehen und klopfen, bevor er hinausgeht.</numerusform>
            <numerusform>%n Schläger, seit {time}. Drehen und klopfen, bevor sie hinausgehen.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n more, see the board</source>
        <comment>%n more, see the board</comment>
        <translation>
            <numerusform>%n weitere, siehe Tafel</numerusform>
            <numerusform>%n weitere, siehe Tafel</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n things since you last looked</source>
        <comment>One thing since you last looked</comment>
        <translation>
            <numerusform>Eine Meldung seit dem letzten Blick</numerusform>
            <numerusform>%n Meldungen seit dem letzten Blick</numerusform>
        </translation>
    </message>
    <message>
        <source>A club must go back to the rack</source>
        <translation>Ein Schläger muss zurück in den Ständer</translation>
    </message>
    <message>
        <source>A club must not be hit</source>
        <translation>Mit einem Schläger darf nicht geschlagen werden</translation>
    </message>
    <message numerus="yes">
        <source>A head could come off. %n clubs are at {where}. What was said for {time} no longer holds. Put the clubs back on the rack.</source>
        <comment>A head could come off. The club is at {where}. What was said for {time} no longer holds. Put the club back on the rack.</comment>
        <translation>
            <numerusform>Ein Kopf kann abfliegen. Der Schläger liegt in {where}. Was für {time} galt, gilt nicht mehr. Den Schläger zurück in den Ständer stellen.</numerusform>
            <numerusform>Ein Kopf kann abfliegen. %n Schläger liegen in {where}. Was für {time} galt, gilt nicht mehr. Die Schläger zurück in den Ständer stellen.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>A head could come off. What was said for {time} no longer holds, and %n clubs are gone: call {customer} {phone}. Open until reached.</source>
        <comment>A head could come off. What was said for {time} no longer holds, and the club is gone: call {customer} {phone}. Open until reached.</comment>
        <translation>
            <numerusform>Ein Kopf kann abfliegen. Was für {time} galt, gilt nicht mehr, und der Schläger ist außer Haus: {customer} {phone} anrufen. Offen, bis jemand erreicht ist.</numerusform>
            <numerusform>Ein Kopf kann abfliegen. Was für {time} galt, gilt nicht mehr, und %n Schläger sind außer Haus: {customer} {phone} anrufen. Offen, bis jemand erreicht ist.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>A head could come off. What was said for {time} no longer holds, and %n clubs are gone: find whose they are and call. Open until reached.</source>
        <comment>A head could come off. What was said for {time} no longer holds, and the club is gone: find whose it is and call. Open until reached.</comment>
        <translation>
            <numerusform>Ein Kopf kann abfliegen. Was für {time} galt, gilt nicht mehr, und der Schläger ist außer Haus: herausfinden, wem er gehört, und anrufen. Offen, bis jemand erreicht ist.</numerusform>
            <numerusform>Ein Kopf kann abfliegen. Was für {time} galt, gilt nicht mehr, und %n Schläger sind außer Haus: herausfinden, wem sie gehören, und anrufen. Offen, bis jemand erreicht ist.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>A head could come off. What was said for {time} no longer holds. Find %n clubs and put them back on the rack.</source>
        <comment>A head could come off. What was said for {time} no longer holds. Find the club and put it back on the rack.</comment>
        <translation>
            <numerusform>Ein Kopf kann abfliegen. Was für {time} galt, gilt nicht mehr. Den Schläger finden und zurück in den Ständer stellen.</numerusform>
            <numerusform>Ein Kopf kann abfliegen. Was für {time} galt, gilt nicht mehr. %n Schläger finden und zurück in den Ständer stellen.</numerusform>
        </translation>
    </message>
    <message>
        <source>A job may come off the rack</source>
        <translation>Ein Auftrag darf vom Ständer</translation>
    </message>
    <message>
        <source>A joint was disturbed</source>
        <translation>Eine Klebung wurde bewegt</translation>
    </message>
    <message>
        <source>A permission within the hour hangs on it. Mend the feed, or type a temperature.</source>
        <translation>Eine Freigabe in der nächsten Stunde hängt daran. Messung in Gang bringen oder eine Temperatur eintippen.</translation>
    </message>
    <message>
        <source>A test from the board</source>
        <translation>Eine Probe von der Tafel</translation>
    </message>
    <message>
        <source>A whole job is safe to hit</source>
        <translation>Ein ganzer Auftrag ist schlagfest</translation>
    </message>
    <message>
        <source>Back to the rack: job {job}</source>
        <translation>Zurück in den Ständer: Auftrag {job}</translation>
    </message>
    <message>
        <source>Back to the rack: {club}</source>
        <translation>Zurück in den Ständer: {club}</translation>
    </message>
    <message>
        <source>Back to the rack: {club}, job {job}</source>
        <translation>Zurück in den Ständer: {club}, Auftrag {job}</translation>
    </message>
    <message>
        <source>Below {limit} since {time}, and printed times have moved. Warm it, carry the clubs to the box, or accept the later times.</source>
        <translation>Unter {limit} seit {time}, gedruckte Zeiten haben sich verschoben. Wärmen, die Schläger in die Wärmebox stellen oder die späteren Zeiten annehmen.</translation>
    </message>
    <message>
        <source>Disturbed at {where}</source>
        <translation>Bewegt: {where}</translation>
    </message>
    <message>
        <source>Disturbed at {where}, job {job}</source>
        <translation>Bewegt: {where}, Auftrag {job}</translation>
    </message>
    <message>
        <source>Disturbed at {where}: {club}</source>
        <translation>Bewegt: {where}, {club}</translation>
    </message>
    <message>
        <source>Disturbed at {where}: {club}, job {job}</source>
        <translation>{where} bewegt: {club}, Auftrag {job}</translation>
    </message>
    <message numerus="yes">
        <source>Disturbed: %n clubs</source>
        <comment>Disturbed: %n club</comment>
        <translation>
            <numerusform>Bewegt: %n Schläger</numerusform>
            <numerusform>Bewegt: %n Schläger</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Disturbed: %n clubs of job {job}</source>
        <comment>Disturbed: %n club of job {job}</comment>
        <translation>
            <numerusform>Bewegt: %n Schläger, Auftrag {job}</numerusform>
            <numerusform>Bewegt: %n Schläger, Auftrag {job}</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Do not hit: %n clubs</source>
        <comment>Do not hit: %n club</comment>
        <translation>
            <numerusform>Nicht schlagen: %n Schläger</numerusform>
            <numerusform>Nicht schlagen: %n Schläger</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Do not hit: %n clubs of job {job}</source>
        <comment>Do not hit: %n club of job {job}</comment>
        <translation>
            <numerusform>Nicht schlagen: %n Schläger, Auftrag {job}</numerusform>
            <numerusform>Nicht schlagen: %n Schläger, Auftrag {job}</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Do not hit: %n clubs of jobs {jobs}</source>
        <comment>Do not hit: %n club of jobs {jobs}</comment>
        <translation>
            <numerusform>Nicht schlagen: %n Schläger, Aufträge {jobs}</numerusform>
            <numerusform>Nicht schlagen: %n Schläger, Aufträge {jobs}</numerusform>
        </translation>
    </message>
    <message>
        <source>Do not hit: job {job}</source>
        <translation>Nicht schlagen: Auftrag {job}</translation>
    </message>
    <message>
        <source>Do not hit: {club}</source>
        <translation>Nicht schlagen: {club}</translation>
    </message>
    <message>
        <source>Do not hit: {club}, job {job}</source>
        <translation>Nicht schlagen: {club}, Auftrag {job}</translation>
    </message>
    <message>
        <source>If you can read this, notices work.</source>
        <translation>Wer das lesen kann, bekommt Meldungen.</translation>
    </message>
    <message>
        <source>It was below {limit} from {time} to {end} and is warm again. Got it closes it; the times that moved stay as they are.</source>
        <translation>Es war von {time} bis {end} unter {limit} und ist wieder warm. Gesehen schließt es; die verschobenen Zeiten bleiben.</translation>
    </message>
    <message>
        <source>It was missing from {time} to {end} and is known again. Got it closes it.</source>
        <translation>Sie fehlte von {time} bis {end} und ist wieder bekannt. Gesehen schließt es.</translation>
    </message>
    <message>
        <source>Its working life is over since {time}.</source>
        <translation>Die Topfzeit ist seit {time} vorbei.</translation>
    </message>
    <message>
        <source>Job {job} may come off the rack</source>
        <translation>Auftrag {job} darf vom Ständer</translation>
    </message>
    <message>
        <source>Job {job}: whole job safe to hit</source>
        <translation>Auftrag {job}: ganz schlagfest</translation>
    </message>
    <message>
        <source>Knocked, pulled or turned at {time}. What did you do? Answer on the board; until then nobody may trust it.</source>
        <translation>Um {time} angestoßen, gezogen oder gedreht. Was wurde getan? Auf der Tafel antworten; bis dahin darf sich niemand darauf verlassen.</translation>
    </message>
    <message>
        <source>Last look before it is hard</source>
        <translation>Letzter Blick, bevor es hart ist</translation>
    </message>
    <message>
        <source>Last look: job {job}</source>
        <translation>Letzter Blick: Auftrag {job}</translation>
    </message>
    <message>
        <source>Last look: {where}</source>
        <translation>Letzter Blick: {where}</translation>
    </message>
    <message>
        <source>Last look: {where}, job {job}</source>
        <translation>Letzter Blick: {where}, Auftrag {job}</translation>
    </message>
    <message>
        <source>NOTICE</source>
        <translation>HINWEIS</translation>
    </message>
    <message>
        <source>No temperature since {time}</source>
        <translation>Keine Temperatur seit {time}</translation>
    </message>
    <message>
        <source>Since {time}. Cut and grip; do not hit.</source>
        <translation>Seit {time}. Kürzen und griffen; nicht schlagen.</translation>
    </message>
    <message>
        <source>Stop using batch {batch}</source>
        <translation>Ansatz {batch} nicht mehr verwenden</translation>
    </message>
    <message>
        <source>Stop using batch {batch}, job {job}</source>
        <translation>Ansatz {batch} nicht mehr verwenden, Auftrag {job}</translation>
    </message>
    <message>
        <source>Straight, seated and not crept up, ferrule tight, wiped, graphics.</source>
        <translation>Gerade, ganz unten und nicht hochgekrochen, Ferrule fest, abgewischt, Aufdruck.</translation>
    </message>
    <message>
        <source>Too cold for the glue: {air}</source>
        <translation>Zu kalt für den Kleber: {air}</translation>
    </message>
    <message>
        <source>Too hot for the glue: {air}</source>
        <translation>Zu heiß für den Kleber: {air}</translation>
    </message>
    <message>
        <source>Too much at once to tell one by one. The list has all of it.</source>
        <translation>Zu viel auf einmal, um es einzeln zu sagen. Die Liste hat alles.</translation>
    </message>
    <message>
        <source>WARNING</source>
        <translation>WARNUNG</translation>
    </message>
    <message>
        <source>Was due {time}, too late now.</source>
        <translation>War {time} fällig, jetzt zu spät.</translation>
    </message>
    <message>
        <source>Well above {limit} since {time}. Switch it off; look for foam, a soft ferrule, a crept head; say what you saw.</source>
        <translation>Weit über {limit} seit {time}. Abschalten; nach Schaum, weicher Ferrule, gekrochenem Kopf sehen; sagen, was zu sehen war.</translation>
    </message>
    <message>
        <source>a time within the next two hours</source>
        <translation>eine Zeit in den nächsten zwei Stunden</translation>
    </message>
    <message>
        <source>accept</source>
        <translation>annehmen</translation>
    </message>
    <message>
        <source>an alarm for which this can be done</source>
        <translation>ein Alarm, mit dem das geht</translation>
    </message>
    <message>
        <source>answer</source>
        <translation>antworten</translation>
    </message>
    <message>
        <source>got it</source>
        <translation>gesehen</translation>
    </message>
    <message>
        <source>remind me later</source>
        <translation>später erinnern</translation>
    </message>
    <message>
        <source>seen</source>
        <translation>gesehen</translation>
    </message>
    <message>
        <source>{above}
{below}</source>
        <translation>{above}
{below}</translation>
    </message>
    <message>
        <source>{signal}. {what}</source>
        <translation>{signal}. {what}</translation>
    </message>
    <message>
        <source>{signal}. {what} ({time}).</source>
        <translation>{signal}. {what} ({time}).</translation>
    </message>
    <message>
        <source>{what} ({time}).</source>
        <translation>{what} ({time}).</translation>
    </message>
    <message>
        <source>{what}.</source>
        <translation>{what}.</translation>
    </message>
    <message>
        <source>{zone} is cold</source>
        <translation>{zone} ist kalt</translation>
    </message>
    <message>
        <source>{zone} is cold: {air}</source>
        <translation>{zone} ist kalt: {air}</translation>
    </message>
    <message>
        <source>{zone} is too hot</source>
        <translation>{zone} ist zu heiß</translation>
    </message>
    <message>
        <source>{zone} is too hot: {air}</source>
        <translation>{zone} ist zu heiß: {air}</translation>
    </message>
    <message>
        <source>{zone}: no temperature</source>
        <translation>{zone}: keine Temperatur</translation>
    </message>
    <message>
        <source>{zone}: no temperature since {time}</source>
        <translation>{zone}: keine Temperatur seit {time}</translation>
    </message>
</context>
<context>
    <name>AlertsPage</name>
    <message numerus="yes">
        <source>%n alerts</source>
        <comment>1 alert</comment>
        <translation>
            <numerusform>1 Meldung</numerusform>
            <numerusform>%n Meldungen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n alerts written to {file}.</source>
        <comment>1 alert written to {file}.</comment>
        <translation>
            <numerusform>1 Meldung nach {file} geschrieben.</numerusform>
            <numerusform>%n Meldungen nach {file} geschrieben.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n open</source>
        <comment>1 open</comment>
        <translation>
            <numerusform>1 offen</numerusform>
            <numerusform>%n offen</numerusform>
        </translation>
    </message>
    <message>
        <source>A day is today, yesterday, Fri, 12 March or 2026-03-12.</source>
        <translation>Ein Tag ist heute, gestern, Fr, 12. März oder 2026-03-12.</translation>
    </message>
    <message>
        <source>Alarms</source>
        <translation>Alarme</translation>
    </message>
    <message>
        <source>Alerts</source>
        <translation>Meldungen</translation>
    </message>
    <message>
        <source>All kinds</source>
        <translation>Alle Arten</translation>
    </message>
    <message>
        <source>All places</source>
        <translation>Alle Orte</translation>
    </message>
    <message>
        <source>CSV (*.csv)</source>
        <translation>CSV (*.csv)</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Tag</translation>
    </message>
    <message>
        <source>Export CSV…</source>
        <translation>Als CSV ausgeben…</translation>
    </message>
    <message>
        <source>Export the alerts</source>
        <translation>Die Meldungen ausgeben</translation>
    </message>
    <message>
        <source>Job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>No alert like that is in the journal.</source>
        <translation>Keine solche Meldung steht im Protokoll.</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Offen</translation>
    </message>
    <message>
        <source>Outcome</source>
        <translation>Ausgang</translation>
    </message>
    <message>
        <source>Place</source>
        <translation>Ort</translation>
    </message>
    <message>
        <source>Prompts and messages</source>
        <translation>Hinweise und Nachrichten</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>Taken by</source>
        <translation>Gesehen von</translation>
    </message>
    <message numerus="yes">
        <source>The latest %n alerts; scroll for more.</source>
        <comment>The latest alert; scroll for more.</comment>
        <translation>
            <numerusform>Die letzte Meldung; rollen für mehr.</numerusform>
            <numerusform>Die letzten %n Meldungen; rollen für mehr.</numerusform>
        </translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>What happened</source>
        <translation>Was geschah</translation>
    </message>
    <message>
        <source>What is open</source>
        <translation>Was offen ist</translation>
    </message>
    <message>
        <source>What the couriers did</source>
        <translation>Was die Boten taten</translation>
    </message>
    <message>
        <source>When</source>
        <translation>Wann</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Wo</translation>
    </message>
    <message>
        <source>alerts-{day}.csv</source>
        <translation>meldungen-{day}.csv</translation>
    </message>
    <message>
        <source>day: today, Fri or 9 March</source>
        <translation>Tag: heute, Fr oder 9. März</translation>
    </message>
    <message>
        <source>job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>{begin} –</source>
        <translation>{begin} –</translation>
    </message>
    <message>
        <source>{begin} – {end}</source>
        <translation>{begin} – {end}</translation>
    </message>
    <message>
        <source>{signal}  {what}</source>
        <translation>{signal}  {what}</translation>
    </message>
    <message>
        <source>{who}, {time}</source>
        <translation>{who}, {time}</translation>
    </message>
</context>
<context>
    <name>Announcement</name>
    <message>
        <source>Done again: {what}.</source>
        <translation>Wiederholt: {what}.</translation>
    </message>
    <message>
        <source>HOLD: {places}, job {job}: {reason}.</source>
        <translation>SPERRE: {places}, Auftrag {job}: {reason}.</translation>
    </message>
    <message>
        <source>HOLD: {places}, job {job}: {reason}. Say what you did.</source>
        <translation>SPERRE: {places}, Auftrag {job}: {reason}. Sagen, was getan wurde.</translation>
    </message>
    <message>
        <source>Undone: {what}.</source>
        <translation>Rückgängig gemacht: {what}.</translation>
    </message>
    <message>
        <source>{places}, job {job}: may come off the rack. Do not hit.</source>
        <translation>{places}, Auftrag {job}: darf vom Ständer. Nicht schlagen.</translation>
    </message>
    <message>
        <source>{places}, job {job}: safe to hit.</source>
        <translation>{places}, Auftrag {job}: schlagfest.</translation>
    </message>
</context>
<context>
    <name>Answer</name>
    <message>
        <source>entered by mistake</source>
        <translation>versehentlich eingetragen</translation>
    </message>
    <message>
        <source>nothing seen</source>
        <translation>nichts zu sehen</translation>
    </message>
    <message>
        <source>pulled, cleaned, re-glued with a new batch</source>
        <translation>abgezogen, gereinigt, mit neuem Ansatz geklebt</translation>
    </message>
    <message>
        <source>re-aimed, clock runs on from mixing</source>
        <translation>neu ausgerichtet, Uhr läuft ab Mischen weiter</translation>
    </message>
    <message>
        <source>released</source>
        <translation>freigegeben</translation>
    </message>
    <message>
        <source>scrapped</source>
        <translation>verworfen</translation>
    </message>
    <message>
        <source>touched, head did not turn</source>
        <translation>berührt, Kopf hat sich nicht gedreht</translation>
    </message>
</context>
<context>
    <name>Awake</name>
    <message>
        <source>Epoxy is curing; the board watches it</source>
        <translation>Epoxid härtet; die Tafel wacht darüber</translation>
    </message>
    <message>
        <source>This computer may go to sleep while epoxy cures, and no alert is told then ({reason}). Switch sleep off in its settings.</source>
        <translation>Dieser Rechner kann einschlafen, während Epoxid härtet, und dann kommt keine Meldung ({reason}). Den Ruhezustand in seinen Einstellungen abschalten.</translation>
    </message>
    <message>
        <source>the system has no way to ask</source>
        <translation>das System kennt keinen Weg zu fragen</translation>
    </message>
    <message>
        <source>the system refused</source>
        <translation>das System hat abgelehnt</translation>
    </message>
</context>
<context>
    <name>BackupDialog</name>
    <message>
        <source>Back up now</source>
        <translation>Jetzt sichern</translation>
    </message>
    <message>
        <source>Backed up: {0}, checked.</source>
        <translation>Gesichert: {0}, geprüft.</translation>
    </message>
    <message>
        <source>Backing up… {0} %</source>
        <translation>Sicherung läuft … {0} %</translation>
    </message>
    <message>
        <source>Backups</source>
        <translation>Sicherungen</translation>
    </message>
    <message>
        <source>Backups, the newest first</source>
        <translation>Sicherungen, die neueste zuerst</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>No backup yet.</source>
        <translation>Noch keine Sicherung.</translation>
    </message>
    <message>
        <source>One a day by itself; the last {0} are kept. Copy one to a stick from time to time: a backup on the same disk goes with the disk.</source>
        <translation>Jeden Tag eine von selbst; die letzten {0} bleiben. Ab und zu eine auf einen Stick kopieren: Eine Sicherung auf derselben Platte geht mit der Platte.</translation>
    </message>
    <message>
        <source>Put the backup of {0} in the place of the present data?</source>
        <translation>Die Sicherung von {0} an die Stelle der jetzigen Daten setzen?</translation>
    </message>
    <message>
        <source>Restore</source>
        <translation>Zurückholen</translation>
    </message>
    <message>
        <source>Restore a backup</source>
        <translation>Eine Sicherung zurückholen</translation>
    </message>
    <message>
        <source>Restore this…</source>
        <translation>Diese zurückholen…</translation>
    </message>
    <message>
        <source>They lie in {0}.</source>
        <translation>Sie liegen in {0}.</translation>
    </message>
    <message>
        <source>This shop has no file, so it has no backups.</source>
        <translation>Diese Werkstatt hat keine Datei, also keine Sicherungen.</translation>
    </message>
    <message>
        <source>What was entered since then is no longer on the board. The present data is backed up first, so there is a way back. The board closes and opens again.</source>
        <translation>Was seither eingetragen wurde, steht dann nicht mehr auf der Tafel. Die jetzigen Daten werden zuerst gesichert, es gibt also einen Weg zurück. Die Tafel schließt und öffnet sich wieder.</translation>
    </message>
</context>
<context>
    <name>Board</name>
    <message numerus="yes">
        <source>%n HOLDs out of sight</source>
        <comment>%n HOLD out of sight</comment>
        <translation>
            <numerusform>%n SPERRE außer Sicht</numerusform>
            <numerusform>%n SPERREN außer Sicht</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n clubs</source>
        <comment>%n club</comment>
        <translation>
            <numerusform>%n Schläger</numerusform>
            <numerusform>%n Schläger</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n more</source>
        <comment>%n more</comment>
        <translation>
            <numerusform>noch %n</numerusform>
            <numerusform>noch %n</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n to glue</source>
        <comment>%n to glue</comment>
        <translation>
            <numerusform>%n zu kleben</numerusform>
            <numerusform>%n zu kleben</numerusform>
        </translation>
    </message>
    <message>
        <source>Last look</source>
        <translation>Letzter Blick</translation>
    </message>
    <message>
        <source>Lowest it got overnight?</source>
        <translation>Wie kalt wurde es nachts?</translation>
    </message>
    <message>
        <source>Lowest it got?</source>
        <translation>Wie kalt wurde es?</translation>
    </message>
    <message>
        <source>Lowest it will get?</source>
        <translation>Wie kalt wird es?</translation>
    </message>
    <message>
        <source>Not updating since {time}</source>
        <translation>Ohne Nachricht seit {time}</translation>
    </message>
    <message>
        <source>Nothing due</source>
        <translation>Nichts fällig</translation>
    </message>
    <message>
        <source>Off the rack</source>
        <translation>Vom Ständer</translation>
    </message>
    <message>
        <source>Off the rack, curing:</source>
        <translation>Vom Ständer, härtend:</translation>
    </message>
    <message>
        <source>Off the rack, still curing</source>
        <translation>Vom Ständer, noch härtend</translation>
    </message>
    <message>
        <source>Safe to hit</source>
        <translation>Schlagfest</translation>
    </message>
    <message>
        <source>Use by</source>
        <translation>Nutzbar bis</translation>
    </message>
    <message>
        <source>a club goes here</source>
        <translation>hier ein Schläger</translation>
    </message>
    <message>
        <source>above {temperature}</source>
        <translation>{temperature} hat</translation>
    </message>
    <message>
        <source>after it was hard</source>
        <translation>nachdem er hart war</translation>
    </message>
    <message>
        <source>before it was hard</source>
        <translation>bevor er hart war</translation>
    </message>
    <message>
        <source>before it was safe to hit</source>
        <translation>bevor er schlagfest war</translation>
    </message>
    <message>
        <source>cold</source>
        <translation>kalt</translation>
    </message>
    <message>
        <source>cut and grip; do not hit</source>
        <translation>kürzen und griffen; nicht schlagen</translation>
    </message>
    <message>
        <source>disturbed</source>
        <translation>bewegt</translation>
    </message>
    <message>
        <source>do not hit</source>
        <translation>nicht schlagen</translation>
    </message>
    <message>
        <source>ferrule, loft and lie, hitting</source>
        <translation>Ferrule, Loft und Lie, schlagen</translation>
    </message>
    <message>
        <source>grip</source>
        <translation>Griffbank</translation>
    </message>
    <message>
        <source>it said {word} then</source>
        <translation>da hieß es {word}</translation>
    </message>
    <message>
        <source>job {job}, {customer}, glue good: {time}</source>
        <translation>Auftrag {job}, {customer}, Kleber gut: {time}</translation>
    </message>
    <message>
        <source>laid out, not glued</source>
        <translation>angelegt, nicht geklebt</translation>
    </message>
    <message>
        <source>last look now</source>
        <translation>letzter Blick jetzt</translation>
    </message>
    <message>
        <source>last look {time}</source>
        <translation>letzter Blick {time}</translation>
    </message>
    <message>
        <source>late: {time}</source>
        <translation>spät: {time}</translation>
    </message>
    <message>
        <source>looked at</source>
        <translation>angesehen</translation>
    </message>
    <message>
        <source>low?</source>
        <translation>wie kalt?</translation>
    </message>
    <message>
        <source>lowest not known</source>
        <translation>Tiefstwert fehlt</translation>
    </message>
    <message>
        <source>lowest overnight not known</source>
        <translation>Tiefstwert der Nacht fehlt</translation>
    </message>
    <message>
        <source>mixed {time}</source>
        <translation>gemischt {time}</translation>
    </message>
    <message>
        <source>no reading yet</source>
        <translation>noch keine Messung</translation>
    </message>
    <message>
        <source>no time</source>
        <translation>keine Zeit</translation>
    </message>
    <message>
        <source>no word since {time}</source>
        <translation>kein Stand seit {time}</translation>
    </message>
    <message>
        <source>not before</source>
        <translation>nicht vor</translation>
    </message>
    <message>
        <source>not before {time}</source>
        <translation>nicht vor {time}</translation>
    </message>
    <message>
        <source>not within 60 days</source>
        <translation>nicht in 60 Tagen</translation>
    </message>
    <message>
        <source>nothing in it</source>
        <translation>nichts darin</translation>
    </message>
    <message>
        <source>nothing on it yet</source>
        <translation>noch nichts darin</translation>
    </message>
    <message>
        <source>nothing out</source>
        <translation>nichts draußen</translation>
    </message>
    <message>
        <source>on hold</source>
        <translation>gesperrt</translation>
    </message>
    <message>
        <source>out</source>
        <translation>außer Haus</translation>
    </message>
    <message>
        <source>pick-up</source>
        <translation>Abholung</translation>
    </message>
    <message>
        <source>probably hard by {time}</source>
        <translation>wohl hart um {time}</translation>
    </message>
    <message>
        <source>probably {time}</source>
        <translation>wohl {time}</translation>
    </message>
    <message>
        <source>promised {time}</source>
        <translation>zugesagt {time}</translation>
    </message>
    <message>
        <source>promised {time}, at risk</source>
        <translation>zugesagt {time}, gefährdet</translation>
    </message>
    <message>
        <source>promised {time}, missed</source>
        <translation>zugesagt {time}, verpasst</translation>
    </message>
    <message>
        <source>released {initials}</source>
        <translation>frei {initials}</translation>
    </message>
    <message>
        <source>rely on nothing here</source>
        <translation>auf nichts hier verlassen</translation>
    </message>
    <message>
        <source>row {row} of {rows}</source>
        <translation>Reihe {row} von {rows}</translation>
    </message>
    <message>
        <source>rows {first} to {last} of {rows}</source>
        <translation>Reihen {first} bis {last} von {rows}</translation>
    </message>
    <message>
        <source>safe to hit</source>
        <translation>schlagfest</translation>
    </message>
    <message>
        <source>since</source>
        <translation>seit</translation>
    </message>
    <message>
        <source>since {time}</source>
        <translation>seit {time}</translation>
    </message>
    <message>
        <source>soft smear</source>
        <translation>Probe weich</translation>
    </message>
    <message>
        <source>stop using this batch</source>
        <translation>diesen Ansatz nicht mehr verwenden</translation>
    </message>
    <message>
        <source>straighten, wipe</source>
        <translation>ausrichten, abwischen</translation>
    </message>
    <message>
        <source>straighten, wipe, check the graphics</source>
        <translation>ausrichten, abwischen, Aufdruck prüfen</translation>
    </message>
    <message>
        <source>the next event will stand here</source>
        <translation>hier steht, was als Nächstes kommt</translation>
    </message>
    <message>
        <source>to be hit</source>
        <translation>zum Schlagen</translation>
    </message>
    <message>
        <source>to go off the rack</source>
        <translation>vom Ständer zu nehmen</translation>
    </message>
    <message>
        <source>too hot</source>
        <translation>zu heiß</translation>
    </message>
    <message>
        <source>type the temperature</source>
        <translation>Temperatur eintippen</translation>
    </message>
    <message>
        <source>until it is</source>
        <translation>bis es über</translation>
    </message>
    <message>
        <source>use by</source>
        <translation>nutzbar bis</translation>
    </message>
    <message>
        <source>warm it</source>
        <translation>wärmen</translation>
    </message>
    <message>
        <source>while it was soft</source>
        <translation>als er weich war</translation>
    </message>
    <message>
        <source>working it out</source>
        <translation>wird gerechnet</translation>
    </message>
    <message>
        <source>{courier}: not working since {time}</source>
        <translation>{courier}: seit {time} gestört</translation>
    </message>
    <message>
        <source>{first} and {last}</source>
        <translation>{first} und {last}</translation>
    </message>
    <message>
        <source>{first} to {last}</source>
        <translation>{first} bis {last}</translation>
    </message>
    <message>
        <source>{places} off the rack</source>
        <translation>{places} vom Ständer</translation>
    </message>
    <message>
        <source>{places} safe to hit</source>
        <translation>{places} schlagfest</translation>
    </message>
    <message>
        <source>{reason} {time}</source>
        <translation>{reason} {time}</translation>
    </message>
    <message>
        <source>{said}, READY</source>
        <translation>{said}, FERTIG</translation>
    </message>
    <message>
        <source>{said}, cold</source>
        <translation>{said}, kalt</translation>
    </message>
    <message>
        <source>{slot}, a club goes here</source>
        <translation>{slot}, hier kommt ein Schläger hin</translation>
    </message>
    <message>
        <source>{slot}, empty</source>
        <translation>{slot}, leer</translation>
    </message>
    <message>
        <source>{slot}, {club}, job {job}, laid out, not glued</source>
        <translation>{slot}, {club}, Auftrag {job}, angelegt, nicht geklebt</translation>
    </message>
    <message>
        <source>{slot}, {club}, job {job}, {word}: {phrase}. {said}</source>
        <translation>{slot}, {club}, Auftrag {job}, {word}: {phrase}. {said}</translation>
    </message>
    <message>
        <source>{slot}, {club}, {phrase} since {time}, {said}</source>
        <translation>{slot}, {club}, {phrase} seit {time}, {said}</translation>
    </message>
    <message>
        <source>{taken} of {count} taken</source>
        <translation>{taken} von {count} belegt</translation>
    </message>
    <message>
        <source>{time}, late</source>
        <translation>{time}, spät</translation>
    </message>
    <message>
        <source>{zone}, lowest of the night</source>
        <translation>{zone}, Tiefstwert der Nacht</translation>
    </message>
    <message>
        <source>{zone}, until {end}</source>
        <translation>{zone}, bis {end}</translation>
    </message>
    <message>
        <source>{zone}, {start} to {end}</source>
        <translation>{zone}, {start} bis {end}</translation>
    </message>
    <message>
        <source>{zone}: {what} Since {time}.</source>
        <translation>{zone}: {what} Seit {time}.</translation>
    </message>
</context>
<context>
    <name>Chips</name>
    <message numerus="yes">
        <source>%n more clubs off the rack</source>
        <comment>%n more club off the rack</comment>
        <translation>
            <numerusform>noch %n Schläger vom Ständer</numerusform>
            <numerusform>noch %n Schläger vom Ständer</numerusform>
        </translation>
    </message>
    <message>
        <source>Off the rack, still curing: do not hit</source>
        <translation>Vom Ständer, noch härtend: nicht schlagen</translation>
    </message>
</context>
<context>
    <name>ClubKey</name>
    <message>
        <source>no slot</source>
        <translation>kein Platz</translation>
    </message>
    <message>
        <source>no slot free</source>
        <translation>kein Platz frei</translation>
    </message>
    <message>
        <source>slot {slot}</source>
        <translation>Platz {slot}</translation>
    </message>
</context>
<context>
    <name>Clubs</name>
    <message numerus="yes">
        <source>%n hybrids</source>
        <comment>%n hybrid</comment>
        <translation>
            <numerusform>%n Hybrid</numerusform>
            <numerusform>%n Hybride</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n irons</source>
        <comment>%n iron</comment>
        <translation>
            <numerusform>%n Eisen</numerusform>
            <numerusform>%n Eisen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n wedges</source>
        <comment>%n wedge</comment>
        <translation>
            <numerusform>%n Wedge</numerusform>
            <numerusform>%n Wedges</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n woods</source>
        <comment>%n wood</comment>
        <translation>
            <numerusform>%n Holz</numerusform>
            <numerusform>%n Hölzer</numerusform>
        </translation>
    </message>
    <message>
        <source>3 iron to PW</source>
        <translation>Eisen 3 bis PW</translation>
    </message>
    <message>
        <source>3 wood</source>
        <translation>Holz 3</translation>
    </message>
    <message>
        <source>4 iron to PW</source>
        <translation>Eisen 4 bis PW</translation>
    </message>
    <message>
        <source>5 iron to SW</source>
        <translation>Eisen 5 bis SW</translation>
    </message>
    <message>
        <source>8 irons</source>
        <translation>8 Eisen</translation>
    </message>
    <message>
        <source>Driver</source>
        <translation>Driver</translation>
    </message>
    <message>
        <source>Putter</source>
        <translation>Putter</translation>
    </message>
    <message>
        <source>driver</source>
        <translation>Driver</translation>
    </message>
    <message>
        <source>hybrid</source>
        <translation>Hybrid</translation>
    </message>
    <message>
        <source>putter</source>
        <translation>Putter</translation>
    </message>
    <message>
        <source>wedge set</source>
        <translation>Wedge-Satz</translation>
    </message>
    <message>
        <source>{loft} wedge</source>
        <translation>Wedge {loft}</translation>
    </message>
    <message>
        <source>{number} hybrid</source>
        <translation>Hybrid {number}</translation>
    </message>
    <message>
        <source>{number} iron</source>
        <translation>Eisen {number}</translation>
    </message>
    <message>
        <source>{number} wood</source>
        <translation>Holz {number}</translation>
    </message>
    <message>
        <source>{number}h</source>
        <translation>Hy{number}</translation>
    </message>
    <message>
        <source>{number}i</source>
        <translation>E{number}</translation>
    </message>
    <message>
        <source>{number}w</source>
        <translation>H{number}</translation>
    </message>
</context>
<context>
    <name>ClubsPage</name>
    <message>
        <source>Add
a club</source>
        <translation>Schläger
dazu</translation>
    </message>
    <message>
        <source>Club</source>
        <translation>Schläger</translation>
    </message>
    <message>
        <source>Clubs</source>
        <translation>Schläger</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Gut so</translation>
    </message>
    <message>
        <source>Graphics of the shaft; press again for none</source>
        <translation>Aufdruck des Schafts; noch einmal drücken für keinen</translation>
    </message>
    <message>
        <source>Take
it out</source>
        <translation>Heraus-
nehmen</translation>
    </message>
    <message>
        <source>What is glued</source>
        <translation>Was geklebt wird</translation>
    </message>
    <message>
        <source>adapter
sleeve</source>
        <translation>Adapter-
hülse</translation>
    </message>
    <message>
        <source>at 12</source>
        <translation>auf 12</translation>
    </message>
    <message>
        <source>at 6</source>
        <translation>auf 6</translation>
    </message>
    <message>
        <source>butt
extension</source>
        <translation>Schaftver-
längerung</translation>
    </message>
    <message>
        <source>hollow
head</source>
        <translation>hohler
Kopf</translation>
    </message>
    <message>
        <source>index mark</source>
        <translation>Indexmarke</translation>
    </message>
    <message>
        <source>over-hosel
putter</source>
        <translation>Overhosel-
Putter</translation>
    </message>
    <message>
        <source>solid
head</source>
        <translation>massiver
Kopf</translation>
    </message>
    <message>
        <source>tip
weight</source>
        <translation>Tip-
Gewicht</translation>
    </message>
</context>
<context>
    <name>Correct</name>
    <message>
        <source>A temperature that was typed</source>
        <translation>Eine eingetippte Temperatur</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Change what is wrong. The former facts stay on the record.</source>
        <translation>Ändern, was falsch ist. Die früheren Angaben bleiben vermerkt.</translation>
    </message>
    <message>
        <source>Club</source>
        <translation>Schläger</translation>
    </message>
    <message>
        <source>Correct it</source>
        <translation>Berichtigen</translation>
    </message>
    <message>
        <source>Correct {where} {club}, job {number}</source>
        <translation>{where} {club} berichtigen, Auftrag {number}</translation>
    </message>
    <message>
        <source>Corrected by</source>
        <translation>Berichtigt von</translation>
    </message>
    <message>
        <source>Customer</source>
        <translation>Kunde</translation>
    </message>
    <message>
        <source>Epoxy</source>
        <translation>Epoxid</translation>
    </message>
    <message>
        <source>Glued at</source>
        <translation>Geklebt um</translation>
    </message>
    <message>
        <source>Glued with batch</source>
        <translation>Geklebt mit Ansatz</translation>
    </message>
    <message>
        <source>Graphics</source>
        <translation>Aufdruck</translation>
    </message>
    <message>
        <source>It should have been [{unit}]</source>
        <translation>Es hätte heißen sollen [{unit}]</translation>
    </message>
    <message numerus="yes">
        <source>Its batch, so all %n clubs of it</source>
        <comment>Its batch, with this club alone</comment>
        <translation>
            <numerusform>Der Ansatz, nur mit diesem Schläger</numerusform>
            <numerusform>Der Ansatz, also alle %n Schläger daraus</numerusform>
        </translation>
    </message>
    <message>
        <source>Job number</source>
        <translation>Auftragsnummer</translation>
    </message>
    <message>
        <source>Kind of joint</source>
        <translation>Art der Klebung</translation>
    </message>
    <message>
        <source>Let me correct it</source>
        <translation>Selbst berichtigen</translation>
    </message>
    <message>
        <source>Lot</source>
        <translation>Charge</translation>
    </message>
    <message>
        <source>Mixed at</source>
        <translation>Gemischt um</translation>
    </message>
    <message>
        <source>No, {time}</source>
        <translation>Nein, {time}</translation>
    </message>
    <message>
        <source>On record: {now}</source>
        <translation>Vermerkt: {now}</translation>
    </message>
    <message>
        <source>On record: {now}, before that {values}</source>
        <translation>Vermerkt: {now}, davor {values}</translation>
    </message>
    <message>
        <source>READY pressed by</source>
        <translation>FERTIG gedrückt von</translation>
    </message>
    <message>
        <source>Released by</source>
        <translation>Freigegeben von</translation>
    </message>
    <message>
        <source>The club</source>
        <translation>Der Schläger</translation>
    </message>
    <message>
        <source>The joint</source>
        <translation>Die Klebung</translation>
    </message>
    <message>
        <source>Where it has been since {time}</source>
        <translation>Wo er seit {time} ist</translation>
    </message>
    <message>
        <source>Yes, {time}</source>
        <translation>Ja, {time}</translation>
    </message>
    <message>
        <source>a batch of its own</source>
        <translation>ein eigener Ansatz</translation>
    </message>
    <message>
        <source>at 12 o&apos;clock</source>
        <translation>auf 12 Uhr</translation>
    </message>
    <message>
        <source>at 6 o&apos;clock</source>
        <translation>auf 6 Uhr</translation>
    </message>
    <message>
        <source>before that {values}</source>
        <translation>davor {values}</translation>
    </message>
    <message>
        <source>index mark</source>
        <translation>Indexmarke</translation>
    </message>
    <message>
        <source>no graphics</source>
        <translation>kein Aufdruck</translation>
    </message>
    <message>
        <source>none of them</source>
        <translation>keine davon</translation>
    </message>
    <message>
        <source>not yet</source>
        <translation>noch nicht</translation>
    </message>
    <message>
        <source>{number}, {epoxy}, mixed {time}</source>
        <translation>{number}, {epoxy}, gemischt {time}</translation>
    </message>
    <message>
        <source>{number}, {epoxy}, not mixed</source>
        <translation>{number}, {epoxy}, nicht gemischt</translation>
    </message>
    <message>
        <source>{zone} {time}: {temperature}</source>
        <translation>{zone} {time}: {temperature}</translation>
    </message>
</context>
<context>
    <name>Counter</name>
    <message>
        <source>Job {job}</source>
        <translation>Auftrag {job}</translation>
    </message>
    <message>
        <source>Job {job} for {customer}</source>
        <translation>Auftrag {job} für {customer}</translation>
    </message>
    <message>
        <source>eight</source>
        <translation>acht</translation>
    </message>
    <message>
        <source>eleven</source>
        <translation>elf</translation>
    </message>
    <message>
        <source>five</source>
        <translation>fünf</translation>
    </message>
    <message>
        <source>four</source>
        <translation>vier</translation>
    </message>
    <message>
        <source>fourteen</source>
        <translation>vierzehn</translation>
    </message>
    <message>
        <source>how cold it got last night is not known</source>
        <translation>wie kalt es letzte Nacht wurde, ist nicht bekannt</translation>
    </message>
    <message>
        <source>how cold it got since {day} is not known</source>
        <translation>wie kalt es seit {day} wurde, ist nicht bekannt</translation>
    </message>
    <message>
        <source>how cold it got since {time} is not known</source>
        <translation>wie kalt es seit {time} wurde, ist nicht bekannt</translation>
    </message>
    <message>
        <source>how cold it will get is not known</source>
        <translation>wie kalt es wird, ist nicht bekannt</translation>
    </message>
    <message>
        <source>nine</source>
        <translation>neun</translation>
    </message>
    <message>
        <source>no</source>
        <translation>kein</translation>
    </message>
    <message>
        <source>on {day} at opening</source>
        <translation>am {day} zur Öffnung</translation>
    </message>
    <message>
        <source>on {day} at {time}</source>
        <translation>am {day} um {time}</translation>
    </message>
    <message>
        <source>one</source>
        <translation>ein</translation>
    </message>
    <message>
        <source>seven</source>
        <translation>sieben</translation>
    </message>
    <message>
        <source>six</source>
        <translation>sechs</translation>
    </message>
    <message>
        <source>ten</source>
        <translation>zehn</translation>
    </message>
    <message>
        <source>the temperature has not been read up to now</source>
        <translation>die Temperatur ist nicht bis jetzt abgelesen</translation>
    </message>
    <message>
        <source>the times are still being worked out</source>
        <translation>die Zeiten werden noch gerechnet</translation>
    </message>
    <message>
        <source>thirteen</source>
        <translation>dreizehn</translation>
    </message>
    <message>
        <source>three</source>
        <translation>drei</translation>
    </message>
    <message>
        <source>today at opening</source>
        <translation>heute zur Öffnung</translation>
    </message>
    <message>
        <source>today at {time}</source>
        <translation>heute um {time}</translation>
    </message>
    <message>
        <source>twelve</source>
        <translation>zwölf</translation>
    </message>
    <message>
        <source>two</source>
        <translation>zwei</translation>
    </message>
    <message>
        <source>{head} is ready and can be picked up.</source>
        <translation>{head} ist fertig und kann abgeholt werden.</translation>
    </message>
    <message>
        <source>{head}: it can&apos;t be said now; the board is not being updated.</source>
        <translation>{head}: Das ist jetzt nicht zu sagen; die Tafel wird nicht aktualisiert.</translation>
    </message>
    <message>
        <source>{head}: it can&apos;t be said yet; {reason}.</source>
        <translation>{head}: Das ist noch nicht zu sagen; {reason}.</translation>
    </message>
    <message>
        <source>{head}: no time can be given, it is too cold for the glue.</source>
        <translation>{head}: Es ist keine Zeit zu nennen, es ist zu kalt für den Kleber.</translation>
    </message>
    <message>
        <source>{head}: the glue is good now; it still needs READY.</source>
        <translation>{head}: Der Kleber ist jetzt gut; es fehlt noch FERTIG.</translation>
    </message>
    <message>
        <source>{head}: the glue is good {when}.</source>
        <translation>{head}: Der Kleber ist {when} gut.</translation>
    </message>
    <message>
        <source>{head}: there is no glued club left.</source>
        <translation>{head}: Es ist kein geklebter Schläger mehr da.</translation>
    </message>
    <message numerus="yes">
        <source>{head}: {number} clubs are not glued yet, so there is no time to give.</source>
        <comment>{head}: one club is not glued yet, so there is no time to give.</comment>
        <translation>
            <numerusform>{head}: Ein Schläger ist noch nicht geklebt, also gibt es keine Zeit.</numerusform>
            <numerusform>{head}: {number} Schläger sind noch nicht geklebt, also gibt es keine Zeit.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>{head}: {number} clubs are on hold, somebody will call.</source>
        <comment>{head}: one club is on hold, somebody will call.</comment>
        <translation>
            <numerusform>{head}: Ein Schläger ist gesperrt, jemand ruft an.</numerusform>
            <numerusform>{head}: {number} Schläger sind gesperrt, jemand ruft an.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>Courier</name>
    <message>
        <source>Desktop notices</source>
        <translation>Meldungen</translation>
    </message>
    <message>
        <source>Got it</source>
        <translation>Gesehen</translation>
    </message>
    <message>
        <source>Show on the board</source>
        <translation>Auf der Tafel zeigen</translation>
    </message>
    <message>
        <source>Sound</source>
        <translation>Ton</translation>
    </message>
    <message>
        <source>Sound off since {time}: the board beeps instead</source>
        <translation>Ton aus seit {time}: Die Tafel piept stattdessen</translation>
    </message>
    <message>
        <source>Window alert</source>
        <translation>Meldung im Fenster</translation>
    </message>
    <message>
        <source>closed</source>
        <translation>geschlossen</translation>
    </message>
    <message>
        <source>no answer in {n} s</source>
        <translation>keine Antwort in {n} s</translation>
    </message>
    <message>
        <source>no message bus: {reason}</source>
        <translation>kein Nachrichtenbus: {reason}</translation>
    </message>
    <message>
        <source>no player was found</source>
        <translation>kein Abspielprogramm gefunden</translation>
    </message>
    <message>
        <source>the bus has hung up</source>
        <translation>der Bus hat aufgelegt</translation>
    </message>
    <message>
        <source>there is no session bus</source>
        <translation>es gibt keinen Sitzungsbus</translation>
    </message>
    <message>
        <source>there is no tray</source>
        <translation>es gibt keinen Infobereich</translation>
    </message>
    <message>
        <source>there is no window</source>
        <translation>es gibt kein Fenster</translation>
    </message>
    <message>
        <source>{program} doesn&apos;t come to an end</source>
        <translation>{program} kommt zu keinem Ende</translation>
    </message>
    <message>
        <source>{program} ended with {code}</source>
        <translation>{program} endete mit {code}</translation>
    </message>
</context>
<context>
    <name>CurveTable</name>
    <message>
        <source>How the glue goes: {club}, job {job}</source>
        <translation>Verlauf der Härtung: {club}, Auftrag {job}</translation>
    </message>
    <message>
        <source>Mark</source>
        <translation>Marke</translation>
    </message>
    <message>
        <source>Probably</source>
        <translation>Wohl</translation>
    </message>
    <message>
        <source>Temperature</source>
        <translation>Temperatur</translation>
    </message>
    <message>
        <source>The board estimates from the sheet and the record; it does not measure the bond.</source>
        <translation>Die Tafel schätzt nach Datenblatt und Aufzeichnung; sie misst die Klebung nicht.</translation>
    </message>
    <message>
        <source>There is nothing to show yet.</source>
        <translation>Noch gibt es nichts zu zeigen.</translation>
    </message>
    <message>
        <source>When</source>
        <translation>Wann</translation>
    </message>
    <message>
        <source>With the margin</source>
        <translation>Mit Reserve</translation>
    </message>
    <message>
        <source>Word</source>
        <translation>Wort</translation>
    </message>
    <message>
        <source>from here no record</source>
        <translation>ab hier keine Messung</translation>
    </message>
    <message>
        <source>mixed</source>
        <translation>gemischt</translation>
    </message>
    <message>
        <source>no record</source>
        <translation>keine Messung</translation>
    </message>
    <message>
        <source>not before this: {allowed}</source>
        <translation>nicht vorher: {allowed}</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>now</source>
        <translation>jetzt</translation>
    </message>
    <message>
        <source>on hold from here</source>
        <translation>ab hier gesperrt</translation>
    </message>
    <message>
        <source>probably {allowed}</source>
        <translation>wohl {allowed}</translation>
    </message>
    <message>
        <source>use by</source>
        <translation>nutzbar bis</translation>
    </message>
    <message>
        <source>{allowed} since</source>
        <translation>{allowed} seit</translation>
    </message>
    <message>
        <source>{temperature}, reckoned</source>
        <translation>{temperature}, gerechnet</translation>
    </message>
    <message>
        <source>{when}: {word}, {phrase}; {air}; probably {probably}; with the margin {margin}</source>
        <translation>{when}: {word}, {phrase}; {air}; wohl {probably}; mit Reserve {margin}</translation>
    </message>
</context>
<context>
    <name>CustomerDialog</name>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Customers, the latest first</source>
        <translation>Kunden, der letzte zuerst</translation>
    </message>
    <message>
        <source>Erase</source>
        <translation>Löschen</translation>
    </message>
    <message>
        <source>Erase a customer</source>
        <translation>Einen Kunden löschen</translation>
    </message>
    <message>
        <source>Erase name and phone…</source>
        <translation>Name und Telefon löschen…</translation>
    </message>
    <message>
        <source>Erase {0}?</source>
        <translation>{0} löschen?</translation>
    </message>
    <message>
        <source>Erased. The record stays: {jobs}.</source>
        <translation>Gelöscht. Vermerkt bleibt: {jobs}.</translation>
    </message>
    <message>
        <source>Name and phone can&apos;t be brought back. Backups made before still hold them until ten newer ones have replaced them.</source>
        <translation>Name und Telefon sind dann nicht zurückzuholen. Frühere Sicherungen enthalten sie noch, bis zehn neuere sie ersetzt haben.</translation>
    </message>
    <message>
        <source>Name and phone go, everywhere in the data. Job number, clubs, batches, temperatures and what each joint was permitted stay.</source>
        <translation>Name und Telefon verschwinden überall in den Daten. Auftragsnummer, Schläger, Ansätze, Temperaturen und was jeder Klebung erlaubt war, bleiben.</translation>
    </message>
    <message>
        <source>Name, phone or job number</source>
        <translation>Name, Telefon oder Auftragsnummer</translation>
    </message>
    <message numerus="yes">
        <source>jobs {numbers}</source>
        <comment>job {numbers}</comment>
        <translation>
            <numerusform>Auftrag {numbers}</numerusform>
            <numerusform>Aufträge {numbers}</numerusform>
        </translation>
    </message>
    <message>
        <source>name, phone or job number</source>
        <translation>Name, Telefon oder Auftragsnummer</translation>
    </message>
</context>
<context>
    <name>Days</name>
    <message>
        <source>Fri</source>
        <translation>Fr</translation>
    </message>
    <message>
        <source>Friday</source>
        <translation>Freitag</translation>
    </message>
    <message>
        <source>Mon</source>
        <translation>Mo</translation>
    </message>
    <message>
        <source>Monday</source>
        <translation>Montag</translation>
    </message>
    <message>
        <source>Sat</source>
        <translation>Sa</translation>
    </message>
    <message>
        <source>Saturday</source>
        <translation>Samstag</translation>
    </message>
    <message>
        <source>Sun</source>
        <translation>So</translation>
    </message>
    <message>
        <source>Sunday</source>
        <translation>Sonntag</translation>
    </message>
    <message>
        <source>Thu</source>
        <translation>Do</translation>
    </message>
    <message>
        <source>Thursday</source>
        <translation>Donnerstag</translation>
    </message>
    <message>
        <source>Tue</source>
        <translation>Di</translation>
    </message>
    <message>
        <source>Tuesday</source>
        <translation>Dienstag</translation>
    </message>
    <message>
        <source>Wed</source>
        <translation>Mi</translation>
    </message>
    <message>
        <source>Wednesday</source>
        <translation>Mittwoch</translation>
    </message>
</context>
<context>
    <name>Demo</name>
    <message>
        <source>Tallow Lane bench (invented)</source>
        <translation>Werkbank Talggasse (erfunden)</translation>
    </message>
</context>
<context>
    <name>Doubt</name>
    <message>
        <source>At {time} the working life of {minutes} min was over. Is that right?</source>
        <translation>Um {time} war die Topfzeit von {minutes} min vorbei. Stimmt das?</translation>
    </message>
    <message>
        <source>The shop was closed at {time}. Is that right?</source>
        <translation>{time} war die Werkstatt geschlossen. Stimmt das?</translation>
    </message>
    <message>
        <source>{time} is more than a day ago. Is that right?</source>
        <translation>{time} ist mehr als einen Tag her. Stimmt das?</translation>
    </message>
    <message>
        <source>{time} was twelve hours ago and the shop was closed. Was it {meant}?</source>
        <translation>{time} war vor zwölf Stunden und die Werkstatt geschlossen. War es {meant}?</translation>
    </message>
</context>
<context>
    <name>Draft</name>
    <message>
        <source>Clubs</source>
        <translation>Schläger</translation>
    </message>
    <message numerus="yes">
        <source>a club&apos;s name of at most %n letters</source>
        <translation>
            <numerusform>ein Schlägername mit höchstens %n Zeichen</numerusform>
            <numerusform>ein Schlägername mit höchstens %n Zeichen</numerusform>
        </translation>
    </message>
    <message>
        <source>a free slot for every club</source>
        <translation>ein freier Platz für jeden Schläger</translation>
    </message>
    <message>
        <source>at least one club</source>
        <translation>mindestens ein Schläger</translation>
    </message>
    <message numerus="yes">
        <source>at most %n clubs in a job</source>
        <translation>
            <numerusform>höchstens %n Schläger in einem Auftrag</numerusform>
            <numerusform>höchstens %n Schläger in einem Auftrag</numerusform>
        </translation>
    </message>
    <message>
        <source>job {number}</source>
        <translation>Auftrag {number}</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keiner</translation>
    </message>
    <message>
        <source>none for {club}</source>
        <translation>keiner für {club}</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>parts</source>
        <translation>Teile</translation>
    </message>
    <message>
        <source>slots</source>
        <translation>Plätze</translation>
    </message>
    <message>
        <source>the temperature of the cold parts</source>
        <translation>die Temperatur der kalten Teile</translation>
    </message>
</context>
<context>
    <name>Epoxy</name>
    <message>
        <source>day-long</source>
        <translation>Tageskleber</translation>
    </message>
    <message>
        <source>day-long filled</source>
        <translation>Tageskleber gefüllt</translation>
    </message>
    <message>
        <source>day-long toughened</source>
        <translation>Tageskleber zäh</translation>
    </message>
    <message>
        <source>half-hour</source>
        <translation>Halbstunde</translation>
    </message>
    <message>
        <source>quick</source>
        <translation>Schnell</translation>
    </message>
    <message>
        <source>typical of its class; type in your own product&apos;s sheet</source>
        <translation>typisch für seine Art; die Werte des eigenen Datenblatts eintippen</translation>
    </message>
</context>
<context>
    <name>EpoxyFacts</name>
    <message>
        <source>Activation energy</source>
        <translation>Aktivierungsenergie</translation>
    </message>
    <message>
        <source>Activation energy, kilojoule per mole</source>
        <translation>Aktivierungsenergie, Kilojoule pro Mol</translation>
    </message>
    <message>
        <source>Add a time…</source>
        <translation>Zeit dazu…</translation>
    </message>
    <message>
        <source>Checked against the {0} kJ/mol above.</source>
        <translation>Geprüft an den {0} kJ/mol oben.</translation>
    </message>
    <message>
        <source>Cures between</source>
        <translation>Härtet zwischen</translation>
    </message>
    <message>
        <source>Density, grams per millilitre</source>
        <translation>Dichte, Gramm pro Milliliter</translation>
    </message>
    <message>
        <source>Epoxy</source>
        <translation>Epoxid</translation>
    </message>
    <message>
        <source>Highest temperature at which it may cure</source>
        <translation>Höchste Temperatur, bei der es härten darf</translation>
    </message>
    <message>
        <source>It is right</source>
        <translation>Es stimmt</translation>
    </message>
    <message>
        <source>Lap shear</source>
        <translation>Zugscherung</translation>
    </message>
    <message>
        <source>Lap shear strength, megapascal</source>
        <translation>Zugscherfestigkeit, Megapascal</translation>
    </message>
    <message>
        <source>Lowest temperature at which it cures</source>
        <translation>Niedrigste Temperatur, bei der es härtet</translation>
    </message>
    <message>
        <source>MPa</source>
        <translation>MPa</translation>
    </message>
    <message>
        <source>Mass of that batch, grams</source>
        <translation>Masse dieses Ansatzes, Gramm</translation>
    </message>
    <message>
        <source>Mix ratio</source>
        <translation>Mischung</translation>
    </message>
    <message>
        <source>Mix ratio by mass</source>
        <translation>Mischungsverhältnis nach Gewicht</translation>
    </message>
    <message>
        <source>Mix ratio by volume</source>
        <translation>Mischungsverhältnis nach Volumen</translation>
    </message>
    <message>
        <source>Off the rack after</source>
        <translation>Vom Ständer nach</translation>
    </message>
    <message>
        <source>Off the rack after, longest, hours</source>
        <translation>Vom Ständer nach, längstens, Stunden</translation>
    </message>
    <message>
        <source>Off the rack after, shortest, hours</source>
        <translation>Vom Ständer nach, kürzestens, Stunden</translation>
    </message>
    <message>
        <source>One such time replaces the guess of 58 kJ/mol (50 to 65) and brings every “not before” on the board closer.</source>
        <translation>Eine solche Zeit ersetzt die Annahme von 58 kJ/mol (50 bis 65) und rückt jedes „nicht vor“ der Tafel näher.</translation>
    </message>
    <message>
        <source>Shelf life, months</source>
        <translation>Haltbarkeit, Monate</translation>
    </message>
    <message>
        <source>Short name</source>
        <translation>Kurzname</translation>
    </message>
    <message>
        <source>Short name, on tiles</source>
        <translation>Kurzname, auf den Kacheln</translation>
    </message>
    <message>
        <source>Temperature at which the times hold</source>
        <translation>Temperatur, bei der die Zeiten gelten</translation>
    </message>
    <message>
        <source>The sheet forbids curing below its minimum</source>
        <translation>Das Datenblatt verbietet Härten unter seinem Minimum</translation>
    </message>
    <message>
        <source>They make {0} kJ/mol ({1} to {2}).</source>
        <translation>Sie ergeben {0} kJ/mol ({1} bis {2}).</translation>
    </message>
    <message>
        <source>Times at other temperatures</source>
        <translation>Zeiten bei anderen Temperaturen</translation>
    </message>
    <message>
        <source>Times hold at</source>
        <translation>Zeiten gelten bei</translation>
    </message>
    <message>
        <source>To hit after</source>
        <translation>Schlagfest nach</translation>
    </message>
    <message>
        <source>To hit after, longest, hours</source>
        <translation>Schlagfest nach, längstens, Stunden</translation>
    </message>
    <message>
        <source>To hit after, shortest, hours</source>
        <translation>Schlagfest nach, kürzestens, Stunden</translation>
    </message>
    <message>
        <source>To use</source>
        <translation>Nutzbar</translation>
    </message>
    <message>
        <source>To use, longest, minutes</source>
        <translation>Nutzbar, längstens, Minuten</translation>
    </message>
    <message>
        <source>To use, shortest, minutes</source>
        <translation>Nutzbar, kürzestens, Minuten</translation>
    </message>
    <message>
        <source>by mass</source>
        <translation>nach Gewicht</translation>
    </message>
    <message>
        <source>by volume</source>
        <translation>nach Volumen</translation>
    </message>
    <message>
        <source>density</source>
        <translation>Dichte</translation>
    </message>
    <message>
        <source>g</source>
        <translation>g</translation>
    </message>
    <message>
        <source>g/ml</source>
        <translation>g/ml</translation>
    </message>
    <message>
        <source>h</source>
        <translation>h</translation>
    </message>
    <message>
        <source>kJ/mol</source>
        <translation>kJ/mol</translation>
    </message>
    <message>
        <source>min, of</source>
        <translation>min, von</translation>
    </message>
    <message>
        <source>months</source>
        <translation>Monate</translation>
    </message>
    <message>
        <source>none given</source>
        <translation>keine Angabe</translation>
    </message>
    <message>
        <source>shelf life</source>
        <translation>Haltbarkeit</translation>
    </message>
    <message>
        <source>to</source>
        <translation>bis</translation>
    </message>
</context>
<context>
    <name>EpoxyForm</name>
    <message>
        <source>A new epoxy</source>
        <translation>Neues Epoxid</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Epoxy</source>
        <translation>Epoxid</translation>
    </message>
    <message>
        <source>Export this sheet</source>
        <translation>Dieses Datenblatt ausgeben</translation>
    </message>
    <message>
        <source>Export…</source>
        <translation>Ausgeben…</translation>
    </message>
    <message>
        <source>Import an epoxy&apos;s sheet</source>
        <translation>Datenblatt eines Epoxids einlesen</translation>
    </message>
    <message>
        <source>Import…</source>
        <translation>Einlesen…</translation>
    </message>
    <message>
        <source>No curve yet. {0}</source>
        <translation>Noch keine Kurve. {0}</translation>
    </message>
    <message>
        <source>Read from {0}. Save it to keep it.</source>
        <translation>Aus {0} gelesen. Speichern, um es zu behalten.</translation>
    </message>
    <message>
        <source>Save epoxy</source>
        <translation>Epoxid speichern</translation>
    </message>
    <message>
        <source>Sheets (*.toml)</source>
        <translation>Datenblätter (*.toml)</translation>
    </message>
    <message>
        <source>Type in what its data sheet says; leave the rest blank.</source>
        <translation>Eintippen, was das Datenblatt sagt; den Rest leer lassen.</translation>
    </message>
    <message>
        <source>Typical of its class; type in your own product&apos;s sheet.</source>
        <translation>Typisch für seine Art; die Werte des eigenen Datenblatts eintippen.</translation>
    </message>
    <message>
        <source>Written to {0}.</source>
        <translation>Nach {0} geschrieben.</translation>
    </message>
    <message>
        <source>the {0} now</source>
        <translation>jetzt: {0}</translation>
    </message>
</context>
<context>
    <name>EpoxyPlot</name>
    <message>
        <source>How this glue goes</source>
        <translation>Wie dieser Kleber härtet</translation>
    </message>
    <message>
        <source>at {0}, as you type</source>
        <translation>bei {0}, beim Tippen</translation>
    </message>
    <message>
        <source>kept at °{0}, hours</source>
        <translation>gehalten bei °{0}, Stunden</translation>
    </message>
    <message>
        <source>off the rack</source>
        <translation>vom Ständer</translation>
    </message>
    <message>
        <source>off the rack, not before</source>
        <translation>vom Ständer, nicht vor</translation>
    </message>
    <message>
        <source>off the rack, not before {0}</source>
        <translation>vom Ständer, nicht vor {0}</translation>
    </message>
    <message>
        <source>probably</source>
        <translation>wohl</translation>
    </message>
    <message>
        <source>probably {0}</source>
        <translation>wohl {0}</translation>
    </message>
    <message>
        <source>safe to hit</source>
        <translation>schlagfest</translation>
    </message>
    <message>
        <source>to hit, not before</source>
        <translation>schlagfest, nicht vor</translation>
    </message>
    <message>
        <source>to hit, not before {0}</source>
        <translation>schlagfest, nicht vor {0}</translation>
    </message>
</context>
<context>
    <name>EpoxyShelf</name>
    <message>
        <source>Add…</source>
        <translation>Neu…</translation>
    </message>
    <message>
        <source>Batches keep the sheet that they were mixed by, whatever is changed here.</source>
        <translation>Ansätze behalten das Datenblatt, nach dem sie gemischt wurden, was immer hier geändert wird.</translation>
    </message>
    <message>
        <source>Bring back</source>
        <translation>Zurückholen</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Copy…</source>
        <translation>Kopieren…</translation>
    </message>
    <message>
        <source>Edit…</source>
        <translation>Ändern…</translation>
    </message>
    <message>
        <source>Epoxies</source>
        <translation>Epoxide</translation>
    </message>
    <message>
        <source>Epoxy shelf</source>
        <translation>Klebstoffregal</translation>
    </message>
    <message>
        <source>Export this sheet</source>
        <translation>Dieses Datenblatt ausgeben</translation>
    </message>
    <message>
        <source>Export…</source>
        <translation>Ausgeben…</translation>
    </message>
    <message>
        <source>Import an epoxy&apos;s sheet</source>
        <translation>Datenblatt eines Epoxids einlesen</translation>
    </message>
    <message>
        <source>Import…</source>
        <translation>Einlesen…</translation>
    </message>
    <message>
        <source>Retire</source>
        <translation>Ausmustern</translation>
    </message>
    <message>
        <source>Sheets (*.toml)</source>
        <translation>Datenblätter (*.toml)</translation>
    </message>
    <message>
        <source>Show the retired ones</source>
        <translation>Ausgemusterte zeigen</translation>
    </message>
    <message>
        <source>Written to {0}.</source>
        <translation>Nach {0} geschrieben.</translation>
    </message>
    <message>
        <source>retired: not offered at glue-up</source>
        <translation>ausgemustert: wird beim Kleben nicht angeboten</translation>
    </message>
    <message>
        <source>typical of its class; type in your own product&apos;s sheet</source>
        <translation>typisch für seine Art; die Werte des eigenen Datenblatts eintippen</translation>
    </message>
</context>
<context>
    <name>EpoxyView</name>
    <message>
        <source>At {temperature}: {times}.</source>
        <translation>Bei {temperature}: {times}.</translation>
    </message>
    <message>
        <source>Below {minimum} no time: the sheet forbids it.</source>
        <translation>Unter {minimum} keine Zeit: Das Datenblatt verbietet es.</translation>
    </message>
    <message>
        <source>Below {minimum} the sheet promises nothing, and the hours count for less.</source>
        <translation>Unter {minimum} verspricht das Datenblatt nichts, die Stunden zählen weniger.</translation>
    </message>
    <message>
        <source>no time</source>
        <translation>keine Zeit</translation>
    </message>
    <message>
        <source>off the rack not before {late}, probably {expected} hours</source>
        <translation>vom Ständer nicht vor {late}, wohl {expected} Stunden</translation>
    </message>
    <message>
        <source>to hit not before {late}, probably {expected} hours</source>
        <translation>schlagfest nicht vor {late}, wohl {expected} Stunden</translation>
    </message>
    <message>
        <source>use by {hours} h</source>
        <translation>nutzbar bis {hours} h</translation>
    </message>
    <message>
        <source>use by {minutes} min</source>
        <translation>nutzbar bis {minutes} min</translation>
    </message>
    <message>
        <source>{hours} h</source>
        <translation>{hours} h</translation>
    </message>
    <message>
        <source>{minutes} min</source>
        <translation>{minutes} min</translation>
    </message>
</context>
<context>
    <name>Errors</name>
    <message>
        <source>{message} {remedy}</source>
        <translation>{message} {remedy}</translation>
    </message>
    <message>
        <source>{where}: wanted {wanted}, got {came}.</source>
        <translation>{where}: gebraucht wird {wanted}, da steht {came}.</translation>
    </message>
</context>
<context>
    <name>Feed</name>
    <message>
        <source>a file or a sensor</source>
        <translation>eine Datei oder ein Fühler</translation>
    </message>
    <message>
        <source>a line of {file} can&apos;t be read: {reason}</source>
        <translation>eine Zeile von {file} ist nicht lesbar: {reason}</translation>
    </message>
    <message>
        <source>a source of temperature</source>
        <translation>eine Temperaturquelle</translation>
    </message>
    <message>
        <source>a zone and where to read</source>
        <translation>eine Zone und woher gelesen wird</translation>
    </message>
    <message>
        <source>how its lines are read</source>
        <translation>wie ihre Zeilen gelesen werden</translation>
    </message>
    <message>
        <source>it answers nothing</source>
        <translation>sie antwortet nichts</translation>
    </message>
    <message>
        <source>it can&apos;t be read: {reason}</source>
        <translation>sie ist nicht lesbar: {reason}</translation>
    </message>
    <message>
        <source>it can&apos;t be used: {reason}</source>
        <translation>sie ist nicht zu gebrauchen: {reason}</translation>
    </message>
    <message>
        <source>it doesn&apos;t answer</source>
        <translation>sie antwortet nicht</translation>
    </message>
    <message>
        <source>its answer comes garbled: look at the wire</source>
        <translation>ihre Antwort kommt verstümmelt: die Leitung ansehen</translation>
    </message>
    <message>
        <source>its answer is no temperature: {came}</source>
        <translation>ihre Antwort ist keine Temperatur: {came}</translation>
    </message>
    <message>
        <source>its chip says that the sensor is broken or off</source>
        <translation>ihr Baustein meldet, dass der Fühler kaputt oder ab ist</translation>
    </message>
    <message>
        <source>its clock is ahead: it sends times that are still to come</source>
        <translation>ihre Uhr geht vor: Sie sendet Zeiten, die noch kommen</translation>
    </message>
    <message>
        <source>nothing new comes</source>
        <translation>es kommt nichts Neues</translation>
    </message>
    <message>
        <source>temperature source</source>
        <translation>Temperaturquelle</translation>
    </message>
    <message>
        <source>the columns of time and temperature</source>
        <translation>die Spalten von Zeit und Temperatur</translation>
    </message>
    <message>
        <source>there is no {file} at {folder}</source>
        <translation>in {folder} gibt es kein {file}</translation>
    </message>
    <message>
        <source>{came} for hours, to the last digit: does it still measure?</source>
        <translation>{came} seit Stunden, bis zur letzten Stelle: Misst sie noch?</translation>
    </message>
    <message>
        <source>{came} is outside what it can measure, {low} to {high}</source>
        <translation>{came} liegt außerhalb dessen, was sie messen kann, {low} bis {high}</translation>
    </message>
    <message>
        <source>{came} is what a sensor sends before it has measured</source>
        <translation>{came} ist, was ein Fühler sendet, bevor er misst</translation>
    </message>
    <message>
        <source>{came} straight after {before}: waits for the next one</source>
        <translation>{came} gleich nach {before}: wartet auf den nächsten</translation>
    </message>
    <message>
        <source>{file} can&apos;t be read: {reason}</source>
        <translation>{file} ist nicht lesbar: {reason}</translation>
    </message>
    <message>
        <source>{file} has other columns than were set: set it up again</source>
        <translation>{file} hat andere Spalten als eingestellt: neu einstellen</translation>
    </message>
    <message>
        <source>{sensor} is not there</source>
        <translation>{sensor} ist nicht da</translation>
    </message>
</context>
<context>
    <name>Feeds</name>
    <message numerus="yes">
        <source>%n lines to read once the questions are answered.</source>
        <comment>%n line to read once the questions are answered.</comment>
        <translation>
            <numerusform>%n Zeile zu lesen, sobald die Fragen beantwortet sind.</numerusform>
            <numerusform>%n Zeilen zu lesen, sobald die Fragen beantwortet sind.</numerusform>
        </translation>
    </message>
    <message>
        <source>A chip&apos;s own temperature is not that of the room: take a sensor that hangs where the clubs lie.</source>
        <translation>Die Temperatur eines Bausteins ist nicht die des Raums: einen Fühler nehmen, der bei den Schlägern hängt.</translation>
    </message>
    <message>
        <source>A zone without a source is typed. What is done on this page holds at once; Undo takes it back, but not what has been measured.</source>
        <translation>Eine Zone ohne Quelle wird eingetippt. Was auf dieser Seite geschieht, gilt sofort; Rückgängig nimmt es zurück, aber nicht, was gemessen wurde.</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Change…</source>
        <translation>Ändern…</translation>
    </message>
    <message>
        <source>Choose a logger&apos;s file</source>
        <translation>Datei eines Loggers wählen</translation>
    </message>
    <message>
        <source>Choose file…</source>
        <translation>Datei wählen…</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>From a file that a logger&apos;s program keeps writing, or from a sensor of this computer. What comes is kept by itself.</source>
        <translation>Aus einer Datei, die ein Loggerprogramm fortschreibt, oder von einem Fühler dieses Rechners. Was kommt, wird von selbst behalten.</translation>
    </message>
    <message>
        <source>It has said nothing yet.</source>
        <translation>Sie hat noch nichts gesagt.</translation>
    </message>
    <message>
        <source>It says {temperature}, {time}.</source>
        <translation>Sie sagt {temperature}, {time}.</translation>
    </message>
    <message>
        <source>Its first lines</source>
        <translation>Ihre ersten Zeilen</translation>
    </message>
    <message>
        <source>Reading…</source>
        <translation>Wird gelesen…</translation>
    </message>
    <message>
        <source>Records (*.csv *.txt *.tsv *.log);;All files (*)</source>
        <translation>Aufzeichnungen (*.csv *.txt *.tsv *.log);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <source>Sensor</source>
        <translation>Fühler</translation>
    </message>
    <message>
        <source>Set…</source>
        <translation>Einstellen…</translation>
    </message>
    <message>
        <source>Since {time}: {what}.</source>
        <translation>Seit {time}: {what}.</translation>
    </message>
    <message>
        <source>Temperature of {zone}</source>
        <translation>Temperatur von {zone}</translation>
    </message>
    <message>
        <source>Temperature sources</source>
        <translation>Temperaturquellen</translation>
    </message>
    <message>
        <source>The first lines of the file</source>
        <translation>Die ersten Zeilen der Datei</translation>
    </message>
    <message>
        <source>This computer shows no sensor of temperature.</source>
        <translation>Dieser Rechner zeigt keinen Temperaturfühler.</translation>
    </message>
    <message>
        <source>Use it</source>
        <translation>Benutzen</translation>
    </message>
    <message>
        <source>Where each zone&apos;s temperature comes from</source>
        <translation>Woher die Temperatur jeder Zone kommt</translation>
    </message>
    <message>
        <source>a logger&apos;s file</source>
        <translation>die Datei eines Loggers</translation>
    </message>
    <message>
        <source>a sensor of this computer</source>
        <translation>ein Fühler dieses Rechners</translation>
    </message>
    <message>
        <source>file {name}</source>
        <translation>Datei {name}</translation>
    </message>
    <message>
        <source>no file yet</source>
        <translation>noch keine Datei</translation>
    </message>
    <message>
        <source>please choose</source>
        <translation>bitte wählen</translation>
    </message>
    <message>
        <source>sensor {name}</source>
        <translation>Fühler {name}</translation>
    </message>
    <message>
        <source>typed</source>
        <translation>eingetippt</translation>
    </message>
    <message>
        <source>{source}: in trouble</source>
        <translation>{source}: gestört</translation>
    </message>
</context>
<context>
    <name>FindDialog</name>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Find</source>
        <translation>Suchen</translation>
    </message>
    <message>
        <source>Job, customer, club, epoxy or lot</source>
        <translation>Auftrag, Kunde, Schläger, Epoxid oder Charge</translation>
    </message>
    <message>
        <source>Jobs and clubs found</source>
        <translation>Gefundene Aufträge und Schläger</translation>
    </message>
    <message>
        <source>Nothing at work by that name.</source>
        <translation>Unter diesem Namen ist nichts in Arbeit.</translation>
    </message>
    <message>
        <source>Nothing is at work.</source>
        <translation>Nichts ist in Arbeit.</translation>
    </message>
    <message>
        <source>Show on the board</source>
        <translation>Auf der Tafel zeigen</translation>
    </message>
    <message>
        <source>job, customer, club, epoxy or lot</source>
        <translation>Auftrag, Kunde, Schläger, Epoxid oder Charge</translation>
    </message>
</context>
<context>
    <name>FirstLines</name>
    <message>
        <source>Line</source>
        <translation>Zeile</translation>
    </message>
    <message>
        <source>Read as, shop&apos;s time</source>
        <translation>Gelesen als, Werkstattzeit</translation>
    </message>
    <message>
        <source>Temperature</source>
        <translation>Temperatur</translation>
    </message>
</context>
<context>
    <name>FirstRun</name>
    <message>
        <source>firm</source>
        <translation>handfest</translation>
    </message>
    <message>
        <source>hard</source>
        <translation>hart</translation>
    </message>
    <message>
        <source>still</source>
        <translation>ruhig</translation>
    </message>
    <message>
        <source>wet</source>
        <translation>nass</translation>
    </message>
</context>
<context>
    <name>FirstRunPanel</name>
    <message>
        <source>An empty rack</source>
        <translation>Ein leerer Ständer</translation>
    </message>
    <message>
        <source>Lay out a job with clean hands, say when it is mixed and when it is racked. The board follows the glue and says what each joint may bear.</source>
        <translation>Mit sauberen Händen einen Auftrag anlegen, sagen, wann gemischt ist und wann alles im Ständer steht. Die Tafel folgt dem Kleber und sagt, was jede Klebung aushält.</translation>
    </message>
    <message>
        <source>Lay out the first job</source>
        <translation>Ersten Auftrag anlegen</translation>
    </message>
</context>
<context>
    <name>Furnishing</name>
    <message>
        <source>Carry them elsewhere first.</source>
        <translation>Zuerst woandershin stellen.</translation>
    </message>
    <message>
        <source>Columns</source>
        <translation>Spalten</translation>
    </message>
    <message>
        <source>Give them another zone first.</source>
        <translation>Ihnen zuerst eine andere Zone geben.</translation>
    </message>
    <message>
        <source>If it was carried to other air, add a new one there and move the clubs.</source>
        <translation>Wurde er in andere Luft getragen, dort einen neuen anlegen und die Schläger umstellen.</translation>
    </message>
    <message>
        <source>It may get another name, or fewer slots.</source>
        <translation>Er kann einen anderen Namen oder weniger Plätze bekommen.</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Pixel pitch</source>
        <translation>Pixelabstand</translation>
    </message>
    <message>
        <source>Prefix</source>
        <translation>Buchstabe</translation>
    </message>
    <message>
        <source>Rows</source>
        <translation>Reihen</translation>
    </message>
    <message>
        <source>Viewing distance</source>
        <translation>Betrachtungsabstand</translation>
    </message>
    <message>
        <source>Zone</source>
        <translation>Zone</translation>
    </message>
    <message>
        <source>a name in one line, up to {longest} characters</source>
        <translation>ein Name in einer Zeile, höchstens {longest} Zeichen</translation>
    </message>
    <message>
        <source>a name that no other place has</source>
        <translation>ein Name, den kein anderer Ort hat</translation>
    </message>
    <message>
        <source>a name that no other zone has</source>
        <translation>ein Name, den keine andere Zone hat</translation>
    </message>
    <message>
        <source>a number from 1 to {most}</source>
        <translation>eine Zahl von 1 bis {most}</translation>
    </message>
    <message>
        <source>a zone</source>
        <translation>eine Zone</translation>
    </message>
    <message>
        <source>at most {most} slots</source>
        <translation>höchstens {most} Plätze</translation>
    </message>
    <message>
        <source>high contrast</source>
        <translation>hoher Kontrast</translation>
    </message>
    <message>
        <source>letters that no other rack has</source>
        <translation>Buchstaben, die kein anderer Ständer hat</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>on, off or the system&apos;s</source>
        <translation>ein, aus oder wie das System</translation>
    </message>
    <message>
        <source>one to three letters, such as A</source>
        <translation>ein bis drei Buchstaben, etwa A</translation>
    </message>
    <message>
        <source>{least} to {most} {unit}</source>
        <translation>{least} bis {most} {unit}</translation>
    </message>
    <message>
        <source>{place} can&apos;t be made so small. Clubs lie in slots that would go: {clubs}.</source>
        <translation>{place} kann nicht so klein werden. In wegfallenden Plätzen liegen Schläger: {clubs}.</translation>
    </message>
    <message>
        <source>{place} can&apos;t be removed while clubs lie there: {clubs}.</source>
        <translation>{place} kann nicht entfernt werden, solange dort Schläger liegen: {clubs}.</translation>
    </message>
    <message>
        <source>{place} can&apos;t be removed: the board needs one such place.</source>
        <translation>{place} kann nicht entfernt werden: Die Tafel braucht einen solchen Ort.</translation>
    </message>
    <message>
        <source>{place} can&apos;t be removed; it is on the record of {clubs}.</source>
        <translation>{place} kann nicht entfernt werden; es ist bei {clubs} vermerkt.</translation>
    </message>
    <message>
        <source>{place} keeps its zone while times hang on its temperature, those of {clubs}.</source>
        <translation>{place} behält seine Zone, solange Zeiten an ihrer Temperatur hängen: {clubs}.</translation>
    </message>
    <message>
        <source>{prefix}, as of {place}</source>
        <translation>{prefix}, wie bei {place}</translation>
    </message>
    <message>
        <source>{zone} can&apos;t be removed while places lie in it: {places}.</source>
        <translation>{zone} kann nicht entfernt werden, solange Orte darin liegen: {places}.</translation>
    </message>
    <message>
        <source>{zone} can&apos;t be removed: it has a temperature record, and past cures hang on it.</source>
        <translation>{zone} kann nicht entfernt werden: Sie hat eine Temperaturaufzeichnung, an der frühere Härtungen hängen.</translation>
    </message>
</context>
<context>
    <name>FurtherRow</name>
    <message>
        <source>At which temperature</source>
        <translation>Bei welcher Temperatur</translation>
    </message>
    <message>
        <source>How long, or shortest to longest</source>
        <translation>Wie lange, oder kürzestens bis längstens</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <source>Remove this time</source>
        <translation>Diese Zeit entfernen</translation>
    </message>
    <message>
        <source>What this time is</source>
        <translation>Was diese Zeit ist</translation>
    </message>
    <message>
        <source>at</source>
        <translation>bei</translation>
    </message>
    <message>
        <source>h</source>
        <translation>h</translation>
    </message>
    <message>
        <source>min</source>
        <translation>min</translation>
    </message>
    <message>
        <source>off the rack</source>
        <translation>vom Ständer</translation>
    </message>
    <message>
        <source>to hit</source>
        <translation>schlagfest</translation>
    </message>
    <message>
        <source>to use</source>
        <translation>nutzbar</translation>
    </message>
</context>
<context>
    <name>GlueUp</name>
    <message numerus="yes">
        <source>%n batches
{clubs}</source>
        <translation>
            <numerusform>%n Ansatz
{clubs}</numerusform>
            <numerusform>%n Ansätze
{clubs}</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n batches, one after the other</source>
        <translation>
            <numerusform>%n Ansatz, nacheinander</numerusform>
            <numerusform>%n Ansätze, nacheinander</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n clubs</source>
        <comment>%n club</comment>
        <translation>
            <numerusform>%n Schläger</numerusform>
            <numerusform>%n Schläger</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n clubs a batch</source>
        <comment>%n club a batch</comment>
        <translation>
            <numerusform>%n Schläger je Ansatz</numerusform>
            <numerusform>%n Schläger je Ansatz</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n clubs at 2½ min is tight: two batches?</source>
        <translation>
            <numerusform>%n Schläger zu 2½ min ist knapp: zwei Ansätze?</numerusform>
            <numerusform>%n Schläger zu je 2½ min sind knapp: zwei Ansätze?</numerusform>
        </translation>
    </message>
    <message>
        <source>Agree a later time.</source>
        <translation>Eine spätere Zeit vereinbaren.</translation>
    </message>
    <message>
        <source>Batch {number}, mixed {time}</source>
        <translation>Ansatz {number}, gemischt {time}</translation>
    </message>
    <message>
        <source>How cold are the parts?</source>
        <translation>Wie kalt sind die Teile?</translation>
    </message>
    <message>
        <source>Job {number}</source>
        <translation>Auftrag {number}</translation>
    </message>
    <message>
        <source>Job {number}, {customer}</source>
        <translation>Auftrag {number}, {customer}</translation>
    </message>
    <message>
        <source>Last look</source>
        <translation>Letzter Blick</translation>
    </message>
    <message>
        <source>Last look at {time}</source>
        <translation>Letzter Blick um {time}</translation>
    </message>
    <message>
        <source>Let me correct it</source>
        <translation>Selbst berichtigen</translation>
    </message>
    <message>
        <source>No time, promised {promised}</source>
        <translation>Keine Zeit, zugesagt {promised}</translation>
    </message>
    <message>
        <source>No, {time}</source>
        <translation>Nein, {time}</translation>
    </message>
    <message>
        <source>Not before {when}, promised {promised}</source>
        <translation>Nicht vor {when}, zugesagt {promised}</translation>
    </message>
    <message>
        <source>Say how warm it is: without it there are no times.</source>
        <translation>Angeben, wie warm es ist: Ohne das gibt es keine Zeiten.</translation>
    </message>
    <message>
        <source>Something else was done since. Use Edit, Undo.</source>
        <translation>Seither geschah etwas anderes. Bearbeiten, Rückgängig benutzen.</translation>
    </message>
    <message>
        <source>The box keeps it.</source>
        <translation>Die Wärmebox hält es ein.</translation>
    </message>
    <message>
        <source>The {epoxy} keeps it.</source>
        <translation>{epoxy} hält es ein.</translation>
    </message>
    <message>
        <source>Two batches
{clubs}</source>
        <translation>Zwei Ansätze
{clubs}</translation>
    </message>
    <message>
        <source>Yes, {time}</source>
        <translation>Ja, {time}</translation>
    </message>
    <message>
        <source>a time after mixing, {time}</source>
        <translation>eine Zeit nach dem Mischen, {time}</translation>
    </message>
    <message>
        <source>about {minutes} min is too short for a club</source>
        <translation>etwa {minutes} min sind zu kurz für einen Schläger</translation>
    </message>
    <message>
        <source>about {minutes} min is too short for a club: {ways}</source>
        <translation>etwa {minutes} min sind zu kurz für einen Schläger: {ways}</translation>
    </message>
    <message>
        <source>about {minutes} min: {ways}</source>
        <translation>etwa {minutes} min: {ways}</translation>
    </message>
    <message>
        <source>all racked at</source>
        <translation>alle im Ständer um</translation>
    </message>
    <message>
        <source>as the air</source>
        <translation>wie die Luft</translation>
    </message>
    <message>
        <source>at 12 or 6 as wanted</source>
        <translation>auf 12 oder 6, wie gewünscht</translation>
    </message>
    <message>
        <source>at {hour} o&apos;clock</source>
        <translation>auf {hour} Uhr</translation>
    </message>
    <message>
        <source>batch {number}</source>
        <translation>Ansatz {number}</translation>
    </message>
    <message>
        <source>batch {number}, lot {lot}</source>
        <translation>Ansatz {number}, Charge {lot}</translation>
    </message>
    <message>
        <source>batch {number}, {epoxy}</source>
        <translation>Ansatz {number}, {epoxy}</translation>
    </message>
    <message>
        <source>box</source>
        <translation>Wärmebox</translation>
    </message>
    <message>
        <source>brought in</source>
        <translation>von draußen</translation>
    </message>
    <message>
        <source>club</source>
        <translation>Schläger</translation>
    </message>
    <message>
        <source>no reading yet</source>
        <translation>noch keine Messung</translation>
    </message>
    <message>
        <source>no time</source>
        <translation>keine Zeit</translation>
    </message>
    <message>
        <source>promised {when}</source>
        <translation>zugesagt {when}</translation>
    </message>
    <message>
        <source>rack</source>
        <translation>Ständer</translation>
    </message>
    <message>
        <source>sleeve by its index mark</source>
        <translation>Hülse nach Indexmarke</translation>
    </message>
    <message>
        <source>the shop cools down when closed</source>
        <translation>die Werkstatt kühlt nach Ladenschluss ab</translation>
    </message>
    <message>
        <source>the {epoxy}</source>
        <translation>{epoxy}</translation>
    </message>
    <message>
        <source>this epoxy takes so long</source>
        <translation>dieses Epoxid braucht so lange</translation>
    </message>
    <message>
        <source>up to {clubs} each</source>
        <translation>je bis {clubs}</translation>
    </message>
    <message>
        <source>use by {time}</source>
        <translation>nutzbar bis {time}</translation>
    </message>
    <message>
        <source>use by {time}, over</source>
        <translation>nutzbar bis {time}, vorbei</translation>
    </message>
    <message>
        <source>{clubs}, racked {time}</source>
        <translation>{clubs}, im Ständer {time}</translation>
    </message>
    <message>
        <source>{clubs}, {slots}</source>
        <translation>{clubs}, {slots}</translation>
    </message>
    <message>
        <source>{day} {time}</source>
        <translation>{day} {time}</translation>
    </message>
    <message>
        <source>{first}, or {next}</source>
        <translation>{first}, oder {next}</translation>
    </message>
    <message>
        <source>{here} is cooler than the {label} of its sheet</source>
        <translation>{here} ist kühler als die {label} seines Datenblatts</translation>
    </message>
    <message>
        <source>{here} is too cold for this epoxy, which needs {label}</source>
        <translation>{here} ist zu kalt für dieses Epoxid, es braucht {label}</translation>
    </message>
    <message>
        <source>{hours} to hit</source>
        <translation>fest in {hours}</translation>
    </message>
    <message>
        <source>{job}, {clubs}, {slots}</source>
        <translation>{job}, {clubs}, {slots}</translation>
    </message>
    <message>
        <source>{minutes} min to use</source>
        <translation>{minutes} min nutzbar</translation>
    </message>
    <message>
        <source>{missed}: {reason}. {better}</source>
        <translation>{missed}: {reason}. {better}</translation>
    </message>
    <message>
        <source>{place} at {temperature}</source>
        <translation>{place} mit {temperature}</translation>
    </message>
    <message>
        <source>{slot} is taken. Tap a free slot.</source>
        <translation>{slot} ist belegt. Einen freien Platz antippen.</translation>
    </message>
    <message>
        <source>{zone}: how warm is it now?</source>
        <translation>{zone}: Wie warm ist es jetzt?</translation>
    </message>
</context>
<context>
    <name>GreatKey</name>
    <message>
        <source>space</source>
        <translation>Leertaste</translation>
    </message>
</context>
<context>
    <name>Happening</name>
    <message numerus="yes">
        <source>%n alarms</source>
        <comment>%n alarm</comment>
        <translation>
            <numerusform>%n Alarm</numerusform>
            <numerusform>%n Alarme</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n holds</source>
        <comment>%n hold</comment>
        <translation>
            <numerusform>%n SPERRE</numerusform>
            <numerusform>%n SPERREN</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n more today</source>
        <comment>%n more today</comment>
        <translation>
            <numerusform>noch %n heute</numerusform>
            <numerusform>noch %n heute</numerusform>
        </translation>
    </message>
    <message>
        <source>Answer</source>
        <translation>Antworten</translation>
    </message>
    <message>
        <source>Batch {batch} all racked</source>
        <translation>Ansatz {batch} ganz im Ständer</translation>
    </message>
    <message>
        <source>Batch {batch} corrected</source>
        <translation>Ansatz {batch} berichtigt</translation>
    </message>
    <message>
        <source>Batch {batch} last look done</source>
        <translation>Ansatz {batch} angesehen</translation>
    </message>
    <message>
        <source>Batch {batch} mixed</source>
        <translation>Ansatz {batch} gemischt</translation>
    </message>
    <message>
        <source>Batch {batch}: mixed {new}, was {old}</source>
        <translation>Ansatz {batch}: gemischt {new}, war {old}</translation>
    </message>
    <message>
        <source>Head turned? Say what you did.</source>
        <translation>Kopf gedreht? Sagen, was getan wurde.</translation>
    </message>
    <message>
        <source>Job {job}, {clubs}: {what}</source>
        <translation>Auftrag {job}, {clubs}: {what}</translation>
    </message>
    <message>
        <source>Job {job}: {what}</source>
        <translation>Auftrag {job}: {what}</translation>
    </message>
    <message>
        <source>READY</source>
        <translation>FERTIG</translation>
    </message>
    <message>
        <source>READY taken back</source>
        <translation>FERTIG zurückgenommen</translation>
    </message>
    <message>
        <source>Say what you did.</source>
        <translation>Sagen, was getan wurde.</translation>
    </message>
    <message>
        <source>corrected</source>
        <translation>berichtigt</translation>
    </message>
    <message>
        <source>disturbed</source>
        <translation>bewegt</translation>
    </message>
    <message>
        <source>glued late</source>
        <translation>spät geklebt</translation>
    </message>
    <message>
        <source>hold ended: {outcome}</source>
        <translation>SPERRE beendet: {outcome}</translation>
    </message>
    <message>
        <source>laid out</source>
        <translation>angelegt</translation>
    </message>
    <message>
        <source>may come off the rack</source>
        <translation>darf vom Ständer</translation>
    </message>
    <message>
        <source>moved after its working life</source>
        <translation>nach der Topfzeit bewegt</translation>
    </message>
    <message>
        <source>permission withdrawn</source>
        <translation>Freigabe zurückgezogen</translation>
    </message>
    <message>
        <source>re-aimed while it was wet</source>
        <translation>ausgerichtet, solange es nass war</translation>
    </message>
    <message>
        <source>re-glued</source>
        <translation>neu geklebt</translation>
    </message>
    <message>
        <source>released</source>
        <translation>freigegeben</translation>
    </message>
    <message>
        <source>safe to hit</source>
        <translation>schlagfest</translation>
    </message>
    <message>
        <source>whole job safe to hit</source>
        <translation>ganzer Auftrag schlagfest</translation>
    </message>
    <message>
        <source>{club} moved to {place}</source>
        <translation>{club} nach {place} getragen</translation>
    </message>
    <message>
        <source>{slot}, {club}, job {job}</source>
        <translation>{slot}, {club}, Auftrag {job}</translation>
    </message>
    <message numerus="yes">
        <source>{zone}: %n readings imported</source>
        <comment>{zone}: %n reading imported</comment>
        <translation>
            <numerusform>{zone}: %n Messwert eingelesen</numerusform>
            <numerusform>{zone}: %n Messwerte eingelesen</numerusform>
        </translation>
    </message>
    <message>
        <source>{zone}: lowest {temperature} said</source>
        <translation>{zone}: Tiefstwert {temperature} gesagt</translation>
    </message>
    <message>
        <source>{zone}: {temperature} typed</source>
        <translation>{zone}: {temperature} eingetippt</translation>
    </message>
</context>
<context>
    <name>Happenings</name>
    <message numerus="yes">
        <source>+ %n more alarms</source>
        <comment>+ %n more alarm</comment>
        <translation>
            <numerusform>+ %n weiterer Alarm</numerusform>
            <numerusform>+ %n weitere Alarme</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>+ %n more on hold</source>
        <comment>+ %n more on hold</comment>
        <translation>
            <numerusform>+ %n weitere gesperrt</numerusform>
            <numerusform>+ %n weitere gesperrt</numerusform>
        </translation>
    </message>
    <message>
        <source>Due and happened</source>
        <translation>Fällig und geschehen</translation>
    </message>
    <message>
        <source>Due and happened: {count}</source>
        <translation>Fällig und geschehen: {count}</translation>
    </message>
    <message>
        <source>No alarm</source>
        <translation>Kein Alarm</translation>
    </message>
    <message>
        <source>Nothing due</source>
        <translation>Nichts fällig</translation>
    </message>
    <message>
        <source>Nothing on hold, no alarm</source>
        <translation>Keine SPERRE, kein Alarm</translation>
    </message>
    <message>
        <source>back to the club</source>
        <translation>zurück zum Schläger</translation>
    </message>
    <message>
        <source>next {alarm}</source>
        <translation>nächster {alarm}</translation>
    </message>
</context>
<context>
    <name>Help</name>
    <message>
        <source>5 iron</source>
        <translation>Eisen 5</translation>
    </message>
    <message>
        <source>A HOLD that nobody has answered</source>
        <translation>Eine SPERRE, zu der noch niemand etwas gesagt hat</translation>
    </message>
    <message>
        <source>A head follows the air slowly: a solid one in about 22 minutes, a hollow one in about 4. Parts brought in cold start cold.</source>
        <translation>Ein Kopf folgt der Luft langsam: ein massiver in etwa 22 Minuten, ein hohler in etwa 4. Teile, die kalt hereinkommen, beginnen kalt.</translation>
    </message>
    <message>
        <source>A head still hot from letting its old shaft go eats the working life: let it cool until the hand feels nothing.</source>
        <translation>Ein Kopf, der noch heiß vom Lösen des alten Schafts ist, frisst die Topfzeit: abkühlen lassen, bis die Hand nichts mehr spürt.</translation>
    </message>
    <message>
        <source>A head that lets go can injure</source>
        <translation>Ein Kopf, der sich löst, kann verletzen</translation>
    </message>
    <message>
        <source>A permission, off the rack or safe to hit, is given at the late end of what is possible: the sheet&apos;s longest time, the temperature less its error, the slower of the usual behaviours. A limit, the working life, ends at the early end. Both err on the side on which nothing breaks.</source>
        <translation>Eine Freigabe, vom Ständer oder schlagfest, gibt es am späten Ende des Möglichen: die längste Zeit des Datenblatts, die Temperatur abzüglich ihres Fehlers, das langsamere der üblichen Verhalten. Eine Grenze, die Topfzeit, endet am frühen Ende. Beide irren zu der Seite, auf der nichts bricht.</translation>
    </message>
    <message>
        <source>A person has let the club go before “not before”, with initials and a reason. The word stays; both stand on the record.</source>
        <translation>Jemand hat den Schläger vor „nicht vor“ herausgegeben, mit Kürzel und Grund. Das Wort bleibt; beides ist vermerkt.</translation>
    </message>
    <message>
        <source>A sensor or thermometer at the rack is taken as right to {sure}, an “about so much” to {unsure}. “Not before” is reckoned with the air so much colder. Near the sheet&apos;s lowest temperature a thermometer at the rack gains many hours.</source>
        <translation>Ein Fühler oder Thermometer am Ständer gilt als richtig auf {sure}, ein „ungefähr so viel“ auf {unsure}. „Nicht vor“ wird mit um so viel kälterer Luft gerechnet. Nahe der niedrigsten Temperatur des Datenblatts gewinnt ein Thermometer am Ständer viele Stunden.</translation>
    </message>
    <message>
        <source>A state belongs to the joint, wherever the club lies. It is said three times over: by its word, by its glyph, and by the lower edge of its plate, which behaves as the glue does: it ripples, comes to rest, lies straight.</source>
        <translation>Ein Zustand gehört zur Klebung, wo immer der Schläger liegt. Er wird dreimal gesagt: durch sein Wort, sein Zeichen und die Unterkante seiner Platte, die sich verhält wie der Kleber: Sie kräuselt sich, kommt zur Ruhe, liegt gerade.</translation>
    </message>
    <message>
        <source>A tile is one slot of the rack</source>
        <translation>Eine Kachel ist ein Platz im Ständer</translation>
    </message>
    <message>
        <source>A typed temperature holds for four hours while the shop is open, not overnight. If a night has no record the board asks one thing, the lowest it got, best read from a min–max thermometer. A closed weekend is one night. A logger&apos;s gap of more than two hours is asked about in the same way.</source>
        <translation>Eine eingetippte Temperatur gilt bei offener Werkstatt vier Stunden, nicht über Nacht. Hat eine Nacht keine Messung, fragt die Tafel eines: wie kalt es wurde, am besten von einem Min-Max-Thermometer abgelesen. Ein geschlossenes Wochenende ist eine Nacht. Nach einer Lücke von mehr als zwei Stunden wird ebenso gefragt.</translation>
    </message>
    <message>
        <source>A warm box shortens the wait. Above the sheet&apos;s highest temperature no more speed is credited than at it.</source>
        <translation>Eine Wärmebox verkürzt das Warten. Über der höchsten Temperatur des Datenblatts wird nicht mehr Tempo angerechnet als bei ihr.</translation>
    </message>
    <message>
        <source>Acetone and alcohols burn, and their vapour creeps to a bulb or a heater. No flame and no spark where they are used, and no solvent, nor a towel wet with it, near a warm box.</source>
        <translation>Aceton und Alkohole brennen, und ihr Dampf kriecht zu Lampe oder Heizgerät. Keine Flamme und kein Funke, wo sie benutzt werden, und kein Lösemittel, auch kein damit feuchtes Tuch, nahe einer Wärmebox.</translation>
    </message>
    <message>
        <source>And time alone permits nothing: the temperature record must reach that late time without an open gap. What was earned on a complete record stays.</source>
        <translation>Und Zeit allein erlaubt nichts: Die Temperaturaufzeichnung muss ohne offene Lücke bis zu dieser späten Zeit reichen. Was mit voller Aufzeichnung verdient ist, bleibt.</translation>
    </message>
    <message>
        <source>Another rack</source>
        <translation>Anderer Ständer</translation>
    </message>
    <message>
        <source>Backspace</source>
        <translation>Rücktaste</translation>
    </message>
    <message>
        <source>Beside the rack</source>
        <translation>Neben dem Ständer</translation>
    </message>
    <message>
        <source>Box and heads</source>
        <translation>Wärmebox und Köpfe</translation>
    </message>
    <message>
        <source>CAUTION</source>
        <translation>VORSICHT</translation>
    </message>
    <message>
        <source>Cautions</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <source>Club and job; epoxy and when it was mixed; the air at the rack.</source>
        <translation>Schläger und Auftrag; Epoxid und wann es gemischt wurde; die Luft am Ständer.</translation>
    </message>
    <message>
        <source>Cold does more than slow it down. Near and below the sheet&apos;s lowest temperature the reaction stalls half-way, and goes on when the joint is warmed. For “not before”, hours below it count for less and less, and {five} under it for nothing.</source>
        <translation>Kälte bremst nicht nur. Nahe und unter der niedrigsten Temperatur des Datenblatts bleibt die Reaktion auf halbem Weg stehen und läuft weiter, wenn die Klebung warm wird. Für „nicht vor“ zählen Stunden darunter immer weniger, und {five} darunter gar nicht.</translation>
    </message>
    <message>
        <source>Ctrl+1 … Ctrl+9</source>
        <translation>Strg+1 … Strg+9</translation>
    </message>
    <message>
        <source>Enter, space</source>
        <translation>Eingabe, Leertaste</translation>
    </message>
    <message>
        <source>Epoxy hardens by a reaction, and warmth drives it: {ten} warmer makes it about twice as fast, {ten} colder about half as fast. The sheet&apos;s times hold at one temperature; the board reckons from there with what the rack really had.</source>
        <translation>Epoxid härtet durch eine Reaktion, und Wärme treibt sie: {ten} wärmer macht sie etwa doppelt so schnell, {ten} kälter etwa halb so schnell. Die Zeiten des Datenblatts gelten bei einer Temperatur; von dort rechnet die Tafel mit dem, was der Ständer wirklich hatte.</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>Everything can be done by key, by touch and by mouse; nothing needs a drag or a double click.</source>
        <translation>Alles geht mit Tasten, mit Tippen und mit der Maus; nichts verlangt Ziehen oder Doppelklick.</translation>
    </message>
    <message>
        <source>From mixing until “use by”. Straighten, seat, wipe, turn the graphics; then the last look.</source>
        <translation>Vom Mischen bis „nutzbar bis“. Ausrichten, ganz einschieben, abwischen, Aufdruck drehen; dann der letzte Blick.</translation>
    </message>
    <message>
        <source>From tile to tile</source>
        <translation>Von Kachel zu Kachel</translation>
    </message>
    <message>
        <source>Gaps and nights</source>
        <translation>Lücken und Nächte</translation>
    </message>
    <message>
        <source>Heat afterwards</source>
        <translation>Wärme danach</translation>
    </message>
    <message>
        <source>How it reckons</source>
        <translation>Wie sie rechnet</translation>
    </message>
    <message>
        <source>How sure a temperature is</source>
        <translation>Wie sicher eine Temperatur ist</translation>
    </message>
    <message>
        <source>It can burn you, and the shop: thermostat, cut-out, guard, approved fittings; never unattended without a cut-out.</source>
        <translation>Sie kann verbrennen, Menschen und die Werkstatt: Thermostat, Übertemperaturschutz, Gitter, zugelassene Bauteile; nie unbeaufsichtigt ohne Übertemperaturschutz.</translation>
    </message>
    <message>
        <source>It may be carried with its head untouched. The head may not be turned, pulled or knocked.</source>
        <translation>Er darf getragen werden, wenn der Kopf unberührt bleibt. Der Kopf darf nicht gedreht, gezogen oder angestoßen werden.</translation>
    </message>
    <message>
        <source>Its colour floods the tile, the collar blinks. Once it is taken, only the cut corners stay.</source>
        <translation>Seine Farbe füllt die Kachel, der Kragen blinkt. Ist es gesehen, bleiben nur die gekappten Ecken.</translation>
    </message>
    <message>
        <source>Jobs: when the whole job is safe to hit, in opening hours, for the counter. The box at the right is READY.</source>
        <translation>Aufträge: wann der ganze Auftrag schlagfest ist, in Öffnungszeiten, für die Theke. Das Feld rechts ist FERTIG.</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>Knocked, turned or pulled when it may have gelled. Say what you did; glue does not start again.</source>
        <translation>Angestoßen, gedreht oder gezogen, als er schon geliert sein konnte. Sagen, was getan wurde; Kleber fängt nicht von vorn an.</translation>
    </message>
    <message>
        <source>Late for permissions, early for limits</source>
        <translation>Spät bei Freigaben, früh bei Grenzen</translation>
    </message>
    <message>
        <source>Leave it for now</source>
        <translation>Vorerst lassen</translation>
    </message>
    <message>
        <source>NOTICE</source>
        <translation>HINWEIS</translation>
    </message>
    <message>
        <source>No state of its own: it lies over WAIT or BENCH. Warm the club, or accept the later time.</source>
        <translation>Kein eigener Zustand: Es liegt über WARTEN oder BANK. Den Schläger wärmen oder die spätere Zeit annehmen.</translation>
    </message>
    <message>
        <source>Nothing on it may be trusted. Start the board again; what was entered is stored.</source>
        <translation>Nichts darauf gilt. Die Tafel neu starten; was eingetragen wurde, ist gespeichert.</translation>
    </message>
    <message>
        <source>Off the rack, still curing: clubs at the grip bench and the pick-up corner. Their clocks go on; do not hit them.</source>
        <translation>Vom Ständer, noch härtend: Schläger auf der Griffbank und in der Abholecke. Ihre Uhren laufen; nicht schlagen.</translation>
    </message>
    <message>
        <source>On the board</source>
        <translation>Auf der Tafel</translation>
    </message>
    <message>
        <source>On the plate: the state, and the slot that is painted on the wood.</source>
        <translation>Auf der Platte: der Zustand und der Platz, wie er aufs Holz gemalt ist.</translation>
    </message>
    <message>
        <source>Open a tile, or lay a club on a free slot</source>
        <translation>Eine Kachel öffnen oder einen Schläger auf einen freien Platz legen</translation>
    </message>
    <message>
        <source>READY, in the list of jobs</source>
        <translation>FERTIG, in der Liste der Aufträge</translation>
    </message>
    <message>
        <source>Rack, box, off the rack, jobs, right column</source>
        <translation>Ständer, Wärmebox, vom Ständer, Aufträge, rechte Spalte</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Wiederholen</translation>
    </message>
    <message>
        <source>Room-cured epoxy softens at about {soft} to {softer}: no club belongs in a hot car.</source>
        <translation>Kalt gehärtetes Epoxid erweicht bei etwa {soft} bis {softer}: Kein Schläger gehört in ein heißes Auto.</translation>
    </message>
    <message>
        <source>Skin and eyes</source>
        <translation>Haut und Augen</translation>
    </message>
    <message>
        <source>So a joint has an equivalent age: how old it would be if it had lain at the sheet&apos;s temperature all the time. Twelve hours at {cool} count as about five at {reference}.</source>
        <translation>Eine Klebung hat also ein Gleichwert-Alter: wie alt sie wäre, hätte sie immer bei der Temperatur des Datenblatts gelegen. Zwölf Stunden bei {cool} zählen wie etwa fünf bei {reference}.</translation>
    </message>
    <message>
        <source>Solid is behind, thin is ahead, the bar is now.</source>
        <translation>Dick ist vorbei, dünn kommt noch, der Balken ist jetzt.</translation>
    </message>
    <message>
        <source>Solvent vapour</source>
        <translation>Lösemitteldampf</translation>
    </message>
    <message>
        <source>Speed by temperature: Arrhenius&apos; law, as the maturity method ASTM C1074 uses it (published). If the sheet gives no further time, 58 kJ/mol between 50 and 65: the middle of published values for cold-curing amine epoxies; the choice is this project&apos;s.</source>
        <translation>Tempo nach Temperatur: das Gesetz von Arrhenius, wie es die Reifemethode ASTM C1074 benutzt (veröffentlicht). Gibt das Datenblatt keine weitere Zeit an, 58 kJ/mol zwischen 50 und 65: die Mitte veröffentlichter Werte für kalt härtende Amin-Epoxide; die Wahl trifft dieses Projekt.</translation>
    </message>
    <message>
        <source>Tab</source>
        <translation>Tab</translation>
    </message>
    <message>
        <source>Take it back</source>
        <translation>Zurücknehmen</translation>
    </message>
    <message>
        <source>Temperature makes the clock</source>
        <translation>Die Temperatur macht die Uhr</translation>
    </message>
    <message>
        <source>That cold stalls it: Moussa, Vassilopoulos and Keller, Int. J. Adhes. Adhes. 35 (2012) 9–16 (published, read in the abstract).</source>
        <translation>Dass Kälte die Härtung anhält: Moussa, Vassilopoulos und Keller, Int. J. Adhes. Adhes. 35 (2012) 9–16 (veröffentlicht, in der Zusammenfassung gelesen).</translation>
    </message>
    <message>
        <source>That is what the test smear, the twist and the tap are for. A soft smear proves much; a hard one proves little.</source>
        <translation>Dafür sind Probestrich, Drehen und Klopfen da. Ein weicher Strich beweist viel, ein harter wenig.</translation>
    </message>
    <message>
        <source>The air was well above the sheet&apos;s highest temperature. Look for foam, a soft ferrule, a head that crept.</source>
        <translation>Die Luft war weit über der höchsten Temperatur des Datenblatts. Nach Schaum, weicher Ferrule, gekrochenem Kopf sehen.</translation>
    </message>
    <message>
        <source>The air, less the thermometer&apos;s error, is below the sheet&apos;s lowest temperature. If no time comes of it within 60 days the tile says “no time”.</source>
        <translation>Die Luft, abzüglich des Thermometerfehlers, liegt unter der niedrigsten Temperatur des Datenblatts. Wird daraus in 60 Tagen keine Zeit, sagt die Kachel „keine Zeit“.</translation>
    </message>
    <message>
        <source>The batch&apos;s smear was soft when it should be hard. Every club of the batch is held, wherever it is.</source>
        <translation>Der Probestrich des Ansatzes war weich, als er hart sein sollte. Jeder Schläger des Ansatzes ist gesperrt, wo er auch liegt.</translation>
    </message>
    <message>
        <source>The board</source>
        <translation>Die Tafel</translation>
    </message>
    <message>
        <source>The board estimates; it does not measure the bond. The epoxy&apos;s own sheet, local codes and a qualified builder come first.</source>
        <translation>Die Tafel schätzt; sie misst die Klebung nicht. Das Datenblatt des Epoxids, örtliche Vorschriften und ein Fachmann gehen vor.</translation>
    </message>
    <message>
        <source>The epoxy&apos;s times and temperatures: from its sheet, as you typed it. The sheets that come with the board are invented, each typical of its class.</source>
        <translation>Zeiten und Temperaturen des Epoxids: aus seinem Datenblatt, wie eingetippt. Die mitgelieferten Datenblätter sind erfunden, jedes typisch für seine Art.</translation>
    </message>
    <message>
        <source>The errors of {sure} and {unsure}, the four and the two hours, the lag of heads: decisions of this project.</source>
        <translation>Die Fehler von {sure} und {unsure}, die vier und die zwei Stunden, die Trägheit der Köpfe: Festlegungen dieses Projekts.</translation>
    </message>
    <message>
        <source>The glue line runs from mixed to hard</source>
        <translation>Die Klebelinie läuft von gemischt bis hart</translation>
    </message>
    <message>
        <source>The grip bench may have it: cut the butt, check the swing weight, grip. No twist on the head, no bending. The clock goes on.</source>
        <translation>Die Griffbank darf ihn haben: Butt kürzen, Schwunggewicht prüfen, griffen. Kein Drehen am Kopf, kein Biegen. Die Uhr läuft weiter.</translation>
    </message>
    <message>
        <source>The label&apos;s time is the sheet&apos;s</source>
        <translation>Die Zeit des Etiketts ist die des Datenblatts</translation>
    </message>
    <message>
        <source>The large key: mixed now, all racked, all looked at</source>
        <translation>Die große Taste: jetzt gemischt, alle im Ständer, alle angesehen</translation>
    </message>
    <message>
        <source>The mix in the cup follows the room; a joint in the box can be past its working life well before the cup is.</source>
        <translation>Die Mischung im Becher folgt dem Raum; eine Klebung in der Wärmebox kann lange vor dem Becher über die Topfzeit sein.</translation>
    </message>
    <message>
        <source>The reaction: the rate law of Kamal and Sourour, slowed by diffusion after Chern and Poehlein (published); its constants are this project&apos;s.</source>
        <translation>Die Reaktion: das Zeitgesetz von Kamal und Sourour, durch Diffusion gebremst nach Chern und Poehlein (veröffentlicht); die Konstanten sind die dieses Projekts.</translation>
    </message>
    <message>
        <source>The record has a gap, mostly a night, hatched on the line. The top strip asks how cold it got; until it is answered nothing is permitted across the gap.</source>
        <translation>Die Aufzeichnung hat eine Lücke, meist eine Nacht, auf der Linie schraffiert. Die obere Leiste fragt, wie kalt es wurde; bis zur Antwort wird über die Lücke hinweg nichts erlaubt.</translation>
    </message>
    <message>
        <source>The right column: what needs an answer, what is due, and the selected club with its curve and the reason for its times.</source>
        <translation>Die rechte Spalte: was Antwort braucht, was fällig ist, und der gewählte Schläger mit Kurve und Grund seiner Zeiten.</translation>
    </message>
    <message>
        <source>The states</source>
        <translation>Die Zustände</translation>
    </message>
    <message>
        <source>The wall view</source>
        <translation>Die Wandansicht</translation>
    </message>
    <message>
        <source>The warm box</source>
        <translation>Die Wärmebox</translation>
    </message>
    <message>
        <source>To be read from across the room: one tile for all clubs of a job that share a batch. A club on HOLD, cold, or in another state has a tile of its own. More than 15 make pages that turn by themselves, the worst first.</source>
        <translation>Zum Lesen quer durch den Raum: eine Kachel für alle Schläger eines Auftrags aus einem Ansatz. Ein Schläger mit SPERRE, kalt oder in anderem Zustand hat eine eigene Kachel. Mehr als 15 ergeben Seiten, die von selbst blättern, die schlimmste zuerst.</translation>
    </message>
    <message>
        <source>Twist the head, tap and listen, look at the ferrule before it goes out. READY is a person&apos;s word and is pressed.</source>
        <translation>Kopf drehen, klopfen und horchen, Ferrule ansehen, bevor er hinausgeht. FERTIG ist das Wort eines Menschen und wird gedrückt.</translation>
    </message>
    <message>
        <source>Uncured epoxy and hardener can sensitise: an allergy that stays. Gloves, eye protection, ventilation; no solvent on the skin; the sheet&apos;s advice.</source>
        <translation>Nicht ausgehärtetes Epoxid und Härter können sensibilisieren: eine Allergie, die bleibt. Handschuhe, Augenschutz, Lüftung; kein Lösemittel auf die Haut; die Angaben des Datenblatts.</translation>
    </message>
    <message>
        <source>Under it two dots: the hollow one is “probably”, the solid one is “not before”.</source>
        <translation>Darunter zwei Punkte: der hohle ist „wohl“, der volle „nicht vor“.</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>WARNING</source>
        <translation>WARNUNG</translation>
    </message>
    <message>
        <source>What the board cannot know</source>
        <translation>Was die Tafel nicht wissen kann</translation>
    </message>
    <message>
        <source>When in doubt the club isn&apos;t hit. Twist the head, tap and listen, look at the ferrule before it goes out. Whoever releases a club before its time does so on their own word, with initials and a reason.</source>
        <translation>Im Zweifel wird nicht geschlagen. Kopf drehen, klopfen und horchen, Ferrule ansehen, bevor er hinausgeht. Wer einen Schläger vor seiner Zeit freigibt, tut es auf eigenes Wort, mit Kürzel und Grund.</translation>
    </message>
    <message>
        <source>Where the values come from</source>
        <translation>Woher die Werte kommen</translation>
    </message>
    <message>
        <source>While gluing up</source>
        <translation>Beim Kleben</translation>
    </message>
    <message>
        <source>a knock that nobody told it of</source>
        <translation>ein Stoß, von dem ihr niemand gesagt hat</translation>
    </message>
    <message>
        <source>arrows, Home, End</source>
        <translation>Pfeile, Pos1, Ende</translation>
    </message>
    <message>
        <source>before it was hard</source>
        <translation>bevor er hart war</translation>
    </message>
    <message>
        <source>cold</source>
        <translation>kalt</translation>
    </message>
    <message>
        <source>cold: the hours count for little</source>
        <translation>kalt: Die Stunden zählen wenig</translation>
    </message>
    <message>
        <source>day-long, {time}</source>
        <translation>Tageskleber, {time}</translation>
    </message>
    <message>
        <source>disturbed {time}</source>
        <translation>bewegt {time}</translation>
    </message>
    <message>
        <source>low?</source>
        <translation>wie kalt?</translation>
    </message>
    <message>
        <source>lowest overnight not known</source>
        <translation>Tiefstwert der Nacht nicht bekannt</translation>
    </message>
    <message>
        <source>moisture, old epoxy, the wrong sheet, the heat that a large mix makes</source>
        <translation>Feuchte, alter Kleber, falsches Datenblatt, die Wärme eines großen Ansatzes</translation>
    </message>
    <message>
        <source>night not known</source>
        <translation>Nacht nicht bekannt</translation>
    </message>
    <message>
        <source>no time</source>
        <translation>keine Zeit</translation>
    </message>
    <message>
        <source>not before</source>
        <translation>nicht vor</translation>
    </message>
    <message>
        <source>not before this time</source>
        <translation>nicht vor dieser Zeit</translation>
    </message>
    <message>
        <source>on hold: disturbed</source>
        <translation>gesperrt: bewegt</translation>
    </message>
    <message>
        <source>on hold: soft smear</source>
        <translation>gesperrt: Probe weich</translation>
    </message>
    <message>
        <source>on hold: too hot</source>
        <translation>gesperrt: zu heiß</translation>
    </message>
    <message>
        <source>probably hard by {time}</source>
        <translation>wohl hart um {time}</translation>
    </message>
    <message>
        <source>probably {time}</source>
        <translation>wohl {time}</translation>
    </message>
    <message>
        <source>released</source>
        <translation>freigegeben</translation>
    </message>
    <message>
        <source>released {initials}</source>
        <translation>frei {initials}</translation>
    </message>
    <message>
        <source>space</source>
        <translation>Leertaste</translation>
    </message>
    <message>
        <source>space, Enter</source>
        <translation>Leertaste, Eingabe</translation>
    </message>
    <message>
        <source>use by this time</source>
        <translation>nutzbar bis zu dieser Zeit</translation>
    </message>
    <message>
        <source>warm it</source>
        <translation>wärmen</translation>
    </message>
    <message>
        <source>whether the mix had its ratio and was mixed to the end</source>
        <translation>ob die Mischung im Verhältnis war und ganz durchgemischt</translation>
    </message>
    <message>
        <source>whether tip and bore were abraded, clean and dry</source>
        <translation>ob Tip und Bohrung angeraut, sauber und trocken waren</translation>
    </message>
    <message>
        <source>“24 h” on the pack is said of the sheet&apos;s temperature. In a cooler shop it is later. The selected club shows three times beside each other: the label&apos;s, this room&apos;s, and the one with the margin, each with its reason. “Sets in 5 minutes” is how long the mix may be used, not when the club may be moved.</source>
        <translation>„24 h“ auf der Packung gilt bei der Temperatur des Datenblatts. In einer kühleren Werkstatt dauert es länger. Der gewählte Schläger zeigt drei Zeiten nebeneinander: die des Etiketts, die dieses Raums und die mit Reserve, jede mit ihrem Grund. „Härtet in 5 Minuten“ sagt, wie lange die Mischung nutzbar ist, nicht wann der Schläger bewegt werden darf.</translation>
    </message>
    <message>
        <source>“not before” is the late time: it errs on the safe side. “probably” is the time to expect. Neither is a promise of the early kind; that one is shown nowhere.</source>
        <translation>„nicht vor“ ist die späte Zeit: Sie irrt zur sicheren Seite. „wohl“ ist die zu erwartende Zeit. Keine verspricht etwas Frühes; die frühe steht nirgends.</translation>
    </message>
    <message>
        <source>“use by” ends the working life, “since” is a permission already reached.</source>
        <translation>„nutzbar bis“ beendet die Topfzeit, „seit“ ist eine schon erreichte Freigabe.</translation>
    </message>
</context>
<context>
    <name>HelpDialog</name>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Help</source>
        <translation>Hilfe</translation>
    </message>
    <message>
        <source>Pages of the help</source>
        <translation>Seiten der Hilfe</translation>
    </message>
</context>
<context>
    <name>History</name>
    <message>
        <source>All racked</source>
        <translation>Alle im Ständer</translation>
    </message>
    <message>
        <source>Batch</source>
        <translation>Ansatz</translation>
    </message>
    <message>
        <source>By its sheet</source>
        <translation>Nach Datenblatt</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Coldest so far</source>
        <translation>Bisher am kältesten</translation>
    </message>
    <message>
        <source>Customer</source>
        <translation>Kunde</translation>
    </message>
    <message>
        <source>Epoxy</source>
        <translation>Epoxid</translation>
    </message>
    <message>
        <source>Glued</source>
        <translation>Geklebt</translation>
    </message>
    <message>
        <source>Graphics</source>
        <translation>Aufdruck</translation>
    </message>
    <message>
        <source>HOLD ended: {outcome}</source>
        <translation>SPERRE beendet: {outcome}</translation>
    </message>
    <message>
        <source>Job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>Joint</source>
        <translation>Klebung</translation>
    </message>
    <message>
        <source>Looked at</source>
        <translation>Angesehen</translation>
    </message>
    <message>
        <source>Lot</source>
        <translation>Charge</translation>
    </message>
    <message>
        <source>Mixed</source>
        <translation>Gemischt</translation>
    </message>
    <message>
        <source>Now at</source>
        <translation>Jetzt in</translation>
    </message>
    <message>
        <source>Parts</source>
        <translation>Teile</translation>
    </message>
    <message>
        <source>READY pressed for the job</source>
        <translation>FERTIG für den Auftrag gedrückt</translation>
    </message>
    <message>
        <source>READY taken back</source>
        <translation>FERTIG zurückgenommen</translation>
    </message>
    <message>
        <source>Record of the joint: {club}, job {job}</source>
        <translation>Protokoll der Klebung: {club}, Auftrag {job}</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>What happened</source>
        <translation>Was geschah</translation>
    </message>
    <message>
        <source>When</source>
        <translation>Wann</translation>
    </message>
    <message>
        <source>Who</source>
        <translation>Wer</translation>
    </message>
    <message>
        <source>all racked</source>
        <translation>alle im Ständer</translation>
    </message>
    <message>
        <source>an earlier {kind}, batch {batch}, glued {time}: {outcome}</source>
        <translation>früher {kind}, Ansatz {batch}, geklebt {time}: {outcome}</translation>
    </message>
    <message>
        <source>an earlier {kind}, never glued: {outcome}</source>
        <translation>früher {kind}, nie geklebt: {outcome}</translation>
    </message>
    <message>
        <source>as warm as the shop</source>
        <translation>so warm wie die Werkstatt</translation>
    </message>
    <message>
        <source>batch mixed</source>
        <translation>Ansatz gemischt</translation>
    </message>
    <message>
        <source>carried to {place}</source>
        <translation>nach {place} getragen</translation>
    </message>
    <message>
        <source>corrected: all racked {new}, was {old}</source>
        <translation>berichtigt: alle im Ständer {new}, war {old}</translation>
    </message>
    <message>
        <source>corrected: another slot</source>
        <translation>berichtigt: anderer Platz</translation>
    </message>
    <message>
        <source>corrected: glued with another batch</source>
        <translation>berichtigt: mit anderem Ansatz geklebt</translation>
    </message>
    <message>
        <source>corrected: glued {new}, was {old}</source>
        <translation>berichtigt: geklebt {new}, war {old}</translation>
    </message>
    <message>
        <source>corrected: graphics {new}, was {old}</source>
        <translation>berichtigt: Aufdruck {new}, war {old}</translation>
    </message>
    <message>
        <source>corrected: job {new}, was {old}</source>
        <translation>berichtigt: Auftrag {new}, war {old}</translation>
    </message>
    <message>
        <source>corrected: lot {new}, was {old}</source>
        <translation>berichtigt: Charge {new}, war {old}</translation>
    </message>
    <message>
        <source>corrected: mixed {new}, was {old}</source>
        <translation>berichtigt: gemischt {new}, war {old}</translation>
    </message>
    <message>
        <source>corrected: parts {new}, were {old}</source>
        <translation>berichtigt: Teile {new}, waren {old}</translation>
    </message>
    <message>
        <source>corrected: swapped with another club</source>
        <translation>berichtigt: mit anderem Schläger getauscht</translation>
    </message>
    <message>
        <source>corrected: {new}, was {old}</source>
        <translation>berichtigt: {new}, war {old}</translation>
    </message>
    <message>
        <source>entered by mistake</source>
        <translation>versehentlich eingetragen</translation>
    </message>
    <message>
        <source>glued late</source>
        <translation>spät geklebt</translation>
    </message>
    <message>
        <source>laid out again, to be glued with a new batch</source>
        <translation>neu angelegt, mit neuem Ansatz zu kleben</translation>
    </message>
    <message>
        <source>laid out at {place}</source>
        <translation>angelegt in {place}</translation>
    </message>
    <message>
        <source>last look done</source>
        <translation>letzter Blick getan</translation>
    </message>
    <message>
        <source>left the shop</source>
        <translation>aus der Werkstatt gegangen</translation>
    </message>
    <message>
        <source>may come off the rack</source>
        <translation>darf vom Ständer</translation>
    </message>
    <message>
        <source>moved after its working life</source>
        <translation>nach der Topfzeit bewegt</translation>
    </message>
    <message>
        <source>not noted</source>
        <translation>nicht vermerkt</translation>
    </message>
    <message>
        <source>not yet</source>
        <translation>noch nicht</translation>
    </message>
    <message>
        <source>nothing seen</source>
        <translation>nichts zu sehen</translation>
    </message>
    <message>
        <source>on HOLD: disturbed</source>
        <translation>SPERRE: bewegt</translation>
    </message>
    <message>
        <source>on HOLD: soft smear</source>
        <translation>SPERRE: Probe weich</translation>
    </message>
    <message>
        <source>on HOLD: too hot</source>
        <translation>SPERRE: zu heiß</translation>
    </message>
    <message>
        <source>permission withdrawn: {allowed}</source>
        <translation>Freigabe zurückgezogen: {allowed}</translation>
    </message>
    <message>
        <source>promised for {new}, was {old}</source>
        <translation>zugesagt für {new}, war {old}</translation>
    </message>
    <message>
        <source>pulled, cleaned and glued again</source>
        <translation>abgezogen, gereinigt und neu geklebt</translation>
    </message>
    <message>
        <source>pulled, cleaned, re-glued with a new batch</source>
        <translation>abgezogen, gereinigt, mit neuem Ansatz geklebt</translation>
    </message>
    <message>
        <source>re-aimed before it gelled, the clock runs on</source>
        <translation>vor dem Gelieren neu ausgerichtet, die Uhr läuft weiter</translation>
    </message>
    <message>
        <source>re-aimed, clock runs on from mixing</source>
        <translation>neu ausgerichtet, Uhr läuft ab Mischen weiter</translation>
    </message>
    <message>
        <source>released by a person</source>
        <translation>von einem Menschen freigegeben</translation>
    </message>
    <message>
        <source>released by a person: {reason}</source>
        <translation>von einem Menschen freigegeben: {reason}</translation>
    </message>
    <message>
        <source>said at glue-up: off the rack not before {handling_us}, safe to hit not before {full_us}</source>
        <translation>beim Kleben gesagt: vom Ständer nicht vor {handling_us}, schlagfest nicht vor {full_us}</translation>
    </message>
    <message>
        <source>said at glue-up: safe to hit not before {full_us}</source>
        <translation>beim Kleben gesagt: schlagfest nicht vor {full_us}</translation>
    </message>
    <message>
        <source>scrapped</source>
        <translation>verworfen</translation>
    </message>
    <message>
        <source>the customer&apos;s name and phone erased</source>
        <translation>Name und Telefon des Kunden gelöscht</translation>
    </message>
    <message>
        <source>touched, head did not turn</source>
        <translation>berührt, Kopf hat sich nicht gedreht</translation>
    </message>
    <message>
        <source>whole job safe to hit</source>
        <translation>ganzer Auftrag schlagfest</translation>
    </message>
    <message>
        <source>{reason}, {detail}</source>
        <translation>{reason}, {detail}</translation>
    </message>
    <message>
        <source>{temperature}, {time}</source>
        <translation>{temperature}, {time}</translation>
    </message>
    <message>
        <source>{zone}: lowest of the night {temperature}</source>
        <translation>{zone}: Tiefstwert der Nacht {temperature}</translation>
    </message>
</context>
<context>
    <name>HoldDialog</name>
    <message>
        <source>Entered by mistake: nothing happened</source>
        <translation>Versehentlich eingetragen: Es war nichts</translation>
    </message>
    <message>
        <source>Job {n}, disturbed after its working life, before the glue can have gelled.</source>
        <translation>Auftrag {n}, nach der Topfzeit bewegt, bevor der Kleber geliert sein kann.</translation>
    </message>
    <message>
        <source>Job {n}, disturbed while the glue is still soft.</source>
        <translation>Auftrag {n}, bewegt, während der Kleber noch weich ist.</translation>
    </message>
    <message>
        <source>Job {n}, on HOLD since {time}: {reason}.</source>
        <translation>Auftrag {n}, SPERRE seit {time}: {reason}.</translation>
    </message>
    <message>
        <source>Leave it on HOLD</source>
        <translation>SPERRE lassen</translation>
    </message>
    <message>
        <source>Nothing happened</source>
        <translation>Es war nichts</translation>
    </message>
    <message>
        <source>Nothing seen: no foam, no soft ferrule, no crept head</source>
        <translation>Nichts zu sehen: kein Schaum, keine weiche Ferrule, kein gekrochener Kopf</translation>
    </message>
    <message>
        <source>Pulled, cleaned, re-glued with a new batch</source>
        <translation>Abgezogen, gereinigt, mit neuem Ansatz geklebt</translation>
    </message>
    <message>
        <source>Re-aimed: the clock runs on from mixing</source>
        <translation>Neu ausgerichtet: Die Uhr läuft ab Mischen weiter</translation>
    </message>
    <message>
        <source>Released by a person, with a reason…</source>
        <translation>Von einem Menschen freigegeben, mit Grund…</translation>
    </message>
    <message>
        <source>Scrapped: the joint is taken apart</source>
        <translation>Verworfen: Die Klebung wird gelöst</translation>
    </message>
    <message>
        <source>The glue may have gelled meanwhile, so it is on HOLD. What did you do?</source>
        <translation>Der Kleber kann inzwischen geliert sein, also SPERRE. Was wurde getan?</translation>
    </message>
    <message>
        <source>Touched, but the head did not turn: the clock runs on</source>
        <translation>Berührt, aber der Kopf hat sich nicht gedreht: Die Uhr läuft weiter</translation>
    </message>
    <message>
        <source>What happened to {where} {club}?</source>
        <translation>Was war mit {where} {club}?</translation>
    </message>
    <message>
        <source>disturbed</source>
        <translation>bewegt</translation>
    </message>
    <message>
        <source>soft smear</source>
        <translation>Probe weich</translation>
    </message>
    <message>
        <source>too hot</source>
        <translation>zu heiß</translation>
    </message>
</context>
<context>
    <name>Hours</name>
    <message>
        <source>a closing hour after the opening hour</source>
        <translation>eine Schließzeit nach der Öffnungszeit</translation>
    </message>
    <message>
        <source>opening hours</source>
        <translation>Öffnungszeiten</translation>
    </message>
    <message>
        <source>seven days</source>
        <translation>sieben Tage</translation>
    </message>
</context>
<context>
    <name>House</name>
    <message numerus="yes">
        <source>%n days</source>
        <comment>%n day</comment>
        <translation>
            <numerusform>%n Tag</numerusform>
            <numerusform>%n Tage</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n later ones</source>
        <comment>%n later one</comment>
        <translation>
            <numerusform>%n spätere</numerusform>
            <numerusform>%n spätere</numerusform>
        </translation>
    </message>
    <message>
        <source>No backup was made. {error}</source>
        <translation>Es wurde nicht gesichert. {error}</translation>
    </message>
    <message>
        <source>The clock of this computer was put forward by {span}. If that was wrong, the times on the board are too; look at date and time.</source>
        <translation>Die Uhr dieses Rechners wurde um {span} vorgestellt. War das falsch, sind es die Zeiten der Tafel auch; Datum und Uhrzeit prüfen.</translation>
    </message>
    <message>
        <source>The clock of this computer was set back by {span}. If that was wrong, the times on the board are too; look at date and time.</source>
        <translation>Die Uhr dieses Rechners wurde um {span} zurückgestellt. War das falsch, sind es die Zeiten der Tafel auch; Datum und Uhrzeit prüfen.</translation>
    </message>
    <message>
        <source>The clock of this computer was set back: the board has records that are {span} later. Nothing is lost and what was earned stays; look at date and time.</source>
        <translation>Die Uhr dieses Rechners wurde zurückgestellt: Die Tafel hat Einträge, die {span} später sind. Nichts ist verloren, und was verdient ist, bleibt; Datum und Uhrzeit prüfen.</translation>
    </message>
    <message>
        <source>at least one reading up to now</source>
        <translation>mindestens ein Messwert bis jetzt</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keiner</translation>
    </message>
    <message>
        <source>record</source>
        <translation>Aufzeichnung</translation>
    </message>
</context>
<context>
    <name>ImportAnswers</name>
    <message>
        <source>Between columns</source>
        <translation>Zwischen Spalten</translation>
    </message>
    <message>
        <source>Clock time</source>
        <translation>Uhrzeit</translation>
    </message>
    <message>
        <source>Decimal mark</source>
        <translation>Dezimalzeichen</translation>
    </message>
    <message>
        <source>How it is read</source>
        <translation>Wie gelesen wird</translation>
    </message>
    <message>
        <source>Letters</source>
        <translation>Zeichen</translation>
    </message>
    <message>
        <source>Order of dates</source>
        <translation>Folge im Datum</translation>
    </message>
    <message>
        <source>Temperature</source>
        <translation>Temperatur</translation>
    </message>
    <message>
        <source>Time</source>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>Time zone</source>
        <translation>Zeitzone</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>in the same column</source>
        <translation>in derselben Spalte</translation>
    </message>
    <message>
        <source>named in the file</source>
        <translation>in der Datei genannt</translation>
    </message>
    <message>
        <source>please choose</source>
        <translation>bitte wählen</translation>
    </message>
</context>
<context>
    <name>ImportDialog</name>
    <message numerus="yes">
        <source>%n lines to read once the questions are answered.</source>
        <comment>%n line to read once the questions are answered.</comment>
        <translation>
            <numerusform>%n Zeile zu lesen, sobald die Fragen beantwortet sind.</numerusform>
            <numerusform>%n Zeilen zu lesen, sobald die Fragen beantwortet sind.</numerusform>
        </translation>
    </message>
    <message>
        <source>A logger&apos;s CSV. Importing the same file again adds nothing twice.</source>
        <translation>Die CSV-Datei eines Loggers. Dieselbe Datei noch einmal einzulesen fügt nichts doppelt hinzu.</translation>
    </message>
    <message numerus="yes">
        <source>At %n moments the board has another temperature than the file.</source>
        <comment>At %n moment the board has another temperature than the file.</comment>
        <translation>
            <numerusform>In %n Zeitpunkt hat die Tafel eine andere Temperatur als die Datei.</numerusform>
            <numerusform>In %n Zeitpunkten hat die Tafel eine andere Temperatur als die Datei.</numerusform>
        </translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Choose a logger&apos;s file</source>
        <translation>Datei eines Loggers wählen</translation>
    </message>
    <message>
        <source>Choose file…</source>
        <translation>Datei wählen…</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Gaps, and lines that are left out</source>
        <translation>Lücken, und Zeilen, die wegbleiben</translation>
    </message>
    <message>
        <source>Import</source>
        <translation>Einlesen</translation>
    </message>
    <message>
        <source>Import a temperature record</source>
        <translation>Temperaturaufzeichnung einlesen</translation>
    </message>
    <message>
        <source>It is the air of</source>
        <translation>Es ist die Luft von</translation>
    </message>
    <message>
        <source>Its first lines</source>
        <translation>Ihre ersten Zeilen</translation>
    </message>
    <message>
        <source>Keep what the board has</source>
        <translation>Behalten, was die Tafel hat</translation>
    </message>
    <message>
        <source>No gap over 2 h, nothing left out.</source>
        <translation>Keine Lücke über 2 h, nichts weggelassen.</translation>
    </message>
    <message>
        <source>Reading…</source>
        <translation>Wird gelesen…</translation>
    </message>
    <message>
        <source>Records (*.csv *.txt *.tsv *.log);;All files (*)</source>
        <translation>Aufzeichnungen (*.csv *.txt *.tsv *.log);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Take the file&apos;s</source>
        <translation>Die der Datei nehmen</translation>
    </message>
    <message>
        <source>The first lines of the file</source>
        <translation>Die ersten Zeilen der Datei</translation>
    </message>
    <message>
        <source>What is in it</source>
        <translation>Was darin steht</translation>
    </message>
    <message>
        <source>Zone that the record belongs to</source>
        <translation>Zone, zu der die Aufzeichnung gehört</translation>
    </message>
    <message>
        <source>no file yet</source>
        <translation>noch keine Datei</translation>
    </message>
</context>
<context>
    <name>ImportView</name>
    <message numerus="yes">
        <source>%n already there</source>
        <comment>%n already there</comment>
        <translation>
            <numerusform>%n schon da</numerusform>
            <numerusform>%n schon da</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n kept as they were</source>
        <comment>%n kept as it was</comment>
        <translation>
            <numerusform>%n blieb, wie er war</numerusform>
            <numerusform>%n blieben, wie sie waren</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n lines give a second temperature for the same moment: the first is taken.</source>
        <comment>%n line gives a second temperature for the same moment: the first is taken.</comment>
        <translation>
            <numerusform>%n Zeile nennt eine zweite Temperatur für denselben Zeitpunkt: Die erste gilt.</numerusform>
            <numerusform>%n Zeilen nennen eine zweite Temperatur für denselben Zeitpunkt: Die erste gilt.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n lines left out</source>
        <comment>%n line left out</comment>
        <translation>
            <numerusform>%n Zeile weggelassen</numerusform>
            <numerusform>%n Zeilen weggelassen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n lines left out: {reason}.</source>
        <comment>%n line left out: {reason}.</comment>
        <translation>
            <numerusform>%n Zeile weggelassen: {reason}.</numerusform>
            <numerusform>%n Zeilen weggelassen: {reason}.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n lines out of order: put in place.</source>
        <comment>%n line out of order: put in place.</comment>
        <translation>
            <numerusform>%n Zeile nicht in der Reihe: eingeordnet.</numerusform>
            <numerusform>%n Zeilen nicht in der Reihe: eingeordnet.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n lines there twice, the same: taken once.</source>
        <comment>%n line there twice, the same: taken once.</comment>
        <translation>
            <numerusform>%n Zeile doppelt und gleich: einmal genommen.</numerusform>
            <numerusform>%n Zeilen doppelt und gleich: einmal genommen.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n new</source>
        <comment>%n new</comment>
        <translation>
            <numerusform>%n neu</numerusform>
            <numerusform>%n neu</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n readings lie after now: left out.</source>
        <comment>%n reading lies after now: left out.</comment>
        <translation>
            <numerusform>%n Messwert liegt nach jetzt: weggelassen.</numerusform>
            <numerusform>%n Messwerte liegen nach jetzt: weggelassen.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n readings, {first} to {last}</source>
        <comment>%n reading, {first} to {last}</comment>
        <translation>
            <numerusform>%n Messwert, {first} bis {last}</numerusform>
            <numerusform>%n Messwerte, {first} bis {last}</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n replaced by the file&apos;s</source>
        <comment>%n replaced by the file&apos;s</comment>
        <translation>
            <numerusform>%n durch den der Datei ersetzt</numerusform>
            <numerusform>%n durch die der Datei ersetzt</numerusform>
        </translation>
    </message>
    <message>
        <source>Is it °C or °F? The file doesn&apos;t say.</source>
        <translation>Ist es °C oder °F? Die Datei sagt es nicht.</translation>
    </message>
    <message>
        <source>Is the day first, or the month? No day in the file settles it.</source>
        <translation>Steht der Tag vorn oder der Monat? Kein Tag in der Datei entscheidet es.</translation>
    </message>
    <message>
        <source>Line {line}, {moment}: {other}, taken is {kept}.</source>
        <translation>Zeile {line}, {moment}: {other}, genommen ist {kept}.</translation>
    </message>
    <message>
        <source>Line {line}: {reason}: {text}</source>
        <translation>Zeile {line}: {reason}: {text}</translation>
    </message>
    <message>
        <source>No line of it can be taken.</source>
        <translation>Keine Zeile davon ist zu brauchen.</translation>
    </message>
    <message>
        <source>No record for {length}: {first} to {last}. The board will ask how cold it got.</source>
        <translation>Keine Messung über {length}: {first} bis {last}. Die Tafel wird fragen, wie kalt es wurde.</translation>
    </message>
    <message>
        <source>Summer time as in that zone. An hour that came twice is left out if nothing tells which.</source>
        <translation>Sommerzeit wie in dieser Zone. Eine Stunde, die zweimal kam, bleibt weg, wenn nichts sie unterscheidet.</translation>
    </message>
    <message>
        <source>The file&apos;s times carry their own offset; nothing to choose.</source>
        <translation>Die Zeiten der Datei nennen ihren Versatz selbst; nichts zu wählen.</translation>
    </message>
    <message>
        <source>The newest line stands first: turned round.</source>
        <translation>Die neueste Zeile steht vorn: umgedreht.</translation>
    </message>
    <message>
        <source>The same all year: this clock was never put forward for summer time.</source>
        <translation>Das ganze Jahr gleich: Diese Uhr wurde nie auf Sommerzeit gestellt.</translation>
    </message>
    <message>
        <source>UTF-8, marked</source>
        <translation>UTF-8, mit Marke</translation>
    </message>
    <message>
        <source>Which column holds the time?</source>
        <translation>Welche Spalte enthält die Zeit?</translation>
    </message>
    <message>
        <source>Which column holds this zone&apos;s temperature?</source>
        <translation>Welche Spalte enthält die Temperatur dieser Zone?</translation>
    </message>
    <message>
        <source>Which time zone did the logger&apos;s clock show?</source>
        <translation>Welche Zeitzone zeigte die Uhr des Loggers?</translation>
    </message>
    <message>
        <source>bar</source>
        <translation>Strich</translation>
    </message>
    <message>
        <source>comma</source>
        <translation>Komma</translation>
    </message>
    <message>
        <source>comma, 21,5</source>
        <translation>Komma, 21,5</translation>
    </message>
    <message>
        <source>day or month first?</source>
        <translation>Tag oder Monat vorn?</translation>
    </message>
    <message>
        <source>day, month, year</source>
        <translation>Tag, Monat, Jahr</translation>
    </message>
    <message>
        <source>month, day, year</source>
        <translation>Monat, Tag, Jahr</translation>
    </message>
    <message>
        <source>point, 21.5</source>
        <translation>Punkt, 21.5</translation>
    </message>
    <message>
        <source>semicolon</source>
        <translation>Strichpunkt</translation>
    </message>
    <message>
        <source>tab</source>
        <translation>Tabulator</translation>
    </message>
    <message>
        <source>year, month, day</source>
        <translation>Jahr, Monat, Tag</translation>
    </message>
    <message>
        <source>{days} days</source>
        <translation>{days} Tage</translation>
    </message>
    <message>
        <source>{day} {month} {year} {time}</source>
        <translation>{day}. {month} {year} {time}</translation>
    </message>
    <message>
        <source>{held}; nothing left out.</source>
        <translation>{held}; nichts weggelassen.</translation>
    </message>
    <message>
        <source>{held}; {lines}.</source>
        <translation>{held}; {lines}.</translation>
    </message>
    <message>
        <source>{hours} h</source>
        <translation>{hours} h</translation>
    </message>
    <message numerus="yes">
        <source>… and %n more lines.</source>
        <comment>… and %n more line.</comment>
        <translation>
            <numerusform>… und noch %n Zeile.</numerusform>
            <numerusform>… und noch %n Zeilen.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>Initials</name>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Gripped, loft and lie, twisted and tapped by hand: it may go out.</source>
        <translation>Gegrifft, Loft und Lie, von Hand gedreht und geklopft: Er darf hinaus.</translation>
    </message>
    <message>
        <source>Initials of who does it</source>
        <translation>Kürzel dessen, der es tut</translation>
    </message>
    <message>
        <source>It is {initials}</source>
        <translation>Es ist {initials}</translation>
    </message>
    <message>
        <source>Job {number} is READY</source>
        <translation>Auftrag {number} ist FERTIG</translation>
    </message>
    <message>
        <source>READY</source>
        <translation>FERTIG</translation>
    </message>
    <message>
        <source>Who</source>
        <translation>Wer</translation>
    </message>
    <message>
        <source>initials</source>
        <translation>Kürzel</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>the initials of who does it</source>
        <translation>das Kürzel dessen, der es tut</translation>
    </message>
    <message>
        <source>who</source>
        <translation>wer</translation>
    </message>
</context>
<context>
    <name>Inspector</name>
    <message numerus="yes">
        <source>%n h in the {box} at {air} from {start}: not before {time}</source>
        <comment>%n h in the {box} at {air} from {start}: not before {time}</comment>
        <translation>
            <numerusform>%n h in {box} mit {air} ab {start}: nicht vor {time}</numerusform>
            <numerusform>%n h in {box} mit {air} ab {start}: nicht vor {time}</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n h in the {box}: not before {time}</source>
        <comment>%n h in the {box}: not before {time}</comment>
        <translation>
            <numerusform>%n h in {box}: nicht vor {time}</numerusform>
            <numerusform>%n h in {box}: nicht vor {time}</numerusform>
        </translation>
    </message>
    <message>
        <source>All
racked</source>
        <translation>Alle im
Ständer</translation>
    </message>
    <message>
        <source>Answer</source>
        <translation>Antworten</translation>
    </message>
    <message>
        <source>As a table</source>
        <translation>Als Tabelle</translation>
    </message>
    <message>
        <source>Curve as a table…</source>
        <translation>Kurve als Tabelle…</translation>
    </message>
    <message>
        <source>Disturbed</source>
        <translation>Bewegt</translation>
    </message>
    <message>
        <source>Enter lays a club out here.</source>
        <translation>Eingabe legt hier einen Schläger an.</translation>
    </message>
    <message>
        <source>Graphics</source>
        <translation>Aufdruck</translation>
    </message>
    <message>
        <source>How the glue goes</source>
        <translation>Verlauf der Härtung</translation>
    </message>
    <message>
        <source>Job {job}, {customer}. Batch {batch}, mixed {time}</source>
        <translation>{job}, {customer}. Ansatz {batch}, gemischt {time}</translation>
    </message>
    <message>
        <source>Job {job}, {customer}. Batch {batch}, not mixed yet</source>
        <translation>{job}, {customer}. Ansatz {batch}, noch nicht gemischt</translation>
    </message>
    <message>
        <source>Joint</source>
        <translation>Klebung</translation>
    </message>
    <message>
        <source>Lay out
a job</source>
        <translation>Auftrag
anlegen</translation>
    </message>
    <message>
        <source>Lot</source>
        <translation>Charge</translation>
    </message>
    <message>
        <source>Mixed
now</source>
        <translation>Jetzt
gemischt</translation>
    </message>
    <message>
        <source>Mixed {time}</source>
        <translation>Gemischt {time}</translation>
    </message>
    <message>
        <source>More
actions…</source>
        <translation>Mehr
tun…</translation>
    </message>
    <message>
        <source>Move to
slot…</source>
        <translation>Auf Platz
stellen…</translation>
    </message>
    <message>
        <source>Nothing chosen</source>
        <translation>Nichts gewählt</translation>
    </message>
    <message>
        <source>Out of
the shop</source>
        <translation>Außer
Haus</translation>
    </message>
    <message>
        <source>Parts</source>
        <translation>Teile</translation>
    </message>
    <message>
        <source>Record</source>
        <translation>Protokoll</translation>
    </message>
    <message>
        <source>Record of the joint</source>
        <translation>Protokoll der Klebung</translation>
    </message>
    <message>
        <source>Save curve as PDF…</source>
        <translation>Kurve als PDF speichern…</translation>
    </message>
    <message>
        <source>Sooner</source>
        <translation>Früher</translation>
    </message>
    <message>
        <source>Take off
the rack</source>
        <translation>Vom
Ständer</translation>
    </message>
    <message>
        <source>Type a
temperature</source>
        <translation>Temperatur
eintippen</translation>
    </message>
    <message>
        <source>at {temperature}</source>
        <translation>bei {temperature}</translation>
    </message>
    <message>
        <source>below the sheet&apos;s {minimum}</source>
        <translation>unter {minimum} des Blatts</translation>
    </message>
    <message>
        <source>by its record</source>
        <translation>nach Aufzeichnung</translation>
    </message>
    <message>
        <source>by its record, now {air}</source>
        <translation>nach Aufzeichnung, jetzt {air}</translation>
    </message>
    <message>
        <source>cold, {temperature}</source>
        <translation>kalt, {temperature}</translation>
    </message>
    <message>
        <source>customer erased</source>
        <translation>Kunde gelöscht</translation>
    </message>
    <message>
        <source>empty</source>
        <translation>leer</translation>
    </message>
    <message>
        <source>index mark</source>
        <translation>Indexmarke</translation>
    </message>
    <message>
        <source>low?</source>
        <translation>wie kalt?</translation>
    </message>
    <message>
        <source>minimum {temperature}</source>
        <translation>Minimum {temperature}</translation>
    </message>
    <message>
        <source>no name given</source>
        <translation>kein Name genannt</translation>
    </message>
    <message>
        <source>no reading</source>
        <translation>keine Messung</translation>
    </message>
    <message>
        <source>no time</source>
        <translation>keine Zeit</translation>
    </message>
    <message>
        <source>not before</source>
        <translation>nicht vor</translation>
    </message>
    <message>
        <source>now probably {far}</source>
        <translation>jetzt wohl {far}</translation>
    </message>
    <message>
        <source>now {air}</source>
        <translation>jetzt {air}</translation>
    </message>
    <message>
        <source>off the rack</source>
        <translation>vom Ständer</translation>
    </message>
    <message>
        <source>on hold</source>
        <translation>gesperrt</translation>
    </message>
    <message>
        <source>probably hard by {time}</source>
        <translation>wohl hart um {time}</translation>
    </message>
    <message>
        <source>read, taken as {low}</source>
        <translation>abgelesen, gerechnet mit {low}</translation>
    </message>
    <message>
        <source>reckoned on, from {air}</source>
        <translation>weitergerechnet ab {air}</translation>
    </message>
    <message>
        <source>safe to hit</source>
        <translation>schlagfest</translation>
    </message>
    <message>
        <source>sheet minimum {temperature}</source>
        <translation>Minimum des Blatts {temperature}</translation>
    </message>
    <message>
        <source>since</source>
        <translation>seit</translation>
    </message>
    <message>
        <source>the label</source>
        <translation>das Etikett</translation>
    </message>
    <message>
        <source>the record has reached it</source>
        <translation>die Aufzeichnung reicht so weit</translation>
    </message>
    <message>
        <source>this room</source>
        <translation>dieser Raum</translation>
    </message>
    <message>
        <source>type the temperature</source>
        <translation>Temperatur eintippen</translation>
    </message>
    <message>
        <source>typed at the rack, taken as {low}</source>
        <translation>am Ständer eingetippt, gerechnet mit {low}</translation>
    </message>
    <message>
        <source>typed, taken as {low}</source>
        <translation>eingetippt, gerechnet mit {low}</translation>
    </message>
    <message>
        <source>was {time} at glue-up</source>
        <translation>war beim Kleben {time}</translation>
    </message>
    <message>
        <source>was {time} at glue-up; {why}</source>
        <translation>war beim Kleben {time}; {why}</translation>
    </message>
    <message>
        <source>with the margin</source>
        <translation>mit Reserve</translation>
    </message>
    <message>
        <source>{allowed} not before {time}</source>
        <translation>{allowed} nicht vor {time}</translation>
    </message>
    <message>
        <source>{allowed} not before {time} (probably hard by {probably})</source>
        <translation>{allowed} nicht vor {time} (wohl hart um {probably})</translation>
    </message>
    <message>
        <source>{allowed} since {time}</source>
        <translation>{allowed} seit {time}</translation>
    </message>
    <message>
        <source>{allowed}: no time, it is too cold</source>
        <translation>{allowed}: keine Zeit, es ist zu kalt</translation>
    </message>
    <message>
        <source>{allowed}: not known, the night&apos;s low is missing</source>
        <translation>{allowed}: nicht bekannt, der Tiefstwert der Nacht fehlt</translation>
    </message>
    <message>
        <source>{allowed}: on hold</source>
        <translation>{allowed}: gesperrt</translation>
    </message>
    <message>
        <source>{clocks} by its sheet</source>
        <translation>{clocks} nach Datenblatt</translation>
    </message>
    <message>
        <source>{hour} o&apos;clock</source>
        <translation>{hour} Uhr</translation>
    </message>
    <message>
        <source>{kind}, lag {minutes} min</source>
        <translation>{kind}, Trägheit {minutes} min</translation>
    </message>
    <message>
        <source>{share} % of the way to off the rack</source>
        <translation>{share} % des Wegs bis vom Ständer</translation>
    </message>
    <message>
        <source>{share} % of the way to safe to hit</source>
        <translation>{share} % des Wegs bis schlagfest</translation>
    </message>
    <message>
        <source>{slot}, empty</source>
        <translation>{slot}, leer</translation>
    </message>
    <message>
        <source>{slot}, {club}, laid out</source>
        <translation>{slot}, {club}, angelegt</translation>
    </message>
    <message>
        <source>{slot}, {club}, {word}: {phrase}</source>
        <translation>{slot}, {club}, {word}: {phrase}</translation>
    </message>
    <message>
        <source>{why}: below the sheet&apos;s {minimum} it counts for less</source>
        <translation>{why}: unter den {minimum} des Datenblatts zählt es weniger</translation>
    </message>
</context>
<context>
    <name>JobForm</name>
    <message numerus="yes">
        <source>%n clubs are there</source>
        <comment>%n club is there</comment>
        <translation>
            <numerusform>%n Schläger ist da</numerusform>
            <numerusform>%n Schläger sind da</numerusform>
        </translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Clubs</source>
        <translation>Schläger</translation>
    </message>
    <message>
        <source>Customer</source>
        <translation>Kunde</translation>
    </message>
    <message>
        <source>Glue-up</source>
        <translation>Kleben</translation>
    </message>
    <message>
        <source>Job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>Job {number} is there already: the clubs are added to it.</source>
        <translation>Auftrag {number} gibt es schon: Die Schläger kommen dazu.</translation>
    </message>
    <message>
        <source>Job {number}, {customer}, is there already: the clubs are added to it.</source>
        <translation>Auftrag {number}, {customer}, gibt es schon: Die Schläger kommen dazu.</translation>
    </message>
    <message>
        <source>Phone</source>
        <translation>Telefon</translation>
    </message>
    <message>
        <source>Promised</source>
        <translation>Zugesagt</translation>
    </message>
    <message>
        <source>To the clubs</source>
        <translation>Zu den Schlägern</translation>
    </message>
    <message>
        <source>Usual line-ups</source>
        <translation>Übliche Sätze</translation>
    </message>
    <message>
        <source>a job number</source>
        <translation>eine Auftragsnummer</translation>
    </message>
    <message>
        <source>driver, or 4-PW, or below</source>
        <translation>Driver, oder 4-PW, oder unten</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>promised</source>
        <translation>zugesagt</translation>
    </message>
</context>
<context>
    <name>Jobs</name>
    <message>
        <source>Jobs</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>Jobs: when the glue is good, and ready</source>
        <translation>Aufträge: wann der Kleber gut ist, und fertig</translation>
    </message>
    <message>
        <source>glue good</source>
        <translation>Kleber gut</translation>
    </message>
    <message>
        <source>ready</source>
        <translation>fertig</translation>
    </message>
    <message>
        <source>{first} to {last} of {count}</source>
        <translation>{first} bis {last} von {count}</translation>
    </message>
</context>
<context>
    <name>Joint</name>
    <message>
        <source>adapter sleeve</source>
        <translation>Adapterhülse</translation>
    </message>
    <message>
        <source>butt extension</source>
        <translation>Schaftverlängerung</translation>
    </message>
    <message>
        <source>hollow head</source>
        <translation>hohler Kopf</translation>
    </message>
    <message>
        <source>over-hosel putter</source>
        <translation>Overhosel-Putter</translation>
    </message>
    <message>
        <source>solid head</source>
        <translation>massiver Kopf</translation>
    </message>
    <message>
        <source>tip weight</source>
        <translation>Tip-Gewicht</translation>
    </message>
</context>
<context>
    <name>JointSheet</name>
    <message numerus="yes">
        <source>%n earlier lines stand on the board&apos;s record only</source>
        <comment>%n earlier line stands on the board&apos;s record only</comment>
        <translation>
            <numerusform>%n frühere Zeile steht nur im Protokoll der Tafel</numerusform>
            <numerusform>%n frühere Zeilen stehen nur im Protokoll der Tafel</numerusform>
        </translation>
    </message>
    <message>
        <source>Cure record</source>
        <translation>Härteprotokoll</translation>
    </message>
    <message>
        <source>How the glue goes</source>
        <translation>Verlauf der Härtung</translation>
    </message>
    <message>
        <source>Mix its batch and type the temperature first.</source>
        <translation>Zuerst den Ansatz mischen und die Temperatur eintippen.</translation>
    </message>
    <message>
        <source>PDF (*.pdf)</source>
        <translation>PDF (*.pdf)</translation>
    </message>
    <message>
        <source>Save curve as PDF</source>
        <translation>Kurve als PDF speichern</translation>
    </message>
    <message>
        <source>The board estimates the cure from the sheet and the recorded temperature; it does not measure the bond. The epoxy&apos;s own sheet comes first. When in doubt the club is not hit.</source>
        <translation>Die Tafel schätzt die Härtung nach Datenblatt und aufgezeichneter Temperatur; sie misst die Klebung nicht. Das Datenblatt des Epoxids geht vor. Im Zweifel wird mit dem Schläger nicht geschlagen.</translation>
    </message>
    <message>
        <source>The board is not being updated; its times can&apos;t go on paper.</source>
        <translation>Die Tafel wird nicht aktualisiert; ihre Zeiten gehören nicht aufs Papier.</translation>
    </message>
    <message>
        <source>There is no curve of {club} yet.</source>
        <translation>Für {club} gibt es noch keine Kurve.</translation>
    </message>
    <message>
        <source>Wait until it is, and save the sheet then.</source>
        <translation>Warten, bis sie es wird, und das Blatt dann speichern.</translation>
    </message>
    <message>
        <source>What happened</source>
        <translation>Was geschah</translation>
    </message>
    <message>
        <source>ddd d MMM HH:mm</source>
        <translation>ddd d. MMM HH:mm</translation>
    </message>
    <message>
        <source>ddd d MMMM yyyy, HH:mm</source>
        <translation>ddd d. MMMM yyyy, HH:mm</translation>
    </message>
    <message>
        <source>hollow: probably; solid: not before; shaded to the late side</source>
        <translation>hohl: wohl; voll: nicht vor; schattiert zur späten Seite</translation>
    </message>
    <message>
        <source>job {job}, {customer}</source>
        <translation>Auftrag {job}, {customer}</translation>
    </message>
    <message>
        <source>page 1 of 1</source>
        <translation>Seite 1 von 1</translation>
    </message>
    <message>
        <source>printed {time}</source>
        <translation>gedruckt {time}</translation>
    </message>
    <message>
        <source>{shop}, printed {time}</source>
        <translation>{shop}, gedruckt {time}</translation>
    </message>
</context>
<context>
    <name>LayoutPage</name>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Enter</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Epoxy</source>
        <translation>Epoxid</translation>
    </message>
    <message>
        <source>Glue-up</source>
        <translation>Kleben</translation>
    </message>
    <message>
        <source>Laid out, go to mix</source>
        <translation>Zum Mischen</translation>
    </message>
    <message>
        <source>The parts are</source>
        <translation>Die Teile sind</translation>
    </message>
    <message>
        <source>brought in</source>
        <translation>von draußen</translation>
    </message>
    <message>
        <source>change</source>
        <translation>ändern</translation>
    </message>
    <message>
        <source>cold</source>
        <translation>kalt</translation>
    </message>
    <message>
        <source>lot,
others</source>
        <translation>Charge,
andere</translation>
    </message>
    <message>
        <source>pulling: stop</source>
        <translation>Ziehen: Stopp</translation>
    </message>
    <message>
        <source>shop</source>
        <translation>Werkstatt</translation>
    </message>
    <message>
        <source>still warm from</source>
        <translation>noch warm vom</translation>
    </message>
</context>
<context>
    <name>Logger</name>
    <message>
        <source>85.000 °C: a sensor that has not measured yet</source>
        <translation>85,000 °C: ein Fühler, der noch nicht gemessen hat</translation>
    </message>
    <message>
        <source>Check the name.</source>
        <translation>Den Namen prüfen.</translation>
    </message>
    <message>
        <source>Choose a file in it.</source>
        <translation>Eine Datei darin wählen.</translation>
    </message>
    <message>
        <source>Copy it to a folder of yours.</source>
        <translation>In einen eigenen Ordner kopieren.</translation>
    </message>
    <message>
        <source>Delete the line.</source>
        <translation>Die Zeile löschen.</translation>
    </message>
    <message>
        <source>Each line needs a date with its clock time, and a temperature.</source>
        <translation>Jede Zeile braucht ein Datum mit Uhrzeit und eine Temperatur.</translation>
    </message>
    <message>
        <source>Export a shorter stretch, or split the file.</source>
        <translation>Ein kürzeres Stück ausgeben oder die Datei teilen.</translation>
    </message>
    <message>
        <source>Is the drive or card still there?</source>
        <translation>Ist das Laufwerk oder die Karte noch da?</translation>
    </message>
    <message>
        <source>Open it there and save it as &quot;CSV&quot;.</source>
        <translation>Dort öffnen und als „CSV“ speichern.</translation>
    </message>
    <message>
        <source>a binary file</source>
        <translation>eine Binärdatei</translation>
    </message>
    <message>
        <source>a column from 1 to {last}</source>
        <translation>eine Spalte von 1 bis {last}</translation>
    </message>
    <message>
        <source>a file of up to {most} MB</source>
        <translation>eine Datei bis {most} MB</translation>
    </message>
    <message>
        <source>a header line from 0 to {last}</source>
        <translation>eine Kopfzeile von 0 bis {last}</translation>
    </message>
    <message>
        <source>a measured temperature</source>
        <translation>eine gemessene Temperatur</translation>
    </message>
    <message>
        <source>a point or a comma as the decimal mark</source>
        <translation>Punkt oder Komma als Dezimalzeichen</translation>
    </message>
    <message>
        <source>a reading</source>
        <translation>ein Messwert</translation>
    </message>
    <message>
        <source>a spreadsheet or a zip file</source>
        <translation>eine Tabellenkalkulation oder Zip-Datei</translation>
    </message>
    <message>
        <source>a table with times and temperatures</source>
        <translation>eine Tabelle mit Zeiten und Temperaturen</translation>
    </message>
    <message>
        <source>a temperature from {low} to {high}</source>
        <translation>eine Temperatur von {low} bis {high}</translation>
    </message>
    <message>
        <source>a temperature in °C such as 21.5</source>
        <translation>eine Temperatur in °C wie 21.5</translation>
    </message>
    <message>
        <source>a temperature record as text (CSV)</source>
        <translation>eine Temperaturaufzeichnung als Text (CSV)</translation>
    </message>
    <message>
        <source>a time after that of the line before</source>
        <translation>eine Zeit nach der der vorigen Zeile</translation>
    </message>
    <message>
        <source>a time without a zone</source>
        <translation>eine Zeit ohne Zone</translation>
    </message>
    <message>
        <source>a time zone such as Europe/Berlin or UTC+01:00</source>
        <translation>eine Zeitzone wie Europe/Berlin oder UTC+01:00</translation>
    </message>
    <message>
        <source>an ISO 8601 time from 1970 to 2199</source>
        <translation>eine ISO-8601-Zeit von 1970 bis 2199</translation>
    </message>
    <message>
        <source>an answer: {questions}</source>
        <translation>eine Antwort: {questions}</translation>
    </message>
    <message>
        <source>an empty file</source>
        <translation>eine leere Datei</translation>
    </message>
    <message>
        <source>an empty line</source>
        <translation>eine leere Zeile</translation>
    </message>
    <message>
        <source>an encoding such as utf-8 or cp1252</source>
        <translation>eine Kodierung wie utf-8 oder cp1252</translation>
    </message>
    <message>
        <source>an hour that happened twice (summer time ended): which one, the file does not say</source>
        <translation>eine Stunde, die es zweimal gab (Ende der Sommerzeit): Welche, sagt die Datei nicht</translation>
    </message>
    <message>
        <source>an hour that the clock skipped (summer time began)</source>
        <translation>eine Stunde, die die Uhr übersprang (Beginn der Sommerzeit)</translation>
    </message>
    <message>
        <source>at least one reading</source>
        <translation>mindestens ein Messwert</translation>
    </message>
    <message>
        <source>bytes that are none</source>
        <translation>Bytes, die keiner sind</translation>
    </message>
    <message>
        <source>column {number}</source>
        <translation>Spalte {number}</translation>
    </message>
    <message>
        <source>fewer fields than the chosen columns</source>
        <translation>weniger Felder als die gewählten Spalten</translation>
    </message>
    <message>
        <source>more fields than the header</source>
        <translation>mehr Felder als die Kopfzeile</translation>
    </message>
    <message>
        <source>no temperature</source>
        <translation>keine Temperatur</translation>
    </message>
    <message>
        <source>no time that can be read</source>
        <translation>keine lesbare Zeit</translation>
    </message>
    <message>
        <source>no unit</source>
        <translation>keine Einheit</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keiner</translation>
    </message>
    <message>
        <source>not a number</source>
        <translation>keine Zahl</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>one character as the delimiter</source>
        <translation>ein einzelnes Trennzeichen</translation>
    </message>
    <message>
        <source>one temperature at one instant</source>
        <translation>eine Temperatur für einen Zeitpunkt</translation>
    </message>
    <message>
        <source>outside −40…120 °C</source>
        <translation>außerhalb −40…120 °C</translation>
    </message>
    <message>
        <source>text in {encoding}</source>
        <translation>Text in {encoding}</translation>
    </message>
    <message>
        <source>the byte {byte}</source>
        <translation>das Byte {byte}</translation>
    </message>
    <message>
        <source>the file</source>
        <translation>die Datei</translation>
    </message>
    <message>
        <source>the header time,temperature_c</source>
        <translation>die Kopfzeile time,temperature_c</translation>
    </message>
    <message>
        <source>two fields, time and temperature</source>
        <translation>zwei Felder, Zeit und Temperatur</translation>
    </message>
    <message>
        <source>what is no CSV ({reason})</source>
        <translation>etwas, das kein CSV ist ({reason})</translation>
    </message>
    <message>
        <source>{file}, line {line}</source>
        <translation>{file}, Zeile {line}</translation>
    </message>
    <message>
        <source>{first} and {second} at {time}</source>
        <translation>{first} und {second} um {time}</translation>
    </message>
    <message>
        <source>{path} can&apos;t be read: {reason}.</source>
        <translation>{path} ist nicht lesbar: {reason}.</translation>
    </message>
    <message>
        <source>{path} is a folder.</source>
        <translation>{path} ist ein Ordner.</translation>
    </message>
    <message>
        <source>{path} may not be read by you.</source>
        <translation>{path} darf hier niemand lesen.</translation>
    </message>
    <message>
        <source>{path}: there is no such file.</source>
        <translation>{path}: Diese Datei gibt es nicht.</translation>
    </message>
    <message>
        <source>{time}, which is earlier</source>
        <translation>{time}, was früher ist</translation>
    </message>
    <message>
        <source>{value}, what a sensor sends before it has measured</source>
        <translation>{value}, was ein Fühler sendet, bevor er misst</translation>
    </message>
</context>
<context>
    <name>Menu</name>
    <message>
        <source>&amp;Club</source>
        <translation>&amp;Schläger</translation>
    </message>
    <message>
        <source>&amp;Edit</source>
        <translation>&amp;Bearbeiten</translation>
    </message>
    <message>
        <source>&amp;File</source>
        <translation>&amp;Datei</translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation>&amp;Hilfe</translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation>&amp;Ansicht</translation>
    </message>
    <message>
        <source>About rackboard</source>
        <translation>Über rackboard</translation>
    </message>
    <message>
        <source>Alerts…</source>
        <translation>Meldungen…</translation>
    </message>
    <message>
        <source>All racked…</source>
        <translation>Alle im Ständer…</translation>
    </message>
    <message>
        <source>Answer…</source>
        <translation>Antworten…</translation>
    </message>
    <message>
        <source>Backups…</source>
        <translation>Sicherungen…</translation>
    </message>
    <message>
        <source>Correct…</source>
        <translation>Berichtigen…</translation>
    </message>
    <message>
        <source>Curve as a table…</source>
        <translation>Kurve als Tabelle…</translation>
    </message>
    <message>
        <source>Disturbed</source>
        <translation>Bewegt</translation>
    </message>
    <message>
        <source>Due and happened</source>
        <translation>Fällig und geschehen</translation>
    </message>
    <message>
        <source>Epoxies…</source>
        <translation>Epoxide…</translation>
    </message>
    <message>
        <source>Erase a customer…</source>
        <translation>Kunden löschen…</translation>
    </message>
    <message>
        <source>Find…</source>
        <translation>Suchen…</translation>
    </message>
    <message>
        <source>Help…</source>
        <translation>Hilfe…</translation>
    </message>
    <message>
        <source>Import record…</source>
        <translation>Aufzeichnung einlesen…</translation>
    </message>
    <message>
        <source>Leave the wall view</source>
        <translation>Wandansicht verlassen</translation>
    </message>
    <message>
        <source>Mixed now…</source>
        <translation>Jetzt gemischt…</translation>
    </message>
    <message>
        <source>Move to…</source>
        <translation>Umstellen…</translation>
    </message>
    <message>
        <source>New job…</source>
        <translation>Neuer Auftrag…</translation>
    </message>
    <message>
        <source>Out of the shop</source>
        <translation>Außer Haus</translation>
    </message>
    <message>
        <source>Promised for…</source>
        <translation>Zugesagt für…</translation>
    </message>
    <message>
        <source>Quit</source>
        <translation>Beenden</translation>
    </message>
    <message>
        <source>READY</source>
        <translation>FERTIG</translation>
    </message>
    <message>
        <source>Record of the joint…</source>
        <translation>Protokoll der Klebung…</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Wiederholen</translation>
    </message>
    <message>
        <source>Redo {what}</source>
        <translation>Wiederholen: {what}</translation>
    </message>
    <message>
        <source>Release…</source>
        <translation>Freigeben…</translation>
    </message>
    <message>
        <source>Save curve as PDF…</source>
        <translation>Kurve als PDF speichern…</translation>
    </message>
    <message>
        <source>Settings…</source>
        <translation>Einstellungen…</translation>
    </message>
    <message>
        <source>Swap…</source>
        <translation>Tauschen…</translation>
    </message>
    <message>
        <source>Take off the rack</source>
        <translation>Vom Ständer nehmen</translation>
    </message>
    <message>
        <source>Temperature sources…</source>
        <translation>Temperaturquellen…</translation>
    </message>
    <message>
        <source>Type a temperature…</source>
        <translation>Temperatur eintippen…</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Undo {what}</source>
        <translation>Rückgängig: {what}</translation>
    </message>
    <message>
        <source>Wall view</source>
        <translation>Wandansicht</translation>
    </message>
</context>
<context>
    <name>MessageDialog</name>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
</context>
<context>
    <name>MixPage</name>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Mix</source>
        <translation>Mischen</translation>
    </message>
    <message>
        <source>Mixed a while ago?</source>
        <translation>Schon vor einer Weile gemischt?</translation>
    </message>
    <message>
        <source>Mixed now</source>
        <translation>Gemischt</translation>
    </message>
    <message>
        <source>Mixed then</source>
        <translation>Da gemischt</translation>
    </message>
    <message>
        <source>mixed at</source>
        <translation>gemischt um</translation>
    </message>
    <message>
        <source>press when the two parts meet</source>
        <translation>beim Zusammenrühren drücken</translation>
    </message>
</context>
<context>
    <name>Moment</name>
    <message>
        <source>For the day after write &quot;tomorrow&quot; in front.</source>
        <translation>Für den Tag danach „morgen“ davorschreiben.</translation>
    </message>
    <message>
        <source>For the day before write &quot;yesterday&quot; in front.</source>
        <translation>Für den Tag davor „gestern“ davorschreiben.</translation>
    </message>
    <message>
        <source>It is closed on {weekday}.</source>
        <translation>{weekday} ist geschlossen.</translation>
    </message>
    <message>
        <source>Write a time of day with a colon (15:40), a date as 2026-03-14 or 14 March.</source>
        <translation>Eine Uhrzeit mit Doppelpunkt schreiben (15:40), ein Datum als 2026-03-14 oder 14. März.</translation>
    </message>
    <message>
        <source>a day of the calendar</source>
        <translation>ein Tag des Kalenders</translation>
    </message>
    <message>
        <source>a day on which the shop is open</source>
        <translation>ein Tag, an dem die Werkstatt offen ist</translation>
    </message>
    <message>
        <source>a time of day from 00:00 to 23:59</source>
        <translation>eine Uhrzeit von 00:00 bis 23:59</translation>
    </message>
    <message>
        <source>a time such as 15:40, 5 min ago or Mon 15:40</source>
        <translation>eine Zeit wie 15:40, vor 5 min oder Mo 15:40</translation>
    </message>
    <message>
        <source>a time such as Sat 08:00 or 2026-03-14 08:00</source>
        <translation>eine Zeit wie Sa 08:00 oder 2026-03-14 08:00</translation>
    </message>
    <message>
        <source>a time that is still to come</source>
        <translation>eine Zeit, die noch kommt</translation>
    </message>
    <message>
        <source>a time up to now, {now}</source>
        <translation>eine Zeit bis jetzt, {now}</translation>
    </message>
    <message>
        <source>a weekday that fits the date</source>
        <translation>ein Wochentag, der zum Datum passt</translation>
    </message>
    <message>
        <source>a year near this one</source>
        <translation>ein Jahr nahe diesem</translation>
    </message>
    <message>
        <source>an ISO 8601 time with its offset, such as 2026-03-11T09:10:00+01:00</source>
        <translation>eine ISO-8601-Zeit mit ihrem Versatz wie 2026-03-11T09:10:00+01:00</translation>
    </message>
    <message>
        <source>an hour that the clocks didn&apos;t skip</source>
        <translation>eine Stunde, die die Uhr nicht übersprang</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>{came} (no offset)</source>
        <translation>{came} (ohne Versatz)</translation>
    </message>
    <message>
        <source>{clock}</source>
        <translation>{clock}</translation>
    </message>
    <message>
        <source>{date} is a {weekday}.</source>
        <translation>{date} ist ein {weekday}.</translation>
    </message>
    <message>
        <source>{day} {month} {clock}</source>
        <translation>{day}. {month} {clock}</translation>
    </message>
    <message>
        <source>{day} {month} {year} {clock}</source>
        <translation>{day}. {month} {year} {clock}</translation>
    </message>
    <message>
        <source>{time} is over.</source>
        <translation>{time} ist vorbei.</translation>
    </message>
    <message>
        <source>{wanted}, with the time of day</source>
        <translation>{wanted}, mit Uhrzeit</translation>
    </message>
    <message>
        <source>{weekday} {clock}</source>
        <translation>{weekday} {clock}</translation>
    </message>
</context>
<context>
    <name>Months</name>
    <message>
        <source>Apr</source>
        <translation>Apr</translation>
    </message>
    <message>
        <source>April</source>
        <translation>April</translation>
    </message>
    <message>
        <source>Aug</source>
        <translation>Aug</translation>
    </message>
    <message>
        <source>August</source>
        <translation>August</translation>
    </message>
    <message>
        <source>Dec</source>
        <translation>Dez</translation>
    </message>
    <message>
        <source>December</source>
        <translation>Dezember</translation>
    </message>
    <message>
        <source>Feb</source>
        <translation>Feb</translation>
    </message>
    <message>
        <source>February</source>
        <translation>Februar</translation>
    </message>
    <message>
        <source>Jan</source>
        <translation>Jan</translation>
    </message>
    <message>
        <source>January</source>
        <translation>Januar</translation>
    </message>
    <message>
        <source>Jul</source>
        <translation>Jul</translation>
    </message>
    <message>
        <source>July</source>
        <translation>Juli</translation>
    </message>
    <message>
        <source>Jun</source>
        <translation>Jun</translation>
    </message>
    <message>
        <source>June</source>
        <translation>Juni</translation>
    </message>
    <message>
        <source>Mar</source>
        <translation>Mär</translation>
    </message>
    <message>
        <source>March</source>
        <translation>März</translation>
    </message>
    <message>
        <source>May</source>
        <translation>Mai</translation>
    </message>
    <message>
        <source>Nov</source>
        <translation>Nov</translation>
    </message>
    <message>
        <source>November</source>
        <translation>November</translation>
    </message>
    <message>
        <source>Oct</source>
        <translation>Okt</translation>
    </message>
    <message>
        <source>October</source>
        <translation>Oktober</translation>
    </message>
    <message>
        <source>Sep</source>
        <translation>Sep</translation>
    </message>
    <message>
        <source>September</source>
        <translation>September</translation>
    </message>
</context>
<context>
    <name>Phrase</name>
    <message>
        <source>disturbed, soft smear or too hot</source>
        <translation>bewegt, Probe weich oder zu heiß</translation>
    </message>
    <message>
        <source>do not move</source>
        <translation>nicht bewegen</translation>
    </message>
    <message>
        <source>off the rack: cut, grip; do not hit</source>
        <translation>vom Ständer: kürzen, griffen; nicht schlagen</translation>
    </message>
    <message>
        <source>on hold until somebody says what happened</source>
        <translation>gesperrt, bis jemand sagt, was war</translation>
    </message>
    <message>
        <source>safe to hit</source>
        <translation>schlagfest</translation>
    </message>
    <message>
        <source>safe to hit: hit, bend loft and lie, turn the ferrule</source>
        <translation>schlagfest: schlagen, Loft und Lie biegen, Ferrule drehen</translation>
    </message>
    <message>
        <source>still soft: straighten, wipe</source>
        <translation>noch weich: ausrichten, abwischen</translation>
    </message>
    <message>
        <source>still soft: straighten, wipe, look along the shaft</source>
        <translation>noch weich: ausrichten, abwischen, am Schaft entlangsehen</translation>
    </message>
    <message>
        <source>the board is not being updated</source>
        <translation>die Tafel wird nicht aktualisiert</translation>
    </message>
</context>
<context>
    <name>Place</name>
    <message>
        <source>A body of air with one temperature: the room, the inside of a box.</source>
        <translation>Luft mit einer Temperatur: der Raum, das Innere einer Wärmebox.</translation>
    </message>
    <message>
        <source>A new place</source>
        <translation>Neuer Ort</translation>
    </message>
    <message>
        <source>A new zone</source>
        <translation>Neue Zone</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Clubs that lie there keep</source>
        <translation>Schläger, die dort liegen, behalten</translation>
    </message>
    <message>
        <source>Columns</source>
        <translation>Spalten</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>Letters before the number</source>
        <translation>Buchstaben vor der Nummer</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Prefix</source>
        <translation>Buchstabe</translation>
    </message>
    <message>
        <source>Rows</source>
        <translation>Reihen</translation>
    </message>
    <message>
        <source>Rows × columns</source>
        <translation>Reihen × Spalten</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Speichern</translation>
    </message>
    <message>
        <source>Slots {first} to {last}, counted along the rows.</source>
        <translation>Plätze {first} bis {last}, reihenweise gezählt.</translation>
    </message>
    <message>
        <source>Zone</source>
        <translation>Zone</translation>
    </message>
    <message>
        <source>grip bench</source>
        <translation>Griffbank</translation>
    </message>
    <message>
        <source>out of the shop</source>
        <translation>außer Haus</translation>
    </message>
    <message>
        <source>pick-up corner</source>
        <translation>Abholecke</translation>
    </message>
    <message>
        <source>rack</source>
        <translation>Ständer</translation>
    </message>
    <message>
        <source>their number, as painted: {slot} stays {slot}</source>
        <translation>ihre Nummer, wie gemalt: {slot} bleibt {slot}</translation>
    </message>
    <message>
        <source>their row and column, painted anew: {before} becomes {after}</source>
        <translation>Reihe und Spalte, neu gemalt: {before} wird {after}</translation>
    </message>
    <message>
        <source>warm box</source>
        <translation>Wärmebox</translation>
    </message>
</context>
<context>
    <name>PlaceChooser</name>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Elsewhere</source>
        <translation>Anderswo</translation>
    </message>
    <message>
        <source>Job {n}, now at {where}. Carry it with its head untouched.</source>
        <translation>Auftrag {n}, jetzt in {where}. Tragen, ohne den Kopf zu berühren.</translation>
    </message>
    <message>
        <source>Move {club} to…</source>
        <translation>{club} stellen nach…</translation>
    </message>
    <message>
        <source>no place</source>
        <translation>kein Ort</translation>
    </message>
</context>
<context>
    <name>PlanBox</name>
    <message>
        <source>if glued now, not before</source>
        <translation>jetzt geklebt, nicht vor</translation>
    </message>
    <message>
        <source>not before</source>
        <translation>nicht vor</translation>
    </message>
    <message>
        <source>off the rack</source>
        <translation>vom Ständer</translation>
    </message>
    <message>
        <source>read at
the rack</source>
        <translation>am Ständer
abgelesen</translation>
    </message>
    <message>
        <source>safe to hit</source>
        <translation>schlagfest</translation>
    </message>
    <message>
        <source>solid: gluing and the last look</source>
        <translation>dick: Kleben und letzter Blick</translation>
    </message>
    <message>
        <source>use by about</source>
        <translation>nutzbar bis etwa</translation>
    </message>
    <message>
        <source>use by about {time}</source>
        <translation>nutzbar bis etwa {time}</translation>
    </message>
    <message>
        <source>{place}: off the rack not before {off}, safe to hit not before {safe}</source>
        <translation>{place}: vom Ständer nicht vor {off}, schlagfest nicht vor {safe}</translation>
    </message>
    <message>
        <source>{place}: safe to hit not before {safe}</source>
        <translation>{place}: schlagfest nicht vor {safe}</translation>
    </message>
</context>
<context>
    <name>PromiseDialog</name>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Job {n}: promised when?</source>
        <translation>Auftrag {n}: zugesagt für wann?</translation>
    </message>
    <message>
        <source>Leave it empty if nothing is promised.</source>
        <translation>Leer lassen, wenn nichts zugesagt ist.</translation>
    </message>
    <message>
        <source>Promise it</source>
        <translation>Zusagen</translation>
    </message>
    <message>
        <source>Promised so far: {when}</source>
        <translation>Bisher zugesagt: {when}</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>promised</source>
        <translation>zugesagt</translation>
    </message>
</context>
<context>
    <name>RackPage</name>
    <message>
        <source>All looked at</source>
        <translation>Angesehen</translation>
    </message>
    <message>
        <source>All racked</source>
        <translation>Alle drin</translation>
    </message>
    <message>
        <source>Glue and rack</source>
        <translation>Kleben und einstellen</translation>
    </message>
    <message>
        <source>all racked at</source>
        <translation>alle im Ständer um</translation>
    </message>
    <message>
        <source>ferrule</source>
        <translation>Ferrule</translation>
    </message>
    <message>
        <source>glued late?</source>
        <translation>spät geklebt?</translation>
    </message>
    <message>
        <source>graphics</source>
        <translation>Aufdruck</translation>
    </message>
    <message>
        <source>last 1</source>
        <translation>letzter</translation>
    </message>
    <message>
        <source>last 2</source>
        <translation>letzte 2</translation>
    </message>
    <message>
        <source>no ring of glue</source>
        <translation>kein Kleberring</translation>
    </message>
    <message>
        <source>not crept up</source>
        <translation>nicht hochgekrochen</translation>
    </message>
    <message>
        <source>or at 16:02</source>
        <translation>oder um 16:02</translation>
    </message>
    <message>
        <source>seated</source>
        <translation>ganz unten</translation>
    </message>
    <message>
        <source>sight along the shaft</source>
        <translation>am Schaft entlangsehen</translation>
    </message>
    <message>
        <source>straight</source>
        <translation>gerade</translation>
    </message>
    <message>
        <source>tight on the head</source>
        <translation>fest am Kopf</translation>
    </message>
    <message>
        <source>while still soft</source>
        <translation>solange er weich ist</translation>
    </message>
    <message>
        <source>wiped</source>
        <translation>abgewischt</translation>
    </message>
</context>
<context>
    <name>Release</name>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>It is on HOLD: nobody knows what the bond bears.</source>
        <translation>Er ist gesperrt: Niemand weiß, was die Klebung aushält.</translation>
    </message>
    <message>
        <source>It is probably hard by {time}, not now.</source>
        <translation>Er ist wohl um {time} hart, nicht jetzt.</translation>
    </message>
    <message>
        <source>Job {number}. The board keeps its word; your initials stand in place of the time, and on the record.</source>
        <translation>Auftrag {number}. Die Tafel behält ihr Wort; das Kürzel steht an Stelle der Zeit und im Protokoll.</translation>
    </message>
    <message>
        <source>Nobody can say yet when it will be hard.</source>
        <translation>Noch kann niemand sagen, wann er hart ist.</translation>
    </message>
    <message>
        <source>Release it</source>
        <translation>Freigeben</translation>
    </message>
    <message>
        <source>Release it all the same</source>
        <translation>Trotzdem freigeben</translation>
    </message>
    <message>
        <source>Release {where} {club}</source>
        <translation>{where} {club} freigeben</translation>
    </message>
    <message>
        <source>WARNING</source>
        <translation>WARNUNG</translation>
    </message>
    <message>
        <source>Why it is released now</source>
        <translation>Warum jetzt freigegeben wird</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>the initials of who releases it</source>
        <translation>das Kürzel dessen, der freigibt</translation>
    </message>
    <message>
        <source>to be hit, bent and handed out</source>
        <translation>zum Schlagen, Biegen und Herausgeben</translation>
    </message>
    <message>
        <source>to come off the rack, not to be hit</source>
        <translation>zum Abnehmen vom Ständer, nicht zum Schlagen</translation>
    </message>
    <message>
        <source>who</source>
        <translation>wer</translation>
    </message>
    <message>
        <source>why now: required</source>
        <translation>warum jetzt: muss sein</translation>
    </message>
    <message>
        <source>{why} A head that lets go can injure somebody. The epoxy&apos;s own sheet comes first: when in doubt the club is not hit.</source>
        <translation>{why} Ein Kopf, der sich löst, kann jemanden verletzen. Das Datenblatt des Epoxids geht vor: Im Zweifel wird mit dem Schläger nicht geschlagen.</translation>
    </message>
</context>
<context>
    <name>Settings</name>
    <message>
        <source>% of full</source>
        <translation>% von voll</translation>
    </message>
    <message>
        <source>Add…</source>
        <translation>Neu…</translation>
    </message>
    <message>
        <source>An alert comes as</source>
        <translation>Eine Meldung kommt als</translation>
    </message>
    <message>
        <source>At the bench</source>
        <translation>An der Bank</translation>
    </message>
    <message>
        <source>At {distance} m the words would be {arcmin} arcmin: {tiles} tiles a page. {preferred} are wanted, {least} the least that can be read.</source>
        <translation>Aus {distance} m wären die Wörter {arcmin} Bogenminuten groß: {tiles} Kacheln je Seite. Gewünscht sind {preferred}, {least} das Mindeste zum Lesen.</translation>
    </message>
    <message>
        <source>At {distance} m: words of {arcmin} arcmin, {tiles} tiles a page.</source>
        <translation>Aus {distance} m: Wörter mit {arcmin} Bogenminuten, {tiles} Kacheln je Seite.</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Down</source>
        <translation>Ab</translation>
    </message>
    <message>
        <source>Edit…</source>
        <translation>Ändern…</translation>
    </message>
    <message>
        <source>Heating</source>
        <translation>Heizung</translation>
    </message>
    <message>
        <source>High contrast</source>
        <translation>Hoher Kontrast</translation>
    </message>
    <message>
        <source>Hours and heating</source>
        <translation>Zeiten und Heizung</translation>
    </message>
    <message>
        <source>Initials of who is at the bench</source>
        <translation>Kürzel dessen, der an der Bank steht</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Sprache</translation>
    </message>
    <message>
        <source>Monday to Friday 08:00–18:00 until you type them.</source>
        <translation>Montag bis Freitag 08:00–18:00, bis etwas eingetippt ist.</translation>
    </message>
    <message>
        <source>Motion</source>
        <translation>Bewegung</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Name of the shop</source>
        <translation>Name der Werkstatt</translation>
    </message>
    <message>
        <source>Notices and sounds</source>
        <translation>Meldungen und Töne</translation>
    </message>
    <message>
        <source>On open days. With it the board can reckon a night that nobody measured; without it, it asks in the morning how cold it got.</source>
        <translation>An offenen Tagen. Damit kann die Tafel eine Nacht rechnen, die niemand gemessen hat; ohne fragt sie morgens, wie kalt es wurde.</translation>
    </message>
    <message>
        <source>Opening hours</source>
        <translation>Öffnungszeiten</translation>
    </message>
    <message>
        <source>Pages</source>
        <translation>Seiten</translation>
    </message>
    <message>
        <source>Pixel pitch</source>
        <translation>Pixelabstand</translation>
    </message>
    <message>
        <source>Pixel pitch, millimetres</source>
        <translation>Pixelabstand, Millimeter</translation>
    </message>
    <message>
        <source>Quiet from</source>
        <translation>Ruhe ab</translation>
    </message>
    <message>
        <source>Quiet hours</source>
        <translation>Ruhezeit</translation>
    </message>
    <message>
        <source>Quiet to</source>
        <translation>Ruhe bis</translation>
    </message>
    <message>
        <source>Racks and places</source>
        <translation>Ständer und Orte</translation>
    </message>
    <message>
        <source>Racks and zones</source>
        <translation>Ständer und Zonen</translation>
    </message>
    <message>
        <source>Racks, warm boxes and other places</source>
        <translation>Ständer, Wärmeboxen und andere Orte</translation>
    </message>
    <message>
        <source>Read from</source>
        <translation>Gelesen aus</translation>
    </message>
    <message>
        <source>Reduced: nothing flashes or fades</source>
        <translation>Weniger: Nichts blinkt oder blendet</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <source>Rename…</source>
        <translation>Umbenennen…</translation>
    </message>
    <message>
        <source>Save settings</source>
        <translation>Einstellungen speichern</translation>
    </message>
    <message>
        <source>Screen and wall</source>
        <translation>Bildschirm und Wand</translation>
    </message>
    <message>
        <source>Send a test</source>
        <translation>Probe senden</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Shop</source>
        <translation>Werkstatt</translation>
    </message>
    <message>
        <source>Temperatures in</source>
        <translation>Temperaturen in</translation>
    </message>
    <message>
        <source>The shop</source>
        <translation>Die Werkstatt</translation>
    </message>
    <message>
        <source>Theme</source>
        <translation>Farben</translation>
    </message>
    <message>
        <source>This desktop shows no tray: closing the window ends the board, and alerts rest until it is open again.</source>
        <translation>Dieser Schreibtisch hat keinen Infobereich: Wird das Fenster geschlossen, endet die Tafel, und Meldungen ruhen, bis sie wieder offen ist.</translation>
    </message>
    <message>
        <source>Up</source>
        <translation>Auf</translation>
    </message>
    <message>
        <source>Viewing distance, metres</source>
        <translation>Betrachtungsabstand, Meter</translation>
    </message>
    <message>
        <source>Volume</source>
        <translation>Lautstärke</translation>
    </message>
    <message>
        <source>Volume, per cent</source>
        <translation>Lautstärke, Prozent</translation>
    </message>
    <message>
        <source>Wall view (F11)</source>
        <translation>Wandansicht (F11)</translation>
    </message>
    <message>
        <source>What is done on this page holds at once; Undo takes it back.</source>
        <translation>Was auf dieser Seite geschieht, gilt sofort; Rückgängig nimmt es zurück.</translation>
    </message>
    <message>
        <source>While nobody looks</source>
        <translation>Wenn niemand hinsieht</translation>
    </message>
    <message>
        <source>Zones</source>
        <translation>Zonen</translation>
    </message>
    <message>
        <source>Zones, each with its own temperature</source>
        <translation>Zonen, jede mit eigener Temperatur</translation>
    </message>
    <message>
        <source>a closed window goes on in the tray</source>
        <translation>ein geschlossenes Fenster läuft im Infobereich weiter</translation>
    </message>
    <message>
        <source>a closing hour after the opening hour</source>
        <translation>eine Schließzeit nach der Öffnungszeit</translation>
    </message>
    <message>
        <source>a notice on the desktop</source>
        <translation>Meldung auf dem Schreibtisch</translation>
    </message>
    <message>
        <source>a number from 0 to 100</source>
        <translation>eine Zahl von 0 bis 100</translation>
    </message>
    <message>
        <source>a number of {unit}</source>
        <translation>eine Zahl in {unit}</translation>
    </message>
    <message>
        <source>a sound, volume</source>
        <translation>Ton, Lautstärke</translation>
    </message>
    <message>
        <source>a time of day such as 08:00</source>
        <translation>eine Uhrzeit wie 08:00</translation>
    </message>
    <message>
        <source>a whole number</source>
        <translation>eine ganze Zahl</translation>
    </message>
    <message>
        <source>an hour off after the hour on</source>
        <translation>eine Aus-Zeit nach der Ein-Zeit</translation>
    </message>
    <message>
        <source>and always as a line in the list on the board.</source>
        <translation>und immer als Zeile in der Liste auf der Tafel.</translation>
    </message>
    <message>
        <source>as the system</source>
        <translation>wie das System</translation>
    </message>
    <message>
        <source>as the system says, °{unit}</source>
        <translation>wie das System sagt, °{unit}</translation>
    </message>
    <message>
        <source>by the clock</source>
        <translation>nach der Uhr</translation>
    </message>
    <message>
        <source>closed</source>
        <translation>geschlossen</translation>
    </message>
    <message>
        <source>dark</source>
        <translation>dunkel</translation>
    </message>
    <message>
        <source>falls to °{unit}</source>
        <translation>fällt auf °{unit}</translation>
    </message>
    <message>
        <source>heating</source>
        <translation>Heizung</translation>
    </message>
    <message>
        <source>initials</source>
        <translation>Kürzel</translation>
    </message>
    <message>
        <source>lately: {initials}</source>
        <translation>zuletzt: {initials}</translation>
    </message>
    <message>
        <source>light</source>
        <translation>hell</translation>
    </message>
    <message>
        <source>m away</source>
        <translation>m entfernt</translation>
    </message>
    <message>
        <source>mm; left empty: {pitch}, as this screen says</source>
        <translation>mm; leer: {pitch}, wie dieser Bildschirm sagt</translation>
    </message>
    <message>
        <source>mm; this screen doesn&apos;t say: see its data sheet</source>
        <translation>mm; dieser Bildschirm sagt nichts: siehe sein Datenblatt</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>nothing sounds but “too hot” from</source>
        <translation>nur „zu heiß“ tönt ab</translation>
    </message>
    <message>
        <source>off</source>
        <translation>aus</translation>
    </message>
    <message>
        <source>off at</source>
        <translation>aus um</translation>
    </message>
    <message>
        <source>on</source>
        <translation>ein</translation>
    </message>
    <message>
        <source>on at</source>
        <translation>ein um</translation>
    </message>
    <message>
        <source>the board starts when you log in</source>
        <translation>die Tafel startet beim Anmelden</translation>
    </message>
    <message>
        <source>to</source>
        <translation>bis</translation>
    </message>
    <message>
        <source>two times that differ</source>
        <translation>zwei verschiedene Zeiten</translation>
    </message>
    <message>
        <source>{courier}: not working since {time} ({reason})</source>
        <translation>{courier}: seit {time} gestört ({reason})</translation>
    </message>
    <message>
        <source>{courier}: nothing sent yet</source>
        <translation>{courier}: noch nichts gesendet</translation>
    </message>
    <message>
        <source>{courier}: switched off</source>
        <translation>{courier}: abgeschaltet</translation>
    </message>
    <message>
        <source>{courier}: worked at {time}</source>
        <translation>{courier}: ging um {time}</translation>
    </message>
    <message>
        <source>{day}: closed</source>
        <translation>{day}: geschlossen</translation>
    </message>
    <message>
        <source>{day}: closes at</source>
        <translation>{day}: schließt um</translation>
    </message>
    <message>
        <source>{day}: opens at</source>
        <translation>{day}: öffnet um</translation>
    </message>
    <message>
        <source>{field}: Wanted {wanted}; this is {came}.</source>
        <translation>{field}: Gebraucht wird {wanted}; hier steht {came}.</translation>
    </message>
    <message>
        <source>{start} to {end}</source>
        <translation>{start} bis {end}</translation>
    </message>
    <message>
        <source>{zone}: falls at night to</source>
        <translation>{zone}: fällt nachts auf</translation>
    </message>
    <message>
        <source>{zone}: heating</source>
        <translation>{zone}: Heizung</translation>
    </message>
    <message>
        <source>{zone}: heating off at</source>
        <translation>{zone}: Heizung aus um</translation>
    </message>
    <message>
        <source>{zone}: heating on at</source>
        <translation>{zone}: Heizung ein um</translation>
    </message>
</context>
<context>
    <name>Sheet</name>
    <message>
        <source>&quot;Sets in&quot; on a pack is the working life, not the handling time. May a joint really come off the rack after {handling}, with {life} to use the epoxy?</source>
        <translation>„Härtet in“ auf einer Packung ist die Topfzeit, nicht die Zeit bis handfest. Darf eine Klebung wirklich nach {handling} vom Ständer, bei {life} Topfzeit?</translation>
    </message>
    <message numerus="yes">
        <source>%n characters</source>
        <comment>%n character</comment>
        <translation>
            <numerusform>%n Zeichen</numerusform>
            <numerusform>%n Zeichen</numerusform>
        </translation>
    </message>
    <message>
        <source>Blank: 58 is assumed, between 50 and 65.</source>
        <translation>Leer: 58 angenommen, zwischen 50 und 65.</translation>
    </message>
    <message>
        <source>Blank: found from the times below.</source>
        <translation>Leer: aus den Zeiten unten bestimmt.</translation>
    </message>
    <message>
        <source>Blank: it stays on the rack until it is safe to hit.</source>
        <translation>Leer: bleibt im Ständer, bis schlagfest.</translation>
    </message>
    <message>
        <source>Blank: taken as from {low} up to {high}.</source>
        <translation>Leer: gilt als von {low} bis {high}.</translation>
    </message>
    <message>
        <source>Blank: taken as from {low}.</source>
        <translation>Leer: gilt als ab {low}.</translation>
    </message>
    <message>
        <source>Blank: taken as up to {high}.</source>
        <translation>Leer: gilt als bis {high}.</translation>
    </message>
    <message>
        <source>Blank: “room temperature” is taken as {temperature}.</source>
        <translation>Leer: „Raumtemperatur“ gilt als {temperature}.</translation>
    </message>
    <message>
        <source>Did you mean &quot;{key}&quot;?</source>
        <translation>War „{key}“ gemeint?</translation>
    </message>
    <message>
        <source>Give {maximum}, or check {reference}.</source>
        <translation>{maximum} angeben oder {reference} prüfen.</translation>
    </message>
    <message>
        <source>Is the handling time perhaps the working life?</source>
        <translation>Ist die Zeit bis handfest vielleicht die Topfzeit?</translation>
    </message>
    <message>
        <source>Keys: {keys}.</source>
        <translation>Schlüssel: {keys}.</translation>
    </message>
    <message>
        <source>Leave the handling time blank.</source>
        <translation>Die Zeit bis handfest leer lassen.</translation>
    </message>
    <message>
        <source>No handling time given: it stays on the rack until it is safe to hit.</source>
        <translation>Keine Zeit bis handfest angegeben: bleibt im Ständer, bis schlagfest.</translation>
    </message>
    <message>
        <source>No maximum cure temperature given: {assumed} assumed.</source>
        <translation>Keine Höchsttemperatur angegeben: {assumed} angenommen.</translation>
    </message>
    <message>
        <source>No minimum cure temperature given: {assumed} assumed.</source>
        <translation>Keine Mindesttemperatur angegeben: {assumed} angenommen.</translation>
    </message>
    <message>
        <source>No reference temperature given: its times are taken at {assumed}.</source>
        <translation>Keine Bezugstemperatur angegeben: Die Zeiten gelten bei {assumed}.</translation>
    </message>
    <message>
        <source>No times at other temperatures given: 58 kJ/mol assumed, between 50 and 65.</source>
        <translation>Keine Zeiten bei anderen Temperaturen angegeben: 58 kJ/mol angenommen, zwischen 50 und 65.</translation>
    </message>
    <message>
        <source>Wanted a highest temperature above {reference}, at which the times hold; this is {given}, assumed.</source>
        <translation>Gebraucht wird eine Höchsttemperatur über {reference}, wo die Zeiten gelten; hier steht {given}, angenommen.</translation>
    </message>
    <message>
        <source>Wanted a highest temperature above {reference}, at which the times hold; this is {given}.</source>
        <translation>Gebraucht wird eine Höchsttemperatur über {reference}, wo die Zeiten gelten; hier steht {given}.</translation>
    </message>
    <message>
        <source>Wanted a lowest temperature of at most {reference}, at which the times hold; this is {given}.</source>
        <translation>Gebraucht wird eine Mindesttemperatur von höchstens {reference}, wo die Zeiten gelten; hier steht {given}.</translation>
    </message>
    <message>
        <source>Wanted a short name; tiles show it.</source>
        <translation>Gebraucht wird ein Kurzname; Kacheln zeigen ihn.</translation>
    </message>
    <message>
        <source>Wanted a time, or “Remove”.</source>
        <translation>Gebraucht wird eine Zeit, oder „Entfernen“.</translation>
    </message>
    <message>
        <source>Wanted how long the mix may be used; the pack says “sets in” or “pot life”.</source>
        <translation>Gebraucht wird, wie lange die Mischung nutzbar ist; die Packung sagt „härtet in“ oder „Topfzeit“.</translation>
    </message>
    <message>
        <source>Wanted the shorter time first; this is {short} to {long}.</source>
        <translation>Gebraucht wird die kürzere Zeit zuerst; hier steht {short} bis {long}.</translation>
    </message>
    <message>
        <source>Wanted the temperature at which this time holds.</source>
        <translation>Gebraucht wird die Temperatur, bei der diese Zeit gilt.</translation>
    </message>
    <message>
        <source>Wanted the time to full cure; without it nothing can be reckoned.</source>
        <translation>Gebraucht wird die Zeit bis zur Aushärtung; ohne sie ist nichts zu rechnen.</translation>
    </message>
    <message>
        <source>Wanted {wanted}; this is {came}.</source>
        <translation>Gebraucht wird {wanted}; hier steht {came}.</translation>
    </message>
    <message>
        <source>Wanted {wanted}; this is {came}. {remedy}</source>
        <translation>Gebraucht wird {wanted}; hier steht {came}. {remedy}</translation>
    </message>
    <message>
        <source>Wanted {wanted}; this is “{came}”.</source>
        <translation>Gebraucht wird {wanted}; hier steht „{came}“.</translation>
    </message>
    <message>
        <source>a finite number</source>
        <translation>eine endliche Zahl</translation>
    </message>
    <message>
        <source>a full-cure time at least {least} times the handling time</source>
        <translation>eine Aushärtezeit von mindestens {least} mal der Zeit bis handfest</translation>
    </message>
    <message>
        <source>a full-cure time at most {most} times the handling time</source>
        <translation>eine Aushärtezeit von höchstens {most} mal der Zeit bis handfest</translation>
    </message>
    <message>
        <source>a handling time at the reference temperature beside one at another</source>
        <translation>eine Zeit bis handfest bei der Bezugstemperatur neben der bei einer anderen</translation>
    </message>
    <message>
        <source>a handling time no longer than the full-cure time, at both ends</source>
        <translation>eine Zeit bis handfest, an beiden Enden nicht länger als die Aushärtezeit</translation>
    </message>
    <message>
        <source>a key that a sheet knows</source>
        <translation>ein Schlüssel, den ein Datenblatt kennt</translation>
    </message>
    <message>
        <source>a longest time of at most the full cure&apos;s {time}</source>
        <translation>eine längste Zeit von höchstens {time} wie bei der Aushärtung</translation>
    </message>
    <message>
        <source>a maximum above {reference}</source>
        <translation>ein Maximum über {reference}</translation>
    </message>
    <message>
        <source>a minimum of at most {reference}</source>
        <translation>ein Minimum von höchstens {reference}</translation>
    </message>
    <message>
        <source>a mixing time inside the record, {first} to {last}</source>
        <translation>eine Mischzeit innerhalb der Aufzeichnung, {first} bis {last}</translation>
    </message>
    <message>
        <source>a name in one line, up to {most} characters</source>
        <translation>ein Name in einer Zeile, höchstens {most} Zeichen</translation>
    </message>
    <message>
        <source>a number</source>
        <translation>eine Zahl</translation>
    </message>
    <message>
        <source>a number above 0, or nothing</source>
        <translation>eine Zahl über 0, oder nichts</translation>
    </message>
    <message>
        <source>a number above 0, or the shorter and the longer such as 45 to 60</source>
        <translation>eine Zahl über 0, oder die kürzere und die längere wie 45 bis 60</translation>
    </message>
    <message>
        <source>a number above zero</source>
        <translation>eine Zahl über null</translation>
    </message>
    <message>
        <source>a number or [short, long]</source>
        <translation>eine Zahl oder [kürzer, länger]</translation>
    </message>
    <message>
        <source>a ratio such as &quot;100:83&quot;, [100, 83] or 1.2 (meaning 1.2 : 1)</source>
        <translation>ein Verhältnis wie &quot;100:83&quot;, [100, 83] oder 1.2 (also 1.2 : 1)</translation>
    </message>
    <message>
        <source>a sheet as TOML, one key = value a line</source>
        <translation>ein Datenblatt als TOML, ein Schlüssel = Wert je Zeile</translation>
    </message>
    <message>
        <source>a shortest time of at most the full cure&apos;s {time}</source>
        <translation>eine kürzeste Zeit von höchstens {time} wie bei der Aushärtung</translation>
    </message>
    <message>
        <source>a table</source>
        <translation>eine Tabelle</translation>
    </message>
    <message>
        <source>a temperature from {low} to {high}</source>
        <translation>eine Temperatur von {low} bis {high}</translation>
    </message>
    <message>
        <source>a temperature of {low} to {high}</source>
        <translation>eine Temperatur von {low} bis {high}</translation>
    </message>
    <message>
        <source>a time</source>
        <translation>eine Zeit</translation>
    </message>
    <message>
        <source>a time above 0, or the shorter then the longer</source>
        <translation>eine Zeit über 0, oder die kürzere, dann die längere</translation>
    </message>
    <message>
        <source>a time between one second and one year</source>
        <translation>eine Zeit zwischen einer Sekunde und einem Jahr</translation>
    </message>
    <message>
        <source>an activation energy from {low} to {high} kJ/mol</source>
        <translation>eine Aktivierungsenergie von {low} bis {high} kJ/mol</translation>
    </message>
    <message>
        <source>an activation energy of {least} to {most} kJ/mol</source>
        <translation>eine Aktivierungsenergie von {least} bis {most} kJ/mol</translation>
    </message>
    <message>
        <source>an empty file</source>
        <translation>eine leere Datei</translation>
    </message>
    <message>
        <source>an epoxy&apos;s sheet as TOML</source>
        <translation>ein Epoxid-Datenblatt als TOML</translation>
    </message>
    <message>
        <source>brackets nested too deep</source>
        <translation>zu tief geschachtelte Klammern</translation>
    </message>
    <message>
        <source>handling {handling}, full cure {full}</source>
        <translation>handfest {handling}, ausgehärtet {full}</translation>
    </message>
    <message>
        <source>hours above 0, the shorter first</source>
        <translation>Stunden über 0, die kürzere zuerst</translation>
    </message>
    <message>
        <source>minimum ≤ reference &lt; maximum cure temperature</source>
        <translation>Minimum ≤ Bezug &lt; Höchsttemperatur der Härtung</translation>
    </message>
    <message>
        <source>mixed at</source>
        <translation>gemischt um</translation>
    </message>
    <message>
        <source>none</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>off the rack</source>
        <translation>vom Ständer</translation>
    </message>
    <message>
        <source>one of {names}</source>
        <translation>eines von {names}</translation>
    </message>
    <message>
        <source>tables, each headed [[further_times]]</source>
        <translation>Tabellen, jede mit [[further_times]] überschrieben</translation>
    </message>
    <message>
        <source>the key {key}</source>
        <translation>der Schlüssel {key}</translation>
    </message>
    <message>
        <source>the reference temperature, {temperature}</source>
        <translation>die Bezugstemperatur, {temperature}</translation>
    </message>
    <message>
        <source>the reference temperature, {temperature} (assumed)</source>
        <translation>die Bezugstemperatur, {temperature} (angenommen)</translation>
    </message>
    <message>
        <source>the shorter time first</source>
        <translation>die kürzere Zeit zuerst</translation>
    </message>
    <message>
        <source>times that one epoxy can have (within {tolerance})</source>
        <translation>Zeiten, die ein Epoxid haben kann (auf {tolerance})</translation>
    </message>
    <message>
        <source>to hit</source>
        <translation>schlagfest</translation>
    </message>
    <message>
        <source>to use</source>
        <translation>nutzbar</translation>
    </message>
    <message>
        <source>true or false</source>
        <translation>true oder false</translation>
    </message>
    <message>
        <source>two parts such as 1 : 1 or 100 : 83</source>
        <translation>zwei Teile wie 1 : 1 oder 100 : 83</translation>
    </message>
    <message>
        <source>{energy} from the times at other temperatures</source>
        <translation>{energy} aus den Zeiten bei anderen Temperaturen</translation>
    </message>
    <message>
        <source>{maximum} (assumed, as the sheet gives none)</source>
        <translation>{maximum} (angenommen, das Datenblatt nennt keine)</translation>
    </message>
    <message>
        <source>{name} (copy {number})</source>
        <translation>{name} (Kopie {number})</translation>
    </message>
    <message>
        <source>{name} (copy)</source>
        <translation>{name} (Kopie)</translation>
    </message>
    <message>
        <source>{quantity} {given} at {temperature}, where the rest of the sheet makes {made}</source>
        <translation>{quantity} {given} bei {temperature}, wo der Rest des Datenblatts {made} ergibt</translation>
    </message>
    <message>
        <source>{ratio} times</source>
        <translation>{ratio} mal</translation>
    </message>
    <message>
        <source>{ratio} times: handling and full cure are the same time</source>
        <translation>{ratio} mal: Handfest und ausgehärtet sind dieselbe Zeit</translation>
    </message>
    <message>
        <source>{where}, line {line}</source>
        <translation>{where}, Zeile {line}</translation>
    </message>
</context>
<context>
    <name>ShelfPage</name>
    <message>
        <source>By the two clocks of its sheet</source>
        <translation>Nach den zwei Uhren des Datenblatts</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Gut so</translation>
    </message>
    <message>
        <source>Epoxy</source>
        <translation>Epoxid</translation>
    </message>
    <message>
        <source>Lot</source>
        <translation>Charge</translation>
    </message>
    <message>
        <source>Lot of the packs</source>
        <translation>Charge der Packungen</translation>
    </message>
    <message>
        <source>More</source>
        <translation>Mehr</translation>
    </message>
</context>
<context>
    <name>Shop</name>
    <message>
        <source>Rack A</source>
        <translation>Ständer A</translation>
    </message>
    <message>
        <source>Room</source>
        <translation>Raum</translation>
    </message>
    <message>
        <source>Warm box</source>
        <translation>Wärmebox</translation>
    </message>
    <message>
        <source>grip bench</source>
        <translation>Griffbank</translation>
    </message>
    <message>
        <source>out of the shop</source>
        <translation>außer Haus</translation>
    </message>
    <message>
        <source>pick-up corner</source>
        <translation>Abholecke</translation>
    </message>
</context>
<context>
    <name>Slots</name>
    <message>
        <source>{first} to {last}</source>
        <translation>{first} bis {last}</translation>
    </message>
    <message>
        <source>{several} and {last}</source>
        <translation>{several} und {last}</translation>
    </message>
    <message>
        <source>{several}, {next}</source>
        <translation>{several}, {next}</translation>
    </message>
</context>
<context>
    <name>StopPage</name>
    <message>
        <source>Cool to the hand</source>
        <translation>Handkalt lassen</translation>
    </message>
    <message>
        <source>Glue-up</source>
        <translation>Kleben</translation>
    </message>
    <message>
        <source>Not now</source>
        <translation>Nicht jetzt</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Stopp</translation>
    </message>
    <message>
        <source>Stop: the parts are still warm</source>
        <translation>Stopp: Die Teile sind noch warm</translation>
    </message>
    <message>
        <source>The parts are still warm from pulling the old shaft. Warm parts use up the glue in minutes: it may set before the club is seated.</source>
        <translation>Die Teile sind noch warm vom Lösen des alten Schafts. Warme Teile verbrauchen den Kleber in Minuten: Er kann fest werden, bevor der Schläger sitzt.</translation>
    </message>
    <message>
        <source>clean and dry</source>
        <translation>sauber und trocken</translation>
    </message>
    <message>
        <source>head and shaft apart, on the cool bench</source>
        <translation>Kopf und Schaft getrennt, auf der kühlen Bank</translation>
    </message>
    <message>
        <source>hosel as cool as the bench</source>
        <translation>Hosel so kühl wie die Bank</translation>
    </message>
    <message>
        <source>mix nothing</source>
        <translation>nichts mischen</translation>
    </message>
    <message>
        <source>no old epoxy, no oil, no solvent left</source>
        <translation>kein alter Kleber, kein Öl, kein Lösemittel übrig</translation>
    </message>
    <message>
        <source>set it down</source>
        <translation>hinlegen</translation>
    </message>
    <message>
        <source>the working life runs from mixing</source>
        <translation>die Topfzeit läuft ab dem Mischen</translation>
    </message>
    <message>
        <source>then feel</source>
        <translation>dann fühlen</translation>
    </message>
</context>
<context>
    <name>Store</name>
    <message>
        <source>Another board already uses {folder}.</source>
        <translation>{folder} wird schon von einer anderen Tafel benutzt.</translation>
    </message>
    <message>
        <source>Another program is using {path}; nothing was changed.</source>
        <translation>Ein anderes Programm benutzt {path}; nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Choose a folder on this machine with --data-dir. A backup may be copied to the share.</source>
        <translation>Mit --data-dir einen Ordner auf diesem Rechner wählen. Eine Sicherung darf auf die Freigabe kopiert werden.</translation>
    </message>
    <message>
        <source>Close the other program (a second board, a backup, a virus scan) and try again.</source>
        <translation>Das andere Programm schließen (eine zweite Tafel, eine Sicherung, eine Virensuche) und noch einmal versuchen.</translation>
    </message>
    <message>
        <source>Free some space on the disk of {folder} and do it again.</source>
        <translation>Auf der Platte von {folder} Platz schaffen und es noch einmal tun.</translation>
    </message>
    <message>
        <source>Give yourself the right to write to the folder {folder} and to every file in it, or choose another folder with --data-dir.</source>
        <translation>Sich das Recht geben, in den Ordner {folder} und alle Dateien darin zu schreiben, oder mit --data-dir einen anderen Ordner wählen.</translation>
    </message>
    <message>
        <source>Install a newer Python.</source>
        <translation>Ein neueres Python installieren.</translation>
    </message>
    <message>
        <source>Install the newer rackboard, or restore a backup from before the change.</source>
        <translation>Das neuere rackboard installieren oder eine Sicherung von vor dem Wechsel zurückholen.</translation>
    </message>
    <message>
        <source>Move it elsewhere, or choose another folder with --data-dir.</source>
        <translation>Woandershin verschieben oder mit --data-dir einen anderen Ordner wählen.</translation>
    </message>
    <message>
        <source>Restore the last backup (File, Restore a backup); the damaged file is kept beside the backups.</source>
        <translation>Die letzte Sicherung zurückholen (Datei, Sicherungen); die beschädigte Datei bleibt neben den Sicherungen liegen.</translation>
    </message>
    <message>
        <source>See that the disk is still connected. Copy the backups to another disk.</source>
        <translation>Prüfen, ob die Platte noch verbunden ist. Die Sicherungen auf eine andere Platte kopieren.</translation>
    </message>
    <message>
        <source>See that the folder {folder} exists and is yours to read and write, or choose another folder with --data-dir.</source>
        <translation>Prüfen, ob es den Ordner {folder} gibt und er les- und schreibbar ist, oder mit --data-dir einen anderen Ordner wählen.</translation>
    </message>
    <message>
        <source>The disk is full: {path} could not be written. What was saved before is safe.</source>
        <translation>Die Platte ist voll: {path} konnte nicht geschrieben werden. Früher Gespeichertes ist sicher.</translation>
    </message>
    <message>
        <source>The disk reported a fault at {path} ({reason}).</source>
        <translation>Die Platte meldet einen Fehler bei {path} ({reason}).</translation>
    </message>
    <message>
        <source>This Python brings SQLite {version}; rackboard wants 3.37 or later.</source>
        <translation>Dieses Python bringt SQLite {version} mit; rackboard braucht 3.37 oder neuer.</translation>
    </message>
    <message>
        <source>Use Correct… to change a wrong fact.</source>
        <translation>Mit Berichtigen… einen falschen Eintrag ändern.</translation>
    </message>
    <message>
        <source>Use that window, or choose another folder with --data-dir.</source>
        <translation>Deren Fenster benutzen oder mit --data-dir einen anderen Ordner wählen.</translation>
    </message>
    <message>
        <source>a club that lies nowhere else</source>
        <translation>ein Schläger, der sonst nirgends liegt</translation>
    </message>
    <message>
        <source>a free slot</source>
        <translation>ein freier Platz</translation>
    </message>
    <message>
        <source>a number that no other job has</source>
        <translation>eine Nummer, die kein anderer Auftrag hat</translation>
    </message>
    <message>
        <source>job number</source>
        <translation>Auftragsnummer</translation>
    </message>
    <message>
        <source>one at {place}</source>
        <translation>einer in {place}</translation>
    </message>
    <message>
        <source>{club} of job {number}</source>
        <translation>{club} von Auftrag {number}</translation>
    </message>
    <message>
        <source>{club} of job {number}, already there</source>
        <translation>{club} von Auftrag {number}, schon dort</translation>
    </message>
    <message>
        <source>{folder} lies on a network share ({kind}). The data file must be on a disk of this machine: over a network two boards could spoil it.</source>
        <translation>{folder} liegt auf einer Netzfreigabe ({kind}). Die Datei muss auf einer Platte dieses Rechners liegen: Über ein Netz könnten zwei Tafeln sie verderben.</translation>
    </message>
    <message>
        <source>{path} can be read but not written; nothing was changed.</source>
        <translation>{path} ist lesbar, aber nicht schreibbar; nichts wurde geändert.</translation>
    </message>
    <message>
        <source>{path} can&apos;t be opened ({reason}).</source>
        <translation>{path} ist nicht zu öffnen ({reason}).</translation>
    </message>
    <message>
        <source>{path} is a database, but not one of rackboard; it was left alone.</source>
        <translation>{path} ist eine Datenbank, aber keine von rackboard; sie blieb unberührt.</translation>
    </message>
    <message>
        <source>{path} is damaged ({reason}).</source>
        <translation>{path} ist beschädigt ({reason}).</translation>
    </message>
    <message>
        <source>{path} was written by a newer rackboard: this one reads data up to number {wanted}, the file has number {came}. It was left alone.</source>
        <translation>{path} stammt von einem neueren rackboard: Dieses liest Daten bis Nummer {wanted}, die Datei hat Nummer {came}. Sie blieb unberührt.</translation>
    </message>
    <message>
        <source>“{act}” can&apos;t be undone.</source>
        <translation>„{act}“ lässt sich nicht rückgängig machen.</translation>
    </message>
    <message>
        <source>“{act}” can&apos;t be undone: what it changed has been changed again since. Everything was left as it is.</source>
        <translation>„{act}“ lässt sich nicht rückgängig machen: Was es änderte, wurde seither wieder geändert. Alles blieb, wie es ist.</translation>
    </message>
</context>
<context>
    <name>Strip</name>
    <message>
        <source>Next: {time} {title}, {detail}</source>
        <translation>Als Nächstes: {time} {title}, {detail}</translation>
    </message>
</context>
<context>
    <name>Swap</name>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Carried just now: both change places,
clocks go with them</source>
        <translation>Eben getragen: Beide tauschen den Ort,
die Uhren gehen mit</translation>
    </message>
    <message>
        <source>Job {number}. One act for both clubs; what was noted stays on the record.</source>
        <translation>Auftrag {number}. Eine Tat für beide Schläger; was vermerkt ist, bleibt vermerkt.</translation>
    </message>
    <message>
        <source>Swap {where} {club} with…</source>
        <translation>{where} {club} tauschen mit…</translation>
    </message>
    <message>
        <source>The other club</source>
        <translation>Der andere Schläger</translation>
    </message>
    <message>
        <source>Wrong name: job and club change,
clocks and slots stay</source>
        <translation>Falscher Name: Auftrag und Schläger wechseln,
Uhren und Plätze bleiben</translation>
    </message>
    <message>
        <source>Wrong slot since {time}: club and clock
lay in the other one</source>
        <translation>Falscher Platz seit {time}: Schläger und Uhr
lagen im anderen</translation>
    </message>
    <message>
        <source>another club</source>
        <translation>anderer Schläger</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>swap</source>
        <translation>tauschen</translation>
    </message>
    <message>
        <source>{where} {club}, job {number}</source>
        <translation>{where} {club}, Auftrag {number}</translation>
    </message>
</context>
<context>
    <name>Temperature</name>
    <message>
        <source>a temperature from {low} to {high}</source>
        <translation>eine Temperatur von {low} bis {high}</translation>
    </message>
    <message>
        <source>a temperature such as 21.5 °C or 70 °F</source>
        <translation>eine Temperatur wie 21,5 °C oder 70 °F</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>{kelvin} would be {shown}.</source>
        <translation>{kelvin} wären {shown}.</translation>
    </message>
    <message>
        <source>{typed} = {meant}?</source>
        <translation>{typed} = {meant}?</translation>
    </message>
    <message>
        <source>{typed} in a room?</source>
        <translation>{typed} in einem Raum?</translation>
    </message>
</context>
<context>
    <name>TemperatureDialog</name>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Note it</source>
        <translation>Vermerken</translation>
    </message>
    <message>
        <source>Temperature</source>
        <translation>Temperatur</translation>
    </message>
    <message>
        <source>Type a temperature</source>
        <translation>Temperatur eintippen</translation>
    </message>
    <message>
        <source>What a thermometer says now. It holds for 4 h while the shop is open.</source>
        <translation>Was ein Thermometer jetzt sagt. Gilt 4 h, solange die Werkstatt offen ist.</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Wo</translation>
    </message>
    <message>
        <source>read at the rack, not guessed</source>
        <translation>am Ständer abgelesen, nicht geschätzt</translation>
    </message>
</context>
<context>
    <name>TemperatureDoubt</name>
    <message>
        <source>Let me correct it</source>
        <translation>Selbst berichtigen</translation>
    </message>
    <message>
        <source>No, {value}</source>
        <translation>Nein, {value}</translation>
    </message>
    <message>
        <source>Yes, {value}</source>
        <translation>Ja, {value}</translation>
    </message>
</context>
<context>
    <name>TimeField</name>
    <message>
        <source>5 min ago, 15:40, Mon 15:40</source>
        <translation>vor 5 min, 15:40, Mo 15:40</translation>
    </message>
    <message>
        <source>Sat 08:00</source>
        <translation>Sa 08:00</translation>
    </message>
</context>
<context>
    <name>Times</name>
    <message>
        <source>just now</source>
        <translation>eben</translation>
    </message>
    <message>
        <source>now</source>
        <translation>jetzt</translation>
    </message>
    <message>
        <source>today</source>
        <translation>heute</translation>
    </message>
    <message>
        <source>{day} at opening</source>
        <translation>{day} zur Öffnung</translation>
    </message>
    <message>
        <source>{day} {month}</source>
        <translation>{day}. {month}</translation>
    </message>
    <message>
        <source>{hours} h ago</source>
        <translation>vor {hours} h</translation>
    </message>
    <message>
        <source>{life} to use, {full} to hit</source>
        <translation>{life} nutzbar, {full} bis schlagfest</translation>
    </message>
    <message>
        <source>{minutes} min ago</source>
        <translation>vor {minutes} min</translation>
    </message>
</context>
<context>
    <name>Tray</name>
    <message>
        <source>Closing the window leaves it there, so that alerts are told. Quit ends it. Settings, Notices and sounds, says otherwise.</source>
        <translation>Wird das Fenster geschlossen, bleibt sie dort, damit Meldungen kommen. Beenden schließt sie. Einstellungen, Meldungen und Töne, stellt es anders.</translation>
    </message>
    <message>
        <source>Nothing is due.</source>
        <translation>Nichts ist fällig.</translation>
    </message>
    <message>
        <source>Open the board</source>
        <translation>Tafel öffnen</translation>
    </message>
    <message>
        <source>Quit: alerts rest until the board is open again</source>
        <translation>Beenden: Meldungen ruhen, bis die Tafel wieder offen ist</translation>
    </message>
    <message>
        <source>The board goes on in the tray</source>
        <translation>Die Tafel läuft im Infobereich weiter</translation>
    </message>
</context>
<context>
    <name>TroubleDialog</name>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>Copied</source>
        <translation>Kopiert</translation>
    </message>
    <message>
        <source>Copy report</source>
        <translation>Bericht kopieren</translation>
    </message>
    <message>
        <source>Report</source>
        <translation>Bericht</translation>
    </message>
    <message>
        <source>Something went wrong</source>
        <translation>Etwas ging schief</translation>
    </message>
    <message>
        <source>The board met an error that it did not expect.</source>
        <translation>Die Tafel traf auf einen Fehler, den sie nicht erwartet hat.</translation>
    </message>
    <message>
        <source>The log is {path}.</source>
        <translation>Das Protokoll ist {path}.</translation>
    </message>
    <message>
        <source>What you entered before is stored. If a tile or a time looks wrong, close the board and start it again. The report below helps to mend it; it holds no customer&apos;s name unless the error itself does.</source>
        <translation>Was vorher eingetragen wurde, ist gespeichert. Sieht eine Kachel oder Zeit falsch aus, die Tafel schließen und neu starten. Der Bericht unten hilft, es zu beheben; er enthält keinen Kundennamen, außer der Fehler selbst nennt ihn.</translation>
    </message>
</context>
<context>
    <name>Wall</name>
    <message numerus="yes">
        <source>%n slots</source>
        <comment>%n slot</comment>
        <translation>
            <numerusform>%n Platz</numerusform>
            <numerusform>%n Plätze</numerusform>
        </translation>
    </message>
    <message>
        <source>Wall view</source>
        <translation>Wandansicht</translation>
    </message>
    <message>
        <source>cold</source>
        <translation>kalt</translation>
    </message>
    <message>
        <source>free</source>
        <translation>frei</translation>
    </message>
    <message>
        <source>free: {slots}</source>
        <translation>frei: {slots}</translation>
    </message>
    <message>
        <source>no word since {time}</source>
        <translation>kein Stand seit {time}</translation>
    </message>
    <message>
        <source>not before {time}</source>
        <translation>nicht vor {time}</translation>
    </message>
    <message>
        <source>page {number} of {count}</source>
        <translation>Seite {number} von {count}</translation>
    </message>
    <message>
        <source>said {word}</source>
        <translation>war {word}</translation>
    </message>
    <message>
        <source>since {time}</source>
        <translation>seit {time}</translation>
    </message>
    <message>
        <source>use by {time}</source>
        <translation>nutzbar bis {time}</translation>
    </message>
    <message>
        <source>{places}, {clubs}, job {job}, {word}: {phrase}</source>
        <translation>{places}, {clubs}, Auftrag {job}, {word}: {phrase}</translation>
    </message>
    <message>
        <source>{places}, {clubs}, job {job}: no word since {time}, it said {word} then</source>
        <translation>{places}, {clubs}, Auftrag {job}: kein Stand seit {time}, da hieß es {word}</translation>
    </message>
    <message>
        <source>{time}</source>
        <translation>{time}</translation>
    </message>
</context>
<context>
    <name>Word</name>
    <message>
        <source>BENCH</source>
        <translation>BANK</translation>
    </message>
    <message>
        <source>CURED</source>
        <translation>FEST</translation>
    </message>
    <message>
        <source>HOLD</source>
        <translation>SPERRE</translation>
    </message>
    <message>
        <source>STALE</source>
        <translation>STEHT</translation>
    </message>
    <message>
        <source>WAIT</source>
        <translation>WARTEN</translation>
    </message>
    <message>
        <source>WET</source>
        <translation>NASS</translation>
    </message>
</context>
</TS>
