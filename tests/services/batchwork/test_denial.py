"""A no, however it is put: of what keeps the food, of the process, of the lids."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.denial import denies, lacking, says_only_lacking
from pantry_tui.core.safety.record import read_details
from pantry_tui.core.safety.values import seal_failed
from pantry_tui.core.safety.ways import dangers
from pantry_tui.core.words import Method, Verdict
from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork import putup
from pantry_tui.services.batchwork.prepared import said_anywhere
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.correct import correct

SOUND = frozenset({Verdict.SOUND, Verdict.EAT_SOON})
TOMATOES = "3 pint jars tomatoes, boiling-water canned, larder, minutes=85, altitude=500ft"
KRAUT = "1 quart jar sauerkraut, lactic ferment, fridge"

#: Ways to say that there was none of a thing.
LEFT_OUT = (
    "no {}", "no {} added", "without {}", "without any {}", "without the {}", "skipped the {}",
    "skipped {}", "omitted {}", "omitted the {}", "left out the {}", "forgot {}", "forgot the {}",
    "forgot to add {}", "forgot to add the {}", "I forgot the {}", "didn't add {}", "didnt add {}",
    "did not add any {}", "didn't put in the {}", "ran out of {}", "we ran out of {}",
    "{} omitted", "{} was skipped", "{} left out", "{} forgotten", "{} not added", "minus {}",
    "missed the {}", "{} missing", "lacks {}", "never added the {}", "not enough {}", "w/o {}",
    "had no {}", "didn't have any {}", "sans {}", "No {}.", "NO {}!",
)  # fmt: skip


@pytest.mark.parametrize("shape", LEFT_OUT)
@pytest.mark.parametrize(
    ("thing", "method", "key"),
    [
        ("lemon juice", Method.BOILING_WATER, "acid"), ("acid", Method.BOILING_WATER, "acid"),
        ("citric acid", Method.PRESSURE, "acid"), ("salt", Method.LACTIC, "salt"),
        ("salt", Method.COLD_SMOKED, "salt"), ("vinegar", Method.VINEGAR_PICKLE, "vinegar"),
        ("vinegar", Method.FRIDGE_PICKLE, "vinegar"), ("sugar", Method.JAM, "sugar"),
        ("processing", Method.BOILING_WATER, "process"),
    ],
)  # fmt: skip
def test_a_note_that_says_what_was_left_out(
    shape: str, thing: str, method: Method, key: str
) -> None:
    assert said_anywhere(shape.format(thing), method) == {key: "none"}


@pytest.mark.parametrize(
    "note",
    [
        "no mould", "not opened", "no sugar", "no lids failed", "none failed", "no leaks",
        "no lemon peel", "without lemon zest", "no lemongrass", "no acid taste", "no acidity",
        "did not skip the lemon juice", "didn't forget the acid", "nothing left out", "no pepper",
        "no canning salt", "no processed sugar", "no vinegar smell", "not acidic", "no salt",
        "all sealed", "seals not checked yet", "never opened", "no unprocessed honey",
        "not as much as last year", "no dill, lemon on the side", "lemon juice added",
        "no vacuum sealer used", "missed the canning class", "did not have to add lemon juice",
        "didn't use fresh lemon juice, bottled", "no longer using lemon",
        "no need to process again",
        "missing a label", "ran out of jars", "forgot the date", "left out on the counter",
    ],
)  # fmt: skip
def test_a_note_that_denies_something_else(note: str) -> None:
    assert said_anywhere(note, Method.BOILING_WATER) == {}


@pytest.mark.parametrize(
    "note",
    [
        "did not seal",
        "didn't seal",
        "none sealed",
        "never sealed",
        "failed to seal",
        "unsealed",
        "none of the jars sealed",
        "the seal failed",
        "lids did not seal",
        "no vacuum",
    ],
)
def test_a_note_that_says_that_no_lid_held(note: str) -> None:
    assert said_anywhere(note, Method.BOILING_WATER) == {"seal": "failed"}
    assert said_anywhere(note, Method.DRIED) == {}


@pytest.mark.parametrize(
    "note",
    ["not processed", "unprocessed", "didn't process", "skipped the water bath", "no canner"],
)
def test_a_note_that_says_that_it_was_not_processed(note: str) -> None:
    assert said_anywhere(note, Method.BOILING_WATER) == {"process": "none"}


@pytest.mark.parametrize(
    "value",
    ["skipped", "omitted", "left out", "forgot", "forgot it", "didn't add", "ran out", "none",
     "without", "ran out of it", "not added", "forgotten", "skipped the {}", "without {}",
     "no {}", "{} omitted", "never added"],
)  # fmt: skip
@pytest.mark.parametrize(
    ("key", "thing"),
    [("acid", "lemon juice"), ("lemon", "lemon"), ("vinegar", "vinegar"), ("salt", "salt"),
     ("sugar", "sugar")],
)  # fmt: skip
def test_a_value_that_says_none_is_understood_as_none(value: str, key: str, thing: str) -> None:
    details = read_details([(key, value.format(thing))])
    assert not details.problems
    assert denies(details.pairs[0][1])


@pytest.mark.parametrize("key", ["acid", "salt", "vinegar", "sugar"])
def test_what_is_refused_is_told_how_to_say_none(key: str) -> None:
    (said,) = read_details([(key, "as my aunt did")]).problems
    assert f"{key}=none" in said


@pytest.mark.parametrize("value", ["lemon", "1 tbsp lemon juice", "5%", "no 1 pink", "nonesuch"])
def test_what_is_no_denial(value: str) -> None:
    assert not denies(value)


@pytest.mark.parametrize(
    ("value", "failed"),
    [
        ("no failures", False), ("none failed", False), ("no lids failed", False),
        ("not one failed", False), ("0 failed", False), ("none of them failed", False),
        ("not loose", False), ("nothing leaking", False), ("7 of 7 sealed", False),
        ("7/7", False), ("all sealed", False), ("tight", False),
        ("all but one sealed", True), ("all sealed but one", True), ("6 of 7 sealed", True),
        ("all sealed except two", True), ("6/7 sealed", True), ("1 failed", True), ("none", True),
        ("none sealed", True), ("skipped", True), ("not sealed", True), ("no", True),
    ],
)  # fmt: skip
def test_what_a_record_says_of_the_seals(value: str, failed: bool) -> None:
    assert not read_details([("seal", value)]).problems
    assert seal_failed(value) is failed


@pytest.mark.parametrize(
    "value", ["no, failed", "none, 1 loose", "most sealed", "all but one", "some", "8 of 7 sealed"]
)
def test_seals_of_which_nobody_can_say(value: str) -> None:
    assert read_details([("seal", value)]).problems


@pytest.mark.parametrize(
    "value", ["none", "skipped", "forgot to process", "not processed", "left out", "no process",
              "without processing", "never", "didn't process it", "skipped the water bath"],
)  # fmt: skip
@pytest.mark.parametrize("key", ["process", "canner", "minutes"])
def test_a_process_that_was_left_out(value: str, key: str) -> None:
    assert not read_details([(key, value)]).problems
    assert dangers({key: value}) == ["The record says that it was not processed."]


@pytest.mark.parametrize(
    ("text", "only"),
    [
        ("no lemon juice", True), ("skipped the lemon juice", True), ("no lemon juice added", True),
        ("tomatoes without lemon juice", False), ("no lemon cake", False), ("lemon juice", False),
        ("we ran out of lemon juice", True), ("no salt and lemon", False),
    ],
)  # fmt: skip
def test_a_part_of_a_line_that_says_nothing_else(text: str, only: bool) -> None:
    assert says_only_lacking(text, "lemon|acid") is only
    assert bool(lacking(text, "lemon|acid")) or not only


def up(p: Pantry, line: str) -> Verdict:
    return putup.put_up(p, putup.read(p, line)).verdict


@pytest.mark.parametrize(
    "more",
    ["no lemon juice", "skipped the lemon juice", "lemon juice omitted", "acid=skipped",
     "note=ran out of lemon juice", "note=didn't add the lemon", "lemon=none"],
)  # fmt: skip
def test_tomatoes_without_acid_are_in_doubt(larder: Pantry, more: str) -> None:
    assert up(larder, f"{TOMATOES}, {more}") not in SOUND
    (batch,) = larder.stock.batches.values()
    assert any("No acid was added" in one for one in batch.doubt)


@pytest.mark.parametrize("more", ["skipped the salt", "no salt", "note=forgot the salt"])
def test_a_ferment_without_salt_is_in_doubt(larder: Pantry, more: str) -> None:
    up(larder, f"{KRAUT}, {more}")
    (batch,) = larder.stock.batches.values()
    assert any("No salt was used" in one for one in batch.doubt)


@pytest.mark.parametrize(
    ("record", "note", "agreed"),
    [
        ("acid=lemon", "no lemon juice", False), ("acid=lemon", "no acid", False),
        ("acid=citric", "no lemon juice", True), ("acid=yes", "forgot the lemon", False),
        ("acid=lemon", "no vinegar", True), ("acid=none", "no lemon juice", True),
        ("acid=lemon seal=tight", "none sealed", False), ("acid=lemon", "none sealed", True),
        ("acid=lemon seal=failed", "did not seal", True),
        ("acid=lemon process=boiling-water", "not processed", False),
        ("acid=lemon process=boiling-water", "open kettle", False),
    ],
)  # fmt: skip
def test_a_note_that_says_the_contrary_of_the_record_is_asked_about(
    larder: Pantry, record: str, note: str, agreed: bool
) -> None:
    line = f"{TOMATOES}, {record}, note={note}"
    if agreed:
        up(larder, line)
        return
    with pytest.raises(BadInput, match="says otherwise"):
        up(larder, line)


def test_a_note_that_is_put_right_later_puts_it_in_doubt_and_lifts_nothing(larder: Pantry) -> None:
    assert up(larder, f"{TOMATOES}, vinegar=5%") in SOUND
    correct(larder, "2A", note="forgot the lemon juice")
    (batch,) = larder.stock.batches.values()
    assert any("No acid was added" in one for one in batch.doubt)
    correct(larder, "2A", note="")
    correct(larder, "2A", note="lemon juice was fine")
    (batch,) = larder.stock.batches.values()
    assert any("No acid was added" in one for one in batch.doubt)
    with pytest.raises(BadInput, match="says otherwise"):
        correct(larder, "2A", process=[("acid", "lemon")], note="no lemon juice")
    correct(larder, "2A", process=[("acid", "lemon")])
    (batch,) = larder.stock.batches.values()
    assert not batch.doubt


@pytest.mark.parametrize(
    "said",
    [
        "pressure cooker 25 min", "pressure cooker canned, minutes=25", "pressure-cooker",
        "pressure canned, pressure cooker 25 min", "pressure saucepan, minutes=25",
        "pressure canned, canner=\"pressure cooker\"", "pressure canned, note=pressure cooker",
    ],
)  # fmt: skip
def test_a_pressure_cooker_is_no_canner_however_it_is_named(larder: Pantry, said: str) -> None:
    assert up(larder, f"3 pint jars snap beans, larder, psi=11, {said}") not in SOUND
    (batch,) = larder.stock.batches.values()
    assert any("no pressure canner" in one for one in batch.doubt)


def test_a_pressure_cooker_may_be_the_name_of_a_method(larder: Pantry) -> None:
    record = {"minutes": "25", "psi": "11"}
    method = "pressure cooker canned"
    reading = putup.from_flags(
        larder, food="snap beans", method=method, size="pint", place="larder", process=record
    )
    assert putup.put_up(larder, reading).verdict not in SOUND
    up(larder, "3 pint jars plums, boiling-water canned, larder, minutes=25")
    correct(larder, "3A", food="snap beans", method=method, process=[("psi", "11")])
    assert all(one.doubt for one in larder.stock.batches.values())
