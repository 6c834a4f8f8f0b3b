"""The put-up record field by field, and the timer of a process."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.app.screens.ask import Choose, TypeLine, ask_line, given
from pantry_tui.services.batchwork import sheet, timer
from pantry_tui.services.rows import Done

if TYPE_CHECKING:
    from pantry_tui.app.screens.listing import ListScreen

DROP, DONE, CANCEL, AGAIN, EARLY, WHOLE = (
    "the pressure fell: the whole time counts again",
    "done: write it into the record",
    "stop timing, record nothing",
    "back at the pressure: the whole time again",
    "ended early: record what it had",
    "it ran for its whole time, by another clock: write it into the record",
)


def ask_fields(screen: ListScreen, ref: str) -> None:
    """Each field in order, with what is published beside it; empty goes on, Esc ends."""
    asked = sheet.fields(screen.host.pantry, ref)

    def walk(number: int, last: str = "") -> None:
        last += " " if last else ""
        if number == len(asked):
            screen.settle_list()
            return
        one = asked[number]
        wrong: list[str] = []

        def accept(typed: str) -> None:
            if typed and typed != one.said:
                done = screen.host.doing(
                    lambda: sheet.write(screen.host.pantry, ref, [(one.key, typed)])
                )
                wrong.extend(done.warnings)

        title = f"{last}{ref}, {one.key}. Published: {one.published}. Empty goes on, Esc ends."
        line = TypeLine(title, one.key, one.said, empty=True, accept=accept)

        def answered(typed: str | None) -> None:
            if typed is None:
                screen.settle_list()
            else:
                said = screen.host.said(f"Wrong: {wrong[0]}") if wrong else ""
                screen.host.say_then(said, lambda last: walk(number + 1, last))

        screen.host.push_screen(line, answered)

    walk(0)


def ask_timer(screen: ListScreen, ref: str) -> None:
    """Start the timer of a batch, or say what became of the one that runs."""
    pantry = screen.host.pantry
    row = next((one for one in timer.running(pantry) if one.code == ref), None)
    if row is None:
        title = f"Time {ref}: how long, and at what pressure? Empty: as published for its record."
        ask_line(
            screen,
            title,
            "25 min 11 psi",
            lambda typed: timer.start(pantry, ref, typed),
            empty=True,
        )
        return
    acts: tuple[str, ...]
    acts = (AGAIN, CANCEL) if row.down else (DROP, CANCEL) if row.left else (DONE, DROP, CANCEL)
    if row.left and not row.down:
        acts = (*acts, EARLY)
    if row.unsure:
        acts = (*(one for one in acts if one != DONE), WHOLE)

    def chosen(said: str) -> None:
        screen.host.attempt(lambda: _told(screen, ref, said))
        screen.settle_list()

    left = "the pressure is down" if row.down else f"{row.left} of {row.minutes} minutes left"
    left = f"{left}. {row.unsure.rstrip('.?')}" if row.unsure else left
    screen.host.push_screen(Choose(f"{ref} {row.food}: {left}.", acts), given(chosen))


def _told(screen: ListScreen, ref: str, said: str) -> Done:
    pantry = screen.host.pantry
    if said == AGAIN:
        return timer.start(pantry, ref)
    if said == DROP:
        return timer.drop(pantry, ref)
    if said == CANCEL:
        return timer.cancel(pantry, ref)
    return timer.done(pantry, ref, early=said == EARLY, whole=said == WHOLE)
