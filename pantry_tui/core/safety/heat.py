"""How hot it came in the canner, where a record says so: what never boiled was not processed.

Low-acid food is sterilised at 240 to 250 °F; jars in water that boils take the times of the tables;
and pickles whose recipe says so may stand in water of 180 to 185 °F for 30 minutes (USDA AIB 539,
guides 1 and 6, as Michigan State University Extension carries them).
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Protocol

from pantry_tui.core.batchwork.steam import boiling_point_f
from pantry_tui.core.safety.measured import all_fahrenheit, read_minutes
from pantry_tui.core.safety.ways import altitude_of

_PRESSURE_F = 240.0
_PASTEURISED_F, _PASTEURISED_MINUTES = 180.0, 30.0
#: How the note of a process says that its recipe allows that.
_PASTEURISED = "low-temperature pasteurisation"


class _Row(Protocol):
    """A published process (core.safety.process)."""

    @property
    def note(self) -> str: ...


def too_cool(
    canners: Sequence[str], said: Mapping[str, str], rows: Sequence[_Row], altitude_ft: int | None
) -> list[str]:
    """Why jars were not hot enough, a sentence, by the coolest that a record names; `rows` are the
    food's processes in that canner, altitude in feet, None where nobody knows."""
    every = all_fahrenheit(said.get("temperature", ""))
    if not every:
        return []
    coolest = min(every)
    if "boiling-water" not in canners and "steam" not in canners:
        if coolest >= _PRESSURE_F:
            return []
        return [f"{coolest:g} F is too cool: food in a pressure canner comes to {_PRESSURE_F:g} F."]
    # Where nobody knows the altitude, water boils as at the sea.
    boils = math.floor(boiling_point_f(altitude_of(said.get("altitude", ""), altitude_ft or 0)))
    if coolest >= boils:
        return []
    if not any(_PASTEURISED in row.note for row in rows):
        return [f"{coolest:g} F is below boiling, {boils:g} F: no process is published at that."]
    minutes = read_minutes(said.get("minutes", ""))
    if coolest >= _PASTEURISED_F and minutes is not None and minutes >= _PASTEURISED_MINUTES:
        return []
    return [
        f"{coolest:g} F is below boiling: these pickles take {_PASTEURISED_MINUTES:g} minutes at "
        f"{_PASTEURISED_F:g} F or more, by a recipe that says so."
    ]
