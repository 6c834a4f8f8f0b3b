"""Which words of a person's are taken for a sign: a sign that keeps the food needs the most."""

from __future__ import annotations

from itertools import combinations

import pytest

from pantry_tui.core.safety.signs import SignVerdict, find_sign, likely_sign, sign_words, signs_for
from pantry_tui.core.words import Method
from pantry_tui.reference.signs import load_signs
from pantry_tui.reference.tables import load_tables

FOODS = ("runner beans", "tomatoes", "sauerkraut", "dill pickles", "salmon", "hams", "carrots")
THROWN = (SignVerdict.DO_NOT_TASTE, SignVerdict.DISCARD)
#: Names of one word that mean one thing.
NAMES = {"kahm", "mother"}


@pytest.mark.parametrize("method", list(Method))
@pytest.mark.parametrize("name", FOODS)
@pytest.mark.parametrize("open_", [True, False])
def test_one_word_never_keeps_food(method: Method, name: str, open_: bool) -> None:
    food = load_tables().facts(name)
    assert food is not None
    known = signs_for(load_signs(), method, food, open_)
    for word in frozenset().union(*(sign_words(sign.words) for sign in known)) - NAMES:
        found = find_sign(known, word) or likely_sign(known, word)
        assert found is None or found.verdict in THROWN, (word, found.words)


@pytest.mark.parametrize("method", [Method.LACTIC, Method.PRESSURE, Method.SALTED, Method.DRIED])
def test_what_a_sign_says_is_not_there_never_means_it(method: Method) -> None:
    """Fuzzy white scale is not the hard white scale that is "not fuzzy"."""
    food = load_tables().facts("tomatoes")
    assert food is not None
    known = signs_for(load_signs(), method, food, True)
    words = ["white", "hard", "scale", "fuzzy", "specks", "soft", "mould", "packed"]
    for size in (2, 3, 4):
        for said in combinations(words, size):
            if "fuzzy" in said or "mould" in said:
                found = likely_sign(known, " ".join(said))
                assert found is None or found.verdict in THROWN, said
