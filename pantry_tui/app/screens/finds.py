"""Finding in a list: words that narrow it; a lid code is of `lidcodes`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.app.screens.lidcodes import LidCodes
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.core.lidcode import normal_code
from pantry_tui.settings import settings_file

if TYPE_CHECKING:
    from textual.widgets import Input

    from pantry_tui.app.widgets.findbar import FindBar
    from pantry_tui.app.widgets.linelist import LineList


class Finds(LidCodes):
    """A list with a field under it, which is made when it is first needed."""

    _bar: FindBar | None = None

    @property
    def sought(self) -> str:
        """The words that narrow the list; a saved view stands for its own."""
        if self._bar is None:
            return ""
        views = self.host.settings.views
        words = self._bar.value.split()
        return " ".join(views.get(one[1:], "") if one[:1] == "@" else one for one in words)

    async def action_find(self) -> None:
        await self._ask("")

    async def on_line_list_lettered(self, event: LineList.Lettered) -> None:
        """A letter that is typed on the list looks for it, where the person wants that."""
        await self._ask(event.letter)

    def widen(self) -> None:
        """The words are let go."""
        if self._bar is not None and self._bar.display:
            self._bar.end()
            self.reload()

    async def seek(self, words: str) -> None:
        """Narrow the list to these words; Esc shows all."""
        await self._ask(words)
        self._settle()

    async def _ask(self, value: str) -> None:
        if self._bar is None:
            from pantry_tui.app.widgets.findbar import FindBar

            self._bar = FindBar()
            await self.mount(self._bar, after="#word")
        self._bar.begin(value)

    def on_input_changed(self, event: Input.Changed) -> None:
        bar = self._bar
        if bar is None or not bar.display:
            return
        self.searching = True
        self.reload()
        self.searching = False

    def show_line(self, ref: str) -> None:
        if (at := self.find_line(ref)) is not None:
            self.table.move_cursor(at)

    def say_word(self) -> None:
        super().say_word()
        if self.sought and not self.table.source.total:
            self.say("Nothing matches these words; Esc shows all.")

    def on_input_submitted(self, event: Input.Submitted) -> None:
        self.look_up()

    def look_up(self) -> None:
        """Enter in the field: what was typed stands; a lid code is looked at, with its line under
        the cursor of the whole list."""
        code = normal_code(self._bar.value) if self._bar is not None else ""
        if self.host.pantry.batch(code) is None:
            self._settle()
            return
        self.widen()
        self.set_focus(self.table)
        self.show_line(code)
        self.host.show_batch(code)

    def action_detail(self) -> None:
        """Enter: what was typed in the field stands, or the line is looked at."""
        if self._bar is not None and self.focused is self._bar:
            self.look_up()
        else:
            self.look()

    def _settle(self) -> None:
        """The list has the keys again."""
        bar = self._bar
        if bar is None:
            return
        if unknown := self._no_view(bar.value):
            self.host.tell(unknown, refused=True)
            return
        if bar.value.strip():
            self.host.tell(f"Only what fits {bar.value!r} is shown; Esc shows all.")
        self.set_focus(self.table)

    def _no_view(self, words: str) -> str:
        """That a saved view is not there, "" where all that are named are."""
        known = self.host.settings.views
        for one in words.split():
            if one[:1] == "@" and one[1:] not in known:
                have = ", ".join(f"@{name}" for name in known) or "none yet"
                return (
                    f"There is no saved view {one}: you have {have}. They are written under "
                    f"[views] in {settings_file()}, one a line."
                )
        return ""

    def action_back(self) -> None:
        """Clear the words to find, else go to the first screen."""
        if self._bar is not None and self._bar.display:
            self._bar.end()
            SaidLine.hush(self)
            self.set_focus(self.table)
            self.reload()
        else:
            self.leave()

    def leave(self) -> None:
        """Go from this screen."""
        super().action_back()
