"""Acting on the line under the cursor, or on all that are marked: use, open, move, discard ...

Each act is one call of a service; afterwards the list is read again, the cursor stays on its line
and the list has the keys again.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from pantry_tui.app.format import UNSAFE, clip
from pantry_tui.app.screens.ask import Choose, TypeLine
from pantry_tui.app.screens.finding import FindingScreen
from pantry_tui.app.screens.page import Page
from pantry_tui.app.texts import sign_text
from pantry_tui.app.widgets.rowtable import Line
from pantry_tui.core.words import Rating
from pantry_tui.errors import Refused
from pantry_tui.services.books import rating as taste
from pantry_tui.services.lookup import signs
from pantry_tui.services.rows import Done
from pantry_tui.services.stock import act, reserve
from pantry_tui.services.stock.pick import name_of

#: One key each; the last asks for words of one's own.
REASONS = (
    "past its date",
    "seal failed",
    "bulging, leaking or spurting",
    "mould",
    "smells or looks wrong",
    "soft, slimy or rotten",
    "thawed by mistake",
    "frost or dried out",
    "nobody would eat it",
    "another reason ...",
)

NO_STOCK = "Put the cursor on a line of stock first."


class ActingScreen(FindingScreen):
    """A list whose lines stand for containers."""

    def __init__(self) -> None:
        super().__init__()
        self.marked: set[str] = set()

    @property
    def chosen(self) -> list[Line]:
        """The marked lines, else the one under the cursor."""
        marked = [line for line in self.table.lines if line.key in self.marked and line.ref]
        current = self.table.current
        return marked or ([current] if current is not None and current.ref else [])

    def _refs(self, number: int) -> list[str]:
        """The containers that are meant: one of each chosen line, or `number` of the only one.

        Raises Refused when no line stands for stock or fewer are there.
        """
        lines = self.chosen
        if not lines:
            raise Refused(NO_STOCK)
        row = lines[0].row
        if number == 1 or len(lines) > 1 or row is None:
            return [line.ref for line in lines]
        if number > row.count:
            raise Refused(f"Only {row.count} of {row.code} {row.food} stand here in this state.")
        return list(row.container_ids[:number])

    def _do(self, do: Callable[[str], Done], number: int = 1) -> Done:
        """Do it to what is meant, in one booking; the marks are gone then. Raises PantryError."""
        done = act.several(self.host.pantry, self._refs(number), do)
        self.marked.clear()
        return done

    def _on_line(self, do: Callable[[str], Done], number: int = 1) -> None:
        self.host.attempt(lambda: self._do(do, number))
        self._settle_list()

    def _settle_list(self) -> None:
        self.reload()
        self.set_focus(self.table)

    def action_mark(self) -> None:
        """Mark the line, or take its mark away; the next act is for all that are marked."""
        line = self.table.current
        if line is not None and line.ref:
            self.marked ^= {line.key}
            self.reload()
            self.table.action_cursor_down()

    def action_use(self) -> None:
        """Use one; of a bulk container it asks how much, unless it must not be eaten at all."""
        row = self.chosen[0].row if len(self.chosen) == 1 else None
        if row is not None and row.amount and row.verdict not in UNSAFE:
            self._ask_act(
                f"How much of the {row.amount}? Leave it empty to use it all up. "
                f"({clip(row.food, 40)})",
                "2 lb",
                lambda typed: self._do(lambda ref: act.use(self.host.pantry, ref, typed or None)),
                empty=True,
            )
        else:
            self._on_line(lambda ref: act.use(self.host.pantry, ref))

    def action_give(self) -> None:
        """To whom, in words; they are named when a batch is recalled."""
        lines = self.chosen
        count = lines[0].row.count if len(lines) == 1 and lines[0].row else 1
        more = f" Of the {count}, 3 Aunt Sunniva gives her three." if count > 2 else ""
        if lines:
            self._ask_act(f"Give away {about(lines)}: to whom?{more}", "Aunt Sunniva", self._give)
        else:
            self.host.tell(NO_STOCK, refused=True)

    def _give(self, typed: str) -> Done:
        number, to = counted(typed)
        return self._do(lambda ref: act.give(self.host.pantry, ref, to=to), number)

    def action_keep(self) -> None:
        """For whom, in words; what is kept already is free again."""
        lines = self.chosen
        if any(line.row is not None and line.row.reserved for line in lines):
            self._on_line(lambda ref: reserve.free(self.host.pantry, ref))
        elif lines:
            self._ask_act(
                f"Keep {about(lines)} apart: for whom? Empty means a gift.",
                "Aunt Sunniva",
                self._keep,
                empty=True,
            )
        else:
            self.host.tell(NO_STOCK, refused=True)

    def _keep(self, whom: str) -> Done:
        return self._do(lambda ref: reserve.reserve(self.host.pantry, ref, words=whom or "gift"))

    @property
    def tasted_ref(self) -> str:
        """The batch that was tasted: that of the line."""
        line = self.table.current
        return line.ref if line else ""

    def action_taste(self) -> None:
        """How it was, by one key, then a note."""
        ref = self.tasted_ref.partition("/")[0]
        if not ref:
            self.host.tell(NO_STOCK, refused=True)
            return

        def note(said: str) -> None:
            self._ask_act(
                f"{ref}, {said}: a note for next year, or none.",
                "less salt",
                lambda words: taste.taste(self.host.pantry, ref, said, words),
                empty=True,
            )

        self.app.push_screen(Choose(f"How was {ref}?", list(Rating)), given(note))

    def action_lose(self) -> None:
        self._on_line(lambda ref: act.lose(self.host.pantry, ref))

    def action_open(self) -> None:
        self._on_line(lambda ref: act.open_(self.host.pantry, ref))

    def action_thaw(self) -> None:
        self._on_line(lambda ref: act.thaw(self.host.pantry, ref))

    def action_done(self) -> None:
        """A working batch is done: all of it that still works."""
        self._on_line(lambda ref: act.finish(self.host.pantry, ref.partition("/")[0]))

    def action_undo(self) -> None:
        """Take back the last thing done; the cursor goes to what is back, to do it otherwise."""
        pantry = self.host.pantry
        last = pantry.last_standing()
        if self.host.attempt(lambda: act.undo(pantry)) and last is not None:
            self.reload()
            back = {
                name_of(pantry, pantry.stock.containers[id_])
                for id_ in last.containers
                if id_ in pantry.stock.containers
            }
            self.table.go_to(
                lambda one: one.row is not None and not back.isdisjoint(one.row.container_ids)
            )

    def action_move(self) -> None:
        """Where to, by one key."""
        paths = sorted(self.host.pantry.place_paths().values(), key=str.lower)
        self._ask("Move to which place?", paths, self._move)

    def _move(self, to: str, number: int) -> None:
        self._on_line(lambda ref: act.move(self.host.pantry, ref, to), number)

    def action_discard(self) -> None:
        """Why, by one key."""
        self._ask("Discard: why?", REASONS, self._discard)

    def _discard(self, why: str, number: int) -> None:
        if why == REASONS[-1]:
            self._ask_act(
                "Discard: why?", "what is wrong with it", lambda words: self._thrown(words, number)
            )
            return
        self.host.attempt(lambda: self._thrown(why, number))
        self._settle_list()

    def _thrown(self, why: str, number: int) -> Done:
        return self._do(lambda ref: act.discard(self.host.pantry, ref, why=why), number)

    def action_sign(self) -> None:
        """What is seen, smelled or heard; the verdict and the disposal follow at once."""
        line = self.table.current
        if line is None or not line.ref:
            self.host.tell(NO_STOCK, refused=True)
            return
        words = signs.possible_words(self.host.pantry, line.ref)
        title = f"What do you see? ({about([line])})"
        self.app.push_screen(Choose(title, words), given(lambda got: self._sign(line.ref, got)))

    def _sign(self, ref: str, words: str) -> None:
        said = signs.mark(self.host.pantry, ref, words)
        self.reload()
        self.app.push_screen(Page(sign_text(said)))

    # -- asking ----------------------------------------------------------------------------------

    def _ask(self, title: str, options: Sequence[str], then: Callable[[str, int], None]) -> None:
        """One of `options` for the chosen lines, and for how many of the only one."""
        lines = self.chosen
        if not lines or not options:
            self.host.tell(NO_STOCK, refused=True)
            return
        row = lines[0].row
        most = row.count if len(lines) == 1 and row is not None else 1
        question = Choose(f"{title} ({about(lines)})", options, most)
        self.app.push_screen(question, given(lambda got: then(got, question.number)))

    def _ask_act(
        self, title: str, example: str, do: Callable[[str], Done], *, empty: bool = False
    ) -> None:
        """Ask for a line and do what it says; a line that cannot be done stays to be mended."""
        done: list[Done] = []

        def accept(typed: str) -> None:
            done.append(do(typed))

        def answered(_typed: str) -> None:
            self.host.report(done[-1])
            self._settle_list()

        self.app.push_screen(TypeLine(title, example, empty=empty, accept=accept), given(answered))


def about(lines: Sequence[Line]) -> str:
    """What a question is about: `7C/4 strawberry jam`, or `3 marked lines`."""
    if len(lines) != 1:
        return f"{len(lines)} marked lines"
    return clip(f"{lines[0].ref} {lines[0].row.food if lines[0].row else ''}", 40).strip()


def counted(typed: str) -> tuple[int, str]:
    """("3 Aunt Sunniva") -> 3 and whom; (1, "Aunt Sunniva") where no number leads."""
    found = re.match(r"(\d{1,3})\s+(?:to\s+)?(?=\S)", typed)
    return (max(1, int(found[1])), typed[found.end() :]) if found else (1, typed)


def given(then: Callable[[str], None]) -> Callable[[str | None], None]:
    """Calls `then` unless the question was left without an answer."""

    def answered(value: str | None) -> None:
        if value is not None:
            then(value)

    return answered
