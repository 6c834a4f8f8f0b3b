"""How much room a place has left."""

from __future__ import annotations

from pantry_tui.services.pantry import Pantry


def overfull(p: Pantry, place: str) -> str:
    """A word where a place holds more than it was said to, "" where it does not; by its id."""
    where = p.places.get(place)
    if where is None or where.capacity is None:
        return ""
    p.settle()
    sql = "SELECT sum(n) FROM main.lines WHERE place = ?"
    count = p.store.db.execute(sql, (place,)).fetchone()[0] or 0
    if count <= where.capacity:
        return ""
    return f"{where.name} holds {count}, which is more than its room for {where.capacity}."
