"""Several people write to one store at once; afterwards all that they were told must be true.

    python -m tests.faults.together                8 people, 500 acts each
    python -m tests.faults.together --people 4 --acts 40

Prints what does not hold, and ends with 1 if anything does not. `acts.py` says what they do.
"""

from __future__ import annotations

import argparse
import json
import multiprocessing
import random
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

from tests.faults.acts import Act, Person, Shared, live

#: Pounds in the crate at first.
CRATE = 1900
#: Jars of the batch that does not last.
SCARCE = 4
#: Seconds after which a person who is not done counts as hanging.
PATIENCE = 1_800.0

LEFT = ("use", "discard")


@dataclass(frozen=True, slots=True)
class Evening:
    """What all of them were told, and the store that they leave behind."""

    store: Path
    shared: Shared
    told: Sequence[Act]
    before: int  # lines of the log before they began
    look: Person

    def done(self, verb: str = "", code: str = "") -> list[Act]:
        """Acts that they were told are done, of a verb and of a batch if one is given."""
        return [
            act for act in self.told
            if act.exit == 0 and act.verb == (verb or act.verb)
            and (not code or act.words[0].partition("/")[0] == code)
        ]  # fmt: skip

    def ask(self, verb: str, *words: str) -> Any:
        act = self.look.do(verb, *words, note=False)
        if act.exit:
            raise RuntimeError(f"{verb} {' '.join(words)}: {act.error}")
        return act.said


def furnish(store: Path, diary: Path) -> tuple[Person, Shared]:
    """A store with two shelves, a fridge, a cellar, and what all will use."""
    host = Person(store, Shared((), "", "", ""), diary, random.Random(0))

    def ask(verb: str, *words: str) -> Any:
        act = host.do(verb, *words, note=False)
        if act.exit:
            raise RuntimeError(f"{verb} {' '.join(words)}: {act.error}")
        return act.said

    ask("init")
    for name, climate in (("larder", "pantry"), ("pantry shelf", "pantry"), ("fridge", "fridge"),
                          ("cellar", "cellar")):  # fmt: skip
        ask("place", "add", name, "--climate", climate)
    peaches = "jars peaches, boiling-water canned, larder, minutes=30"
    jars = tuple(ask("putup", f"900 pint {peaches}", "--more")["code"] for _ in range(3))
    host.shared = Shared(
        jars,
        ask("putup", "900 half-pint jars strawberry jam, jam, larder", "--more")["code"],
        ask("putup", f"1 crate carrots, cellar-stored, cellar, amount={CRATE}lb")["code"],
        ask("putup", f"{SCARCE} pint {peaches}")["code"],
    )
    return host, host.shared


def evening(folder: Path, people: int, acts: int) -> Evening:
    """Lets so many people do so many things each, all at once."""
    store = folder / "store.db"
    host, shared = furnish(store, folder / "host")
    before = len(host.do("log", note=False).said)
    context = multiprocessing.get_context("spawn")
    start = context.Barrier(people)
    diaries = [folder / f"person-{n}" for n in range(people)]
    crowd = [
        context.Process(target=live, args=(store, shared, diary, acts, start)) for diary in diaries
    ]
    for one in crowd:
        one.start()
    for one in crowd:
        one.join(PATIENCE)
    crashed = [one for one in crowd if one.exitcode != 0]
    for one in crashed:
        one.kill()
    if crashed:
        raise RuntimeError(f"{len(crashed)} of {people} people did not come to their end.")
    told = [
        Act(**json.loads(line))
        for diary in diaries
        for line in diary.read_text(encoding="utf-8").splitlines()
    ]
    return Evening(store, shared, told, before, host)


# -- what must hold --------------------------------------------------------------------------------


def faults(found: Evening) -> list[str]:
    """A sentence for everything that does not hold."""
    return [
        *_codes(found),
        *_refusals(found),
        *_in_the_log(found),
        *_jars(found),
        *_the_last_ones(found),
        *_own_batches(found),
        *_crate(found),
    ]


def _codes(found: Evening) -> Iterator[str]:
    """A lid code is given once."""
    shared = found.shared
    given = [act.said["code"] for act in found.done("putup")]
    given += [*shared.jars, shared.jam, shared.crate, shared.scarce]
    twice = {code: times for code, times in Counter(given).items() if times > 1}
    if twice:
        yield f"{len(given)} put up, {len(set(given))} lid codes: {twice}"


def _refusals(found: Evening) -> Iterator[str]:
    """Nothing is refused but for want of jars (there is plenty of all but the last ones), or since
    somebody else has moved it there before."""
    last = [found.shared.scarce]
    said = Counter(
        f"{act.verb}: {act.error}"
        for act in found.told
        if act.exit and act.words != last and not _is_there(act) and not _is_a_crumb(act)
    )
    for words, times in said.most_common():
        yield f"refused {times} times: {words}"


def _is_there(act: Act) -> bool:
    return act.verb == "move" and act.error.endswith(" already.")


def _is_a_crumb(act: Act) -> bool:
    """A draw out of what is as good as empty."""
    return act.verb == "use" and "too little to book" in act.error


def _in_the_log(found: Evening) -> Iterator[str]:
    """What was told to be done is in the log; taking back is told beside, not as a line."""
    told = [act for act in found.done() if act.verb != "undo"]
    log = [
        line for line in found.ask("log")
        if not (isinstance(line, dict) and line.get("kind") in ("undo", "redo"))
    ]  # fmt: skip
    if len(log) - found.before < len(told):
        yield f"{len(told)} acts were told to be done, {len(log) - found.before} are in the log"


def _jars(found: Evening) -> Iterator[str]:
    """Every jar leaves once, and is gone from the store."""
    for code in (*found.shared.jars, found.shared.jam):
        left = [
            name for verb in LEFT for act in found.done(verb, code)
            for name in act.said["containers"]
        ]  # fmt: skip
        twice = [name for name, times in Counter(left).items() if times > 1]
        if twice:
            yield f"{code}: {len(twice)} jars left twice, {twice[0]} for one"
        gone = {row["container"] for row in found.ask("recall", code) if row["ended"]}
        if gone != set(left):
            lost, more = len(set(left) - gone), len(gone - set(left))
            yield f"{code}: {lost} jars told to be gone are here, {more} are gone untold"
    opened = [name for act in found.done("open") for name in act.said["containers"]]
    if len(set(opened)) < len(opened):
        yield f"{len(opened)} jars of jam were opened, {len(set(opened))} different ones"


def _the_last_ones(found: Evening) -> Iterator[str]:
    """Of a few jars each is eaten once, and only then is the next one refused."""
    code = found.shared.scarce
    asked = sum(act.words == [code] for act in found.told)
    eaten = len(found.done("use", code))
    if eaten != min(asked, SCARCE):
        yield f"{code}: {SCARCE} jars, asked for {asked} times, eaten {eaten} times"


def _own_batches(found: Evening) -> Iterator[str]:
    """A batch that one person alone touches is as that person left it."""
    codes = {act.said["code"] for act in found.done("putup") if "my own" in " ".join(act.words)}
    for code in sorted(codes):
        eaten = Counter(name for act in found.done("use", code) for name in act.said["containers"])
        # The second jar is eaten and taken back, again and again.
        wanted = {name for name in eaten if not name.endswith("/2")}
        rows = found.ask("recall", code)
        gone = {row["container"] for row in rows if row["ended"]}
        if gone != wanted:
            yield f"{code}: {len(wanted)} jars were eaten, {len(gone)} are gone"
        places = {act.words[1] for act in found.done("move", code)}
        stands = next(row["place"] for row in rows if row["container"] == f"{code}/1")
        if stands not in (places or {"larder"}):
            yield f"{code}/1 stands in {stands}, and was moved to {places}"


def _crate(found: Evening) -> Iterator[str]:
    """What is left of the crate is exact: the rest can be drawn, and not a crumb more."""
    code = found.shared.crate
    drawn = sum((_pounds(act.words[1]) for act in found.done("use", code)), Fraction(0))
    left = CRATE - drawn
    (row,) = found.ask("show", code)["containers"]
    if abs(_left(row) - left) > Fraction(6, 1000):
        yield f"{code}: {float(_left(row)):.4g} lb are left, {float(left):.6g} should be"
    more = left + Fraction(1, 336)
    if found.look.do("use", code, _say(more), note=False).exit != 1:
        yield f"{code}: more could be drawn than the {_say(left)} that are left"
        return
    rest = found.look.do("use", code, _say(left), note=False)
    if rest.exit:
        yield f"{code}: the rest of {_say(left)} could not be drawn: {rest.error}"
    elif not found.ask("recall", code)[0]["ended"]:
        yield f"{code}: all of it is drawn, and it is not empty"


def _pounds(text: str) -> Fraction:
    number, _, unit = text.partition(" ")
    return Fraction(number) / (16 if unit == "oz" else 1)


def _left(row: dict[str, Any]) -> Fraction:
    left = row.get("left")
    said = str(left["amount"]) if isinstance(left, dict) else str(row["amount"]).split()[0]
    return Fraction(said)


def _say(pounds: Fraction) -> str:
    """ "4812 5/336 lb"."""
    whole, part = divmod(pounds, 1)
    return f"{whole} {part} lb" if part else f"{whole} lb"


def main() -> int:
    parser = argparse.ArgumentParser(description="Many people, one store.")
    parser.add_argument("--people", type=int, default=8)
    parser.add_argument("--acts", type=int, default=500)
    args = parser.parse_args()
    with tempfile.TemporaryDirectory(prefix="pantry-tui-together-") as name:
        found = evening(Path(name), args.people, args.acts)
        wrong = faults(found)
    print(f"{len(found.told)} acts by {args.people} people, {len(found.done())} told to be done")
    print("\n".join(wrong) or "all of it holds")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
