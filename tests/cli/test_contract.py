"""The contract, over every verb of the registry: a verb without a row in the table fails."""

from __future__ import annotations

import json

import pytest

from pantry_tui.cli import registry
from pantry_tui.cli.verb import Act, Verb
from tests.cli import shapes
from tests.cli.conftest import Kitchen
from tests.cli.rows import ROWS

NAMES = [entry.name for entry in registry.every()]
ACTS = [entry.name for entry in registry.every() if issubclass(entry.load(), Act)]
#: A verb without a row fails in `test_every_verb_has_a_row_and_every_row_a_verb`.
REFUSABLE = [name for name, row in ROWS.items() if row.refused is not None]
ON_A_STORE = [name for name, row in ROWS.items() if not row.storeless]
every_verb = pytest.mark.parametrize("name", NAMES)
every_verb_that_ends = pytest.mark.parametrize(
    "name", [name for name in NAMES if name not in ROWS or not ROWS[name].endless]
)


def one_sentence(err: str) -> bool:
    """A sentence on a line of its own, and nothing of the program's inside."""
    return err.count("\n") == 1 and err.rstrip()[-1] in ".!?" and "inside the program" not in err


def prepared(kitchen: Kitchen, name: str) -> None:
    """Does what the row asks for before the call that works."""
    for words in ROWS[name].first:
        assert kitchen.run(*words)[0] == 0, words


def test_every_verb_has_a_row_and_every_row_a_verb() -> None:
    assert sorted(ROWS) == sorted(NAMES)


@every_verb_that_ends
def test_a_working_call_answers_in_json(kitchen: Kitchen, name: str) -> None:
    row = ROWS[name]
    prepared(kitchen, name)
    code, out, err = kitchen.run(*name.split(), *row.works, "--json")
    assert (code, err) == (0, ""), err
    assert not list(shapes.faults(json.loads(out), row.shape))


@every_verb_that_ends
def test_the_same_call_answers_in_plain_words(kitchen: Kitchen, name: str) -> None:
    row = ROWS[name]
    prepared(kitchen, name)
    code, out, err = kitchen.run(*name.split(), *row.works)
    assert (code, err) == (0, ""), err
    assert out.strip()
    assert not out.lstrip().startswith(("{", "["))


@pytest.mark.parametrize("name", REFUSABLE)
@pytest.mark.parametrize("json_", [(), ("--json",)], ids=["plain", "json"])
def test_a_refused_call_books_nothing(kitchen: Kitchen, name: str, json_: tuple[str, ...]) -> None:
    refused = ROWS[name].refused
    assert refused is not None
    before = kitchen.booked()
    code, out, err = kitchen.run(*name.split(), *refused, *json_)
    assert code == 1, (out, err)
    assert one_sentence(err)
    assert out == ""
    assert kitchen.booked() == before


@every_verb
@pytest.mark.parametrize("json_", [(), ("--json",)], ids=["plain", "json"])
def test_a_bad_call_books_nothing(kitchen: Kitchen, name: str, json_: tuple[str, ...]) -> None:
    before = kitchen.booked()
    code, out, err = kitchen.run(*name.split(), *ROWS[name].bad, *json_)
    assert code == 2, (out, err)
    assert one_sentence(err)
    if out:  # a question, and only where a script can read it
        assert json_
        assert not list(shapes.faults(json.loads(out), shapes.QUESTION))
    assert kitchen.booked() == before


@every_verb
def test_a_flag_that_nobody_knows_is_named(kitchen: Kitchen, name: str) -> None:
    code, out, err = kitchen.run(*name.split(), *ROWS[name].works, "--frobnicate")
    assert code == 2
    assert out == ""
    assert one_sentence(err)
    assert "--frobnicate" in err


@pytest.mark.parametrize("name", ON_A_STORE)
def test_an_unknown_store_is_refused_and_not_made(kitchen: Kitchen, name: str) -> None:
    row = ROWS[name]
    nowhere = kitchen.folder / "nowhere.db"
    code, out, err = kitchen.run(*name.split(), *row.works, "--store", str(nowhere))
    assert code == 1
    assert out == ""
    assert one_sentence(err)
    assert "pantry-tui init" in err
    assert not nowhere.exists()


@every_verb
def test_its_class_is_a_verb_of_its_own(name: str) -> None:
    entry, _ = registry.find(name.split())
    assert entry is not None
    kind = entry.load()
    assert issubclass(kind, Verb)
    assert kind.run is not Verb.run
    assert [one.name for one in registry.every() if one.where == entry.where] == [name]


@every_verb
def test_help_names_every_argument(kitchen: Kitchen, name: str) -> None:
    entry, length = registry.find(name.split())
    assert entry is not None
    assert length == len(name.split())
    code, out, err = kitchen.run(*name.split(), "--help")
    assert (code, err) == (0, "")
    assert out.startswith(f"pantry-tui {name}")
    assert f"{entry.about}." in out
    for field in entry.load().arguments.values():
        assert field.about in out
        assert all(flag in out for flag in field.flags[:1])
        assert not any(f"{old} " in out for old in field.old)


@pytest.mark.parametrize("name", ACTS)
def test_every_act_may_be_told_when(kitchen: Kitchen, name: str) -> None:
    row = ROWS[name]
    before = kitchen.booked()
    for typed in ("whenever", "2026-11-26", "2026-11-25 25:00"):
        code, out, err = kitchen.run(*name.split(), *row.works, "--at", typed)
        assert (code, out) == (2, ""), typed
        assert one_sentence(err), typed
    assert kitchen.booked() == before
    assert kitchen.run(*name.split(), *row.works, "--at", "today")[0] == 0
    assert kitchen.booked() != before


@pytest.mark.parametrize("name", ACTS)
def test_what_happened_before_is_booked_for_then_or_not_at_all(kitchen: Kitchen, name: str) -> None:
    before = kitchen.booked()
    code, _, err = kitchen.run(*name.split(), *ROWS[name].works, "--at", "2026-11-24 18:30")
    if code == 0:
        assert kitchen.answer("log")[-1]["day"] == "2026-11-24"
    else:
        assert code == 1
        assert one_sentence(err)
        assert kitchen.booked() == before


@pytest.mark.parametrize("name", ["putup", "outage"])
def test_a_dry_run_answers_and_books_nothing(kitchen: Kitchen, name: str) -> None:
    before = kitchen.booked()
    found = kitchen.answer(*name.split(), *ROWS[name].works, "--dry-run")
    if name == "putup":
        assert (found["code"], found["containers"]) == ("", [])
        assert found["best_by"]
    else:
        assert not list(shapes.faults(found, ROWS[name].shape))
    assert kitchen.booked() == before


def test_help_lists_every_verb_and_no_old_word(kitchen: Kitchen) -> None:
    code, out, _ = kitchen.run("--help")
    assert code == 0
    shown = {line[2:].split("  ")[0] for line in out.splitlines() if line.startswith("  ")}
    assert set(NAMES) <= shown
    assert not shown & {old for entry in registry.every() for old in entry.old}


def test_a_question_says_what_it_needs_and_what_it_read(kitchen: Kitchen) -> None:
    line = "3 pint jars peaches, pickled, made unknown"
    code, out, err = kitchen.run("putup", line, "--json")
    asked = json.loads(out)
    assert code == 2
    assert asked["error"] == err.strip()
    assert not list(shapes.faults(asked, shapes.QUESTION))
    about = {one["about"]: one for one in asked["asks"]}
    assert about["method"]["typed"] == "pickled"
    assert {"fridge pickle", "vinegar pickle"} <= set(about["method"]["choices"])
    assert "shelf 2" in about["place"]["choices"]
    assert (asked["read_as"]["food"], asked["read_as"]["count"]) == ("pickled peaches", 3)
    code, out, _ = kitchen.run("putup", "3 jars peaches, dried, shelf 2, frobnicated", "--json")
    assert code == 2
    assert json.loads(out)["unread"] == ["frobnicated"]


def test_undo_takes_the_id_of_a_log_line(kitchen: Kitchen) -> None:
    kitchen.answer("use", "{peaches}")
    last = kitchen.answer("log")[-1]
    assert (last["kind"], last["code"]) == ("use", kitchen.codes["peaches"])
    assert last["id"] in kitchen.run("log")[1]
    assert kitchen.answer("undo", last["id"])["took_back"]
    assert kitchen.answer("log")[-1]["undone"]
    assert "(undone)" in kitchen.run("log")[1]
