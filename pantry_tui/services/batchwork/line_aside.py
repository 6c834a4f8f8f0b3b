"""What a put-up line says beside the batch: in which state it came ("1 jar opened mayonnaise"), and
what went into it ("1 crock sauerkraut from 10 kg cabbage")."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date

from pantry_tui.core.canned import WORKING
from pantry_tui.core.dates import say
from pantry_tui.core.line.amounts import measure_at
from pantry_tui.core.line.day_figures import alone
from pantry_tui.core.line.days import is_day_at
from pantry_tui.core.line.numbers import read_number
from pantry_tui.core.line.tokens import Kind, Line, Token
from pantry_tui.core.line.vessels import PIECES, one, vessel
from pantry_tui.core.vessels import is_closed
from pantry_tui.core.words import Method, State

#: Words of a state by themselves, wherever they stand.
_STATES = {
    "opened": State.OPEN, "reopened": State.OPEN, "thawed": State.THAWED,
    "defrosted": State.THAWED, "unopened": State.SEALED,
}  # fmt: skip
#: The same where they are all that their part says: of a ferment it is asked which.
_OVER = frozenset({"finished", "ready", "done"})
_NOT = frozenset({"not", "never", "un", "yet"})
#: As many words name a food that went in.
_NAMED = 4


def take_state(found: list[Token], today: date) -> tuple[list[Token], State | None, str]:
    """The tokens without the words of a state, which it is, and as it was typed; all of them and
    None where none is said, or two are. What was done on a day ("opened yesterday") is left to who
    reads the day."""
    line = Line(found)
    drop: set[int] = set()
    said: set[State] = set()
    for i, token in enumerate(found):
        state = _STATES.get(token.text) or (State.OPEN if _is_open(line, i) else None)
        if token.text in _OVER and alone(line, i):
            state = State.SEALED
        if token.kind is not Kind.WORD or state is None or is_day_at(line, i + 1, today):
            continue
        start = i
        while start and found[start - 1].text in _NOT:
            start -= 1
        if start < i and state is not State.OPEN:
            return found, None, ""  # "not thawed", "not unopened"
        said.add(State.SEALED if start < i else state)
        drop.update(range(start, i + 1))
    if len(said) != 1:
        return found, None, ""
    typed = " ".join(found[i].said for i in sorted(drop))
    return [token for i, token in enumerate(found) if i not in drop], said.pop(), typed


def _is_open(line: Line, i: int) -> bool:
    """Whether "open" says how a vessel stands: "1 open jar", "mayonnaise, open"."""
    if line.word(i) != "open":
        return False
    return alone(line, i) or bool(vessel(line.word(i + 1)) or vessel(line.word(i - 1)))


def opened_wrongly(opened: date, made: date | None, method: Method | None, vessel: str) -> str:
    """Why it cannot have been opened on that day, a sentence; "" where it can."""
    if made is not None and opened < made:
        return f"Opened on {say(opened)}, but made or bought on {say(made)}: mend one of them."
    if method in WORKING or (method is not None and not is_closed(method, vessel)):
        return "A crock, crate or sack is never opened: leave the day on which it was out."
    return ""


def take_ingredients(line: Line, is_food: Callable[[list[str]], bool]) -> str:
    """Claims "from 10 kg cabbage", "made from 12 apples": so much of a food, as it is noted; ""
    where none is said. Where it came from ("from the far field") is none."""
    for i in range(len(line.tokens)):
        if line.word(i) != "from":
            continue
        at = _behind_amount(line, i + 1)
        at += line.says(at, "of") if at > i + 1 else 0
        stop = _food_at(line, at, is_food) if at > i + 1 else at
        if stop > at:
            start = i - (line.word(i - 1) == "made")
            noted = " ".join(token.said for token in line.tokens[i:stop])
            line.claim(start, stop)
            return noted
    return ""


def _behind_amount(line: Line, i: int) -> int:
    """Where "10 kg", "12" or "3 heads" stops; `i` where there is no amount."""
    measured = measure_at(line, i)
    if measured is not None and not measured.bare:
        return measured.stop
    number = read_number(line, i)
    if number is None or number.word:
        return i
    piece = one(line.word(number.stop)) in PIECES or vessel(line.word(number.stop))
    return number.stop + bool(piece)


def _food_at(line: Line, i: int, is_food: Callable[[list[str]], bool]) -> int:
    """Where the food that begins at `i` stops, as far as it goes; `i` where none does."""
    words: list[str] = []
    stop = i
    while line.word(i + len(words)) and len(words) < _NAMED:
        token = line.tokens[i + len(words)]
        if token.kind is not Kind.WORD or token.part != line.tokens[i].part:
            break
        words.append(token.text)
        stop = i + len(words) if is_food(words) else stop
    return stop
