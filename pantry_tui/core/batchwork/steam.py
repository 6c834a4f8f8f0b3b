"""Boiling point and gauge pressure, from physics alone: nothing here is a process.

Air: US Standard Atmosphere 1976 below 36,000 ft. Steam: the saturation line of IAPWS-IF97
(region 4), which is exact both ways. Both are recalled and checked against printed values in
tests/published/test_steam.py.
"""

from __future__ import annotations

from math import sqrt

#: Sea level: pascals, kelvins, kelvins a metre, and g M / (R L).
_SEA_PA, _SEA_K, _LAPSE, _POWER = 101_325.0, 288.15, 0.0065, 5.25588
FEET_A_METRE = 3.280839895
PASCALS_A_PSI = 6_894.757293

#: IAPWS-IF97, coefficients of the saturation equation.
_N = (
    0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5,
    -0.32325550322333e7, 0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6,
    -0.23855557567849, 0.65017534844798e3,
)  # fmt: skip


def air_psi(altitude_ft: float) -> float:
    """Pressure of the standard atmosphere there, psi absolute."""
    kelvins = _SEA_K - _LAPSE * altitude_ft / FEET_A_METRE
    return float(_SEA_PA * (kelvins / _SEA_K) ** _POWER / PASCALS_A_PSI)


def saturation_mpa(kelvins: float) -> float:
    """The pressure at which water boils at that temperature, MPa absolute."""
    t = kelvins + _N[8] / (kelvins - _N[9])
    a = t * t + _N[0] * t + _N[1]
    b = _N[2] * t * t + _N[3] * t + _N[4]
    c = _N[5] * t * t + _N[6] * t + _N[7]
    return float((2 * c / (-b + sqrt(b * b - 4 * a * c))) ** 4)


def saturation_k(mpa: float) -> float:
    """The temperature at which water boils under that pressure, K."""
    root = mpa**0.25
    e = root * root + _N[2] * root + _N[5]
    f = _N[0] * root * root + _N[3] * root + _N[6]
    g = _N[1] * root * root + _N[4] * root + _N[7]
    d = 2 * g / (-f - sqrt(f * f - 4 * e * g))
    return float((_N[9] + d - sqrt((_N[9] + d) ** 2 - 4 * (_N[8] + _N[9] * d))) / 2)


def boils_at_f(psi_absolute: float) -> float:
    """°F at which water boils under an absolute pressure."""
    return (saturation_k(psi_absolute * PASCALS_A_PSI / 1e6) - 273.15) * 9 / 5 + 32


def boiling_point_f(altitude_ft: float) -> float:
    """°F at which water boils in an open pot there, on a day of usual weather."""
    return boils_at_f(air_psi(altitude_ft))


def canner_f(gauge_psi: float, altitude_ft: float) -> float:
    """°F of the steam in a vented canner at that gauge pressure."""
    return boils_at_f(air_psi(altitude_ft) + gauge_psi)


def gauge_psi(temp_f: float, altitude_ft: float) -> float:
    """The gauge pressure at which the steam in a vented canner is `temp_f`; below 0 where water
    boils hotter than that in an open pot."""
    kelvins = (temp_f - 32) * 5 / 9 + 273.15
    return saturation_mpa(kelvins) * 1e6 / PASCALS_A_PSI - air_psi(altitude_ft)
