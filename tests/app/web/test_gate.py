"""Who may come in, without a server."""

from __future__ import annotations

import json
import stat
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.app.web.gate import LONGEST_WAIT, Gate, Password
from pantry_tui.errors import BadInput, StoreError

HOST = "192.0.2.7:8765"


class Clock:
    """Seconds that only the test moves."""

    def __init__(self) -> None:
        self.seconds = 0.0

    def __call__(self) -> float:
        return self.seconds


@pytest.fixture
def password(tmp_path: Path) -> Password:
    made = Password(tmp_path / "folder" / "password.json")
    made.set("nine jars of plums")
    return made


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def gate(password: Password, clock: Clock) -> Gate:
    return Gate([HOST, "Cellar.local:8765"], password, clock)


def test_only_a_salted_hash_is_kept_and_only_its_owner_reads_it(password: Password) -> None:
    kept = password.path.read_text()
    assert "plums" not in kept
    assert stat.S_IMODE(password.path.stat().st_mode) == 0o600
    password.set("nine jars of plums")
    assert json.loads(password.path.read_text())["salt"] != json.loads(kept)["salt"]
    assert password.fits("nine jars of plums")
    assert not password.fits("nine jars of plum")


def test_a_password_is_not_written_through_a_link(tmp_path: Path) -> None:
    other = tmp_path / "other"
    other.write_text("mine")
    link = tmp_path / "password.json"
    link.symlink_to(other)
    Password(link).set("nine jars of plums")
    assert other.read_text() == "mine"
    assert not link.is_symlink()


@pytest.mark.parametrize("typed", ["", "short", "x" * 201])
def test_a_password_that_is_too_short_or_too_long_is_refused(tmp_path: Path, typed: str) -> None:
    with pytest.raises(BadInput, match="8 to 200"):
        Password(tmp_path / "password.json").set(typed)


@pytest.mark.parametrize("kept", ["", "[]", "{}", '{"salt": 1, "scrypt": 2}', '{"salt": "x"}'])
def test_a_file_that_holds_no_password_lets_nobody_in(tmp_path: Path, kept: str) -> None:
    file = tmp_path / "password.json"
    file.write_text(kept)
    with pytest.raises(StoreError, match="holds no password"):
        Gate([HOST], Password(file), Clock()).enter("", "192.0.2.9")


def test_the_right_password_gives_a_token_of_its_own(gate: Gate) -> None:
    one, two = (gate.enter("nine jars of plums", "192.0.2.9") for _ in range(2))
    assert one
    assert two
    assert one != two
    assert gate.is_in(one)
    assert gate.is_in(two)
    assert not gate.is_in(None)
    assert not gate.is_in("")
    assert not gate.is_in(one[:-1])


def test_wrong_tries_are_slowed_more_and_more_for_their_address_alone(
    gate: Gate, clock: Clock
) -> None:
    waits = []
    for _ in range(14):
        assert gate.enter("wrong", "192.0.2.9") is None
        waits.append(gate.wait("192.0.2.9"))
        clock.seconds += waits[-1]
    assert waits[:6] == [0, 0, 2, 4, 8, 16]
    assert waits[-1] == LONGEST_WAIT
    assert gate.enter("nine jars of plums", "192.0.2.10")


def test_while_it_must_wait_even_the_right_password_is_not_looked_at(
    gate: Gate, clock: Clock
) -> None:
    for _ in range(4):
        gate.enter("wrong", "192.0.2.9")
    assert gate.enter("nine jars of plums", "192.0.2.9") is None
    clock.seconds += gate.wait("192.0.2.9")
    assert gate.enter("nine jars of plums", "192.0.2.9")
    assert not gate.wait("192.0.2.9")


@given(st.none() | st.text(max_size=30))
def test_no_other_name_and_no_other_page_is_ours(name: str | None) -> None:
    gate = Gate([HOST], None, Clock())
    assert gate.knows(name) == (name is not None and name.lower() == HOST)
    assert not gate.is_ours(name, HOST)
    assert not gate.is_ours(f"http://{HOST}", "192.0.2.8:8765")


def test_a_page_of_ours_is_known_by_name_and_port(gate: Gate) -> None:
    assert gate.is_ours(f"http://{HOST}", HOST)
    assert gate.is_ours("http://CELLAR.local:8765", "cellar.local:8765")
    assert not gate.is_ours("http://192.0.2.7", HOST)
    assert not gate.is_ours(f"https://{HOST}", HOST)
    assert not gate.is_ours("http://cellar.local:8765", HOST)
    assert not gate.is_ours("null", HOST)
