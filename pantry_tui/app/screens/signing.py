"""A sign: what is seen, what it means, and only then the booking of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.app.host import saw
from pantry_tui.app.screens.ask import Choose, TypeLine, given
from pantry_tui.app.screens.page import Decide, Page
from pantry_tui.app.texts import sign_text
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.safety.signs import also_said
from pantry_tui.core.text import begun
from pantry_tui.errors import PantryError
from pantry_tui.services.lookup import signs
from pantry_tui.services.rows import Done, SignAnswer

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

    def ask(self, about: str) -> None:
        known = signs.to_choose(self.host.pantry, self.line.ref)
        options = {_shown(one): one.words for one in known} | {OTHER: OTHER, UNSURE: UNSURE}
        question = Choose(
            f"What do you see, smell or hear? ({about}) Letters find it.",
            list(options),
            note=CAUTION,
            same=also_said,
            stays=OTHER,
        )
        self.host.push_screen(question, given(lambda got: self._got(options[got])))

    def _got(self, words: str) -> None:
        if words == OTHER:
            question = TypeLine("What do you see, smell or hear?", "lid popped", accept=self._weigh)
            self.host.push_screen(question, given(self._show))
        elif words == UNSURE:
            self.host.push_screen(Page(f"{begun(UNSURE)}\n\n{UNSURE_SAYS}\n\n{CAUTION}"))
        else:
            self._show(words)

    def _weigh(self, words: str) -> SignAnswer:
        return signs.weigh(self.host.pantry, self.line.ref, words)

    def _show(self, words: str) -> None:
        """What it means; Enter books it."""
        self.words = words
        try:
            said = self._weigh(words)
        except PantryError as error:
            self.host.tell(error.message, refused=True)
            return
        self.host.push_screen(Decide(sign_text(said)), self._decided)

    def _decided(self, yes: bool | None) -> None:
        if not yes:
            self.host.tell("Nothing was recorded.")
            return
        row = self.line.row

        def do() -> Done:
            said = signs.mark(self.host.pantry, self.line.ref, self.words, **saw(row, signs.mark))
            return Done(f"{said.code}: {said.sign}: {said.verdict}.")

        self.host.attempt(do)
        self.screen.settle_list()


def _shown(one: signs.Choice) -> str:
    """A sign that changes nothing says so."""
    return f"{one.words} (harmless)" if one.harmless else one.words


def ask_sign(screen: Touches, line: Line, about: str) -> None:
    """Ask what shows on the container of a line, say what it means, and book it on Enter."""
    _Signing(screen, line).ask(about)
