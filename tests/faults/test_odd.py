"""Odd files, odd moments, odd bytes: one sentence each, and nothing booked by half."""

from __future__ import annotations

import os
import re
import socket
import subprocess
import sys
from pathlib import Path

import pytest

from pantry_tui.cli import main
from pantry_tui.core.text import unsteered
from pantry_tui.services.safekeeping.verify import verify
from tests.cli.conftest import TODAY, Kitchen, kitchen, small_store
from tests.faults.kills import TODAY as DAY

__all__ = ["kitchen", "small_store"]


def one_sentence(err: str) -> bool:
    return err.count("\n") == 1 and err.endswith(".\n") and "Traceback" not in err


STRANGE = ["fifo", "socket", "folder", "link to nothing", "null", "zero", "full", "below a file",
           "too long", "no utf-8", "empty", "loop"]  # fmt: skip


def strange(folder: Path, what: str, name: str = "strange.db") -> Path:
    path = folder / name
    if what == "fifo":
        os.mkfifo(path)
    elif what == "socket":
        short = Path(os.path.relpath(path))
        try:
            socket.socket(socket.AF_UNIX).bind(str(short))
        except OSError:  # too long a name for a socket
            os.mkfifo(path)
    elif what == "folder":
        path.mkdir()
    elif what == "link to nothing":
        path.symlink_to(folder / "nothing.db")
    elif what == "loop":
        path.symlink_to(path)
    elif what == "below a file":
        (folder / "file").write_text("x")
        return folder / "file" / "strange.db"
    elif what == "too long":
        return folder / ("a" * 5000)
    elif what == "no utf-8":
        return Path(os.fsdecode(os.fsencode(folder) + b"/\xff.db"))
    elif what == "empty":
        path.write_bytes(b"")
    else:
        return Path(f"/dev/{what}")
    return path


@pytest.mark.parametrize("what", STRANGE)
@pytest.mark.parametrize(
    "words",
    [("due",), ("use", "2A"), ("verify",), ("verify", "--salvage", "{folder}/new.db"), ("backup",)],
    ids=lambda words: " ".join(words[:2]),
)
def test_what_is_no_store_is_said(kitchen: Kitchen, what: str, words: tuple[str, ...]) -> None:
    path = strange(kitchen.folder, what)
    code, out, err = kitchen.run(*words, "--store", str(path).replace("{", "{{"))
    assert code == 1, (out, err)
    assert out == ""
    assert one_sentence(err), err
    assert len(err) < 6000
    assert not (kitchen.folder / "new.db").exists()


@pytest.mark.parametrize("what", STRANGE)
@pytest.mark.parametrize("verb", ["restore", "import", "backup", "export"])
def test_what_is_no_file_of_ours_is_neither_read_nor_written(
    kitchen: Kitchen, what: str, verb: str
) -> None:
    named = {"export": "strange.csv", "import": "strange.json"}
    path = strange(kitchen.folder, what, named.get(verb, "strange.db"))
    if verb in ("export", "backup") and what in ("no utf-8", "folder"):
        return  # a fine name to write to
    before = kitchen.booked()
    code, out, err = kitchen.run(verb, str(path))
    assert code in (1, 2), (out, err)
    assert out == ""
    assert one_sentence(err), err
    assert kitchen.booked() == before
    if what == "link to nothing":
        assert not (kitchen.folder / "nothing.db").exists(), "never through a link"


@pytest.mark.parametrize("name", ["0001-01-01", "9999-12-31", "1899-12-31", "2101-01-01"])
def test_a_year_of_no_household_is_refused(kitchen: Kitchen, name: str) -> None:
    line = f"3 pint jars peaches, boiling-water canned, shelf 2, {name}"
    before = kitchen.booked()
    for words in (("due", "--today", name), ("putup", line), ("use", "2A", "--at", name)):
        code, out, err = kitchen.run(*words)
        assert (code, out) == (2, ""), words
        assert one_sentence(err)
    assert kitchen.booked() == before


@pytest.mark.parametrize("day", ["1900-01-01", "2100-12-31"])
def test_the_first_and_the_last_year_are_days_like_others(kitchen: Kitchen, day: str) -> None:
    for words in (("due",), ("week",), ("outlook",), ("shelves",), ("losses",), ("year",)):
        code, _, err = kitchen.run(*words, "--today", day)
        assert code == 0, (words, err)
    line = "3 pint jars peaches, boiling-water canned, shelf 2, minutes=30"
    assert kitchen.run("putup", line, "--today", day)[0] == 0
    assert kitchen.run("due", "--today", day)[0] == 0
    assert verify(kitchen.folder / "store.db", DAY).ok


def test_a_clock_that_jumps_is_named_and_loses_nothing(kitchen: Kitchen) -> None:
    """Forward by a year, an act, and back again: what lies ahead counts as today."""
    kitchen.answer("open", "{peaches}", "--today", "2027-11-25")
    rows = kitchen.answer("due")
    mine = [row for row in rows if row["code"] == kitchen.codes["peaches"]]
    assert any("still to come" in reason for row in mine for reason in row["reasons"])
    kitchen.answer("use", "{peaches}")
    kitchen.answer("use", "{peaches}", "--today", "2026-10-01")
    assert sum(row["count"] for row in kitchen.answer("due") if row["code"] == "2A") == 6
    found = kitchen.answer("verify")
    assert found["ok"]
    assert any("still to come" in note for note in found["notes"])
    ids = [line["id"] for line in kitchen.answer("log")]
    assert ids == sorted(ids)


@pytest.mark.parametrize("typed", ["\udcff\udcfe", "peach\ud800es", "\udc80"])
def test_bytes_that_are_no_text_are_said_and_hurt_nothing(kitchen: Kitchen, typed: str) -> None:
    for words in (
        ("use", typed),
        ("find", typed),
        ("show", typed),
        ("rate", "2A", "again", typed),
        ("place", "add", typed, "--climate", "room"),
        ("putup", typed),
        ("count", typed),
        ("household", "dish", "add", f"{typed} = 2 peaches"),
    ):
        code, _, err = kitchen.run(*words)
        assert code in (0, 1, 2), (words, err)
        assert "broken" not in err
        assert "inside the program" not in err, (words, err)
    assert kitchen.run("verify")[0] == 0
    assert kitchen.run("due", "--json")[1].isascii()


@pytest.mark.parametrize("words", [("due",), ("due", "--json"), ("--help",), ("verify",)])
def test_an_answer_that_cannot_be_written_is_said(kitchen: Kitchen, words: tuple[str, ...]) -> None:
    if not Path("/dev/full").exists():
        pytest.skip("there is no /dev/full here")
    command = [sys.executable, "-m", "pantry_tui", *words]
    command += ["--store", str(kitchen.folder / "store.db"), "--today", TODAY]
    with open("/dev/full", "w") as full:
        done = subprocess.run(command, stdout=full, stderr=subprocess.PIPE, text=True, check=False)
    assert done.returncode == 1
    assert one_sentence(done.stderr), done.stderr
    assert "nothing was booked" not in done.stderr


#: What would steer a terminal or a reader: C1, turning marks, line ends, an escape.
STEERING = (
    "\x9b31m",
    "\x85",
    "\u202egnirts",
    "\u2066",
    "\u2028",
    "\x1b[2J",
    "\x7f",
    "\u200f",
    "\u061c",
)
STEERS = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]")


@pytest.mark.parametrize("mark", STEERING)
def test_nothing_that_was_typed_steers_a_terminal_or_a_reader(kitchen: Kitchen, mark: str) -> None:
    name = f"attic{mark}room"
    kitchen.run("place", "add", name, "--climate", "pantry")
    kitchen.run("rate", "2A", "again", f"so{mark}good")
    kitchen.run("give", "2A", "--to", f"Aunt{mark}Sunniva")
    kitchen.run("reserve", "2A", "--for", f"Uncle{mark}Bo")
    asked = ["due", "shelves", "log", "show 2A", "recall 2A", "place list", "week", "labels 2A"]
    for words in (*(one.split() for one in asked), ("sheet", "due"), ("find", name)):
        for json_ in ((), ("--json",)):
            _, out, err = kitchen.run(*words, *json_)
            assert not STEERS.search(out + err), words


def test_json_says_the_same_and_steers_nothing() -> None:
    import json

    for text in (*STEERING, "\ud800", "ü ½ ›", "a\x00b"):
        plain = json.dumps([text], ensure_ascii=False)
        assert json.loads(unsteered(plain)) == [text]
        assert "\x9b" not in unsteered(plain)
    assert unsteered('["ü"]') == '["ü"]'


def test_a_home_that_is_written_as_a_wave_is_the_home(
    kitchen: Kitchen, away_from_home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (away_from_home / "mine.db").write_bytes((kitchen.folder / "store.db").read_bytes())
    assert main(["--store", "~/mine.db", "--today", TODAY, "due"]) == 0
    monkeypatch.setenv("PANTRY_STORE", "~/mine.db")
    assert main(["--today", TODAY, "due"]) == 0
    assert main(["--today", TODAY, "backup", "~/copy.db"]) == 0
    assert (away_from_home / "copy.db").exists()


@pytest.mark.skipif(os.geteuid() == 0, reason="whoever runs it may look everywhere")
def test_a_folder_that_may_not_be_searched_is_said(kitchen: Kitchen) -> None:
    closed = kitchen.folder / "closed"
    closed.mkdir(mode=0)
    try:
        for words in (("due",), ("init",), ("verify",), ("backup",)):
            code, _, err = kitchen.run(*words, "--store", str(closed / "store.db"))
            assert code == 1
            assert one_sentence(err)
    finally:
        closed.chmod(0o700)
