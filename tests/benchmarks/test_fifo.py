"""First in, first out under random supply and demand, against the closed form.

Items with a fixed life T arrive as a Poisson stream of rate s, demands as one of rate d; each
demand takes the oldest item, and is lost when there is none; an item that reaches age T is thrown
away (Graves 1982; Parlar, Perry and Stadje 2011). The rate of loss, by level crossing:

Let X be the age of the oldest item, or, when there is none, minus the time until the next comes.
X rises with slope 1. At a demand (rate d, only while X > 0) it falls by the gap between two
arrivals, which is exponential with mean 1/s; when it reaches T the item is thrown away and it
falls by such a gap too. In the long run every level x is passed upwards, at the rate f(x) of X's
density, as often as downwards:

    f(x) = d * integral from max(x, 0) to T of f(y) e^(-s (y - x)) dy + f(T) e^(-s (T - x)).

For 0 < x < T differentiation gives f' = (s - d) f, so f(x) = C e^((s - d) x); for x < 0,
f(x) = C e^(s x). That f is a density fixes C: 1/C = 1/s + (e^((s - d) T) - 1) / (s - d), where the
fraction is T if s = d. Items are thrown away at the rate f(T) = C e^((s - d) T).
"""

from __future__ import annotations

import random
from collections import deque
from math import exp, sqrt

import pytest


def closed_form(s: float, d: float, life: float) -> float:
    """Items thrown away per unit of time."""
    grows = life if s == d else (exp((s - d) * life) - 1) / (s - d)
    return exp((s - d) * life) / (1 / s + grows)


def simulated(s: float, d: float, life: float, until: float, seed: int) -> float:
    """The same, by playing it out."""
    rng = random.Random(seed)
    shelf: deque[float] = deque()
    arrival, demand = rng.expovariate(s), rng.expovariate(d)
    lost = 0
    while min(arrival, demand) < until:
        now = min(arrival, demand)
        while shelf and shelf[0] + life <= now:
            shelf.popleft()
            lost += 1
        if arrival <= demand:
            shelf.append(arrival)
            arrival += rng.expovariate(s)
        else:
            if shelf:
                shelf.popleft()
            demand += rng.expovariate(d)
    return lost / until


@pytest.mark.parametrize(
    ("s", "d", "life"), [(1.0, 1.2, 5.0), (1.0, 1.0, 4.0), (2.0, 1.5, 3.0), (0.5, 1.0, 6.0)]
)
def test_the_loss_of_first_in_first_out_is_the_published_one(
    s: float, d: float, life: float
) -> None:
    runs = [simulated(s, d, life, 4000.0, seed) for seed in range(12)]
    mean = sum(runs) / len(runs)
    spread = sqrt(sum((one - mean) ** 2 for one in runs) / (len(runs) - 1) / len(runs))
    assert abs(mean - closed_form(s, d, life)) <= 4 * spread + 1e-4
