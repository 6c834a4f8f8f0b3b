"""A count: walk along one place and count. One key where the count agrees."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from textual.binding import Binding

from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column, clip, count_cells, count_columns
from pantry_tui.app.lines import heading
from pantry_tui.app.screens.acts import Touches
from pantry_tui.app.screens.ask import KEYS, Choose, ask_line, digits_of
from pantry_tui.app.screens.count_slips import ask_slips
from pantry_tui.app.screens.page import Page
from pantry_tui.app.texts import difference_text
from pantry_tui.app.widgets.keyline import KeyLine
from pantry_tui.app.widgets.line import Key, Line, Listed, Source
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.core.model import Place
from pantry_tui.errors import Refused
from pantry_tui.services.rows import Done, RoundLine
from pantry_tui.services.stock import count as counts

#: What a count may come to.
BOOK, FORGET = "book these differences", "forget this count"


@dataclass(frozen=True)
class CountKey(Key):
    """Equal containers that are counted together, by the name that the count has for them."""

    name: str


@dataclass(frozen=True)
class WhichKey(Key):
    """A place that may be counted."""

    path: str


#: What stands at the foot while no place is chosen yet: key, word, what it does; the digits of
#: the places stand behind the first.
_WHICH = (
    ("Enter", "counts it", "agree"),
    ("z", "undo", "undo"),
    ("Esc", "leaves", "back"),
    ("?", "more keys", "help"),
    ("q", "quit", "quit"),
)


class Differences(Page, inherit_bindings=False):
    """What differs. Only the key that ended the count books it; a digit or Enter, which count,
    do not."""

    BINDINGS = [
        Binding("f", "dismiss(True)", "book"),
        Binding("escape,enter", "dismiss(None)", "go on counting"),
    ]

    def __init__(self, text: str) -> None:
        super().__init__(text, (("f", BOOK, "True"), ("Esc", "go on counting", "None")))


#: What a digit says on a lot of which nobody counts containers.
WEIGHED = (
    "That is one lot of {}: Enter where it is there, 0 where it is gone. What was taken of it: u, "
    "in the due list."
)
#: What Enter says where no line is left to count.
ALL_COUNTED = "All is counted here: f books it. Backspace takes the count of a line back."


class CountScreen(Touches):
    """Every count is kept at once; the count can be left anywhere and goes on later."""

    here = "count"
    BINDINGS = bindings("count")
    empty = "Nothing is recorded here: + adds what stands here unlisted, f ends the count."

    def __init__(self) -> None:
        super().__init__()
        self.place: Place | None = None
        self._places: dict[str, Place] = {}  # those that may be counted, the next one first
        self._typing = ""  # the line whose count is being typed, digit by digit
        self._typed = 0  # what was typed of it so far
        self._shown = counts.Draft()  # the count as the lines show it
        self._left = 0
        self._weighed: dict[str, str] = {}  # lots that no digit counts, and what is in them

    def on_screen_resume(self) -> None:
        if self.place is None and not counts.next_places(self.host.pantry) and self.is_current:
            self.host.action_go("due")
            self.host.tell("Nothing stands anywhere yet: put something up first.", refused=True)

    def _which(self, columns: tuple[Column, ...]) -> Source:
        """The places, to take one: as lines, so that what was booked last stands beside them, is
        taken back by z, and every room is one key away."""
        paths = self.host.pantry.place_paths()
        known = counts.next_places(self.host.pantry)
        self._places = {paths[one.place.id]: one.place for one in known}
        room = columns[0].width
        digits = (*KEYS, *" " * len(known))
        return Listed(
            [
                heading(WhichKey(path), clip(f"{digit} {path}: {counts.since(one)}", room))
                for digit, path, one in zip(digits, self._places, known, strict=False)
            ]
        )

    def _begin(self, place: Place | None) -> None:
        if place is None:
            return
        self.place = place
        SaidLine.hush(self)
        self._afresh()

    def _afresh(self) -> None:
        """Other lines than before: the cursor goes to where these begin."""
        self.searching = True
        self.reload()
        self.searching = False
        self.set_focus(self.table)

    def _counting(self) -> Place | None:
        """The place that is counted; where none is taken yet it is said."""
        if self.place is None:
            self.host.tell("Take a place first: Enter, or its digit.", refused=True)
        return self.place

    def start(self) -> int:
        """Go on after the line that was counted last."""
        if self.place is None:
            return 0
        at = self.table.source.where(CountKey(counts.draft(self.host.pantry, self.place).at))
        return 0 if at is None else at + 1

    def columns(self, width: int) -> tuple[Column, ...]:
        if self.place is None:
            short = "Count which place?"
            whole = f"{short} The one to count next stands first."
            return (Column("which", whole if width > len(whole) + 4 else short, width - 2),)
        return count_columns(width, longest=self.host.pantry.longest_code, place=self._nested)

    @property
    def _nested(self) -> bool:
        """Whether what is counted stands in places within it too: else no line need say where."""
        within = self.place is not None and self.place.id
        return any(one.parent == within for one in self.host.pantry.places.values())

    def source(self, columns: tuple[Column, ...]) -> Source:
        keys = self.query_one(KeyLine)
        if self.place is None:
            places = self._which(columns)
            keys.instead((_WHICH[0], (digits_of(places.total), "take one", ""), *_WHICH[1:]))
            return places
        keys.usual()
        self._shown = counts.draft(self.host.pantry, self.place)
        found = counts.lines(self.host.pantry, self.place)
        self._left = sum(line.seen is None for line in found)
        self._weighed = {line.key: line.holds for line in found if line.holds}
        return Listed(list(_lines(found, columns)))

    def headline(self) -> str:
        if self.place is None:
            return self.host.day_text
        return f"{self._left} to go in {self.place.name}"

    def headlines(self) -> Sequence[str]:
        return (self.headline(), f"{self._left} to go")

    def say_word(self) -> None:
        self.say("" if self.table.source.total or self.place is None else self.empty)
        if self._line_name != self._typing:
            self._typing = ""

    @property
    def _line_name(self) -> str:
        """The name of the line under the cursor, "" where there is none."""
        line = self.table.current
        return line.key.name if line and isinstance(line.key, CountKey) else ""

    # -- counting --------------------------------------------------------------------------------

    def _count(self, key: str, seen: int) -> bool:
        """Whether it was counted: not where another window counted that line since it was shown."""
        place = self.place
        assert place is not None
        return seen > 999 or self._keeps(
            lambda: counts.count(self.host.pantry, place, key, seen, saw=self._shown)
        )

    def _keeps(self, do: Callable[[], object]) -> bool:
        """Do it with the unfinished count, or say why not; the lines show it as it is then."""
        try:
            do()
        except Refused as error:
            self._typing = ""
            self.host.tell(error.message, refused=True)
            return False
        finally:
            self.reload()
        return True

    def look(self) -> None:
        """Enter: the count agrees, or what was typed stands; on to the next line."""
        line = self.table.current
        if line is not None and isinstance(line.key, WhichKey):
            self._begin(self._places.get(line.key.path))
        if line is None or self.place is None or not isinstance(line.key, CountKey):
            return
        if not self._left and self._line_name != self._typing:
            self.host.tell(ALL_COUNTED)  # and what was counted otherwise stays so
            return
        if self._line_name != self._typing and not self._count(self._line_name, line.number):
            return
        self._typing = ""
        self.table.action_cursor(1)
        if not self._left:
            self.host.tell(ALL_COUNTED)

    def action_digit(self, digit: str) -> None:
        """A digit begins a count on this line; more digits go on with it."""
        name = self._line_name
        if self.place is None:
            self._begin(dict(zip(KEYS, self._places.values(), strict=False)).get(digit))
            return
        if not name:
            return
        typed = (self._typed * 10 if name == self._typing else 0) + int(digit)
        if typed > 1 and (holds := self._weighed.get(name)):
            self.host.tell(WEIGHED.format(holds), refused=True)
            return
        if typed <= 999 and self._count(name, typed):
            self._typing, self._typed = name, typed
            slip = counts.slip(self.host.pantry, self.place, name)
            self.host.tell(slip) if slip else SaidLine.hush(self)

    def action_uncount(self) -> None:
        name, place = self._line_name, self.place
        if name and place is not None:
            self._typing = ""
            self._keeps(lambda: counts.uncount(self.host.pantry, place, name, saw=self._shown))

    def action_undo(self) -> None:
        """The last line counted here; when none is left, the last thing that was booked."""
        place, back = self.place, []
        if place is not None and not self._keeps(
            lambda: back.append(counts.take_back(self.host.pantry, place, saw=self._shown))
        ):
            return
        if not back or back[0] is None:
            super().action_undo()
            return
        done, key = back[0]
        self._typing = ""
        at = self.table.source.where(CountKey(key))
        if at is not None:
            self.table.move_cursor(at)
        self.host.report(done)

    def action_unlisted(self) -> None:
        place = self._counting()
        if place is None:
            return
        title = "What stands here unlisted? The day made may stay unknown."
        example = "2 pint jars peaches, boiling-water canned"

        def add(typed: str) -> Done:
            found = counts.add_find(self.host.pantry, place, typed)
            return Done(f"Stands here unlisted: {found}. f books it, z takes it back.")

        ask_line(self, title, example, add)

    # -- ending ----------------------------------------------------------------------------------

    def action_finish(self) -> None:
        """Show what differs, then book it; where all is counted and agrees, it is booked at
        once."""
        if self._counting() is None or self.place is None:
            return
        saw = counts.draft(self.host.pantry, self.place)
        found = counts.differences(self.host.pantry, self.place)
        if self._left and self._left == self.table.source.total and not found:
            self.host.tell("Count a line first: Enter where it agrees. Esc leaves.", refused=True)
            return
        if not found and not self._left:
            self._end(BOOK, saw)
            return
        page = Differences(difference_text(found, self._left))

        def end(books: bool | None) -> None:
            if books:
                ask_slips(self.host, found, lambda: self._end(BOOK, saw), self._goes_on)
            else:
                self._goes_on()

        self.app.push_screen(page, end)

    def _goes_on(self) -> None:
        """On the lines Enter agreed; on the page it only closes, and must not pass for a yes."""
        self.host.tell("Nothing is booked yet: f and f again books these differences.")

    def action_forget(self) -> None:
        """Begin anew: what was counted so far is let go, asked about since it was typed."""
        if self._counting() is None or self.place is None:
            return
        saw = counts.draft(self.host.pantry, self.place)
        title = f"Forget all that was counted in {self.place.name}? Nothing of it is booked."
        question = Choose(title, [FORGET], sure=True)
        self.app.push_screen(question, lambda got: self._end(got, saw))

    def _end(self, got: str | None, saw: counts.Draft) -> None:
        place = self.place
        if got is None or place is None:
            return
        finish = counts.finish if got == BOOK else counts.give_up
        if self.host.attempt(lambda: finish(self.host.pantry, place, saw=saw)):
            self.place = None
            self._afresh()
        else:
            self.reload()

    def action_back(self) -> None:
        """Leave, to where one came from; the counts are kept. Who comes back stands on the place to
        count next."""
        if self.place is not None:
            self.place = None
            self._afresh()
        self.host.action_go(self.host.came_from)


def _lines(found: Iterable[RoundLine], columns: Sequence[Column]) -> Iterable[Line]:
    """One line a group of equal containers, with what is expected and what was counted."""
    for one in found:
        cells = tuple((text, "") for text in count_cells(one, columns))
        yield Line(CountKey(one.key), cells, one.first, number=one.expected)
