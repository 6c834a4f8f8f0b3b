"""Foods that stand in for one another when a crop fails. Kept in the log; the last word stands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from pantry_tui.core.log.payloads import Substitutes
from pantry_tui.core.text import begun, clean
from pantry_tui.errors import BadInput
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked


def substitutes(p: Pantry) -> dict[str, tuple[str, ...]]:
    """Food -> what may stand in for it, in the order they were named."""
    return dict(p.home.substitutes)


@booked
def set_substitutes(p: Pantry, food: str, others: Sequence[str]) -> Done:
    """Say what may stand in for a food; nothing takes it back. Raises BadInput."""
    name = _known(p, food)
    names = tuple(dict.fromkeys(_known(p, other) for other in others))
    if name in names:
        raise BadInput(f"{begun(name)} cannot stand in for {name}.")
    p.book(Substitutes(name, names))
    if not names:
        return Done(f"Nothing stands in for {name} any more.")
    return Done(f"{begun(' and '.join(names))} may stand in for {name}.")


def read_line(p: Pantry, words: Sequence[str]) -> tuple[str, tuple[str, ...]]:
    """("peaches", "with", "plums", "pears") -> the food and its substitutes; a food of several
    words is quoted, or parted from the next by "and" or a comma. Raises BadInput."""
    if "with" not in words:
        raise BadInput("Say what stands in: household substitute peaches with plums pears.")
    at = list(words).index("with")
    food, rest = " ".join(words[:at]), " ".join(words[at + 1 :])
    if not food or not rest:
        raise BadInput("Say what stands in: household substitute peaches with plums pears.")
    if rest.strip().lower() == "nothing":
        return food, ()
    if p.facts(rest) is not None:
        return food, (rest,)
    parts = [part.strip() for part in rest.replace(",", " and ").split(" and ")]
    if len([part for part in parts if part]) > 1:
        return food, tuple(part for part in parts if part)
    return food, tuple(words[at + 1 :])


def listing(p: Pantry) -> Iterator[str]:
    """One line a food."""
    for food, others in sorted(substitutes(p).items()):
        yield f"{food}: {', '.join(others)}"


def _known(p: Pantry, text: str) -> str:
    facts = p.facts(text)
    if facts is None:
        near = ", ".join(p.tables.index.near(text)) or "none"
        raise BadInput(f"{clean(text)[:60]!r} is no known food; near it: {near}.")
    return facts.name
