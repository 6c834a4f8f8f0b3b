"""The command contract: exit codes, one sentence on errors, JSON fields, files left alone."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from pantry_tui.cli import main

TODAY = "2026-11-25"
Run = Callable[..., tuple[int, str, str]]


@pytest.fixture
def run(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Run:
    """Runs one command on a fresh store with three places."""

    def call(*words: str) -> tuple[int, str, str]:
        code = main(["--store", str(tmp_path / "store.db"), "--today", TODAY, *words])
        said = capsys.readouterr()
        return code, said.out, said.err

    assert call("init", "--altitude", "1800ft", "--people", "4")[0] == 0
    for name, climate in (("shelf 2", "pantry"), ("fridge", "fridge"), ("freezer", "freezer")):
        assert call("place", "add", name, "--climate", climate)[0] == 0
    return call


def answer(run: Run, *words: str) -> Any:
    code, out, err = run(*words, "--json")
    assert code == 0, err
    return json.loads(out)


def put_up(run: Run, line: str) -> str:
    return str(answer(run, "putup", line)["code"])


def test_a_jar_from_put_up_to_eaten(run: Run) -> None:
    made = answer(run, "putup", "7 pint jars runner beans, pressure canned, shelf 2, yesterday")
    assert made["best_by"] == "2027-11-24"
    assert made["discard_after"] is None
    assert made["verdict"] == "sound"
    assert made["read_as"]["food"] == "runner beans"
    assert len(made["containers"]) == 7
    code = made["code"]
    assert answer(run, "use", code)["containers"] == [f"{code}/1"]
    assert answer(run, "open", code)["containers"] == [f"{code}/2"]
    rows = {row["state"]: row for row in answer(run, "due")}
    assert rows["open"]["discard_after"] == "2026-11-28"
    assert rows["sealed"]["count"] == 5
    assert "opened" in answer(run, "undo")["message"]
    assert answer(run, "discard", code, "2", "--why", "seal failed")["containers"]
    assert answer(run, "due")[0]["count"] == 4


def test_the_due_list_has_what_ends_within_days_and_what_needs_care_under_heads_of_their_own(
    run: Run,
) -> None:
    for line in (
        "1 crock sauerkraut, lactic ferment, shelf 2, yesterday",
        "1 tub chicken soup, cooked meal, fridge, today",
        "2 pint jars peaches, boiling-water canned, shelf 2, today",
    ):
        put_up(run, line)
    out = run("due")[1]
    heads = [line for line in out.splitlines() if line.split(":")[-1].strip().isdigit()]
    assert heads == ["Eat soon: 1", "Needs care: 1", "Later: 2"]
    under = out.split("Eat soon: 1\n")[1]
    assert "chicken soup" in under.split("Needs care")[0]
    assert "sauerkraut" in under.split("Needs care")[1].split("Later")[0]


def test_flags_and_line_are_read_alike(run: Run) -> None:
    line = answer(run, "putup", "3 pint jars peaches, boiling-water canned, shelf 2", "--dry-run")
    flags = answer(
        run,
        "putup",
        "--food",
        "peach",
        "--method",
        "water bath canned",
        "--count",
        "3",
        "--size",
        "pint jars",
        "--place",
        "shelf 2",
        "--process",
        "mins=30",
        "--dry-run",
    )
    assert line["code"] == flags["code"] == ""
    assert line["best_by"] == flags["best_by"]
    assert flags["read_as"]["process"] == {"minutes": "30"}
    assert answer(run, "due") == [], "a dry run books nothing"


@pytest.mark.parametrize("word", ["pickled", "canned", "smoked"])
def test_a_method_word_that_means_two_is_asked_about(run: Run, word: str) -> None:
    code, _, err = run("putup", f"3 jars peaches, {word}, shelf 2")
    assert code == 2
    assert word in err
    assert " or " in err
    assert "say which" in err


def test_what_is_not_understood_is_named_and_not_booked(run: Run) -> None:
    line = "3 pint jars peaches, boiling-water canned, shelf 2, frobnicated"
    code, out, err = run("putup", line, "--dry-run")
    assert code == 2
    assert "not understood: frobnicated" in out
    code, _, err = run("putup", line)
    assert code == 2
    assert "frobnicated" in err
    assert answer(run, "due") == []


@pytest.mark.parametrize(
    ("words", "code"),
    [
        (("putup", "3 jars zzyzx, dried, shelf 2"), 2),
        (("putup", "3 jars peaches, teleported, shelf 2"), 2),
        (("putup", "3 jars peaches, dried, attic of nowhere"), 2),
        (("putup", "--food", "peaches", "--method", "dried", "--place", "shelf 2",
          "--made", "2026-02-30"), 2),
        (("putup", "--food", "peaches", "--method", "dried", "--place", "shelf 2",
          "--made", "01/02/2026"), 2),
        (("putup", "--food", "peaches", "--method", "dried", "--place", "shelf 2",
          "--made", "2027-01-01"), 2),
        (("putup", "--food", "peaches", "--method", "dried", "--place", "shelf 2",
          "--count", "0"), 2),
        (("putup", "--food", "green beans", "--method", "boiling-water canned",
          "--place", "shelf 2"), 1),
        (("putup", "--food", "garlic", "--method", "in oil", "--place", "shelf 2"), 1),
        (("place", "add", "attic"), 2),
        (("place", "add", "attic", "--climate", "warm"), 2),
        (("place", "add", "shelf 2", "--climate", "room"), 1),
        (("place", "add", "oven", "--climate", "room", "--temp", "900F"), 2),
        (("use", "9Z"), 2),
        (("show", "nonsense"), 2),
        (("shelf-life", "teleported", "peaches"), 2),
        (("shelf-life", "dried", "zzyzx"), 2),
        (("shelf-life", "dried", "apples", "--in", "attic"), 2),
        (("due", "--within", "soonish"), 2),
        (("week", "--from", "the day after never"), 2),
        (("frob",), 2),
        (("init",), 1),
        (("undo", "now"), 2),
        (("demo", "--init", "."), 1),
    ],
)  # fmt: skip
def test_bad_input_is_one_sentence_and_leaves_the_store_alone(
    run: Run, tmp_path: Path, words: tuple[str, ...], code: int
) -> None:
    run("due")  # nothing waits to be judged
    before = (tmp_path / "store.db").read_bytes()
    found, out, err = run(*words)
    assert found == code, (out, err)
    assert len(err.strip().splitlines()) == 1
    assert err.strip().endswith((".", "!"))
    assert "Traceback" not in err
    assert (tmp_path / "store.db").read_bytes() == before


@pytest.mark.parametrize("content", [b"", b"hello", b"SQLite format 3\x00" + b"\0" * 200])
def test_a_foreign_or_broken_file_is_refused_and_untouched(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], content: bytes
) -> None:
    path = tmp_path / "other.db"
    path.write_bytes(content)
    for verb in (["due"], ["undo"], []):
        assert main(["--store", str(path), *verb]) == 1
        assert len(capsys.readouterr().err.splitlines()) == 1
    assert path.read_bytes() == content


def test_a_store_cut_short_is_refused(run: Run, tmp_path: Path) -> None:
    path = tmp_path / "store.db"
    cut = path.read_bytes()[:5000]
    path.write_bytes(cut)
    code, _, err = run("due")
    assert code == 1
    assert len(err.splitlines()) == 1
    assert path.read_bytes() == cut


def test_a_missing_store_says_how_to_make_one(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["--store", str(tmp_path / "none.db"), "due"]) == 1
    assert "pantry-tui init --store " in capsys.readouterr().err
    assert not (tmp_path / "none.db").exists()


def test_global_flags_stand_before_or_after_the_verb(
    run: Run, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    store = str(tmp_path / "store.db")
    put_up(run, "2 pint jars peaches, boiling-water canned, shelf 2")
    assert main(["due", "--json", "--store", store, "--today", TODAY]) == 0
    after = capsys.readouterr().out
    assert main(["--json", "--store", store, "--today", TODAY, "due"]) == 0
    assert capsys.readouterr().out == after
    monkeypatch.setenv("PANTRY_STORE", store)
    monkeypatch.setenv("PANTRY_TODAY", TODAY)
    assert main(["due", "--json"]) == 0
    assert capsys.readouterr().out == after


@pytest.mark.parametrize("name", ["beans [/x]", "\x1b[2Jwipe", "🫙 jar", "مرحبا", "x" * 500])
def test_hostile_names_cannot_steer_the_terminal(run: Run, name: str) -> None:
    code = answer(
        run,
        "putup",
        "--food",
        name,
        "--method",
        "dried",
        "--place",
        "shelf 2",
        "--group",
        "vegetable",
        "--acidity",
        "low-acid",
        "--note",
        name,
    )["code"]
    for words in (("due",), ("shelves",), ("show", code), ("find", code), ("log",), ("week",)):
        found, out, _ = run(*words)
        assert found == 0
        assert "\x1b" not in out
    assert any(row["code"] == code for row in answer(run, "due"))


def test_an_older_jar_left_behind_is_named_with_its_place(run: Run) -> None:
    old = put_up(run, "2 pint jars peaches, boiling-water canned, shelf 2, 2026-08-01")
    young = put_up(run, "2 pint jars peaches, boiling-water canned, shelf 2, 2026-10-01")
    said = answer(run, "use", young)["warnings"]
    assert any(old in one and "shelf 2" in one for one in said)
    assert not any(old in one for one in answer(run, "use", young, "--any")["warnings"])


def test_the_rest_of_the_verbs(run: Run) -> None:
    frozen = put_up(run, "4 bags ground beef, frozen, freezer, 2026-10-01")
    kraut = put_up(run, "1 crock sauerkraut, lactic ferment, fridge, 2026-11-01")
    assert answer(run, "thaw", frozen)["containers"] == [f"{frozen}/1"]
    thawed = next(row for row in answer(run, "due") if row["state"] == "thawed")
    assert thawed["discard_after"] == "2026-11-27", "it takes a day to thaw"
    assert "Ready" in answer(run, "ready", kraut)["message"]
    answer(run, "give", frozen, "1", "--to", "Aunt Sunniva")
    assert any("Aunt Sunniva" in line["says"] for line in answer(run, "log", frozen))
    assert "missing" in answer(run, "missing", frozen)["message"]
    shown = answer(run, "show", frozen)
    assert shown["code"] == frozen
    assert len(shown["gone"]) == 2
    assert shown["sources"]
    week = answer(run, "week")
    assert week["from"] == TODAY
    assert week["people"] == 4
    assert [row["place"] for row in answer(run, "shelves")] == ["freezer", "fridge", "shelf 2"]
    assert answer(run, "find", "mince")[0]["code"] == frozen
    assert "thawed" in answer(run, "move", frozen, "fridge", "--count", "1")["message"]
    warned = answer(run, "move", frozen, "shelf", "2")["warnings"]
    assert any("discard" in one for one in warned), "it is booked, since it stands there"


def test_shelf_life_answers_without_a_store(capsys: pytest.CaptureFixture[str]) -> None:
    assert (
        main(["shelf-life", "in oil", "garlic", "--in", "fridge", "--made", TODAY, "--json"]) == 0
    )
    said = json.loads(capsys.readouterr().out)
    assert said["allowed"] is True
    assert said["discard_after"] == "2026-11-29"
    assert said["best_by"] is None
    assert said["published"]["safety"][2] == "days"
    assert said["sources"]
    assert main(["shelf-life", "in oil", "garlic", "--in", "room", "--json"]) == 1
    said = json.loads(capsys.readouterr().out)
    assert said["allowed"] is False
    assert said["discard_after"] is None


def test_a_week_is_arranged_from_the_command_line(run: Run) -> None:
    code = put_up(
        run,
        "4 pint jars runner beans, pressure canned minutes=20 psi=11 canner=dial, shelf 2, "
        "11 months ago",
    )
    other = put_up(run, "4 pint jars peaches, boiling-water canned, shelf 2, 11 months ago")
    assert answer(run, "week", "--pin", f"{code}/2=friday")["take"][0]["code"]
    takes = answer(run, "week")["take"]
    assert [t["day"] for t in takes if f"{code}/2" in t["containers"]] == ["2026-11-27"]
    assert answer(run, "week", "--out", "friday")["notes"] == ["Fri 27 Nov 2026: you eat out."]
    assert all(t["day"] != "2026-11-27" for t in answer(run, "week")["take"])
    assert answer(run, "week", "--drop", other)["left_out"] == ["peaches"]
    assert answer(run, "dish", "add", "bean pot = 4 runner beans")["message"]
    assert answer(run, "dish", "list") == [{"name": "bean pot", "takes": [["runner beans", 4.0]]}]
    takes = answer(run, "week", "--dish", "bean pot=sunday")["take"]
    assert [t["day"] for t in takes if t["dish"] == "bean pot"] == ["2026-11-29"]
    assert answer(run, "week", "--accept")["accepted"]
    answer(run, "week", "--eaten", "2026-11-29")
    assert not [t for t in answer(run, "week")["take"] if t["day"] == "2026-11-29"]
    assert not answer(run, "week", "--anew")["accepted"]
    assert "Thu 24 Dec 2026" in answer(run, "table", "guests", "6", "24", "dec")["message"]
    assert answer(run, "table", "list") == [{"day": "2026-12-24", "people": 10}]
    assert answer(run, "appetite", "--meals", "5")["message"]


@pytest.mark.parametrize(
    ("words", "exit_code"),
    [
        (("week", "--pin", "7C"), 2),
        (("week", "--pin", "7C=friday"), 2),
        (("week", "--out", "last tuesday"), 2),
        (("week", "--drop", "moss"), 2),
        (("week", "--dish", "soup=friday"), 1),
        (("week", "--accept", "--anew"), 2),
        (("week", "--eaten", "friday"), 1),
        (("dish", "add", "soup"), 2),
        (("dish", "drop", "soup"), 1),
        (("table", "guests", "24 dec"), 2),
        (("table", "away"), 2),
        (("table", "away", "2026-12-27 to 2026-12-24"), 2),
        (("appetite", "--meals", "40"), 2),
        (("appetite", "fruit"), 2),
    ],
)
def test_a_week_refuses_in_one_sentence(run: Run, words: tuple[str, ...], exit_code: int) -> None:
    code, out, err = run(*words)
    assert code == exit_code
    assert out == ""
    assert err.count("\n") == 1
    assert "Traceback" not in err


def test_a_new_store_begins_on_the_day_that_was_told(run: Run) -> None:
    assert {one["day"] for one in answer(run, "log")} == {TODAY}


def test_more_than_was_ever_put_up_is_asked_about(run: Run) -> None:
    code = put_up(run, "7 pint jars runner beans, pressure canned, shelf 2, yesterday")
    refused, _, said = run("count", "shelf 2", "--seen", f"{code}=99")
    assert refused == 1
    assert "7 were ever put up" in said
    assert answer(run, "due")[0]["count"] == 7
    assert run("count", "shelf 2", "--seen", f"{code}=8", "--more")[0] == 0
    assert answer(run, "due")[0]["count"] == 8


def test_a_place_is_not_called_as_a_lid(run: Run) -> None:
    for words in (("place", "add", "2a", "--climate", "pantry"), ("place", "change", "fridge")):
        name = () if words[1] == "add" else ("--name", "2A")
        code, _, said = run(*words, *name)
        assert (code, "lid code" in said) == (2, True), said
    assert run("place", "add", "shelf 2A", "--climate", "pantry")[0] == 0


def test_two_places_are_merged_and_one_thing_is_one(run: Run) -> None:
    put_up(run, "1 pint jar runner beans, pressure canned, shelf 2, yesterday")
    assert run("place", "add", "shelf 3", "--climate", "pantry")[0] == 0
    _, _, err = run("place", "remove", "shelf 2")
    assert "1 container stands in shelf 2: say where it goes" in err
    _, out, _ = run("place", "merge", "shelf 2", "--into", "shelf 3")
    assert out.startswith("Merged the place shelf 2; 1 container went to shelf 3.")


def test_a_put_up_is_told_when_it_happened(run: Run) -> None:
    """As every act: the day of --at is the day made where the line names none, and its hour is
    that of the event."""
    line = "3 jars plum jam, shelf 2"
    made = answer(run, "putup", line, "--at", "yesterday 18:30")
    assert made["read_as"]["made"] == "2026-11-24"
    booked = next(one for one in answer(run, "log") if one["code"] == made["code"])
    assert (booked["day"], booked["at"]) == ("2026-11-24", "18:30")
    looked = answer(run, "putup", line, "--at", "20 nov", "--dry-run")
    assert (looked["code"], looked["read_as"]["made"]) == ("", "2026-11-20")
    code, _, err = run("putup", f"{line}, yesterday", "--at", "20 nov")
    assert code == 2
    assert "leave one of the two out" in err
    code, _, err = run("putup", line, "--at", "2026-11-26")
    assert code == 2
    assert "still to come" in err
