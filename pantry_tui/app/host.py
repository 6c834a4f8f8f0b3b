"""What every screen may ask of the app: the pantry, a way to tell, a way to try."""

from __future__ import annotations

from collections.abc import Callable

from pantry_tui.app.format import clip, week_day
from pantry_tui.app.inturn import InTurn
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.errors import PantryError
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Done


class Host(InTurn):
    """The app as the screens see it."""

    def __init__(self, pantry: Pantry) -> None:
        super().__init__()
        self.pantry = pantry

    @property
    def day_text(self) -> str:
        """Today in words, without the year: `Wed 25 Nov`."""
        return week_day(self.pantry.today)

    def action_go(self, room: str) -> None:
        """Show a room of the app."""
        raise NotImplementedError

    def show_batch(self, ref: str) -> None:
        """Show the batch of a lid code or container."""
        raise NotImplementedError

    def tell(self, message: str, *, refused: bool = False) -> None:
        """Say it on the screen's own line, which hides no stock; a toast where it has none.

        The only way to either: no markup, so any name may be in it.
        """
        text = clip(f"Not done: {message}" if refused else message, 400)
        lines = self.screen.query(SaidLine)
        if lines:
            lines.first().say(text, refused)
        else:
            self.notify(text, severity="error" if refused else "information", markup=False)

    def attempt(self, do: Callable[[], Done]) -> bool:
        """Do it and say what was done, or say in one sentence why not."""
        try:
            done = do()
        except PantryError as error:
            self.tell(error.message, refused=True)
            return False
        self.report(done)
        return True

    def report(self, done: Done) -> None:
        """Say what was done, and what else should be known."""
        self.tell(" ".join((done.message, *done.warnings)))
