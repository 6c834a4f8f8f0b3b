"""Copies of the store, lists out and in: what would come of it is shown before it is done."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from pantry_tui.app.screens.ask import Choose, TypeLine, given
from pantry_tui.app.screens.page import Decide, Page
from pantry_tui.core import dates
from pantry_tui.core.text import counted
from pantry_tui.paths import typed_path
from pantry_tui.services.rows import Done
from pantry_tui.services.safekeeping import backup
from pantry_tui.services.safekeeping.telling import merged, restored

if TYPE_CHECKING:
    from pantry_tui.app.host import Host

OTHER = "another file"
DOES_IT = (("Enter", "does it", "True"), ("Esc", "leaves all as it is", "False"))


def ask(host: Host, done: Callable[[], None]) -> None:
    """What to do with the store as a whole; `done` is called when it holds something else."""
    way = _Backups(host, done)
    from pantry_tui.app.screens.printing import ask_paper

    ways = {
        "print: the door sheet, the week, labels, a calendar ...": lambda: ask_paper(host),
        "make a backup now": way.back_up,
        "bring a backup back": way.which,
        "write the whole log to a file": way.write_log,
        "write a table for a spreadsheet": way.which_table,
        "bring in a log that was written to a file": way.bring_in,
        "import your own list (.csv, .tsv, .xlsx)": way.own_list,
    }
    question = Choose("Print, backups, lists out and in. Esc: nothing.", list(ways))
    host.push_screen(question, given(lambda got: ways[got]()))


class _Backups:
    """A question for each; nothing is done before its last one is answered."""

    def __init__(self, host: Host, done: Callable[[], None]) -> None:
        self.host, self.done = host, done

    def back_up(self) -> None:
        def do() -> Done:
            made = backup.backup(self.host.pantry.path)
            return Done(
                f"Copied {counted(made.events, 'events')} to {made.path}, and looked the copy over."
            )

        self.host.attempt(do)

    # -- bringing back -----------------------------------------------------------------------------

    def which(self) -> None:
        """One of the copies that are kept, the newest first, or another file."""
        known = {_moment(one): one.path for one in backup.kept(self.host.pantry.path)}
        question = Choose("Which backup? The newest stands first.", [*known, OTHER])

        def chosen(got: str) -> None:
            if got == OTHER:
                self._named()
            else:
                self.host.attempt(lambda: self._preview(known[got]))

        self.host.push_screen(question, given(chosen))

    def _named(self) -> None:
        self._line("Which file is the backup?", "~/copies/pantry.db", self._preview)

    def _preview(self, source: Path) -> Done:
        found = backup.preview(self.host.pantry.path, source)

        def do() -> Done:
            with self.host.pantry.let_go():
                done = backup.restore(self.host.pantry.path, source)
            return Done(" ".join(restored(done, only_said=False)))

        self._decide(restored(found, only_said=True), do)
        return Done(f"{source} is a sound backup.")

    # -- out and in --------------------------------------------------------------------------------

    def write_log(self) -> None:
        def do(to: Path) -> Done:
            from pantry_tui.services.safekeeping.transfer import export_log

            return Done(f"Wrote {counted(export_log(self.host.pantry, to), 'events')} to {to}.")

        self._line("Which file shall hold the log?", "~/pantry-log.json", do)

    def which_table(self) -> None:
        from pantry_tui.services.output.spreadsheet import TABLES, export_table

        def chosen(table: str) -> None:
            def do(to: Path) -> Done:
                rows = export_table(self.host.pantry, to, table)
                return Done(f"Wrote {counted(rows, 'rows')} to {to}.")

            self._line("Which file shall hold the table?", f"~/{table}.csv", do)

        self.host.push_screen(Choose("Which table?", list(TABLES)), given(chosen))

    def bring_in(self) -> None:
        from pantry_tui.services.safekeeping.transfer import import_log

        p = self.host.pantry

        def preview(source: Path) -> Done:
            def do() -> Done:
                found = import_log(p.path, source, p.today)
                p.catch_up()
                told = merged(found, only_said=False)
                if len(told) > 1:  # what is to be done by hand stays until it was read
                    self.host.push_screen(Page("\n".join(told)))
                return Done(told[0])

            self._decide(merged(import_log(p.path, source, p.today, dry_run=True), True), do)
            return Done(f"{source} can be brought in.")

        self._line("Which file? It was written by this program.", "~/pantry-log.json", preview)

    def own_list(self) -> None:
        from pantry_tui.app.screens.importing import ask_list

        ask_list(self.host, self.done)

    # -- asking ------------------------------------------------------------------------------------

    def _line(self, title: str, example: str, do: Callable[[Path], Done]) -> None:
        """A file that is typed; one with which it cannot be done stays to be mended."""
        done: list[Done] = []
        question = TypeLine(
            title,
            example,
            accept=lambda typed: done.append(self.host.doing(lambda: do(typed_path(typed)))),
        )
        self.host.push_screen(question, given(lambda _: self.host.report(done[-1])))

    def _decide(self, told: list[str], do: Callable[[], Done]) -> None:
        def decided(yes: bool | None) -> None:
            if yes and self.host.attempt(do):
                self.done()

        page = Decide("\n".join(told), DOES_IT)
        # After the question that is just being answered has gone.
        self.host.call_later(lambda: self.host.push_screen(page, decided))


def _moment(one: backup.Kept) -> str:
    """ "Wed 25 Nov 2026, 18:30:12", a name that no two of them share."""
    return f"{dates.say(one.made.date())}, {one.made:%H:%M:%S}"
