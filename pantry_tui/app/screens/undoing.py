"""Taking back: at once where it was done at this sitting, else it is named and asked about."""

from __future__ import annotations

from collections.abc import Callable

from pantry_tui.app.commands import of
from pantry_tui.app.format import clip, week_day
from pantry_tui.app.host import Host
from pantry_tui.app.screens.ask import Choose
from pantry_tui.core.log.events import Event
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import undo
from pantry_tui.services.stock.pick import name_of

ANSWERS = ("take it back", "leave it")


def take_back(host: Host, then: Callable[[frozenset[str]], None]) -> None:
    """Undo the last thing that stands, as the log is now; `then` is given the names of the
    containers that it was about."""
    host.catch_up()
    if host.refused:
        host.refused = False
        key = _key(host)
        said = f"The last key was refused, so it did nothing. {key} again takes back what was done."
        host.tell(said)
        return
    last = undo.newest(host.pantry)
    if last is None or host.did(last.id):
        _undo(host, last, then)
        return
    what = f"{week_day(last.day)}: {undo.say(host.pantry, last)}"

    def answered(got: str | None) -> None:
        if got == ANSWERS[0]:
            _undo(host, last, then)

    title = f"Not done here since you began. Take it back? {clip(what, 150)}"
    host.push_screen(Choose(title, ANSWERS, sure=True), answered)


def _key(host: Host) -> str:
    """That of undo on the screen that is shown: where letters go into a line it is another."""
    here = str(getattr(host.screen, "here", ""))
    known = (one for one in of(here, host.shown_keys) if one.id == "undo")
    return next((one.typed(here) for one in known), "z")


def do_again(host: Host, then: Callable[[frozenset[str]], None]) -> None:
    """Bring again what was taken back last, where nothing was booked since."""
    host.catch_up()
    if host.attempt(lambda: undo.redo(host.pantry)):
        last = undo.newest(host.pantry)
        then(_names(host.pantry, last.containers if last else ()))


def _undo(host: Host, last: Event | None, then: Callable[[frozenset[str]], None]) -> None:
    """Refused under the lock where another window has booked something newer meanwhile."""
    meant = last.id if last is not None else ""
    if host.attempt(lambda: undo.undo(host.pantry, expect=meant)):
        then(_names(host.pantry, last.containers if last else ()))


def _names(pantry: Pantry, ids: tuple[str, ...]) -> frozenset[str]:
    containers = pantry.stock.containers
    return frozenset(name_of(pantry, containers[id_]) for id_ in ids if id_ in containers)
