"""Every event that can still be read out of a damaged file.

A row of the log brings its check value with it, so that a row is what was written wherever it is
found. It is looked for in the log from both ends and by its index; then every page of the file is
read as SQLite lays rows out (https://www.sqlite.org/fileformat2.html), since one lost inner page
hides many whole rows.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from typing import NamedTuple

from pantry_tui.core.log.events import Event
from pantry_tui.store.check import check
from pantry_tui.store.log import COLUMNS
from pantry_tui.store.soundness import SENSELESS, UNREADABLE, Row, event_of, looking

#: A page that holds the ends of an index, which a table without row numbers is.
_LEAF, _INNER = 0x0A, 0x02
#: An event is not longer than this, in bytes; more is a length that is hurt.
_LONGEST = 50_000_000


class Salvaged(NamedTuple):
    """The events that could be read, by id, and how many rows did not hold or make no sense."""

    events: tuple[Event, ...]
    lost: int


def salvage(path: Path) -> Salvaged:
    """All events of a file. Raises OSError where it cannot be read at all."""
    found: dict[str, Row] = {}
    hurt: set[str] = set()
    with suppress(*UNREADABLE), looking(path) as db:
        for order in ("", " ORDER BY id DESC"):
            with suppress(*UNREADABLE):
                for row in db.execute(f"SELECT {COLUMNS} FROM log{order}"):
                    _keep(row, found, hurt)
    for row in _in_pages(path):
        _keep(row, found, hurt)
    events = []
    for id_, row in sorted(found.items()):
        try:
            events.append(event_of(row))
        except SENSELESS:
            hurt.add(id_)
            del found[id_]
    return Salvaged(tuple(events), len(hurt - found.keys()))


def ids_in(path: Path) -> set[str]:
    """The ids of the events of a sound store, of this or an older version. Raises sqlite3.Error."""
    with looking(path) as db:
        names = {row[0] for row in db.execute("SELECT name FROM sqlite_schema")}
        table = "log" if "log" in names else "events"
        return {row[0] for row in db.execute(f"SELECT id FROM {table}")}


def _keep(row: tuple[object, ...], found: dict[str, Row], hurt: set[str]) -> None:
    if len(row) == 8 and check(row[:-1]) == row[-1]:
        found[str(row[0])] = row  # type: ignore[assignment]
    elif row and isinstance(row[0], str):
        hurt.add(row[0])


def _in_pages(path: Path) -> Iterator[tuple[object, ...]]:
    """Rows of eight columns on any page, whether or not the file still leads to it. Only rows
    whose check value holds: the rest of a page may be anything."""
    with path.open("rb") as file:
        size = _page_size(file.read(100))
        total = path.stat().st_size // size

        def page(number: int) -> bytes:
            if not 1 <= number <= total:
                return b""
            file.seek((number - 1) * size)
            return file.read(size)

        for number in range(1, total + 1):
            data = page(number)
            for start in _cells(data, 100 if number == 1 else 0):
                with suppress(IndexError, ValueError, UnicodeDecodeError):
                    row = _record(_payload(data, start, size, page))
                    if len(row) == 8 and check(row[:-1]) == row[-1]:
                        yield row


def _page_size(header: bytes) -> int:
    said = int.from_bytes(header[16:18], "big")
    size = 65_536 if said == 1 else said
    return size if 512 <= size <= 65_536 and size & (size - 1) == 0 else 4096


def _cells(data: bytes, head: int) -> Iterator[int]:
    """Where the rows of a page begin."""
    if len(data) < head + 12 or data[head] not in (_LEAF, _INNER):
        return
    inner = data[head] == _INNER
    at = head + (12 if inner else 8)
    for _ in range(int.from_bytes(data[head + 3 : head + 5], "big")):
        if at + 2 > len(data):
            return
        start = int.from_bytes(data[at : at + 2], "big") + (4 if inner else 0)
        at += 2
        if start < len(data):
            yield start


def _payload(data: bytes, start: int, size: int, page: object) -> bytes:
    """A row's bytes, with what runs over onto other pages."""
    length, at = _varint(data, start)
    if not 0 < length <= _LONGEST:
        raise ValueError("no length")
    most, least = (size - 12) * 64 // 255 - 23, (size - 12) * 32 // 255 - 23
    if length <= most:
        return data[at : at + length]
    here = least + (length - least) % (size - 4)
    here = here if here <= most else least
    parts, got = [data[at : at + here]], here
    follows = int.from_bytes(data[at + here : at + here + 4], "big")
    while got < length:
        more: bytes = page(follows)  # type: ignore[operator]
        if not more:
            raise ValueError("it runs on to no page")
        parts.append(more[4:][: length - got])
        got += len(parts[-1])
        follows = int.from_bytes(more[:4], "big")
    return b"".join(parts)


def _varint(data: bytes, at: int) -> tuple[int, int]:
    """A number of one to nine bytes and where it ends."""
    value = 0
    for n in range(9):
        byte = data[at]
        at += 1
        if n == 8:
            return value << 8 | byte, at
        value = value << 7 | byte & 0x7F
        if byte < 0x80:
            break
    return value, at


def _record(data: bytes) -> tuple[object, ...]:
    """The columns of a row. Raises IndexError or ValueError for what is no row."""
    head, at = _varint(data, 0)
    kinds = []
    while at < head:
        kind, at = _varint(data, at)
        kinds.append(kind)
    row: list[object] = []
    at = head
    for kind in kinds:
        value, length = _column(kind, data, at)
        row.append(value)
        at += length
    return tuple(row)


def _column(kind: int, data: bytes, at: int) -> tuple[object, int]:
    if kind == 0:
        return None, 0
    if kind in (8, 9):
        return kind - 8, 0
    if kind <= 6:
        length = (0, 1, 2, 3, 4, 6, 8)[kind]
        raw = data[at : at + length]
        if len(raw) < length:
            raise ValueError("it is cut off")
        return int.from_bytes(raw, "big", signed=True), length
    if kind >= 13 and kind % 2:
        length = (kind - 13) // 2
        raw = data[at : at + length]
        if len(raw) < length:
            raise ValueError("it is cut off")
        return raw.decode("utf-8"), length
    raise ValueError("no column of the log is like that")
