"""Sentences that can be said in another language later, by whoever shows them."""

from __future__ import annotations


class Text(str):
    """An English sentence that still knows its source and its parts.

    It is a plain string for everybody who only passes it on, stores or prints it; the window
    looks up `context` and `source` in its catalogue and puts the parts in again.

    Attributes
    ----------
    context, source, one : str
        The catalogue's key; `one` is the English singular of a sentence with a number.
    number : int
        How many the sentence is about, for the plural; -1 if about none.
    parts : dict
        What stands in the braces, by name; a part may be a `Text` itself.
    """

    __slots__ = ("context", "number", "one", "parts", "source")
    context: str
    source: str
    one: str
    number: int
    parts: dict[str, object]

    def format(self, *args: object, **parts: object) -> Text:
        """Return the sentence with its braces filled.

        Raises
        ------
        TypeError
            If a part has no name: another language may need another order.
        """
        if args:
            raise TypeError("a part of a sentence needs a name")
        return _made(self.context, self.source, self.one, self.number, parts)


class Figure(str):
    """A number with its unit, written with a decimal point: "17.4 °C"."""

    __slots__ = ()


def text(context: str, source: str, one: str = "", number: int = -1) -> Text:
    """Return a sentence; lupdate finds it by this function's name.

    Parameters
    ----------
    context : str
        Where it is said; the same word may be translated differently elsewhere.
    source : str
        The English sentence, with names in braces, and %n for the number.
    one : str, optional
        The English sentence for the number one.
    number : int, optional
        The number.

    Examples
    --------
    >>> text("Jobs", "%n clubs of {job}", "%n club of {job}", 1).format(job="2417")
    '1 club of 2417'
    """
    return _made(context, source, one, number, {})


def _made(context: str, source: str, one: str, number: int, parts: dict[str, object]) -> Text:
    english = one if one and number == 1 else source
    if number >= 0:
        english = english.replace("%n", str(number))
    made = Text(english.format(**parts) if parts else english)
    made.context, made.source, made.one, made.number, made.parts = (
        context, source, one, number, parts,
    )  # fmt: skip
    return made
