"""Putting up: one line as you would say it, and below it what it is understood as."""

from __future__ import annotations

import re
from functools import partial
from typing import cast

from textual import on
from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.events import Paste
from textual.screen import ModalScreen
from textual.widgets import Input, Static
from textual.widgets.input import Selection

from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import clip, hang
from pantry_tui.app.screens.ask import TypeLine
from pantry_tui.app.screens.fileline import Offers
from pantry_tui.app.screens.recalls import Recalls, ask_place
from pantry_tui.app.texts import booked_text, reading_text, said_of
from pantry_tui.app.widgets.keyline import KeyLine
from pantry_tui.app.widgets.more import More
from pantry_tui.app.widgets.roomline import RoomLine
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.app.widgets.typing import Typing
from pantry_tui.core.canned import LIDDED
from pantry_tui.core.log.events import Did
from pantry_tui.core.text import counted
from pantry_tui.core.words import Climate
from pantry_tui.errors import BadInput, PantryError
from pantry_tui.services import household
from pantry_tui.services.batchwork import putup, recalled
from pantry_tui.services.rows import Ask, Done
from pantry_tui.services.stock import places

EXAMPLE = "7 pint jars runner beans, pressure canned, {}, yesterday"
ALTITUDE = "How high do you live, in {}? Canning times depend on it. Empty: nobody knows."
#: The same as a metric household types it.
METRIC_EXAMPLE = "7 500 ml jars runner beans, pressure canned, {}, yesterday"
HOW = (
    "Type a line, for example:\n\n  {example}\n\n"
    "How many and in what, the food, how it is kept, the place, the day (today if left out).\n"
    "More may follow: note=..., amount={amount}, minutes=25, {pressure}. "
    "Enter books it, Esc goes back.\n"
    "Tab takes what stands in grey, Up brings earlier lines. A place and a colon (larder:) adds "
    "what stands there, line by line."
)
FROM_BEFORE = (
    "This line is from before and is not booked yet. End goes on with it; what you type now takes "
    "its place (Up brings it back)."
)
OVER = "not used       {at}: the line names {named}\n"
SHELF = (
    "What stands in {place}? One line each: 12 plum jam 2024. A day that is not said is not known. "
    "Another place and a colon goes on there; Esc on an empty line ends."
)


class LineInput(Typing):
    """The line; a paste of several is handed to the screen whole."""

    def _on_paste(self, event: Paste) -> None:
        if len(event.text.strip().splitlines()) > 1:
            event.prevent_default()
            event.stop()
            cast(PutUpScreen, self.screen).pasted(event.text)


class PutUpScreen(Recalls):
    """The line stays as it is until it is booked, whatever else one looks at meanwhile."""

    CSS_PATH = "putup.tcss"
    AUTO_FOCUS = "#line"
    here = "putup"
    BINDINGS = bindings("putup")

    def __init__(self) -> None:
        super().__init__()
        self._idle = ""  # what stands below an empty line; empty: how to write one
        self._asked_altitude = False  # once a sitting
        self._answered = ""  # on the way, and is said with the batch
        self._last = ""  # the line that was booked last
        self._left = False  # for another room, with what was typed
        self._noted = False  # and it was said that it came back
        self._many = ""  # several lines that were pasted, and not yet booked

    def compose(self) -> ComposeResult:
        yield RoomLine(self.here)
        yield Static("Put up", id="heading")
        yield LineInput(id="line", placeholder=self.example, suggester=Offers(self.offered))
        with VerticalScroll(id="below", can_focus=False) as text:
            yield Static(id="reading")
        yield More(text, "Page Down")
        yield KeyLine(self.here)

    @property
    def example(self) -> str:
        """A line that could be booked as it stands: jars in a place of this household."""
        places = self.host.pantry.places.values()
        warm = [one.name for one in places if one.climate in (Climate.PANTRY, Climate.ROOM)]
        example = METRIC_EXAMPLE if self.host.units.metric else EXAMPLE
        return example.format(min(warm, default="larder"))

    def on_screen_resume(self) -> None:
        self.host.catch_up()
        self.reload()
        if self._left and self.line.value.strip():
            self.line.selection = Selection(0, len(self.line.value))
            self.host.tell(FROM_BEFORE)
            self._noted = True
        self._left = False

    def on_screen_suspend(self) -> None:
        """A question over the line does not leave it; another room does."""
        self._left = not isinstance(self.host.screen, ModalScreen)
        if self._left and self.line.value == self.filled:
            self.line.value = ""
        elif self._left:
            self.keep(self.line.value)
        SaidLine.hush(self)

    def action_clear(self) -> None:
        """An empty line."""
        self.line.value = ""

    def action_page(self, by: int) -> None:
        """Read on below, or back, where the reading is longer than its room."""
        below = self.query_one("#below", VerticalScroll)
        below.scroll_relative(y=by * max(below.size.height - 1, 1), animate=False)

    async def action_book(self) -> None:
        """As Enter on the line."""
        await self.line.action_submit()

    def on_resize(self) -> None:
        self.reload()

    @on(Input.Changed, "#line")
    def mended(self) -> None:
        """A line that was refused is another one once it is changed."""
        SaidLine.hush(self, refused=True)
        self.reload()

    def reload(self) -> None:
        """The live reading; without a line, how to write one, or what was put up last."""
        self.query_one(RoomLine).show(self.host.day_text)
        typed = self.line.value.strip()
        if self._noted and not typed:
            self._noted = False
            SaidLine.hush(self)
        self._head(self.line.value)
        bare = not typed or self.line.value == self.filled
        self._say((self._idle or self._how()) if bare else self._reading(typed))

    def _head(self, line: str) -> None:
        """Where it goes, as long as the place that was filled in counts: it stays seen when a long
        line has run out of sight on its left."""
        at, named = self.filled_in(line)
        where = f" in {clip(at, max(20, self.size.width - 14))}" if at and not named else ""
        self.query_one("#heading", Static).update(Content(f"Put up{where}"))

    def _how(self) -> str:
        """How to write a line, in the household's units."""
        if self.shelf in self.host.pantry.places:
            return SHELF.format(place=self.host.pantry.place_paths()[self.shelf])
        if self.host.units.metric:
            return HOW.format(example=self.example, amount="14 kg", pressure="psi=76kPa")
        return HOW.format(example=self.example, amount="30 lb", pressure="psi=11")

    def pasted(self, text: str) -> None:
        """Several lines at once: each with its reading; Enter books all of them or none."""
        self._many = text.strip()
        self.line.value = ""
        from pantry_tui.app.texts import lines_text
        from pantry_tui.services.batchwork.many import read_lines

        try:
            self._idle = lines_text(read_lines(self.host.pantry, self._many))
        except PantryError as error:
            self._many = ""
            self.host.tell(error.message, refused=True)
        self.reload()

    def _put_up_many(self) -> Done:
        from pantry_tui.app.texts import lines_text
        from pantry_tui.services.batchwork.many import put_up_lines

        found = put_up_lines(self.host.pantry, self._many)
        self._idle = lines_text(found)
        self.reload()
        bad = sum(bool(one.why) for one in found)
        if bad:
            raise BadInput(
                f"Nothing was booked: {bad} of {counted(len(found), 'lines')} must be mended."
            )
        self._many = ""
        return Done(f"Put up {counted(len(found), 'batches')}: write the codes on the lids.")

    def _reading(self, line: str) -> str:
        if line.endswith(":"):
            return f"Enter: all lines from here on are of what stands in {line[:-1].strip()}."
        reading = self.read(line)
        at, named = self.filled_in(self.line.value)
        over = OVER.format(at=clip(at, 60), named=clip(named, 60)) if named else ""
        shown, was = self.host.units.rows(reading), self.was(reading.food)
        if reading.problems or reading.unread:
            return over + reading_text(shown, None, was=was)
        try:
            return over + reading_text(shown, putup.preview(self.host.pantry, reading), was=was)
        except PantryError as error:
            return over + reading_text(shown, None, error.message, was)

    def _say(self, text: str) -> None:
        said = self.host.said(text)
        self.query_one("#reading", Static).update(Content(hang(said, self.size.width - 8)))

    @on(Input.Submitted, "#line")
    def book(self, event: Input.Submitted) -> None:
        """Book it; a line that cannot be booked stays to be mended."""
        line = event.value
        if self._many and not line.strip():
            self.host.attempt(self._put_up_many)
        elif line.strip().endswith(":"):
            self._stand_in(line.strip()[:-1].strip())
        elif self._needs_altitude(line):
            self._asked_altitude = True
            title = ALTITUDE.format("metres" if self.host.units.metric else "feet")
            question = TypeLine(title, "900 ft or 300 m", empty=True, accept=self._high)
            then = partial(self.sure_of, line, lambda: self._book(line))
            self.host.push_screen(question, lambda _: then())
        elif line.strip():
            self.sure_of(line, lambda: self._book(line))

    def _stand_in(self, name: str) -> None:
        """The lines from here on are of what stands in that place, which is made if need be."""
        try:
            self.shelf = self.host.pantry.find_place(name).id
        except PantryError as error:
            paths = self.host.pantry.place_paths().values()
            if not name or any(path.casefold().endswith(name.casefold()) for path in paths):
                self.host.tell(error.message, refused=True)
                return

            def made(_near: str | None, like: Climate | None) -> None:
                if like is not None and self._make(name, like):
                    self._stand_in(name)

            ask_place(self.host, Ask("place", name), made)
            return
        self._idle, self._before, self.line.value = "", None, ""
        self.reload()

    def fill_in(self, path: str) -> None:
        """A place that the cursor stood on, at the head of an empty line."""
        if path and not self.line.value.strip():
            self._idle, self.filled, self.filled_at = "", f"{self._short(path)}, ", path
            self.line.value = self.filled
            self.line.cursor_position = len(self.filled)

    def _short(self, path: str) -> str:
        """The name of a place where it alone says which, else its path, as they are typed."""
        leaf = path.rsplit("›", 1)[-1].strip()
        try:
            self.host.pantry.find_place(leaf)
        except PantryError:
            return " ".join(path.replace("›", " ").split())
        return leaf

    def _make(self, name: str, like: Climate) -> bool:
        return self.host.attempt(lambda: places.add(self.host.pantry, name, like.value))

    def _book(self, line: str) -> None:
        place = recalled.place_to_make(self.read(line))
        if place is not None:
            ask_place(self.host, place, lambda near, like: self._book_at(line, place, near, like))
            return
        if self.host.attempt(lambda: self._put_up(line)):
            self.line.value = ""

    def _book_at(self, line: str, place: Ask, near: str | None, like: Climate | None) -> None:
        """With the place that was meant, or one that is made of that name: both in one undo."""
        at = " ".join((near or place.typed).replace("›", " ").split())
        meant = re.sub(re.escape(place.typed), at, line, count=1, flags=re.IGNORECASE)

        def both() -> Done:
            with self.host.pantry.together():
                if like is not None:
                    places.add(self.host.pantry, place.typed, like.value)
                return self._put_up(meant)

        if self.host.attempt(both):
            self.line.value = ""

    def _needs_altitude(self, line: str) -> bool:
        """Whether it is canned with a process, and nobody ever said how high it was done."""
        if self._asked_altitude or self.host.pantry.altitude_ft is not None:
            return False
        reading = self.read(line)
        whole = not (reading.problems or reading.unread)  # or will be, once its place is made
        canned = reading.method in LIDDED and (whole or recalled.place_to_make(reading) is not None)
        return canned and bool(reading.process) and "altitude" not in dict(reading.process)

    def _high(self, typed: str) -> None:
        if typed.strip():
            from pantry_tui.app.screens.first import read_high

            high = read_high(typed, metric=self.host.units.metric)
            household.change(self.host.pantry, high)
            self._answered = f"Noted: {household.say_altitude(high)}. "

    def _put_up(self, line: str) -> Done:
        at, named = self.filled_in(line)
        made = putup.put_up(self.host.pantry, self.read(line))
        self._idle, self._last = booked_text(made), line
        self.remember(line, made)
        noted, self._answered = self._answered, ""
        where = f" It is in {named}, as the line says, and not in {at}." if named else ""
        return Done(f"{noted}Put up {made.code}: {said_of(made)}.{where}")

    def action_undo(self) -> None:
        """Take back the last thing done; the line of a put-up comes back to be mended."""
        from pantry_tui.app.screens.undoing import take_back
        from pantry_tui.services.stock import undo

        last = undo.newest(self.host.pantry)

        def back(_names: frozenset[str]) -> None:
            self._idle = ""
            if last is not None and last.did is Did.PUT_UP and not self.line.value:
                self.line.value, self._last = self._last, ""
                self.line.cursor_position = len(self.line.value)
            self.reload()

        take_back(self.host, back)

    def action_redo(self) -> None:
        from pantry_tui.app.screens.undoing import do_again

        do_again(self.host, lambda _names: self.reload())

    def action_back(self) -> None:
        """Back to where one came from; first out of the place of which the lines are."""
        if self.shelf and not self.line.value:
            self.shelf, self._idle = "", ""
            self.reload()
        else:
            self.host.action_go(self.host.came_from)
