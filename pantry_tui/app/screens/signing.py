"""A sign: what is seen, what it means, and only then the booking of it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from pantry_tui.app.host import saw
from pantry_tui.app.rowtext import next_step
from pantry_tui.app.screens.ask import Choose, TypeLine, given
from pantry_tui.app.screens.page import Decide, Page
from pantry_tui.app.texts import sign_text
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.safety.signs import also_said
from pantry_tui.core.text import begun
from pantry_tui.errors import PantryError
from pantry_tui.services.lookup import signs
from pantry_tui.services.rows import Done, SignAnswer
from pantry_tui.services.stock.view import rows_named

if TYPE_CHECKING:
    from pantry_tui.app.screens.acts import Touches
    from pantry_tui.app.widgets.line import Line

OTHER = "something else: describe it"
UNSURE = "still unsure"
UNSURE_SAYS = (
    "Do not taste it, and do not serve it. What cannot be told is thrown away: d discards it, with "
    "a reason; how to throw it away safely stands there. Leave a closed jar closed."
)


class _Signing:
    """One line, from the question to the booking."""

    def __init__(self, screen: Touches, line: Line) -> None:
        self.screen, self.host, self.line = screen, screen.host, line
        self.words = ""
        # The line of a count has no row of its own.
        self.row = line.row or rows_named(self.host.pantry, {line.ref}).get(line.ref)
        self.refs: Sequence[str] = (line.ref,)  # the containers that show it
        # By its number; in the picture each has a cell of its own.
        self._named = "/" in screen.meant or screen.here == "picture"

    def ask(self, about: str) -> None:
        known = {_shown(one): one for one in signs.to_choose(self.host.pantry, self.line.ref)}
        question = Choose(
            f"What do you see, smell or hear? ({about}) Letters find it.",
            [*known, OTHER, UNSURE],
            note=CAUTION,
            same=also_said,
            stays=OTHER,
            rank=lambda one: known[one].danger if one in known else len(known),
        )

        def chosen(got: str) -> None:
            self._got(known[got].words if got in known else got, question.unfound)

        self.host.push_screen(question, given(chosen))

    def _got(self, words: str, typed: str) -> None:
        """`typed`: letters that found no sign, to be gone on with."""
        if words == OTHER:
            title = "What do you see, smell or hear?"
            question = TypeLine(title, "lid popped", typed, accept=self._weigh)
            self.host.push_screen(question, given(self._which))
        elif words == UNSURE:
            self.host.push_screen(Page(f"{begun(UNSURE)}\n\n{UNSURE_SAYS}\n\n{CAUTION}"))
        else:
            self._which(words)

    def _which(self, words: str) -> None:
        """On which it is, where several stand on the line and none of them was named."""
        self.words = words
        many = self.row.container_ids if self.row is not None else ()
        if len(many) < 2 or self._named:
            self._show()
            return
        title = (
            f"Which of the {len(many)} shows it? Where several do: + for how many, then the first"
        )
        question = Choose(title, many, len(many))

        def named(first: str) -> None:
            at = many.index(first)
            self.refs = [*many[at:], *many[:at]][: question.number]
            self._show()

        self.host.push_screen(question, given(named))

    def _weigh(self, words: str) -> SignAnswer:
        return signs.weigh(self.host.pantry, self.refs[0], words)

    def _show(self) -> None:
        """What it means; Enter books it."""
        try:
            said = self._weigh(self.words)
        except PantryError as error:
            self.host.tell(error.message, refused=True)
            return
        self.host.push_screen(Decide(sign_text(said, self.refs)), self._decided)

    def _decided(self, yes: bool | None) -> None:
        if not yes:
            self.host.tell("Nothing was recorded.")
            return
        booked = self.host.attempt(self._mark)
        self.screen.settle_list()
        if booked:  # on what shows it, so that the next key is for it and no sister
            self.screen.show_line(self.refs[0])

    def _mark(self) -> Done:
        """With the key that discards it, where it must not be eaten and the screen has one."""
        done = signs.mark_all(
            self.host.pantry, self.refs, self.words, **saw(self.row, signs.mark_all)
        )
        row = rows_named(self.host.pantry, {self.refs[0]}).get(self.refs[0])
        if row is None or row.verdict not in UNFIT or not hasattr(self.screen, "action_discard"):
            return done
        return replace(done, message=f"{done.message} Next: {next_step(row)}.")


def _shown(one: signs.Choice) -> str:
    """A sign that changes nothing says so."""
    return f"{one.words} (harmless)" if one.harmless else one.words


def ask_sign(screen: Touches, line: Line, about: str) -> None:
    """Ask what shows on the container of a line, say what it means, and book it on Enter."""
    _Signing(screen, line).ask(about)
