"""A sign marks its jar and its batch, and recall finds them all."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput, Refused, Unclear
from pantry_tui.services.batchwork import putup
from pantry_tui.services.lookup import signs
from pantry_tui.services.lookup.recall import recall
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week
from pantry_tui.services.stock import act, correct, leaving, one_batch, places, undo, view
from pantry_tui.services.stock.seen import At

TODAY = date(2026, 11, 25)


def offered(p: Pantry, line: str, word: str) -> list[str]:
    """The signs with that word, in the order in which they are offered."""
    code = putup.put_up(p, putup.read(p, line)).code
    return [one.words for one in signs.to_choose(p, code) if word in one.words]


def test_what_is_said_of_that_very_food_is_offered_before_what_is_said_of_its_kind(
    p: Pantry,
) -> None:
    hard = offered(p, "1 lb cheddar, fridge, 1 nov", "mould")
    soft = offered(p, "1 lb cream cheese, fridge, 20 nov", "mould")
    assert hard[0] == "mould on hard cheese"
    assert "mould on soft, sliced or shredded cheese" in hard
    assert soft[0] == "mould on soft, sliced or shredded cheese"


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    """Beans 2A (4), of which one was given away; sauerkraut 3A in the fridge."""
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("cellar", "cellar"), ("fridge", "fridge")):
            places.add(pantry, name, climate)
        for line in (
            "4 pint jars runner beans, pressure canned, larder, 1 aug",
            "1 jar sauerkraut, lactic ferment, fridge, 1 nov",
        ):
            putup.put_up(pantry, putup.read(pantry, line))
        act.give(pantry, "2A/4", to="Aunt Sunniva")
        act.move(pantry, "2A/3", "cellar")
        yield pantry


def verdicts(p: Pantry, code: str) -> dict[str, Verdict]:
    return {name: row.verdict for row in one_batch.show(p, code).rows for name in row.container_ids}


def test_one_bad_jar_marks_its_batch_wherever_it_stands(p: Pantry) -> None:
    said = signs.mark(p, "2A/1", "swollen lid")
    assert said.verdict is Verdict.DO_NOT_TASTE
    assert any("closed" in step for step in said.disposal)
    assert any("recall" in step for step in said.do)
    assert said.sources
    assert verdicts(p, "2A") == {
        "2A/1": Verdict.DO_NOT_TASTE,
        "2A/2": Verdict.UNKNOWN,
        "2A/3": Verdict.UNKNOWN,
    }
    with pytest.raises(Refused):
        act.use(p, "2A/1")
    with pytest.raises(Refused):
        act.open_(p, "2A/1")
    assert not any(take.code == "2A" for take in week.week(p).take)
    signs.mark(p, "2A/2", "looks sound")
    assert verdicts(p, "2A")["2A/2"] is Verdict.SOUND
    assert verdicts(p, "2A")["2A/3"] is Verdict.UNKNOWN
    undo.undo(p)
    undo.undo(p)
    assert set(verdicts(p, "2A").values()) == {Verdict.SOUND}


def test_looking_sound_never_clears_a_jar_with_a_sign_of_its_own(p: Pantry) -> None:
    signs.mark(p, "2A/1", "swollen lid")
    signs.mark(p, "2A/1", "looks sound")
    assert verdicts(p, "2A")["2A/1"] is Verdict.DO_NOT_TASTE


def test_a_harmless_sign_is_no_look_at_a_suspect_jar(p: Pantry) -> None:
    """Neither one seen long before nor one seen after its sister went bad."""
    signs.mark(p, "2A/2", "low liquid, tight seal")
    signs.mark(p, "2A/1", "swollen lid")
    assert verdicts(p, "2A")["2A/2"] is Verdict.UNKNOWN
    signs.mark(p, "2A/3", "low liquid, tight seal")
    assert verdicts(p, "2A")["2A/3"] is Verdict.UNKNOWN


def test_a_look_on_the_day_before_clears_no_suspicion(p: Pantry) -> None:
    """Booked after the sign, but it speaks of a time before it."""
    signs.mark(p, "2A/1", "swollen lid")
    signs.mark(p, "2A/2", "looks sound", at=At(p.today - timedelta(days=1)))
    assert verdicts(p, "2A")["2A/2"] is Verdict.UNKNOWN
    signs.mark(p, "2A/2", "looks sound")
    assert verdicts(p, "2A")["2A/2"] is not Verdict.UNKNOWN


def test_a_second_bad_jar_makes_all_be_looked_at_again(p: Pantry) -> None:
    signs.mark(p, "2A/1", "swollen lid")
    signs.mark(p, "2A/2", "looks sound")
    signs.mark(p, "2A/3", "swollen lid")
    assert verdicts(p, "2A")["2A/2"] is Verdict.UNKNOWN
    undo.undo(p)
    assert verdicts(p, "2A")["2A/2"] is Verdict.SOUND


def test_recall_names_those_given_away(p: Pantry) -> None:
    rows = {row.container: row for row in recall(p, "2A")}
    assert rows["2A/4"].to == "Aunt Sunniva"
    assert rows["2A/4"].state == "given"
    assert rows["2A/3"].place == "cellar"
    assert len(rows) == 4


def test_a_harmless_sign_changes_nothing_and_says_so(p: Pantry) -> None:
    before = one_batch.show(p, "3A").rows[0]
    said = signs.mark(p, "3A", "flat white film (kahm)")
    after = one_batch.show(p, "3A").rows[0]
    assert said.verdict is Verdict.SOUND
    assert any("Skim" in step for step in said.do)
    assert (after.verdict, after.best_by) == (before.verdict, before.best_by)
    assert any("Harmless" in one for one in after.reasons)


def test_a_sign_never_makes_a_verdict_better(p: Pantry) -> None:
    signs.mark(p, "3A", "rotten or putrid smell")
    signs.mark(p, "3A", "soft kraut, clean sour smell")
    assert one_batch.show(p, "3A").rows[0].verdict is Verdict.DISCARD


@pytest.mark.parametrize(
    ("code", "said", "sign"),
    [
        ("2A", "bulging lid", "swollen lid"),
        ("2A", "the lid is domed", "swollen lid"),
        ("2A", "leak lid", "leaking lid"),
        ("2A", "clear liquid, sediment", "sediment under clear liquid"),
        ("3A", "kahm yeast", "flat white film (kahm)"),
        ("3A", "kahm", "flat white film (kahm)"),
        ("3A", "flat film, white", "flat white film (kahm)"),
        ("3A", "blue garlic", "blue or green garlic"),
        ("3A", "fuzzy mold", "fuzzy, raised or coloured mould"),
        ("3A", "slimy and horrible", "slimy or ropy"),
        ("3A", "cloudy", "cloudy brine while fermenting"),
        ("3A", "bubbles", "bubbles, hiss or tight lid while fermenting"),
        ("2A", "cloudy", "murky liquid and soft food"),
        ("2A", "lid popped up", "swollen lid"),
        ("2A", "popped", "swollen lid"),
        ("2A", "smells off", "foul or musty smell"),
        ("2A", "fuzzy", "mould on food or lid"),
        ("2A", "worms", "still unsure after looking"),
        ("2A", "broken seal, mouldy", "mould on food or lid"),
        ("2A", "did not seal", "loose lid found in storage"),
    ],
)
def test_usual_words_are_understood(p: Pantry, code: str, said: str, sign: str) -> None:
    assert signs.mark(p, code, said).sign == sign


@pytest.mark.parametrize(
    ("code", "said"),
    [
        ("3A", "film"), ("3A", "white"), ("3A", "white film"), ("3A", "blue"), ("3A", "crust"),
        ("2A", "rust"), ("2A", "sticky outside"), ("3A", "cloudy and odd"), ("2A", "lid"),
        ("2A", "cloud"), ("2A", "sediment"), ("2A", "dark"), ("2A", "black under the lid"),
        ("2A", "oddness of the third kind"), ("2A", "does not smell right"),
        ("2A", "not mouldy, but odd grains"),
    ],
)  # fmt: skip
def test_words_that_nobody_surely_understood_hold_it_in_doubt_until_it_was_looked_at(
    p: Pantry, code: str, said: str
) -> None:
    """They may mean mild and bad, or nothing that is known; they are kept as they were said."""
    before = next(one for one in one_batch.show(p, code).rows if f"{code}/1" in one.container_ids)
    found = signs.mark(p, f"{code}/1", said)
    assert found.verdict is Verdict.UNKNOWN
    assert any(f"`sign {code}/1 looks sound`" in step for step in found.do)
    assert any("say which" in step for step in found.do)
    row = next(one for one in one_batch.show(p, code).rows if f"{code}/1" in one.container_ids)
    assert row.verdict is Verdict.UNKNOWN
    assert not row.usable
    assert any(said in one for one in row.reasons)
    if code == "2A":
        assert verdicts(p, code)["2A/2"] is Verdict.SOUND, "it was said of that one"
    signs.mark(p, f"{code}/1", "looks sound")
    row = next(one for one in one_batch.show(p, code).rows if f"{code}/1" in one.container_ids)
    assert (row.usable, row.verdict) == (before.usable, before.verdict)
    assert any(said in one for one in row.reasons)


def test_what_nobody_understood_of_a_batch_may_be_on_any_of_it(p: Pantry) -> None:
    signs.mark(p, "2A", "oddness of the third kind")
    assert set(verdicts(p, "2A").values()) == {Verdict.UNKNOWN}
    with pytest.raises(Refused):
        act.use(p, "2A")


@pytest.mark.parametrize(
    "said",
    ["not mouldy", "smell fine", "tight", "", "no hole in the lid", "the lid never came off",
     "dusty lid", "label fell off", "the ring is rusty", "dust and cobwebs on the lids"],
)  # fmt: skip
def test_that_all_is_well_is_no_sign_and_no_doubt(p: Pantry, said: str) -> None:
    before = len(p.events)
    with pytest.raises(BadInput):
        signs.mark(p, "2A/1", said)
    assert len(p.events) == before


@pytest.mark.parametrize(
    "why",
    ["lid was up", "hole in lid", "turned", "went bang", "Deckel lose",
     "weird goo", "too old and weird goo in it", "too sour"],
)  # fmt: skip
def test_a_reason_that_nobody_understood_leaves_no_sister_usable(p: Pantry, why: str) -> None:
    act.discard(p, "2A/1", why=why)
    assert verdicts(p, "2A")["2A/2"] is Verdict.UNKNOWN
    signs.mark(p, "2A/2", "looks sound")
    assert verdicts(p, "2A")["2A/2"] is Verdict.SOUND


@pytest.mark.parametrize(
    "why",
    ["too old", "dropped", "dropped it on the floor", "broken", "ate too late", "nobody likes it",
     "freezer burn", "room needed", "past its date", "spilled", "the kids didn't like them",
     "opened too long ago", "expired", "clearing out the larder", "too salty", "other",
     "nobody would eat it", "zu alt", "moved house", "fed to the hens"],
)  # fmt: skip
def test_a_reason_that_is_plainly_none_of_the_foods_leaves_them(p: Pantry, why: str) -> None:
    act.discard(p, "2A/1", why=why)
    assert verdicts(p, "2A")["2A/2"] is Verdict.SOUND


def test_a_lid_that_popped_within_a_day_is_asked_about(p: Pantry) -> None:
    """It may never have gone down, and is then processed again or chilled (Nebraska)."""
    made = f"{p.today.day} {p.today:%b} {p.today.year}"
    putup.put_up(p, putup.read(p, f"2 pint jars peas, pressure canned, larder, {made}"))
    code = next(b.code for b in p.stock.batches.values() if b.food.name == "peas")
    asked = signs.mark(p, code, "lid popped up")
    assert asked.verdict is Verdict.UNKNOWN
    assert any("unsealed within a day" in step for step in asked.do)
    assert signs.mark(p, code, "lid popped up, foul smell").verdict is Verdict.DO_NOT_TASTE


@pytest.mark.parametrize(
    "why",
    [
        "smells off", "fizzing", "lid popped", "green mold inside", "exploded", "burst", "blew up",
        "smelled", "smelly", "off", "it was bad", "seal", "the lid", "made us ill", "we got sick",
        "poison", "botulism", "food poisoning", "looked or smelled wrong",
    ],
)  # fmt: skip
def test_what_it_is_discarded_for_in_any_words_makes_the_others_suspect(
    p: Pantry, why: str
) -> None:
    act.discard(p, "2A/1", why=why)
    assert verdicts(p, "2A")["2A/2"] in (Verdict.UNKNOWN, Verdict.DO_NOT_TASTE)


@pytest.mark.parametrize(
    "why", ["dropped it, broken", "not mouldy, just old", "bubbles", "fell off"]
)
def test_a_reason_that_says_nothing_of_the_others_leaves_them(p: Pantry, why: str) -> None:
    code = "3A" if why == "bubbles" else "2A"
    act.discard(p, f"{code}/1", why=why)
    assert code == "3A" or verdicts(p, code)["2A/2"] is Verdict.SOUND


def test_weighing_an_unknown_sign_names_near_ones_and_books_nothing(p: Pantry) -> None:
    before = len(p.events)
    found = signs.weigh(p, "3A", "horrible")
    assert "horrible" in found.sign
    assert found.verdict is Verdict.UNKNOWN
    assert len(p.events) == before
    assert len(signs.listing("pressure canned")) >= 30
    with pytest.raises(BadInput):
        signs.listing("teleported")


@pytest.mark.parametrize(
    "words",
    ["seal failed", "broken seal", "the seal broke", "lid came off", "the lid was loose"],
)
def test_a_lid_that_did_not_hold_is_found_in_any_words(p: Pantry, words: str) -> None:
    said = signs.weigh(p, "2A/1", words)
    assert said.verdict in (Verdict.DISCARD, Verdict.DO_NOT_TASTE)
    act.discard(p, "2A/1", why=words)
    assert verdicts(p, "2A")["2A/2"] is Verdict.UNKNOWN, "its sisters are looked at"


@pytest.mark.parametrize("words", ["seal not broken", "lid not loose", "the lid never came off"])
def test_a_lid_that_held_is_no_failed_seal(p: Pantry, words: str) -> None:
    act.discard(p, "2A/1", why=words)
    assert verdicts(p, "2A")["2A/2"] is Verdict.SOUND


@pytest.mark.parametrize("typed", ["bulging lid", "fizzing", "mould", "looks sound"])
def test_a_sign_on_a_batch_of_which_one_is_open_asks_on_which(p: Pantry, typed: str) -> None:
    """On the open jar it would say nothing of the others; on a closed one, of all."""
    act.open_(p, "2A/1")
    events = len(p.events)
    for do in (signs.mark, signs.weigh):
        with pytest.raises(Unclear) as asked:
            do(p, "2A", typed)
        assert set(asked.value.choices) == {"2A/1", "2A/2", "2A/3"}
    assert len(p.events) == events


def test_a_sign_on_a_batch_of_like_jars_asks_nothing(p: Pantry) -> None:
    signs.mark(p, "2A", "mould")
    assert sum(one.suspect != "" for one in p.stock.batches.values()) == 1


@pytest.mark.parametrize("why", ["bulging", "mould", "leaking and it spurted"])
def test_what_is_discarded_for_a_sign_of_a_batch_that_is_not_alike_is_asked(
    p: Pantry, why: str
) -> None:
    act.open_(p, "2A/1")
    p.today += timedelta(days=30)  # long over: an old open jar would say nothing of the others
    with pytest.raises(Unclear):
        leaving.discard(p, "2A", why=why)
    leaving.discard(p, "2A", why="nobody wanted it")
    leaving.discard(p, "2A/2", why=why)
    (batch,) = [one for one in p.stock.batches.values() if one.code == "2A"]
    assert batch.suspect


def test_of_all_that_is_discarded_for_a_sign_the_sealed_one_speaks(p: Pantry) -> None:
    """One was given away, and is looked at then."""
    act.open_(p, "2A/1")
    p.today += timedelta(days=30)
    leaving.discard(p, "2A", "all", why="mould")
    (batch,) = [one for one in p.stock.batches.values() if one.code == "2A"]
    assert batch.suspect


@pytest.mark.parametrize("note", ["", "odd shapes", "wonky lot"])
def test_the_words_of_a_note_are_no_words_for_a_sign(p: Pantry, note: str) -> None:
    """What keeps food needs every word understood; the food's own name is, a note is not."""
    correct.correct(p, "3A", note=note)
    assert signs.mark(p, "3A/1", "the sauerkraut is cloudy").verdict is Verdict.SOUND
    for words in ("cloudy and shapes", "cloudy and wonky"):
        assert signs.weigh(p, "3A/1", words).verdict is Verdict.UNKNOWN


@pytest.mark.parametrize(
    "line",
    [
        "2 lb chicken thighs, fresh, fridge",
        "1 1-lb piece salmon, fresh, fridge",
        "1 lb ground beef, fresh, fridge",
        "1 4-lb chicken, fresh, fridge",
    ],
)
def test_meat_is_no_pile_of_which_one_piece_is_bad(p: Pantry, line: str) -> None:
    """USDA FSIS: meat, poultry and fish that smell off are discarded."""
    code = putup.put_up(p, putup.read(p, line)).code
    found = signs.mark(p, code, "off smell, slime or gas")
    assert found.verdict in (Verdict.DISCARD, Verdict.DO_NOT_TASTE)
    (row,) = (row for row in view.due(p) if row.code == code)
    assert not row.usable


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("1 jar pesto, in oil, fridge, 24 nov", ["mould", "smells off", "mouldy", "bad smell"]),
        ("1 jar kombucha, vinegar ferment, fridge, 1 nov", ["smells off", "bad smell"]),
        ("1 bottle raspberries, flavoured vinegar, larder, 1 nov", ["smells off"]),
        ("1 jar lemons, salted, fridge, 1 nov", ["mould", "mouldy"]),
    ],
)
def test_mould_and_a_bad_smell_are_recorded_as_such(p: Pantry, line: str, words: list[str]) -> None:
    code = putup.put_up(p, putup.read(p, line)).code
    for word in words:
        said = signs.weigh(p, code, word)
        assert said.sign == "mould or a bad smell" or "mould" in said.sign
        assert said.verdict in (Verdict.DO_NOT_TASTE, Verdict.DISCARD)
        assert not any("is no sign of its own" in one for one in said.reasons)
    assert any("bad smell" in one.words for one in signs.to_choose(p, code))


def test_words_that_are_taken_for_doubt_say_so_and_what_else_may_be_picked(p: Pantry) -> None:
    said = signs.weigh(p, "2A/1", "looks odd")
    assert (said.sign, said.verdict) == ("still unsure after looking", Verdict.DO_NOT_TASTE)
    assert said.reasons[0].startswith(
        "'looks odd' is no sign of its own here, so 'still unsure after looking' is taken"
    )
    assert signs.weigh(p, "2A/1", said.sign).reasons[0] != said.reasons[0]
