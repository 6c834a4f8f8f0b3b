"""A household's own list, put up as a whole: looked through first, then booked all or none.

Both goes read the file a row at a time and keep no row, so that a long list costs time and no
memory; what stands in the store while it is booked is the store's own.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property
from pathlib import Path
from typing import NamedTuple

from pantry_tui.core import dates
from pantry_tui.core.safety.record import USE_BY
from pantry_tui.core.vessels import vessel_word
from pantry_tui.errors import BadInput, PantryError
from pantry_tui.services.batchwork import putup
from pantry_tui.services.batchwork.bare_units import UNITS, asks, of_heading, with_unit
from pantry_tui.services.batchwork.came_open import open_since
from pantry_tui.services.batchwork.cells import WrongCell, day_of, read_count
from pantry_tui.services.batchwork.columns import open_rows
from pantry_tui.services.batchwork.detail_columns import DETAILS, is_day_opened, pair_of
from pantry_tui.services.batchwork.imported import Bad, Imported
from pantry_tui.services.batchwork.mapped import ORDERS, Sheet, Taken, begin, keep, look_at
from pantry_tui.services.batchwork.twice import Before
from pantry_tui.services.batchwork.undated import dated
from pantry_tui.services.batchwork.unknown_columns import with_unknown
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.rows import Ask, PutUpReading


class _Row(NamedTuple):
    """The line in which a row begins, its cells by field, and what stands beyond the headings."""

    line: int
    cells: dict[str, str]
    beyond: tuple[str, ...]


@dataclass(frozen=True)
class _List:
    """The file, which column holds which field, and how its days are written."""

    sheet: Sheet
    taken: Taken
    order: str

    @property
    def path(self) -> Path:
        return self.sheet.path

    @cached_property
    def fields(self) -> dict[str, int]:
        return self.taken.fields

    @cached_property
    def noted(self) -> list[int]:
        return self.taken.noted

    def heading(self, name: str) -> str:
        """What stands over the column of a field, "" where none is."""
        return self.sheet.heading(self.fields[name]) if name in self.fields else ""

    def rows(self) -> Iterator[_Row]:
        """Every row below the headings."""
        rows = open_rows(self.path)
        next(rows)
        for number, cells in rows:
            named = {
                name: cells[column] if column < len(cells) else ""
                for name, column in self.fields.items()
            }
            noted = with_unknown(named.get("note", ""), self.sheet.headings, cells, self.noted)
            named |= {"note": noted} if noted else {}
            taken = self.fields.values()
            heads = self.sheet.headings + ("",) * (len(cells) - len(self.sheet.headings))
            beyond = (
                cell
                for at, (head, cell) in enumerate(zip(heads, cells, strict=False))
                if cell and not head and at not in taken and at not in self.taken.left_out
            )
            yield _Row(number, named, tuple(beyond))


def import_list(
    p: Pantry,
    path: Path,
    *,
    columns: str = "",
    order: str = "",
    units: str = "",
    taken: Taken | None = None,
    dry_run: bool = False,
    again: bool = False,
    progress: Callable[[int], None] = lambda _line: None,
) -> Imported:
    """Looks the whole list through and books it, unless a row is wrong, something is to be asked,
    or only a look was wanted. A list that came in before is asked about, unless it is meant to come
    in `again`. Columns are `taken` as that says, else as they were for the last
    list with these headings and as `columns` says; `units` are those of bare numbers ("size=kg").
    Raises BadInput for a file, a mapping or an order nobody can read."""
    sheet = look_at(path)
    taken = taken or begin(p, sheet, columns, order, units)
    made, found = _opened(sheet, taken, told=bool(order), metric=p.bare_degree == "C")
    if not found.asks:
        _look(p, made, found, progress)
    if found.came_before and not (again or dry_run or found.bad):
        found.asks.append(Ask("again", path.name, ("--again",)))
    if found.bad or found.asks or dry_run:
        return found
    with p.together():
        for number, cells, _ in made.rows():
            booked = putup.put_up(p, _dated(p, cells, made)[0])
            if (day := _opened_on(p, cells, made)) is not None:
                open_since(p, booked.code, day)
            progress(number)
        keep(p, made.taken)
    found.booked = True
    return found


def import_beside(
    p: Pantry,
    taken: Taken,
    path: Path,
    *,
    dry_run: bool,
    progress: Callable[[int], None],
) -> Imported:
    """The same through a connection of its own, so that it may run in a thread beside `p`; what it
    booked counts as booked through `p`. A screen shows what a look found, and asks before it books:
    a list that came in before is not asked about here. What `progress` raises stops it, and nothing
    is booked."""
    with open_pantry(p.path, p.clock) as own:
        found = import_list(own, path, taken=taken, dry_run=dry_run, again=True, progress=progress)
        p.booked |= own.booked
        p.store.booked |= own.store.booked
    return found


def _opened(sheet: Sheet, taken: Taken, *, told: bool, metric: bool) -> tuple[_List, Imported]:
    """The list, and what is known of it before a row is read; `told`: the order of days was said
    of this very list; `metric`: the household means metres."""
    fields = taken.fields
    found = Imported({name: sheet.heading(at) for name, at in fields.items()})
    found.first = [list(cells) for _, cells in sheet.first]
    found.recalled, found.asks = taken.recalled, taken.asks()
    made = _List(sheet, taken, taken.order)
    found.noted = [sheet.headings[at] for at in made.noted]
    used = {*fields.values(), *made.noted}
    found.unused = [one for at, one in enumerate(sheet.headings) if one and at not in used]
    if not found.asks and not (told or (taken.order and not taken.recalled)):
        made = _ordered(made, found)
    if not found.asks:
        known = {"altitude"} if metric else set()  # metres, the stricter reading
        heads = {name: made.heading(name) for name in fields if name not in known}
        found.asks += asks(heads, taken.units, (row.cells for row in made.rows()))
    return made, found


def _ordered(made: _List, found: Imported) -> _List:
    """How the days of the column are written: as some day of it settles it, else as it was said of
    an earlier list, else it is asked once."""
    could, example = set(ORDERS[:2]), ""
    for _, cells, _ in made.rows():
        for name in ("made", "printed", "state"):
            parts = re.fullmatch(r"(\d{1,2})[./-](\d{1,2})(?:[./-]\d{2,4})?", cells.get(name, ""))
            if parts is None or parts[1] == parts[2]:
                continue
            one, two = int(parts[1]), int(parts[2])
            if one > 12:
                could.discard("mdy")
            elif two > 12:
                could.discard("dmy")
            else:
                example = example or cells[name]
    if len(could) == 1:
        return replace(made, order=min(could))
    if made.order and could:
        return made
    if example:
        found.asks.append(Ask("dates", example, ORDERS[:2]))
    return replace(made, order="")


def _look(p: Pantry, made: _List, found: Imported, progress: Callable[[int], None]) -> None:
    before, by_day = Before(p), "made" in made.fields or "line" in made.fields
    for number, cells, beyond in made.rows():
        found.rows += 1
        for cell in beyond:
            why = "It stands under no heading: nothing is taken of it."
            found.name_beyond(Bad(number, "", cell, why))
        try:
            reading, no_day = _dated(p, cells, made)
            if not no_day:  # else it was looked at for its day
                putup.preview(p, reading)
            found.batches += 1
            found.known += before.had(reading, dated=by_day)
            if no_day:
                found.name_no_day(Bad(number, "", reading.food, no_day))
        except WrongCell as wrong:
            head, value = found.columns[wrong.field], cells[wrong.field]
            found.name_bad(Bad(number, head, value, wrong.message))
        except PantryError as error:
            at = _column(p, cells, made)
            value = cells.get(at, "")
            found.name_bad(Bad(number, found.columns.get(at, ""), value, error.message))
        progress(number)


def _column(p: Pantry, cells: dict[str, str], made: _List) -> str:
    """The field that what is wrong with a row speaks of."""
    reading = _reading(p, cells, made)
    about = next((ask.about for ask in reading.asks), "")
    about = {"contents": "size", "size": "size"}.get(about, about)
    return about if about in made.fields else ("line" if "line" in made.fields else "food")


def _dated(p: Pantry, cells: dict[str, str], made: _List) -> tuple[PutUpReading, str]:
    """A row as it is booked, and what is said of its day where it names none."""
    return dated(p, _reading(p, cells, made), lambda: _reading(p, cells, made, "date unknown"))


def _reading(p: Pantry, cells: dict[str, str], made: _List, more: str = "") -> PutUpReading:
    """A row as the line that a person would type of it, `more` words behind it."""
    count = cells.get("count", "")
    size, vessel = _in_unit(cells, made, "size"), cells.get("vessel", "")
    if "count" in cells and (count or not cells.get("line")):
        try:
            count = read_count(count)
        except ValueError as error:
            raise WrongCell("count", str(error)) from error
    # A column of sizes may hold what it is packed in: 2 "packs" are 2 packs.
    bare = not vessel and vessel_word(size) == size.strip().casefold()
    plain = count.isdecimal() and bool(size) and not bare
    many = f"{count} x {size} {vessel}" if plain else f"{count} {vessel} {size}"
    parts = [cells.get("line", ""), many, cells.get("food", ""), cells.get("method", "")]
    parts.append(cells.get("place", "").replace("›", " ").replace(">", " "))
    day = cells.get("made", "")
    if day and day.strip("?"):
        parts.append(day_of(day, made.order, p.today, "made"))
    elif "made" in made.fields:
        parts.append("date unknown")
    printed = cells.get("printed", "")
    if printed:
        heading = made.heading("printed").casefold().replace("-", " ").strip()
        kind = heading.replace(" ", "-") if heading in USE_BY else "printed"
        parts.append(f"{kind}={day_of(printed, made.order, p.today, 'printed')}")
    line = ", ".join(" ".join(part.split()) for part in (*parts, more) if part.strip())
    note = " ".join(cells.get("note", "").split())
    details = _details(p, cells, made)
    return putup.read(p, line, details, note=note)


def _opened_on(p: Pantry, cells: dict[str, str], made: _List) -> date | None:
    """The day on which a row says that it was opened, None where it says none. Raises WrongCell."""
    cell = cells.get("state", "")
    if not is_day_opened(made.heading("state"), cell):
        return None
    try:
        day = dates.read_date(day_of(cell, made.order, p.today, "state"), p.today)
    except BadInput as error:
        raise WrongCell("state", error.message) from error
    if day > p.today:
        raise WrongCell("state", f"{cell[:20]!r} is still to come: mend it.")
    return day


def _in_unit(cells: dict[str, str], made: _List, name: str) -> str:
    """A cell, a bare number in the unit that its heading or a person says."""
    unit = of_heading(name, made.heading(name)) or made.taken.units.get(name, "")
    return with_unit(cells.get(name, ""), unit) if name in UNITS else cells.get(name, "")


def _details(p: Pantry, cells: dict[str, str], made: _List) -> list[tuple[str, str]]:
    """What the row says of how it was put up, each understood. Raises WrongCell."""
    found = []
    for name in DETAILS:
        if name == "state" and _opened_on(p, cells, made) is not None:
            continue
        try:
            pair = pair_of(name, made.heading(name), _in_unit(cells, made, name))
        except ValueError as error:
            raise WrongCell(name, str(error)) from error
        if pair is not None:
            found.append(pair)
    return found
