"""A line that is typed into."""

from __future__ import annotations

from textual.widgets import Input


class Typing(Input):
    """Ctrl+U clears it wherever the cursor stands, here as in every other one."""

    def action_delete_left_all(self) -> None:
        self.value = ""
