"""The sensors that Linux shows as files: one-wire, hwmon, industrial I/O.

What the files hold is described in the kernel's documentation (w1_therm, hwmon sysfs
interface, sysfs-bus-iio) [from memory]: m°C as a whole number, for IIO also a raw number
with offset and scale.
"""

from __future__ import annotations

import re
import threading
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from rackboard.core.feed import Fault, FaultKind, FeedKind, Polled, Sample
from rackboard.core.instants import MINUTE_US, SECOND_US
from rackboard.core.text import text

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from rackboard.core.instants import Instant
    from rackboard.core.text import Text

ROOT = Path("/")
FAMILIES = ("10", "22", "28", "3b", "42")
"""The families of one-wire thermometers [from memory]."""
SLOW_US = 30 * SECOND_US
"""A sensor that takes longer to answer hangs [decision]."""
_WIRE = Path("sys/bus/w1/devices")
_HWMON = Path("sys/class/hwmon")
_IIO = Path("sys/bus/iio/devices")
_LONGEST = 400
_SLAVE = re.compile(r"crc=[0-9a-f]{2} (YES|NO)\s.*?t=(-?\d+)", re.DOTALL)


class Sensor(NamedTuple):
    """A sensor that is there now.

    Attributes
    ----------
    kind : FeedKind
        How it is read.
    key : str
        Its lasting name: the numbers of the folders change when the computer starts.
    label : str
        What it calls itself.
    path : Path
        The file that holds the temperature.
    """

    kind: FeedKind
    key: str
    label: str
    path: Path


class SensorError(Exception):
    """A sensor's answer that is no temperature."""

    def __init__(self, kind: FaultKind, said: Text) -> None:
        super().__init__(said)
        self.kind = kind
        self.said = said


def discover(root: Path = ROOT) -> list[Sensor]:
    """Return the sensors that are there, one-wire ones first.

    Parameters
    ----------
    root : Path
        Where the file system begins; a folder of a test's own.
    """
    return [*_one_wire(root), *_industrial(root), *_hwmon(root)]


def _one_wire(root: Path) -> Iterator[Sensor]:
    for folder in _listed(root / _WIRE):
        if folder.name.partition("-")[0] not in FAMILIES:
            continue
        for name in ("temperature", "w1_slave"):
            if (folder / name).exists():
                yield Sensor(FeedKind.ONE_WIRE, folder.name, folder.name, folder / name)
                break


def _hwmon(root: Path) -> Iterator[Sensor]:
    for folder in _listed(root / _HWMON):
        chip = _line(folder / "name") or folder.name
        device = _device(folder / "device")
        for path in sorted(folder.glob("temp*_input"), key=_number):
            part = path.name.removesuffix("_input")
            label = _line(folder / f"{part}_label") or part
            key = "/".join(filter(None, (chip, device, part)))
            yield Sensor(FeedKind.HWMON, key, f"{chip}: {label}", path)


def _industrial(root: Path) -> Iterator[Sensor]:
    for folder in _listed(root / _IIO):
        chip = _line(folder / "name") or folder.name
        device = _device(folder / "..") if folder.is_symlink() else ""
        found = {path.name.rpartition("_")[0]: path for path in folder.glob("in_temp*_raw")}
        found |= {path.name.rpartition("_")[0]: path for path in folder.glob("in_temp*_input")}
        for part in sorted(found):
            key = "/".join(filter(None, (chip, device, part)))
            label = _line(folder / f"{part}_label") or _line(folder / "label")
            yield Sensor(FeedKind.IIO, key, f"{chip}: {label}" if label else chip, found[part])


def read_sensor(sensor: Sensor) -> int:
    """Return what a sensor measures now [m°C].

    Parameters
    ----------
    sensor : Sensor
        As discovered.

    Returns
    -------
    int
        The temperature [m°C]; nothing is said of its being a likely one.

    Raises
    ------
    SensorError
        If its answer is none.
    OSError
        If it doesn't answer.
    """
    answer = _answer(sensor.path)
    if sensor.path.name == "w1_slave":
        return _slave(answer)
    if sensor.kind is FeedKind.IIO and sensor.path.name.endswith("_raw"):
        stem = sensor.path.name.removesuffix("_raw")
        scale = _factor(sensor.path.parent, stem, "scale", 1.0)
        return round((_figure(answer) + _factor(sensor.path.parent, stem, "offset", 0.0)) * scale)
    if sensor.kind is FeedKind.HWMON:
        fault = sensor.path.with_name(sensor.path.name.replace("_input", "_fault"))
        if _line(fault) == "1":
            raise SensorError(
                FaultKind.SILENT, text("Feed", "its chip says that the sensor is broken or off")
            )
    return round(_figure(answer))


def _slave(answer: str) -> int:
    match = _SLAVE.search(answer)
    if match is None:
        raise _unreadable(answer)
    if match[1] == "NO":
        raise SensorError(
            FaultKind.CHECKSUM, text("Feed", "its answer comes garbled: look at the wire")
        )
    return int(match[2])


def _figure(answer: str) -> float:
    if not re.fullmatch(r"[+-]?\d+(?:\.\d+)?", answer.strip()):
        raise _unreadable(answer)
    return float(answer)


def _unreadable(answer: str) -> SensorError:
    came = " ".join(answer.split())[:40]
    if not came:
        return SensorError(FaultKind.SILENT, text("Feed", "it answers nothing"))
    said = text("Feed", "its answer is no temperature: {came}").format(came=came)
    return SensorError(FaultKind.UNREADABLE, said)


class SysfsFeed:
    """One sensor, read when asked.

    Reading a one-wire sensor takes most of a second, so that is done in a thread; a poll
    starts it, and a later one fetches the answer.

    Parameters
    ----------
    kind, key
        As of `Sensor`.
    root : Path
        Where the file system begins.
    start : callable, optional
        Runs the reading; by default in a thread for a one-wire sensor, else at once.
    """

    def __init__(
        self,
        kind: FeedKind,
        key: str,
        root: Path = ROOT,
        start: Callable[[Callable[[], None]], None] | None = None,
    ) -> None:
        self._kind, self._key, self._root = kind, key, root
        slow = kind is FeedKind.ONE_WIRE
        self._start = start or (_in_thread if slow else _at_once)
        self._sensor: Sensor | None = None
        self._asked_us: Instant | None = None
        self._answer: int | SensorError | OSError | None = None
        self._fault: Fault | None = None

    def poll(self, now: Instant) -> Polled:
        """Return the sensor's temperature, once it has answered; see `Feed`."""
        if self._asked_us is not None and now < self._asked_us:
            self._asked_us = now  # the clock was set back meanwhile
        if self._asked_us is None:
            sensor = self._found()
            if sensor is None:
                gone = text("Feed", "{sensor} is not there").format(sensor=self._key)
                return self._wrong(FaultKind.MISSING, gone, now)
            self._asked_us, self._answer = now, None
            self._start(lambda: self._read(sensor))
        answer = self._answer
        if answer is None:
            if now - self._asked_us < SLOW_US:
                return Polled((), self._faults(), again=True)
            return self._wrong(FaultKind.SILENT, text("Feed", "it doesn't answer"), now)
        asked, self._asked_us, self._answer = self._asked_us, None, None
        if isinstance(answer, SensorError):
            return self._wrong(answer.kind, answer.said, now)
        if isinstance(answer, OSError):
            self._sensor = None  # it may come back under another number
            if isinstance(answer, FileNotFoundError):
                gone = text("Feed", "{sensor} is not there").format(sensor=self._key)
                return self._wrong(FaultKind.MISSING, gone, now)
            reason = answer.strerror or str(answer)
            said = text("Feed", "it can't be read: {reason}").format(reason=reason)
            return self._wrong(FaultKind.SILENT, said, now)
        over = self._fault
        self._fault = None
        faults = () if over is None else (over._replace(until_us=now),)
        # An answer that lay ready for long (the computer slept) was true when it was given.
        at = now if now - asked < MINUTE_US else asked
        return Polled((Sample(at, answer),), faults)

    def _found(self) -> Sensor | None:
        if self._sensor is None or not self._sensor.path.exists():
            self._sensor = next(
                (s for s in discover(self._root) if s.kind is self._kind and s.key == self._key),
                None,
            )
        return self._sensor

    def _read(self, sensor: Sensor) -> None:
        try:
            self._answer = read_sensor(sensor)
        except (SensorError, OSError) as error:
            self._answer = error

    def _faults(self) -> tuple[Fault, ...]:
        return () if self._fault is None else (self._fault,)

    def _wrong(self, kind: FaultKind, said: Text, now: Instant) -> Polled:
        before = self._fault
        same = before is not None and before.kind is kind
        self._fault = Fault(kind, said, before.since_us if before is not None and same else now)
        if before is None or same:
            return Polled((), (self._fault,))
        return Polled((), (before._replace(until_us=now), self._fault))


def _at_once(read: Callable[[], None]) -> None:
    read()


def _in_thread(read: Callable[[], None]) -> None:
    threading.Thread(target=read, name="sensor", daemon=True).start()


def _listed(folder: Path) -> list[Path]:
    try:
        return sorted(folder.iterdir(), key=_number)
    except OSError:
        return []


def _number(path: Path) -> tuple[str, int, str]:
    """Sort temp10 behind temp9."""
    match = re.match(r"(\D*)(\d*)", path.name)
    assert match is not None
    return match[1], int(match[2] or 0), path.name


def _device(path: Path) -> str:
    try:
        return path.resolve(strict=True).name
    except OSError:
        return ""


def _answer(path: Path) -> str:
    with path.open("rb") as file:
        return file.read(_LONGEST).decode("ascii", "replace")


def _line(path: Path) -> str:
    try:
        return " ".join(_answer(path).split())
    except OSError:
        return ""


def _factor(folder: Path, stem: str, name: str, otherwise: float) -> float:
    """Return the offset or scale of one channel, or of all channels of the chip."""
    for path in (folder / f"{stem}_{name}", folder / f"in_temp_{name}"):
        written = _line(path)
        if written:
            return _figure(written)
    return otherwise
