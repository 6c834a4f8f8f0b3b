"""Acting on the line under the cursor, or on all that are marked: use, open, move, discard ...

Each act is one call of a service, with what the screen showed; afterwards the list is read again,
the cursor stays on its line and the list has the keys again. What a question is about is settled
when it is asked: another window may change the list while it is open.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, Any

from pantry_tui.app.format import clip
from pantry_tui.app.host import saw
from pantry_tui.app.screens.ask import Choose, TypeLine, ask_line, given
from pantry_tui.app.screens.by_plan import ask_several, offered
from pantry_tui.app.screens.meant import (
    about,
    all_ready,
    counted,
    into,
    pieces_of,
    refs_of,
    said_line,
    told_of,
)
from pantry_tui.app.screens.reasons import REASONS, reasons_for
from pantry_tui.app.widgets.line import Line, stands_for
from pantry_tui.core.text import singular
from pantry_tui.core.words import State
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Done
from pantry_tui.services.stock import act, reserve
from pantry_tui.services.stock.rows import DueRow

if TYPE_CHECKING:
    from pantry_tui.app.screens.acts import Touches

#: A service that does one thing to one container: (pantry, ref, keywords) -> what was done.
Do = Callable[..., Done]

OPEN_ANYWAY = "open it all the same"
MISSING = "missing: book it as gone"

NO_STOCK = "Put the cursor on a line of stock first."


def _asked_of(lines: Sequence[Line]) -> DueRow | None:
    """The row of the only line, where it must be said how much of it is meant: a crate, pieces."""
    row = lines[0].row if len(lines) == 1 else None
    return row if row is not None and (row.loose or pieces_of(row)) else None


class Acting:
    """Does things to the lines of one screen."""

    def __init__(self, screen: Touches) -> None:
        self.screen = screen

    @property
    def pantry(self) -> Pantry:
        return self.screen.host.pantry

    # -- which lines -----------------------------------------------------------------------------

    def chosen(self) -> list[Line]:
        """The marked lines in the order of the list, else the one under the cursor; none, and said
        so, where that stands for no stock."""
        table = self.screen.table
        if self.screen.meant:
            return self._meant()
        places = {table.source.where(key): key for key in self.screen.marked}
        found = [
            line
            for at in sorted(at for at in places if at is not None)
            for line in table.source.lines(at, at + 1)
            if line.key == places[at] and line.ref
        ]
        current = table.current
        lines = found or ([current] if current is not None and current.ref else [])
        if not lines:
            self.screen.host.tell(NO_STOCK, refused=True)
        return lines

    def _meant(self) -> list[Line]:
        """The line on which what was typed stands, for the container that was named."""
        line, ref = self.screen.table.current, self.screen.meant
        if line is None or not stands_for(line, ref):
            self.screen.host.tell(f"{ref} is not here any more.", refused=True)
            return []
        return [replace(line, ref=ref) if "/" in ref else line]

    def mark(self) -> None:
        """Mark the line, or take its mark away; the next act is for all that are marked."""
        line = self.screen.table.current
        if line is not None and line.ref:
            self.screen.marked ^= {line.key}
            self.screen.reload()
            self.screen.table.action_cursor(1)

    # -- doing -----------------------------------------------------------------------------------

    def do(self, lines: Sequence[Line], do: Do, number: int = 1, **more: Any) -> Done:
        """Do it to one container of each line, or to `number` of the only one, in one booking; the
        marks are gone then. Raises PantryError."""
        rows = {line.ref: line.row for line in lines}
        refs = refs_of(lines, number)

        def one(ref: str) -> Done:
            # What was shown of a row holds until the first of it is taken.
            return do(self.pantry, ref, **saw(rows.get(ref), do), **more)

        done = act.several(self.pantry, refs, one)
        self.screen.marked.clear()
        return done

    def _on(self, lines: Sequence[Line], do: Do, number: int = 1, **more: Any) -> None:
        self.screen.host.attempt(lambda: self.do(lines, do, number, **more))
        self.screen.settle_list()

    def use(self) -> None:
        """Use one; of a crate it asks how much, of pieces how many, unless it must not be eaten at
        all."""
        lines = self.chosen()
        if (row := _asked_of(lines)) is not None and row.usable:
            self._ask_much(lines, act.use, "amount", offered(self.screen.planned(lines[0]), row))
        elif lines and (take := self.screen.planned(lines[0])) is not None and take.count > 1:
            ask_several(self, lines[0], take)
        elif lines:
            self._on(lines, act.use)

    def _ask_much(
        self, lines: Sequence[Line], do: Do, name: str, value: str = "", **more: Any
    ) -> None:
        """Ask how much of the only line is meant, which the service takes by `name`; `value` stands
        there already."""

        def drawn(typed: str) -> Done:
            more[name] = typed
            return self.do(lines, do, **more)

        row = lines[0].row
        assert row is not None
        unit, food = row.left.unit, clip(row.food, 40)
        if many := pieces_of(row):
            title = f"How many of the {many}? A number, half, or all. ({food})"
            ask_line(self.screen, title, "2", drawn, value=value or "1")
            return
        example = f"2 {unit}" if unit not in ("", "pieces") else "half"
        whole = row.amount or singular(row.vessel) or "one"
        title = f"How much of the {whole}? An amount, half, 2 servings, or all."
        value = self.screen.host.units.text(value)
        ask_line(self.screen, f"{title} ({food})", example, drawn, value=value)

    def _leaves(self, lines: Sequence[Line], do: Do, number: int = 1, **more: Any) -> None:
        """It leaves otherwise than at table; of a crate or of pieces it asks how much."""
        if _asked_of(lines) is not None:
            self._ask_much(lines, do, "count", **more)
        else:
            self._on(lines, do, number, **more)

    def open(self) -> None:
        """Where a refrigerator that was read too warm takes it in, that is said first."""
        from pantry_tui.services.stock.warm_fridge import said_before

        lines = self.chosen()
        warm = next(filter(None, (said_before(self.pantry, line.ref) for line in lines)), "")
        if warm:
            question = Choose(f"{warm} ({about(lines)})", (OPEN_ANYWAY,), sure=True)
            self.screen.host.push_screen(question, given(lambda _: self._on(lines, act.open_)))
        elif lines:
            self._on(lines, act.open_)

    def thaw(self) -> None:
        if lines := self.chosen():
            self._on(lines, act.thaw)

    def missing(self) -> None:
        """Not there: a second key says so, since that loses it."""
        self._choose(
            "Not there, and nobody knows why?",
            (MISSING,),
            lambda lines, _, number: self._gone(lines, number),
            counts=True,
        )

    def _gone(self, lines: Sequence[Line], number: int) -> None:
        if pieces_of(_asked_of(lines)):
            self._leaves(lines, act.missing)
        else:
            self._on(lines, act.missing, number)

    def ready(self) -> None:
        """A batch in progress is ready: all of it that still is. Of a crock it asks into what."""
        lines = self.chosen()
        row = lines[0].row if len(lines) == 1 else None
        if row is not None and row.loose and row.state is State.IN_PROGRESS:
            ask_line(
                self.screen,
                f"{about(lines)} is ready: into what, how many, where? Empty: it stays in there.",
                "6 quart jars, fridge",
                lambda typed: self.do(lines, into if typed else all_ready, **said_line(typed)),
                empty=True,
            )
        elif lines:
            self._on(lines, all_ready)

    def give(self) -> None:
        """To whom, in words; they are named when a batch is recalled. What may not be given is
        refused before that is asked."""
        if not (lines := self.chosen()):
            return
        act.refuse_gift(self.pantry, [line.ref for line in lines])
        count = lines[0].row.count if len(lines) == 1 and lines[0].row else 1
        more = f" Of the {count}, 3 Aunt Sunniva gives her three." if count > 2 else ""

        def do(typed: str) -> Done:
            number, to = counted(typed)
            return self.do(lines, act.give, number, to=to)

        title = f"Give away {about(lines)}: to whom?{more}"
        if _asked_of(lines) is not None:
            then = given(lambda whom: self._leaves(lines, act.give, to=whom))
            self.screen.host.push_screen(TypeLine(title, "Aunt Sunniva"), then)
        else:
            ask_line(self.screen, title, "Aunt Sunniva", do)

    def reserve(self) -> None:
        """For whom, in words; what is set apart already is free again."""
        lines = self.chosen()
        if any(line.row is not None and line.row.reserved for line in lines):
            self._on(lines, reserve.free)
        elif lines:
            ask_line(
                self.screen,
                f"Set {about(lines)} apart: for whom? Empty means a gift.",
                "Aunt Sunniva",
                lambda whom: self.do(lines, reserve.reserve, words=whom or "gift"),
                empty=True,
            )

    def move(self) -> None:
        """Where to, and how many: `m 3` and the first letters of the place. Where the last ones
        went stands first."""
        paths = sorted(self.pantry.place_paths().values(), key=str.lower)
        last = self.screen.host.moved_to
        paths.sort(key=lambda path: path != last)
        self._choose("Move to which place?", paths, self._move, counts=True)

    def _move(self, lines: Sequence[Line], to: str, number: int) -> None:
        from pantry_tui.app.screens.into_freezer import ask_fresh

        def freeze(do: Callable[[], Done]) -> None:
            if self.screen.host.attempt(do):
                self.screen.marked.clear()
            self.screen.settle_list()

        self.screen.host.moved_to = to
        move = partial(self._on, lines, act.move, number, place=to)
        ask_fresh(self.screen.host, lines, to, number, move, freeze)

    def discard(self) -> None:
        """Why, by one key; what was seen on it stands first."""
        line = self.screen.table.current
        ref = line.ref if line is not None else ""
        self._choose("Discard: why?", reasons_for(self.pantry, ref), self._discard)

    def _discard(self, lines: Sequence[Line], why: str, number: int) -> None:
        if why == REASONS[-1] and _asked_of(lines) is not None:
            then = given(lambda words: self._leaves(lines, act.discard, why=words))
            self.screen.host.push_screen(TypeLine("Discard: why?", "what is wrong with it"), then)
            return
        if why == REASONS[-1]:
            ask_line(
                self.screen,
                "Discard: why?",
                "what is wrong with it",
                lambda words: self.do(lines, act.discard, number, why=words),
            )
            return
        self._leaves(lines, act.discard, number, why=why)

    def _choose(
        self,
        title: str,
        options: Sequence[str],
        then: Callable[[Sequence[Line], str, int], None],
        *,
        counts: bool = False,
    ) -> None:
        """One of `options` for the chosen lines, and for how many of the only one."""
        lines = self.chosen()
        if not lines or not options:
            return
        row = lines[0].row
        most = row.count if len(lines) == 1 and row is not None else 1
        question = Choose(f"{title} ({about(lines)})", options, most, counts=counts)
        answered = given(lambda got: then(lines, got, question.number))
        self.screen.host.push_screen(question, answered)

    def sign(self) -> None:
        """What is seen, smelled or heard; its meaning stands there before anything is booked."""
        line = told_of(self.screen.table.current, self.screen.meant)
        if line is None or not line.ref:
            self.screen.host.tell(NO_STOCK, refused=True)
            return
        from pantry_tui.app.screens.signing import ask_sign

        ask_sign(self.screen, line, about([line]))

    def _batch_of(self, container: str) -> str:
        """Its lid code; "", and said so, where there is no container."""
        ref = container.partition("/")[0]
        if not ref:
            self.screen.host.tell(NO_STOCK, refused=True)
        return ref

    def rate(self, container: str) -> None:
        """How a batch was, by one key, then a note."""
        if ref := self._batch_of(container):
            from pantry_tui.app.screens.of_batch import ask_rating

            ask_rating(self.screen, ref)

    def process(self, container: str) -> None:
        """How a batch was put up: what is recorded stays, but for what is said."""
        if ref := self._batch_of(container):
            from pantry_tui.app.screens.of_batch import ask_process

            ask_process(self.screen, ref)

    def correct(self, container: str) -> None:
        """What was recorded at the put-up is put right, field by field."""
        if ref := self._batch_of(container):
            from pantry_tui.app.screens.records import correct_batch

            correct_batch(self.screen.host, ref, self.screen.reload)

    def timer(self, container: str) -> None:
        """Time the process of a batch, or say what became of the time that runs."""
        if ref := self._batch_of(container):
            from pantry_tui.app.screens.record import ask_timer

            ask_timer(self.screen, ref)
