"""What the palette finds by its name alone: each asks its own small questions."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from pantry_tui.app.screens import homeforms
from pantry_tui.app.screens.ask import Choose, TypeLine, given
from pantry_tui.app.screens.printing import ask_paper
from pantry_tui.app.screens.records import change_place, show_recall

if TYPE_CHECKING:
    from pantry_tui.app.host import Host

#: (the app, the lid code under the cursor or "", what to do once something was changed).
Do = Callable[["Host", str, Callable[[], None]], None]


def recall(host: Host, ref: str, _done: Callable[[], None]) -> None:
    """Of the batch under the cursor, else of the lid code that is typed."""
    if ref:
        show_recall(host, ref)
        return
    from pantry_tui.services.stock.pick import batch_named

    question = TypeLine(
        "Of which lid code?", "7C", accept=lambda typed: batch_named(host.pantry, typed)
    )
    host.push_screen(question, given(lambda typed: show_recall(host, typed)))


def place(host: Host, _ref: str, done: Callable[[], None]) -> None:
    """One of the places, to change."""
    paths = sorted(host.pantry.place_paths().values())
    if not paths:
        host.tell("There is no place yet: press S and then a to add one.", refused=True)
        return
    host.push_screen(
        Choose("Which place?", paths), given(lambda path: change_place(host, path, done))
    )


def own_list(host: Host, _ref: str, done: Callable[[], None]) -> None:
    """The household's own list, its columns first."""
    from pantry_tui.app.screens.importing import ask_list

    ask_list(host, done)


ALL: dict[str, Do] = {
    "paper": lambda host, _ref, _done: ask_paper(host),
    "list": own_list,
    "recall": recall,
    "table": lambda host, _ref, done: homeforms.table(host, done),
    "ceilings": lambda host, _ref, done: homeforms.ceilings(host, done),
    "dishes": lambda host, _ref, done: homeforms.own_dishes(host, done),
    "stand_ins": lambda host, _ref, done: homeforms.stand_ins(host, done),
    "own_words": lambda host, _ref, done: homeforms.own_words(host, done),
    "place": place,
}
