"""Paper and files: sheets, labels, calendars, the list of keys."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import each, flag, option, word, words
from pantry_tui.cli.verb import Verb
from pantry_tui.core.text import counted
from pantry_tui.errors import BadInput
from pantry_tui.paths import typed_path
from pantry_tui.services.output import jsonable
from pantry_tui.services.output.fitting import read_size
from pantry_tui.services.rows import Label


class Sheet(Verb):
    what: str = words("due, opened, week, outage, count, count PLACE, or a place")
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
    size: str | None = option("--size", "SIZE", "60x40mm, 2.5x1.5in, 'round 50mm': with --html")
    gift: bool = flag("--gift", "for what is given away: how to keep it, until when")
    roll: bool = flag("--roll", "each label a page of its own: with --html and --size")

    def run(self, call: Call) -> int:
        from pantry_tui.services.output import labels

        size = read_size(self.size) if self.size is not None else None
        if size is not None and not self.html:
            raise BadInput("A size is for a page to print: add --html.")
        if self.roll and size is None:
            raise BadInput("A roll has labels of one size: add --size 60x40mm.")
        with call.pantry() as p:
            found = labels.labels(p, self.codes, gift=self.gift)

        def text(found: Sequence[Label]) -> str:
            if not self.html:
                return labels.label_text(found)
            return labels.html(found, size, gift=self.gift, roll=self.roll)

        return call.answer(found, jsonable.plain, lambda found: [text(found).rstrip("\n")])


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
        return call.say(f"Wrote {counted(dates, 'dates')} to {path}.", file=str(path))


class Keys(Verb):
    def run(self, call: Call) -> int:
        from pantry_tui.app.commands import page
        from pantry_tui.cli.printing.lines import table

        def lines(rows: Sequence[Mapping[str, str]]) -> list[str]:
            cells = [(row["id"], row["keys"], row["does"], row["screens"]) for row in rows]
            return table(("id", "keys", "does", "on"), cells)

        return call.answer(page(), jsonable.plain, lines)
