"""`rackboard forecast`: figures, rounding, words, and every bad input refused in one message."""

from __future__ import annotations

import json
import random
import re
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from helpers import oracle
from helpers.project import run_python
from helpers.records import random_case
from rackboard.app import main
from rackboard.core.instants import from_datetime
from rackboard.core.sheet_toml import sheet_from_toml, sheet_to_toml
from rackboard.prompt import CAUTION

MIXED = datetime(2026, 3, 11, 8, 0, tzinfo=UTC)
SHEET = """
name = "invented day-long"
reference_temperature_c = 25
working_life_min = 60
handling_time_h = 8
full_cure_time_h = 24
minimum_cure_temperature_c = 15
maximum_cure_temperature_c = 60
"""
RANGES = SHEET.replace("= 60\nhand", "= [50, 70]\nhand").replace("= 8", "= [6, 10]")
RANGES = RANGES.replace("= 24", "= [20, 28]")

Bounds = dict[str, str | None]


class Prompt:
    """Files in a folder, and the program called with them in this process."""

    def __init__(self, folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
        self.sheet, self.record = folder / "sheet.toml", folder / "record.csv"
        self.capsys = capsys
        self.sheet.write_text(SHEET, encoding="utf-8")
        self.log([0], [21])

    def log(self, hours: list[float], celsius: list[float]) -> None:
        rows = [
            f"{(MIXED + timedelta(hours=h)).isoformat()},{c}"
            for h, c in zip(hours, celsius, strict=True)
        ]
        text = "\n".join(["time,temperature_c", *rows, ""])
        self.record.write_text(text, encoding="utf-8")

    def run(self, *options: str, mixed: str | None = None) -> tuple[int, str, str]:
        at = MIXED.isoformat() if mixed is None else mixed
        files = [str(self.sheet), str(self.record)]
        try:
            code = main(["forecast", *files, "--mixed-at", at, *options])
        except SystemExit as stopped:  # the parser of arguments ends so
            assert isinstance(stopped.code, int)
            code = stopped.code
        out, err = self.capsys.readouterr()
        return code, out, err

    def json(self, *options: str, mixed: str | None = None) -> dict[str, Bounds]:
        code, out, err = self.run("--json", *options, mixed=mixed)
        assert (code, err) == (0, "")
        document: dict[str, Bounds] = json.loads(out)
        assert list(document) == ["working_life_over", "may_be_handled", "safe_to_hit", "advice"]
        for key in ("working_life_over", "may_be_handled", "safe_to_hit"):
            assert list(document[key]) == ["early", "expected", "late"]
        assert all(isinstance(sentence, str) for sentence in document["advice"])
        return document

    def advice(self, *options: str) -> list[str]:
        return [*self.json(*options)["advice"]]

    def refused(self, *options: str, mixed: str | None = None) -> str:
        code, out, err = self.run(*options, mixed=mixed)
        assert (code, out) == (2, "")
        assert len(err.strip().splitlines()) == 1
        assert err.startswith("rackboard: ")
        return err


@pytest.fixture
def prompt(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Prompt:
    return Prompt(tmp_path, capsys)


def hours(text: str | None) -> float:
    assert text is not None
    assert re.fullmatch(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ", text)
    return (datetime.fromisoformat(text) - MIXED) / timedelta(hours=1)


# --- figures ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("sheet", "at", "celsius", "life", "handling", "handling_late", "full", "full_late"),
    [
        (SHEET, [0], [21], 1.22754, 10.9968, 12.5117, 33.9812, 39.0810),
        (SHEET, [0], [18], 1.51321, 14.0408, 16.4842, 45.0644, 53.8111),
        (SHEET, [0], [12], 2.32994, 23.2457, 145.588, 86.6343, 564.093),
        (SHEET, [0, 4, 8, 20, 21], [21, 21, 14, 14, 21],
         1.22754, 15.0453, 22.2383, 40.4463, 48.8076),
        (SHEET, [0, 1, 1.001, 3, 3.001], [20, 20, 80, 80, 20],
         1.0046, 1.6278, 1.8915, 2.9317, 16.3630),
        (RANGES, [0], [21], 1.02295, 10.9968, 15.6397, 33.9812, 45.5945),
    ],
)  # fmt: skip
def test_check_values(
    prompt: Prompt,
    sheet: str,
    at: list[float],
    celsius: list[float],
    life: float,
    handling: float,
    handling_late: float,
    full: float,
    full_late: float,
) -> None:
    """Exact, of the model's own bounds: Ea 58 (50–65), u = 1 °C, the last reading held."""
    prompt.sheet.write_text(sheet, encoding="utf-8")
    prompt.log(at, celsius)
    found = prompt.json()

    def near(value: float) -> object:
        """Within a whole second and the figure's last place."""
        return pytest.approx(value, abs=1.2 / 3600, rel=1e-5)

    assert hours(found["working_life_over"]["early"]) == near(life)
    assert hours(found["may_be_handled"]["expected"]) == near(handling)
    assert hours(found["may_be_handled"]["late"]) == near(handling_late)
    assert hours(found["safe_to_hit"]["expected"]) == near(full)
    assert hours(found["safe_to_hit"]["late"]) == near(full_late)


@pytest.mark.parametrize(
    ("air", "parts", "lag", "full"),
    [(22, "5C", "21.7778", 31.4422), (22, "5C", "0", 31.0698), (40, "12", "21.7778", 8.0822),
     (40, "53.6F", "21.7778", 8.0822)],
)  # fmt: skip
def test_parts_and_lag(prompt: Prompt, air: float, parts: str, lag: str, full: float) -> None:
    prompt.log([0], [air])
    found = prompt.json("--parts-temperature", parts, "--lag-min", lag)
    assert hours(found["safe_to_hit"]["expected"]) == pytest.approx(full, abs=5e-4)


def test_parts_are_as_warm_as_the_first_reading_unless_said(prompt: Prompt) -> None:
    prompt.log([-6, -1, 1], [5, 21, 21])
    silent = prompt.json("--lag-min", "22")
    assert silent == prompt.json("--lag-min", "22", "--parts-temperature", "5C")
    assert silent != prompt.json("--lag-min", "22", "--parts-temperature", "21C")


def test_the_uncertainty_shifts_the_parts_too(prompt: Prompt) -> None:
    """The late curve of parts at 5 °C is the expected one of parts at 4, in air 1 °C cooler."""
    sheet = sheet_from_toml(SHEET, "here")
    expected, late, early = ((t, t) for t in (295.15, 294.15, 296.15))
    span = oracle.Span(0, oracle.HORIZON_S, expected, late, early)
    parts = (278.15, 277.15, 279.15)
    theirs = oracle.milestones(sheet, [span], lag_s=1320, parts_k=parts)
    prompt.log([0], [22])
    found = prompt.json("--lag-min", "22", "--parts-temperature", "5C")
    for which in ("early", "late"):
        ours = hours(found["may_be_handled"][which]) * 3600
        assert ours == pytest.approx(theirs[f"handling {which}"], abs=5)


@pytest.mark.parametrize("seed", range(500, 524))
def test_against_scipy(prompt: Prompt, seed: int) -> None:
    """Own sheets and records through the files: within 0.1 % or 30 s, never alike."""
    case = random_case(random.Random(seed))
    prompt.sheet.write_text(sheet_to_toml(case.sheet), encoding="utf-8")
    at = [p.at_us / 3.6e9 for p in case.points]
    celsius = [p.temperature_mc / 1000 for p in case.points]
    prompt.log(at, celsius)
    mixed = (MIXED + timedelta(microseconds=case.mixed_us)).isoformat()
    options = ["--lag-min", str(case.lag_s / 60)]
    start_c = celsius[0]
    if case.parts is not None:
        start_c = case.parts.temperature_mc / 1000
        options += ["--parts-temperature", f"{start_c}C"]
    found = prompt.json(*options, mixed=mixed)
    spans = oracle.straight(
        [p.at_us / 1e6 for p in case.points], celsius, [1.0] * len(at), case.mixed_us / 1e6
    )
    start = 273.15 + start_c
    theirs = oracle.milestones(
        case.sheet, spans, lag_s=case.lag_s, parts_k=(start, start - 1, start + 1)
    )
    keys = {"life": "working_life_over", "handling": "may_be_handled", "full": "safe_to_hit"}
    for name, value in theirs.items():
        milestone, _, which = name.partition(" ")
        if milestone not in keys:
            continue
        ours = found[keys[milestone]][which]
        after = None if ours is None else hours(ours) * 3600 - case.mixed_us / 1e6
        assert oracle.miss(after, value) <= 1.05, (name, after, value)


def test_seconds_are_rounded_to_the_safe_side(prompt: Prompt) -> None:
    sheet = sheet_from_toml(SHEET, "here")
    from rackboard.core.bench import Source
    from rackboard.core.cure.calibration import calibrate
    from rackboard.core.cure.forecast import forecast_record
    from rackboard.core.cure.record import Point

    mixed = from_datetime(MIXED)
    exact = forecast_record(calibrate(sheet), [Point(mixed, 21_000, 1000, Source.FEED)], mixed)
    found = prompt.json()
    for key, bounds in (
        ("working_life_over", exact.working_life),
        ("may_be_handled", exact.handling),
        ("safe_to_hit", exact.full_cure),
    ):
        assert bounds is not None
        printed = {
            which: from_datetime(datetime.fromisoformat(text or ""))
            for which, text in found[key].items()
        }
        early, expected, late = bounds
        assert early is not None
        assert expected is not None
        assert late is not None
        assert 0 <= early - printed["early"] < 1_000_000
        assert 0 <= printed["late"] - late < 1_000_000
        assert abs(printed["expected"] - expected) <= 500_000


def test_no_handling_time_and_never(prompt: Prompt) -> None:
    prompt.sheet.write_text(SHEET.replace("handling_time_h = 8\n", ""), encoding="utf-8")
    prompt.log([0], [8])
    found = prompt.json()
    nothing = {"early": None, "expected": None, "late": None}
    assert found["may_be_handled"] == nothing
    assert found["safe_to_hit"]["late"] is None
    assert found["safe_to_hit"]["expected"] is not None
    _, out, _ = prompt.run()
    assert "Off the rack" not in out
    assert "Safe to hit   no time within 60 days of mixing (probably cured by" in out


# --- advice and words -------------------------------------------------------------------------


def test_assumptions_are_said(prompt: Prompt) -> None:
    bare = 'name = "A"\nworking_life_min = 60\nfull_cure_time_h = 24\n'
    prompt.sheet.write_text(bare, encoding="utf-8")
    text = "\n".join(prompt.advice())
    for words in ("taken at 25 °C", "15 °C assumed", "40 °C assumed", "58 kJ/mol assumed",
                  "No handling time given"):  # fmt: skip
        assert words in text


def test_nothing_to_say_is_an_empty_list(prompt: Prompt) -> None:
    prompt.sheet.write_text(SHEET + "activation_energy_kj_per_mol = 60\n", encoding="utf-8")
    prompt.log([0, 100], [25, 25])
    assert prompt.advice() == []
    _, out, _ = prompt.run()
    assert "\n- " not in out
    assert CAUTION in out


def test_sets_in_is_doubted(prompt: Prompt) -> None:
    prompt.sheet.write_text(SHEET.replace("handling_time_h = 8", "handling_time_h = 2.5"), "utf-8")
    assert any('"Sets in"' in sentence for sentence in prompt.advice())


def test_remedy_with_its_figures(prompt: Prompt) -> None:
    """From the record's end; what it promises is what the model says of that very record."""
    prompt.log([0, 6], [18, 15])
    remedy = next(s for s in prompt.advice() if " h at " in s)
    pattern = (
        r"(\d+) h at 40 °C from Wed 2026-03-11 14:00 \(UTC\+00:00\): "
        r"not before (\w{3} 2026-03-\d\d \d\d:\d\d) instead of (\w{3} 2026-03-\d\d \d\d:\d\d)\."
    )
    match = re.fullmatch(pattern, remedy)
    assert match, remedy
    _, out, _ = prompt.run()
    assert f"Safe to hit   not before {match[3]}" in out
    prompt.log([0, 6, 6 + 1e-6, 48], [18, 15, 40, 40])  # the same hours in the box, recorded
    _, out, _ = prompt.run()
    assert f"Safe to hit   not before {match[2]}" in out
    ready = datetime.strptime(match[2] + "+00:00", "%a %Y-%m-%d %H:%M%z")
    stay = timedelta(hours=int(match[1]))
    out_of_it = MIXED + timedelta(hours=6) + stay
    assert out_of_it - timedelta(hours=1) < ready <= out_of_it + timedelta(minutes=6)


def test_no_remedy_hotter_than_the_sheet_allows_or_for_little(prompt: Prompt) -> None:
    prompt.sheet.write_text(SHEET.replace("_c = 60", "_c = 30"), encoding="utf-8")
    assert any(" h at 30 °C from" in s for s in prompt.advice())
    prompt.log([0, 38.9], [21, 21])  # ten minutes before the joint is safe anyway
    assert not any(" h at " in s for s in prompt.advice())
    prompt.log([0, 60], [21, 21])
    assert not any(" h at " in s or "record ends" in s for s in prompt.advice())


def test_a_remedy_where_there_would_be_no_time(prompt: Prompt) -> None:
    prompt.log([0], [8])
    assert any("instead of no time within 60 days of mixing." in s for s in prompt.advice())


def test_cold_and_heat_are_said(prompt: Prompt) -> None:
    prompt.log([0, 4], [20, 12.5])
    assert (
        "The record falls to 12.5 °C, taken as 11.5 °C: "
        "that far below the sheet's 15 °C the hours count for less."
    ) in prompt.advice()
    prompt.log([0, 4], [20, 10.9])
    assert any(s.endswith("15 °C nothing counts.") for s in prompt.advice())
    prompt.log([-4, 0, 4], [2, 20, 20])  # before mixing it does not matter
    assert not any("falls to" in s for s in prompt.advice())
    prompt.log([0, 1, 2], [20, 80, 20])
    assert any("rises to 80.0 °C" in s for s in prompt.advice())


def test_plain_output_in_the_offset_of_the_mixing_time(prompt: Prompt) -> None:
    code, out, err = prompt.run(mixed="2026-03-11T09:00:00+01:00")
    assert (code, err) == (0, "")
    lines = out.splitlines()
    assert lines[0] == "invented day-long, mixed Wed 2026-03-11 09:00 (UTC+01:00)"
    # early 1.22754 h down, expected 1.3746 h up; late 12.5117 h, at least 60 s on, to full 5 min
    assert lines[2:5] == [
        "Working life  use by Wed 2026-03-11 10:10 (probably over by Wed 2026-03-11 10:25)",
        "Off the rack  not before Wed 2026-03-11 21:35 (probably hard by Wed 2026-03-11 20:00)",
        "Safe to hit   not before Fri 2026-03-13 00:10 (probably cured by Thu 2026-03-12 19:00)",
    ]
    assert lines[-1] == CAUTION


def test_plain_output_has_no_early_bound_of_a_permission(prompt: Prompt) -> None:
    found = prompt.json()
    _, out, _ = prompt.run()
    for key in ("may_be_handled", "safe_to_hit"):
        early = datetime.fromisoformat(found[key]["early"] or "")
        for minutes in range(-5, 6):
            assert f"{early + timedelta(minutes=minutes):%Y-%m-%d %H:%M}" not in out
    assert "from" not in out.split("\n\n")[1]


def test_a_quick_epoxy_has_a_minute_left(prompt: Prompt) -> None:
    quick = SHEET.replace("working_life_min = 60", "working_life_min = 4")
    prompt.sheet.write_text(quick, encoding="utf-8")
    prompt.log([0], [25])
    _, out, _ = prompt.run()
    assert "use by Wed 2026-03-11 08:03" in out


# --- bad input --------------------------------------------------------------------------------

ROW = "2026-03-11T08:00:00+00:00,21\n"


@pytest.mark.parametrize(
    ("sheet", "words"),
    [
        ("", ("sheet.toml: ", "wanted the key name", "none")),
        ("name = ", ("sheet.toml, line 1", "wanted a sheet as TOML")),
        (SHEET.replace("full_cure_time_h = 24", ""), ("the key full_cure_time_h", "none")),
        (SHEET.replace("_h = 8", "_h = -8"), ("handling_time_h", "above zero", "-8")),
        (SHEET.replace("_h = 24", "_h = 0"), ("full_cure_time_h", "above zero", "0")),
        (SHEET.replace("_min = 60", "_min = nan"), ("working_life_min", "finite", "nan")),
        (SHEET.replace("_h = 8", "_h = '8 h'"), ("handling_time_h", "a number", "8 h")),
        (SHEET.replace("_h = 8", "_h = [10, 6]"), ("handling_time_h", "shorter", "[10, 6]")),
        (SHEET.replace("_h = 8", "_h = 23"), ("handling_time_h", "same time", "blank")),
        (SHEET.replace("_h = 8", "_h = 30"), ("handling_time_h", "at most", "30 h")),
        (SHEET.replace("= 15", "= 26"), ("minimum_cure_temperature_c", "25", "26")),
        (SHEET.replace("_c = 60", "_c = 20"), ("maximum_cure_temperature_c", "25", "20")),
        (SHEET + "working_live_min = 5\n", ('"working_live_min"', 'mean "working_life_min"')),
        (SHEET + "activation_energy_kj_per_mol = 130\n", ("30 to 120 kJ/mol", "130")),
        (SHEET + "[[further_times]]\nquantity='full'\ntemperature_c=50\nhours=2\n",
         ("further_times 1, quantity", '"full_cure"', '"full"')),
        (SHEET + "[[further_times]]\nquantity='full_cure'\ntemperature_c=50\nhours=23\n",
         ("activation energy", "30 to 120 kJ/mol", "from the times at other temperatures")),
    ],
)  # fmt: skip
def test_bad_sheet(prompt: Prompt, sheet: str, words: tuple[str, ...]) -> None:
    prompt.sheet.write_text(sheet, encoding="utf-8")
    message = prompt.refused()
    assert "sheet.toml" in message
    for word in words:
        assert word in message


@pytest.mark.parametrize(
    ("record", "words"),
    [
        ("", ("record.csv: ", "time,temperature_c", "empty")),
        ("when,celsius\n" + ROW, ("line 1", "time,temperature_c", "when,celsius")),
        ("time,temperature_c\n", ("at least one reading", "none")),
        (f"time,temperature_c\n{ROW}2026-03-11T09:00Z,warm\n", ("line 3", "°C", "warm")),
        (f"time,temperature_c\n{ROW}2026-03-11T09:00Z,nan\n", ("line 3", "°C", "nan")),
        (f"time,temperature_c\n{ROW}2026-03-11T09:00Z,\n", ("line 3", "nothing")),
        (f"time,temperature_c\n{ROW}2026-03-11T09:00Z,121\n", ("line 3", "−40 to 120", "121")),
        (f"time,temperature_c\n{ROW}2026-03-11T09:00Z,85.000\n", ("line 3", "85.000")),
        (f"time,temperature_c\n{ROW}2026-03-11T07:00Z,21\n", ("line 3", "after", "07:00Z")),
        (f"time,temperature_c\n{ROW}2026-03-11T08:00Z,22\n", ("line 3", "one temperature", "22")),
        ("time,temperature_c\n2026-03-11T08:00:00,21\n", ("line 2", "offset", "no offset")),
        ("time,temperature_c\nyesterday,21\n", ("line 2", "ISO 8601", "yesterday")),
        (f"time,temperature_c\n{ROW}2026-03-11T09:00Z,21,x\n", ("line 3", "two fields", "3")),
    ],
)  # fmt: skip
def test_bad_record(prompt: Prompt, record: str, words: tuple[str, ...]) -> None:
    prompt.record.write_text(record, encoding="utf-8")
    message = prompt.refused()
    assert "record.csv" in message
    for word in words:
        assert word in message


def test_no_utf8(prompt: Prompt) -> None:
    prompt.sheet.write_bytes(b'name = "\xe9"\n')
    assert "UTF-8" in prompt.refused()


@pytest.mark.parametrize(
    ("break_it", "words"),
    [
        (lambda p: p.sheet.unlink(), ("sheet.toml", "a sheet that can be read", "No such file")),
        (lambda p: p.record.unlink(), ("record.csv", "a record that can be read", "No such")),
        (lambda p: (p.sheet.unlink(), p.sheet.mkdir()), ("sheet.toml", "directory")),
    ],
)
def test_unreadable_files(
    prompt: Prompt, break_it: Callable[[Prompt], object], words: tuple[str, ...]
) -> None:
    break_it(prompt)
    message = prompt.refused()
    for word in words:
        assert word in message


@pytest.mark.parametrize(
    ("mixed", "words"),
    [
        ("2026-03-11T08:00:00", ("--mixed-at", "offset", "no offset")),
        ("noon", ("--mixed-at", "ISO 8601", "noon")),
        ("2026-03-11T07:59:59Z",
         ("inside the record, 2026-03-11T08:00:00Z to 2026-03-11T10:00:00Z",
          "2026-03-11T07:59:59Z")),
        ("2026-03-11T11:00:01+01:00", ("2026-03-11T10:00:00Z", "2026-03-11T10:00:01Z")),
        ("9999-12-31T23:00:00Z", ("--mixed-at", "year", "9999")),
    ],
)  # fmt: skip
def test_bad_mixing_time(prompt: Prompt, mixed: str, words: tuple[str, ...]) -> None:
    prompt.log([0, 2], [21, 21])
    message = prompt.refused(mixed=mixed)
    for word in words:
        assert word in message


def test_mixed_at_the_ends_of_the_record(prompt: Prompt) -> None:
    prompt.log([0, 2], [21, 21])
    assert prompt.json()
    assert prompt.json(mixed=(MIXED + timedelta(hours=2)).isoformat())


@pytest.mark.parametrize("parts", ["cold", "5 K", "-41C", "130C", ""])
def test_bad_parts_temperature(prompt: Prompt, parts: str) -> None:
    message = prompt.refused(f"--parts-temperature={parts}")
    assert "--parts-temperature: wanted a temperature" in message


@pytest.mark.parametrize("lag", ["-1", "nan", "inf", "much", "100000"])
def test_bad_lag(prompt: Prompt, lag: str) -> None:
    """The parser of arguments says these, below its usage."""
    code, out, err = prompt.run(f"--lag-min={lag}")
    assert (code, out) == (2, "")
    last = err.strip().splitlines()[-1]
    assert "--lag-min: wanted minutes from 0" in last
    assert lag in last


@pytest.mark.parametrize("lag", [-1.0, float("nan"), float("inf")])
def test_bad_lag_is_refused_by_the_forecast_itself(prompt: Prompt, lag: float) -> None:
    from argparse import Namespace

    from rackboard.core.errors import InputError
    from rackboard.prompt import main_forecast

    args = Namespace(
        sheet=prompt.sheet, record=prompt.record, mixed_at=MIXED.isoformat(),
        parts_temperature=None, lag_min=lag, json=False,
    )  # fmt: skip
    with pytest.raises(InputError, match="--lag-min: wanted minutes from 0 to 1440"):
        main_forecast(args)


# --- the real program -------------------------------------------------------------------------

BLOCKED = """
import sys
for name in ("PySide6", "shiboken6", "jeepney"):
    sys.modules[name] = None
from rackboard.__main__ import main
sys.exit(main())
"""


def test_without_qt_and_without_a_display(prompt: Prompt) -> None:
    files = (str(prompt.sheet), str(prompt.record))
    call = ("forecast", *files, "--mixed-at", MIXED.isoformat(), "--json")
    blocked = run_python("-c", BLOCKED, *call, QT_QPA_PLATFORM="", DISPLAY="", WAYLAND_DISPLAY="")
    assert (blocked.returncode, blocked.stderr) == (0, "")
    assert json.loads(blocked.stdout) == prompt.json()


def test_module_and_exit_code(prompt: Prompt) -> None:
    files = (str(prompt.sheet), str(prompt.record))
    call = ("-m", "rackboard", "forecast", *files, "--mixed-at")
    good = run_python(*call, MIXED.isoformat(), PYTHONIOENCODING="ascii")
    assert (good.returncode, good.stderr) == (0, "")
    assert "Safe to hit   not before Thu 2026-03-12 23:10" in good.stdout
    bad = run_python(*call, "2027-03-11T08:00Z")
    assert (bad.returncode, bad.stdout) == (2, "")
    assert bad.stderr.count("\n") == 1
    assert "2026-03-11T08:00:00Z to 2026-03-11T08:00:00Z, got 2027-03-11T08:00:00Z" in bad.stderr
