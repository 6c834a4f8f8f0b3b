"""Boiling points and steam against printed tables, typed by hand.

US Standard Atmosphere 1976, table by altitude; IAPWS-IF97 (1997), tables 35 and 36; saturated water
by temperature and by pressure as in engineering handbooks (IAPWS-95). From memory, all of them.
"""

from __future__ import annotations

import pytest

from pantry_tui.core.batchwork import steam

#: Feet -> psi.
ATMOSPHERE = [
    (0, 14.696), (1000, 14.173), (2000, 13.664), (3000, 13.171), (4000, 12.692), (5000, 12.228),
    (6000, 11.777), (8000, 10.916), (10000, 10.106),
]  # fmt: skip

#: Kelvins -> MPa, and MPa -> kelvins: the numbers by which a program is to be checked.
FORWARDS = [(300, 0.353658941e-2), (500, 0.263889776e1), (600, 0.123443146e2)]
BACKWARDS = [(0.1, 0.372755919e3), (1, 0.453035632e3), (10, 0.584149488e3)]

#: °C -> kPa, saturated water.
SATURATED = [
    (80, 47.41), (90, 70.18), (95, 84.61), (100, 101.42), (105, 120.90), (110, 143.38),
    (115, 169.18), (120, 198.67), (125, 232.23), (130, 270.28),
]  # fmt: skip

#: Feet -> °F, as tables of cooking at altitude round it (USDA FSIS).
ROUNDED = [(0, 212), (2000, 208), (5000, 203), (7500, 198), (10000, 194)]


@pytest.mark.parametrize(("feet", "psi"), ATMOSPHERE)
def test_the_air_is_the_standard_atmosphere(feet: int, psi: float) -> None:
    assert steam.air_psi(feet) == pytest.approx(psi, abs=0.002)


@pytest.mark.parametrize(("kelvins", "mpa"), FORWARDS)
def test_saturation_pressure_is_the_printed_one(kelvins: float, mpa: float) -> None:
    assert steam.saturation_mpa(kelvins) == pytest.approx(mpa, rel=1e-8)


@pytest.mark.parametrize(("mpa", "kelvins"), BACKWARDS)
def test_saturation_temperature_is_the_printed_one(mpa: float, kelvins: float) -> None:
    assert steam.saturation_k(mpa) == pytest.approx(kelvins, rel=1e-8)


@pytest.mark.parametrize(("celsius", "kpa"), SATURATED)
def test_steam_is_as_handbooks_print_it(celsius: float, kpa: float) -> None:
    assert steam.saturation_mpa(celsius + 273.15) * 1000 == pytest.approx(kpa, rel=3e-4)
    fahrenheit = celsius * 9 / 5 + 32
    assert steam.boils_at_f(kpa * 1000 / steam.PASCALS_A_PSI) == pytest.approx(fahrenheit, abs=0.03)


@pytest.mark.parametrize(("feet", "fahrenheit"), ROUNDED)
def test_water_boils_as_kitchens_know_it(feet: int, fahrenheit: int) -> None:
    assert steam.boiling_point_f(feet) == pytest.approx(fahrenheit, abs=0.6)


def test_a_canner_at_the_sea_is_as_hot_as_its_publication_says() -> None:
    """USDA: 10 to 15 psi give 240 to 250 °F."""
    assert steam.canner_f(10, 0) == pytest.approx(240, abs=1)
    assert steam.canner_f(15, 0) == pytest.approx(250, abs=0.5)


@pytest.mark.parametrize("feet", [0, 1000, 4500, 8000])
@pytest.mark.parametrize("psi", [5, 10, 11, 15])
def test_pressure_and_warmth_are_each_others_inverse(feet: int, psi: float) -> None:
    assert steam.gauge_psi(steam.canner_f(psi, feet), feet) == pytest.approx(psi, abs=1e-6)


def test_the_higher_the_cooler() -> None:
    points = [steam.boiling_point_f(feet) for feet in range(-1000, 12_000, 250)]
    assert points == sorted(points, reverse=True)
