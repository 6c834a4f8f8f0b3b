"""Cold-smoked fish and meat by what their record says. Typed by hand: Michigan, R 285.569.8, and
Maine, chapter 359 (salt in the water of smoked fish); University of Alaska Fairbanks, FNH-00325
(air below 85 °F)."""

from __future__ import annotations

import pytest

from pantry_tui.core.keeping.ladder import Judgement
from pantry_tui.core.safety.smoke import SALT_NOT_CHECKED, too_little_smoked
from pantry_tui.core.words import Method, Verdict
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.pantry import Pantry
from tests.core.keeping.told import facts_of


def judged(p: Pantry, line: str) -> Judgement:
    code = put_up(p, read(p, f"2 packs {line}, fridge")).code
    batch = next(one for one in p.stock.batches.values() if one.code == code)
    return p.judge(p.containers_of(batch)[0])


@pytest.mark.parametrize(
    "line",
    [
        "salmon, cold smoked, salt=1%",
        "salmon, cold smoked, salt=2.9%",
        "salmon, cold smoked, salt=none",
        'salmon, cold smoked, salt="2% brine"',
        "trout, cold smoked, salt=0g",
        'salmon, cold smoked, salt="20 g to 1 kg"',
        "salmon, cold smoked, salt=3.4% vacuum=yes",
        "lox, cold smoked, salt=2%",
        "salmon, cold smoked, salt=4% temp=90F",
        "salmon, cold smoked, salt=4% temp=35C",
        "salmon, cold smoked, temp=120F",
        'salmon, cold smoked, salt=4% temp="70-95F"',
        "beef, cold smoked, cure=none",
        "sausages, cold smoked, cure=no",
    ],
)
def test_too_little_salt_or_cure_or_too_warm_a_smoke_is_never_offered(
    larder: Pantry, line: str
) -> None:
    found = judged(larder, line)
    assert not found.usable, found
    assert found.verdict in (Verdict.UNKNOWN, Verdict.DISCARD, Verdict.DO_NOT_TASTE)


@pytest.mark.parametrize(
    ("line", "checked"),
    [
        ("salmon, cold smoked, salt=3%", True),
        ("salmon, cold smoked, salt=3.5% vacuum=yes", True),
        ("salmon, cold smoked, salt=3% vacuum=no temp=60F", True),
        ('salmon, cold smoked, salt="40 g to 1 kg" temp=85F', True),
        ("salmon, cold smoked", False),
        ("salmon, cold smoked, temp=60F", False),
        ('salmon, cold smoked, salt="3 tbsp"', False),
        # Weighed beside the fish it is the fish's, however much.
        ('salmon, cold smoked, salt="80 g to 1 kg"', True),
        ('salmon, cold smoked, salt="10% brine"', False),
        ("salmon, cold smoked, salt=?", False),
        # What nobody eats as it is was the brine that the fish lay in.
        ("salmon, cold smoked, salt=5%", True),
        ("salmon, cold smoked, salt=6%", False),
        ("trout, cold smoked, salt=10% vacuum=yes", False),
        # A brine as strong as the fish must be says nothing of the fish either.
        ('salmon, cold smoked, salt="3% brine"', False),
        ('trout, cold smoked, salt="4% in water" vacuum=yes', False),
        ('salmon, cold smoked, salt="4l of 4%"', False),
        ("salmon, cold smoked, salt=unknown", False),
    ],
)
def test_enough_of_it_is_checked_and_what_nobody_said_stands_beside_it(
    larder: Pantry, line: str, checked: bool
) -> None:
    found = judged(larder, line)
    assert found.usable
    assert (SALT_NOT_CHECKED not in found.standing) == checked


def test_salt_is_asked_of_no_other_food(larder: Pantry) -> None:
    for line in ("bacon, cold smoked, cure=yes", "trout, hot smoked", "salmon, bought in"):
        assert SALT_NOT_CHECKED not in judged(larder, line).standing


LITTLE = {"salt": "1%", "cure": "none", "temperature": "120F"}


@pytest.mark.parametrize(
    ("food", "method"),
    [("salmon", Method.HOT_SMOKED), ("salmon", Method.SALTED), ("beef", Method.HOT_SMOKED),
     ("hard cheese", Method.COLD_SMOKED), ("garlic", Method.COLD_SMOKED)],
)  # fmt: skip
def test_of_other_food_and_of_what_heat_cooked_it_says_nothing(food: str, method: Method) -> None:
    assert too_little_smoked(method, facts_of(food), LITTLE) == []


def test_it_is_said_what_is_wrong_and_how_it_is_packed() -> None:
    salt, warm = too_little_smoked(Method.COLD_SMOKED, facts_of("trout"), LITTLE)
    assert "1 % of salt is too little: smoked fish packed in air holds at least 3 %" in salt
    assert warm.startswith("120 F is too warm for cold smoke")
    for airless in ("yes", "y", "True"):
        (salt,) = too_little_smoked(
            Method.COLD_SMOKED, facts_of("trout"), {"salt": "3.4%", "vacuum": airless}
        )
        assert "packed without air holds at least 3.5 %" in salt
    cure, _ = too_little_smoked(Method.COLD_SMOKED, facts_of("beef"), LITTLE)
    assert cure.startswith("No cure was used")
