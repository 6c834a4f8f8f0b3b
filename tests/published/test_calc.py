"""Results of batch arithmetic, typed by hand under their publication.

`KIND | what is typed | what the line is called | answer | unit`. What no publication prints is
worked out on paper from the definition named above it. A figure recalled is held to say so.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from pantry_tui.reference.tables import load_tables
from pantry_tui.services.batchwork.calc import reckon
from pantry_tui.services.batchwork.calc.answer import Answer, Line

TYPED = {
    "By definition: salt : water, salt : salt and water, salt : water and vegetables": """
        brine | 500 g water 3 % | salt, by water weight | 15 | g
        brine | 3% of 500 g | salt, by water weight | 15 | g
        brine | 1 l water 3.5 % | salt, by water weight | 35 | g
        brine | 1 kg water 5 % by total weight | salt, by total weight of the brine | 52.63 | g
        brine | 950 g water 5 % by total | salt, by total weight of the brine | 50 | g
        brine | 1 l water 3 % | salt, by total weight of the brine | 30.93 | g
        brine | 500 g water 1 kg carrots 2 % | salt, by water and vegetables | 30 | g
        brine | 1 l water 1 kg cucumbers 3 % everything | salt, by water and vegetables | 60 | g
        brine | 1 l water 10 % | strength by total weight | 9.09 | %
        brine | 16 oz water 5 % | salt, by water weight | 0.8 | oz
        drysalt | 1 kg carrots 2 % | salt | 20 | g
        drysalt | 10 lb turnips 2.5% | salt | 4 | oz
    """,
    "University of Minnesota Extension, Making Sauerkraut, 1995: 2.25 to 2.5 % of the cabbage": """
        drysalt | 5 lb cabbage | salt, the same | 51.03 | g
        drysalt | 5 lb shredded cabbage | salt, the upper end | 2 | oz
        drysalt | 1 kg cabbage | salt | 22.5 | g
        drysalt | 1 kg cabbage | salt, the upper end | 25 | g
    """,
    "Michigan State University Extension, Preserving Food Safely 01600078 (USDA Guide 6)": """
        drysalt | 5 lb cabbage | published for cabbages: shredded cabbage, canning or pickling salt | 3 | tbsp for 5 lb
        brine | 1 quart water 2 % sauerkraut | published for sauerkraut: boiled and cooled, where the juice does not cover | 1.5 | tbsp a quart of water
        brine | 1 gallon water 2 % sauerkraut | published for sauerkraut: for the bag that is the weight | 6 | tbsp a gallon of water
    """,
    "W. V. Cruess, Home and Farm Food Preservation, 1918: one part of salt to four": """
        drysalt | 4 lb snap beans heavy | salt | 16 | oz
        drysalt | 2 kg runner beans heavy | salt | 500 | g
    """,
    "F. F. Rockwell, Save It For Winter, 1918, brine table, ounces a gallon": """
        brine | 1 gallon water 3 % | an old table, a brine called 3 % | 4 | oz salt a US gallon of water
        brine | 1 gallon water 5 % | an old table, a brine called 5 % | 6.67 | oz salt a US gallon of water
        brine | 1 gallon water 10 % | an old table, a brine called 10 % | 14.25 | oz salt a US gallon of water
    """,
    "Colorado State University Extension, kimchi: 2 to 5 % in the end": """
        drysalt | 1 kg chinese cabbage | salt | 20 | g
        drysalt | 1 kg napa cabbage | salt, the upper end | 50 | g
    """,
    "By definition: acid of the vinegar over the whole, by volume": """
        vinegar | 5 % 4 cups vinegar 2 cups water | acidity of the mixture | 3.33 | % acetic acid
        vinegar | 5 % equal parts | acidity of the mixture | 2.5 | % acetic acid
        vinegar | 5 % 500 ml vinegar 500 ml water | acidity of the mixture | 2.5 | % acetic acid
        vinegar | 10 % 1 l vinegar 1 l water | acidity of the mixture | 5 | % acetic acid
        vinegar | 10 % to 5 % 500 ml | water to 500 ml of vinegar | 500 | ml
        vinegar | 6 % to 5 % 1 l | water to 1 l of vinegar | 0.2 | l
    """,
    "UC Master Food Preservers: 50 grain is 5 %": """
        vinegar | 50 grain 1 cup vinegar 1 cup water | acidity of the mixture | 2.5 | % acetic acid
        vinegar | 40 grain 1 cup | acidity of the mixture | 4 | % acetic acid
    """,
    "USDA AIB 539, quick fresh-pack dill pickles: 6 cups of vinegar to 8 of water, 2.1 %": """
        vinegar | 5 % 6 cups vinegar 8 cups water | acidity of the mixture | 2.14 | % acetic acid
    """,
    "Michigan State University Extension 01600835 (USDA Guide 2), syrup for a canner load": """
        syrup | very light 7 quart jars | sugar | 1.25 | cup
        syrup | very light 7 quart jars | water | 10.5 | cup
        syrup | light 9 pint jars | sugar | 1.5 | cup
        syrup | light 9 pints | water | 5.75 | cup
        syrup | medium 7 quarts | sugar | 3.75 | cup
        syrup | medium 7 quarts | water | 8.25 | cup
        syrup | heavy 9 pints | sugar | 3.25 | cup
        syrup | very heavy 7 quarts | sugar | 6.75 | cup
    """,
    "National Center for Home Food Preservation, freezing syrups, cups to 4 cups of water": """
        syrup | very light freezing 1 quart water | as printed for freezing, very light | 0.5 | cup
        syrup | light freezing 1 quart water | as printed for freezing, light | 1 | cup
        syrup | medium freezing 2 quarts water | as printed for freezing, medium | 3.5 | cup
        syrup | heavy 4 cups water | as printed for freezing, heavy | 2.75 | cup
        syrup | very heavy 1 quart water | as printed for freezing, very heavy | 4 | cup
    """,
    "By definition: sugar over sugar and water": """
        syrup | 30 % 700 g water | sugar | 300 | g
        syrup | 20 % 1 l water | sugar | 250 | g
        syrup | 50 % 1 kg water | sugar | 1000 | g
    """,
    "By definition: the dry matter stays": """
        drying | 1 kg 90 % to 10 % | weight when it is dry | 111.11 | g
        drying | 5 kg 80 % to 20 % | weight when it is dry | 1.25 | kg
        drying | 1000 g 80 % to 20 % 500 g | moisture now | 60 | %
    """,
    "University of Georgia Extension, So Easy to Preserve, drying tables (water recalled)": """
        drying | 1 kg carrots | weight when it is dry | 133.33 | g
        drying | 1 kg apples | weight when it is dry | 175 | g
        drying | carrots | hours | 10 to 12 | hours
        drying | apples | hours | 6 to 12 | hours
        drying | onions | hours | 3 to 9 | hours
        drying | apricots | hours | 24 to 36 | hours
        drying | apples | air | 140 | °F
        blanching | carrots drying | blanch carrots, slices or strips of 1/8 in | 3.5 | minutes
        blanching | carrots drying steam | blanch carrots, slices or strips of 1/8 in | 3 to 3.5 | minutes
        blanching | celery drying | blanch celery, slice the stalks | 2 | minutes
    """,
    "NDSU Extension FN1588, Table 1": """
        drying | asparagus | hours | 4 to 6 | hours
        drying | beets | hours | 10 to 12 | hours
        blanching | asparagus drying | blanch asparagus, halve thick tips | 3.5 to 4.5 | minutes
    """,
    "L. R. Beuchat 1981: dried fruit at 15 to 20 % moisture; dried vegetables": """
        drying | 1 kg apples | water activity | 0.6 to 0.65 | aw
        drying | 1 kg carrots | water activity | 0.2 to 0.3 | aw
    """,
    "Conditioning: NCHFP (recalled), 7 to 10 days; Iowa State University Extension, 4 to 10": """
        conditioning | dried apples | days of conditioning | 10 | days
        conditioning | dried apples | published range | 4 to 10 | days
    """,
    "Michigan State University Extension 01600520, against pests": """
        conditioning | dried apples | against pests | 48 | hours at 0 °F
    """,
    "Michigan State University Extension, Preserving Food Safely, freezing pages": """
        blanching | broccoli 0ft | blanch broccoli, florets of at most 1 1/2 in | 3 | minutes
        blanching | broccoli steam 0ft | blanch broccoli, florets of at most 1 1/2 in | 5 | minutes
        blanching | carrots 4999ft | blanch carrots, diced or sliced | 3 | minutes
        blanching | collards 0ft | blanch collards, leaves | 3 | minutes
        blanching | spinach 0ft | blanch spinach, leaves | 2 | minutes
        blanching | sweet corn 0ft | blanch sweet corn, on the cob, thicker ears | 11 | minutes
    """,
    "Utah State University Extension: a minute more at 5,000 ft and above; beans 3 minutes": """
        blanching | snap beans 0ft | blanch snap beans, pieces of 2 to 4 in | 3 | minutes
        blanching | green beans 5000ft | blanch snap beans, pieces of 2 to 4 in | 4 | minutes
        blanching | carrots 1600 m | blanch carrots, diced or sliced | 4 | minutes
    """,
    "Kansas State University Extension: a gallon a pound, two for leaves": """
        blanching | 3 lb carrots 0ft | boiling water for 3 lb of prepared vegetables | 3 | gallon
        blanching | 2 lb spinach 0ft | boiling water for 2 lb of leafy greens | 4 | gallon
    """,
    "USDA Complete Guide and university extension, canning quantities": """
        yield | 21 lb tomatoes | tomatoes, boiling-water canned | 7 | quart jars
        yield | 13 lb tomatoes pint jars | tomatoes, boiling-water canned | 8 | pint jars
        yield | 17.5 lb peaches | peaches, boiling-water canned | 7 | quart jars
        yield | a bushel of apples | apples, boiling-water canned | 17 | quart jars
        yield | 1 bushel tomatoes | tomatoes, boiling-water canned | 17 | quart jars
        yield | 7 quarts snap beans | snap beans for 7 quart of snap beans, pressure canned | 14 | lb
        yield | 25 lb cabbage fermented | sauerkraut, lactic ferment | 8 | quart jars
        packs | 10 lb broccoli 4 people | in all | 10 | pint
    """,
    "USDA AIB 539 and the National Center: headspace": """
        headspace | jam | headspace, jams and jellies | 0.25 | in
        headspace | ketchup | headspace, ketchup | 0.125 | in
        headspace | boiling water | headspace, fruits and tomatoes in boiling water | 0.5 | in
        headspace | pressure canned | headspace, low-acid foods under pressure | 1 to 1.25 | in
        headspace | freezing liquid wide mouth quart | liquid pack, wide mouth, quart | 1 | in
        headspace | freezing liquid narrow pint | liquid pack, narrow mouth, pint | 0.75 | in
        headspace | freezing juice narrow pint | juice pack, narrow mouth, pint | 1.5 | in
        headspace | freezing dry pack wide quart | dry pack, wide mouth, quart | 0.5 | in
    """,
    "By definition: alcohol over spirit and the water of the fruit": """
        infusion | 500 ml 40 % 500 g cherries 80 % water | strength in the end | 22.22 | % alcohol
        infusion | 1 l 50 % 1 kg plums 100 % water | strength in the end | 25 | % alcohol
        infusion | 1 l 80 proof 500 g cherries 100 % water | strength in the end | 26.67 | % alcohol
    """,
    "Label of a cure with 6.25 % nitrite: 1 oz for 25 lb, 1 tsp for 5 lb of ground meat": """
        cure | 25 lb ground pork | cure, the same | 1 | oz
        cure | 100 lb ground beef | cure, the same | 4 | oz
        cure | 5 lb ground pork | by the spoon, rough | 1 | tsp
        cure | 5 lb ground pork | nitrite going in | 156.25 | ppm
    """,
    "FSIS Processing Inspectors' Calculations Handbook, quoted on a forum": """
        cure | 5 lb ground pork | ceiling, nitrite | 156 | ppm
        cure | 5 lb bacon | ceiling, nitrite | 120 | ppm
        cure | 10 lb country ham | ceiling, nitrite | 625 | ppm
    """,
    "Michigan State University Extension 01600816: smoked fish 14 days below 36 °F": """
        smoking | trout | keeps | 14 | days
    """,
    "Michigan State University Extension 01600546 and 01600549: 8 and 9 °F above boiling": """
        boil | 0ft | jellying point, jelly | 220 | °F
        boil | 0ft | jellying point, preserves, conserves and marmalades | 221 | °F
    """,
}


def rows() -> Iterator[tuple[str, ...]]:
    for publication, block in TYPED.items():
        for line in block.strip().splitlines():
            kind, typed, what, answer, unit = (part.strip() for part in line.split(" | "))
            yield publication, kind, typed, what, answer, unit


ROWS = list(rows())


def asked(kind: str, typed: str) -> Answer:
    return reckon(load_tables(), kind, typed)


def named(found: Answer, what: str) -> Line:
    lines = [line for line in found.lines if line.what == what]
    assert lines, (what, [line.what for line in found.lines])
    return lines[0]


@pytest.mark.parametrize(("publication", "kind", "typed", "what", "answer", "unit"), ROWS)
def test_the_result_is_the_one_on_paper(
    publication: str, kind: str, typed: str, what: str, answer: str, unit: str
) -> None:
    line = named(asked(kind, typed), what)
    if line.unit != unit and {line.unit, unit} == {"g", "kg"}:
        assert isinstance(line.answer, float | int)
        factor = 1000 if unit == "kg" else 0.001
        assert line.answer == pytest.approx(float(answer) * factor, rel=1e-3)
        return
    assert line.unit == unit, publication
    if isinstance(line.cell, str):
        assert line.cell == answer
    else:
        tolerance = 0.1 if kind == "boil" else 0.006
        assert line.cell == pytest.approx(float(answer), abs=tolerance), publication
    assert line.source or line.formula


def test_results_are_many_and_of_every_sum() -> None:
    from pantry_tui.services.batchwork.calc import KINDS

    assert len({row[1:4] for row in ROWS}) >= 100
    assert {row[1] for row in ROWS} == set(KINDS)


@pytest.mark.parametrize(
    ("kind", "typed", "what"),
    [
        ("cure", "5 lb bacon", "cure"),
        ("cure", "10 lb hams", "cure"),
        ("drying", "salmon", "hours"),
        ("smoking", "beef", "temperature inside"),
        ("blanching", "lettuces", "blanch"),
        ("yield", "5 lb lettuces", "jars"),
        ("packs", "5 lb lettuces", "packs"),
        ("syrup", "35 % 7 quart jars", "sugar"),
        ("vinegar", "5 % 1 cup vinegar 3 cups water", "may serve"),
    ],
)
def test_what_nobody_published_is_not_made_up(kind: str, typed: str, what: str) -> None:
    line = named(asked(kind, typed), what)
    assert line.answer is None
    assert line.shown == "no published figure"


def test_practice_is_marked_as_such() -> None:
    """Equal parts of vinegar and water serve only the refrigerator, and no table says so that was
    read; spoons of salt are rough, their weights recalled."""
    serves = named(asked("vinegar", "5 % equal parts"), "may serve")
    assert "only for pickles that are kept in the refrigerator" in str(serves.answer)
    assert serves.formula == "common practice"
    assert "from memory" in serves.source
    shelf = asked("vinegar", "5 % equal parts").cautions
    assert any("On a shelf this mixture alone is safe for nothing" in one for one in shelf)
    spoon = asked("brine", "500 g water 3 %").also
    assert any("rough" in one.what and "from memory" in one.source for one in spoon)


def test_a_weak_vinegar_serves_nothing() -> None:
    found = asked("vinegar", "4 % 2 cups")
    assert "too weak for any pickle" in found.cautions[0]
    assert not [line for line in found.lines if line.what == "may serve" and line.answer]


def test_too_little_salt_for_a_published_ferment_is_named() -> None:
    assert "less than the published 2.25 %" in asked("drysalt", "5 lb cabbage 1 %").cautions[0]
    assert not asked("drysalt", "5 lb cabbage").cautions


def test_meat_is_heated_before_it_is_dried() -> None:
    assert "160 °F inside before it is dried" in asked("drying", "beef").cautions[0]
    assert "165 °F" in asked("drying", "chicken").cautions[0]
