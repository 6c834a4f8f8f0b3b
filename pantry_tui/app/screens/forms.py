"""Small forms: each field with what it is now; one is chosen, changed, and the form comes back."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import TYPE_CHECKING, NamedTuple

from pantry_tui.app.format import clip
from pantry_tui.app.screens.ask import Choose, TypeLine
from pantry_tui.errors import PantryError
from pantry_tui.services.rows import Done

if TYPE_CHECKING:
    from pantry_tui.app.host import Host


class Field(NamedTuple):
    """What may be changed: its name, what it is now, how it is asked for, and what does it. One of
    `options` where there are any, else a line that is typed, begun with `value`; an empty line is
    an answer where `empty`."""

    name: str
    now: str
    ask: str
    do: Callable[[str], Done]
    example: str = ""
    value: str = ""
    options: Sequence[str] = ()
    empty: bool = False


def show_form(
    host: Host,
    title: str | Callable[[], str],
    fields: Callable[[], Sequence[Field]],
    done: Callable[[], None],
    said: str = "",
    *,
    unsettled: Callable[[], bool] = bool,
) -> None:
    """Ask until it is left with Esc, or nothing is left to change; `done` is called after each
    change. What was just done, or why it could not be, stands in the title, and on the screen once
    the form is left. `unsettled`: whether something is in doubt; what settles it leaves the form
    too."""
    try:
        known = list(fields())
    except PantryError as error:
        host.tell(error.message, refused=True)
        return
    if not known:
        host.tell(said)
        return
    begun = unsettled()
    lines = [f"{one.name}: {clip(one.now, 60)}" if one.now else one.name for one in known]

    def again(told: list[Done]) -> None:
        words = " ".join((told[-1].message, *told[-1].warnings)) if told else ""
        if told and begun and not unsettled():
            host.report(told[-1])
            return
        back = partial(show_form, host, title, fields, done, unsettled=unsettled)
        host.say_then(host.said(words), back)

    def chosen(line: str) -> None:
        one = known[lines.index(line)]
        told: list[Done] = []

        def accept(typed: str) -> None:
            told.append(host.doing(lambda: one.do(typed)))
            done()

        def taken(got: str) -> None:
            """An option cannot be mended: why it could not be done stands over the form."""
            try:
                accept(got)
            except PantryError as error:
                host.refused = True
                told.append(Done(f"Not done: {error.message}"))

        def answered(got: str | None) -> None:
            if one.options and got is not None:
                taken(got)
            again(told)

        if one.options:
            host.push_screen(Choose(one.ask, one.options), answered)
        else:
            line_ = TypeLine(one.ask, one.example, one.value, empty=one.empty, accept=accept)
            host.push_screen(line_, answered)

    def got(line: str | None) -> None:
        if line is not None:
            chosen(line)
        elif said:
            host.tell(said)

    head = f"{said} {title if isinstance(title, str) else title()}".strip()
    host.push_screen(Choose(host.units.text(head), lines), got)
