"""Two logs that had parted become one: the same one from either side, with nothing lost from
sight, what both say differently named, and nothing milder than either had it."""

from __future__ import annotations

import random
import shutil
from collections.abc import Callable
from contextlib import suppress
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.log.payloads import PlaceChanged
from pantry_tui.core.log.timing import BROKEN_OFF
from pantry_tui.core.words import SEVERITY, Verdict
from pantry_tui.errors import PantryError, Unclear
from pantry_tui.services import household
from pantry_tui.services.batchwork import putup, tending, timer
from pantry_tui.services.clock import Clock
from pantry_tui.services.lookup import signs
from pantry_tui.services.output import paper
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.safekeeping.transfer import Merged, export_log, import_log
from pantry_tui.services.safekeeping.verify import verify
from pantry_tui.services.stock import act, moving, places, readings, reserve, undo, view
from pantry_tui.services.stock.correct import correct
from pantry_tui.services.stock.pick import batch_named

TODAY = date(2026, 11, 25)
NOON = Clock(TODAY, 12 * 60)
PLUMS = "3 pint jars plums, boiling-water canned, larder, minutes=30"
PEARS = "4 pint jars pears, boiling-water canned, larder, minutes=30"

Act = Callable[[Pantry], object]


def do(path: Path, *acts: Act) -> None:
    with open_pantry(path, NOON) as p:
        for one in acts:
            one(p)


def up(line: str) -> Act:
    return lambda p: putup.put_up(p, putup.read(p, line))


def out(path: Path) -> Path:
    to = path.with_suffix(".json")
    to.unlink(missing_ok=True)
    with open_pantry(path, NOON) as p:
        export_log(p, to)
    return to


@pytest.fixture
def home(tmp_path: Path) -> Path:
    path = tmp_path / "home.db"
    create(path, altitude_ft=1000, clock=NOON)
    do(
        path,
        lambda p: places.add(p, "larder", "pantry"),
        lambda p: places.add(p, "cellar", "cellar"),
        lambda p: places.add(p, "attic", "room"),
        lambda p: places.add(p, "freezer", "freezer"),
        up("6 pint jars peaches, boiling-water canned, larder, 3 days ago, minutes=30"),
        up("20 lb carrots, cellar-stored, cellar, 3 days ago"),
        up("4 pint packs peas, frozen, freezer, 3 days ago"),
    )
    return path


@pytest.fixture
def away(home: Path) -> Path:
    return Path(shutil.copy(home, home.with_name("away.db")))


def both_ways(home: Path, away: Path) -> Merged:
    """Each takes in what the other had: both come out as one log, and as sound ones."""
    ours, theirs = out(home), out(away)
    found = import_log(home, theirs, TODAY)
    other = import_log(away, ours, TODAY)
    assert out(home).read_bytes() == out(away).read_bytes()
    assert set(found.relabel) == set(other.relabel)
    for path in (home, away):
        assert verify(path, TODAY).ok, verify(path, TODAY).hurt
        again = import_log(path, out(away if path == home else home), TODAY)
        assert (again.rows, again.conflicts, again.relabel) == (0, (), ())
    return found


def rows(path: Path) -> dict[str, tuple[str, int]]:
    with open_pantry(path, NOON) as p:
        return {row.code: (row.place, row.count) for row in view.due(p)}


def test_a_put_up_that_the_other_used_from_is_not_taken_back(home: Path, away: Path) -> None:
    do(home, up(PLUMS))
    shutil.copy(home, away)
    do(home, undo.undo)
    do(away, lambda p: act.use(p, "5A/1"))
    (said,) = both_ways(home, away).conflicts
    assert said.startswith("The put-up of 5A plums was taken back in one log")
    assert rows(home)["5A"] == ("larder", 2)


def test_a_put_up_that_both_took_back_stays_taken_back(home: Path, away: Path) -> None:
    do(home, up(PLUMS))
    shutil.copy(home, away)
    do(home, undo.undo)
    do(away, undo.undo)
    assert both_ways(home, away).conflicts == ()
    assert "5A" not in rows(home)


def test_a_place_that_was_taken_back_and_filled_stands(home: Path, away: Path) -> None:
    do(home, lambda p: places.add(p, "shed", "room"))
    shutil.copy(home, away)
    do(home, undo.undo)
    do(away, up(PLUMS.replace("larder", "shed")))
    (said,) = both_ways(home, away).conflicts
    assert said.startswith("The place shed was taken back in one log")
    assert rows(away)["5A"] == ("shed", 3)


@pytest.mark.parametrize("merge", [False, True])
def test_a_place_that_was_removed_and_filled_stands(home: Path, away: Path, merge: bool) -> None:
    do(home, lambda p: places.remove(p, "attic", "larder" if merge else None))
    do(
        away,
        lambda p: places.add(p, "box", "room", "attic"),
        up(PLUMS.replace("larder", "attic")),
        up(PEARS.replace("larder", "box")),
    )
    (said,) = both_ways(home, away).conflicts
    assert said.startswith("The place attic was removed in one log")
    with open_pantry(home, NOON) as p:
        assert {one.path: one.count for one in view.shelves(p)} == {
            "attic": 3, "attic › box": 4, "cellar": 1, "freezer": 4, "larder": 6,
        }  # fmt: skip


def test_two_places_of_one_name_are_told_apart(home: Path, away: Path) -> None:
    do(home, lambda p: places.add(p, "shed", "room"), up(PLUMS.replace("larder", "shed")))
    do(away, lambda p: places.add(p, "Shed", "cellar"), up(PEARS.replace("larder", "shed")))
    found = both_ways(home, away)
    assert any(one.startswith("Two places are called Shed: ") for one in found.conflicts)
    with open_pantry(away, NOON) as p:
        shelves = {one.path: one.count for one in view.shelves(p)}
        assert (shelves["shed"], shelves["Shed (2)"]) == (3, 4)
        assert p.find_place("shed (2)").name == "Shed (2)"
    assert {place: count for place, count in rows(home).values() if "hed" in place} == {
        "shed": 3, "Shed (2)": 4,
    }  # fmt: skip


def test_two_places_that_an_older_merge_left_with_one_name_count_each_its_own(home: Path) -> None:
    do(home, lambda p: places.add(p, "shed", "room"), up(PLUMS.replace("larder", "shed")))
    with open_pantry(home, NOON) as p:
        places.add(p, "hall", "room")
        putup.put_up(p, putup.read(p, PEARS.replace("larder", "hall")))
        p.book(PlaceChanged(p.find_place("hall").id, name="shed"))
    with open_pantry(home, NOON) as p:
        assert sorted(one.count for one in view.shelves(p) if one.path == "shed") == [3, 4]


def test_equal_lid_codes_come_out_alike_and_further_exchange_works(home: Path, away: Path) -> None:
    do(home, up(PLUMS), up(PLUMS.replace("plums", "cherries")))
    do(away, up(PEARS), lambda p: act.use(p, "5A"))
    (one,) = both_ways(home, away).relabel
    assert (one.was, one.food, one.containers) == ("5A", "pears", 4)
    for food, path in (("apples", home), ("apricots", away)):
        do(path, up(PLUMS.replace("plums", food)))
    assert len(both_ways(home, away).relabel) == 1
    assert len(rows(home)) == 8
    with open_pantry(home, NOON) as p:
        assert all(batch_named(p, code).code == code for code in rows(home))


def test_what_nobody_typed_asks_nothing_of_a_code_that_stands_on_two_lids(
    home: Path, away: Path
) -> None:
    ferment = "1 quart jar sauerkraut, lactic ferment, larder, yesterday"
    do(home, up(ferment))
    do(away, up(ferment))
    both_ways(home, away)
    with open_pantry(home, NOON) as p:
        p.asks_which = True
        assert len({job.code for job in tending.jobs(p, 30)}) >= 2
        weeks.accept(p)
        paper.sheet(p, "week")
        places.merge(p, "larder", "cellar")
        with pytest.raises(Unclear):
            batch_named(p, "5A")


def test_of_a_code_whose_other_batch_was_taken_back_nothing_is_asked(
    home: Path, away: Path
) -> None:
    do(home, up(PLUMS), undo.undo)
    do(away, up(PEARS))
    assert both_ways(home, away).relabel == ()
    with open_pantry(home, NOON) as p:
        p.asks_which = True
        assert batch_named(p, "5A").food.name == "pears"


Pair = tuple[Act, Act, str]


@pytest.mark.parametrize(
    ("here", "there", "words"),
    [
        (
            lambda p: correct(p, "2A", note="hot"),
            lambda p: correct(p, "2A", note="cold"),
            "Both logs say something of 2A's note: hot; and cold: cold counts.",
        ),
        (
            lambda p: act.use(p, "3A", "12 lb"),
            lambda p: act.use(p, "3A", "15 lb"),
            "3A/1 held 20 lb, and both drew from it: use 12 lb on",
        ),
        (
            lambda p: moving.move(p, "2A/1", "cellar"),
            lambda p: moving.move(p, "2A/1", "attic"),
            "2A/1 was told of in both: move to cellar on",
        ),
        (
            lambda p: act.open_(p, "2A/2"),
            lambda p: act.use(p, "2A/2"),
            "2A/2 was told of in both: open on",
        ),
        (
            lambda p: readings.read_line(p, "freezer", "10F"),
            lambda p: readings.read_line(p, "freezer", "20F"),
            "Both logs say something of the temperature of freezer at one moment: 10 F; and 20 F",
        ),
        (
            lambda p: places.change(p, "attic", name="loft"),
            lambda p: places.change(p, "attic", name="garret"),
            "Both logs say something of the place garret: its name: loft; and garret: garret",
        ),
        (
            lambda p: places.change(p, "attic", climate="pantry"),
            lambda p: places.change(p, "attic", climate="cellar"),
            "Both logs say something of the place attic: its climate: pantry; and cellar: pantry",
        ),
        (
            lambda p: reserve.reserve(p, "2A/3", words="Ada"),
            lambda p: reserve.reserve(p, "2A/3", words="Bo"),
            "2A/3 was told of in both: reserved for Ada on",
        ),
        (
            lambda p: household.change(p, altitude_ft=5000),
            lambda p: household.change(p, altitude_ft=200),
            "Both logs say something of the household: its altitude: 5000 ft; and 200 ft: 5000 ft",
        ),
    ],
)
def test_what_both_say_differently_is_named_with_both_words(
    home: Path, away: Path, here: Act, there: Act, words: str
) -> None:
    do(home, here)
    do(away, there)
    (said,) = both_ways(home, away).conflicts
    assert said.startswith(words)


def _shorter(p: Pantry) -> object:
    return correct(p, _code(p, "peaches"), process=[("minutes", "10")])


def _code(p: Pantry, food: str) -> str:
    return next(one.code for one in p.stock.batches.values() if one.food.name == food)


@pytest.mark.parametrize("busy", [False, True])
@pytest.mark.parametrize("again", [False, True])
def test_what_one_took_back_of_what_both_had_is_told(home: Path, busy: bool, again: bool) -> None:
    do(home, _shorter)
    if again:
        do(home, undo.undo)
    away = Path(shutil.copy(home, home.with_name("away.db")))
    do(home, undo.redo if again else undo.undo)
    if busy:
        do(away, up(PLUMS))
    (told,) = both_ways(home, away).conflicts
    assert "minutes=10" in told
    assert "taken back in one log" in told
    assert told.endswith("it counts." if again else "it counts no more.")


def test_what_both_took_back_is_not_told(home: Path) -> None:
    do(home, _shorter)
    away = Path(shutil.copy(home, home.with_name("away.db")))
    do(home, undo.undo)
    do(away, undo.undo)
    assert both_ways(home, away).conflicts == ()


def test_what_both_say_alike_is_no_conflict(home: Path, away: Path) -> None:
    for path in (home, away):
        do(
            path,
            lambda p: correct(p, "2A", note="hot"),
            lambda p: places.change(p, "attic", climate="pantry"),
            lambda p: act.use(p, "3A", "5 lb"),
            lambda p: household.change(p, altitude_ft=5000),
        )
    assert both_ways(home, away).conflicts == ()


# -- into a new store ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("typed", "counts", "named"), [(5000, 5000, True), (200, 1000, True), (None, 1000, False)]
)
def test_an_altitude_typed_in_a_new_store_is_never_dropped_without_a_word(
    home: Path, typed: int | None, counts: int, named: bool
) -> None:
    new = home.with_name("new.db")
    create(new, altitude_ft=typed)
    found = import_log(new, out(home), TODAY)
    assert found.replaced
    assert bool(found.conflicts) == named
    assert all("altitude" in one and f"{counts} counts" in one for one in found.conflicts)
    with open_pantry(new, NOON) as p:
        assert p.altitude_ft == counts
    assert verify(new, TODAY).ok


def test_what_was_said_after_init_stays_in_a_new_store(home: Path) -> None:
    new = home.with_name("new.db")
    create(new)
    do(new, lambda p: household.change(p, people=6))
    (said,) = import_log(new, out(home), TODAY).conflicts
    assert "people: 6 here, 2 in the log: 6 counts" in said
    with open_pantry(new, NOON) as p:
        assert p.people == 6


# -- at random -------------------------------------------------------------------------------------

WORST = (Verdict.DISCARD, Verdict.DO_NOT_TASTE)


def at_random(path: Path, rng: random.Random, many: int) -> None:
    """Acts of every kind, those that are refused among them."""
    for _ in range(many):
        with open_pantry(path, NOON) as p:
            last = max(event.recorded[11:16] for event in p.events)  # no clock goes back
        minute = int(last[:2]) * 60 + int(last[3:]) + rng.randrange(9)
        with suppress(PantryError), open_pantry(path, Clock(TODAY, minute)) as p:
            _one(p, rng)


def _one(p: Pantry, rng: random.Random) -> None:
    rows = view.due(p)
    row = rng.choice(rows)
    name, place = rng.choice(row.container_ids), rng.choice(list(p.place_paths().values()))
    # A later day made is put right by whoever knows it, and may be milder.
    older = (batch_named(p, row.code).made or TODAY) - timedelta(rng.randrange(9))
    acts: list[Callable[[], object]] = [
        lambda: act.use(p, name),
        lambda: act.open_(p, name),
        lambda: act.thaw(p, name),
        lambda: moving.move(p, name, place),
        lambda: reserve.reserve(p, name, words=rng.choice(("Ada", "Bo"))),
        lambda: correct(p, row.code, made=older.isoformat()),
        lambda: correct(p, row.code, note=rng.choice("abc")),
        lambda: putup.put_up(p, putup.read(p, PLUMS.replace("larder", place.replace("›", " ")))),
        lambda: places.add(p, rng.choice(("shed", "hall")), "room"),
        lambda: places.change(p, place, climate=rng.choice(("room", "cellar", "freezer"))),
        lambda: places.remove(p, place, rng.choice((None, "larder"))),
        lambda: readings.read_line(p, place, f"{rng.randrange(0, 80)}F"),
        lambda: household.change(p, altitude_ft=rng.randrange(0, 8000)),
    ]
    rng.choice(acts)()


def judged(path: Path) -> dict[str, tuple[Verdict, date | None]]:
    """What each container is, and its last day."""
    with open_pantry(path, NOON) as p:
        found = {id_: p.judge(one) for id_, one in p.stock.containers.items() if one.here}
        return {id_: (one.verdict, one.discard_after) for id_, one in found.items()}


@pytest.mark.parametrize("seed", range(8))
def test_at_random_both_come_out_as_one_and_nothing_is_milder(
    home: Path, away: Path, seed: int
) -> None:
    """Undo is left out: it alone may make a verdict milder."""
    rng = random.Random(seed)
    for _ in range(2):
        at_random(home, rng, 10)
        at_random(away, rng, 10)
        alone = [judged(home), judged(away)]
        both_ways(home, away)
        now = judged(home)
        with open_pantry(home, NOON) as p:
            assert sum(one.count for one in view.shelves(p)) == len(now)
            assert len(set(p.place_paths().values())) == len(p.places)
        for id_ in now:
            for verdict, last in (one[id_] for one in alone if id_ in one):
                undated = date.min if now[id_][0] in WORST else date.max
                assert last is None or (now[id_][1] or undated) <= last, id_
                assert verdict not in WORST or now[id_][0] in WORST, id_


@pytest.mark.parametrize("seed", range(4))
def test_at_random_undo_too_and_exchange_in_turn_comes_to_one_log(
    home: Path, away: Path, seed: int
) -> None:
    """Each goes on while the other takes in what it had: in the end both are one."""
    rng = random.Random(seed)
    for _ in range(3):
        for path, other in ((home, away), (away, home)):
            at_random(path, rng, 6)
            with suppress(PantryError):
                do(path, undo.undo)
            theirs = out(other)
            at_random(other, rng, 3)
            import_log(path, theirs, TODAY)
    both_ways(home, away)


#: What only makes food judged more strictly: which batch, and what happens to it.
HARM: dict[str, tuple[str, Act]] = {
    "opened": ("2A", lambda p: act.open_(p, "2A/1")),
    "drawn from": ("2A", lambda p: act.use(p, "2A/1", "half")),
    "thawed": ("4A", lambda p: act.thaw(p, "4A/1")),
    "bulges": ("2A", lambda p: signs.mark(p, "2A/1", "bulging lid")),
    "stood warm": ("4A", lambda p: act.move(p, "4A/1", "larder")),
    "was read warm": ("4A", lambda p: readings.read(p, "freezer", 50)),
}


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize("what", HARM)
def test_what_only_one_log_took_back_counts_until_it_is_taken_back_once_more(
    home: Path, away: Path, what: str, turned: bool
) -> None:
    code, happens = HARM[what]
    sound = judged(home)
    do(home, happens)
    with open_pantry(home, NOON) as p:
        event = max(one.id for one in p.events)
    shutil.copy(home, away)
    stands = judged(home)
    do(home, undo.undo)
    assert judged(home) == sound != stands
    found = both_ways(away, home) if turned else both_ways(home, away)
    assert judged(home) == judged(away) == stands
    assert any(code in said or "freezer" in said for said in found.conflicts)
    assert any(f"undo {event}" in said for said in found.conflicts)
    do(away, lambda p: undo.undo(p, event))
    both_ways(home, away)
    assert judged(home) == judged(away) == sound


BEEF = "4 pint jars beef, pressure canned, larder, 3 days ago"
#: What was put up, what one log and the other say of its process, and what stands in the end.
TWO_WORDS = [
    (BEEF, ["minutes=75", "psi=11"], ["minutes=75", "psi=6"], {"psi": "6"}),
    (BEEF, ["minutes=20"], ["minutes=75"], {"minutes": "20"}),
    (BEEF, ["psi=6"], ["minutes=75"], {"psi": "6", "minutes": "75"}),
    (BEEF, ["minutes=75", "altitude=6000ft"], ["altitude=500ft"], {"altitude": "6000ft"}),
    ("2 pint jars dill pickles, vinegar pickle, larder", ["vinegar=3%"], ["vinegar=5%"],
     {"vinegar": "3%"}),
    ("1 crock sauerkraut, lactic ferment, larder", ["ph=3.9"], ["ph=5.0"], {"ph": "5.0"}),
    ("1 crock sauerkraut, lactic ferment, larder", ["salt=1%"], ["salt=2.5%"], {"salt": "1%"}),
]  # fmt: skip


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize(("line", "one", "other", "stands"), TWO_WORDS)
def test_of_two_words_on_a_detail_the_stricter_counts_and_both_are_named(
    home: Path, away: Path, line: str, one: list[str], other: list[str], stands: dict[str, str],
    turned: bool,
) -> None:  # fmt: skip
    do(home, up(line))
    shutil.copy(home, away)
    for path, words in zip((home, away), (other, one) if turned else (one, other), strict=True):
        pairs = [(key, value) for key, _, value in (word.partition("=") for word in words)]
        do(path, lambda p, pairs=pairs: correct(p, "5A", process=pairs))  # type: ignore[misc]
    alone = [judged(home), judged(away)]
    found = both_ways(home, away)
    for path in (home, away):
        with open_pantry(path, NOON) as p:
            batch = batch_named(p, "5A")
        assert dict(batch.process).items() >= stands.items()
        now = judged(path)
        for id_, (verdict, last) in now.items():
            for least, soonest in (before[id_] for before in alone):
                assert SEVERITY.index(verdict) <= SEVERITY.index(least)
                assert soonest is None or (last or date.min) <= soonest
    words = [word.replace("=", " ") for word in (*one, *other)]
    assert any(all(word in said for word in words) for said in found.conflicts)
    both_ways(home, away)


@pytest.mark.parametrize("turned", [False, True])
def test_what_two_records_say_that_no_order_has_is_in_doubt(
    home: Path, away: Path, turned: bool
) -> None:
    for path, word in zip((away, home) if turned else (home, away), ("raw", "hot"), strict=True):
        do(path, lambda p, word=word: correct(p, "2A", process=[("pack", word)]))  # type: ignore[misc]
    both_ways(home, away)
    for path in (home, away):
        with open_pantry(path, NOON) as p:
            assert any("pack (hot or raw)" in one for one in batch_named(p, "2A").doubt)


CORN = "3 pint jars corn, pressure canned, larder, canner=dial"


def timed(path: Path, clock: str, *acts: Act) -> None:
    hour, minute = clock.split(":")
    with open_pantry(path, Clock(TODAY, int(hour) * 60 + int(minute))) as p:
        for one in acts:
            one(p)


def ended_early(p: Pantry, code: str) -> object:
    return timer.done(p, code, early=True)


@pytest.mark.parametrize(
    ("here", "there", "fine"),
    [
        ([("13:01", timer.done)], [("12:30", timer.drop)], False),
        ([("13:01", timer.done)], [("12:30", timer.cancel)], False),
        ([("13:01", timer.done)], [("12:30", timer.drop), ("12:31", timer.start)], False),
        ([("13:01", timer.done)], [("12:30", ended_early)], False),
        ([("12:30", timer.drop)], [("13:01", timer.done)], False),
        ([("12:30", ended_early)], [("13:01", timer.done)], False),
        ([("12:30", timer.drop), ("12:31", timer.start)], [("13:01", timer.done)], False),
        ([("13:01", timer.done)], [("13:02", timer.done)], True),
        ([("13:01", timer.done)], [("13:02", timer.drop)], True),
        ([("13:01", timer.done)], [("13:02", timer.cancel)], True),
        ([("13:01", timer.done)], [], True),
        ([], [], False),
    ],
)  # fmt: skip
def test_the_time_of_a_process_counts_whole_by_both_logs_or_not(
    home: Path,
    away: Path,
    here: list[tuple[str, Callable[[Pantry, str], object]]],
    there: list[tuple[str, Callable[[Pantry, str], object]]],
    fine: bool,
) -> None:
    """What one copy timed to its end was not done where the other saw the pressure fall."""
    do(home, up(CORN), lambda p: timer.start(p, "5A", "55 min 11 psi"))
    shutil.copy(home, away)
    for path, said in ((home, here), (away, there)):
        for clock, say in said:
            timed(path, clock, lambda p, say=say: say(p, "5A"))  # type: ignore[misc]
    both_ways(home, away)
    for path in (home, away):
        with open_pantry(path, Clock(TODAY, 14 * 60)) as p:
            (row,) = (one for one in view.due(p) if one.code == "5A")
            assert (row.usable, row.verdict is Verdict.UNKNOWN) == (fine, not fine)


def test_a_fall_that_only_one_took_back_counts_again(home: Path, away: Path) -> None:
    do(home, up(CORN), lambda p: timer.start(p, "5A", "55 min 11 psi"))
    timed(home, "12:10", lambda p: timer.drop(p, "5A"))
    shutil.copy(home, away)
    timed(home, "12:11", undo.undo)
    timed(home, "12:56", lambda p: timer.done(p, "5A"))
    both_ways(home, away)
    with open_pantry(home, Clock(TODAY, 14 * 60)) as p:
        assert BROKEN_OFF in batch_named(p, "5A").doubt
