"""What was put up as open already, and is called good, keeps no longer, and no better, than what
was put up shut and opened in the same minute, whatever it is and wherever it stands."""

from __future__ import annotations

from datetime import timedelta

import pytest

from pantry_tui.core.words import Method, State
from pantry_tui.reference.tables import load_tables
from tests.core.keeping.told import MADE, Told

FOODS = sorted(one.name for one in load_tables().foods)
#: Primes, so that none of the neighbours is always left out.
EVERY, OF_A_SHOP = 17, 5
PLACES = ("larder", "fridge", "freezer")


def milder(came: Told, opened: Told, day: int) -> str:
    """What is milder of the one that came open, "" where nothing is."""
    mine, theirs = came.judged(day), opened.judged(day)
    if not mine.usable:
        return ""
    if not theirs.usable:
        return "usable"
    for name in ("discard_after", "best_by"):
        end = getattr(theirs, name)
        if end is not None and (getattr(mine, name) is None or getattr(mine, name) > end):
            return name
    return ""


@pytest.mark.parametrize("method", [one for one in Method if one is not Method.BOUGHT])
def test_by_whatever_method_it_was_kept(method: Method) -> None:
    """But for what a publication knows open by its name: cut prosciutto, bought so."""
    found = []
    rules = load_tables().book.of(method)
    known = {rule.food for rule in rules if rule.state is State.OPEN and rule.use is not None}
    for food in (one for one in FOODS[::EVERY] if one not in known):
        for place in PLACES:
            came = Told(food, method, place, State.OPEN)
            opened = Told(food, method, place).at(0, 10).open()
            if wrong := milder(came, opened, 1) or milder(came, opened, 20):
                found.append((food, place, wrong))
    assert not found


@pytest.mark.parametrize("record", [{}, {"sold": "shelf"}, {"dated": "use-by"}])
@pytest.mark.parametrize("size", ["", "jar", "tin"])
def test_in_whatever_pack_it_was_bought(size: str, record: dict[str, str]) -> None:
    printed = MADE + timedelta(days=9) if "dated" in record else None
    found = []
    for food in FOODS[::OF_A_SHOP]:
        for place in PLACES:
            kept = {"size": size, "printed": printed, **record}
            came = Told(food, Method.BOUGHT, place, State.OPEN, **kept)  # type: ignore[arg-type]
            shut = Told(food, Method.BOUGHT, place, **kept)  # type: ignore[arg-type]
            opened = shut.at(0, 10).open()
            if wrong := milder(came, opened, 1) or milder(came, opened, 20):
                found.append((food, place, wrong))
    assert not found


@pytest.mark.parametrize(
    "food",
    ["chorizo", "liver", "hams", "sausages", "corned beef", "pastrami", "bacon", "jerky",
     "hard sausages", "prosciutto", "hot dogs", "lunch meats", "cod", "eggs", "milk"],
)  # fmt: skip
@pytest.mark.parametrize("method", [Method.BOUGHT, Method.FRESH])
def test_meat_milk_and_eggs_on_the_day_itself_and_later(food: str, method: Method) -> None:
    for day in (0, 1, 4, 40):
        came = Told(food, method, "fridge", State.OPEN, size="pack")
        opened = Told(food, method, "fridge", size="pack").at(0, 10).open()
        assert milder(came, opened, day) == ""
