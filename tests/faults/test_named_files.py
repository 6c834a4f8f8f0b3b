"""A file that somebody names: a pipe is not waited for, and a device is not read to its end."""

from __future__ import annotations

import json
import os

import pytest

from tests.cli.conftest import Kitchen, kitchen, small_store

__all__ = ["kitchen", "small_store"]

READERS = (
    ("import", "{file}.csv"),
    ("import", "{file}.csv", "--dry-run"),
    ("import", "{file}.json"),
    ("putup", "--lines", "{file}.csv"),
    ("putup", "--lines", "{file}.csv", "--dry-run"),
    ("restore", "{file}.csv"),
)


@pytest.mark.parametrize("what", ["pipe", "endless", "folder", "nothing"])
@pytest.mark.parametrize("words", READERS, ids=" ".join)
def test_what_has_no_end_is_not_waited_for(
    kitchen: Kitchen, words: tuple[str, ...], what: str
) -> None:
    ending = ".json" if "{file}.json" in words else ".csv"
    path = kitchen.folder / f"named{ending}"
    if what == "pipe":
        os.mkfifo(path)
    elif what == "endless":
        path.symlink_to("/dev/zero")
    elif what == "folder":
        path.mkdir()
    before = kitchen.booked()
    typed = [word.replace("{file}", "{folder}/named") for word in words]
    code, out, err = kitchen.run(*typed)
    assert code in (1, 2)
    assert out == ""
    assert err.count("\n") == 1
    assert "inside the program" not in err
    assert kitchen.booked() == before


@pytest.mark.parametrize("name", ["\u200b", "\u200b \u2060", "..."])
def test_a_place_has_a_name_that_can_be_seen(kitchen: Kitchen, name: str) -> None:
    for words in (
        ("place", "add", name, "--climate", "pantry"),
        ("place", "change", "shelf 2", f"--name={name}"),
    ):
        code, out, err = kitchen.run(*words)
        assert (code, out, err.count("\n")) == (2, "", 1), words


def test_what_is_repeated_goes_where_it_was_put_up(kitchen: Kitchen) -> None:
    """Opened jars stand in the fridge; the new ones do not belong there."""
    kitchen.answer("open", "{peaches}/2")
    for number in range(3, 9):
        kitchen.answer("use", "{peaches}" + f"/{number}")
    answer = kitchen.answer("repeat", "{peaches}", "--dry-run")
    assert answer["read_as"]["place"] == "shelf 2"


def test_a_path_that_is_no_text_is_said_in_json_that_anybody_reads(kitchen: Kitchen) -> None:
    path = os.fsdecode(os.fsencode(kitchen.folder) + b"/\xff.db")
    code, out, err = kitchen.run("backup", path, "--json")
    assert (code, err) == (0, "")
    json.loads(out)["path"].encode("utf-8")  # no half of a character
    assert os.path.exists(path)


def test_a_word_for_several_foods_is_asked_about(kitchen: Kitchen) -> None:
    before = kitchen.booked()
    code, out, err = kitchen.run("household", "appetite", "jam", "3")
    assert (code, out) == (2, "")
    assert "several foods" in err
    assert kitchen.booked() == before
    for one in ("mixed fruit jam", "peaches", "sweet"):
        kitchen.answer("household", "appetite", one, "3")
