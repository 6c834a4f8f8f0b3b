"""Putting right what was recorded: a batch, a place; and where all of a batch is or went."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from pantry_tui.app.inkeys import FIELDS
from pantry_tui.app.screens.forms import Field, show_form
from pantry_tui.app.screens.page import Page
from pantry_tui.core.dates import say
from pantry_tui.core.keeping.meant import meant_f
from pantry_tui.core.keeping.weather import around
from pantry_tui.core.text import clean
from pantry_tui.core.words import Climate, Method
from pantry_tui.services.batchwork import sheet
from pantry_tui.services.batchwork.line import read_pairs
from pantry_tui.services.lookup.recall import recall
from pantry_tui.services.rows import Done
from pantry_tui.services.stock import places
from pantry_tui.services.stock.correct import correct
from pantry_tui.services.stock.pick import batch_named
from pantry_tui.services.stock.readings import read_warmth

if TYPE_CHECKING:
    from pantry_tui.app.host import Host

NOWHERE = "nothing stands there"


def correct_batch(host: Host, ref: str, done: Callable[[], None]) -> None:
    """What was recorded at the put-up, field by field."""
    p = host.pantry
    code = batch_named(p, ref).code

    def fields() -> Sequence[Field]:
        batch = batch_named(p, code)
        details = ", ".join(f"{key}={value}" for key, value in batch.process)
        made = say(batch.made) if batch.made else "unknown"
        mine = p.containers_of(batch)
        many = str(len(mine))
        heap = mine[0].first if len(mine) == 1 and mine[0].bulk else None
        shown = f"{many}, with {host.units.text(str(heap))} in it" if heap is not None else many
        found = [
            Field(
                FIELDS["made"], made, f"When was {code} made? unknown where nobody knows.",
                lambda typed: correct(p, code, made=typed), "yesterday, 12 Aug 2026, or unknown",
            ),
            Field(
                FIELDS["size"], batch.size, f"What is one of {code}?",
                lambda typed: correct(p, code, size=typed), "pint jars", batch.size,
            ),
            Field(
                FIELDS["note"], batch.note,
                f"The note of {code}, in place of what it says. Empty: none.",
                lambda typed: correct(p, code, note=typed), "less salt", batch.note, empty=True,
            ),
            Field(
                FIELDS["process"], details,
                f"What of its process is otherwise, for {code}? The rest stays.",
                lambda typed: correct(p, code, process=read_pairs(typed)),
                sheet.example(p, code),
            ),
        ]  # fmt: skip
        if batch.method is Method.BOUGHT:
            printed = say(batch.printed) if batch.printed else "none"
            found.append(
                Field(
                    FIELDS["printed"], printed, f"Which date is printed on {code}?",
                    lambda typed: correct(p, code, printed=typed), "2027-03-31",
                )
            )  # fmt: skip
        found += [
            Field(
                FIELDS["food"], batch.food.name, f"What is in {code}?",
                lambda typed: correct(p, code, food=typed), "runner beans", batch.food.name,
            ),
            Field(
                FIELDS["method"], batch.method.value, f"How is {code} kept?",
                lambda typed: correct(p, code, method=typed), options=tuple(Method),
            ),
            Field(
                FIELDS["count"], shown, f"How many of {code} were put up?",
                lambda typed: correct(p, code, count=_number(typed)), "7", many,
            ),
        ]  # fmt: skip
        return found

    def unsettled() -> bool:
        """Whether something of its record is in doubt."""
        return bool(batch_named(p, code).doubt)

    food = clean(batch_named(p, code).food.name)
    show_form(
        host,
        f"{code} {food}: what is to be put right? Esc leaves.",
        fields,
        done,
        unsettled=unsettled,
    )


def change_place(host: Host, path: str, done: Callable[[], None]) -> None:
    """A place: its name, climate, temperature and room; into another one; no more."""
    p = host.pantry
    id_ = p.find_place(path).id

    def fields() -> Sequence[Field]:
        place = p.places.get(id_)
        if place is None:
            return ()
        paths = p.place_paths()
        name, others = paths[id_], [one for key, one in paths.items() if key != id_]
        room = str(place.capacity) if place.capacity else "not said"
        meant = meant_f(around(place.id, p.places))

        def warm(typed: str) -> Done:
            return places.change(p, name, temp_f=read_warmth(p, place.climate, typed))

        found = [
            Field(
                "name", place.name, f"What is {name} called?",
                lambda typed: places.change(p, name, name=typed), "shelf 3", place.name,
            ),
            Field(
                "climate", place.climate.value, f"What is {name}, from today on?",
                lambda typed: places.change(p, name, climate=typed), options=tuple(Climate),
            ),
            Field(
                "meant to hold", host.units.text(f"{meant:g} F"),
                f"What temperature does {name} hold?", warm, "55F or 13C",
            ),
            Field(
                "room for", room, f"How many containers has {name} room for?",
                lambda typed: places.change(p, name, capacity=_number(typed)), "40",
            ),
        ]  # fmt: skip
        if others:
            found.append(
                Field(
                    "merge into another place", "", f"Where does what stands in {name} go? "
                    f"{name} is no more then.",
                    lambda to: places.merge(p, name, to), options=others,
                )
            )  # fmt: skip
        found.append(
            Field(
                "remove", "", f"{name} is no more: where does its stock go?",
                lambda to: places.remove(p, name, None if to == NOWHERE else to),
                options=(NOWHERE, *others),
            )
        )  # fmt: skip
        return found

    def title() -> str:
        return f"{p.place_paths()[id_]}: what is otherwise? Esc leaves."

    show_form(host, title, fields, done)


def _number(typed: str) -> int:
    from pantry_tui.core.amounts import in_digits
    from pantry_tui.errors import BadInput

    plain = in_digits(typed)
    if not (plain.isascii() and plain.isdigit() and len(plain) < 7):
        raise BadInput(f"{typed[:20]!r} is no number of containers: write digits alone, as 7.")
    return int(plain)


def show_recall(host: Host, ref: str) -> None:
    """Every container of a batch, of what was made from it and of what it was made from."""
    code = batch_named(host.pantry, ref).code
    lines = [f"Where all of {code} is or went", ""]
    for row in recall(host.pantry, code):
        parts = [f"{row.container}  {row.state}"]
        parts += [f"in {clean(row.place)}"] if row.place else []
        parts += [f"to {clean(row.to)}"] if row.to else []
        parts += [f"on {say(row.ended)}"] if row.ended else []
        seen = f"; seen: {', '.join(row.signs)}" if row.signs else ""
        lines.append(" ".join(parts) + seen)
    host.push_screen(Page("\n".join(lines)))
