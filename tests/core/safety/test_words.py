"""The words in which people keep the record of a process: each thing by all its usual names."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.denial import denies
from pantry_tui.core.safety.record import NOT_CHECKED, key_named, not_checked, read_details
from pantry_tui.core.safety.seals import beside_the_seal, record_says_failed, says_seal_failed
from pantry_tui.core.safety.values import READERS, is_unknown, seal_failed
from pantry_tui.core.words import Method

#: What it is kept as | what people call it.
SAID = """
    minutes | minutes, minute, mins, min, time, processing time, process time
    psi | psi, pressure, lbs, pounds, gauge pressure
    canner | canner, gauge, pot, appliance, equipment
    process | process, processed, way, how, method, technique
    pack | pack, packed, packing
    jar | jar, jars, jar size, size
    form | form, cut, style, as
    acid | acid, acidified, acidity added, lemon, lemon juice, citric, citric acid, lime
    vinegar | vinegar, vinegars
    altitude | altitude, elevation, height, above sea
    seal | seal, sealed, seals, sealing, lid, lids
    headspace | headspace, head space, head
    by | by, from, maker, made by, canned by, gift, gift from, source
    salt | salt, salted, brine
    sugar | sugar, syrup, sweetened
    ph | ph
    vacuum | vacuum, vacuum packed, vacuum sealed, vac
    blanched | blanched, blanch, blanching, steamed
    temperature | temperature, temp, at, heat
    cure | cure, nitrite, curing salt
    amount | amount, weight, volume, contents
    state | state
    printed | printed, use by, best before, bb, expires, expiry, sell by
"""


@pytest.mark.parametrize("line", SAID.strip().splitlines())
def test_a_thing_is_understood_by_all_its_names(line: str) -> None:
    key, _, names = (part.strip() for part in line.partition("|"))
    for name in names.split(", "):
        assert key_named(name) == key
        assert key_named(f" {name.upper().replace(' ', '_')} ") == key


@pytest.mark.parametrize(
    ("key", "yes", "no"),
    [
        ("minutes", "25; 1:15; twenty; 20-25 min", "soon; 25 jars"),
        ("psi", "11; 76 kPa; 11 lb", "high"),
        ("canner", "dial gauge; weighted; boiling water; steam",
         "pan; dial, not vented; no pressure canner; pressure failed; broken dial; "
         "dial wasn't hot; boiling water bath in a pressure canner"),
        ("process", "boiling-water; tested; usda recipe; a published guide, safe",
         "by feel; a; the recipe; untested; not pressure"),
        ("pack", "hot; raw pack; cold-packed; RAW", "warm; hot stuff"),
        ("jar", "pint; 500ml; half-gallon", "big"),
        ("form", "bone-in; whole", "x; 12"),
        ("acid", "lemon; citric acid 1/4 tsp; bottled lemon juice; yes; ok; none; no; forgot; "
         "4 tbsp vinegar 5%",
         "some; bottled; sugar; lemon ✗ sugar; ?; -; half a lemon; 1 lemon; lemon 2; 2 g citric; "
         "lemon in 7 quart; 2 tbsp lemon juice 50%"),
        ("vinegar", "5%; cider vinegar; 1 cup white; yes; none; homemade; n; 1 to 2 cups",
         "strong; %; of; to a; 1 cup to 3 cups; white 1 l to 2 quarts"),
        ("altitude", "1,800 ft; 550m; -1500ft; 20000ft", "high; -1501ft; 20001ft"),
        ("seal", "tight; good; okay; fine; firm; sound; checked; pinged; sealed; all; "
                 "all sealed; concave; down; failed; fail; loose; open; broken; unsealed; "
                 "not sealed; yes; no; y; n; true; false; ok; none; Tight; 2 failed; came off; "
                 "did not seal; flexes; popped up",
         "maybe; upside; popped; all popped; half of them; all but one"),
        ("headspace", "1/2 in; 1 inch; 2 cm; 15 mm; yes", "half; a lot; 1 jar"),
        ("by", "us; Sunniva", ""),
        ("salt", "2.25%; 3 tbsp kosher salt; no; y; none", "some; 3 spoons; 1:50"),
        ("sugar", "60%; 2 lb sugar; light syrup 20 brix; yes", "sweet; light"),
        ("ph", "4.1; 4,1; pH 4½; 4 to 4.2", "sour; yes; no; ok; 4 1"),
        ("vacuum", "yes; no; TRUE", "partly"),
        ("blanched", "3 min; yes; no", "briefly"),
        ("temperature", "160F; 71 C; 71 degrees", "hot; yes; no; none"),
        ("cure", "yes; no; no 1; 2.5 g prague powder", "pink"),
        ("state", "sealed; open; thawed; in-progress; working; Sealed", "gone; eaten"),
        ("amount", "30 lb", ""),
        ("printed", "2027-03-31", ""),
    ],
)  # fmt: skip
def test_a_value_is_understood_whole_or_not_at_all(key: str, yes: str, no: str) -> None:
    for value in yes.split("; "):
        assert READERS[key](value), value
    for value in no.split("; ") if no else ():
        assert not READERS[key](value), value


@pytest.mark.parametrize(
    ("value", "denied", "unknown"),
    [
        ("none", True, False), ("no", True, False), ("not", True, False),
        ("nothing at all", True, False), ("without", True, False), ("forgot it", True, False),
        ("0", True, False), ("0.0", True, False), ("NONE added", True, False),
        ("n", True, False), ("False", True, False), ("nonesuch", False, False),
        ("0.5", False, False), ("5", False, False),
        ("lemon", False, False), ("", False, True), ("?", False, True), ("Unknown", False, True),
        (" not known ", False, True), ("not recorded", True, True),
    ],
)  # fmt: skip
def test_what_says_no_and_what_says_that_nobody_knows(
    value: str, denied: bool, unknown: bool
) -> None:
    assert denies(value) is denied
    assert is_unknown(value) is unknown


@pytest.mark.parametrize(
    ("value", "failed"),
    [
        ("failed", True), ("fail", True), ("Loose", True), ("open", True), ("broken", True),
        ("unsealed", True), ("not sealed", True), ("no", True), ("n", True), ("false", True),
        ("none", True), ("not all", True), ("0", True), ("tight", False), ("yes", False),
        ("popped up", True), ("the lid came off", True), ("flexes", True), ("springs back", True),
        ("didn't seal", True), ("did not seal", True), ("never sealed", True), ("1 failed", True),
        ("bulging", True), ("leaks", True), ("down", False), ("pinged", False), ("fine", False),
        ("", False), ("all sealed", False),
    ],
)  # fmt: skip
def test_a_seal_that_failed(value: str, failed: bool) -> None:
    assert seal_failed(value) is failed


@pytest.mark.parametrize(
    "words",
    ["lid came off", "lid loose", "seal failed", "lid flexes", "lid springs back", "lid popped up",
     "seal failure", "not sealed", "never sealed", "lids not tight", "no vacuum", "lost its seal",
     "unsealed", "didnt seal", "wont seal", "won’t seal", "did'nt seal", "hasn't sealed",
     "would not seal", "no longer sealed", "not properly sealed", "lid would not stay down",
     "lid doesn't hold", "lid lifts easily", "lid came away", "lid gave way", "cap undone",
     "seals gone", "lost the seal", "lost vacuum", "caps off"],
)  # fmt: skip
def test_what_says_that_a_lid_did_not_hold_says_so_to_both_readers(words: str) -> None:
    """In the record of the seals, and as what somebody saw."""
    assert seal_failed(words)
    assert says_seal_failed(words)


@pytest.mark.parametrize(
    "words", ["lid tight", "lid down", "all sealed", "lid popped down", "went down"]
)
def test_what_held_held_for_both(words: str) -> None:
    assert not seal_failed(words)
    assert not says_seal_failed(words)


@pytest.mark.parametrize(
    "words", ["not a loose lid", "no loose lid", "lid never loosened", "lid not open", "not loose",
              "unopened", "foul smell", "", "opened yesterday", "a piece gone", "smells off"]
)  # fmt: skip
def test_what_is_denied_or_says_nothing_of_a_lid_is_no_seal_that_failed(words: str) -> None:
    assert says_seal_failed(words) is False


@pytest.mark.parametrize("words", ["it had no seal", "with no vacuum", "has lost its seal",
                                   "one would not seal", "2 of 7 did not"])  # fmt: skip
def test_a_record_knows_what_is_said_of_a_lid_wherever_it_stands(words: str) -> None:
    assert record_says_failed(words)


LIDS = ["seal", "sealed", "lid", "lids", "seals", "cap", "caps"]
GONE = ["broken", "broke", "failed", "fail", "fails", "loose", "off", "open", "unsealed", "opened",
        "lost", "gone", "undone"]  # fmt: skip


@pytest.mark.parametrize("lid", LIDS)
def test_a_lid_that_did_not_hold_is_taken_out_of_what_is_said(lid: str) -> None:
    assert says_seal_failed(f"{lid} loose")
    for word in GONE:
        assert beside_the_seal(f"{lid} {word}, Mouldy") == "mouldy", word
    assert beside_the_seal(f"{lid} springs, mouldy") == f"{lid} springs, mouldy", "its own sign"


@pytest.mark.parametrize(
    ("words", "beside"),
    [
        ("didnt seal", ""), ("No vacuum; mouldy", "mouldy"), ("lid would not stay down", ""),
        ("it never sealed and isn't clear", "it and isn't clear"), ("Foul smell.", "Foul smell."),
        ("sealed, mouldy", "sealed, mouldy"),
        # Off, gone and broken are said of the food or the glass as well.
        ("no vacuum, off smell", "off smell"), ("Seal failed; smells off", "smells off"),
        ("lid off smells off", "off smells"), ("broken seal and gone bad", "and gone bad"),
        ("no vacuum, broken glass", "broken glass"), ("lid loose gone black", "gone black"),
        ("unsealed off-odour", "off-odour"), ("lid gone, off colour", "off colour"),
    ],
)  # fmt: skip
def test_what_is_said_beside_a_lid_that_did_not_hold(words: str, beside: str) -> None:
    assert beside_the_seal(words) == beside


# -- what a record can be checked by ---------------------------------------------------------------


@pytest.mark.parametrize(
    "pair",
    [("minutes", "20"), ("psi", "11"), ("canner", "dial"), ("process", "tested"),
     ("pack", "hot"), ("acid", "lemon"), ("vinegar", "5%")],
)  # fmt: skip
def test_any_detail_of_the_process_is_a_record_of_it(pair: tuple[str, str]) -> None:
    assert NOT_CHECKED not in not_checked(Method.PRESSURE, (pair,))
    assert not_checked(Method.PRESSURE, ((pair[0], "unknown"),)) == (NOT_CHECKED,)


@pytest.mark.parametrize("pair", [("jar", "pint"), ("altitude", "900ft"), ("seal", "tight")])
def test_a_jar_an_altitude_or_a_seal_is_none(pair: tuple[str, str]) -> None:
    assert not_checked(Method.BOILING_WATER, (pair,)) == (NOT_CHECKED,)


@pytest.mark.parametrize(
    ("method", "pairs", "missing"),
    [
        (Method.PRESSURE, (("minutes", "20"),), "psi"),
        (Method.PRESSURE, (("psi", "11"),), "minutes"),
        (Method.PRESSURE, (("pack", "hot"),), "minutes and psi"),
        (Method.BOILING_WATER, (("pack", "hot"),), "minutes"),
    ],
)
def test_what_a_check_still_needs_is_named(
    method: Method, pairs: tuple[tuple[str, str], ...], missing: str
) -> None:
    (said,) = not_checked(method, pairs)
    assert said == f"Process recorded only in part: {missing} not checked."
    assert not_checked(Method.BOILING_WATER, (("minutes", "20"),)) == ()
    assert not_checked(Method.JAM, ()) == ()


@pytest.mark.parametrize("key", ["process", "canner", "minutes"])
def test_none_of_a_process_says_that_there_was_none(key: str) -> None:
    assert read_details([(key, "none")]).problems == ()


@pytest.mark.parametrize(
    ("name", "value", "kept"),
    [
        ("acid", "2 tbsp lemon juice", "2 tbsp lemon juice"), ("acidified", "yes", "yes"),
        ("citric acid", "citric 1/4 tsp", "citric 1/4 tsp"), ("lemon", "yes", "lemon"),
        ("lemon juice", "2 tbsp", "lemon 2 tbsp"), ("citric", "1/4 tsp", "citric acid 1/4 tsp"),
        ("vacuum", "yes", "yes"), ("gift", "no", "us"), ("by", "YES", "somebody else"),
        ("seal", "no", "no"), ("cut", "yes", "cut"), ("cut-up", "Y", "cut"), ("cut", "no", "whole"),
    ],
)  # fmt: skip
def test_what_a_name_adds_to_its_value(name: str, value: str, kept: str) -> None:
    assert [said for _, said in read_details([(name, value)]).pairs] == [kept]


@pytest.mark.parametrize("nothing", ["?", "unknown"])
def test_of_acid_said_twice_what_was_added_counts(nothing: str) -> None:
    for pairs in (
        [("acid", nothing), ("lemon", "2 tbsp")],
        [("lemon", "2 tbsp"), ("acid", nothing)],
    ):
        found = read_details(pairs)
        assert (found.pairs, found.problems) == ((("acid", "lemon 2 tbsp"),), ())


def test_what_is_long_is_told_by_its_beginning() -> None:
    (wrong,) = read_details([("minutes", "x" * 60)]).problems
    assert wrong.startswith(f"minutes={'x' * 40} is not understood: ")
    (twice,) = read_details([("form", "sliced " * 9), ("form", "halved " * 9)]).problems
    assert (
        twice
        == f"form is said twice, {('sliced ' * 9)[:30]} and {('halved ' * 9)[:30]}: leave one out."
    )
    (key,) = read_details([("z" * 60, "1")]).problems
    assert key.startswith(f"'{'z' * 30}' is no detail")


def test_a_key_that_nobody_knows_is_told_what_is_near_it() -> None:
    (said,) = read_details([("minuts", "20")]).problems
    assert "near it: minutes" in said
    (far,) = read_details([("qqq", "20")]).problems
    assert "known: minutes, psi, canner, process, pack, acid, vinegar, jar, altitude" in far


# -- details with two poles ------------------------------------------------------------------------


@pytest.mark.parametrize("key", ["lemon", "citric", "lime", "acid", "seal", "vacuum",
                                 "cure", "blanched", "salt", "vinegar", "process", "pack"]
)  # fmt: skip
@pytest.mark.parametrize("value", ["✗", "-", "--", ".", "maybe", "perhaps", "partly", "yes?",
                                   "of", "and", "to", "popped", "tight?", "lemon?"])  # fmt: skip
def test_a_value_that_says_neither_is_refused_by_name(key: str, value: str) -> None:
    found = read_details([(key, value)])
    assert not found.pairs
    assert found.problems[0].startswith(f"{key}={value} is not understood: write ")


@pytest.mark.parametrize(
    ("key", "value", "kept"),
    [("lemon", "?", "?"), ("lemon", "unknown", "unknown"), ("lemon", "yes", "lemon"),
     ("lemon", "1 tbsp", "lemon 1 tbsp"), ("citric", "1/4 tsp", "citric acid 1/4 tsp"),
     ("lemon", "in each jar", "lemon in each jar"), ("lemon", "no", "no"), ("lemon", "n", "n")],
)  # fmt: skip
def test_the_name_of_an_acid_is_kept_where_the_value_says_that_it_was_added(
    key: str, value: str, kept: str
) -> None:
    assert read_details([(key, value)]).pairs == (("acid", kept),)
