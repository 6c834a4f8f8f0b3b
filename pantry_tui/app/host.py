"""What every screen may ask of the app: the pantry, a way to tell, a way to try."""

from __future__ import annotations

from collections.abc import Callable

from textual.app import App

from pantry_tui.app.format import clip
from pantry_tui.errors import PantryError
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Done


class Host(App[None]):
    """The app as the screens see it."""

    def __init__(self, pantry: Pantry) -> None:
        super().__init__()
        self.pantry = pantry

    def tell(self, message: str, *, refused: bool = False) -> None:
        """The only way to a toast: no markup, so any name may be in it."""
        self.notify(
            clip(message, 400),
            severity="error" if refused else "information",
            timeout=8 if refused else 5,
            markup=False,
        )

    def attempt(self, do: Callable[[], Done]) -> bool:
        """Do it and say what was done, or say in one sentence why not."""
        try:
            done = do()
        except PantryError as error:
            self.tell(error.message, refused=True)
            return False
        self.tell(" ".join((done.message, *done.warnings)))
        return True
