"""A lid code that is typed on a list: the cursor goes to its line, a key behind it acts there.

The state is always on the screen: what is typed so far, and in the foot the keys that mean
something to it. Only a character with which some lid code goes on is ever taken into one. One that
is refused ends the code, so that what is typed after it never makes another one whole; until a
digit begins one again, or Esc, no letter acts on the line that the cursor happens to be on.
"""

from __future__ import annotations

from contextlib import suppress
from typing import TYPE_CHECKING, cast

from pantry_tui.app.commands import Command, of
from pantry_tui.app.format import clip
from pantry_tui.app.screens.listing import ListScreen
from pantry_tui.app.widgets.keyline import KeyLine
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.core.lidcode import normal_code
from pantry_tui.core.words import State
from pantry_tui.errors import PantryError
from pantry_tui.services.stock.lines import beginning_with, begins_a_code, of_code

if TYPE_CHECKING:
    from textual.events import Key

    from pantry_tui.app.widgets.codebar import CodeBar
    from pantry_tui.core.model import Batch

#: What is done to the line of the code, and so to no other one: command ids.
ON_CODES = frozenset(
    {"use", "open", "thaw", "move", "discard", "sign", "give", "ready", "missing", "reserve"}
    | {"rate", "process", "correct", "timer", "mark"}
    | {"eaten", "pin", "later", "earlier", "swap", "skip"}
)

#: What is done to closed ones alone.
_CLOSED = frozenset({"open", "thaw"})

#: The keys of a code that is not whole yet, for the foot; of a whole one that is not listed here.
_BACK = (("Backspace", "takes one back", ""), ("Esc", "leaves it", "back"))
_ELSEWHERE = (("Enter", "shows it", ""), *_BACK)
#: And of none, behind a character that was refused.
_NOT_TYPED = "No lid code is typed. Its first digit begins one, Esc goes back to the list."
_NONE = (("0-9", "begins a lid code", ""), ("Esc", "back to the list", "back"))


class LidCodes(ListScreen):
    """A list in which a digit begins a lid code."""

    _code: CodeBar | None = None

    @property
    def typed_code(self) -> str:
        """As far as it is typed, "" where none is."""
        return self._code.typed if self._code is not None else ""

    async def action_jump(self, digit: str) -> None:
        """A digit begins a lid code. It is looked for in everything: words that narrowed the list
        are let go."""
        if self._code is None:
            from pantry_tui.app.widgets.codebar import CodeBar

            self._code = CodeBar(self._for_code)
            await self.mount(self._code, after="#word")
        if self._goes_on(digit):
            self.widen()
            self._typed(digit)
        else:
            self._anew("", digit)
        self.set_focus(self._code)

    def widen(self) -> None:
        """Show the whole list again."""

    def end_code(self) -> None:
        """No code is typed any more; the list has the keys."""
        if self._code is not None and self._code.display:
            self._code.end()
            self.set_focus(self.table)
            self.query_one(KeyLine).usual()

    def settle_list(self) -> None:
        self.end_code()
        super().settle_list()

    def on_screen_suspend(self) -> None:
        self.end_code()

    # -- typing ----------------------------------------------------------------------------------

    def _for_code(self, event: Key) -> bool:
        """Whether a key was for the code: one that goes on with it, takes back, ends it, or is
        refused. What is left to the screen means there what it always means."""
        typed, letter = self.typed_code, event.character or ""
        if event.key == "escape":
            self.end_code()
        elif event.key == "backspace":
            if typed:  # of a code that was refused there is nothing left to take back
                self._typed(typed[:-1])
        elif event.key == "enter":
            self._enter(typed)
        elif self._may_follow(typed, letter):
            self._typed(typed + letter)
        elif batch := self._whole(typed):
            return self._behind(batch, typed, event)
        elif letter.isalnum() or letter in ("/", " "):
            self._anew(typed, letter)
        else:
            self.end_code()
            return False
        return True

    def _may_follow(self, typed: str, letter: str) -> bool:
        """Whether a code goes on with it; the first character is a digit, whatever reads as one."""
        begins = bool(typed) or letter.isdecimal()
        printed = bool(letter.strip()) and letter.isprintable()
        return begins and printed and self._goes_on(typed + letter)

    def _refuse(self, why: str) -> None:
        self.host.tell(why, refused=True)

    def _anew(self, typed: str, letter: str) -> None:
        """A character was refused behind what is typed. A digit with which some code begins begins
        one; else none is typed any more, and the bar says so."""
        if not typed and not letter.isdecimal():
            self._refuse(_NOT_TYPED)
            return
        shown = f"{typed}{letter}".upper() if letter != " " else f"{typed} and a blank"
        if letter.isdecimal() and self._goes_on(letter):
            self._typed(letter)
            self._refuse(f"No lid code begins with {shown}: begun anew with {letter}.")
            return
        if self._code is not None:
            self._code.say("", "no code is typed", whole=False)
        self.query_one(KeyLine).instead(_NONE)
        self._refuse(
            f"No lid code begins with {shown}. Type one from its first digit, or Esc goes back to "
            "the list."
        )

    def _typed(self, typed: str) -> None:
        """Show the code so far; the cursor goes to its line once it is whole."""
        bar, typed = self._code, typed.upper()
        if not typed or bar is None:
            self.end_code()
            return
        batch = self._whole(typed)
        here = batch is not None and self._go_to_code(typed)
        if batch is None:
            word = self._how_it_goes_on(typed)
        elif here:
            word = f"{clip(batch.food.name, 60)}: the next key is for it, Enter shows it"
        else:
            word = f"{clip(batch.food.name, 60)}: not in this list, Enter shows it"
        bar.say(
            typed, clip(word, 2 * self.app.size.width - len(typed) - 14), whole=batch is not None
        )
        keys = self.query_one(KeyLine)
        if here:
            keys.usual()
        else:
            keys.instead(_ELSEWHERE if batch else _BACK)
        SaidLine.hush(self)

    def _how_it_goes_on(self, typed: str) -> str:
        code, slash, _ = typed.partition("/")
        if slash:
            return f"the number on a container of {code}"
        known = beginning_with(self.host.pantry, code, 8)
        return ", ".join(f"{code} {food}" for code, food in known.items())

    def _enter(self, typed: str) -> None:
        """Show the batch, as Enter does on its line; behind it the cursor stands there."""
        if self._whole(typed) is None:
            self._refuse(f"{typed} is only the beginning of a lid code." if typed else _NOT_TYPED)
            return
        self._go_to_code(typed)
        self.end_code()
        self.host.show_batch(typed)

    def _behind(self, batch: Batch, typed: str, event: Key) -> bool:
        """A key behind a whole lid code: `7Cu` uses 7C. It acts as it always does, on the line of
        the code; of a batch that is not listed here, on the page of that batch."""
        bound = self.active_bindings.get(event.key)
        letter = event.character or ""
        of_page = self._on_its_page(event.key) if bound is None else None
        if bound is None and of_page is None and letter.isalnum():
            self._anew(typed, letter)
            return True
        if of_page is None and (bound is None or bound.binding.id not in ON_CODES):
            self.end_code()
            return False
        there: ListScreen = self
        here = of_page is None and self._go_to_code(typed)
        self.end_code()
        if not here:
            self.host.show_batch(typed)
            there = cast(ListScreen, self.host.screen)
        elif "/" not in typed and bound is not None and bound.binding.id in _CLOSED:
            self._go_to_closed(batch.code)
        action = of_page.action if of_page else bound.binding.action if bound else ""
        if isinstance(there, LidCodes) and (here or there is not self):
            there.call_later(there.act_as, action, typed)
        return True

    def _on_its_page(self, key: str) -> Command | None:
        """What a key that means nothing in this room does to a batch on its own page."""
        known = of("batch", self.host.shown_keys)
        return next((c for c in known if c.id in ON_CODES and key in c.key.split(",")), None)

    async def act_as(self, action: str, ref: str) -> None:
        """Do what a key does to `ref` alone, whatever else is marked."""
        if "/" in ref:
            self._go_to_code(ref)
        self.meant = normal_code(ref)
        try:
            await self.run_action(action)
        finally:
            self.meant = ""

    # -- what the codes are ----------------------------------------------------------------------

    def _whole(self, typed: str) -> Batch | None:
        """The batch of a code that is typed to its end, and of its container where one is named."""
        code, slash, number = typed.partition("/")
        batch = self.host.pantry.batch(normal_code(code)) if len(code) > 1 else None
        if batch is None or not slash:
            return batch
        return batch if number and f"{batch.code}/{number}" in self._containers(batch) else None

    def _goes_on(self, typed: str) -> bool:
        """Whether some lid code, or container, begins so."""
        code, slash, number = typed.partition("/")
        with suppress(PantryError):
            if not slash:
                return begins_a_code(self.host.pantry, normal_code(code))
            batch = self.host.pantry.batch(normal_code(code))
            return batch is not None and any(
                one.startswith(f"{batch.code}/{number}") for one in self._containers(batch)
            )
        return False

    def _containers(self, batch: Batch) -> list[str]:
        return [f"{batch.code}/{one.number}" for one in self.host.pantry.containers_of(batch)]

    def _go_to_code(self, typed: str) -> bool:
        code, slash, number = typed.partition("/")
        at = self.find_line(f"{normal_code(code)}{slash}{number}")
        if at is not None:
            self.table.move_cursor(at)
        return at is not None

    def _go_to_closed(self, code: str) -> None:
        """Of a batch of which some is open already, a line with what is still closed."""
        for row in of_code(self.host.pantry, code):
            if (
                row.state is State.SEALED
                and (at := self.find_line(row.container_ids[0])) is not None
            ):
                self.table.move_cursor(at)
                return

    def find_line(self, ref: str) -> int | None:
        """The line of a lid code or a container."""
        return self.table.source.find(ref)
