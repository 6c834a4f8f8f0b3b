"""The judge itself, held against examples worked by hand from the papers."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tests.judging.by_hand_cold import COLD, Answer
from tests.judging.by_hand_counted import COUNTED
from tests.judging.by_hand_kept import KEPT
from tests.judging.by_hand_made_of import MADE_OF
from tests.judging.by_hand_power import POWER
from tests.judging.by_hand_within import WITHIN

EXAMPLES = [*COLD, *POWER, *KEPT, *WITHIN, *MADE_OF, *COUNTED]


@pytest.mark.parametrize(
    ("sentence", "told", "answer"), EXAMPLES, ids=[sentence for sentence, _, _ in EXAMPLES]
)
def test_worked_by_hand(sentence: str, told: Callable[[], Answer], answer: Answer) -> None:
    assert told() == answer, sentence


def test_there_are_enough_examples() -> None:
    assert len(EXAMPLES) >= 60
