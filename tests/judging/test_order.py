"""Order, splitting, adding: the laws of house law 7.3 over random histories."""

from __future__ import annotations

import os

import pytest

from tests.judging.bound import Program
from tests.judging.careless import CARELESS, answer_of, seeing
from tests.judging.histories import random_history
from tests.judging.laws import never_later, never_longer, order_law, splitting

N = int(os.environ.get("PANTRY_JUDGED", "400"))
SEEDS = range(N)

#: The laws are worked through once, so all who ask about them sit together.
pytestmark = pytest.mark.xdist_group("laws of order")


def _broken(program: Program) -> dict[str, list[str]]:
    """Each law with what broke it, by seed."""
    found: dict[str, list[str]] = {"order": [], "later": [], "split": [], "longer": []}
    for seed in SEEDS:
        h = random_history(seed)
        for law, said in (
            ("order", order_law(program, h, seed)),
            ("later", never_later(program, h)),
            ("split", splitting(program, h, seed)),
            ("longer", never_longer(program, h, seed)),
        ):
            if said:
                found[law].append(f"seed {seed}, {said}")
    return found


@pytest.mark.parametrize("law", ["order", "later", "split", "longer"])
def test_the_judge_keeps_the_laws(law: str, judge_broken: dict[str, list[str]]) -> None:
    assert not judge_broken[law], judge_broken[law][0]


@pytest.mark.parametrize("law", ["order", "later", "split", "longer"])
def test_the_program_keeps_the_laws(law: str, program_broken: dict[str, list[str]]) -> None:
    assert not program_broken[law], f"{len(program_broken[law])} times:\n{program_broken[law][0]}"


@pytest.fixture(scope="module")
def judge_broken() -> dict[str, list[str]]:
    return _broken(answer_of)


@pytest.fixture(scope="module")
def program_broken(program: Program) -> dict[str, list[str]]:
    return _broken(program)


def test_a_program_that_goes_by_the_order_of_booking_is_found_out() -> None:
    """The order law can fail: a program that takes the booking for the moment breaks it."""
    careless = seeing(CARELESS["everything when it was booked"])
    assert any(order_law(careless, random_history(seed), seed) for seed in SEEDS)


def test_a_program_that_forgets_earlier_places_is_found_out() -> None:
    """`never_later` can fail: one that knows only where a jar stands now lets dates go."""
    careless = seeing(CARELESS["only the last place counts"])
    assert any(never_later(careless, random_history(seed)) for seed in SEEDS)
