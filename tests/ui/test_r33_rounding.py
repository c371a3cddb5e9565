"""R33: permissions are rounded up to 5 min, limits down; "not before"; no early permission.

The board doesn't even reckon the early bound of a permission. Here it is made to, and then
looked for in every text and every picture.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import partial
from pathlib import Path
from random import Random
from typing import Any, NamedTuple

import pytest
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication

from helpers.demo_window import DemoWindow
from helpers.said import widget_texts
from helpers.session import BERLIN
from helpers.shop import SHOP_ZONE, Shop, make_shop
from helpers.shown_times import known_instants, said_at, strings, times_in
from rackboard.core.bench import Epoxy, JointKind
from rackboard.core.cure.calibration import calibrate
from rackboard.core.cure.forecast import Bounds, printed_time
from rackboard.core.cure.run import Bond
from rackboard.core.epoxy import Range, Sheet
from rackboard.core.errors import InputError
from rackboard.core.instants import HOUR_US, MINUTE_US, SECOND_US, Instant, parse_iso
from rackboard.core.standing import Standing
from rackboard.core.temperature import Unit
from rackboard.core.words import Word
from rackboard.services import curing, sheet_table
from rackboard.services.demo import DemoFeed
from rackboard.services.finding import Finding
from rackboard.services.portrait import portrait
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.curve_table import CurveTable
from rackboard.ui.inspector_presenter import InspectorPresenter
from rackboard.ui.tile import STEP, Tile
from rackboard.ui.wall_presenter import WallPresenter

STEP_US = 5 * MINUTE_US
PERMITS_FROM = re.compile(
    r"(?:\bfrom|\bafter|\bearliest|\bas of|\bab|\bvon)\s+"
    r"(?:[A-Z]\w{1,2}\.? |\d+\.? \w+ )?\d\d:\d\d"
)
"""Words that would let somebody read an early bound as a permission."""
IN_THE_BOX = re.compile(r"\d+ h in the .+ from \d\d:\d\d: not before|, \w+ \d\d:\d\d to \d\d:\d\d")
"""A stay in the box has a beginning; a permission hasn't."""


@pytest.fixture
def with_early(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let the board reckon what it should not show."""
    monkeypatch.setattr(curing, "Bond", partial(Bond, early_permissions=True))


class Early(NamedTuple):
    """The early bounds of a joint's permissions, and where handling's lies on its way."""

    standing: Standing
    instants: tuple[Instant, ...]


def early_of(standing: Standing) -> Early:
    if standing.outcome is None:  # cured long ago: it isn't followed any more
        return Early(standing, ())
    forecast = standing.outcome.forecast
    bounds = [b for b in (forecast.handling, forecast.full_cure) if b is not None]
    return Early(standing, tuple(b.early for b in bounds if b.early is not None))


def roundings(early: Instant) -> set[Instant]:
    """Return all that one might print for an early bound."""
    return {
        early, early // STEP_US * STEP_US, -(-early // STEP_US) * STEP_US, printed_time(early),
        early // MINUTE_US * MINUTE_US, -(-early // MINUTE_US) * MINUTE_US,
    }  # fmt: skip


def all_texts(shop: Shop) -> Iterator[tuple[str, Standing | None]]:
    """Yield whatever is said of the board, and of whom."""
    board, now = shop.board, shop.clock.now()
    presenter = BoardPresenter(board, now, Unit.C)
    wall = WallPresenter(presenter).view()
    for text in strings((presenter.strip(), presenter.racks(), presenter.chips(),
                         presenter.jobs(), wall)):  # fmt: skip
        yield text, None
    finding = Finding(board, now)
    for job in finding.jobs:
        yield re.sub(r"on (\w{3})\w* at (\d\d:)", r"\1 \2", finding.sentence(job)), None
    for standing in board.standings:
        for text in strings(InspectorPresenter(presenter).joint(standing)):
            yield text, standing
        picture = portrait(board, standing)
        if picture is not None:
            for row in CurveTable(presenter, standing, picture).rows():
                yield row.mark, standing


def sheets(chance: Random) -> Iterator[Sheet]:
    """Yield random sheets that the model takes."""
    while True:
        low = chance.choice((5.0, 20.0, 45.0, 60.0, 90.0))
        full = chance.uniform(2, 30)
        sheet = Sheet(
            f"invented {chance.randrange(1000)}", Range(low, low * chance.uniform(1, 1.4)),
            Range(full, full * chance.uniform(1, 1.4)),
            None if chance.random() < 0.25 else Range(full / 3.1, full / 3.1 * 1.1),
            chance.choice((20.0, 23.0, 25.0)), chance.choice((5.0, 10.0, 15.0)), 60.0,
        )  # fmt: skip
        try:
            calibrate(sheet)
        except InputError:
            continue
        yield sheet


def random_shop(seed: int) -> Shop:
    """Glue with random sheets at random times, temperatures and kinds of joint."""
    chance = Random(seed)
    shop = make_shop("Mon 08:00")
    kinds = list(JointKind)
    made = sheets(chance)
    for _ in range(4):
        go(shop, chance.uniform(3, 200), chance)
        with shop.store.write("a sheet for tests", shop.clock.now()) as act:
            epoxy = act.add(Epoxy(0, next(made), typical=False))
        shop.spread(act.changes)
        shop.glue(chance.randrange(1, 4), epoxy=epoxy, kind=chance.choice(kinds))
    go(shop, 2, chance)
    return shop


def go(shop: Shop, minutes: float, chance: Random) -> None:
    """Let time pass, with a reading at least every half hour."""
    while minutes > 0:
        step = min(minutes, chance.uniform(11, 30))
        minutes -= step
        shop.clock.advance(minutes=step)
        shop.feed([(shop.clock.now(), chance.uniform(16, 24))])
    shop.tick()


# Rounding


def test_a_permission_is_printed_at_the_first_five_minutes_a_minute_after_its_bound() -> None:
    chance = Random(33)
    for _ in range(2000):
        late = chance.randrange(10**15, 2 * 10**15)
        printed = printed_time(late)
        assert printed % STEP_US == 0
        assert 60 * SECOND_US <= printed - late < 60 * SECOND_US + STEP_US


@pytest.mark.parametrize("seed", range(12))
def test_tiles_print_permissions_up_and_limits_down(seed: int) -> None:
    shop, chance = random_shop(seed), Random(seed)
    printed = limits = 0
    for minutes in (0, 7, 30, 180, 300, 400, 700):
        go(shop, minutes, chance)
        now = shop.clock.now()
        presenter = BoardPresenter(shop.board, now, Unit.C)
        tiles = {tile.key: tile for rack in presenter.racks() for tile in rack.tiles}
        for standing in shop.board.standings:
            assert standing.stay is not None and standing.stay.slot is not None
            tile = tiles[standing.stay.place_id, standing.stay.slot]
            if standing.outcome is None:
                continue
            forecast = standing.outcome.forecast
            if standing.base is Word.WET:
                use_by = standing.use_by_us
                assert use_by is not None
                assert tile.caption == "use by"
                assert tile.time == said_at(use_by // MINUTE_US * MINUTE_US, now, SHOP_ZONE)
                limits += 1
            elif standing.not_before_us is not None and standing.word is not Word.CURED:
                handling = standing.base is Word.WAIT and forecast.handling is not None
                bounds = forecast.handling if handling else forecast.full_cure
                assert bounds is not None and bounds.late is not None
                assert standing.not_before_us == printed_time(bounds.late)
                said = said_at(printed_time(bounds.late), now, SHOP_ZONE)
                assert tile.time in (said, f"{said}?")
                assert tile.caption == ("" if standing.asked else "not before")
                assert int(tile.time.rstrip("?")[-2:]) % 5 == 0
                printed += 1
    assert printed > 3
    assert limits > 0 or seed


def test_a_limit_is_never_said_later_than_it_is() -> None:
    shop = make_shop("Mon 08:00")
    chance = Random(5)
    for _ in range(200):
        instant = shop.clock.now() + chance.randrange(0, 12 * HOUR_US)
        times = BoardPresenter(shop.board, shop.clock.now(), Unit.C).times
        hour, minute = map(int, times.limit(instant).split(":"))
        said = times.local(instant).replace(hour=hour, minute=minute, second=0, microsecond=0)
        assert times.local(instant).timestamp() - 60 < said.timestamp()
        assert said <= times.local(instant)


# Words


@pytest.mark.parametrize("seed", range(4))
def test_permissions_say_not_before_and_never_from(seed: int) -> None:
    shop, chance = random_shop(seed + 40), Random(seed)
    seen = 0
    for minutes in (0, 200, 900):
        go(shop, minutes, chance)
        for text, _ in all_texts(shop):
            if not IN_THE_BOX.search(text):
                assert not PERMITS_FROM.search(text), text
            seen += "not before" in text
    assert seen > 10


@pytest.mark.parametrize(
    ("text", "bad"),
    [
        ("from 17:20", True), ("ab 17:20", True), ("hit it from Sat 07:55", True),
        ("not before 17:20", False), ("probably hard by 15:30", False), ("since 12:05", False),
    ],
)
def test_from_is_recognised(text: str, bad: bool) -> None:
    assert bool(PERMITS_FROM.search(text)) is bad


# No early bound of a permission


def test_the_board_does_not_reckon_them() -> None:
    shop = random_shop(1)
    for standing in shop.board.standings:
        assert early_of(standing).instants == ()


@pytest.mark.parametrize("seed", range(10))
def test_none_is_in_any_text(seed: int, with_early: None) -> None:
    shop, chance = random_shop(seed + 100), Random(seed)
    looked = 0
    for minutes in (0, 45, 300, 700, 900):
        go(shop, minutes, chance)
        now = shop.clock.now()
        allowed = {said_at(t, now, SHOP_ZONE) for t in known_instants(shop.board, shop.store, now)}
        early = {
            said_at(t, now, SHOP_ZONE): standing.club.name
            for standing in shop.board.standings
            for bound in early_of(standing).instants
            for t in roundings(bound)
        }
        hidden = {said for said in early if said not in allowed}
        looked += len(hidden)
        for text, standing in all_texts(shop):
            for time in times_in(text):
                if standing is not None and time in hidden:
                    assert early[time] != standing.club.name or _another(shop, standing, time), (
                        text, time,
                    )  # fmt: skip
                elif standing is None:
                    assert time not in hidden, (text, time)
    assert looked > 30


def _another(shop: Shop, standing: Standing, time: str) -> bool:
    """Return whether the time is one of the inspector's own facts: the label's, or a sample's."""
    picture = portrait(shop.board, standing)
    assert picture is not None
    now = shop.clock.now()
    facts = [picture.label_handling_us, picture.label_full_us,
             *(s.at_us for s in picture.samples)]  # fmt: skip
    return time in {said_at(t, now, SHOP_ZONE) for t in facts if t is not None}


def picture_of(demo: DemoWindow) -> QImage:
    demo.window.refresh()
    QApplication.processEvents()
    # Without the menu bar, whose underlines depend on which window is the active one.
    return demo.window.centralWidget().grab().toImage()


def test_none_is_in_any_picture(
    qtbot: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The window is the same to the pixel whether the early bounds are reckoned or not.

    Two windows may for a moment be at different frames of a fade; it passes.
    """
    plain = DemoWindow(qtbot, tmp_path / "plain")
    monkeypatch.setattr(curing, "Bond", partial(Bond, early_permissions=True))
    knowing = DemoWindow(qtbot, tmp_path / "knowing")
    feeds = [DemoFeed(demo.session.store, BERLIN) for demo in (plain, knowing)]
    known = 0
    for minutes, slots in ((0, ("A4", "A6", "A7", "A11")), (400, ("A6", "A11", "B1"))):
        for demo, feed in zip((plain, knowing), feeds, strict=True):
            demo.clock.advance(minutes=minutes)
            changes = feed.feed(demo.clock.now())
            if changes is not None:
                demo.session.board.take_in(changes)
            demo.session.tick()
        for standing in knowing.session.board.standings:
            if standing.outcome is not None:
                known += len(early_of(standing).instants)
        for slot in slots:
            for demo in (plain, knowing):
                demo.select(slot)
            qtbot.waitUntil(lambda: picture_of(plain) == picture_of(knowing), timeout=5000)
            assert set(widget_texts(plain.window)) == set(widget_texts(knowing.window))
        for demo in (plain, knowing):
            demo.window.toggle_wall()
        qtbot.waitUntil(lambda: picture_of(plain) == picture_of(knowing), timeout=5000)
        for demo in (plain, knowing):
            demo.window.leave_wall()
    assert known > 10


def test_dots_of_a_tile_are_probably_and_not_before(with_early: None) -> None:
    shop = random_shop(7)
    go(shop, 200, Random(7))
    presenter = BoardPresenter(shop.board, shop.clock.now(), Unit.C)
    tiles: dict[tuple[int, int], Tile] = {
        tile.key: tile for rack in presenter.racks() for tile in rack.tiles
    }
    seen = 0
    for standing in shop.board.standings:
        assert standing.stay is not None and standing.stay.slot is not None
        tile = tiles[standing.stay.place_id, standing.stay.slot]
        if tile.not_before is not None:
            assert tile.probably is not None
            assert tile.probably <= tile.not_before
            assert standing.probably_at is not None and standing.not_before_at is not None
            assert abs(tile.probably - standing.probably_at) <= STEP
            assert abs(tile.not_before - standing.not_before_at) <= STEP
            seen += 1
        forged = _forged(standing)
        again = BoardPresenter(shop.board, shop.clock.now(), Unit.C)
        assert again.time_words(forged) == again.time_words(standing)
    assert seen > 0


def _forged(standing: Standing) -> Standing:
    """Return the same joint with other early bounds."""
    outcome = standing.outcome
    assert outcome is not None

    def moved(bounds: Bounds | None) -> Any:
        return None if bounds is None else bounds._replace(early=parse_iso("2026-03-09T00:07Z", ""))

    forecast = outcome.forecast
    return standing._replace(outcome=outcome._replace(forecast=forecast._replace(
        handling=moved(forecast.handling), full_cure=moved(forecast.full_cure),
    )))  # fmt: skip


def test_the_table_of_a_sheet_has_no_column_for_them() -> None:
    chance = Random(3)
    for sheet in (s for s, _ in zip(sheets(chance), range(5), strict=False)):
        model = calibrate(sheet)
        for column in sheet_table.table(model):
            times = (column.handling_expected_h, column.handling_late_h, column.full_expected_h,
                     column.full_late_h)  # fmt: skip
            # One line to each: expected, then late; nothing earlier than what is expected.
            for expected, late in (times[:2], times[2:]):
                if expected is not None and late is not None:
                    assert expected <= late
        assert set(sheet_table.Held._fields) == {
            "temperature_c", "use_by_h", "handling_expected_h", "handling_late_h",
            "full_expected_h", "full_late_h", "below_minimum",
        }  # fmt: skip
    assert replace(sheet, name="x").name == "x"
