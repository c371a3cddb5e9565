"""Arguments reach the right part, and every trouble of the world ends with exit code 2."""

from __future__ import annotations

import sys
from argparse import Namespace
from types import ModuleType
from typing import Any

import pytest

from helpers.project import run_python
from rackboard import __version__, app, preflight
from rackboard.core.errors import InputError
from rackboard.ui import Options


@pytest.fixture
def opened(monkeypatch: pytest.MonkeyPatch) -> list[Options]:
    """A window that only notes with what it was opened."""
    seen: list[Options] = []
    window: Any = ModuleType("rackboard.ui.main")
    window.run = lambda options: seen.append(options) or 0
    monkeypatch.setitem(sys.modules, "rackboard.ui.main", window)
    return seen


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[Namespace]:
    """A prompt that only notes what it was asked."""
    seen: list[Namespace] = []
    prompt: Any = ModuleType("rackboard.prompt")
    prompt.main_forecast = lambda parsed: seen.append(parsed) or 0
    monkeypatch.setitem(sys.modules, "rackboard.prompt", prompt)
    return seen


def test_plain_start_opens_the_real_board(opened: list[Options]) -> None:
    assert app.main([]) == 0
    (options,) = opened
    assert not options.demo
    assert options.data_dir is None
    assert options.speed == 1.0


def test_demo_with_its_clock(opened: list[Options]) -> None:
    assert app.main(["--demo", "--speed", "60", "--data-dir", "here"]) == 0
    (options,) = opened
    assert (options.demo, options.speed, options.data_dir) == (True, 60.0, "here")


@pytest.mark.parametrize("speed", ["0", "-1", "nan", "inf", "fast"])
def test_a_speed_that_is_none_is_refused(
    speed: str, opened: list[Options], capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as left:
        app.main(["--demo", f"--speed={speed}"])
    assert left.value.code == 2
    assert "--speed: wanted a number from 1" in capsys.readouterr().err
    assert not opened


def test_speed_without_demo_is_refused(
    opened: list[Options], capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as left:
        app.main(["--speed", "60"])
    assert left.value.code == 2
    assert "--demo" in capsys.readouterr().err


def test_forecast_is_handed_on_without_qt(asked: list[Namespace]) -> None:
    arguments = ["forecast", "a.toml", "b.csv", "--mixed-at", "2026-03-11T09:10:00+01:00"]
    assert app.main([*arguments, "--parts-temperature", "-5C", "--lag-min", "22", "--json"]) == 0
    (parsed,) = asked
    assert (parsed.sheet, parsed.record) == ("a.toml", "b.csv")
    assert parsed.mixed_at == "2026-03-11T09:10:00+01:00"
    assert (parsed.parts_temperature, parsed.lag_min, parsed.json) == ("-5C", 22.0, True)


def test_forecast_defaults(asked: list[Namespace]) -> None:
    assert app.main(["forecast", "a.toml", "b.csv", "--mixed-at", "x"]) == 0
    (parsed,) = asked
    assert (parsed.parts_temperature, parsed.lag_min, parsed.json) == (None, 0.0, False)


def test_forecast_needs_the_mixing_time(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as left:
        app.main(["forecast", "a.toml", "b.csv"])
    assert left.value.code == 2
    assert "--mixed-at" in capsys.readouterr().err


def test_trouble_of_the_world_is_one_message(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def refuse(parsed: Namespace) -> int:
        raise InputError("a number", "warm", "b.csv line 3")

    prompt: Any = ModuleType("rackboard.prompt")
    prompt.main_forecast = refuse
    monkeypatch.setitem(sys.modules, "rackboard.prompt", prompt)
    assert app.main(["forecast", "a.toml", "b.csv", "--mixed-at", "x"]) == 2
    said = capsys.readouterr()
    assert said.err == "rackboard: b.csv line 3: wanted a number, got warm.\n"
    assert said.out == ""


def test_missing_libraries_end_before_the_window(
    opened: list[Options], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(preflight, "trouble", lambda *args, **named: "the system lacks libX")
    assert app.main([]) == 2
    assert capsys.readouterr().err == "the system lacks libX\n"
    assert not opened


def test_without_standard_error_nothing_breaks(
    opened: list[Options], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(preflight, "trouble", lambda *args, **named: "something")
    monkeypatch.setattr(sys, "stderr", None)
    assert app.main([]) == 2


def test_version_from_the_command_line() -> None:
    done = run_python("-m", "rackboard", "--version")
    assert (done.returncode, done.stdout.strip()) == (0, f"rackboard {__version__}")


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="looks at Linux only")
def test_no_screen_ends_with_two_instead_of_an_abort() -> None:
    done = run_python("-m", "rackboard", QT_QPA_PLATFORM="", DISPLAY="", WAYLAND_DISPLAY="")
    assert done.returncode == 2
    assert "no screen" in done.stderr
    assert "Traceback" not in done.stderr


def test_a_plain_start_needs_no_argument_parser() -> None:
    code = (
        "import sys, types\n"
        "window = types.ModuleType('rackboard.ui.main'); window.run = lambda options: 0\n"
        "sys.modules['rackboard.ui.main'] = window\n"
        # Qt's binding loads both; this is about what the program itself does.
        "binding = types.ModuleType('rackboard.ui.binding')\n"
        "binding.spare_sources = lambda: None\n"
        "sys.modules['rackboard.ui.binding'] = binding\n"
        "from rackboard.app import main\n"
        "code = main([])\n"
        "sys.exit(code or 10 * ('argparse' in sys.modules) or 20 * ('logging' in sys.modules))\n"
    )
    done = run_python("-c", code)
    assert done.returncode == 0, done.stderr


def test_the_system_clock_goes_forward_in_microseconds() -> None:
    clock = app.SystemClock()
    first, second = clock.now(), clock.now()
    assert first <= second
    assert first > 1_700_000_000_000_000
