"""A ferment that is called ready before any publication would: it is not acid yet, and not offered.

Cabbage takes three to four weeks at 70 to 75 °F and five to six at 60 to 65 (Michigan State
University Extension, sauerkraut); cucumbers a week where they go on in the cold, three and more
elsewhere (USDA AIB 539); kimchi a day at room warmth, three in a refrigerator (Colorado State
University Extension); other vegetables two to seven weeks (University of California Master Food
Preservers). A pH that was measured says it better than any day.
"""

from __future__ import annotations

from collections.abc import Sequence

from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.model import Batch, Container
from pantry_tui.core.safety.strength import PH_LINE, measured_ph
from pantry_tui.core.words import Method, State

#: Warm from here up, °F: between the two ranges that are published.
_WARM_F = 68.0
#: Fewest days warm and cool, of foods by a part of their name; the first that fits.
_LEAST = (
    ("kimchi", 1, 3),
    ("chinese cabbage", 1, 3),
    ("kraut", 21, 35),
    ("cabbage", 21, 35),
    ("cucumber", 7, 7),
    ("dill pickles", 7, 7),
)
_ANY = (14, 14)


def unfinished(batch: Batch, container: Container, spans: Sequence[Span]) -> str:
    """Why a ferment that was called ready is not taken as finished, "" where it is."""
    if batch.method is not Method.LACTIC or any(span.in_progress for span in spans[-1:]):
        return ""
    acidity = measured_ph(dict(batch.process).get("ph", ""))
    if acidity is not None:
        return _still_mild(acidity)
    days = _fermented(container)
    if days is None:
        return ""
    warm = max((span.temperature_f for span in spans if span.in_progress), default=_WARM_F)
    least = next((one[1:] for one in _LEAST if one[0] in batch.food.name), _ANY)
    needed = least[0] if warm >= _WARM_F else least[1]
    if days >= needed:
        return ""
    told = "1 day" if days == 1 else f"{days} days"
    return (
        f"Called ready after {told}: the shortest that is published for {batch.food.name} at "
        f"{warm:g} F is {needed}. Let it ferment on, or measure it and record ph=4.0."
    )


def _still_mild(acidity: float) -> str:
    if acidity <= PH_LINE:
        return ""
    return f"pH {acidity:g} is above {PH_LINE}: it has not fermented enough to be eaten."


def _fermented(container: Container) -> int | None:
    """Days from the put-up to when it was first called ready; None where it never was."""
    first, *later = container.turns
    if first.state is not State.IN_PROGRESS:
        return None
    ended = (turn for turn in later if turn.state not in (None, State.IN_PROGRESS))
    ready = next(ended, None)
    return None if ready is None else (ready.when.day - first.when.day).days
