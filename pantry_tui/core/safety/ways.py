"""The canner, the way and the altitude of a process, under whichever key a person named them."""

from __future__ import annotations

from collections.abc import Mapping

from pantry_tui.core.amounts import read_altitude
from pantry_tui.core.safety.measured import (
    CANNERS,
    PRESSURES,
    danger,
    read_canner,
    unsafe_way,
)
from pantry_tui.core.safety.record import TEXTS, WAYS
from pantry_tui.core.safety.values import is_unknown, seal_failed
from pantry_tui.core.words import Method
from pantry_tui.errors import BadInput

#: The top of the lowest band of the tables: all that is checked where nobody said the altitude.
LOWEST_BAND_FT = 1000


def dangers(said: Mapping[str, str]) -> list[str]:
    """What its words say against it, under whatever key they stand."""
    found = [
        unsafe_way(value) if key in WAYS else danger(value)
        for key, value in said.items()
        if key not in TEXTS
    ]
    if seal_failed(said.get("seal", "")):
        found.append("The record says that it did not seal.")
    return [one for one in found if one]


def seal_unknown(value: str) -> list[str]:
    """("?") What is doubted where a record says that nobody knows whether it sealed; where it says
    nothing of it, whoever put it up looks at the lids anyhow."""
    if not value.strip() or not is_unknown(value):
        return []
    return [
        "Nobody knows whether it sealed: press every lid, and record seal=tight or seal=failed."
    ]


def canner_of(said: Mapping[str, str]) -> str | None:
    """The canner, under whichever key a person named it."""
    return read_canner(said.get("canner", "")) or read_canner(said.get("process", ""))


def two_canners(said: Mapping[str, str]) -> list[str]:
    """Boiling water and pressure, each under a key of its own: nobody knows which it was."""
    named = {read_canner(said.get(key, "")) for key in ("canner", "process")}
    if named & {"boiling-water", "steam"} and named & PRESSURES:
        return [f"It names two canners, {said['canner']} and {said['process']}: correct one."]
    return []


def canners_of(method: Method, canner: str | None) -> tuple[str, ...]:
    if canner in CANNERS:
        return (canner,)
    pressure = canner == "pressure" or (canner is None and method is Method.PRESSURE)
    return ("dial", "weighted") if pressure else ("boiling-water",)


def altitude_of(said: str, altitude_ft: int | None) -> int:
    """Feet, by the record, else the household; where nobody knows, the top of the lowest band."""
    try:
        return read_altitude(said) if said else _elsewhere(altitude_ft)
    except BadInput:
        return _elsewhere(altitude_ft)


def _elsewhere(altitude_ft: int | None) -> int:
    return LOWEST_BAND_FT if altitude_ft is None else altitude_ft
