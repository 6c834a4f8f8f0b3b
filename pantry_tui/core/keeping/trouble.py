"""What about a stay takes food outside the published figures: a refusal, too warm, too cold."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.keeping.exposure import COLD_F
from pantry_tui.core.keeping.rules import Rule, Rulebook
from pantry_tui.core.model import Batch, Crop, Stay
from pantry_tui.core.words import Climate, Kind, Method, State

#: Jars with a vacuum seal stand at 50 to 70 °F; above 95 °F they lose quality in weeks to months
#: and may spoil, frozen they may lose the seal (USDA AIB 539, storing canned food). No number.
CANNED = frozenset({Method.BOILING_WATER, Method.PRESSURE, Method.JAM, Method.VINEGAR_PICKLE})
CANNED_MAX_F, CANNED_MIN_F = 95.0, 32.0
#: Figures published at 36 or 37 °F are held to a place at 38 °F, the coldest that a household
#: refrigerator is taken to be.
COLDEST_FRIDGE_F = 38.0
_WARM = frozenset({Climate.ROOM, Climate.PANTRY, Climate.CELLAR})


@dataclass(frozen=True, slots=True)
class Trouble:
    """A sentence, the rules it rests on, and whether it ends a running safety limit that day."""

    text: str
    rules: tuple[Rule, ...] = ()
    ends_safety: bool = False


def trouble(batch: Batch, stay: Stay, found: Sequence[Rule], book: Rulebook) -> Trouble | None:
    """What is wrong with a stay, or None. `found` are the rules that speak for it."""
    refused = next((rule for rule in found if rule.kind is Kind.REFUSE), None)
    if refused is not None:
        return Trouble(refused.wording, (refused,))
    if stay.climate is Climate.FRIDGE:
        return _warm_fridge(stay, found)
    if batch.method in CANNED and stay.climate in _WARM:
        return _canned(stay)
    crop = book.crops.get(batch.food.name) if batch.method is Method.CELLAR else None
    return _cold_crop(stay, crop) if crop is not None else None


def _warm_fridge(stay: Stay, found: Sequence[Rule]) -> Trouble | None:
    """Above 40 °F for over two hours perishable food is thrown away (FSIS); what has no safety
    figure has no published one there either, unless it also keeps unrefrigerated."""
    cold_only = [rule for rule in found if rule.use is not None and not rule.climates & _WARM]
    if not cold_only:
        return None
    asked = [
        max(COLDEST_FRIDGE_F, rule.temp_f_max)
        for rule in cold_only
        if rule.kind is Kind.SAFETY and rule.temp_f_max is not None
    ]
    limit = min([COLD_F, *asked])
    if stay.temperature_f <= limit:
        return None
    how = "read" if stay.measured else "set"
    text = f"{how.capitalize()} at {stay.temperature_f:g} F, above {limit:g} F"
    if any(rule.kind is Kind.SAFETY for rule in cold_only):
        return Trouble(
            f"{text}: over two hours so warm means discard; if it was shorter, take the reading "
            "back.",
            ends_safety=True,
        )
    return Trouble(f"{text}: warmer than the published figures.")


def _canned(stay: Stay) -> Trouble | None:
    if stay.temperature_f > CANNED_MAX_F:
        return Trouble(
            f"Stood at {stay.temperature_f:g} F: above 95 F canned food may spoil, and no number "
            "is published."
        )
    if stay.temperature_f < CANNED_MIN_F:
        return Trouble(
            f"Stood at {stay.temperature_f:g} F: frozen jars may lose their seal, so look at each "
            "one; no number is published."
        )
    return None


def _cold_crop(stay: Stay, crop: Crop) -> Trouble | None:
    if crop.freezing_f is not None and stay.temperature_f < crop.freezing_f:
        return Trouble(
            f"Stood at {stay.temperature_f:g} F: below {crop.freezing_f:g} F it freezes; use what "
            "is firm at once, no figure is published."
        )
    if crop.chilling_f is not None and stay.temperature_f < crop.chilling_f:
        return Trouble(
            f"Stood at {stay.temperature_f:g} F: below {crop.chilling_f:g} F it is hurt by cold, "
            "and no figure is published."
        )
    return None


def aged(batch: Batch, stay: Stay, today: date) -> tuple[str, ...]:
    """The word of caution for a sealed home-canned jar of more than two years: the University of
    Idaho Extension would throw it out (lids are rated 18 months); others set no end."""
    old = batch.made is not None and today > dates.add(batch.made, 24, "months")
    if not (old and batch.method in CANNED and stay.state is State.SEALED):
        return ()
    return ("Over two years old: one publisher would throw it out; look at seal and lid closely.",)
