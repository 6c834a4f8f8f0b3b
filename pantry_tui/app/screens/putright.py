"""Putting right an act of the log: a reading field by field, a power cut by its questions, else the
record of its batch."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from pantry_tui.app.screens.forms import Field, show_form
from pantry_tui.core.dataclass import replace
from pantry_tui.core.dates import say
from pantry_tui.core.log.payloads import Outage, Reading
from pantry_tui.core.text import begun
from pantry_tui.errors import PantryError
from pantry_tui.services.books.logbook import describe, hour_of
from pantry_tui.services.moments import read_at
from pantry_tui.services.rows import Done
from pantry_tui.services.stock import put_right, readings
from pantry_tui.services.stock.outage import now_of
from pantry_tui.services.stock.seen import At

if TYPE_CHECKING:
    from pantry_tui.app.host import Host
    from pantry_tui.services.pantry import Pantry

NOTHING_HERE = (
    "Of this nothing is put right here: of a reading, a power cut and a batch it is. z takes back "
    "what was done last."
)


def put_act_right(host: Host, id_: str, code: str, done: Callable[[], None]) -> None:
    """What was booked with that id; `code`: the batch it is about, "" for none."""
    try:
        payload = put_right.now_standing(host.pantry, id_).payload
        if isinstance(payload, Reading):
            _reading(host, id_, done)
        elif isinstance(payload, Outage):
            from pantry_tui.app.screens.powercut import walk_again

            walk_again(host, id_, done)
        elif code:
            from pantry_tui.app.screens.records import correct_batch

            correct_batch(host, code, done)
        else:
            host.tell(NOTHING_HERE, refused=True)
    except PantryError as error:
        host.tell(error.message, refused=True)


def _reading(host: Host, id_: str, done: Callable[[], None]) -> None:
    p = host.pantry

    def mended(**said: object) -> Done:
        return put_right.reading(p, put_right.now_standing(p, id_).id, **said)  # type: ignore[arg-type]

    def fields() -> Sequence[Field]:
        event = put_right.now_standing(p, id_)
        old = event.payload
        assert isinstance(old, Reading)
        read = host.units.text(f"{old.temp_f:g} F")
        humid = f"{old.humidity:g} %" if old.humidity is not None else "not said"
        found = [
            Field(
                "temperature", read, "What temperature was it really?",
                lambda typed: mended(temp=typed), "38F or 3C",
            ),
            Field(
                "when it was read", f"{say(event.day)} {hour_of(event)}", "When was it read?",
                lambda typed: mended(at=_at(p, typed)), "yesterday 18:30",
            ),
            Field(
                "humidity", humid, "How humid was it, in %?",
                lambda typed: mended(humidity=readings.read_humidity(typed)), "90",
            ),
        ]  # fmt: skip
        if readings.needs_since(p.ever[old.place], old.temp_f):
            long = f"{old.since} minutes" if old.since is not None else "not said"
            found.append(
                Field(
                    "since when, before it was read", long, "How long had it been so warm?",
                    lambda typed: mended(since=typed), "90m, 2h, or unknown",
                )
            )  # fmt: skip
        return found

    def title() -> str:
        event = put_right.now_standing(p, id_)
        assert isinstance(event.payload, Reading)
        stands = replace(event, payload=event.payload._replace(instead_of=""))
        return f"{begun(describe(p, stands))}: what of it is wrong? Esc leaves."

    show_form(host, title, fields, done)


def _at(p: Pantry, typed: str) -> At:
    now = now_of(p)
    return At(*read_at(typed, (p.today, now.hour * 60 + now.minute)))
