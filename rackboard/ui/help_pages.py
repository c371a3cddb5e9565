"""What the help says: pages of blocks, in the bench's own words."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu

from rackboard.core.bench import HoldReason
from rackboard.core.temperature import Unit, format_difference, format_temperature
from rackboard.core.text import Text, text
from rackboard.core.words import PHRASES, Word
from rackboard.ui import help_signs as signs
from rackboard.ui.language import say, translated
from rackboard.ui.tile import Glyph


class Heading(NamedTuple):
    """The head of a part of a page."""

    said: str


class Paragraph(NamedTuple):
    """A paragraph."""

    said: str


class Points(NamedTuple):
    """Short statements, each with a dash before it."""

    said: tuple[str, ...]


class Shown(NamedTuple):
    """A picture, what it is called, and what is to be known of it, line by line."""

    sign: signs.Sign
    name: str
    said: tuple[str, ...]


class Signal(NamedTuple):
    """A caution under its signal word."""

    word: str
    name: str
    said: str


class KeyLine(NamedTuple):
    """A command and its key."""

    name: str
    keys: str


Block = Heading | Paragraph | Points | Shown | Signal | KeyLine


class Page(NamedTuple):
    """One page; `key` is what a caller asks for it by."""

    key: str
    title: str
    blocks: tuple[Block, ...]


def pages(unit: Unit, actions: Sequence[QAction]) -> tuple[Page, ...]:
    """Return the pages of the help.

    Parameters
    ----------
    unit : Unit
        Of the shop.
    actions : sequence of QAction
        The commands of the window, in the order of its menus.
    """
    return (
        Page("states", say("Help", "The states"), _states()),
        Page("board", say("Help", "The board"), _board(unit)),
        Page("keys", say("Help", "Keys"), _keys(actions)),
        Page("model", say("Help", "How it reckons"), _model(unit)),
        Page("cautions", say("Help", "Cautions"), _cautions(unit)),
    )


def _p(said: Text) -> Paragraph:
    return Paragraph(translated(said))


def _h(said: Text) -> Heading:
    return Heading(translated(said))


def _shown(sign: signs.Sign, name: str, *said: str) -> Shown:
    return Shown(sign, translated(name), tuple(translated(line) for line in said))


def _points(*said: Text) -> Points:
    return Points(tuple(translated(line) for line in said))


def _signal(word: Text, name: Text, said: Text) -> Signal:
    return Signal(translated(word), translated(name), translated(said))


# The states


def _states() -> tuple[Block, ...]:
    return (
        _p(text("Help", "A state belongs to the joint, wherever the club lies. It is said three "
                "times over: by its word, by its glyph, and by the lower edge of its plate, which "
                "behaves as the glue does: it ripples, comes to rest, lies straight.")),
        _shown(signs.state(Word.WET), PHRASES[Word.WET],
               text("Help", "From mixing until “use by”. Straighten, seat, wipe, turn the "
                    "graphics; then the last look.")),
        _shown(signs.state(Word.WAIT), PHRASES[Word.WAIT],
               text("Help", "It may be carried with its head untouched. The head may not be "
                    "turned, pulled or knocked.")),
        _shown(signs.state(Word.BENCH), PHRASES[Word.BENCH],
               text("Help", "The grip bench may have it: cut the butt, check the swing weight, "
                    "grip. No twist on the head, no bending. The clock goes on.")),
        _shown(signs.state(Word.CURED), PHRASES[Word.CURED],
               text("Help", "Twist the head, tap and listen, look at the ferrule before it goes "
                    "out. READY is a person's word and is pressed.")),
        _shown(signs.state(Word.HOLD, HoldReason.DISTURBED), text("Help", "on hold: disturbed"),
               text("Help", "Knocked, turned or pulled when it may have gelled. Say what you "
                    "did; glue does not start again.")),
        _shown(signs.state(Word.HOLD, HoldReason.SOFT_SMEAR), text("Help", "on hold: soft smear"),
               text("Help", "The batch's smear was soft when it should be hard. Every club of the "
                    "batch is held, wherever it is.")),
        _shown(signs.state(Word.HOLD, HoldReason.TOO_HOT), text("Help", "on hold: too hot"),
               text("Help", "The air was well above the sheet's highest temperature. Look for "
                    "foam, a soft ferrule, a head that crept.")),
        _shown(signs.cold_band(), text("Help", "cold: the hours count for little"),
               text("Help", "No state of its own: it lies over WAIT or BENCH. Warm the club, or "
                    "accept the later time.")),
        _shown(signs.state(Word.STALE), PHRASES[Word.STALE],
               text("Help", "Nothing on it may be trusted. Start the board again; what was "
                    "entered is stored.")),
    )  # fmt: skip


# The board


def _board(unit: Unit) -> tuple[Block, ...]:
    return (
        _shown(signs.tile(signs.usual_tile(unit)), text("Help", "A tile is one slot of the rack"),
               text("Help", "On the plate: the state, and the slot that is painted on the wood."),
               text("Help", "Club and job; epoxy and when it was mixed; the air at the rack."),
               text("Help", "“not before” is the late time: it errs on the safe side. “probably” "
                    "is the time to expect. Neither is a promise of the early kind; that one is "
                    "shown nowhere."),
               text("Help", "“use by” ends the working life, “since” is a permission already "
                    "reached.")),
        _shown(signs.dumbbell(), text("Help", "The glue line runs from mixed to hard"),
               text("Help", "Solid is behind, thin is ahead, the bar is now."),
               text("Help", "Under it two dots: the hollow one is “probably”, the solid one is "
                    "“not before”.")),
        _shown(signs.tile(signs.cold_tile(unit)), text("Help", "cold"),
               text("Help", "The air, less the thermometer's error, is below the sheet's lowest "
                    "temperature. If no time comes of it within 60 days the tile says “no "
                    "time”.")),
        _shown(signs.tile(signs.low_tile(unit)), text("Help", "low?"),
               text("Help", "The record has a gap, mostly a night, hatched on the line. The top "
                    "strip asks how cold it got; until it is answered nothing is permitted "
                    "across the gap.")),
        _shown(signs.tile(signs.released_tile(unit)), text("Help", "released"),
               text("Help", "A person has let the club go before “not before”, with initials and "
                    "a reason. The word stays; both stand on the record.")),
        _shown(signs.tile(signs.hold_tile(unit)), text("Help", "A HOLD that nobody has answered"),
               text("Help", "Its colour floods the tile, the collar blinks. Once it is taken, "
                    "only the cut corners stay.")),
        _h(text("Help", "Beside the rack")),
        _points(
            text("Help", "Off the rack, still curing: clubs at the grip bench and the pick-up "
                 "corner. Their clocks go on; do not hit them."),
            text("Help", "Jobs: when the whole job is safe to hit, in opening hours, for the "
                 "counter. The box at the right is READY."),
            text("Help", "The right column: what needs an answer, what is due, and the selected "
                 "club with its curve and the reason for its times."),
        ),
        _h(text("Help", "The wall view")),
        _p(text("Help", "To be read from across the room: one tile for all clubs of a job that "
                "share a batch. A club on HOLD, cold, or in another state has a tile of its own. "
                "More than 15 make pages that turn by themselves, the worst first.")),
        _shown(signs.glyph(Glyph.FROM), text("Help", "not before this time")),
        _shown(signs.glyph(Glyph.UNTIL), text("Help", "use by this time")),
    )  # fmt: skip


# Keys


_STEADY = {
    "Ctrl+Z": text("Help", "Undo"),
    "Ctrl+Y": text("Help", "Redo"),
}
"""Commands whose menu text names what they would undo just now."""


def _keys(actions: Iterable[QAction]) -> tuple[Block, ...]:
    made: list[Block] = [
        _p(text("Help", "Everything can be done by key, by touch and by mouse; nothing needs a "
                "drag or a double click.")),
    ]  # fmt: skip
    last = None
    for action in actions:
        shortcuts = action.shortcuts()
        if not shortcuts:
            continue
        menu = next((m for m in action.associatedObjects() if isinstance(m, QMenu)), None)
        title = "" if menu is None else plain(menu.title())
        if title and title != last:
            made.append(Heading(title))
            last = title
        names = [key.toString(QKeySequence.SequenceFormat.NativeText) for key in shortcuts]
        steady = _STEADY.get(shortcuts[0].toString())
        name = plain(action.text()) if steady is None else translated(steady)
        made.append(KeyLine(name, ", ".join(names)))
    made.append(_h(text("Help", "On the board")))
    for name, keys in (
        (text("Help", "From tile to tile"), text("Help", "arrows, Home, End")),
        (text("Help", "Open a tile, or lay a club on a free slot"), text("Help", "Enter, space")),
        (text("Help", "Another rack"), text("Help", "Ctrl+1 … Ctrl+9")),
        (text("Help", "Rack, box, off the rack, jobs, right column"), text("Help", "Tab")),
        (text("Help", "READY, in the list of jobs"), text("Help", "space")),
    ):
        made.append(KeyLine(translated(name), translated(keys)))
    made.append(_h(text("Help", "While gluing up")))
    for name, keys in (
        (text("Help", "The large key: mixed now, all racked, all looked at"),
         text("Help", "space, Enter")),
        (text("Help", "Take it back"), text("Help", "Backspace")),
        (text("Help", "Leave it for now"), text("Help", "Esc")),
    ):  # fmt: skip
        made.append(KeyLine(translated(name), translated(keys)))
    return tuple(made)


def plain(label: str) -> str:
    """Return a menu's text without its mnemonic and its dots."""
    return label.replace("&&", "\0").replace("&", "").replace("\0", "&").removesuffix("…")


# How it reckons


def _model(unit: Unit) -> tuple[Block, ...]:
    ten = format_difference(10_000, unit, 0)
    reference, cool = format_temperature(25_000, unit, 0), format_temperature(15_000, unit, 0)
    sure, unsure = format_difference(1_000, unit), format_difference(3_000, unit)
    return (
        _h(text("Help", "Temperature makes the clock")),
        _p(text("Help", "Epoxy hardens by a reaction, and warmth drives it: {ten} warmer makes it "
                "about twice as fast, {ten} colder about half as fast. The sheet's times hold at "
                "one temperature; the board reckons from there with what the rack really "
                "had.").format(ten=ten)),
        _p(text("Help", "So a joint has an equivalent age: how old it would be if it had lain at "
                "the sheet's temperature all the time. Twelve hours at {cool} count as about five "
                "at {reference}.").format(cool=cool, reference=reference)),
        _p(text("Help", "Cold does more than slow it down. Near and below the sheet's lowest "
                "temperature the reaction stalls half-way, and goes on when the joint is warmed. "
                "For “not before”, hours below it count for less and less, and {five} under it "
                "for nothing.").format(five=format_difference(5_000, unit, 0))),
        _h(text("Help", "Late for permissions, early for limits")),
        _p(text("Help", "A permission, off the rack or safe to hit, is given at the late end of "
                "what is possible: the sheet's longest time, the temperature less its error, the "
                "slower of the usual behaviours. A limit, the working life, ends at the early end. "
                "Both err on the side on which nothing breaks.")),
        _p(text("Help", "And time alone permits nothing: the temperature record must reach that "
                "late time without an open gap. What was earned on a complete record stays.")),
        _h(text("Help", "The label's time is the sheet's")),
        _p(text("Help", "“24 h” on the pack is said of the sheet's temperature. In a cooler shop "
                "it is later. The selected club shows three times beside each other: the label's, "
                "this room's, and the one with the margin, each with its reason. “Sets in 5 "
                "minutes” is how long the mix may be used, not when the club may be moved.")),
        _h(text("Help", "Gaps and nights")),
        _p(text("Help", "A typed temperature holds for four hours while the shop is open, not "
                "overnight. If a night has no record the board asks one thing, the lowest it got, "
                "best read from a min–max thermometer. A closed weekend is one night. A logger's "
                "gap of more than two hours is asked about in the same way.")),
        _h(text("Help", "How sure a temperature is")),
        _p(text("Help", "A sensor or thermometer at the rack is taken as right to {sure}, an "
                "“about so much” to {unsure}. “Not before” is reckoned with the air so much "
                "colder. Near the sheet's lowest temperature a thermometer at the rack gains many "
                "hours.").format(sure=sure, unsure=unsure)),
        _h(text("Help", "Box and heads")),
        _points(
            text("Help", "A warm box shortens the wait. Above the sheet's highest temperature no "
                 "more speed is credited than at it."),
            text("Help", "The mix in the cup follows the room; a joint in the box can be past its "
                 "working life well before the cup is."),
            text("Help", "A head follows the air slowly: a solid one in about 22 minutes, a hollow "
                 "one in about 4. Parts brought in cold start cold."),
            text("Help", "A head still hot from letting its old shaft go eats the working life: "
                 "let it cool until the hand feels nothing."),
        ),
        _h(text("Help", "What the board cannot know")),
        _points(
            text("Help", "whether the mix had its ratio and was mixed to the end"),
            text("Help", "whether tip and bore were abraded, clean and dry"),
            text("Help", "moisture, old epoxy, the wrong sheet, the heat that a large mix makes"),
            text("Help", "a knock that nobody told it of"),
        ),
        _p(text("Help", "That is what the test smear, the twist and the tap are for. A soft smear "
                "proves much; a hard one proves little.")),
        _h(text("Help", "Where the values come from")),
        _points(
            text("Help", "The epoxy's times and temperatures: from its sheet, as you typed it. The "
                 "sheets that come with the board are invented, each typical of its class."),
            text("Help", "Speed by temperature: Arrhenius' law, as the maturity method ASTM C1074 "
                 "uses it (published). If the sheet gives no further time, 58 kJ/mol between 50 "
                 "and 65: the middle of published values for cold-curing amine epoxies; the "
                 "choice is this project's."),
            text("Help", "The reaction: the rate law of Kamal and Sourour, slowed by diffusion "
                 "after Chern and Poehlein (published); its constants are this project's."),
            text("Help", "That cold stalls it: Moussa, Vassilopoulos and Keller, Int. J. Adhes. "
                 "Adhes. 35 (2012) 9–16 (published, read in the abstract)."),
            text("Help", "The errors of {sure} and {unsure}, the four and the two hours, the lag "
                 "of heads: decisions of this project.").format(sure=sure, unsure=unsure),
        ),
    )  # fmt: skip


# Cautions


def _cautions(unit: Unit) -> tuple[Block, ...]:
    caution, warning = text("Help", "CAUTION"), text("Help", "WARNING")
    soft = format_temperature(45_000, unit, 0)
    softer = format_temperature(60_000, unit, 0)
    return (
        _p(text("Help", "The board estimates; it does not measure the bond. The epoxy's own sheet, "
                "local codes and a qualified builder come first.")),
        _signal(warning, text("Help", "A head that lets go can injure"),
                text("Help", "When in doubt the club isn't hit. Twist the head, tap and listen, "
                     "look at the ferrule before it goes out. Whoever releases a club before its "
                     "time does so on their own word, with initials and a reason.")),
        _signal(caution, text("Help", "Skin and eyes"),
                text("Help", "Uncured epoxy and hardener can sensitise: an allergy that stays. "
                     "Gloves, eye protection, ventilation; no solvent on the skin; the sheet's "
                     "advice.")),
        _signal(caution, text("Help", "Solvent vapour"),
                text("Help", "Acetone and alcohols burn, and their vapour creeps to a bulb or a "
                     "heater. No flame and no spark where they are used, and no solvent, nor a "
                     "towel wet with it, near a warm box.")),
        _signal(caution, text("Help", "The warm box"),
                text("Help", "It can burn you, and the shop: thermostat, cut-out, guard, approved "
                     "fittings; never unattended without a cut-out.")),
        _signal(text("Help", "NOTICE"), text("Help", "Heat afterwards"),
                text("Help", "Room-cured epoxy softens at about {soft} to {softer}: no club "
                     "belongs in a hot car.").format(soft=soft, softer=softer)),
    )  # fmt: skip
