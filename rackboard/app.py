"""Arguments, the system's clock, and the one place where the parts are put together."""

from __future__ import annotations

import gc
import os
import sys
import time
from collections.abc import Sequence
from typing import TYPE_CHECKING

from rackboard.core.errors import RackboardError
from rackboard.core.instants import Instant

if TYPE_CHECKING:
    from argparse import ArgumentParser, Namespace

    from rackboard.ui import Options

FASTEST = 100_000.0
"""Highest speed of the demo's clock: more than a day a second shows nothing."""


class SystemClock:
    """The machine's own clock; whoever needs the time is handed it."""

    def now(self) -> Instant:
        """Return the present instant [µs UTC]."""
        return time.time_ns() // 1000

    def elapsed(self) -> int:
        """Return time that nobody can set and that goes on in suspend, where there is such [µs]."""
        boot = getattr(time, "CLOCK_BOOTTIME", None)
        if boot is None:
            return time.monotonic_ns() // 1000
        return time.clock_gettime_ns(boot) // 1000


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the program with the given arguments and return its exit code.

    Parameters
    ----------
    arguments : sequence of str, optional
        Without the program's name; by default those of the process.
    """
    given = list(sys.argv[1:] if arguments is None else arguments)
    try:
        # The plain start needs no argument parser, whose import would be felt.
        parsed = _parsed(given) if given else None
        if parsed is not None and parsed.command == "forecast":
            return _forecast(parsed)
        return _board(parsed)
    except RackboardError as error:
        _say(f"rackboard: {error}")
        return 2


def _forecast(parsed: Namespace) -> int:
    from rackboard.prompt import main_forecast

    return main_forecast(parsed)


def _board(parsed: Namespace | None) -> int:
    from rackboard import preflight

    as_root = hasattr(os, "geteuid") and os.geteuid() == 0
    trouble = preflight.trouble(os.environ, sys.platform, as_root=as_root)
    if trouble is not None:
        _say(trouble)
        return 2
    # Loading makes tens of thousands of objects that stay: to look for rubbish among them
    # costs a twentieth of the time to the first picture.
    gc.disable()
    from rackboard.ui.binding import spare_sources

    spare_sources()
    from rackboard.ui.main import run

    gc.freeze()
    gc.enable()
    return run(_options(parsed))


def _options(parsed: Namespace | None) -> Options:
    from rackboard.ui import Options

    clock = SystemClock()
    if parsed is None:
        return Options(clock=clock)
    return Options(
        clock=clock,
        demo=parsed.demo,
        data_dir=parsed.data_dir,
        speed=1.0 if parsed.speed is None else parsed.speed,
    )


def _say(text: str) -> None:
    # A windowed build has no standard error.
    if sys.stderr is not None:
        print(text, file=sys.stderr)


def _joined(given: list[str]) -> list[str]:
    """Join `--parts-temperature -5C` by an equals sign: the parser takes -5C for an option."""
    joined: list[str] = []
    for argument in given:
        if joined and joined[-1] == "--parts-temperature" and argument[1:2].isdigit():
            joined[-1] += f"={argument}"
        else:
            joined.append(argument)
    return joined


def _parsed(given: list[str]) -> Namespace:
    parser = _parser()
    parsed = parser.parse_args(_joined(given))
    if parsed.speed is not None and not parsed.demo:
        parser.error("argument --speed: only the demo's clock can run fast; add --demo")
    return parsed


def _parser() -> ArgumentParser:
    from argparse import ArgumentParser, ArgumentTypeError

    from rackboard import __version__

    def number(text: str, low: float, high: float, wanted: str) -> float:
        try:
            value = float(text)
        except ValueError:
            value = -1.0
        if not low <= value <= high:  # false for NaN too
            raise ArgumentTypeError(f"wanted {wanted}, got {text!r}")
        return value

    def speed(text: str) -> float:
        return number(text, 1.0, FASTEST, f"a number from 1 to {FASTEST:.0f}, such as 60")

    def minutes(text: str) -> float:
        return number(text, 0.0, 1440.0, "minutes from 0 to 1440, such as 22")

    parser = ArgumentParser(
        prog="rackboard",
        description="Says what each glued golf-club joint on the drying rack may bear, and when.",
        epilog="Without a command the board opens.",
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"rackboard {__version__}")
    parser.add_argument("--demo", action="store_true", help="open an invented shop in mid-week")
    parser.add_argument("--data-dir", metavar="DIR", help="keep all files of the board here")
    parser.add_argument(
        "--speed", type=speed, metavar="N", help="with --demo: let its clock run N times as fast"
    )
    commands = parser.add_subparsers(dest="command", metavar="command")
    forecast = commands.add_parser(
        "forecast",
        help="print when a joint may be handled and hit, from a sheet and a record",
        description="Prints when a joint may be handled and hit. Needs no screen.",
        allow_abbrev=False,
    )
    forecast.add_argument("sheet", metavar="SHEET.toml", help="the epoxy's sheet")
    forecast.add_argument(
        "record", metavar="RECORD.csv", help="time,temperature_c; ISO 8601 with offset, °C"
    )
    forecast.add_argument(
        "--mixed-at", required=True, metavar="TIME", help="ISO 8601 with its offset"
    )
    forecast.add_argument(
        "--parts-temperature", metavar="T", help="such as 5C or 41F; else the first reading"
    )
    forecast.add_argument(
        "--lag-min",
        type=minutes,
        default=0.0,
        metavar="MIN",
        help="thermal lag of the head behind the air, such as 22; else 0",
    )
    forecast.add_argument("--json", action="store_true", help="print JSON")
    return parser
