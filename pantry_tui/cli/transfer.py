"""Data out and in."""

from __future__ import annotations

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import flag, option, word
from pantry_tui.cli.printing import transfer as lines
from pantry_tui.cli.safekeeping import typed_path
from pantry_tui.cli.verb import Verb
from pantry_tui.errors import BadInput


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
    file: str = word("a .json that `export` wrote", "FILE")
    dry_run: bool = flag("--dry-run", "say what would come and book nothing")

    def run(self, call: Call) -> int:
        source = typed_path(self.file)
        if source.suffix.lower() != ".json":
            raise BadInput("Name a .json file that `pantry-tui export` wrote.")
        from pantry_tui.services.safekeeping.transfer import import_log

        found = import_log(call.path, source, call.today, dry_run=self.dry_run)
        return call.answer(found, lines.data, lambda one: lines.merged(one, self.dry_run))
