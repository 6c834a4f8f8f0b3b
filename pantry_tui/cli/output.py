"""Paper and files: sheets, labels, calendars, the list of keys."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import each, flag, word, words
from pantry_tui.cli.verb import Verb
from pantry_tui.paths import typed_path
from pantry_tui.services.output import jsonable


class Sheet(Verb):
    what: str = words("due, opened, week, outage, or a place")
    html: bool = flag("--html", "a page to print from a browser")

    def run(self, call: Call) -> int:
        from pantry_tui.services.output import paper

        with call.pantry() as p:
            page = paper.sheet(p, self.what)
        text = paper.sheet_html if self.html else paper.sheet_text
        return call.answer(page, jsonable.plain, lambda sheet: [text(sheet).rstrip("\n")])


class Labels(Verb):
    codes: tuple[str, ...] = each("lid codes; without any, what was put up today", "CODE")
    html: bool = flag("--html", "a page to print from a browser")

    def run(self, call: Call) -> int:
        from pantry_tui.services.output import paper

        with call.pantry() as p:
            found = paper.labels(p, self.codes)
        text = paper.label_html if self.html else paper.label_text
        return call.answer(found, jsonable.plain, lambda labels: [text(labels).rstrip("\n")])


class Calendar(Verb):
    file: str = word("the file to write; never overwrites")

    def run(self, call: Call) -> int:
        from pantry_tui.services.output import calendar
        from pantry_tui.store.files import made_whole

        path = typed_path(self.file)
        with call.pantry() as p:
            text = calendar.calendar(p)
        with made_whole(path) as making:
            making.write_bytes(text.encode("utf-8"))
        dates = text.count("BEGIN:VEVENT")
        return call.say(f"Wrote {dates} dates to {path}.", file=str(path))


class Keys(Verb):
    def run(self, call: Call) -> int:
        from pantry_tui.app.commands import page
        from pantry_tui.cli.printing.lines import table

        def lines(rows: Sequence[Mapping[str, str]]) -> list[str]:
            cells = [(row["id"], row["keys"], row["does"], row["screens"]) for row in rows]
            return table(("id", "keys", "does", "on"), cells)

        return call.answer(page(), jsonable.plain, lines)
