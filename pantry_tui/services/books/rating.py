"""What the household says of a batch at table: again, not again, or what to change."""

from __future__ import annotations

from collections.abc import Sequence

from pantry_tui.core.log.payloads import Rated
from pantry_tui.core.text import clean
from pantry_tui.core.words import Rating
from pantry_tui.errors import BadInput
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.stock.pick import batch_named
from pantry_tui.services.stock.seen import At, when


def read_taste(text: str) -> Rating:
    """("not-again") -> Rating.NOT_AGAIN. Raises BadInput."""
    said = " ".join(text.lower().replace("-", " ").split())
    try:
        return Rating(said)
    except ValueError:
        raise BadInput(f"{clean(text)[:40]!r} is none of again, not-again, change.") from None


def split(words: Sequence[str]) -> tuple[str, str]:
    """("not", "again", "too", "sweet") -> the verdict's words and the note."""
    taken = 2 if [word.lower() for word in words[:2]] == ["not", "again"] else 1
    return " ".join(words[:taken]), " ".join(words[taken:])


@booked
def taste(p: Pantry, ref: str, said: str, note: str = "", *, at: At | None = None) -> Done:
    """Keep what was said of a batch, also of one that is eaten up. The last word stands.

    Raises BadInput for an unknown code or word.
    """
    batch = batch_named(p, ref)
    which = read_taste(said)
    words = clean(note)
    p.book(Rated(batch.id, which, words), **when(at))
    more = f" ({words})" if words else ""
    return Done(f"Noted of {batch.code} {batch.food.name}: {which}{more}.")


def verdicts(p: Pantry, food: str) -> tuple[str, ...]:
    """The last word on each batch of a food, youngest batch first: "not again: 7C"."""
    from pantry_tui.services.books.past import by_food

    mine = [one for one in by_food(p).get(food, ()) if one.rated[1]]
    mine.sort(key=lambda one: (one.rated[0], one.code), reverse=True)
    return tuple(one.rated[1] for one in mine)
