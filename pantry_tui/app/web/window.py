"""One window of the app for one browser.

    python -m pantry_tui.app.web.window STORE [DAY [MINUTE]]

Started by the server alone, which speaks with it through its standard input and output.
"""

from __future__ import annotations

import os
import sys
from datetime import date
from pathlib import Path

from textual.drivers.web_driver import WebDriver
from textual.widgets import Input

from pantry_tui.app import main as main_of_app
from pantry_tui.app.main import PantryApp
from pantry_tui.app.widgets.codebar import CodeBar
from pantry_tui.core.text import clean
from pantry_tui.errors import PantryError
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.store.copies import daily

#: Seconds between two looks at whether the server still lives, and at what has the keys.
LOOKS_EVERY = 1.0
TYPES_EVERY = 0.1
#: What the window says to the page: whether a line is typed in it now.
TYPES = "types"


class WindowApp(PantryApp):
    """The app, which ends when the server that started it is gone: nobody looks at it then."""

    # The screen library looks for it beside the file of the class.
    CSS_PATH = str(Path(main_of_app.__file__).with_name("app.tcss"))
    # Half blocks leave gaps between the lines of a browser; lines that join do not.
    CSS = """
    TypeLine Input, PutUpScreen Input { border: round $border-blurred; }
    TypeLine Input:focus, PutUpScreen Input:focus { border: round $border; }
    """

    def __init__(self, pantry: Pantry) -> None:
        super().__init__(pantry, served=True)
        self._server = os.getppid()
        self._typed = False

    def on_mount(self) -> None:
        self.set_interval(LOOKS_EVERY, self._leave_alone)
        self.set_interval(TYPES_EVERY, self._tell_typed)

    def _tell_typed(self) -> None:
        """A phone has no keyboard until one is needed."""
        typed = isinstance(self.focused, Input | CodeBar)
        if typed != self._typed and isinstance(self._driver, WebDriver):
            self._typed = typed
            self._driver.write_meta({"type": TYPES, "typed": typed})

    def _leave_alone(self) -> None:
        if os.getppid() != self._server:
            self.exit()


def words(path: Path, clock: Clock) -> list[str]:
    """The words that start a window on this store, seen by this clock."""
    told = [] if clock.day is None else [clock.day.isoformat()]
    told += [] if clock.minute is None else [str(clock.minute)]
    return [sys.executable, "-m", "pantry_tui.app.web.window", str(path.absolute()), *told]


def main(typed: list[str]) -> int:
    day = date.fromisoformat(typed[1]) if len(typed) > 1 else None
    minute = int(typed[2]) if len(typed) > 2 else None
    path = Path(typed[0])
    try:
        with open_pantry(path, Clock(day, minute, typed=True)) as pantry:
            app = WindowApp(pantry)
            app.run()
            if pantry.store.booked:
                daily(path)
    except PantryError as error:
        print(clean(error.message), file=sys.stderr)
        return error.code
    return app.return_code or 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
