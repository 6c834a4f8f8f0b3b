"""What goes into a batch from older ones is held against it as a note that names it is."""

from __future__ import annotations

from datetime import timedelta

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services import household
from pantry_tui.services.batchwork import putup, repack
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import PutUp
from pantry_tui.services.stock import correct, places
from pantry_tui.services.stock.view import due

BEANS = "4 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial"
TOMATOES = "4 pint jars tomatoes, boiling-water canned, larder, minutes=85 acid=lemon pack=raw"


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    household.change(larder, altitude_ft=500)
    places.add(larder, "vault", "cellar")
    places.add(larder, "chest", "freezer")
    return larder


def up(p: Pantry, line: str) -> PutUp:
    return putup.put_up(p, putup.read(p, line))


def out_of(p: Pantry, line: str, *parts: str) -> PutUp:
    """The line, made from half of each part."""
    codes = [up(p, one).code for one in parts]
    return up(p, f"{line}, from {', '.join(f'half of {code}' for code in codes)}")


def against(p: Pantry, code: str) -> tuple[str, ...]:
    return next(one for one in p.stock.batches.values() if one.code == code).doubt


GARLIC = "4 lb garlic, cellar-stored, vault"
ONIONS = "20 lb onions, cellar-stored, vault"


@pytest.mark.parametrize(
    ("line", "part", "name"),
    [
        ("2 bottles olive oil, larder", GARLIC, "garlic"),
        ("2 bottles olive oil, bought in, fridge", GARLIC, "garlic"),
        ("2 bottles olive oil, larder", "2 lb basil, fresh, fridge", "basil"),
        ("2 bottles olive oil, larder", "2 lb broccoli, fresh, fridge", "broccoli"),
        ("2 jars honey, larder", GARLIC, "garlic"),
        ("2 jars honey, larder", "2 lb thyme, fresh, fridge", "thyme"),
        ("2 jars lard, fridge", "2 lb chicken livers, fresh, fridge", "liver"),
        (BEANS, "3 lb ground beef, frozen, chest", "ground beef"),
        (BEANS, ONIONS, "onions"),
        (TOMATOES, ONIONS, "onions"),
        ("3 half-pint jars strawberry jam, larder, minutes=10", "9 lb potatoes, vault", "potatoes"),
        ("3 half-pint jars raspberry jam, larder, minutes=10", GARLIC, "garlic"),
        ("3 half-pint jars raspberry jam, larder, minutes=10", "2 lb walnuts, dried, larder",
         "walnuts"),
    ],
)  # fmt: skip
def test_a_strange_part_is_held_against_it(p: Pantry, line: str, part: str, name: str) -> None:
    made = out_of(p, line, part)
    assert made.verdict is Verdict.UNKNOWN
    assert made.discard_after is None
    doubt = against(p, made.code)
    assert any("It is made with" in one and name.split()[-1] in one for one in doubt)
    assert not any("note" in one for one in doubt)
    assert all(not row.usable for row in due(p) if row.code == made.code)


@pytest.mark.parametrize(
    ("line", "parts"),
    [
        (TOMATOES, ["20 lb tomatoes, fresh, larder"]),
        (TOMATOES, ["2 lb basil, fresh, fridge"]),
        (
            "4 pint jars tomato sauce, boiling-water canned, larder, minutes=35 acid=lemon",
            ["20 lb tomatoes, fresh, larder"],
        ),
        (
            "4 pint jars bean soup, pressure canned, larder, minutes=60 psi=11 canner=dial",
            ["3 lb dried beans, dried, larder", "2 quart boxes chicken stock, frozen, chest"],
        ),
        ("2 quart boxes vegetable soup, frozen, chest", ["3 lb ground beef, frozen, chest"]),
        ("3 half-pint jars strawberry jam, larder", ["9 lb strawberries, frozen, chest"]),
        (
            "3 half-pint jars strawberry jam, larder, minutes=10",
            ["9 lb strawberries, frozen, chest", "4 lb rhubarb, frozen, chest"],
        ),
        (
            "4 pint jars dill pickles, vinegar pickle, larder, minutes=10",
            ["9 lb cucumbers, fresh, fridge", "1 lb dill, fresh, fridge", GARLIC],
        ),
        (
            "2 quart jars sauerkraut, lactic ferment, larder, salt=2%",
            ["3 cabbages, vault", "1 lb caraway seeds, dried, larder"],
        ),
        (
            "4 pint jars chicken stock, pressure canned, larder, minutes=20 psi=11 canner=dial",
            ["4 lb chicken carcasses, frozen, chest", "4 lb carrots, cellar-stored, vault"],
        ),
        (
            "4 pint jars salsa, boiling-water canned, larder, minutes=15",
            ["20 lb tomatoes, fresh, larder", ONIONS, "3 lb jalapenos, fresh, fridge", GARLIC],
        ),
        ("2 bottles olive oil, larder", ["20 lb olives, fresh, larder"]),
        ("2 jars honey, larder", ["1 lb cinnamon, dried, larder"]),
        ("2 jars lard, rendered fat, fridge", ["3 lb pork, frozen, chest"]),
        ("2 pint boxes pesto, frozen, chest", ["2 lb basil, fresh, fridge", GARLIC]),
        ("2 cakes, frozen, chest", ["4 lb bulgur, dried, larder"]),
    ],
)  # fmt: skip
def test_a_plain_ingredient_is_not(p: Pantry, line: str, parts: list[str]) -> None:
    made = out_of(p, line, *parts)
    assert not any("It is made with" in one for one in against(p, made.code))


def test_what_is_repacked_into_another_food_is_made_with_it(p: Pantry) -> None:
    code = up(p, GARLIC).code
    made = repack.repack(p, code, "2 bottles olive oil, larder", "1 lb")
    assert made.verdict is Verdict.UNKNOWN
    assert "It is made with garlic" in against(p, made.code)[0]


def test_one_of_an_older_log_is_judged_anew(p: Pantry, monkeypatch: pytest.MonkeyPatch) -> None:
    with monkeypatch.context() as older:
        older.setattr(putup, "used_of", lambda *_: ())
        code = up(p, GARLIC).code
        made = up(p, f"2 bottles olive oil, larder, from 1 lb of {code}")
    p.stock.forget()
    assert "It is made with garlic" in against(p, made.code)[0]


def test_a_part_that_is_put_right_puts_right_what_was_made_of_it(p: Pantry) -> None:
    code = up(p, "9 lb potatoes, cellar-stored, vault").code
    jam = up(p, f"3 half-pint jars strawberry jam, larder, minutes=10, from 2 lb of {code}")
    assert "potatoes" in against(p, jam.code)[0]
    correct.correct(p, code, food="apples")
    assert against(p, jam.code) == ()
    assert all(row.verdict is Verdict.SOUND for row in due(p) if row.code == jam.code)
    correct.correct(p, code, food="garlic")
    assert "garlic" in against(p, jam.code)[0]
    assert not any(row.usable for row in due(p) if row.code == jam.code)


def test_its_own_correction_leaves_what_is_in_it(p: Pantry) -> None:
    code = up(p, ONIONS).code
    made = up(p, f"{TOMATOES}, from 2 lb of {code}")
    correct.correct(p, made.code, process=[("pack", "hot"), ("minutes", "90")])
    assert "It is made with onions" in against(p, made.code)[0]
    p.today += timedelta(days=2)
    assert {row.verdict for row in due(p) if row.code == made.code} <= {
        Verdict.UNKNOWN, Verdict.DISCARD, Verdict.DO_NOT_TASTE,
    }  # fmt: skip


@pytest.mark.parametrize(
    "part",
    ["2 lb trout, hot smoked, fridge", "2 lb cod, frozen, chest", "1 lb cooked rice, fridge"],
)
def test_no_figure_is_published_for_a_ferment_with_animal_or_cooked_food_in_it(
    p: Pantry, part: str
) -> None:
    made = out_of(p, "1 pint jar sauerkraut, lactic ferment, larder", part)
    assert made.verdict is Verdict.UNKNOWN
    assert "no figure is published for what works" in " ".join(against(p, made.code))


@pytest.mark.parametrize(
    "part", ["10 carrots, cellar-stored, vault", "1 bottle fish sauce, bought in, fridge"]
)
def test_what_belongs_into_a_ferment_is_no_doubt(p: Pantry, part: str) -> None:
    assert not against(p, out_of(p, "1 quart jar kimchi, lactic ferment, larder", part).code)


@pytest.mark.parametrize(
    "part",
    [
        "4 jars apples, dried, larder",
        "4 jars honey, larder",
        "4 jars jerky, dried, larder",
        "4 bags apples, frozen, chest",
        "4 pint jars chicken, pressure canned, larder, minutes=75 psi=11 canner=dial",
    ],
)
def test_no_crop_is_raw_again(p: Pantry, part: str) -> None:
    made = out_of(p, "1 crate apples, cellar-stored, vault", part)
    assert made.verdict in (Verdict.UNKNOWN, Verdict.DISCARD)
    assert not next(row.usable for row in due(p) if row.code == made.code)


@pytest.mark.parametrize(
    "part", ["1 crate apples, cellar-stored, vault", "20 lb apples, fresh, larder"]
)
def test_a_crop_is_sorted_into_another_crate(p: Pantry, part: str) -> None:
    assert out_of(p, "1 crate apples, cellar-stored, vault", part).verdict is Verdict.SOUND


@pytest.mark.parametrize("food", ["mushrooms", "garlic", "tomatoes", "basil"])
def test_what_is_dry_in_oil_is_food_in_oil(p: Pantry, food: str) -> None:
    """No figure of its own is published for it, on no shelf."""
    dry = f"4 jars {food}, dried, larder"
    assert out_of(p, "1 bottle olive oil, larder", dry).verdict is Verdict.UNKNOWN
    assert up(p, f"1 jar {food}, dried, larder, note=covered with oil").verdict is Verdict.UNKNOWN
    made = out_of(p, f"1 jar {food}, in oil, fridge", dry)
    assert made.discard_after is not None
    assert made.discard_after <= p.today + timedelta(days=4)


@pytest.mark.parametrize(
    ("note", "verdict"),
    [
        ("with dried mushrooms in it", Verdict.UNKNOWN),
        ("infused with dried rosemary", Verdict.UNKNOWN),
        ("with sun-dried tomatoes", Verdict.UNKNOWN),
        ("with chili flakes", Verdict.SOUND),
        ("with dried garlic powder", Verdict.SOUND),
        ("kept beside the dried mushrooms", Verdict.SOUND),
        ("for dried tomatoes", Verdict.SOUND),
    ],
)
def test_a_note_on_oil_that_names_what_is_dry(p: Pantry, note: str, verdict: Verdict) -> None:
    assert up(p, f"1 bottle olive oil, larder, note={note}").verdict is verdict
