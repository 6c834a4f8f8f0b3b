"""What is asked of a refrigerator that does not hold the cold, or of a freezer that does not
freeze: the days of a cold one are no answer there, as a reading of that place would have it."""

from __future__ import annotations

from typing import Any

from pantry_tui.core.keeping import wording
from pantry_tui.core.keeping.cases import BOTH_WORLDS_F
from pantry_tui.core.keeping.ladder import Judgement
from pantry_tui.core.keeping.weather import THAWS_F
from pantry_tui.core.words import Climate, Kind, Method, Verdict

_FRIDGE = "A refrigerator at {:g} F does not hold the cold: "
_TWO_HOURS = "no days of a cold one stand there. Above {:g} F it is over after two hours in all."
_NO_FIGURE = "no figure is published for it above {:g} F."
_FREEZER = (
    "A freezer at {:g} F does not freeze, so nothing keeps there as frozen food: it thaws. Ask for "
    "it as thawed, in a fridge at 40 F or colder."
)


def instead(
    answer: dict[str, Any], place: Climate, temp_f: float | None, judged: Judgement
) -> dict[str, Any] | None:
    """The answer without a day, where the temperature that is asked about is too warm for what is
    asked; None where it is cold enough, or the food needs no cold."""
    if temp_f is None:
        return None
    hurried = judged.reasons[:1] and judged.reasons[0].startswith(wording.TOO_WARM)
    unknown = judged.verdict is Verdict.UNKNOWN and not judged.usable
    needs_cold = hurried or unknown or answer["method"] == Method.FROZEN.value
    if place is Climate.FREEZER and temp_f > THAWS_F and needs_cold:
        why = _FREEZER.format(temp_f)
    elif place is Climate.FRIDGE and temp_f > BOTH_WORLDS_F and (hurried or unknown):
        over = _TWO_HOURS if hurried else _NO_FIGURE
        why = f"{_FRIDGE.format(temp_f)}{over.format(BOTH_WORLDS_F)}"
    else:
        return None
    none = {kind.value: None for kind in (Kind.QUALITY, Kind.SAFETY)}
    return {
        **answer,
        "allowed": False,
        "best_by": None,
        "discard_after": None,
        "published": none,
        "in_use": none,
        "reasons": [why],
    }
