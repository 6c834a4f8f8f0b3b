"""The app: rooms, palette, help. All work is in the screens' services."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable
from datetime import date
from functools import partial
from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING

from textual.app import App
from textual.binding import Binding
from textual.events import Key
from textual.screen import Screen

from pantry_tui.app import commands
from pantry_tui.app.endings import WRONG, heed_signals
from pantry_tui.app.host import Host
from pantry_tui.app.screens.due import DueScreen
from pantry_tui.app.screens.listing import ListScreen
from pantry_tui.app.theme import OURS, wanted_theme
from pantry_tui.app.whereabouts import Whereabouts, leave, left_at
from pantry_tui.core.text import begun
from pantry_tui.errors import PantryError, Refused
from pantry_tui.services.clock import Clock
from pantry_tui.services.stock.ready import run_out
from pantry_tui.settings import read_settings

if TYPE_CHECKING:
    from textual.app import SystemCommand

    from pantry_tui.services.pantry import Pantry

#: Where the rooms are that are loaded when they are first asked for.
ROOMS = {
    "shelves": ("shelves", "ShelvesScreen"),
    "week": ("week", "WeekScreen"),
    "outlook": ("outlook", "OutlookScreen"),
    "log": ("log", "LogScreen"),
    "count": ("count", "CountScreen"),
    "putup": ("putup", "PutUpScreen"),
}

#: What is left for the room that one came from.
_LEFT = frozenset({"putup", "count"})
#: What the commonest keys need, loaded one after the other once the first screen stands.
SOON = (
    "screens.acting",
    "screens.undoing",
    "widgets.findbar",
    "screens.shelves",
    "screens.page",
    "screens.batch",
)
SOON_AFTER = 0.3

#: Seconds between two looks at what other windows have written, and at the day.
LOOKS_EVERY = 1.0


class PantryApp(Host):
    """The due list first; other rooms are loaded when they are first asked for."""

    TITLE = "pantry-tui"
    BINDINGS = [Binding("ctrl+q", "quit", "quit", show=False, priority=True)]
    COMMAND_PALETTE_BINDING = "ctrl+p"
    # On a very low screen the list keeps the room, and no picture stands in the palette.
    VERTICAL_BREAKPOINTS = [(0, "-low"), (16, "-high")]
    CSS_PATH = "app.tcss"

    def __init__(self, pantry: Pantry, *, served: bool = False) -> None:
        """`served`: it is looked at in a browser, perhaps from another machine, so it reaches no
        file of this one but the store."""
        super().__init__(pantry)
        self.served = served
        self._copied_on: date | None = None
        self._told, self._began = pantry.clock, Clock().recorded
        self._day, self._minute = pantry.today, 0
        self._rooms: dict[str, Screen[None]] = {}
        # Before anything is styled: a theme that is set later styles all of it again.
        for one in OURS:
            self.register_theme(one)
        self.settings = read_settings()
        self.set_reactive(App.theme, wanted_theme(self.settings.theme, os.environ))
        self.stylesheet.set_variables(self.get_css_variables())

    def get_default_screen(self) -> Screen[None]:
        """The first screen is the due list itself, so that only one is built and painted."""
        return self._room("due")

    def on_mount(self) -> None:
        self.animation_level = "none"
        if not self.is_headless:
            heed_signals(self)
        self._take_settings()
        for sentence in self.pantry.store.told:
            self.call_after_refresh(self.tell, sentence)
        self.set_interval(LOOKS_EVERY, self.look_around)
        self._soon = list(SOON)
        self.set_timer(SOON_AFTER, self._load_next)
        self.call_after_refresh(self._go_back)
        if self.pantry.is_new:
            from pantry_tui.app.screens.first import greet

            self.call_after_refresh(greet, self)

    def _go_back(self) -> None:
        """To where the app was left today, so that a slip of the quit key costs nothing."""
        there = left_at(self.pantry.path, self.pantry.today)
        if there is None or len(self.screen_stack) > 1:
            return
        if there.room in ROOMS:
            self.action_go(there.room)
        here = self.screen
        if there.ref and isinstance(here, ListScreen):
            here.call_after_refresh(here.show_line, there.ref)  # its list comes first

    async def action_quit(self) -> None:
        """Leave; everything is booked already, and the next start today is here again."""
        here = self._here
        line = self.screen.table.current if isinstance(self.screen, ListScreen) else None
        there = Whereabouts(here if here in ROOMS else "due", line.ref if line else "")
        leave(self.pantry.path, self.pantry.today, there)
        self.exit()

    def _load_next(self) -> None:
        """Load one module while nobody waits; a key that comes meanwhile waits for one at most."""
        if self._soon:
            import_module(f"pantry_tui.app.{self._soon.pop(0)}")
            self.set_timer(SOON_AFTER / 3, self._load_next)

    def _take_settings(self) -> None:
        """A person's own keys; what cannot be used is said."""
        mine = self.settings
        wrong = list(mine.wrong)
        if mine.keys or mine.letters_search:
            from pantry_tui.app.bindings import keys_of_settings

            keys, self.shown_keys, refused = keys_of_settings(mine)
            self.set_keymap(keys)
            wrong += refused
        for sentence in wrong:
            self.call_after_refresh(self.tell, sentence, refused=True)

    def look_around(self) -> None:
        """What another window has written is shown; and a night that passes while the app stands
        open: tomorrow's verdicts must not be today's."""
        self._back_up()
        clock = self._told.gone_on(self._began)
        if self._told.day is not None:
            self.pantry.clock = clock
        turned, self._day = clock.today != self._day, clock.today
        if self.catch_up() or turned or self._ran_out():
            # Under a question the list is read again when that is answered.
            self._reload()

    def _ran_out(self) -> bool:
        """Whether the hours of something ran out since the last look: asked once a minute."""
        minute = self.pantry.clock.minute_now
        if minute == self._minute:
            return False
        self._minute = minute
        return run_out(self.pantry)

    def _back_up(self) -> None:
        """The copy of the day, beside the keys: a large store takes a while."""
        if self.pantry.store.booked and self._copied_on != date.today():
            self._copied_on = date.today()
            self.run_worker(self._copy, thread=True, exit_on_error=False, group="backup")

    def _copy(self) -> None:
        from pantry_tui.store.copies import daily

        try:
            daily(self.pantry.path)
        except PantryError as error:
            self.call_from_thread(self.tell, f"no backup: {error.message}", refused=True)

    def _fatal_error(self) -> None:
        """The screen library's own would print the traceback with all that the store holds."""
        if os.environ.get("PANTRY_DEBUG"):
            return super()._fatal_error()
        self._exit_renderables[:] = [WRONG.format(type(self._exception).__name__)]
        self._close_messages_no_wait()

    def _room(self, name: str) -> Screen[None]:
        """The one screen of a room; what was typed there stays."""
        if name not in self._rooms:
            self._rooms[name] = _make(name)
            self.install_screen(self._rooms[name], name)
        return self._rooms[name]

    def action_go(self, room: str) -> None:
        """Show a room; from a batch, the batch is left. The due list lies under all others."""
        here = self._room(room)
        stood = getattr(self.screen, "place_meant", str)() if room == "putup" else ""
        while len(self.screen_stack) > 2:
            self.pop_screen()
        if self.screen is here:
            return
        if room in _LEFT and (under := self._here) not in _LEFT:
            self.came_from = under if under in ROOMS else "due"
        if room == "due":
            self.pop_screen()
        elif len(self.screen_stack) == 1:
            self.push_screen(here)
        else:
            self.switch_screen(here)
        if stood:
            here.call_later(getattr(here, "fill_in"), stood)  # noqa: B009 - loaded late

    def show_batch(self, ref: str) -> None:
        from pantry_tui.app.screens.batch import BatchScreen
        from pantry_tui.services.stock.pick import batch_named

        _, slash, number = ref.partition("/")
        try:
            code = batch_named(self.pantry, ref).code
        except PantryError as error:
            self.tell(error.message, refused=True)
        else:
            self.push_screen(BatchScreen(code, f"{code}{slash}{number}"))

    def on_key(self, event: Key) -> None:
        """A key that means nothing on this screen says so: a typed word is not lost in silence."""
        letter = event.character or ""
        lists = hasattr(self.screen, "table") and event.key not in self.screen.active_bindings
        if lists and letter.isprintable() and letter.strip():
            rooms = commands.in_other_rooms(letter, self._here, self.shown_keys)
            does = f", but does in {'; '.join(rooms)}. " if rooms else "; "
            self.tell(f"{letter} does nothing here{does}? lists the keys, / finds words.")

    @property
    def _here(self) -> str:
        return str(getattr(self.screen, "here", "due"))

    def action_keys(self) -> None:
        """All keys of the present screen."""
        from pantry_tui.app.screens.page import Page, keys_of

        self.push_screen(Page(keys_of(self._here, self.shown_keys, self.not_now)))

    def action_methods(self) -> None:
        """The ways to keep a glut."""
        from pantry_tui.app.screens.reckon import ask_methods

        ask_methods(self)

    def action_jobs(self) -> None:
        """The small jobs that are due, to book as done."""
        from pantry_tui.app.screens.jobs import ask

        ask(self)

    def action_underway(self) -> None:
        """What ferments, cures, infuses or dries, with its days."""
        from pantry_tui.app.screens.pictures import UnderwayPicture

        self.push_screen(UnderwayPicture())

    def action_by_name(self, id_: str) -> None:
        """One of `commands.BY_NAME`; of the line under the cursor where it is of a batch."""
        from pantry_tui.app.screens.byname import ALL

        line = self.screen.table.current if isinstance(self.screen, ListScreen) else None
        ALL[id_](self, line.ref.partition("/")[0] if line else "", self._reload)

    def action_guides(self) -> None:
        """Short guides; letters find words in them."""
        from pantry_tui.app.screens.guide import choose_guide

        choose_guide(self)

    def action_household(self) -> None:
        """What the household told of itself, to change."""
        from pantry_tui.app.screens.home import change_household

        change_household(self, self._reload)

    def action_backups(self) -> None:
        """Copies of the store, lists out and in."""
        from pantry_tui.app.screens.backups import ask

        if self.served:
            self.tell("Not in a browser: F12 is for the app at the machine itself.", refused=True)
            return
        ask(self, self._reload)

    def _reload(self) -> None:
        """The present screen, read again."""
        reload = getattr(self.screen, "reload", None)
        if reload is not None:
            reload()

    def action_reckon(self) -> None:
        """Batch arithmetic."""
        from pantry_tui.app.screens.reckon import ask

        ask(self)

    def get_system_commands(self, screen: Screen[object]) -> Iterable[SystemCommand]:
        """The palette offers the command table and nothing else."""
        from textual.app import SystemCommand

        for command in commands.palette(getattr(screen, "here", "due"), self.shown_keys):
            if command.id in getattr(screen, "not_now", ()):
                continue
            namespace = self if command.action.startswith("app.") else screen
            do = partial(self.run_action, command.action, default_namespace=namespace)
            title = f"{begun(command.word)} ({command.keys})"
            yield SystemCommand(title, command.tip, do)
        for one in commands.BY_NAME:
            yield SystemCommand(begun(one.word), one.tip, partial(self.action_by_name, one.id))


def _make(name: str) -> Screen[None]:
    if name not in ROOMS:
        return DueScreen()
    module, kind = ROOMS[name]
    made: Screen[None] = getattr(import_module(f"pantry_tui.app.screens.{module}"), kind)()
    return made


def run(path: Path, clock: Clock, *, make: bool = False) -> int:
    """The app on the store at `path`, which is made where there is none if `make`: its first
    question says that it is new. Raises StoreError before anything is painted, and Refused where
    there is no terminal to paint on."""
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        raise Refused("The app needs a terminal: `pantry-tui due` lists the same as plain text.")
    from pantry_tui.services.pantry import create, open_pantry
    from pantry_tui.store.copies import daily

    if make and not path.exists():
        create(path, clock=clock)
    with open_pantry(path, clock) as pantry:
        app = PantryApp(pantry)
        app.run()
        if pantry.store.booked:
            daily(path)
    return app.return_code or 0
