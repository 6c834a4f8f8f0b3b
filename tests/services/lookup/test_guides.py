"""Guides: found by name or by words, every key and verb that they name is one."""

from __future__ import annotations

import re

import pytest

from pantry_tui.app.commands import COMMANDS
from pantry_tui.cli import registry
from pantry_tui.errors import BadInput
from pantry_tui.services.lookup.guides import Guide, guide, guides, sources_page

#: "`pantry-tui count PLACE`" in a guide is the verb `count`.
VERB = re.compile(r"pantry-tui ([a-z-]+)")
#: A key that leads a sentence or stands after "then": "c, then the place", "S, then a".
KEY = re.compile(
    r"(?:^\d\. |then )([a-zA-Z,=+]|Enter)(?:, | shows| books| says| proposes)", re.MULTILINE
)


def test_a_guide_is_found_by_its_name_its_title_and_words_that_only_it_has() -> None:
    assert guide("power-cut") == guide("A power cut") == guide("ajar")
    assert guide("popped").topic == "suspect-jar"
    with pytest.raises(BadInput, match="power-cut"):
        guide("teleporting")


@pytest.mark.parametrize("one", guides(), ids=lambda one: one.topic)
def test_every_verb_and_key_that_a_guide_names_is_one(one: Guide) -> None:
    verbs = {entry.name.partition(" ")[0] for entry in registry.every()}
    assert set(VERB.findall(one.text)) <= verbs
    keys = {key for command in COMMANDS for key in command.keys.split()}
    named = set(KEY.findall(one.text))
    assert named <= keys, named - keys
    assert one.about
    assert len(one.text.splitlines()) <= 14, "short"


def test_the_sources_are_all_there_with_their_addresses() -> None:
    page = sources_page().text
    assert "https://www.foodsafety.gov" in page
    assert len(page.splitlines()) > 200
