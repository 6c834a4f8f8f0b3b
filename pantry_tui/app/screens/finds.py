"""Finding in a list: words that narrow it, a lid code that is typed."""

from __future__ import annotations

from contextlib import suppress
from typing import TYPE_CHECKING

from pantry_tui.app.commands import of
from pantry_tui.app.screens.listing import ListScreen
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.core.lidcode import normal_code
from pantry_tui.core.words import State
from pantry_tui.errors import PantryError
from pantry_tui.services.stock.lines import of_code
from pantry_tui.store.store import reading

if TYPE_CHECKING:
    from textual.widgets import Input

    from pantry_tui.app.widgets.findbar import FindBar
    from pantry_tui.app.widgets.linelist import LineList


#: What a letter behind a lid code may do.
ON_CODES = frozenset({"use", "open", "thaw", "move", "discard", "sign", "give", "ready", "missing"})


#: What is done to closed ones alone.
_CLOSED = frozenset({"open", "thaw"})


class Finds(ListScreen):
    """A list with a field under it, which is made when it is first needed."""

    _bar: FindBar | None = None

    @property
    def sought(self) -> str:
        """The words that narrow the list; a saved view stands for its own."""
        if self._bar is None or self._bar.jumps:
            return ""
        views = self.host.settings.views
        words = self._bar.value.split()
        return " ".join(views.get(one[1:], "") if one[:1] == "@" else one for one in words)

    async def action_find(self) -> None:
        await self._ask("", jumps=False)

    async def on_line_list_lettered(self, event: LineList.Lettered) -> None:
        """A letter that is typed on the list looks for it, where the person wants that."""
        await self._ask(event.letter, jumps=False)

    async def action_jump(self, digit: str) -> None:
        """A digit starts a lid code; the cursor goes there when it is whole. It is looked for in
        everything: words that narrowed the list are let go."""
        narrowed = bool(self.sought)
        await self._ask(digit, jumps=True)
        if narrowed:
            self.reload()

    async def seek(self, words: str) -> None:
        """Narrow the list to these words; Esc shows all."""
        await self._ask(words, jumps=False)
        self._settle()

    async def _ask(self, value: str, *, jumps: bool) -> None:
        if self._bar is None:
            from pantry_tui.app.widgets.findbar import FindBar

            self._bar = FindBar()
            await self.mount(self._bar, after="#word")
        self._bar.begin(value, jumps=jumps)

    def on_input_changed(self, event: Input.Changed) -> None:
        bar = self._bar
        if bar is None or not bar.display:
            return
        if bar.jumps:
            if not self._go_to_code(event.value) and not self._act_on_code(event.value):
                self.say_code(event.value)
            return
        self.searching = True
        self.reload()
        self.searching = False

    def _go_to_code(self, typed: str) -> bool:
        code, slash, number = typed.partition("/")
        wanted = normal_code(code)
        at = self.find_line(f"{wanted}{slash}{number}") if wanted else None
        if at is not None:
            self.table.move_cursor(at)
        return at is not None

    def show_line(self, ref: str) -> None:
        if (at := self.find_line(ref)) is not None:
            self.table.move_cursor(at)

    def _act_on_code(self, typed: str) -> bool:
        """`7Cu` uses 7C: a letter of an act behind a lid code that no longer one begins with."""
        code, key = normal_code(typed[:-1].partition("/")[0]), typed[-1:]
        doing = next((one for one in of(self.here) if key in one.key.split(",")), None)
        if doing is None or doing.id not in ON_CODES or self._begins_a_code(typed):
            return False
        if self.host.pantry.batch(code) is None or not self._go_to_code(typed[:-1]):
            return False
        if "/" not in typed and doing.id in _CLOSED:
            self._go_to_closed(code)
        if self._bar is not None:
            self._bar.end()
        self.set_focus(self.table)
        self.call_later(self.run_action, doing.action)
        return True

    def _go_to_closed(self, code: str) -> None:
        """Of a batch of which some is open already, a line with what is still closed."""
        for row in of_code(self.host.pantry, code):
            if (
                row.state is State.SEALED
                and (at := self.find_line(row.container_ids[0])) is not None
            ):
                self.table.move_cursor(at)
                return

    def _begins_a_code(self, typed: str) -> bool:
        """Whether what is typed is the beginning of a lid code, or all of it."""
        begun = normal_code(typed.partition("/")[0])
        p = self.host.pantry
        sql = "SELECT 1 FROM codes WHERE substr(code, 1, ?) = ? LIMIT 1"
        with suppress(PantryError), reading(p.path):
            return p.store.db.execute(sql, (len(begun), begun)).fetchone() is not None
        return False

    def find_line(self, ref: str) -> int | None:
        """The line of a lid code or a container."""
        return self.table.source.find(ref)

    def say_word(self) -> None:
        super().say_word()
        if self.sought and not self.table.source.total:
            self.say("Nothing matches these words; Esc shows all.")

    def say_code(self, typed: str) -> None:
        """Say what the lid code stands for that is typed and in no line of this list."""
        batch = self.host.pantry.batch(normal_code(typed.partition("/")[0]))
        self.say(f"{batch.code} {batch.food.name}: Enter shows it." if batch else "")

    def on_input_submitted(self, event: Input.Submitted) -> None:
        self._settle()

    def action_detail(self) -> None:
        """Enter: what was typed in the field stands, or the line is looked at."""
        if self._bar is not None and self.focused is self._bar:
            self._settle()
        else:
            self.look()

    def _settle(self) -> None:
        """Stay at what was found, or show the batch that is not listed."""
        bar = self._bar
        if bar is None:
            return
        if bar.jumps:
            typed = bar.value
            found = self._go_to_code(typed)
            bar.end()
            if not found:
                self.host.show_batch(typed)
        elif bar.value.strip():
            self.host.tell(f"Only what fits {bar.value!r} is shown; Esc shows all.")
        self.set_focus(self.table)

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
