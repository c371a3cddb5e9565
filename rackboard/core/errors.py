"""The errors that a person can mend: said calmly, with what was wanted, what came and where."""

from __future__ import annotations

from rackboard.core.text import text

_LONGEST_SHOWN = 80


class RackboardError(Exception):
    """Something of the world, not of the program: a file, a form, a disk, a feed.

    Parameters
    ----------
    message : str
        One or two plain sentences that can be shown as they are.
    remedy : str, optional
        What the person may do about it.
    """

    def __init__(self, message: str, remedy: str = "") -> None:
        super().__init__(message)
        self.message = message
        self.remedy = remedy

    def __str__(self) -> str:
        if not self.remedy:
            return self.message
        return text("Errors", "{message} {remedy}").format(
            message=self.message, remedy=self.remedy
        )


class InputError(RackboardError):
    """A value from outside that can't be taken.

    Parameters
    ----------
    wanted : str
        What would have been right.
    came : object
        What was there instead.
    where : str
        The file and line, the form's field or the argument.
    """

    def __init__(self, wanted: str, came: object, where: str, remedy: str = "") -> None:
        shown = came if isinstance(came, str) else repr(came)
        shown = shown if len(shown) <= _LONGEST_SHOWN else shown[: _LONGEST_SHOWN - 3] + "..."
        message = text("Errors", "{where}: wanted {wanted}, got {came}.").format(
            where=where, wanted=wanted, came=shown
        )
        super().__init__(message, remedy)
        self.wanted = wanted
        self.came = came
        self.where = where


class StoreError(RackboardError):
    """The data file can't be opened, read or written; the remedy says what to do."""
