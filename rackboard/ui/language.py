"""The language that the window speaks: its catalogues, and sentences looked up in them."""

from __future__ import annotations

from typing import ClassVar

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, QTranslator

from rackboard.core.text import Figure, Text
from rackboard.ui.resources import resource_path

LANGUAGES = {"en": "English", "de": "Deutsch"}
"""By code; each called as its speakers call it."""

POINT = {"de": ","}
"""The decimal point, where it isn't one."""


class _Spoken:
    """What the one QApplication speaks now; English needs no catalogue."""

    code = "en"
    catalogues: ClassVar[list[QTranslator]] = []


def spoken() -> str:
    """Return the code of the language that is spoken."""
    return _Spoken.code


def speak(code: str) -> str:
    """Speak a language from now on; what is already on the screen has to be made anew.

    Parameters
    ----------
    code : str
        One of `LANGUAGES`; "" or any other follows the system.

    Returns
    -------
    str
        The language that is spoken now: English if a catalogue can't be read.
    """
    if code not in LANGUAGES:
        code = QLocale.system().name().partition("_")[0]
        code = code if code in LANGUAGES else "en"
    app = QCoreApplication.instance()
    if app is None:
        return "en"
    while _Spoken.catalogues:
        app.removeTranslator(_Spoken.catalogues.pop())
    _Spoken.code = "en"
    if code == "en":
        QLocale.setDefault(QLocale.system())
        return _Spoken.code
    catalogue = QTranslator(app)
    if not catalogue.load(str(resource_path("languages", f"{code}.qm"))):
        import logging

        logging.getLogger(__name__).warning("can't load the language %s", code)
        return _Spoken.code
    of_qt = QTranslator(app)  # its own buttons: OK, Cancel, Close
    path = QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)
    for found in ([of_qt] if of_qt.load(f"qtbase_{code}", path) else []) + [catalogue]:
        app.installTranslator(found)
        _Spoken.catalogues.append(found)
    QLocale.setDefault(QLocale(code))
    _Spoken.code = code
    return _Spoken.code


def say(context: str, source: str, one: str = "", number: int = -1) -> str:
    """Return a sentence of the window's own in the language spoken.

    Parameters
    ----------
    context, source, one, number
        As in `rackboard.core.text.text`; braces are filled by `str.format` afterwards.
    """
    if _Spoken.catalogues:
        return QCoreApplication.translate(context, source, one, number)
    if number < 0:
        return source
    return (one if one and number == 1 else source).replace("%n", str(number))


def translated(sentence: str) -> str:
    """Return a sentence from below the window in the language spoken.

    Parameters
    ----------
    sentence : str
        A `Text` is looked up, with its parts; a `Figure` gets the language's decimal point;
        any other string is returned as it is.
    """
    if not _Spoken.catalogues:
        return sentence
    if isinstance(sentence, Figure):
        return sentence.replace(".", POINT.get(_Spoken.code, "."))
    if not isinstance(sentence, Text):
        return sentence
    found = say(sentence.context, sentence.source, sentence.one, sentence.number)
    if not sentence.parts:
        return found
    return found.format(**{name: _part(part) for name, part in sentence.parts.items()})


def _part(part: object) -> object:
    return translated(part) if isinstance(part, str) else part
