"""What every screen may ask of the app: the pantry, a way to tell, a way to try."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from contextlib import suppress
from inspect import signature
from typing import TYPE_CHECKING, Any

from textual.events import Event, Key

from pantry_tui.app.format import week_day
from pantry_tui.app.inkeys import in_keys
from pantry_tui.app.inturn import InTurn
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.app.widgets.wordline import WordLine
from pantry_tui.core.text import clean
from pantry_tui.errors import PantryError
from pantry_tui.services.inunits import Units
from pantry_tui.services.rows import Done
from pantry_tui.services.stock.rows import DueRow
from pantry_tui.settings import Settings

if TYPE_CHECKING:
    from textual.actions import ActionParseResult
    from textual.dom import DOMNode

    from pantry_tui.services.pantry import Pantry

#: Characters that a toast shows whole; lines that may stand over a question, and its margins.
_TOAST, _OVER, _MARGINS = 120, 3, 6


class Host(InTurn):
    """The app as the screens see it. `served`: in a browser, perhaps on another machine, so that it
    reaches no file of this one but the store."""

    served = False

    def __init__(self, pantry: Pantry) -> None:
        super().__init__()
        self.pantry = pantry
        self._version = pantry.store.version()
        self.settings = Settings()  # those of the file, once it was read
        self._earlier = frozenset(pantry.booked)  # before this sitting
        self.shown_keys: dict[str, str] = {}  # those of one's own, by command id
        self.came_from = "due"  # the room from which one put up or counted
        self.moved_to = ""  # where the last ones were moved to
        self.refused = False  # the last act did nothing, so that nothing of it can be taken back
        self.units = Units(metric=False)
        self.hear_units()

    def hear_units(self) -> None:
        """The household's, asked for at the start and after every act; a store that cannot be read
        just now is said by what reads it next."""
        with suppress(PantryError):
            self.units = Units.of(self.pantry)

    @property
    def day_text(self) -> str:
        """Today in words, without the year: `Wed 25 Nov`."""
        return week_day(self.pantry.today)

    def action_go(self, room: str) -> None:
        """Show a room of the app."""
        raise NotImplementedError

    @property
    def not_now(self) -> Collection[str]:
        """Commands of the screen that would be refused just now, so that no key is named."""
        found: Collection[str] = getattr(self.screen, "not_now", ())
        return found

    def said(self, text: str) -> str:
        """A service's words in the household's units and the app's keys."""
        return in_keys(
            self.units.text(text), self.shown_keys, str(getattr(self.screen, "here", ""))
        )

    def show_batch(self, ref: str) -> None:
        """Show the batch of a lid code or container."""
        raise NotImplementedError

    def catch_up(self) -> bool:
        """Take in what another window has written; whether there was something. A store that
        cannot be read just now is said, and looked at again the next time."""
        try:
            # Asked before the log is read: what is written in between is seen the next time.
            now = self.pantry.store.version()
            self.pantry.catch_up()
        except PantryError as error:
            self.tell(error.message, refused=True)
            return False
        changed, self._version = now != self._version, now
        if changed:
            self.hear_units()
        return changed

    async def run_action(
        self,
        action: str | ActionParseResult,
        default_namespace: DOMNode | None = None,
        namespaces: Mapping[str, DOMNode] | None = None,
    ) -> bool:
        """As ever; a key that cannot be done says why in a sentence, and the app stays."""
        try:
            return await super().run_action(action, default_namespace, namespaces)
        except PantryError as error:
            self.tell(error.message, refused=True)
            return True

    def tell(self, message: str, *, refused: bool = False) -> None:
        """Say it on the screen's own line, which hides no stock; a toast where it has none. What is
        too long for either has a page of its own until a key closes it: nothing is cut off.

        The only way to either: no markup, so any name may be in it. What is refused did nothing,
        so that nothing of it can be taken back.
        """
        said = self.said(message)
        text = clean(f"Not done: {said}" if refused else said)
        self.refused = self.refused or refused
        line = SaidLine.of(self.screen)
        if refused and line is not None:
            # Why stands on the line under the list already, where the cursor is on it.
            text = next((one.unsaid(text) for one in self.screen.query(WordLine)), text)
        if line is not None and line.fits(text):
            line.say(text, refused)
        elif line is None and len(text) <= _TOAST:
            self.notify(text, severity="error" if refused else "information", markup=False)
        else:
            SaidLine.hush(self.screen)
            self.show_page(text)

    def show_page(self, text: str, then: Callable[[], None] | None = None) -> None:
        """A text that is read and closed by a key, and what follows it."""
        from pantry_tui.app.screens.page import CLOSES, GOES_ON, Page

        page = Page(text, GOES_ON if then else CLOSES)
        self.push_screen(page, None if then is None else lambda _: then())

    def say_then(self, words: str, then: Callable[[str], None]) -> None:
        """Go on with a question that has `words`, the answer to the one before, over it; what is
        too long for that is read first."""
        if len(words) <= _OVER * (self.size.width - _MARGINS):
            then(words)
        else:
            self.show_page(words, lambda: then(""))

    async def on_event(self, event: Event) -> None:
        """As ever; a key takes away what was said a while ago."""
        if isinstance(event, Key) and not event.is_forwarded:
            SaidLine.key_came(self.screen)
        await super().on_event(event)

    def attempt(self, do: Callable[[], Done]) -> bool:
        """Do it and say what was done, or say in one sentence why not."""
        try:
            done = self.doing(do)
        except PantryError as error:
            self.tell(error.message, refused=True)
            return False
        self.report(done)
        return True

    def doing(self, do: Callable[[], Done]) -> Done:
        """Do it; what was refused before is over. Raises PantryError."""
        done = do()
        self.refused = False
        self.hear_units()
        return done

    def did(self, event: str) -> bool:
        """Whether that event was booked at this sitting."""
        return event in self.pantry.booked and event not in self._earlier

    def report(self, done: Done) -> None:
        """Say what was done, and what else should be known."""
        self.tell(" ".join((done.message, *done.warnings)))


def saw(row: DueRow | None, do: Callable[..., object]) -> dict[str, Any]:
    """What the screen showed of `row`, as the keyword by which `do` learns it: a service refuses
    where that no longer holds. Nothing for a service, or a row, that does not say."""
    stamp = getattr(row, "stamp", "")
    return {"saw": stamp} if stamp and "saw" in signature(do).parameters else {}
