"""How many random examples a law is held against: few and always the same, or many and new ones.

`PANTRY_EXAMPLES=20` takes twenty times as many, other ones at each run; `python -m tests.long`
does so. Without it every machine sees the same examples, and none fails for being slow.
"""

from __future__ import annotations

import os

from hypothesis import HealthCheck, Phase, settings

#: How many times as many examples as in an everyday run; below one only for mutants.
FACTOR = float(os.environ.get("PANTRY_EXAMPLES", "1"))

_SLOW = [HealthCheck.too_slow]


def many(usual: int) -> int:
    """The number of examples for a law that is usually held against so many."""
    return max(1, round(usual * FACTOR))


def load_profile() -> None:
    """`ci` as a rule, `long` when asked for more, `mutants` when asked for less."""
    settings.register_profile(
        "ci", max_examples=many(100), deadline=None, derandomize=True, suppress_health_check=_SLOW
    )
    settings.register_profile(
        "long", max_examples=many(100), deadline=None, suppress_health_check=_SLOW, print_blob=True
    )
    # Whether it fails is all that is asked of a mutant: the least example would take time.
    settings.register_profile(
        "mutants", settings.get_profile("ci"), phases=[Phase.explicit, Phase.generate]
    )
    settings.load_profile("long" if FACTOR > 1 else "mutants" if FACTOR < 1 else "ci")
