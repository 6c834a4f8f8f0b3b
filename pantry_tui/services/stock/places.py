"""Places: add, change, merge, remove and list."""

from __future__ import annotations

import re

from pantry_tui.core.keeping.meant import meant_f
from pantry_tui.core.keeping.weather import around
from pantry_tui.core.lidcode import is_code, normal_code
from pantry_tui.core.line.kinds import kind_of, sensible, surely_of
from pantry_tui.core.log import payloads as said
from pantry_tui.core.model import Place
from pantry_tui.core.text import agreed, counted, has_name
from pantry_tui.core.words import Climate
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Done
from pantry_tui.services.stock.moving import move
from pantry_tui.services.stock.pick import name_of, standing_in
from pantry_tui.services.stock.readings import read_warmth
from pantry_tui.services.stock.room import overfull
from pantry_tui.services.stock.rows import Shelf
from pantry_tui.services.stock.view import shelves


def read_climate(text: str | None, name: str = "") -> Climate:
    """A climate by its word, or by what a place that surely has it is called: "refrigerator".
    Raises BadInput naming those that a place called `name` may have."""
    meant = surely_of(text or "")
    if meant is not None:
        return meant
    known = ", ".join(sensible(name))
    if not text:
        raise BadInput(f"Say what climate it has: --climate and one of {known}.")
    raise BadInput(f"{text[:40]!r} is no climate: write one of {known}.")


def climate_of(p: Pantry, name: str, text: str | None, inside: str | None) -> Climate:
    """The climate of a new place: by its word; where none is said, a freezer's by its name, else
    that of the place it is in, else by a name that is the same in every house: a cellar. Raises
    BadInput."""
    if not text and inside:
        return read_climate(_by_its_name(name) or p.find_place(inside).climate)
    return read_climate(text or surely_of(name), name)


def is_taken(p: Pantry, name: str, inside: str | None, but: str = "") -> bool:
    """Whether a place other than `but` is called so in the place `inside`; both are ids."""
    return any(
        one.id != but and one.parent == inside and one.name.lower() == name.lower()
        for one in p.places.values()
    )


@booked
def add(
    p: Pantry,
    name: str,
    climate: str,
    inside: str | None = None,
    temp_f: float | None = None,
    capacity: int | None = None,
) -> Done:
    """A new place, nested in `inside` if given, whose climate it has where none is said. °F."""
    shown = " ".join(name.split())
    _check_name(shown)
    kind = climate_of(p, shown, climate, inside)
    _check(temp_f, capacity)
    parent = p.find_place(inside).id if inside else None
    if is_taken(p, shown, parent):
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
    """Change a place from now on; what stood there before keeps the warmth it had. Places in it
    that were as it is become what it becomes. °F."""
    old = p.find_place(place)
    shown = " ".join((name or old.name).split())
    if name:
        _check_name(shown)
    if is_taken(p, shown, old.parent, but=old.id):
        raise Refused(f"There is already a place called {shown!r} there: `place merge` joins two.")
    kind = read_climate(climate) if climate else old.climate
    _check(temp_f, capacity)
    same = kind is old.climate
    within = [] if same else _alike_in(p, old)
    with p.together():
        p.book(
            said.PlaceChanged(
                old.id,
                name=shown if shown != old.name else None,
                # What was said is kept, also where it is so already: what came before may be
                # undone.
                climate=kind if climate else None,
                target_f=None if temp_f is None else float(temp_f),
                forget_target=temp_f is None and not same,
                capacity=capacity,
            )
        )
        for inner in within:
            p.book(said.PlaceChanged(inner.id, climate=kind, forget_target=True))
    now = p.stock.places[old.id]
    full = overfull(p, now.id)
    too = f" So {agreed(len(within), 'is', 'are')} {', '.join(one.name for one in within)} in it."
    told = f"Changed {p.place_paths()[old.id]}: {kind}, {meant_f(around(now.id, p.places)):g} F."
    return Done(told + (too if within else ""), (full,) if full else ())


def _alike_in(p: Pantry, place: Place) -> list[Place]:
    """The places in it, and in those, that are as it is: a refrigerator that is given up leaves no
    cold box."""
    inner = [one for one in p.places.values() if one.parent == place.id]
    alike = [one for one in inner if one.climate is place.climate]
    return [found for one in alike for found in (one, *_alike_in(p, one))]


@booked
def merge(p: Pantry, place: str, into: str) -> Done:
    """What stands in a place goes to another one, and the place is no more; one undo takes back
    both. Raises BadInput, and Refused where other places stand in it."""
    old, new = p.find_place(place), p.find_place(into)
    if old.id == new.id:
        raise BadInput(f"{old.name} is that place itself: name two different ones.")
    return _gone(p, old, new)


@booked
def remove(p: Pantry, place: str, to: str | None = None) -> Done:
    """The place is no more; what stands there goes to the place `to`. Raises as `merge` does, and
    Refused where it holds something and nobody says where that goes."""
    old = p.find_place(place)
    if to:
        return merge(p, place, to)
    count = len(standing_in(p, old.id))
    if count:
        raise Refused(
            f"{counted(count, 'containers')} {agreed(count, 'stands', 'stand')} in {old.name}: say "
            f"where {agreed(count, 'it goes', 'they go')}, `place remove {old.name} --to PLACE`."
        )
    return _gone(p, old, None)


def _gone(p: Pantry, old: Place, new: Place | None) -> Done:
    inner = [one.name for one in p.places.values() if one.parent == old.id]
    if inner:
        # Each has lived by what was read in the outer one: its past must stay as it was.
        raise Refused(f"{', '.join(inner)} stands in {old.name}: merge or remove that first.")
    path, moved = p.place_paths()[old.id], standing_in(p, old.id)
    told: list[str] = []
    with p.together():
        for container in moved if new is not None else ():
            where = p.place_paths()[new.id] if new is not None else ""
            told += move(p, name_of(p, container), where).warnings
        p.book(said.PlaceRemoved(old.id, new.id if new is not None else ""))
    warnings = tuple(dict.fromkeys(told))
    if new is None:
        return Done(f"Removed the place {path}.", warnings)
    into = p.place_paths()[new.id]
    went = f"; {counted(len(moved), 'containers')} went to {into}" if moved else f" into {into}"
    return Done(f"Merged the place {path}{went}.", warnings)


def _check_name(name: str) -> None:
    if not has_name(name):
        raise BadInput("A place needs a name: give one with a letter or a figure in it.")
    if is_code(normal_code(name)):
        raise BadInput(
            f"{name!r} reads as a lid code: call the place shelf {name}, or another name."
        )


def _check(temp_f: float | None, capacity: int | None) -> None:
    if temp_f is not None and not -60 <= temp_f <= 130:
        raise BadInput(f"{temp_f:g} F is no temperature for a place: give -60 to 130 F.")
    if capacity is not None and capacity < 1:
        raise BadInput("A capacity must be 1 or more.")


#: A place that is called so is one: nobody keeps a fridge that is none.
_OWN_CLIMATE = (Climate.FRIDGE, Climate.FREEZER)


def _by_its_name(name: str) -> str:
    """("chest freezer") -> "freezer"; "" where the name does not say it, or says two."""
    words = name.lower().split()
    said = [one.value for one in _OWN_CLIMATE if one.value in words]
    return said[0] if len(said) == 1 else ""


#: What may follow a name in place of its climate.
_DETAIL = re.compile(r"in |room for |-?\d", re.IGNORECASE)


def add_line(p: Pantry, line: str) -> Done:
    """A new place from "shelf 3, pantry, in basement, 55F, room for 40"; name and climate first.
    What is called as its climate is (fridge, cellar) needs none, nor does a place in one that has
    its own; a room that is not there yet is made of the same climate, in one undo with the place.

    Raises BadInput naming the part that is not understood.
    """
    name, *rest = [part.strip() for part in line.split(",")]
    inside: str | None = None
    warm = ""
    capacity: int | None = None
    parent = next((part[3:].strip() for part in rest if part.lower().startswith("in ")), "")
    like = _by_its_name(name) or _climate_of(p, parent) or (not parent and surely_of(name)) or ""
    detailed = bool(rest) and _DETAIL.match(rest[0]) is not None
    told = bool(rest) and not (like and detailed)
    if not like and (not rest or detailed):
        climates = sensible(name)
        example = f"{name[:40]}, {kind_of(name) or Climate.PANTRY}"
        raise BadInput(f"Say its climate behind the name, one of {', '.join(climates)}: {example}.")
    for part in rest[1:] if told else rest:
        if part.lower().startswith("in "):
            inside = part[3:]
        elif part.lower().startswith("room for ") and part[9:].isdecimal():
            capacity = int(part[9:15])
        elif part[:1].isdigit() or part[:1] == "-":
            warm = part
        else:
            raise BadInput(f"{part[:40]!r} is not understood: write in PLACE, 55F or room for 40.")
    climate = read_climate(rest[0] if told else like)
    temp = read_warmth(p, climate, warm) if warm else None
    with p.together():
        made = _room(p, parent, climate)
        done = add(p, name, climate, inside, temp, capacity)
    return Done(f"{done.message} {made} is new too: z takes both back.") if made else done


def _climate_of(p: Pantry, parent: str) -> str:
    """That of the place it is in; "" where none is named, or none is there."""
    if not parent:
        return ""
    try:
        return p.find_place(parent).climate.value
    except BadInput:
        return ""


def _room(p: Pantry, name: str, climate: Climate) -> str:
    """The name of the room that had to be made, "" where it is there. Raises BadInput where it may
    be another one misspelt, or what stands in it says nothing of it: a freezer stands anywhere."""
    from difflib import get_close_matches  # only for a room that is named

    paths = p.place_paths().values()
    names = {part.strip().casefold() for path in paths for part in path.split("›")}
    if not name or any(f" {path}".casefold().endswith(f" {name}".casefold()) for path in paths):
        return ""
    near = get_close_matches(name.casefold(), names, 1)
    if near or "›" in name or climate in _OWN_CLIMATE:
        p.find_place(name)
    add(p, name, climate.value)
    return name


def listing(p: Pantry) -> list[Shelf]:
    """All places in path order."""
    return shelves(p)
