"""A few bits and pages; `python -m tests.faults.flips` is the same at full size."""

from __future__ import annotations

from pathlib import Path

from tests.faults.flips import PAGE, Bench, bits, swapped, trials, zeroed


def test_what_turns_over_in_a_store_is_never_shown_without_a_word(tmp_path: Path) -> None:
    found = trials(tmp_path, many_bits=30, many_pages=8, seed=15)
    assert [one for one in found if one.wrong] == []
    assert sum(one.said for one in found) > 15, "hardly anything was hurt"


def test_the_bench_would_see_a_wrong_answer(tmp_path: Path) -> None:
    bench = Bench(tmp_path)
    trial = bench.try_("whole", bench.whole)
    assert (trial.wrong, trial.said, trial.verified) == ((), False, False)
    bench.right["due"] = "something else"
    assert bench.try_("whole", bench.whole).wrong == ("due",)


def test_each_trial_hurts_what_it_says() -> None:
    import random

    content = bytes(range(256)) * 16 * 5
    chance = random.Random(1)
    for _, hurt in bits(content, chance, 20):
        changed = int.from_bytes(content, "big") ^ int.from_bytes(hurt, "big")
        assert changed.bit_count() == 1
    for _, hurt in zeroed(content, chance, 5):
        assert hurt.count(bytes(PAGE)) >= 1
        assert len(hurt) == len(content)
    for _, hurt in swapped(b"a" * PAGE + b"b" * PAGE, chance, 1):
        assert hurt == b"b" * PAGE + b"a" * PAGE
