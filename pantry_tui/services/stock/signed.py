"""How many containers of a batch showed a sign, against how many its note speaks of."""

from __future__ import annotations

from pantry_tui.core.keeping.doubt import found_unsealed
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.model import Batch
from pantry_tui.core.safety.note_before import Signed, so_many_named
from pantry_tui.core.text import agreed
from pantry_tui.services.pantry import Pantry


def signed_of(p: Pantry, batch: Batch) -> Signed:
    """How many of its containers, here or gone, showed a sign that throws them away; how many more
    were found in time with a lid that did not hold."""
    mine = [one.signs for one in p.containers_of(batch)]
    thrown = [any(seen.verdict in UNFIT for seen in signs) for signs in mine]
    loose = [any(map(found_unsealed, signs)) for signs in mine]
    return sum(thrown), sum(lid and not bad for lid, bad in zip(loose, thrown, strict=True))


def still_to_name(p: Pantry, batch: Batch) -> str:
    """ "1 of the 2 that its note speaks of is named: ..."; "" where its note asks for none, or it
    is not known for how many."""
    shown = signed_of(p, batch)
    counts = (so_many_named(one, shown) for one in batch.doubt)
    named, told = max(
        ((some, most) for some, most in counts if most is not None),
        key=lambda pair: pair[1] - pair[0],
        default=(0, 0),
    )
    if not told:
        return ""
    if named < told:
        return (
            f"{named} of the {told} that its note speaks of {agreed(named, 'is', 'are')} named: "
            f"name the {agreed(told - named, 'other', 'others')} too, by number."
        )
    return (
        f"All that its note speaks of are named ({told}): put the note right now "
        f"(`correct {batch.code} --note`), then look at each of the others."
    )
