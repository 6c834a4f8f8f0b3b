"""Floor: a bare app with a list of as many rows as lid codes are given. `q` quits."""

import sys
from typing import ClassVar

from textual.app import App, ComposeResult
from textual.widgets import DataTable


class Bare(App[None]):
    BINDINGS: ClassVar = [("q", "quit", "quit")]

    def compose(self) -> ComposeResult:
        yield DataTable(cursor_type="row")

    def on_mount(self) -> None:
        table = self.query_one(DataTable)
        table.add_columns("code", "food", "where", "until")
        for code in sys.argv[1:]:
            table.add_row(code, "runner beans", "cellar", "30 Jul 2027")


Bare().run()
