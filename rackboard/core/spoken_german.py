"""German words of time, put into the English ones that `rackboard.core.spoken_time` reads.

Both are read whatever the window speaks: a person types as they speak, and no word means one
time in the one language and another in the other.
"""

from __future__ import annotations

import re

_WORDS = {
    "jetzt": "now", "gerade": "now", "eben": "now",
    "gestern": "yesterday", "heute": "today", "morgen": "tomorrow",
    "um": "at", "zur": "at", "bei": "at", "zum": "at",
    "öffnung": "opening", "ladenöffnung": "opening",
    "ladenschluss": "closing", "schluss": "closing", "feierabend": "closing",
    "mittag": "noon",
    "std": "h", "stunde": "h", "stunden": "h", "minute": "min", "minuten": "min",
    "mo": "mon", "montag": "mon", "di": "tue", "dienstag": "tue", "mi": "wed", "mittwoch": "wed",
    "do": "thu", "donnerstag": "thu", "fr": "fri", "freitag": "fri",
    "sa": "sat", "samstag": "sat", "sonnabend": "sat", "so": "sun", "sonntag": "sun",
    "januar": "jan", "jänner": "jan", "februar": "feb", "mär": "mar", "mrz": "mar",
    "märz": "mar", "maerz": "mar", "mai": "may", "juni": "jun", "juli": "jul",
    "okt": "oct", "oktober": "oct", "dez": "dec", "dezember": "dec",
}  # fmt: skip
# Whole turns of speech, before the words; "halb 4" is left alone, and so refused.
_TURNS = (
    (r"^am ", ""),
    (r"\b(?:einer halben|halben|halbe) stunde\b", "half an h"),
    (r"\beiner? stunde\b", "an h"),
    (r"\beiner? minute\b", "a min"),
    (r"\b(\d{1,2}) ?uhr ?(\d{2})\b", r"\1:\2"),
    (r"\b(\d{1,2})[.:](\d{2}) ?uhr\b", r"\1:\2"),
    (r"\b(\d{1,2}) ?uhr\b", r"\1:00"),
    (r"^vor (.+)$", r"\1 ago"),
)


def in_english(plain: str) -> str:
    """Return a time of day, span or date with its German words in English.

    Parameters
    ----------
    plain : str
        Casefolded, with single spaces.

    Examples
    --------
    >>> in_english("gestern um 15.40 uhr"), in_english("vor 40 minuten"), in_english("sa 08:00")
    ('yesterday at 15:40', '40 min ago', 'sat 08:00')
    """
    for pattern, english in _TURNS:
        plain = re.sub(pattern, english, plain)
    return re.sub(r"[a-zäöü]+", lambda word: _WORDS.get(word[0], word[0]), plain)
