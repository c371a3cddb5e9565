"""The form's figures are the cure model's own (computed, to its own digits)."""

from __future__ import annotations

from dataclasses import replace

import pytest

from rackboard.core.cure.calibration import calibrate
from rackboard.core.epoxy import Range, Sheet
from rackboard.services.sheet_table import TABLE_C, curve, held, table, view_hours

SHEET = Sheet(
    name="day-long", working_life_min=Range(60, 60), handling_time_h=Range(8, 8),
    full_cure_time_h=Range(24, 24), reference_temperature_c=25.0,
    minimum_cure_temperature_c=15.0, maximum_cure_temperature_c=60.0,
)  # fmt: skip
WITHIN = 2e-4  # the record's milestones are found to about a second


@pytest.mark.parametrize(
    ("temperature_c", "handling_h", "full_h"),
    [
        (10, 27.6305, 111.869),
        (15, 18.0189, 61.3626),
        (20, 11.9234, 37.2434),
        (25, 8.0, 24.0),
        (30, 5.4387, 16.0217),
        (40, 2.6084, 7.5948),
    ],
)
def test_expected_times_at_a_temperature_held(
    temperature_c: float, handling_h: float, full_h: float
) -> None:
    column = held(calibrate(SHEET), temperature_c)
    assert column.handling_expected_h == pytest.approx(handling_h, rel=WITHIN)
    assert column.full_expected_h == pytest.approx(full_h, rel=WITHIN)


@pytest.mark.parametrize(
    ("temperature_c", "use_by_h", "handling_late_h", "full_late_h"),
    [
        (21, 1.22754, 12.5117, 39.0810),
        (18, 1.51321, 16.4842, 53.8111),
        (12, 2.32994, 145.588, 564.093),
    ],
)
def test_late_bounds_and_the_early_end_of_the_working_life(
    temperature_c: float, use_by_h: float, handling_late_h: float, full_late_h: float
) -> None:
    column = held(calibrate(SHEET), temperature_c)
    assert column.use_by_h == pytest.approx(use_by_h, rel=WITHIN)
    assert column.handling_late_h == pytest.approx(handling_late_h, rel=WITHIN)
    assert column.full_late_h == pytest.approx(full_late_h, rel=WITHIN)


def test_ranges_move_the_late_bound_alone() -> None:
    ranged = replace(
        SHEET, working_life_min=Range(50, 70), handling_time_h=Range(6, 10),
        full_cure_time_h=Range(20, 28),
    )  # fmt: skip
    column = held(calibrate(ranged), 21)
    assert column.handling_expected_h == pytest.approx(10.9968, rel=WITHIN)
    assert column.handling_late_h == pytest.approx(15.6397, rel=WITHIN)
    assert column.full_late_h == pytest.approx(45.5945, rel=WITHIN)


def test_below_the_minimum_is_marked_and_a_forbidding_sheet_gives_no_time() -> None:
    columns = table(calibrate(SHEET))
    assert [column.below_minimum for column in columns] == [c < 15 for c in TABLE_C]
    forbidding = held(calibrate(replace(SHEET, no_cure_below_minimum=True)), 12)
    assert forbidding.full_late_h is None
    assert forbidding.full_expected_h is not None


def test_the_table_is_never_kinder_in_the_cold_or_below_the_expected_time() -> None:
    columns = table(calibrate(SHEET))
    lates = [column.full_late_h for column in columns]
    assert lates == sorted(lates, key=lambda h: -(h or 1e9))
    for column in columns:
        assert (column.full_late_h or 1e9) > (column.full_expected_h or 0)


def test_the_curve_passes_its_level_at_the_expected_time() -> None:
    model = calibrate(SHEET)
    end_h = view_hours(held(model, 25))
    samples = curve(model, 25, end_h)
    assert samples[0].expected == 0
    assert samples[-1].hours == pytest.approx(end_h, abs=0.01)
    before = max(s.expected for s in samples if s.hours < 24)
    after = min(s.expected for s in samples if s.hours > 24)
    assert before < 0.9 < after
    assert all(s.late <= s.expected for s in samples)
