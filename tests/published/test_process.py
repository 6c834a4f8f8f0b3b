"""Canning processes against the publications, typed in by hand from the ones named.

One line a process: food | pack | jar | canner | altitude in feet | minutes | psi (- in boiling
water).
"""

from __future__ import annotations

import csv
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from pantry_tui.errors import BadInput, DataError
from pantry_tui.paths import data_dir
from pantry_tui.reference.process import read_not_recommended, read_processes
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.lookup.process import process

TYPED = {
    "Michigan State University Extension, Preserving Food Safely 1997 (USDA AIB 539 figures)": """
        runner beans | hot | pint | dial | 0 | 20 | 11
        snap beans | raw | pint | dial | 2000 | 20 | 11
        green beans | raw | pint | dial | 2001 | 20 | 12
        snap beans | hot | quart | dial | 4001 | 25 | 13
        snap beans | hot | quart | dial | 8000 | 25 | 14
        runner beans | raw | quart | weighted | 1000 | 25 | 10
        runner beans | raw | quart | weighted | 1001 | 25 | 15
        asparagus | hot | pint | dial | 1800 | 30 | 11
        asparagus | raw | quart | weighted | 5000 | 40 | 15
        lima beans | hot | pint | dial | 6001 | 40 | 14
        lima beans | raw | quart | weighted | 0 | 50 | 10
        dry beans | hot | pint | dial | 1001 | 75 | 11
        dry beans | hot | quart | weighted | 1001 | 90 | 15
        baked beans | hot | quart | dial | 4000 | 75 | 12
        beets | hot | pint | dial | 0 | 30 | 11
        beets | hot | quart | weighted | 1001 | 35 | 15
        carrots | hot | pint | dial | 3000 | 25 | 12
        carrots | raw | quart | weighted | 1000 | 30 | 10
        okra | hot | quart | dial | 2000 | 40 | 11
        peas | raw | quart | weighted | 2500 | 40 | 15
        peppers | hot | half-pint | dial | 0 | 35 | 11
        mushrooms | hot | half-pint | weighted | 1001 | 45 | 15
        mushrooms | hot | pint | dial | 6000 | 45 | 13
        sweet potatoes | hot | quart | dial | 0 | 90 | 11
        potatoes | hot | quart | dial | 2001 | 40 | 12
        spinach | hot | pint | weighted | 0 | 70 | 10
        chili con carne | hot | pint | dial | 6001 | 75 | 14
        figs | hot | pint | boiling-water | 1000 | 45 | -
        figs | hot | quart | boiling-water | 6001 | 65 | -
        plums | raw | pint | boiling-water | 1001 | 25 | -
        plums | hot | quart | boiling-water | 1000 | 25 | -
        rhubarb | hot | quart | boiling-water | 1001 | 20 | -
        applesauce | hot | pint | boiling-water | 1000 | 15 | -
        applesauce | hot | quart | boiling-water | 1001 | 25 | -
        applesauce | hot | quart | dial | 2001 | 10 | 7
        applesauce | hot | pint | weighted | 1001 | 8 | 10
        grape juice | hot | half-gallon | boiling-water | 1001 | 15 | -
        grape juice | hot | quart | boiling-water | 1000 | 5 | -
        pickle relish | hot | pint | boiling-water | 6000 | 15 | -
        peaches | hot | pint | boiling-water | 5001 | 35 | -
        peaches | raw | quart | boiling-water | 6000 | 45 | -
    """,
    "USDA AIB 539, Complete Guide to Home Canning": """
        crushed tomatoes | hot | pint | boiling-water | 1000 | 35 | -
        crushed tomatoes | hot | pint | boiling-water | 1001 | 40 | -
        crushed tomatoes | hot | pint | boiling-water | 3001 | 45 | -
        crushed tomatoes | hot | quart | boiling-water | 6001 | 60 | -
        tomatoes in water | raw | pint | boiling-water | 1000 | 40 | -
        tomatoes in water | raw | quart | boiling-water | 1001 | 50 | -
        tomatoes in tomato juice | hot | quart | boiling-water | 0 | 85 | -
        tomatoes without liquid | raw | pint | boiling-water | 6001 | 100 | -
        tomato juice | hot | quart | boiling-water | 1000 | 40 | -
        tomato sauce | hot | pint | boiling-water | 6000 | 45 | -
        peaches | hot | pint | boiling-water | 1000 | 20 | -
        peaches | raw | quart | boiling-water | 1001 | 35 | -
        peaches | hot | quart | boiling-water | 5000 | 35 | -
        peaches | hot | pint | dial | 4001 | 10 | 8
        peaches | raw | quart | weighted | 1000 | 10 | 5
        pears | hot | quart | boiling-water | 1000 | 25 | -
        pears | hot | quart | boiling-water | 1001 | 30 | -
        apples | hot | quart | boiling-water | 1000 | 20 | -
        apples | hot | pint | dial | 2000 | 8 | 6
        cherries | raw | pint | dial | 0 | 10 | 6
        pickled beets | hot | pint | boiling-water | 1000 | 30 | -
        pickled beets | hot | quart | boiling-water | 1001 | 35 | -
        piccalilli | hot | half-pint | boiling-water | 1001 | 10 | -
        whole kernel corn | hot | pint | dial | 0 | 55 | 11
        sweet corn | raw | quart | weighted | 1001 | 85 | 15
        cream style corn | hot | pint | dial | 2001 | 85 | 12
        pumpkins | hot | pint | dial | 0 | 55 | 11
        winter squash | hot | quart | weighted | 1001 | 90 | 15
        mixed vegetables | hot | quart | dial | 0 | 90 | 11
        vegetable soup | hot | quart | dial | 2001 | 75 | 12
        beef | raw | pint | dial | 2000 | 75 | 11
        venison | hot | quart | weighted | 1001 | 90 | 15
        ground beef | hot | quart | dial | 8000 | 90 | 14
        chicken with bones | raw | quart | dial | 0 | 75 | 11
        chicken without bones | raw | quart | dial | 0 | 90 | 11
        chicken stock | hot | pint | weighted | 1000 | 20 | 10
        salmon | raw | pint | dial | 2000 | 100 | 11
        trout | raw | half-pint | weighted | 1001 | 100 | 15
        meat sauce | hot | quart | dial | 0 | 70 | 11
    """,
    "Utah State University Extension, timetables above 3,000 ft": """
        apples | hot | pint | boiling-water | 8001 | 40 | -
        peaches | raw | quart | boiling-water | 9000 | 50 | -
        pears | hot | quart | boiling-water | 10000 | 45 | -
        apricots | hot | quart | boiling-water | 3001 | 35 | -
        raspberries | raw | quart | boiling-water | 8001 | 40 | -
    """,
    "University of Georgia Extension, So Easy to Preserve": """
        raspberries | raw | quart | boiling-water | 1000 | 20 | -
        blueberries | hot | pint | boiling-water | 1001 | 20 | -
        cherries | raw | pint | boiling-water | 1000 | 25 | -
        grapes | raw | quart | boiling-water | 6001 | 35 | -
    """,
    "University of Florida IFAS FCS8276 (canning fruit under pressure)": """
        apricots | hot | pint | dial | 2001 | 10 | 7
        nectarines | raw | quart | dial | 8000 | 10 | 9
    """,
    "NCHFP, apricots and strawberry jam": """
        apricots | hot | pint | boiling-water | 1001 | 25 | -
        strawberry jam | hot | half-pint | boiling-water | 1000 | 5 | -
        strawberry jam | hot | pint | boiling-water | 1001 | 10 | -
    """,
}


def lines() -> Iterator[tuple[str, ...]]:
    for publication, block in TYPED.items():
        for line in block.strip().splitlines():
            yield (publication, *(part.strip() for part in line.split("|")))


def asked(food: str, jar: str, canner: str, pack: str | None = None, ft: int = 0) -> dict[str, Any]:
    return process(load_tables(), food, jar, canner, pack, ft)


@pytest.mark.parametrize(
    ("publication", "food", "pack", "jar", "canner", "ft", "minutes", "psi"), list(lines())
)
def test_the_process_is_the_published_one(
    publication: str, food: str, pack: str, jar: str, canner: str, ft: str, minutes: str, psi: str
) -> None:
    said = asked(food, jar, canner, pack, int(ft))
    assert said["answer"] == "process", (publication, said["reasons"])
    pressure = None if psi == "-" else int(psi)
    assert (said["minutes"], said["psi"]) == (int(minutes), pressure), said["options"]
    assert said["sources"] and said["options"] and said["reasons"]


def test_enough_is_checked() -> None:
    typed = list(lines())
    assert len(typed) >= 60
    assert len({food for _, food, *_ in typed}) >= 40


#: USDA AIB 539 (2015) and MSU 1997: pairs of minutes and psi, alternatives to one another.
PAIRS = [
    ("tomato sauce", "hot", "pint", "dial", 0, {(20, 6), (15, 11)}),
    ("tomato sauce", "hot", "quart", "dial", 2001, {(20, 7), (15, 12)}),
    ("tomato sauce", "hot", "pint", "weighted", 1000, {(20, 5), (15, 10), (10, 15)}),
    ("tomato sauce", "hot", "pint", "weighted", 1001, {(20, 10), (15, 15)}),
    ("tomatoes in juice", "hot", "quart", "dial", 6001, {(40, 9), (25, 14)}),
    ("tomatoes in juice", "raw", "pint", "weighted", 0, {(40, 5), (25, 10), (15, 15)}),
    ("tomatoes in water", "raw", "quart", "dial", 4001, {(15, 8), (10, 13)}),
]


@pytest.mark.parametrize(("food", "pack", "jar", "canner", "ft", "pairs"), PAIRS)
def test_pairs_of_time_and_pressure_are_never_mixed(
    food: str, pack: str, jar: str, canner: str, ft: int, pairs: set[tuple[int, int]]
) -> None:
    said = asked(food, jar, canner, pack, ft)
    assert {(one["minutes"], one["psi"]) for one in said["options"]} == pairs
    assert said["minutes"] is None and said["psi"] is None
    assert "lemon juice" in said["acidify"]


def test_without_a_pack_packs_of_one_process_are_one_answer() -> None:
    said = asked("runner beans", "quart", "dial", None, 1800)
    assert (said["minutes"], said["psi"], said["headspace_in"]) == (25, 11, 1.0)
    assert [one["pack"] for one in said["options"]] == ["hot or raw"]
    assert said["acidify"] is None


def test_several_forms_are_all_shown_and_none_is_chosen() -> None:
    said = asked("tomatoes", "pint", "boiling-water")
    assert said["minutes"] is None
    assert {one["minutes"] for one in said["options"]} == {40, 85}


def test_tomatoes_and_figs_are_acidified() -> None:
    """USDA AIB 539: per pint 1 Tbsp bottled lemon juice or 1/4 tsp citric acid, quart twice."""
    pint = asked("crushed tomatoes", "pint", "boiling-water")["acidify"]
    assert pint == "1 Tbsp bottled lemon juice or 1/4 tsp citric acid"
    for food in ("crushed tomatoes", "figs"):
        quart = asked(food, "quart", "boiling-water")["acidify"]
        assert quart == "2 Tbsp bottled lemon juice or 1/2 tsp citric acid"


#: USDA's dial tables end at 8,000 ft (PNW 421); jars, packs and canners that no table holds.
NOT_PUBLISHED = [
    ("runner beans", "pint", "dial", None, 8001),
    ("carrots", "quart", "dial", "hot", 9000),
    ("salmon", "pint", "dial", "raw", 8001),
    ("peaches", "quart", "dial", "hot", 10_000),
    ("tomato sauce", "pint", "dial", None, 8001),
    ("apples", "quart", "boiling-water", "hot", 10_001),
    ("mushrooms", "quart", "dial", None, 0),
    ("peppers", "quart", "weighted", None, 0),
    ("chili con carne", "quart", "dial", None, 0),
    ("cream style corn", "quart", "dial", None, 0),
    ("peaches", "half-gallon", "boiling-water", None, 0),
    ("runner beans", "half-pint", "dial", None, 0),
    ("beets", "pint", "dial", "raw", 0),
    ("pears", "pint", "boiling-water", "raw", 0),
    ("ground beef", "pint", "dial", "raw", 0),
    ("figs", "pint", "dial", None, 0),
    ("strawberries", "pint", "boiling-water", None, 0),
    ("turkeys", "pint", "dial", None, 0),
    ("cod", "pint", "dial", None, 0),
    ("tuna", "pint", "dial", None, 0),
    ("smoked salmon", "pint", "dial", None, 0),
    ("clams", "pint", "weighted", None, 0),
]


@pytest.mark.parametrize(("food", "jar", "canner", "pack", "ft"), NOT_PUBLISHED)
def test_what_no_table_holds_is_not_published(
    food: str, jar: str, canner: str, pack: str | None, ft: int
) -> None:
    said = asked(food, jar, canner, pack, ft)
    assert said["answer"] == "not published"
    assert said["minutes"] is None and said["psi"] is None and said["options"] == []
    assert said["reasons"]


def test_tomatoes_in_juice_are_no_tomato_juice() -> None:
    """USDA AIB 539: a quart of tomatoes in juice takes 85 minutes, one of tomato juice 40."""
    for food in ("tomatoes in juice", "Tomatoes, whole or halved, packed in tomato juice"):
        assert asked(food, "quart", "boiling-water", "hot")["minutes"] == 85
    with pytest.raises(BadInput):
        asked("halved tomatoes in juice", "quart", "boiling-water")


def test_a_recalled_figure_is_told_as_recalled_and_is_no_answer() -> None:
    said = asked("tuna", "pint", "dial")
    assert any("Recalled" in one and "100 minutes" in one for one in said["reasons"])
    some = asked("crushed tomatoes", "pint", "dial")
    assert (some["minutes"], some["psi"]) == (20, 6)
    assert any("Recalled" in one and "15 minutes" in one for one in some["reasons"])


REFUSED = {
    "K-State Research and Extension 2016, preserving pumpkin": ["pumpkin butter", "mashed pumpkin"],
    "Penn State Extension, mashed squash": ["mashed squash", "pureed squash", "squash puree"],
    "NCHFP, Preserving Food at Home": ["squash butter"],
    "Clemson Extension, summer squash": ["summer squash", "zucchini"],
    "University of Missouri Extension HES134": ["broccoli", "cauliflower"],
    "K-State Research and Extension 2019, preserving garlic": ["garlic"],
    "NCHFP, garlic in oil (2015)": ["garlic in oil"],
    "NCHFP, questions on canning": ["pesto", "herb oil", "bread", "cakes"],
    "Penn State Extension and USDA, foods not to can": ["pickled eggs", "milk", "butter", "cheese",
                                                        "chicken noodle soup", "eggs"],
    "University of Missouri nutrition educators": ["mashed potatoes", "leftovers"],
    "MSU Extension 1997": ["mashed sweet potatoes", "wild mushrooms", "snow peas"],
    "University of Arkansas Extension": ["white peaches"],
    "University of Maine Cooperative Extension": ["white nectarines", "elderberries"],
    "UC Master Food Preservers, Solano": ["bananas", "melons", "persimmons"],
    "from memory, the stricter choice": ["lard", "refried beans", "peanut butter", "celery",
                                         "spaghetti squash", "coconut milk"],
}  # fmt: skip


@pytest.mark.parametrize("food", [food for foods in REFUSED.values() for food in foods])
@pytest.mark.parametrize("canner", ["boiling-water", "dial", "weighted"])
def test_what_publications_advise_against_is_refused(food: str, canner: str) -> None:
    said = asked(food, "pint", canner)
    assert said["answer"] == "refused"
    assert said["minutes"] is None and said["options"] == []
    assert any("Instead" in one for one in said["reasons"]) and said["sources"]


@pytest.mark.parametrize(
    "food",
    ["runner beans", "carrots", "beets", "sweet corn", "beef", "salmon", "chicken stock", "tuna",
     "vegetable soup", "mixed vegetables", "succotash", "spaghetti sauce without meat", "okra",
     "smoked salmon", "baked beans", "cream style corn"],
)  # fmt: skip
def test_low_acid_food_in_boiling_water_is_refused(food: str) -> None:
    """USDA AIB 539: low-acid food is canned under pressure only."""
    said = asked(food, "pint", "boiling-water")
    assert said["answer"] == "refused"
    assert "low-acid" in said["reasons"][0]


@pytest.mark.parametrize(
    "canner",
    ["open kettle", "open-kettle", "oven", "microwave", "dishwasher", "inverted jars", "none"],
)
@pytest.mark.parametrize("food", ["peaches", "runner beans", "strawberry jam"])
def test_ways_that_are_no_process_are_refused(food: str, canner: str) -> None:
    """USDA AIB 539 on open kettle and oven; K-State Extension 2017 on inverted jars."""
    said = asked(food, "pint", canner)
    assert said["answer"] == "refused" and said["reasons"]
    assert said["minutes"] is None


@pytest.mark.parametrize(
    ("food", "jar", "canner", "pack", "named"),
    [("peeches", "pint", "dial", None, "peaches"), ("peaches", "bucket", "dial", None, "half-pint"),
     ("peaches", "pint", "pressure", None, "weighted"), ("peaches", "pint", "dial", "loose", "raw"),
     ("peaches", "pint", "steam", None, "boiling-water")],
)  # fmt: skip
def test_what_is_not_understood_names_what_would_be(
    food: str, jar: str, canner: str, pack: str | None, named: str
) -> None:
    with pytest.raises(BadInput, match=named):
        asked(food, jar, canner, pack)


@pytest.mark.parametrize(
    ("file", "row", "column", "value"),
    [("process.csv", 3, "minutes", "soon"), ("process.csv", 3, "minutes", "0"),
     ("process.csv", 6, "psi", "7"), ("process.csv", 2, "psi", "11"),
     ("process.csv", 3, "altitude_min_ft", "900"), ("process.csv", 3, "foods", "moon cheese"),
     ("process.csv", 3, "jar", "bucket"), ("process.csv", 3, "source_id", "hearsay"),
     ("pressure.csv", 2, "gauge", "guess"), ("not_recommended.csv", 2, "reason", ""),
     ("not_recommended.csv", 2, "trust", "sure")],
)  # fmt: skip
def test_a_bad_cell_is_named(tmp_path: Path, file: str, row: int, column: str, value: str) -> None:
    folder = Path(shutil.copytree(data_dir(), tmp_path / "data"))
    with (folder / file).open(encoding="utf-8", newline="") as handle:
        cells = list(csv.reader(handle))
    cells[row - 1][cells[0].index(column)] = value
    with (folder / file).open("w", encoding="utf-8", newline="") as handle:
        csv.writer(handle).writerows(cells)
    with pytest.raises(DataError, match=f"{file} row {row}, column {column}"):
        read_processes(folder, load_tables())
        read_not_recommended(folder, load_tables())
