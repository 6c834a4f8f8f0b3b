"""Salt for a brine, for dry salting, and what is left of it once the vegetables gave their water.

Two bases are in use and both are called per cent: of the water alone (30 g in a litre is 3 %), and
of the finished brine (30.9 g in a litre). With vegetables in it the salt spreads through all of
their water, so a third one counts water and vegetables together.
"""

from __future__ import annotations

from pantry_tui.errors import BadInput

#: Saturated brine, % by total weight (about 26.4 at 60 °F): more does not dissolve.
SATURATED = 26.4


def _share(percent: float, most: float = 100.0) -> float:
    if not 0 < percent < most:
        raise BadInput(f"{percent:g} % is no share of salt here: between 0 and {most:g} %.")
    return percent / 100


def by_water(water_g: float, percent: float) -> float:
    """Grams of salt so that salt : water is `percent`."""
    return water_g * _share(percent)


def by_total(water_g: float, percent: float) -> float:
    """Grams of salt so that salt is `percent` of salt and water. Raises BadInput from the point
    on where no more salt dissolves."""
    share = _share(percent, SATURATED)
    return water_g * share / (1 - share)


def by_all(water_g: float, vegetables_g: float, percent: float) -> float:
    """Grams of salt so that it is `percent` of water and vegetables together."""
    return (water_g + vegetables_g) * _share(percent)


def of_total(salt_g: float, *others_g: float) -> float:
    """% by total weight of `salt_g` in all of it. Raises BadInput for nothing at all."""
    total_g = salt_g + sum(others_g)
    if not total_g > 0:
        raise BadInput("Nothing has no share of salt: say how much it is, more than 0.")
    return 100 * salt_g / total_g


def dry(vegetables_g: float, percent: float) -> float:
    """Grams of salt for vegetables that make their own brine."""
    return vegetables_g * _share(percent)
