"""What weights alone say: sugar in a syrup, water out of a drying tray, spirit in a jar of fruit,
cure in meat."""

from __future__ import annotations

from math import floor

from pantry_tui.errors import BadInput


def sugar_for(water_g: float, percent: float) -> float:
    """Grams of sugar so that it is `percent` of the syrup by weight."""
    if not 0 < percent < 90:
        raise BadInput(f"{percent:g} % is no syrup: between 0 and 90 %.")
    return water_g * percent / (100 - percent)


def dried_g(fresh_g: float, moisture: float, target: float) -> float:
    """What is left of `fresh_g` with `moisture` % water once only `target` % is left in it: the
    dry matter stays. Raises BadInput where nothing would be lost."""
    if not 0 <= target < moisture < 100:
        raise BadInput(
            f"Drying goes from more water to less: {moisture:g} % to {target:g} % does not."
        )
    return fresh_g * (100 - moisture) / (100 - target)


def moisture_now(fresh_g: float, moisture: float, now_g: float) -> float:
    """% of water in what weighs `now_g` now. Raises BadInput below its dry matter."""
    dry = fresh_g * (100 - moisture) / 100
    if not dry < now_g <= fresh_g:
        raise BadInput("That weighs less than its dry matter, or more than it did fresh.")
    return 100 * (now_g - dry) / now_g


def spirit_left(spirit_ml: float, percent: float, plant_g: float, water_percent: float) -> float:
    """% alcohol by volume once the water of the plant (1 g taken as 1 ml) is in the spirit; the
    slight shrinking of the mixture is left out."""
    return percent * spirit_ml / (spirit_ml + plant_g * water_percent / 100)


def nitrite_ppm(cure_g: float, nitrite_percent: float, meat_g: float) -> float:
    """Nitrite going in, parts a million of the meat."""
    return cure_g * nitrite_percent / 100 / meat_g * 1e6


def full(amount: float, each: float) -> int:
    """How many are filled whole; a thousandth short still counts as full."""
    return floor(amount / each + 0.001)
