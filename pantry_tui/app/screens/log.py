"""What was done, the last on top; undo takes back the last that stands."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column, clip
from pantry_tui.app.screens.acts import Undoes
from pantry_tui.app.screens.finds import Finds
from pantry_tui.app.widgets.keyline import KeyLine
from pantry_tui.app.widgets.line import Key, Line, Source
from pantry_tui.core.log.events import Did
from pantry_tui.services.books.logbook import NAMES, Shown, log_window
from pantry_tui.services.pantry import Pantry

#: What of no batch is put right by itself.
_PUT_RIGHT = (Did.READING, Did.OUTAGE)


@dataclass(frozen=True)
class LogKey(Key):
    """A line of the log by its number among those that hold the words, the oldest first."""

    words: str
    number: int
    id: str = ""


class LogScreen(Undoes, Finds):
    """Nothing is ever deleted: what was taken back says so."""

    here = "log"
    BINDINGS = bindings("log")
    empty = "Nothing was done yet: press p and put something up."

    _ends = -1  # how many lines there were

    def on_screen_resume(self) -> None:
        """The last thing that was done stands on top, and is what one comes for: only where nothing
        was done since is the cursor still where it was. The list is read again after this."""
        newest = log_window(self.host.pantry, 0, 0, text=self.sought)[0]
        self.searching, self._ends = newest != self._ends, newest
        self.call_after_refresh(self._found)

    def _found(self) -> None:
        self.searching = False

    def columns(self, width: int) -> tuple[Column, ...]:
        return (Column("what", "what was done", max(20, width - 2)),)

    def source(self, columns: tuple[Column, ...]) -> Source:
        return LogLines(self.host.pantry, self.sought, columns[0].width - 1)

    @property
    def current(self) -> Shown | None:
        """What the line under the cursor says."""
        line, lines = self.table.current, self.table.source
        if line is None or not isinstance(line.key, LogKey) or not isinstance(lines, LogLines):
            return None
        return lines.shown.get(line.key.number)

    def say_word(self) -> None:
        """No key is named that would put right what cannot be."""
        super().say_word()
        one = self.current
        self.not_now = frozenset(() if one is None or may_be_put_right(one) else ("correct",))
        self.query_one(KeyLine).without(self.not_now)

    def look(self) -> None:
        """The whole batch of the line; of what is about none, all that is said of it."""
        one = self.current
        if one is None or one.code:
            super().look()
        else:
            said = leads(one).replace("w puts", "On its line w puts")
            self.host.show_page(f"{one.text}.\n\n{said}Its id: {one.id[-NAMES:]}.")

    def action_correct(self) -> None:
        """What the line says is put right: a reading, a power cut, the record of its batch."""
        from pantry_tui.app.screens.putright import put_act_right

        line = self.table.current
        if line is not None and isinstance(line.key, LogKey):
            put_act_right(self.host, line.key.id, line.ref, self.reload)


def may_be_put_right(one: Shown) -> bool:
    """Whether w does anything with it: not with what was taken back."""
    return not one.undone and (bool(one.code) or one.kind in _PUT_RIGHT)


def leads(one: Shown) -> str:
    """What there is to do with a line."""
    back = "It was taken back and does not count. " if one.undone else ""
    if one.code:
        return f"{back}Enter shows {one.code} whole. "
    return back or ("w puts it right. " if one.kind in _PUT_RIGHT else "This is about no batch. ")


class LogLines:
    """The log from its end, some lines at a time."""

    def __init__(self, pantry: Pantry, text: str, width: int) -> None:
        self._pantry, self._text, self._width = pantry, text, width
        self.total = log_window(pantry, 0, 0, text=text)[0]
        self.shown: dict[int, Shown] = {}  # what is painted, by its number

    def lines(self, start: int, stop: int) -> Sequence[Line]:
        start, stop = max(start, 0), min(stop, self.total)
        if stop <= start:
            return ()
        first = self.total - stop
        _, found = log_window(self._pantry, first, self.total - start, text=self._text)
        numbered = reversed(list(enumerate(found, first)))
        return [self._line(number, one) for number, one in numbered]

    def _line(self, number: int, one: Shown) -> Line:
        whole = "" if len(one.text) <= self._width else f"{one.text}. "
        self.shown[number] = one
        key = LogKey(self._text, number, one.id)
        word = f"{whole}{leads(one)}Its id: {one.id[-NAMES:]}."
        return Line(key, ((clip(one.text, self._width), ""),), one.code, word=word)

    def where(self, key: Key) -> int | None:
        if isinstance(key, LogKey) and key.words == self._text and key.number < self.total:
            return self.total - 1 - key.number
        return None

    def find(self, ref: str) -> int | None:
        """A lid code typed here shows its batch: that says more than the last line about it."""
        return None
