"""What an import of a household's own list came to: its columns, what is wrong with which row, what
is to be asked. Of each kind of trouble so many rows are named, the rest are counted."""

from __future__ import annotations

from dataclasses import dataclass, field

from pantry_tui.services.rows import Ask

#: Of a list with many bad rows so many are named.
MOST_BAD = 200


@dataclass(frozen=True, slots=True)
class Bad:
    """A row that cannot be booked: `column` is the heading of the cell that is wrong, where one
    is, `value` what stands in it."""

    line: int
    column: str
    value: str
    reason: str


@dataclass
class Imported:
    """What an import came to; `columns` are the headings by field, `first` the first rows,
    `recalled`: something of it is read as was said of the last list with these headings, `noted`
    the headings whose cells go into the note, `unused` those of which nothing is taken, `beyond`
    cells that stand under no heading, `known` rows that were put up before, `no_day` rows that say
    no day, each with what it counts as."""

    columns: dict[str, str] = field(default_factory=dict)
    rows: int = 0
    batches: int = 0
    bad: list[Bad] = field(default_factory=list)
    more_bad: int = 0
    asks: list[Ask] = field(default_factory=list)
    first: list[list[str]] = field(default_factory=list)
    booked: bool = False
    recalled: bool = False
    noted: list[str] = field(default_factory=list)
    unused: list[str] = field(default_factory=list)
    beyond: list[Bad] = field(default_factory=list)
    more_beyond: int = 0
    known: int = 0
    no_day: list[Bad] = field(default_factory=list)
    more_no_day: int = 0

    @property
    def came_before(self) -> bool:
        """Whether so many of its rows were put up before that it is most likely the same list."""
        return self.known > 0 and self.known >= self.rows / 2

    def name_bad(self, row: Bad) -> None:
        if len(self.bad) < MOST_BAD:
            self.bad.append(row)
        else:
            self.more_bad += 1

    def name_beyond(self, cell: Bad) -> None:
        if len(self.beyond) < MOST_BAD:
            self.beyond.append(cell)
        else:
            self.more_beyond += 1

    def name_no_day(self, row: Bad) -> None:
        if len(self.no_day) < MOST_BAD:
            self.no_day.append(row)
        else:
            self.more_no_day += 1
