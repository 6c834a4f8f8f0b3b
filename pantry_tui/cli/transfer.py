"""Data out and in."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import flag, option, word
from pantry_tui.cli.printing import transfer as lines
from pantry_tui.cli.verb import Verb
from pantry_tui.errors import BadInput
from pantry_tui.paths import typed_path


class Export(Verb):
    file: str = word("the file to write, .csv or .json; never overwrites", "FILE")
    what: str | None = option("--what", "TABLE", "of a .csv: stock, log, year or losses")

    def run(self, call: Call) -> int:
        to = typed_path(self.file)
        ending = to.suffix.lower()
        if ending not in (".csv", ".json"):
            raise BadInput("Name a file that ends in .csv (a table) or in .json (the whole log).")
        if ending == ".json" and self.what not in (None, "log"):
            raise BadInput("A .json is always the log: leave --what out, or name a .csv.")
        with call.pantry() as p:
            if ending == ".json":
                from pantry_tui.services.safekeeping.transfer import export_log

                return _wrote(call, to, export_log(p, to), "events")
            from pantry_tui.services.output.spreadsheet import export_table

            return _wrote(call, to, export_table(p, to, self.what or "stock"), "rows")


def _wrote(call: Call, to: object, count: int, what: str) -> int:
    return call.say(f"Wrote {count:,} {what} to {to}.", file=str(to), rows=count)


class Import(Verb):
    file: str = word("your list, a .csv or .tsv with headings; or an exported .json", "FILE")
    map: str | None = option("--map", "FIELD=HEADING,...", "of a list: which column holds what")
    dates: str | None = option("--dates", "ORDER", "of a list: days are dmy, mdy or ymd")
    unit: str | None = option("--unit", "FIELD=UNIT", "of its bare numbers: size=kg,temperature=C")
    again: bool = flag("--again", "of a list that came in before: put all of it up once more")
    dry_run: bool = flag("--dry-run", "say what would come and book nothing")

    def run(self, call: Call) -> int:
        source = typed_path(self.file)
        return BY_ENDING.get(source.suffix.lower(), _list)(self, call, source)


def _list(asked: Import, call: Call, source: Path) -> int:
    """A household's own list: a line a batch."""
    from pantry_tui.cli.importing import bring_in

    said = (asked.map or "", asked.dates or "", asked.unit or "")
    return bring_in(call, source, *said, asked.dry_run, asked.again)


def _log(asked: Import, call: Call, source: Path) -> int:
    from pantry_tui.services.safekeeping.transfer import import_log

    if asked.map or asked.dates or asked.unit:
        raise BadInput("A .json is an exported log: leave --map, --dates and --unit out.")
    found = import_log(call.path, source, call.today, dry_run=asked.dry_run)
    return call.answer(found, lines.data, lambda one: lines.merged(one, asked.dry_run))


#: What reads a file, by the ending of its name; any other is read as a list.
BY_ENDING: dict[str, Callable[[Import, Call, Path], int]] = {".json": _log}
