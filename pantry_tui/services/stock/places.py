"""Places: add and list."""

from __future__ import annotations

from pantry_tui.core.log import payloads as said
from pantry_tui.core.words import Climate
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Done
from pantry_tui.services.stock.readings import read_warmth
from pantry_tui.services.stock.rows import Shelf
from pantry_tui.services.stock.view import shelves


def read_climate(text: str | None) -> Climate:
    """A climate by its word. Raises BadInput naming them all."""
    try:
        return Climate((text or "").strip().lower())
    except ValueError:
        known = ", ".join(Climate)
        raise BadInput(f"Every place needs a climate, one of {known}; got {text!r}.") from None


@booked
def add(
    p: Pantry,
    name: str,
    climate: str,
    inside: str | None = None,
    temp_f: float | None = None,
    capacity: int | None = None,
) -> Done:
    """A new place, nested in `inside` if given. Temperature in °F."""
    shown = " ".join(name.split())
    if not shown:
        raise BadInput("A place needs a name.")
    kind = read_climate(climate)
    _check(temp_f, capacity)
    parent = p.find_place(inside).id if inside else None
    for place in p.stock.places.values():
        if place.parent == parent and place.name.lower() == shown.lower():
            raise Refused(f"There is already a place called {shown!r} there.")
    id_ = "p" + p.next_id()
    target = None if temp_f is None else float(temp_f)
    p.book(said.PlaceAdded(id_, shown, kind, parent, target, capacity))
    return Done(f"Added the place {p.place_paths()[id_]} ({kind}).")


@booked
def change(
    p: Pantry,
    place: str,
    *,
    name: str | None = None,
    climate: str | None = None,
    temp_f: float | None = None,
    capacity: int | None = None,
) -> Done:
    """Change a place from today on; what stood there before keeps the warmth it had. °F."""
    old = p.find_place(place)
    shown = " ".join((name or old.name).split())
    kind = read_climate(climate) if climate else old.climate
    _check(temp_f, capacity)
    same = kind is old.climate
    p.book(
        said.PlaceChanged(
            old.id,
            name=shown if shown != old.name else None,
            # What was said is kept, also where it is so already: what came before may be undone.
            climate=kind if climate else None,
            target_f=None if temp_f is None else float(temp_f),
            forget_target=temp_f is None and not same,
            capacity=capacity,
        )
    )
    now = p.stock.places[old.id]
    return Done(f"Changed {p.place_paths()[old.id]}: {kind}, {now.target:g} F.")


def _check(temp_f: float | None, capacity: int | None) -> None:
    if temp_f is not None and not -60 <= temp_f <= 130:
        raise BadInput(f"{temp_f:g} F is no temperature for a place: give -60 to 130 F.")
    if capacity is not None and capacity < 1:
        raise BadInput("A capacity must be 1 or more.")


def add_line(p: Pantry, line: str) -> Done:
    """A new place from "shelf 3, pantry, in basement, 55F, room for 40"; name and climate first.

    Raises BadInput naming the part that is not understood.
    """
    name, *rest = [part.strip() for part in line.split(",")]
    inside: str | None = None
    warm = ""
    capacity: int | None = None
    for part in rest[1:]:
        if part.lower().startswith("in "):
            inside = part[3:]
        elif part.lower().startswith("room for ") and part[9:].isdecimal():
            capacity = int(part[9:15])
        elif part[:1].isdigit() or part[:1] == "-":
            warm = part
        else:
            raise BadInput(f"{part[:40]!r} is not understood: write in PLACE, 55F or room for 40.")
    climate = read_climate(rest[0] if rest else "")
    temp = read_warmth(p, climate, warm) if warm else None
    return add(p, name, climate, inside, temp, capacity)


def listing(p: Pantry) -> list[Shelf]:
    """All places in path order."""
    return shelves(p)
