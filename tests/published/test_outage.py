"""What a power cut does to each item, typed in by hand from the published tables named above
each block, and asked of the program."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from pantry_tui.core.dataclass import replace
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.outage import Cut, Triage, hold_hours, triage
from pantry_tui.core.words import Acidity, Climate, Group, Method, State, Trust, Verdict
from pantry_tui.reference.outage import load_outage
from pantry_tui.reference.tables import load_tables

FRIDGE, FREEZER = Climate.FRIDGE, Climate.FREEZER

#: The conditions of the tables, as a household would meet them.
CUTS = {
    # refrigerator: held above 40 °F for over 2 h
    "above 40 F 2 h": Cut(FRIDGE, 3, False, 50, None),
    # refrigerator: above 50 °F for over 8 h
    "above 50 F 8 h": Cut(FRIDGE, 9, False, 60, None),
    # freezer: still with ice crystals, as cold as a refrigerator
    "icy": Cut(FREEZER, 30, False, None, True),
    # freezer: thawed, held above 40 °F for over 2 h, under 6 h
    "thawed 2 h": Cut(FREEZER, 5, False, 55, False),
    # freezer: thawed, held above 40 °F for over 6 h
    "thawed 6 h": Cut(FREEZER, 7, False, 55, False),
}

#: method | food | state | condition | what to do
TYPED = {
    "foodsafety.gov, Food Safety During Power Outage, refrigerator chart": """
        fresh | ground beef | sealed | above 40 F 2 h | discard
        fresh | beef | sealed | above 40 F 2 h | discard
        fresh | chickens | sealed | above 40 F 2 h | discard
        fresh | salmon | sealed | above 40 F 2 h | discard
        fresh | shrimp | sealed | above 40 F 2 h | discard
        cooked meal | beef | sealed | above 40 F 2 h | discard
        frozen | turkeys | thawed | above 40 F 2 h | discard
        frozen | ground pork | thawed | above 40 F 2 h | discard
        salted | bacon | sealed | above 40 F 2 h | discard
        salted | hams | open | above 40 F 2 h | discard
        fresh | sausages | sealed | above 40 F 2 h | discard
        salted | dried beef | sealed | above 40 F 2 h | discard
        bought in | bacon | open | above 40 F 2 h | discard
        cooked meal | chicken stock | sealed | above 40 F 2 h | discard
        cooked meal | stew | sealed | above 40 F 2 h | discard
        cooked meal | vegetable soup | open | above 40 F 2 h | discard
        cooked meal | leftovers | sealed | above 40 F 2 h | discard
        fresh | cheese | sealed | above 40 F 2 h | discard
        fresh | hard cheese | sealed | above 40 F 2 h | keep
        bought in | hard cheese | open | above 40 F 2 h | keep
        fresh | milk | sealed | above 40 F 2 h | discard
        bought in | mayonnaise | open | above 40 F 2 h | keep
        fresh | mayonnaise | sealed | above 40 F 2 h | discard
        cooked meal | mayonnaise | open | above 40 F 2 h | discard
        fridge pickle | mayonnaise | open | above 40 F 2 h | discard
        bought in | milk | open | above 40 F 2 h | discard
        fresh | cream | sealed | above 40 F 2 h | discard
        fresh | yogurt | sealed | above 40 F 2 h | discard
        fresh | butter | sealed | above 40 F 2 h | keep
        fresh | butter | open | above 40 F 2 h | keep
        fresh | eggs | sealed | above 40 F 2 h | discard
        fresh | hard-cooked eggs | sealed | above 40 F 2 h | discard
        fresh | apples | open | above 40 F 2 h | discard
        fresh | melons | open | above 40 F 2 h | discard
        fresh | apples | sealed | above 40 F 2 h | keep
        fresh | strawberries | sealed | above 40 F 2 h | keep
        cellar-stored | pears | sealed | above 40 F 2 h | keep
        fresh | apple juice | open | above 40 F 2 h | keep
        fresh | tomato-vegetable juice | open | above 40 F 2 h | discard
        fresh | tomato-vegetable juice | sealed | above 40 F 2 h | discard
        fresh | carrot juice | open | above 40 F 2 h | discard
        fresh | carrot juice | sealed | above 40 F 2 h | discard
        bought in | pastries | sealed | above 40 F 2 h | discard
        fresh | shredded cheese | sealed | above 40 F 2 h | discard
        boiling-water canned | peaches | open | above 40 F 2 h | keep
        dried | apricots | open | above 40 F 2 h | keep
        dried | plums | sealed | above 40 F 2 h | keep
        fridge pickle | horseradish sauce | open | above 40 F 2 h | keep
        fridge pickle | horseradish sauce | open | above 50 F 8 h | discard
        boiling-water canned | tomato sauce | open | above 40 F 2 h | discard
        jam | apple jelly | open | above 40 F 2 h | keep
        jam | strawberry jam | open | above 40 F 2 h | keep
        freezer jam | raspberry jam | thawed | above 40 F 2 h | keep
        boiling-water canned | pickle relish | open | above 40 F 2 h | keep
        boiling-water canned | ketchups | open | above 40 F 2 h | keep
        vinegar pickle | dill pickles | open | above 40 F 2 h | keep
        fridge pickle | cucumbers | sealed | above 40 F 2 h | keep
        pressure canned | beef | open | above 40 F 2 h | discard
        pressure canned | tuna | open | above 40 F 2 h | discard
        pressure canned | runner beans | open | above 40 F 2 h | discard
        pressure canned | chicken soup | open | above 40 F 2 h | discard
        in oil | garlic | sealed | above 40 F 2 h | discard
        in oil | basil | open | above 40 F 2 h | discard
        in oil | pesto | sealed | above 40 F 2 h | discard
        hot smoked | salmon | sealed | above 40 F 2 h | discard
        cold smoked | trout | sealed | above 40 F 2 h | discard
        dried | jerky | sealed | above 40 F 2 h | discard
        salted | summer sausages | open | above 40 F 2 h | discard
        fresh | bread dough | sealed | above 40 F 2 h | discard
        cooked meal | rice | sealed | above 40 F 2 h | discard
        fresh | bread | sealed | above 40 F 2 h | keep
        bought in | muffins | open | above 40 F 2 h | keep
        fresh | cakes | sealed | above 40 F 2 h | keep
        fresh | carrots | open | above 40 F 2 h | discard
        cooked meal | carrots | sealed | above 40 F 2 h | discard
        cooked meal | potatoes | sealed | above 40 F 2 h | discard
        boiling-water canned | tomato juice | open | above 40 F 2 h | discard
        fresh | carrots | sealed | above 40 F 2 h | keep
        fresh | broccoli | sealed | above 40 F 2 h | keep
        cellar-stored | cabbages | sealed | above 40 F 2 h | keep
        fresh | mushrooms | sealed | above 40 F 2 h | keep
        fresh | parsley | sealed | above 40 F 2 h | keep
    """,
    "foodsafety.gov, Frozen Food and Power Outages, reviewed 2021": """
        frozen | beef | sealed | icy | refreeze
        frozen | beef | sealed | thawed 2 h | discard
        frozen | ground beef | sealed | icy | refreeze
        frozen | ground beef | sealed | thawed 2 h | discard
        frozen | pork | sealed | icy | refreeze
        frozen | pork | sealed | thawed 2 h | discard
        frozen | lamb | sealed | thawed 2 h | discard
        frozen | chickens | sealed | icy | refreeze
        frozen | chickens | sealed | thawed 2 h | discard
        frozen | liver | sealed | icy | refreeze
        frozen | liver | sealed | thawed 2 h | discard
        frozen | stew | sealed | icy | refreeze
        frozen | stew | sealed | thawed 2 h | discard
        cooked meal | chicken soup | sealed | icy | refreeze
        cooked meal | chicken soup | sealed | thawed 2 h | discard
        frozen | lasagne | sealed | icy | refreeze
        frozen | lasagne | sealed | thawed 2 h | discard
        frozen | cod | sealed | icy | refreeze
        frozen | cod | sealed | thawed 2 h | discard
        frozen | shrimp | sealed | icy | refreeze
        frozen | shrimp | sealed | thawed 2 h | discard
        frozen | milk | sealed | icy | refreeze
        frozen | milk | sealed | thawed 2 h | discard
        frozen | eggs | sealed | icy | refreeze
        frozen | eggs | sealed | thawed 2 h | discard
        frozen | cheese | sealed | icy | refreeze
        frozen | cheese | sealed | thawed 2 h | discard
        frozen | hard cheese | sealed | icy | refreeze
        frozen | hard cheese | sealed | thawed 6 h | refreeze
        frozen | apple juice | sealed | icy | refreeze
        frozen | apple juice | sealed | thawed 6 h | refreeze
        frozen | strawberries | sealed | icy | refreeze
        frozen | strawberries | sealed | thawed 2 h | refreeze
        frozen | strawberries | sealed | thawed 6 h | refreeze
        frozen | peaches | sealed | thawed 6 h | refreeze
        frozen | tomato juice | sealed | icy | refreeze
        frozen | tomato juice | sealed | thawed 6 h | discard
        frozen | tomato-vegetable juice | sealed | thawed 6 h | discard
        frozen | carrot juice | sealed | thawed 6 h | discard
        frozen | runner beans | sealed | icy | refreeze
        frozen | runner beans | sealed | thawed 2 h | refreeze
        frozen | runner beans | sealed | thawed 6 h | discard
        frozen | sweet corn | sealed | thawed 6 h | discard
        frozen | bread | sealed | icy | refreeze
        frozen | bread | sealed | thawed 6 h | refreeze
        frozen | muffins | sealed | thawed 6 h | refreeze
        frozen | pies | sealed | icy | refreeze
        frozen | pies | sealed | thawed 2 h | discard
        frozen | bread dough | sealed | icy | refreeze
        frozen | bread dough | sealed | thawed 6 h | refreeze
        frozen | flour | sealed | thawed 6 h | refreeze
        frozen | walnuts | sealed | icy | refreeze
        frozen | walnuts | sealed | thawed 6 h | refreeze
        frozen | rice | sealed | thawed 2 h | discard
    """,
    "USDA FSIS, Freezing and Food Safety: ice crystals left, or 40 F or below": """
        frozen | parsley | sealed | icy | refreeze
        frozen | butter | sealed | icy | refreeze
        freezer jam | strawberry jam | sealed | icy | refreeze
    """,
    "USDA FSIS, Basics for Handling Food Safely: thawed fast, freeze only once cooked": """
        frozen | ground beef | thawed | icy | use now
        frozen | chickens | thawed | icy | use now
    """,
    "US FDA, Food Code: raw seed sprouts only in the cold, from memory; no row for dips": """
        fresh | bean sprouts | sealed | above 40 F 2 h | discard
        fresh | alfalfa sprouts | open | above 40 F 2 h | discard
        fridge pickle | hummus | sealed | above 40 F 2 h | discard
        fridge pickle | guacamole | open | above 40 F 2 h | discard
        fridge pickle | garlic paste | sealed | above 40 F 2 h | discard
        fridge pickle | dill pickles | sealed | above 40 F 2 h | keep
        fridge pickle | pickled onions | open | above 40 F 2 h | keep
    """,
    "NC State Extension, answer 622: seafood no longer cold is not frozen again": """
        frozen | salmon | sealed | thawed 2 h | discard
        frozen | oysters | sealed | thawed 2 h | discard
    """,
}

#: Not in the table of foods: name | group | condition | what to do (foodsafety.gov, both charts).
NAMED = """
    ice cream | dairy | icy | discard
    ice cream | dairy | thawed 2 h | discard
    frozen yogurt | dairy | icy | discard
    cheesecake | dairy | icy | refreeze
    cheesecake | dairy | thawed 2 h | discard
    waffles | grain | icy | refreeze
    waffles | grain | thawed 6 h | refreeze
    tofu | vegetable | above 40 F 2 h | discard
    pizza | meal | above 40 F 2 h | discard
    mayonnaise | relish | above 40 F 2 h | keep
    mayonnaise | relish | above 50 F 8 h | discard
    mustard | relish | above 40 F 2 h | keep
    soy sauce | relish | above 50 F 8 h | keep
    oyster sauce | relish | above 40 F 2 h | discard
    peanut butter | fat | above 40 F 2 h | keep
    margarine | fat | above 40 F 2 h | keep
    quiche | meal | above 40 F 2 h | discard
"""

VERDICTS = {
    "keep": Verdict.SOUND, "refreeze": Verdict.EAT_SOON, "use now": Verdict.EAT_SOON,
    "discard": Verdict.DISCARD,
}  # fmt: skip


def lines() -> Iterator[tuple[str, ...]]:
    for publication, block in TYPED.items():
        for line in block.strip().splitlines():
            yield (publication, *(part.strip() for part in line.split("|")))


def named() -> Iterator[tuple[str, ...]]:
    for line in NAMED.strip().splitlines():
        yield tuple(part.strip() for part in line.split("|"))


def asked(method: str, food: str, state: str, cut: Cut) -> Triage:
    facts = load_tables().facts(food)
    assert facts is not None, food
    return triage(facts, Method(method), State(state), cut, load_outage())


@pytest.mark.parametrize(
    ("publication", "method", "food", "state", "condition", "action"), list(lines())
)
def test_the_item_fares_as_published(
    publication: str, method: str, food: str, state: str, condition: str, action: str
) -> None:
    found = asked(method, food, state, CUTS[condition])
    assert found.action == action, (publication, found.reasons)
    assert found.verdict is VERDICTS[action]
    assert len(found.reasons) >= 2
    assert found.rules


@pytest.mark.parametrize(("food", "group", "condition", "action"), list(named()))
def test_what_the_food_table_does_not_hold_is_known_by_its_name(
    food: str, group: str, condition: str, action: str
) -> None:
    facts = FoodFacts(food, Group(group), Acidity.LOW_ACID, known=False)
    method = Method.BOUGHT if CUTS[condition].appliance is FRIDGE else Method.FROZEN
    found = triage(facts, method, State.SEALED, CUTS[condition], load_outage())
    assert found.action == action, found.reasons


def test_enough_is_checked() -> None:
    typed = list(lines())
    assert len({line[1:] for line in typed}) >= 120
    assert {line[4] for line in typed} == set(CUTS)


@pytest.mark.parametrize(
    ("appliance", "full", "hours"),
    [
        (FRIDGE, False, 4),  # foodsafety.gov, Refrigerated Food and Power Outages
        (FRIDGE, True, 4),
        (FREEZER, True, 48),  # NC Cooperative Extension, Davidson County, 2020
        (FREEZER, False, 24),
    ],
)
def test_a_shut_door_holds_the_cold_as_long_as_published(
    appliance: Climate, full: bool, hours: float
) -> None:
    assert hold_hours(appliance, full) == hours
    method = Method.FRESH if appliance is FRIDGE else Method.FROZEN
    within = asked(method, "ground beef", "sealed", Cut(appliance, hours, full, None, None))
    past = asked(method, "ground beef", "sealed", Cut(appliance, hours + 0.1, full, None, None))
    assert (within.action, within.verdict) == ("keep", Verdict.SOUND)
    assert (past.action, past.verdict) == ("discard", Verdict.DISCARD)
    assert [rule.hours for rule in within.rules] == [hours]


@pytest.mark.parametrize(
    ("cut", "action"),
    [
        # FSIS: perishable food may be above 40 °F for 2 h, above 90 °F for 1 h.
        (Cut(FRIDGE, 2, False, 50, None), "keep"),
        (Cut(FRIDGE, 2.1, False, 50, None), "discard"),
        (Cut(FRIDGE, 1, False, 95, None), "keep"),
        (Cut(FRIDGE, 1.1, False, 95, None), "discard"),
        (Cut(FRIDGE, 2, False, 90, None), "keep"),
        # 40 °F is still cold, however long.
        (Cut(FRIDGE, 30, False, 40, None), "keep"),
        (Cut(FRIDGE, 30, False, 40.5, None), "discard"),
    ],
)
def test_how_long_milk_may_be_warm(cut: Cut, action: str) -> None:
    assert asked("fresh", "milk", "sealed", cut).action == action


@pytest.mark.parametrize(
    ("hours", "action"), [(2, "refreeze"), (5.9, "refreeze"), (6, "discard"), (6.1, "discard")]
)
def test_vegetables_go_from_six_hours_on(hours: float, action: str) -> None:
    # The chart says over 6 h, its refreezing line 6 h: the stricter.
    cut = Cut(FREEZER, hours, False, 60, False)
    assert asked("frozen", "peas", "sealed", cut).action == action


@pytest.mark.parametrize(
    ("cut", "action"),
    [
        (Cut(FREEZER, 30, False, 38, None), "refreeze"),  # FSIS: at 40 °F or below
        (Cut(FREEZER, 30, False, 40, False), "refreeze"),
        (Cut(FREEZER, 30, False, 41, False), "discard"),
        (Cut(FREEZER, 30, False, 41, None), "discard"),
        # Thawed raw ground meat has a day, even cold (University of Illinois Extension).
        (Cut(FREEZER, 48, False, 40, False), "refreeze"),
        (Cut(FREEZER, 49, False, 40, False), "discard"),
        (Cut(FREEZER, 49, False, 40, True), "refreeze"),
    ],
)
def test_when_ground_meat_may_be_frozen_again(cut: Cut, action: str) -> None:
    assert asked("frozen", "ground beef", "sealed", cut).action == action


@pytest.mark.parametrize("food", ["carrots", "lettuces", "melons", "figs", "apples", "tomatoes"])
@pytest.mark.parametrize("method", ["fresh", "cellar-stored", "bought in"])
def test_what_was_cut_goes_after_two_hours(method: str, food: str) -> None:
    # foodsafety.gov: cut fresh fruit and pre-cut greens; US FDA, produce: chilled in two hours.
    facts = load_tables().facts(food)
    assert facts is not None
    cut = replace(facts, classes=facts.classes | {"cut"})
    for condition in ("above 40 F 2 h", "above 50 F 8 h"):
        found = triage(cut, Method(method), State.SEALED, CUTS[condition], load_outage())
        assert found.action == "discard", found.reasons


@pytest.mark.parametrize("ice", [None, True])
@pytest.mark.parametrize(
    ("read", "action"), [(0, "keep"), (28, "keep"), (29, "discard"), (40, "discard")]
)
def test_ice_cream_goes_once_the_freezer_is_no_colder_than_a_refrigerator(
    read: float, action: str, ice: bool | None
) -> None:
    # foodsafety.gov, frozen food and power outages: also while ice is left and it is at 40 F or
    # below; within the hours of a shut door too, which promise what stays frozen.
    cut = Cut(FREEZER, 10, True, read, ice)
    assert asked("frozen", "ice cream", "sealed", cut).action == action
    meat = "keep" if action == "keep" else "refreeze"
    assert asked("frozen", "ground beef", "sealed", cut).action == meat


@pytest.mark.parametrize(
    ("method", "food"),
    [("alcohol ferment", "cider"), ("rendered fat", "lard"), ("lime-kept", "eggs")],
)
def test_what_no_table_names_goes_and_says_so_or_is_perishable(method: str, food: str) -> None:
    found = asked(method, food, "sealed", Cut(FRIDGE, 5, False, None, None))
    assert found.action == "discard"
    if food != "eggs":
        assert any("No published figure" in reason for reason in found.reasons)


def test_no_lenient_row_rests_on_memory() -> None:
    recalled = [rule for rule in load_outage() if rule.trust is Trust.MEMORY]
    assert recalled
    assert {rule.action.value for rule in recalled} <= {"discard", "use now"}
