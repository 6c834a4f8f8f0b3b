"""The app: rooms, palette, help. All work is in the screens' services."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from datetime import date
from functools import partial
from pathlib import Path

from textual.app import SystemCommand
from textual.binding import Binding
from textual.screen import Screen

from pantry_tui.app import commands
from pantry_tui.app.bindings import keymap
from pantry_tui.app.host import Host
from pantry_tui.app.theme import THEME
from pantry_tui.errors import PantryError
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.stock.pick import batch_named
from pantry_tui.settings import read_settings


class PantryApp(Host):
    """The due list first; other rooms are loaded when they are first asked for."""

    TITLE = "pantry-tui"
    BINDINGS = [Binding("ctrl+q", "quit", "quit", show=False, priority=True)]
    COMMAND_PALETTE_BINDING = "ctrl+p"
    # On a very low screen the list keeps the room, and no picture stands in the palette.
    VERTICAL_BREAKPOINTS = [(0, "-low"), (16, "-high")]
    CSS = """
    SearchIcon { display: none; }
    Screen.-low KeyLine, Screen.-low #word { max-height: 1; }
    Screen.-low SaidLine { max-height: 2; }
    """

    def __init__(self, pantry: Pantry) -> None:
        super().__init__(pantry)
        self._first_day = pantry.today
        self._started = date.today()
        self._rooms: dict[str, Screen[None]] = {}

    def on_mount(self) -> None:
        self.animation_level = "none"
        self.register_theme(THEME)
        self.theme = THEME.name
        mine = read_settings()
        keys, wrong = keymap(mine.keys)
        self.set_keymap(keys)
        for sentence in (*mine.wrong, *wrong):
            self.call_after_refresh(self.tell, sentence, refused=True)
        self.push_screen(self._room("due"))
        self.set_interval(60, self._turn_day)
        if not self.pantry.events:
            from pantry_tui.app.screens.first import greet

            self.call_after_refresh(greet, self)

    def _turn_day(self) -> None:
        """A night passes while the app stands open: tomorrow's verdicts must not be today's."""
        today = self._first_day + (date.today() - self._started)
        if today != self.pantry.today:
            self.pantry.today = today
            self._reload()

    def _reload(self) -> None:
        reload: Callable[[], None] | None = getattr(self.screen, "reload", None)
        if reload is not None:
            reload()

    def _room(self, name: str) -> Screen[None]:
        """The one screen of a room; what was typed there stays."""
        if name not in self._rooms:
            self._rooms[name] = _make(name)
            self.install_screen(self._rooms[name], name)
        return self._rooms[name]

    def action_go(self, room: str) -> None:
        """Show a room; from a batch, the batch is left."""
        here = self._room(room)
        if self.screen is here:
            return
        while len(self.screen_stack) > 2:
            self.pop_screen()
        self.switch_screen(here)

    def show_batch(self, ref: str) -> None:
        from pantry_tui.app.screens.batch import BatchScreen

        try:
            code = batch_named(self.pantry, ref).code
        except PantryError as error:
            self.tell(error.message, refused=True)
        else:
            self.push_screen(BatchScreen(code))

    @property
    def _here(self) -> str:
        return str(getattr(self.screen, "here", "due"))

    def action_keys(self) -> None:
        """All keys of the present screen."""
        from pantry_tui.app.screens.page import Page, keys_of

        self.push_screen(Page(keys_of(self._here)))

    def get_system_commands(self, screen: Screen[object]) -> Iterable[SystemCommand]:
        """The palette offers the command table and nothing else."""
        for command in commands.palette(str(getattr(screen, "here", "due"))):
            namespace = self if command.action.startswith("app.") else screen
            do = partial(self.run_action, command.action, default_namespace=namespace)
            title = f"{command.word.capitalize()} ({command.keys})"
            yield SystemCommand(title, command.tip, do)


def _make(name: str) -> Screen[None]:
    if name == "shelves":
        from pantry_tui.app.screens.shelves import ShelvesScreen

        return ShelvesScreen()
    if name == "week":
        from pantry_tui.app.screens.week import WeekScreen

        return WeekScreen()
    if name == "outlook":
        from pantry_tui.app.screens.outlook import OutlookScreen

        return OutlookScreen()
    if name == "log":
        from pantry_tui.app.screens.log import LogScreen

        return LogScreen()
    if name == "round":
        from pantry_tui.app.screens.count import RoundScreen

        return RoundScreen()
    if name == "putup":
        from pantry_tui.app.screens.putup import PutUpScreen

        return PutUpScreen()
    from pantry_tui.app.screens.due import DueScreen

    return DueScreen()


def run(path: Path, today: date) -> int:
    """The app on the store at `path`. Raises StoreError before anything is painted."""
    with open_pantry(path, today) as pantry:
        PantryApp(pantry).run()
    return 0
