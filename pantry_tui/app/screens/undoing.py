"""Taking back: at once where it was done at this sitting, else it is named and asked about."""

from __future__ import annotations

from collections.abc import Callable

from pantry_tui.app.format import clip, week_day
from pantry_tui.app.host import Host
from pantry_tui.app.screens.ask import Choose
from pantry_tui.services.books.logbook import describe
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, aside
from pantry_tui.services.stock.pick import name_of

ANSWERS = ("take it back", "leave it")


def take_back(host: Host, then: Callable[[frozenset[str]], None]) -> None:
    """Undo the last thing that stands, as the log is now; `then` is given the names of the
    containers that it was about."""
    host.catch_up()
    pantry = host.pantry
    last = pantry.last_standing()
    if last is None or host.did(last.id) or aside.waiting(pantry):
        _undo(host, then)
        return
    what = f"{week_day(last.day)}: {describe(pantry, last)}"

    def answered(got: str | None) -> None:
        if got != ANSWERS[0]:
            return
        host.catch_up()
        now = pantry.last_standing()
        if now is None or now.id != last.id:
            host.tell("Another window has just done something else: look again.", refused=True)
            return
        _undo(host, then)

    title = f"Not done here since you began. Take it back? {clip(what, 150)}"
    host.push_screen(Choose(title, ANSWERS), answered)


def _undo(host: Host, then: Callable[[frozenset[str]], None]) -> None:
    last = host.pantry.last_standing()
    if host.attempt(lambda: act.undo(host.pantry)):
        then(_names(host.pantry, last.containers if last else ()))


def _names(pantry: Pantry, ids: tuple[str, ...]) -> frozenset[str]:
    containers = pantry.stock.containers
    return frozenset(name_of(pantry, containers[id_]) for id_ in ids if id_ in containers)
