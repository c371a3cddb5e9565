"""A CSV file that a logger's program keeps writing: only what is appended is read.

A place in the file is known by the bytes just before it, not by the file's number alone:
some programs write the whole file anew each time, some copy it away and cut it.
"""

from __future__ import annotations

import codecs
from typing import TYPE_CHECKING

from rackboard.core.feed import Fault, FaultKind, Polled, Sample
from rackboard.core.instants import HOUR_US, MINUTE_US
from rackboard.core.temperature import POWER_ON_MC
from rackboard.core.text import text
from rackboard.feeds.file_place import MARK, Place, decoded, first_line, goes_on, whole_lines
from rackboard.feeds.logger_lines import (
    NO_OFFSET,
    POWER_ON,
    SKIPPED_HOUR,
    TWICE,
    Line,
    LineReader,
)
from rackboard.feeds.stamps import LocalClock, StampReader, zone_named
from rackboard.feeds.table import Table, lines_of, split

if TYPE_CHECKING:
    from pathlib import Path
    from typing import BinaryIO

    from rackboard.core.instants import Instant
    from rackboard.core.text import Text
    from rackboard.feeds.logger_lines import Answers

MOST_BYTES = 128 * 1024
"""So much is read in one poll: some thousand lines, some ten milliseconds."""
AHEAD_US = 5 * MINUTE_US
_STRETCH = 64 * 1024
_HEAD_LINES = 50
_OLD_FOR_US = 2 * MINUTE_US
"""So long a file that was put aside is still looked at: its writer may hold it open."""
_GRACE_US = MINUTE_US
"""Between putting the old file aside and beginning a new one there is none."""
_MOST_SIBLINGS = 40
_BEFORE_US = 2 * HOUR_US
_Answer = Line | str


class _WrongColumnsError(Exception):
    """A file whose head is another one."""


class CsvWatch:
    """One column of a file that grows.

    Parameters
    ----------
    path : Path
        The file; it need not be there yet.
    settled : Answers
        How its lines are read: a preview's, without open questions.
    columns : tuple of str
        The names in its header, to notice when they change.
    after_us : int
        Only later readings are taken from what is in the file at first [µs UTC].

    Raises
    ------
    InputError
        If the answers name no time zone that there is.
    """

    def __init__(
        self, path: Path, settled: Answers, columns: tuple[str, ...] = (), after_us: Instant = 0
    ) -> None:
        self.path = path
        self._settled = settled
        self._columns = columns
        self._after = after_us
        self._place: Place | None = None
        self._old: list[Place] = []
        self._old_until = 0
        self._polled: Instant | None = None
        self._gone_us: Instant | None = None
        self._newest: Instant | None = after_us or None
        self._faults: dict[FaultKind, Fault] = {}
        table = Table(
            [], settled.delimiter or ",", settled.header_line or 0, 1, columns,
            settled.time_column, settled.clock_column, (), 0,
        )  # fmt: skip
        self._reader = LineReader(table, settled, settled.zone is None)
        self._stamps = StampReader(settled.date_order)
        zone = settled.zone
        self._clock = None if zone is None else LocalClock(zone_named(zone, path.name))

    def poll(self, now: Instant) -> Polled:
        """Return what has been appended since the last poll; see `Feed`."""
        over: list[Fault] = []
        samples: list[Sample] = []
        left = MOST_BYTES
        gone = False
        try:
            self._look(now)
            self._end(FaultKind.MISSING, now, over)
            self._gone_us = None
        except OSError as error:
            self._gone_us = now if self._gone_us is None else min(self._gone_us, now)
            gone = True
            if self._place is None or now - self._gone_us >= _GRACE_US:
                self._begin(FaultKind.MISSING, self._missing(error), self._gone_us)
        for old in list(self._old):
            self._old.remove(old)
            try:
                read, left = self._read(old, left, now, samples, over)
            except (OSError, _WrongColumnsError):
                continue
            if left <= 0 or now - (read.put_aside_us or 0) < _OLD_FOR_US:
                self._old.append(read)
        if self._place is not None and left > 0 and not gone:
            try:
                self._place, left = self._read(self._place, left, now, samples, over)
                self._end(FaultKind.COLUMNS, now, over)
            except _WrongColumnsError:
                said = text("Feed", "{file} has other columns than were set: set it up again")
                self._begin(FaultKind.COLUMNS, said.format(file=self.path.name), now)
            except OSError as error:
                self._begin(FaultKind.MISSING, self._missing(error), now)
        if left > 0:
            self._polled = now
        return Polled(tuple(samples), (*over, *self._faults.values()), left <= 0)

    # Which file

    def _look(self, now: Instant) -> None:
        """See whether the file is still the one that was read, and where to go on."""
        status = self.path.stat()
        place = self._place
        if place is None:
            self._place = self._first(status.st_ino, status.st_size, now)
            return
        same = place.inode == status.st_ino
        same_text = status.st_size >= place.offset and goes_on(self.path, place)
        if same and same_text:
            return
        if same_text and place.mark and not self._is_aside(place):
            self._place = place._replace(inode=status.st_ino)  # written anew as a whole
            return
        self._old += self._put_aside(place, now)
        self._old_until = 0
        self._place = Place(self.path, status.st_ino)

    def _first(self, inode: int, size: int, now: Instant) -> Place:
        """Return where to begin; what was put aside while nobody looked comes first."""
        if self._after:
            for path in self._siblings():
                status = path.stat()
                numbered = path.name.startswith(f"{self.path.name}.")
                if numbered and status.st_mtime_ns // 1000 > self._after:
                    place = Place(path, status.st_ino, put_aside_us=now)
                    self._old.insert(0, self._sought(place, status.st_size))
        self._old_until = size
        return self._sought(Place(self.path, inode), size)

    def _is_aside(self, place: Place) -> bool:
        """Return whether the very file that was read lies beside under another name."""
        for path in self._siblings():
            try:
                if path.stat().st_ino == place.inode:
                    return True
            except OSError:
                continue
        return False

    def _put_aside(self, place: Place, now: Instant) -> list[Place]:
        """Return the place in the file that was renamed or copied away, and what came between."""
        known: list[Place] = []
        between: list[Place] = []
        for path in self._siblings():
            try:
                status = path.stat()
                same_text = status.st_size >= place.offset and goes_on(path, place)
            except OSError:
                continue
            same = status.st_ino == place.inode
            if same_text and (same or place.mark):
                known.append(place._replace(path=path, inode=status.st_ino, put_aside_us=now))
            if same_text and same:
                known = known[-1:]  # a short mark may be every file's header
                break
            late = self._polled is not None and status.st_mtime_ns // 1000 > self._polled
            if late and not known and path.name.startswith(f"{self.path.name}."):
                between.insert(0, Place(path, status.st_ino, put_aside_us=now))
        return [*known[:1], *between]

    def _siblings(self) -> list[Path]:
        """Return the files that may be this one under an older name, the newest first."""
        stem = self.path.name.partition(".")[0]
        found = []
        try:
            for path in self.path.parent.iterdir():
                if path.name.startswith(stem) and path != self.path and path.is_file():
                    found.append((path.stat().st_mtime_ns, path))
        except OSError:
            return []
        return [path for _, path in sorted(found, reverse=True)[:_MOST_SIBLINGS]]

    def _sought(self, place: Place, size: int) -> Place:
        """Go to the last readings that the record has: by halves, as times mostly ascend."""
        low, high = 0, size
        if self._encoding().startswith("utf-16"):
            return place
        with place.path.open("rb") as file:
            while self._after and high - low > _STRETCH:
                middle = (low + high) // 2
                at = self._time_near(file, middle)
                if at is None:
                    break
                if at <= self._after:
                    low = middle
                else:
                    high = middle
            if low:
                file.seek(low)
                low += len(file.readline())
            file.seek(max(low - MARK, 0))
            return place._replace(offset=low, mark=file.read(min(low, MARK)))

    def _time_near(self, file: BinaryIO, offset: int) -> Instant | None:
        file.seek(offset)
        for written in file.read(4096).split(b"\n")[1:-1]:
            line = self._line(written.decode("utf-8", "replace").strip())
            if isinstance(line, Line):
                found = self._instants(line)
                if found:
                    return found[0]
        return None

    # Its lines

    def _read(
        self, place: Place, most: int, now: Instant, samples: list[Sample], over: list[Fault]
    ) -> tuple[Place, int]:
        """Read whole lines from a place on; return the new place and what may still be read."""
        if most <= 0:
            return place, 0
        with place.path.open("rb") as file:
            encoding = self._encoding(file)
            head = 0
            if place.offset == 0:
                head = self._head(file, encoding)
                if head < 0:
                    return place, most
            start = max(place.offset, head)
            file.seek(start)
            data = file.read(most)
            end = whole_lines(data, encoding)
            if end == 0 and len(data) >= MOST_BYTES:
                end = len(data)  # no logger writes such lines; it is let go
            file.seek(max(start + end - MARK, 0))
            mark = file.read(min(start + end, MARK))
        first = place.put_aside_us is not None or start < self._old_until
        for written in lines_of(decoded(data[:end], encoding)):
            if written and not written.isspace():
                self._take(written.lstrip("\ufeff"), first, now, samples, over)
        left = most - end if len(data) < most else 0
        return place._replace(offset=start + end, mark=mark), left

    def _head(self, file: BinaryIO, encoding: str) -> int:
        """Return where the lines begin behind the header; -1: it isn't written yet."""
        wanted = self._settled.header_line or 0
        if wanted == 0:
            return 0
        file.seek(0)
        data = file.read(_STRETCH)
        end = whole_lines(data, encoding)
        if end == 0:
            return -1
        offset = 0
        width = 2 if encoding.startswith("utf-16") else 1
        rest = data[:end]
        for number in range(wanted + _HEAD_LINES):
            stop = first_line(rest, encoding)
            if stop == 0:
                if number < wanted:
                    return -1
                break
            cells = split(decoded(rest[:stop], encoding).strip("\r\n\ufeff"), self._delimiter())
            offset += stop
            rest = rest[stop:]
            if tuple(cells) == self._columns or (not self._columns and number == wanted - 1):
                return offset // width * width
        raise _WrongColumnsError

    def _take(
        self, written: str, first: bool, now: Instant, samples: list[Sample], over: list[Fault]
    ) -> None:
        """Read one line into a sample, or note why it can't be."""
        line = self._line(written)
        if isinstance(line, str):
            if tuple(split(written, self._delimiter())) != self._columns:
                self._unreadable(line, now)
            return
        at = self._instant(line, now)
        if isinstance(at, str):
            self._unreadable(at, now)
            return
        self._end(FaultKind.UNREADABLE, now, over)
        self._newest = at
        if not (first and at <= self._after):
            samples.append(Sample(at, line.temperature_mc))

    def _line(self, written: str) -> _Answer:
        line = self._reader.line(0, written)
        if line != POWER_ON:
            return line
        # Whether it is a temperature all the same is for its neighbours to say.
        stamp = self._stamps.read(self._reader.stamp_text(split(written, self._delimiter())))
        return line if stamp is None else Line(0, written, *stamp, POWER_ON_MC)

    def _instants(self, line: Line) -> tuple[Instant, ...]:
        """Return what a line's time can mean; nothing for an hour that the clock skipped."""
        if line.offset_us is not None:
            return (line.local_us - line.offset_us,)
        if self._clock is None:
            return ()
        early, late = self._clock.instants(line.local_us)
        if late < early:
            return ()
        return (early,) if early == late else (early, late)

    def _instant(self, line: Line, now: Instant) -> Instant | str:
        """Return a line's instant, or why there is none.

        In the hour that happens twice a line was written between the last poll and now, or
        else goes on where the line before it ended.
        """
        found = self._instants(line)
        if not found:
            return NO_OFFSET if self._clock is None else SKIPPED_HOUR
        if len(found) == 1:
            return found[0]
        since = self._polled
        if since is not None:
            likely = [at for at in found if since - AHEAD_US <= at <= now + AHEAD_US]
            if len(likely) == 1:
                return likely[0]
        newest = self._newest
        if newest is not None:
            later = [at for at in found if newest <= at <= newest + _BEFORE_US]
            if later:
                return later[0]
        return TWICE

    def _delimiter(self) -> str:
        return self._settled.delimiter or ","

    def _encoding(self, file: BinaryIO | None = None) -> str:
        name = self._settled.encoding or "utf-8"
        if name == "utf-8-sig":
            return "utf-8"
        if name != "utf-16" or file is None:
            return name
        file.seek(0)
        return "utf-16-be" if file.read(2) == codecs.BOM_UTF16_BE else "utf-16-le"

    # What is wrong

    def _missing(self, error: OSError) -> Text:
        if isinstance(error, FileNotFoundError):
            said = text("Feed", "there is no {file} at {folder}")
            return said.format(file=self.path.name, folder=str(self.path.parent))
        said = text("Feed", "{file} can't be read: {reason}")
        return said.format(file=self.path.name, reason=error.strerror or str(error))

    def _unreadable(self, reason: str, now: Instant) -> None:
        said = text("Feed", "a line of {file} can't be read: {reason}")
        self._begin(FaultKind.UNREADABLE, said.format(file=self.path.name, reason=reason), now)

    def _begin(self, kind: FaultKind, said: Text, now: Instant) -> None:
        present = self._faults.get(kind)
        self._faults[kind] = Fault(kind, said, now if present is None else present.since_us)

    def _end(self, kind: FaultKind, now: Instant, over: list[Fault]) -> None:
        fault = self._faults.pop(kind, None)
        if fault is not None:
            over.append(fault._replace(until_us=now))
