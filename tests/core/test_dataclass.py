"""The cheap dataclass does what the standard one does; each test is asked of both."""

from __future__ import annotations

import copy
import dataclasses
import pickle
from functools import cached_property
from typing import Any, ClassVar

import pytest

from pantry_tui.core import dataclass as ours


def _classes(made_by: Any) -> Any:
    field = made_by.field

    @made_by.dataclass(frozen=True, slots=True)
    class Jar:
        """A jar."""

        lids: ClassVar[int] = 1
        food: str
        size: str = "pint"
        marks: list[str] = field(default_factory=list)
        seen: int = field(default=0, compare=False, repr=False)
        kept: dict[str, int] = field(default_factory=dict, init=False, compare=False)

        def __post_init__(self) -> None:
            if not self.food:
                raise ValueError("of nothing")

        @property
        def said(self) -> str:
            return f"{self.size} of {self.food}"

    @made_by.dataclass(frozen=True)
    class Shelf:
        width: int
        depth: int = 2

        @cached_property
        def room(self) -> int:
            return self.width * self.depth

    @made_by.dataclass(slots=True)
    class Tally:
        of: str
        so_far: int = 0

    return Jar, Shelf, Tally


@pytest.fixture(params=[ours, dataclasses], ids=["ours", "standard"])
def made_by(request: pytest.FixtureRequest) -> Any:
    return request.param


def test_fields_are_filled_by_place_by_name_and_by_default(made_by: Any) -> None:
    jar, *_ = _classes(made_by)
    one, two = jar("peas", seen=3), jar("peas", "quart", ["dented"])
    assert (one.food, one.size, one.marks, one.seen, one.kept) == ("peas", "pint", [], 3, {})
    assert two.said == "quart of peas"
    assert two.marks == ["dented"]
    assert jar.lids == 1
    assert one.marks is not jar("peas").marks


@pytest.mark.parametrize("given", [(), ("peas", "pint", [], 0, {}), ("peas", "pint", [], 0, 1)])
def test_what_is_missing_or_too_much_is_refused(made_by: Any, given: tuple[Any, ...]) -> None:
    jar, *_ = _classes(made_by)
    with pytest.raises(TypeError):
        jar(*given)


def test_a_post_init_is_asked(made_by: Any) -> None:
    jar, *_ = _classes(made_by)
    with pytest.raises(ValueError, match="of nothing"):
        jar("")


def test_equal_by_what_is_compared_and_by_class(made_by: Any) -> None:
    jar, shelf, tally = _classes(made_by)
    assert jar("peas", seen=1) == jar("peas", seen=2)
    assert jar("peas") != jar("plums")
    assert shelf(1) != tally(1, 2)
    assert hash(shelf(3)) == hash(shelf(3, 2))
    assert len({shelf(3), shelf(3, 2), shelf(4)}) == 2


def test_frozen_ones_stay_and_others_change(made_by: Any) -> None:
    jar, shelf, tally = _classes(made_by)
    for one in (jar("peas"), shelf(1)):
        with pytest.raises(dataclasses.FrozenInstanceError):
            one.food = "plums"
        with pytest.raises(dataclasses.FrozenInstanceError):
            del one.food
    count = tally("peas")
    count.so_far += 2
    assert count == tally("peas", 2)
    with pytest.raises(TypeError):
        hash(count)


def test_slots_leave_no_room_and_a_class_without_them_keeps_what_it_reckoned(made_by: Any) -> None:
    jar, shelf, _ = _classes(made_by)
    assert not hasattr(jar("peas"), "__dict__")
    assert shelf(3).room == 6


def test_a_class_says_what_it_holds(made_by: Any) -> None:
    jar, shelf, _ = _classes(made_by)
    assert repr(shelf(3)).endswith("Shelf(width=3, depth=2)")
    assert repr(jar("peas")).endswith("Jar(food='peas', size='pint', marks=[], kept={})")


def test_replaced_by_either(made_by: Any) -> None:
    jar, shelf, _ = _classes(made_by)
    for replace in (ours.replace, dataclasses.replace):
        assert replace(shelf(3), depth=5) == shelf(3, 5)
        assert replace(jar("peas", seen=4), size="quart").seen == 4
        with pytest.raises(TypeError):
            replace(shelf(3), height=1)


def test_the_standard_library_knows_its_fields(made_by: Any) -> None:
    jar, shelf, _ = _classes(made_by)
    assert dataclasses.is_dataclass(jar)
    assert [one.name for one in dataclasses.fields(jar)] == [
        "food", "size", "marks", "seen", "kept",
    ]  # fmt: skip
    assert [one.name for one in dataclasses.fields(jar) if one.compare] == ["food", "size", "marks"]
    assert dataclasses.asdict(shelf(3)) == {"width": 3, "depth": 2}
    match shelf(3):
        case shelf(width, depth):
            assert (width, depth) == (3, 2)


def test_copied_and_pickled(made_by: Any) -> None:
    jar, *_ = _classes(made_by)
    one = jar("peas", marks=["dented"])
    deep = copy.deepcopy(one)
    assert deep == one == copy.copy(one)
    assert deep.marks is not one.marks
    # By way of a class that can be found by its name.
    from pantry_tui.core.model import Crop

    crop = Crop(*map(str, range(len(dataclasses.fields(Crop)))))  # type: ignore[arg-type]
    assert pickle.loads(pickle.dumps(crop)) == crop


def test_fields_of_a_base_are_refused() -> None:
    _, shelf, _ = _classes(ours)
    with pytest.raises(TypeError, match="inherit"):

        @ours.dataclass(frozen=True)
        class _Deep(shelf):  # type: ignore[valid-type, misc]
            height: int
