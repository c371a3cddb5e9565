"""Sensors of a made-up tree of files."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from rackboard.core.feed import FaultKind, FeedKind, Sample
from rackboard.core.instants import MINUTE_US, SECOND_US
from rackboard.feeds.sysfs import SysfsFeed, discover

T0 = 1_773_000_000 * SECOND_US
WIRE = "28-0a1b2c3d4e5f"
SLAVE = "72 01 4b 46 7f ff 0e 10 57 : crc=57 {crc}\n72 01 4b 46 7f ff 0e 10 57 t={mc}\n"


def write(path: Path, content: str) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(content)
    return path


def wire(root: Path, content: str = "23125\n", name: str = "temperature") -> Path:
    return write(root / "sys/bus/w1/devices" / WIRE / name, content)


def hwmon(root: Path, number: int = 0) -> Path:
    device = root / "sys/devices/platform/chip.656"
    device.mkdir(parents=True, exist_ok=True)
    folder = root / f"sys/class/hwmon/hwmon{number}"
    write(folder / "name", "airchip\n")
    (folder / "device").symlink_to(device)
    write(folder / "temp1_input", "21500\n")
    write(folder / "temp1_label", "Bench air\n")
    write(folder / "temp10_input", "30000\n")
    write(folder / "temp2_input", "22000\n")
    return folder


def iio(root: Path) -> Path:
    folder = root / "sys/devices/i2c-1/1-0076/iio:device0"
    write(folder / "name", "bmx\n")
    devices = root / "sys/bus/iio/devices"
    devices.mkdir(parents=True)
    (devices / "iio:device0").symlink_to(folder)
    return folder


def test_nothing_is_there_without_the_folders(tmp_path: Path) -> None:
    assert discover(tmp_path) == []


def test_sensors_have_lasting_names_and_what_they_call_themselves(tmp_path: Path) -> None:
    wire(tmp_path)
    write(tmp_path / "sys/bus/w1/devices/w1_bus_master1/name", "master")
    hwmon(tmp_path)
    write(iio(tmp_path) / "in_temp_input", "20125\n")
    found = [(s.kind, s.key, s.label) for s in discover(tmp_path)]
    assert found == [
        (FeedKind.ONE_WIRE, WIRE, WIRE),
        (FeedKind.IIO, "bmx/1-0076/in_temp", "bmx"),
        (FeedKind.HWMON, "airchip/chip.656/temp1", "airchip: Bench air"),
        (FeedKind.HWMON, "airchip/chip.656/temp2", "airchip: temp2"),
        (FeedKind.HWMON, "airchip/chip.656/temp10", "airchip: temp10"),
    ]


@pytest.mark.parametrize(
    ("name", "content", "mc"),
    [("temperature", "23125\n", 23_125), ("temperature", "-4062\n", -4_062),
     ("w1_slave", SLAVE.format(crc="YES", mc=23125), 23_125),
     ("w1_slave", SLAVE.format(crc="YES", mc=-1250), -1_250)],
)  # fmt: skip
def test_a_one_wire_sensor_is_read(tmp_path: Path, name: str, content: str, mc: int) -> None:
    wire(tmp_path, content, name)
    feed = SysfsFeed(FeedKind.ONE_WIRE, WIRE, tmp_path, lambda read: read())
    assert feed.poll(T0).samples == (Sample(T0, mc),)


@pytest.mark.parametrize(
    ("name", "content", "kind"),
    [("w1_slave", SLAVE.format(crc="NO", mc=23125), FaultKind.CHECKSUM),
     ("w1_slave", "nothing of the kind", FaultKind.UNREADABLE),
     ("temperature", "", FaultKind.SILENT), ("temperature", "warm\n", FaultKind.UNREADABLE)],
)  # fmt: skip
def test_an_answer_that_is_no_temperature_is_named_and_ends(
    tmp_path: Path, name: str, content: str, kind: FaultKind
) -> None:
    path = wire(tmp_path, content, name)
    feed = SysfsFeed(FeedKind.ONE_WIRE, WIRE, tmp_path, lambda read: read())
    feed.poll(T0)
    polled = feed.poll(T0 + MINUTE_US)
    assert polled.samples == ()
    assert [(f.kind, f.since_us, f.until_us) for f in polled.faults] == [(kind, T0, None)]
    path.write_text(SLAVE.format(crc="YES", mc=20000) if name == "w1_slave" else "20000")
    polled = feed.poll(T0 + 2 * MINUTE_US)
    assert polled.samples == (Sample(T0 + 2 * MINUTE_US, 20_000),)
    assert [(f.kind, f.until_us) for f in polled.faults] == [(kind, T0 + 2 * MINUTE_US)]


def test_a_slow_sensor_is_not_waited_for(tmp_path: Path) -> None:
    wire(tmp_path)
    begun: list[Callable[[], None]] = []
    feed = SysfsFeed(FeedKind.ONE_WIRE, WIRE, tmp_path, begun.append)
    first = feed.poll(T0)
    assert (first.samples, first.again) == ((), True)
    begun[0]()
    later = T0 + 10 * SECOND_US
    assert feed.poll(later).samples == (Sample(later, 23_125),)
    feed.poll(later + MINUTE_US)
    hung = feed.poll(later + 2 * MINUTE_US)
    assert [fault.kind for fault in hung.faults] == [FaultKind.SILENT]
    assert len(begun) == 2, "nobody asks again while the sensor hangs"


def test_a_real_thread_answers(tmp_path: Path) -> None:
    import threading

    wire(tmp_path)
    feed = SysfsFeed(FeedKind.ONE_WIRE, WIRE, tmp_path)
    first = feed.poll(T0)
    for thread in threading.enumerate():
        if thread.name == "sensor":
            thread.join(5)
    second = feed.poll(T0 + SECOND_US) if first.again else first
    assert [sample.temperature_mc for sample in second.samples] == [23_125]


def test_a_sensor_that_is_pulled_out_is_missing_until_it_is_back(tmp_path: Path) -> None:
    folder = hwmon(tmp_path)
    feed = SysfsFeed(FeedKind.HWMON, "airchip/chip.656/temp1", tmp_path)
    assert feed.poll(T0).samples == (Sample(T0, 21_500),)
    folder.rename(tmp_path / "away")
    polled = feed.poll(T0 + MINUTE_US)
    assert [fault.kind for fault in polled.faults] == [FaultKind.MISSING]
    assert "airchip" in polled.faults[0].said
    (tmp_path / "away").rename(folder.with_name("hwmon7"))
    assert feed.poll(T0 + 2 * MINUTE_US).samples == (Sample(T0 + 2 * MINUTE_US, 21_500),)


def test_a_chip_that_says_its_sensor_is_broken_is_believed(tmp_path: Path) -> None:
    write(hwmon(tmp_path) / "temp1_fault", "1\n")
    polled = SysfsFeed(FeedKind.HWMON, "airchip/chip.656/temp1", tmp_path).poll(T0)
    assert polled.samples == ()
    assert [fault.kind for fault in polled.faults] == [FaultKind.SILENT]


def test_raw_values_have_offset_and_scale(tmp_path: Path) -> None:
    folder = iio(tmp_path)
    write(folder / "in_temp_raw", "24750\n")
    write(folder / "in_temp_offset", "-4500\n")
    write(folder / "in_temp_scale", "1.0125\n")
    feed = SysfsFeed(FeedKind.IIO, "bmx/1-0076/in_temp", tmp_path)
    assert feed.poll(T0).samples == (Sample(T0, round(20_250 * 1.0125)),)
