"""No text of the app names a command of the command line for which the app has a key."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from textual.screen import ModalScreen

import pantry_tui
from pantry_tui.app.commands import BY_NAME, COMMANDS
from pantry_tui.app.inkeys import FIELDS, VERBS, in_keys
from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.guide import page_of
from pantry_tui.cli.registry import every
from pantry_tui.cli.stock import OF_BATCH, OF_CUT, OF_READING, Correct
from pantry_tui.services.lookup.guides import guides
from pantry_tui.services.pantry import Pantry, create, open_pantry
from tests.app.screens import painted

HOME = Path(pantry_tui.__file__).parent
#: Verbs that the app has no key for; who needs one of them works at a command line.
KEYLESS = {"init", "verify", "serve", "demo", "signs", "jars", "repeat", "show"}
#: How a text names a command.
NAMED = re.compile(r"`(?:pantry-tui )?([a-z-]+(?: [a-z]+)?)|\bpantry-tui (?!was\b)([a-z-]+)")


def texts() -> Iterator[tuple[str, str]]:
    """Every text of the rooms that the app shows, with its file: documentation aside, and what is
    put into a text as {}."""
    for file in sorted(HOME.rglob("*.py")):
        if "cli" in file.relative_to(HOME).parts:
            continue
        tree = ast.parse(file.read_text(encoding="utf-8"))
        passed = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
        for node in ast.walk(tree):
            if isinstance(node, ast.JoinedStr):
                passed |= {id(one) for one in node.values}
                said = "".join(
                    str(one.value) if isinstance(one, ast.Constant) else "7C/1"
                    for one in node.values
                )
            elif isinstance(node, ast.Constant) and isinstance(node.value, str):
                said = node.value
            else:
                continue
            if id(node) not in passed and NAMED.search(said):
                yield file.name, said


TEXTS = [one for one in texts() if "reference tables" not in one[1]]


def verbs(said: str) -> set[str]:
    """The verbs of the command line that a text names."""
    known = {entry.name.split(" ")[0] for entry in every()}
    found = {(one[1] or one[2]).split(" ")[0] for one in NAMED.finditer(said)}
    return found & known


def test_there_are_texts_that_name_commands() -> None:
    assert len(TEXTS) > 20
    assert {"undo", "place", "household"} <= {verb for _, said in TEXTS for verb in verbs(said)}


@pytest.mark.parametrize(("file", "said"), TEXTS, ids=[f"{a}: {b[:40]}" for a, b in TEXTS])
def test_a_text_that_names_a_command_names_its_key_in_the_app(file: str, said: str) -> None:
    shown = in_keys(said)
    assert "`" not in shown
    shown = re.sub(r"\bpantry-tui \S.*?\(at a command line\)", "", shown)
    if shown != in_keys(said) or "(at a command line)" in shown:
        return  # no key says another hour, or which act of the log
    for verb in verbs(said) - KEYLESS:
        assert f"pantry-tui {verb}" not in shown, file
        assert "(with :)" in shown or re.search(r"\S+ \([a-z, ]+\)|\(\S+, [a-z ]+", shown), shown


def test_the_form_that_puts_a_batch_right_has_each_flag_of_the_command() -> None:
    assert set(OF_BATCH) == set(FIELDS)
    assert set(Correct.__annotations__) == {"code", *OF_BATCH, *OF_READING, *OF_CUT}


def test_every_verb_has_a_key_or_is_known_to_have_none() -> None:
    ids = {one.id for one in COMMANDS} | {one.id for one in BY_NAME}
    for entry in every():
        words = entry.name.split(" ")
        named = any(" ".join(words[:n]) in VERBS or " ".join(words[:n]) in ids for n in (1, 2, 3))
        assert named or words[0] in KEYLESS, entry.name
    assert {one.removeprefix(":") for one in VERBS.values()} <= ids


@pytest.mark.parametrize(
    ("said", "screen", "shown"),
    [
        ("add it with `pantry-tui place add`", "due", "add it with a (add place) in Shelves (S)"),
        ("add it with `pantry-tui place add`", "shelves", "add it with a (add place)"),
        ("with `pantry-tui place add`", "putup", "with a (add place) in Shelves (F3)"),
        ("`place merge` joins two.", "due", "a place (with :) joins two."),
        ("as `household dish add \"soup = 2 beans\"`.", "week",
         "as dishes (with :): \"soup = 2 beans\"."),
        ("Accept it again (`week --accept`).", "week", "Accept it again (a, accept)."),
        ("accept it (`week --accept`)", "due", "accept it (a, accept in This week (W))"),
        ("`pantry-tui init --store x` makes one", "due", "pantry-tui init --store x makes one"),
        ("put it right: `correct 3A --process psi=11`.", "due",
         "put it right: w (put right), how it was put up: psi=11."),
        ('or freeze it (`repack 7C "1 box stew, freezer"`)', "due",
         'or freeze it (p, put up: "1 box stew, freezer, from 7C")'),
        ("a batch of its own: `repack 7C`", "due", "a batch of its own: p (put up): ..., from 7C"),
        ("put it right: `correct 3A --note`", "due", "put it right: w (put right), note"),
        ("book it, `move 3A PLACE --at \"DAY HH:MM\"`.", "due",
         "book it, move 3A PLACE --at \"DAY HH:MM\" (at a command line)."),
        ("take it back: `undo 0192ab`.", "log", "take it back: undo 0192ab (at a command line)."),
    ],
)  # fmt: skip
def test_a_key_of_another_room_names_the_room(said: str, screen: str, shown: str) -> None:
    assert in_keys(said, screen=screen) == shown


def test_the_guides_of_the_app_have_no_words_of_the_command_line() -> None:
    assert any("pantry-tui" in one.text for one in guides())
    assert not any("pantry-tui" in page_of(one) for one in guides())


async def test_a_line_that_is_typed_is_answered_in_keys(tmp_path: Path) -> None:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", date(2026, 11, 25)) as p:
        async with PantryApp(p).run_test(size=(80, 24)) as pilot:
            await pilot.pause()
            while isinstance(pilot.app.screen, ModalScreen):  # the first questions
                await pilot.press("escape")
            await pilot.press("f5", *"2 jars honey, bought in")
            await pilot.pause()
            shown = " ".join(painted(pilot).split())
            assert "pantry-tui" not in shown
            assert "a (add place) in Shelves (F3)" in shown


async def test_a_guide_is_found_by_its_own_name_before_those_that_only_speak_of_it(
    larder: Pantry,
) -> None:
    async with PantryApp(larder).run_test(size=(80, 24)) as pilot:
        await pilot.press("f1", *"power", "enter")
        assert "Keep the doors shut" in painted(pilot)
