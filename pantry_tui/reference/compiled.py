"""The compiled tables of this program: found in the person's cache folder, made where they are
not there, done without where that folder cannot be written.

To compile one more table give its module a `..._parts(folder, tables)` that reads and packs it,
name that in `_compile`, and let its loader unpack the part where there is one.
"""

from __future__ import annotations

import os
import sys
import time
from binascii import crc32
from functools import cache
from typing import Any

from pantry_tui.errors import DataError
from pantry_tui.paths import cache_folder, data_folder
from pantry_tui.reference.cache import Parts, load, read, replace, written
from pantry_tui.reference.fingerprint import contents, listing

#: A file that was changed so shortly before it was listed may be changed once more and show the
#: same times: the coarsest file systems count by two seconds.
_SETTLED_NS = 2_000_000_000

#: No part, so that every table is parsed when it is asked for.
NOTHING = Parts("", {}, memoryview(b""))


def _compile(data: str) -> dict[str, Any]:
    """Every table of the folder, packed. A table with a bad cell is left out: whoever asks for it
    parses it, and is told of the cell."""
    from pathlib import Path

    from pantry_tui.reference.batchwork import batchwork_parts
    from pantry_tui.reference.beside import beside_parts
    from pantry_tui.reference.federal import federal_parts
    from pantry_tui.reference.outage import outage_parts
    from pantry_tui.reference.process import not_recommended_parts, process_parts
    from pantry_tui.reference.reading import read_tables
    from pantry_tui.reference.signs import signs_parts
    from pantry_tui.reference.tables import pack_tables
    from pantry_tui.reference.tending import tending_parts
    from pantry_tui.reference.yields import yields_parts

    folder = Path(data)
    try:
        tables = read_tables(folder)
    except DataError:
        return {}
    parts = pack_tables(tables)
    others = (process_parts, not_recommended_parts, signs_parts, outage_parts, yields_parts)
    for more in (*others, batchwork_parts, tending_parts, beside_parts, federal_parts):
        try:
            parts |= more(folder, tables)
        except DataError:
            continue
    return parts


def _written(data: str, key: bytes) -> bytes | None:
    """The file for the folder; None where somebody changed a table meanwhile."""
    text = written(key, contents(data), _compile(data))
    return text if listing(data)[0] == key else None


def parts_of(data: str, path: str, now_ns: int) -> Parts:
    """The tables of the folder `data` as they are now, compiled in the file `path`; `NOTHING`
    where they are not and cannot be."""
    try:
        key, newest = listing(data)
    except OSError:
        return NOTHING
    found = load(path, key)
    if found is not None:
        return found
    if abs(now_ns - newest) < _SETTLED_NS:
        return NOTHING
    text = replace(path, lambda: _written(data, key))
    return (read(text, key) if text is not None else None) or NOTHING


@cache
def compiled() -> Parts:
    """The tables that ship with the program. One reading serves the whole run, so that a program
    updated meanwhile never mixes two sets of rules."""
    data, folder = data_folder(), cache_folder()
    if folder is None:
        return NOTHING
    # A file for each installation and Python: two of them do not keep rewriting one.
    name = f"reference-{sys.implementation.cache_tag}-{crc32(os.fsencode(data)):08x}"
    return parts_of(data, os.path.join(folder, name), time.time_ns())


@cache
def rules_fingerprint() -> str:
    """16 hex digits that are another as soon as a table, the code that reads or judges, or the
    program's version is another; the same on every machine with the same program. Costs nothing
    beyond `compiled`. Raises DataError."""
    try:
        return compiled().fingerprint or contents(data_folder())
    except OSError as error:
        raise DataError("The reference tables cannot be read: reinstall the program.") from error
