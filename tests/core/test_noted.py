"""Where the note of a line ends."""

from __future__ import annotations

import pytest

from pantry_tui.core.line.noted import as_noted, take_note


@pytest.mark.parametrize(
    "quoted",
    [
        '"for Ann"', "“for Ann”", "'for Ann'", "‘for Ann’", "„for Ann“", "«for Ann»", "”for Ann”",
        "`for Ann`", '“for Ann"', '"for Ann”', "‚for Ann‘",
    ],
)  # fmt: skip
@pytest.mark.parametrize("lead", ["note=", "note:", "note: ", "NOTE=", "note ="])
def test_a_quoted_note_ends_where_its_quote_does(lead: str, quoted: str) -> None:
    rest, note, ask = take_note(f"6 jars jam, {lead}{quoted}, 2026-11-20, shelf")
    assert (rest, note, ask) == ("6 jars jam, 2026-11-20, shelf", "for Ann", None)


def test_it_may_stand_first_and_more_than_once() -> None:
    found = take_note('note="a, b" 6 jars jam, note="c"; shelf, note=d')
    assert found.rest.strip(", ") == "6 jars jam, shelf"
    assert found.note == "a, b; c; d"


@pytest.mark.parametrize("typed", ["'Ann's own, don't ask'", "‘Ann’s own, don’t ask’"])
def test_an_apostrophe_ends_no_note(typed: str) -> None:
    rest, note, _ = take_note(f"6 jars jam, note={typed}, shelf")
    assert rest == "6 jars jam, shelf"
    assert note.replace("’", "'") == "Ann's own, don't ask"


@pytest.mark.parametrize("opens", ['"', "“", "'", "«", "„"])
def test_a_quote_that_nothing_closes_is_asked_about(opens: str) -> None:
    found = take_note(f"6 jars jam, note={opens}for Ann, 2026-11-20")
    assert found.ask is not None
    assert "closes" in found.ask[2]


@pytest.mark.parametrize(
    "behind", ["2026-11-20", "20.11.2026", "20/11/26", "minutes=20", "psi=11", "state=open"]
)
def test_a_day_or_a_detail_behind_a_note_without_quotes_is_asked_about(behind: str) -> None:
    found = take_note(f"6 jars jam, note=for Ann, {behind}")
    assert found.ask is not None
    assert found.ask[0] == behind
    assert len(found.ask[1]) == 2
    for meant in found.ask[1]:
        assert take_note(f"6 jars jam, {meant}").ask is None


@pytest.mark.parametrize(
    "note",
    [
        "for Ann", "for Ann, with love", 'says "for Ann" on it', "cooked 18:00, fridge 18:45",
        "2026-11-20", "made 2026-11-20", "for Ann, by 2026-12-24 please", "less sugar, 2nd boil",
        "the box's left, Ann's", "ratio=2", "1,5 kg, 2 lids", "",
    ],
)  # fmt: skip
def test_a_note_without_quotes_takes_what_stands_behind_it(note: str) -> None:
    rest, found, ask = take_note(f"6 jars jam, note={note}")
    assert (rest.strip(", "), found, ask) == ("6 jars jam", note, None)


@pytest.mark.parametrize("note", ["for Ann", 'say "hi"', 'a "b" “c”', "Ann's, 2026-11-20"])
def test_what_is_written_anew_is_read_again(note: str) -> None:
    rest, found, _ = take_note(f"6 jars jam, {as_noted(note)}, shelf")
    assert (rest, found) == ("6 jars jam, shelf", note)
