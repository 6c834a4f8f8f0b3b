"""What a record says against a batch beside time and pressure: too little acid, salt, sugar or
heat, too much or too little room. Each figure is tried at its edge."""

from __future__ import annotations

import pytest

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.strength import too_weak
from pantry_tui.core.words import Acidity, Group, Method

LOW, ACID, MADE = Acidity.LOW_ACID, Acidity.ACID, Acidity.ACIDIFIED
BEANS = FoodFacts("snap beans", Group.VEGETABLE, LOW)
BERRIES = FoodFacts("strawberries", Group.FRUIT, ACID)
FIGS = FoodFacts("fig jam", Group.SWEET, MADE)
TROUT = FoodFacts("trout", Group.FISH, LOW)
CHICKEN = FoodFacts("chicken", Group.MEAT, LOW, frozenset({"poultry"}))
PORK = FoodFacts("pork", Group.MEAT, LOW)
CHEESE = FoodFacts("cheese", Group.DAIRY, LOW)

M = Method
PICKLES = (M.VINEGAR_PICKLE, M.FRIDGE_PICKLE)
IN_VINEGAR = (*PICKLES, M.FLAVOURED_VINEGAR)
#: Under a lid and not in a pressure canner: acid alone keeps it.
BY_ACID = (M.BOILING_WATER, M.JAM, M.VINEGAR_PICKLE)
LIDDED = (M.PRESSURE, *BY_ACID)
FERMENTS = (M.LACTIC, M.VINEGAR_FERMENT, M.ALCOHOL_FERMENT)


def said(method: Method, food: FoodFacts = BEANS, **record: str) -> str:
    """What stands against it, as one text; nothing is ""."""
    return " ".join(too_weak(method, food, "", record, ()))


@pytest.mark.parametrize("method", list(Method))
def test_a_record_of_nothing_has_nothing_against_it(method: Method) -> None:
    for food in (BEANS, BERRIES, FIGS, TROUT, CHICKEN, PORK, CHEESE):
        assert said(method, food) == ""


# -- acid and vinegar ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("method", "food", "acid", "wrong"),
    [
        # Figs may be above pH 4.6 (USDA AIB 539, guide 2); strawberries never are.
        (M.JAM, FIGS, "none", True), (M.JAM, FIGS, "0 tbsp lemon juice", True),
        (M.JAM, FIGS, "lemon", False), (M.JAM, BERRIES, "none", False),
        (M.FREEZER_JAM, FIGS, "none", False), (M.FROZEN, FIGS, "none", False),
    ],
)  # fmt: skip
def test_a_jam_that_is_safe_by_the_acid_put_into_it(
    method: Method, food: FoodFacts, acid: str, wrong: bool
) -> None:
    found = said(method, food, acid=acid)
    assert found == ("No acid was added: fig jam may be above pH 4.6 without it." if wrong else "")


@pytest.mark.parametrize("method", PICKLES)
def test_a_pickle_without_any_acid_is_none(method: Method) -> None:
    neither = "Neither vinegar nor other acid was used"
    assert neither in said(method, acid="none")
    assert neither in said(method, acid="none", vinegar="none")
    assert neither not in said(method, acid="none", vinegar="5%")
    assert neither not in said(method, acid="lemon")
    assert neither not in said(M.LACTIC, acid="none")


def test_a_pickle_on_a_shelf_takes_vinegar_and_one_in_the_fridge_any_acid() -> None:
    shelf = "No vinegar was used: a pickle is safe on a shelf by its vinegar."
    assert said(M.VINEGAR_PICKLE, vinegar="none") == shelf
    assert said(M.VINEGAR_PICKLE, vinegar="none", acid="lemon") == shelf
    fridge = "No vinegar was used: it is no pickle."
    assert said(M.FRIDGE_PICKLE, vinegar="none") == fridge
    assert said(M.FRIDGE_PICKLE, vinegar="none", acid="none").endswith(fridge)
    assert said(M.FRIDGE_PICKLE, vinegar="none", acid="lemon") == ""


def test_a_flavoured_vinegar_is_kept_by_its_vinegar() -> None:
    found = said(M.FLAVOURED_VINEGAR, vinegar="none")
    assert found == "No vinegar was used: the vinegar is what keeps it."
    assert said(M.FLAVOURED_VINEGAR, vinegar="5%") == ""


@pytest.mark.parametrize("method", list(Method))
def test_a_weak_vinegar_counts_where_acid_is_what_keeps_it(method: Method) -> None:
    """No tested recipe has one of less than 5 % (University of Wisconsin Extension); what is
    pressure canned is safe without any."""
    weak = "Vinegar of 4 % is too weak: no tested recipe is below 5 %."
    counts = method in (*BY_ACID, M.FRIDGE_PICKLE, M.FLAVOURED_VINEGAR)
    assert said(method, vinegar="4%") == (weak if counts else "")
    assert said(method, vinegar="5%") == ""
    none = method in IN_VINEGAR
    assert said(method, vinegar="none").startswith("No vinegar was used" if none else "")
    assert bool(said(method, vinegar="none")) is none


@pytest.mark.parametrize(
    ("vinegar", "percent"),
    [
        ("4", "4"), ("4 to 5", "4"), ("5-4%", "4"), ("acidity 4.5", "4.5"), ("4 acetic acid", "4"),
        ("40 grain", "4"), ("2 cups 4%", "4"), ("4% 1-2 cups", "4"), ("1/2", "0.5"),
        ("5% 1:3", "1"),
        ("5-6%", ""), ("50 grain", ""), ("1 to 2 cups", ""), ("1½ cups", ""), ("500 ml 5%", ""),
        ("1/2 of a cup", ""), ("2 T", ""), ("1 1/2 litres", ""), ("0.5 l", ""), ("1 half pint", ""),
    ],
)  # fmt: skip
def test_every_number_that_is_no_amount_says_how_strong_a_vinegar_is(
    vinegar: str, percent: str
) -> None:
    """Of several the least (no tested recipe below 5 %: University of Wisconsin Extension)."""
    weak = f"Vinegar of {percent} % is too weak: no tested recipe is below 5 %."
    assert said(M.VINEGAR_PICKLE, vinegar=vinegar) == (weak if percent else "")


# -- salt and sugar --------------------------------------------------------------------------------


@pytest.mark.parametrize("method", [M.LACTIC, M.PASTE, M.SALTED])
def test_a_ferment_takes_salt(method: Method) -> None:
    """2.25 % of the vegetables (University of Minnesota Extension, Making Sauerkraut)."""
    assert said(method, salt="none").startswith("No salt was used")
    # A number alone may be meant as per cent.
    assert said(method, salt="1").startswith("1 % of salt is too little")
    assert said(method, salt="1-3").startswith("1 % of salt is too little")
    assert said(method, salt="3") == said(method, salt="1 tbsp") == ""
    assert said(method, salt="0g").startswith("No salt was used")
    little = "1.9 % of salt is too little: no published ferment has less than 2.25 % of its"
    assert said(method, salt="1.9%").startswith(little)
    assert said(method, salt="1-3%").startswith("1 % of salt")
    assert said(method, salt="2%") == ""
    assert said(method, salt="3 tbsp") == ""
    # As a share of what it was weighed to: three tablespoons to five pounds of cabbage.
    for short in ("10 g/kg", "2 tbsp to 5 lb", "1 oz to 5 lb"):
        assert "% of salt is too little" in said(method, salt=short), short
    for enough in ("25 g/kg", "3 tbsp to 5 lb", "2 oz to 5 lb", "3 tbsp per quart"):
        assert said(method, salt=enough) == "", enough


@pytest.mark.parametrize("method", [M.FROZEN, M.PRESSURE, M.VINEGAR_FERMENT, M.HOT_SMOKED])
def test_what_is_not_kept_by_salt_may_have_none(method: Method) -> None:
    assert said(method, salt="none") == said(method, salt="1%") == ""


def test_sugar_alone_keeps_what_holds_enough_of_it() -> None:
    """Soluble solids of a jam by 21 CFR 150.160, from memory."""
    little = "Sugar alone keeps nothing that holds less than 65 % of it."
    assert said(M.SUGAR, BERRIES, sugar="none") == little
    assert said(M.SUGAR, BERRIES, sugar="64.9%") == little
    assert said(M.SUGAR, BERRIES, sugar="65%") == ""
    assert said(M.SUGAR, BERRIES, sugar="2 lb") == ""


def test_a_jam_is_tested_with_its_sugar() -> None:
    none = "Hardly any sugar was used: the times for jams are tested with the sugar of a recipe."
    assert said(M.JAM, BERRIES, sugar="none") == none
    assert said(M.JAM, BERRIES, sugar="9.9%") == none
    assert said(M.JAM, BERRIES, sugar="10%") == ""
    assert said(M.JAM, BERRIES, sugar="2 lb") == ""
    assert said(M.FREEZER_JAM, BERRIES, sugar="none") == ""


# -- heat ------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("method", "food", "least"),
    [
        # USDA FSIS, safe minimum internal temperatures; fish from memory, the stricter choice.
        (M.HOT_SMOKED, TROUT, 160), (M.HOT_SMOKED, CHICKEN, 165), (M.HOT_SMOKED, PORK, 145),
        # USDA FSIS, jerky and food safety: air of 130 to 140 F.
        (M.DRIED, PORK, 130),
    ],
)  # fmt: skip
def test_the_heat_that_smoke_and_drying_have_to_reach(
    method: Method, food: FoodFacts, least: int
) -> None:
    found = said(method, food, temperature=f"{least - 1}F")
    assert found.startswith(f"{least - 1} F is too cool")
    assert f"{least} F" in found
    assert said(method, food, temperature=f"{least}F") == ""
    assert said(method, food, temperature="unknown") == ""


@pytest.mark.parametrize(
    ("method", "food"),
    [
        # No least figure is published of these: cold smoke and cheese, a crop dried in the sun.
        (M.COLD_SMOKED, TROUT), (M.COLD_SMOKED, PORK), (M.FRESH, PORK),
        (M.HOT_SMOKED, CHEESE), (M.HOT_SMOKED, BEANS), (M.DRIED, BEANS),
    ],
)  # fmt: skip
def test_no_heat_is_asked_where_none_is_published(method: Method, food: FoodFacts) -> None:
    assert said(method, food, temperature="70F") == ""


@pytest.mark.parametrize("method", [M.FROZEN, M.FREEZER_JAM])
def test_above_40_f_nothing_is_frozen(method: Method) -> None:
    """Perishable food may stand above it for two hours in all (USDA FSIS)."""
    warm = "41 F is no freezer: what thaws does not keep as frozen food."
    assert said(method, BERRIES, temperature="41F") == warm
    assert said(method, BERRIES, temperature="0-41 F") == warm
    assert said(method, BERRIES, temperature="40F") == ""


# -- the room above the food -----------------------------------------------------------------------


@pytest.mark.parametrize("method", LIDDED)
def test_a_jar_is_filled_neither_too_full_nor_too_empty(method: Method) -> None:
    """1/8 inch of ketchup is the least, 1.5 inches of raw lima beans and meats the most of any
    tested process (USDA AIB 539; Michigan State University Extension)."""
    assert said(method, headspace="0") == (
        "No room was left above the food: a jar so full may not seal."
    )
    for room in ("1/16 in", "0.12", "1.51", "4 cm"):
        assert "no process is published with less than 0.125 or more than 1.5" in said(
            method, headspace=room
        ), room
    for room in ("1/8 in", "1/2", "1 1/2 in", "3.8 cm", "unknown"):
        assert said(method, headspace=room) == "", room


def test_what_has_no_lid_to_seal_has_no_such_room() -> None:
    for method in (M.FROZEN, M.FRIDGE_PICKLE, M.LACTIC):
        assert said(method, headspace="0") == said(method, headspace="3 in") == ""


# -- pH --------------------------------------------------------------------------------------------


@pytest.mark.parametrize("method", list(Method))
def test_what_is_kept_by_its_acid_is_at_ph_46_or_below(method: Method) -> None:
    """Above it the spores of botulism can grow in a sealed jar. A pressure canner needs no acid;
    what ferments comes down to it, which is judged by its days."""
    needs = "pH 4.7 is above 4.6: snap beans needs a pressure canner then."
    kept = "pH 4.7 is above 4.6: snap beans is not kept by its acid then."
    found = needs if method in BY_ACID else kept if method in IN_VINEGAR else ""
    assert said(method, ph="4.7") == found
    assert said(method, ph="4.6") == ""


@pytest.mark.parametrize("method", FERMENTS)
def test_a_ferment_may_be_measured_before_it_is_sour(method: Method) -> None:
    assert said(method, ph="5.6") == ""


def test_a_form_that_nobody_tested_is_too_weak_a_process() -> None:
    assert said(M.PRESSURE, prepared="shredded").startswith("No process is tested for")


def test_all_that_is_wrong_is_said() -> None:
    found = too_weak(M.VINEGAR_PICKLE, BEANS, "", {"vinegar": "3%", "headspace": "0"}, ())
    assert [one.split()[0] for one in found] == ["Vinegar", "No"]
