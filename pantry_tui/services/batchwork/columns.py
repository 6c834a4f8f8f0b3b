"""A household's own list as rows: CSV and TSV of any usual encoding, or a spreadsheet, a row at a
time."""

from __future__ import annotations

import csv
import re
from collections.abc import Collection, Iterable, Iterator
from datetime import date
from pathlib import Path
from typing import NamedTuple

from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork.bare_units import of_heading
from pantry_tui.services.batchwork.detail_columns import DETAILS, named_by
from pantry_tui.store.files import refuse_unreadable

#: Field -> headings that name it, in lower case without marks.
HEADINGS: dict[str, tuple[str, ...]] = {
    "line": ("line", "entry", "text"),
    "food": ("food", "item", "name", "product", "what", "contents", "description", "article"),
    "method": ("method", "how", "kept", "preserved", "type", "process", "preservation"),
    "count": (
        "count",
        "qty",
        "quantity",
        "number",
        "no",
        "how many",
        "jars",
        "pieces",
        "amount",
        "containers",
    ),
    "size": ("size", "volume", "weight", "each", "size of each", "unit size", "jar size"),
    "vessel": ("vessel", "container", "packaging", "pack", "in what", "jar"),
    "place": ("place", "location", "where", "shelf", "store", "stored", "room"),
    "made": (
        "made",
        "date",
        "day",
        "put up",
        "made on",
        "date made",
        "made date",
        "packed",
        "canned",
        "year",
        "date canned",
        "canned on",
        "date packed",
        "packed on",
        "date bottled",
        "bottled on",
        "date put up",
        "put up on",
        "date frozen",
        "frozen on",
        "date cooked",
        "cooked on",
        "date prepared",
        "prepared on",
        "date bought",
        "bought on",
        "purchase date",
        "cook date",
        "cooking date",
        "cooked",
        "cooked day",
        "prep date",
        "production date",
        "freeze date",
        "freezing date",
        "smoke date",
    ),
    "printed": ("best before", "use by", "expiry", "expires", "bb", "printed", "best by"),
    "note": ("note", "notes", "remarks", "comment", "comments", "memo"),
}
#: What a column may be taken as.
FIELDS = (*HEADINGS, *DETAILS)
#: On a command line, the field of a column of which nothing is read.
LEFT_OUT = "out"
#: A file larger than that is no household's list.
MOST_BYTES = 64_000_000
#: How the names of lists end that are read here.
ENDINGS = (".csv", ".tsv", ".txt", ".xlsx")
#: A number with decimals that are no thousands and no day.
_DECIMAL = re.compile(r"(?<![\d.,/-])\d+[.,]\d{1,2}(?![\d.,/-])")
_ENCODINGS = {
    "utf-8-sig": "UTF-8", "utf-16": "UTF-16", "cp1252": "Windows western (cp1252)",
    "latin-1": "Latin-1",
}  # fmt: skip
_SIGNS = {"\t": "tabs", ";": "semicolons", ",": "commas"}


class Written(NamedTuple):
    """How a list is written, in words: its characters ("UTF-8"), what stands between its cells
    ("semicolons"; "" in a spreadsheet), and its decimals ("3,5"; "" where none was seen)."""

    encoding: str
    between: str
    decimals: str


def open_rows(path: Path) -> Iterator[tuple[int, list[str]]]:
    """Every row that is not empty, with the number of its line. Raises BadInput for a file that
    cannot be read, or is no table."""
    _refuse(path)
    if path.suffix.lower() == ".xlsx":
        yield from _sheet_rows(path)
        return
    try:
        yield from _text_rows(path)
    except UnicodeDecodeError as error:
        raise _cut_off(path) from error


def _cut_off(path: Path) -> BadInput:
    return BadInput(
        f"{path.name} ends or breaks within a character, as a copy that was cut off does: save the "
        "list anew, as UTF-8 .csv, and import that."
    )


def _text_rows(path: Path) -> Iterator[tuple[int, list[str]]]:
    encoding = _encoding(path)
    with path.open(encoding=encoding, newline="", errors="strict") as handle:
        head = handle.read(64 * 1024)
        if "\0" in head:
            raise BadInput(f"{path.name} is no text: save the list as .csv and import that.")
        handle.seek(0)
        sign = _delimiter(path, head)
        # Strict: else a quote that is never closed takes all that follows into one cell.
        reader = csv.reader(handle, delimiter=sign, strict=True)
        begins, width = 1, 0
        try:
            for row in reader:
                cells = [cell.strip() for cell in row]
                if any(_holds_rows(cell, sign, width) for cell in cells):
                    raise _open_quote(path, begins)
                if any(cells):
                    width = width or len(cells)
                    yield reader.line_num, cells
                begins = reader.line_num + 1
        except csv.Error as error:
            if "unexpected end" in str(error):
                raise _open_quote(path, begins) from error
            raise BadInput(
                f"{path.name} line {reader.line_num} is no row of a table ({error}): mend it."
            ) from error


def _refuse(path: Path) -> None:
    """Raises BadInput for what is no file of a list, or may not be read."""
    if path.is_dir():
        raise BadInput(f"{path} is a folder: name the file of the list.")
    if path.suffix.lower() not in ENDINGS:
        raise BadInput(f"{path.name} is no list that is read here: save it as .csv or .tsv.")
    refuse_unreadable(path, MOST_BYTES)
    try:
        with path.open("rb") as handle:
            handle.read(1)
    except OSError as error:
        why = error.strerror or str(error)
        raise BadInput(f"{path} cannot be read ({why}): give the file of the list.") from error


def how_written(path: Path, rows: Iterable[list[str]]) -> Written:
    """How the file is written, its decimals as in these rows. Raises BadInput as `open_rows`."""
    _refuse(path)
    decimals = next(
        (found[0] for row in rows for cell in row if (found := _DECIMAL.search(cell))), ""
    )
    if path.suffix.lower() == ".xlsx":
        return Written("spreadsheet, its first sheet", "", decimals)
    encoding = _encoding(path)
    try:
        with path.open(encoding=encoding, newline="") as handle:
            sign = _delimiter(path, handle.read(64 * 1024))
    except UnicodeDecodeError as error:
        raise _cut_off(path) from error
    return Written(_ENCODINGS[encoding], _SIGNS[sign], decimals)


def _holds_rows(cell: str, sign: str, width: int) -> bool:
    """Whether a cell of several lines has taken in a row as wide as the headings."""
    return width > 1 and any(line.count(sign) >= width - 1 for line in cell.splitlines()[1:])


def _open_quote(path: Path, line: int) -> BadInput:
    return BadInput(
        f"{path.name} line {line} opens a quote that nothing closes there: close it, or leave it "
        "out."
    )


def _sheet_rows(path: Path) -> Iterator[tuple[int, list[str]]]:
    """The rows of the first sheet of a spreadsheet, read a row at a time. Its reader is loaded only
    here, and need not be there."""
    try:
        from openpyxl import load_workbook
    except ImportError as error:
        raise BadInput(
            f"{path.name}: reading a spreadsheet needs one more package: pip install openpyxl, or "
            "save the list as .csv and import that."
        ) from error
    try:
        book = load_workbook(path, read_only=True, data_only=True)
    except Exception as error:  # its reader raises what its parsers do
        raise BadInput(f"{path.name} is no spreadsheet that can be read: save it anew.") from error
    try:
        rows = book.worksheets[0].iter_rows(values_only=True)
        for number, row in enumerate(rows, start=1):
            cells = [_cell(value) for value in row]
            if any(cells):
                yield number, cells
    finally:
        book.close()


def _cell(value: object) -> str:
    """A cell as it would be typed: a day without its hour, a whole number without its point."""
    if isinstance(value, date):
        return value.strftime("%Y-%m-%d")
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    return "" if value is None else str(value).strip()


def _encoding(path: Path) -> str:
    """UTF-8 where all of it is, else UTF-16 by its mark, else Windows western. Raises OSError."""
    try:
        with path.open("rb") as handle:
            start = handle.read(4)
            if start[:2] in (b"\xff\xfe", b"\xfe\xff"):
                return "utf-16"
            handle.seek(0)
            import codecs

            decoder = codecs.getincrementaldecoder("utf-8-sig")()
            while chunk := handle.read(1 << 16):
                decoder.decode(chunk)
            decoder.decode(b"", final=True)
    except UnicodeDecodeError:
        return "cp1252" if _is_western(path) else "latin-1"
    return "utf-8-sig"


def _is_western(path: Path) -> bool:
    with path.open("rb") as handle:
        while chunk := handle.read(1 << 16):
            try:
                chunk.decode("cp1252")
            except UnicodeDecodeError:
                return False
    return True


def _delimiter(path: Path, head: str) -> str:
    """The sign that parts most cells of the first lines; of two, the one that does so evenly."""
    if path.suffix.lower() == ".tsv":
        return "\t"
    lines = [line for line in head.splitlines()[:20] if line.strip()]
    counts = {sign: [line.count(sign) for line in lines] for sign in ("\t", ";", ",")}
    return max(counts, key=lambda sign: (min(counts[sign], default=0), sum(counts[sign])))


def guess(headings: list[str], without: Collection[int] = ()) -> dict[str, int]:
    """Field -> column, by the headings; a column serves one field, those of `without` none."""
    found: dict[str, int] = {}
    plain = [" ".join("".join(c if c.isalnum() else " " for c in one).lower().split())
             for one in headings]  # fmt: skip
    bare = [one.rpartition(" ")[0] if of_heading("size", one) else one for one in plain]
    for field, names in HEADINGS.items():
        heads = bare if field == "size" else plain
        for name in names:
            column = next(
                (
                    n
                    for n, one in enumerate(heads)
                    if one == name and n not in found.values() and n not in without
                ),
                None,
            )
            if column is not None:
                found[field] = column
                break
    for column, heading in enumerate(headings):
        named = named_by(heading)
        if named and named.field not in found and column not in {*found.values(), *without}:
            found[named.field] = column
    return found


def alike(headings: list[str], column: int) -> list[int]:
    """The columns that bear the same heading as that one, itself too."""
    name = headings[column].casefold()
    return [at for at, one in enumerate(headings) if name and one.casefold() == name]


def of_detail(headings: list[str], column: int) -> list[int]:
    """The columns that name the same detail of a process as that one, itself too; [] of no
    detail."""
    named = [found.field if (found := named_by(one)) else "" for one in headings]
    return [at for at, one in enumerate(named) if one and one == named[column]]


def mapping(text: str, headings: list[str]) -> dict[str, int]:
    """("food=Item,count=Qty") -> field -> column. Raises BadInput for a field or a heading that is
    not there; a heading may be its number, 1 for the first. Columns left out ("out=Batch") are not
    among them (`left_out`)."""
    return {name: at for name, at in _pairs(text, headings) if name != LEFT_OUT}


def left_out(text: str, headings: list[str]) -> frozenset[int]:
    """("out=Batch,out=Lid") -> the columns of which nothing is read. Raises as `mapping`."""
    return frozenset(at for name, at in _pairs(text, headings) if name == LEFT_OUT)


def _pairs(text: str, headings: list[str]) -> Iterator[tuple[str, int]]:
    for pair in filter(None, (part.strip() for part in text.split(","))):
        field, _, heading = (part.strip() for part in pair.partition("="))
        if field not in (*FIELDS, LEFT_OUT):
            known = ", ".join((*FIELDS, LEFT_OUT))
            raise BadInput(f"{field!r} is no field: use {known}.")
        column = next(
            (n for n, one in enumerate(headings) if one.casefold() == heading.casefold()), None
        )
        if column is not None and len(same := alike(headings, column)) > 1:
            numbers = " or ".join(str(one + 1) for one in same)
            raise BadInput(f"{heading!r} stands over several columns: say {field}={numbers}.")
        if column is None and heading.isdecimal() and 1 <= int(heading) <= len(headings):
            column = int(heading) - 1
        if column is None:
            known = ", ".join(headings[:12])
            raise BadInput(f"There is no column {heading!r}: the columns are {known}.")
        yield field, column
