"""Keys in turn: each is done before the next one is looked at.

Over a slow line several keys arrive in one go. Textual sends each to what has the focus when it
arrives, so the second would go past the box that the first is about to open: `d1` would not be
"discard, the first reason". Here a key waits until the one before has been handled by all that may
handle it, and until a screen that it opened has its focus.
"""

from __future__ import annotations

from collections import deque
from time import monotonic

from textual.app import App
from textual.await_complete import AwaitComplete
from textual.events import Event, Key
from textual.message import Message
from textual.message_pump import MessagePump

#: Seconds after which a key no longer waits: should one ever be lost, the next one goes on.
_PATIENCE = 2.0


#: Followers of a key, one after the other: the second comes behind what the key itself set off,
#: a line that was sent off or words that changed.
_ROUNDS = 2


class Passed(Message, namespace="in_turn"):
    """Goes the way of a key, right behind it, up to the app."""

    def __init__(self, number: int, target: MessagePump, rounds: int) -> None:
        super().__init__()
        self.number, self.target, self.rounds = number, target, rounds


class InTurn(App[None]):
    """An app whose keys wait for each other."""

    def __init__(self) -> None:
        super().__init__()
        self._waiting: deque[Key] = deque()
        self._number = 0
        self._busy, self._since = False, 0.0

    @property
    def idle(self) -> bool:
        """Whether every key is done."""
        return not self._busy and not self._waiting

    async def on_event(self, event: Event) -> None:
        if not isinstance(event, Key) or event.is_forwarded:
            await super().on_event(event)
            return
        self._waiting.append(event)
        if not self._busy or monotonic() - self._since > _PATIENCE:
            await self._next()

    async def _next(self) -> None:
        if not self._waiting:
            self._busy = False
            return
        self._busy, self._since = True, monotonic()
        self._number += 1
        target = self.focused or self.screen
        await super().on_event(self._waiting.popleft())
        self._follow(self._number, target, _ROUNDS)

    def _follow(self, number: int, target: MessagePump, rounds: int) -> None:
        if not rounds or not target.post_message(Passed(number, target, rounds)):
            self._done(number)

    def on_in_turn_passed(self, event: Passed) -> None:
        self._follow(event.number, event.target, event.rounds - 1)

    def pop_screen(self) -> AwaitComplete:
        """A screen that goes takes with it what was on its way there."""
        popped = super().pop_screen()
        self.call_later(self._done, self._number)
        return popped

    def _done(self, number: int) -> None:
        if self._busy and number == self._number:
            self._number += 1  # this one is over, however often it is said
            self.call_later(self._settle)

    def _settle(self) -> None:
        """What this key opened comes first: its focus is set when its own messages are done."""
        if not self.screen.call_later(self.call_later, self._next):
            self.call_later(self._next)
