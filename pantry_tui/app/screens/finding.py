"""Finding in a list: words that narrow it, a lid code that is typed."""

from __future__ import annotations

from typing import cast

from textual import on
from textual.screen import Screen
from textual.widgets import Input

from pantry_tui.app.host import Host
from pantry_tui.app.widgets.rowtable import RowTable
from pantry_tui.core.lidcode import normal_code


class FindingScreen(Screen[None]):
    """A screen with a table `#list` and a field `#bar` under it."""

    #: The words have just changed: the cursor goes to the first line that fits them.
    searching = False

    #: Whether the lines stand for stock, so that a typed lid code may land on one of them.
    holds_stock = True

    @property
    def host(self) -> Host:
        return cast(Host, self.app)

    @property
    def table(self) -> RowTable:
        return self.query_one("#list", RowTable)

    @property
    def bar(self) -> Input:
        return self.query_one("#bar", Input)

    @property
    def sought(self) -> str:
        """The words that narrow the list."""
        return "" if self.bar.has_class("jump") else self.bar.value

    def reload(self) -> None:
        """Read the list again; the cursor stays on its line."""
        raise NotImplementedError

    def action_find(self) -> None:
        self._show_bar("", jump=False)

    def action_jump(self, digit: str) -> None:
        """A digit starts a lid code; the cursor goes along as it is typed. It is looked for in
        everything: words that narrowed the list are let go."""
        narrowed = bool(self.sought)
        self._show_bar(digit, jump=True)
        if narrowed:
            self.reload()

    def _show_bar(self, value: str, *, jump: bool) -> None:
        self.bar.set_class(jump, "jump")
        self.bar.placeholder = "lid code" if jump else "words to find"
        self.bar.display = True
        self.bar.value = value
        self.set_focus(self.bar)
        # Focusing selects the text, and the next digit would overwrite the first.
        self.bar.select_on_focus = False
        self.bar.cursor_position = len(value)

    def say_code(self, typed: str) -> None:
        """Say what the lid code stands for that is typed and in no line of this list."""

    @on(Input.Changed, "#bar")
    def follow(self, event: Input.Changed) -> None:
        if self.bar.has_class("jump"):
            if not self._go_to_code(event.value):
                self.say_code(event.value)
        elif self.bar.display:
            self.searching = True
            self.reload()
            self.searching = False

    def _go_to_code(self, typed: str) -> bool:
        code, _, number = typed.partition("/")
        wanted = normal_code(code)
        if not self.holds_stock:
            return False
        for index, line in enumerate(self.table.lines):
            row = line.row
            mine = row.code if row else line.ref.partition("/")[0]
            if not wanted or not mine.startswith(wanted):
                continue
            if number and row and f"{mine}/{number}" not in row.container_ids:
                continue
            self.table.move_cursor(row=index, animate=False)
            return True
        return False

    @on(Input.Submitted, "#bar")
    def settle(self) -> None:
        """Enter in the field: stay at what was found, or open the batch that is not listed."""
        if self.bar.has_class("jump"):
            typed = self.bar.value
            found = self._go_to_code(typed)
            self._hide_bar()
            if not found:
                self.host.show_batch(typed)
        elif self.bar.value.strip():
            self.host.tell(f"Only what fits {self.bar.value!r} is shown; Esc shows all.")
        self.set_focus(self.table)

    def _hide_bar(self) -> None:
        self.bar.remove_class("jump")
        self.bar.value = ""
        self.bar.display = False
        self.set_focus(self.table)

    def action_back(self) -> None:
        """Clear the words to find, else go to the first screen."""
        if self.bar.display:
            self._hide_bar()
            self.reload()
        else:
            self.host.action_go("due")
