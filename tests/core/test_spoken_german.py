"""What people type in German means the same as in English."""

from __future__ import annotations

from datetime import datetime
from zoneinfo import ZoneInfo

import pytest

from rackboard.core.errors import InputError
from rackboard.core.instants import Instant, from_datetime
from rackboard.core.schedule import DEFAULT_WEEK, OpeningHours
from rackboard.core.spoken_german import in_english
from rackboard.core.spoken_time import DAYS, LONG_DAYS, MONTHS, parse_moment

BERLIN = ZoneInfo("Europe/Berlin")
HOURS = OpeningHours(DEFAULT_WEEK, BERLIN)
NOW = from_datetime(datetime(2026, 3, 12, 14, 26, tzinfo=BERLIN))  # a Thursday


def at(typed: str, future: bool = False) -> Instant:
    return parse_moment(typed, NOW, HOURS, future, "here")


@pytest.mark.parametrize(
    ("german", "english"),
    [
        ("jetzt", "now"),
        ("vor 40 min", "40 min ago"),
        ("vor 40 Minuten", "40 min ago"),
        ("Vor einer Minute", "a min ago"),
        ("vor 2 Stunden", "2 h ago"),
        ("vor einer Stunde", "an h ago"),
        ("vor einer halben Stunde", "half an h ago"),
        ("vor 1 Std 20 Min", "1 h 20 min ago"),
        ("gestern 15:40", "yesterday 15:40"),
        ("gestern um 15.40 Uhr", "yesterday 15:40"),
        ("heute 8 Uhr", "today 08:00"),
        ("um 13:05", "at 13:05"),
        ("9 Uhr 30", "9:30"),
        ("9 Uhr", "9:00"),
        ("Mi 17:00", "Wed 17:00"),
        ("Mittwoch 17:00", "Wed 17:00"),
        ("am Mittwoch um 17 Uhr", "Wed 17:00"),
        ("Mi. 17:00", "Wed 17:00"),
        ("So 10:00", "Sun 10:00"),
        ("Mo zur Öffnung", "Mon at opening"),
        ("gestern Mittag", "yesterday noon"),
        ("2. März 09:10", "2 March 09:10"),
        ("2. Mär 09:10", "2 Mar 09:10"),
        ("14. Dezember 2025 09:10", "14 Dec 2025 09:10"),
        ("14. Okt. 2025, 09:10", "14 Oct 2025 09:10"),
    ],
)
def test_past_moments(german: str, english: str) -> None:
    assert at(german) == at(english)


@pytest.mark.parametrize(
    ("german", "english"),
    [
        ("morgen 08:00", "tomorrow 08:00"),
        ("in 20 Minuten", "in 20 min"),
        ("in einer Stunde", "in an h"),
        ("Fr 16:00", "Fri 16:00"),
        ("Sonnabend 8 Uhr", "Sat 08:00"),
        ("Di zum Feierabend", "Tue at closing"),
    ],
)
def test_coming_moments(german: str, english: str) -> None:
    assert at(german, True) == at(english, True)


@pytest.mark.parametrize("typed", ["halb 4", "viertel nach 3", "heute früh", "14.03. 08:00", "Fr"])
def test_nothing_is_guessed(typed: str) -> None:
    with pytest.raises(InputError):
        at(typed)


def test_short_and_long_names_as_shown_are_read() -> None:
    """The German names of the catalogue, which fields show, are among those read."""
    shown = ("Mo", "Di", "Mi", "Do", "Fr", "Sa", "So")
    long = ("Montag", "Dienstag", "Mittwoch", "Donnerstag", "Freitag", "Samstag", "Sonntag")
    for name, english in zip((*shown, *long), (*DAYS, *DAYS), strict=True):
        assert in_english(name.casefold()) == english.casefold()
    months = ("Jan", "Feb", "Mär", "Apr", "Mai", "Jun", "Jul", "Aug", "Sep", "Okt", "Nov", "Dez")
    for name, english in zip(months, MONTHS, strict=True):
        assert in_english(name.casefold()) == english.casefold()
    assert len(LONG_DAYS) == 7


@pytest.mark.parametrize("typed", ["8 am", "mon 15:40", "at noon", "half an hour ago"])
def test_english_is_left_alone(typed: str) -> None:
    assert in_english(typed) == typed
