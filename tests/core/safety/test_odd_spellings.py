"""Each key of a record beside the odd ways in which people write figures: every cell is read as it
is meant, the stricter way of two, or refused by name; none is kept and passed over."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from pantry_tui.core.batchwork.vinegar import weak_vinegar
from pantry_tui.core.line.process import take_process
from pantry_tui.core.line.tokens import Line, tokens
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.jars import read_jar
from pantry_tui.core.safety.measured import all_fahrenheit, read_minutes, read_ph, read_psi
from pantry_tui.core.safety.possible import impossible
from pantry_tui.core.safety.record import read_details
from pantry_tui.core.safety.salt import read_brine, read_salt
from pantry_tui.core.safety.strength import too_weak
from pantry_tui.core.safety.values import HINTS
from pantry_tui.core.words import Acidity, Group, Method

CABBAGE = FoodFacts("sauerkraut", Group.VEGETABLE, Acidity.ACIDIFIED)

#: What no reader can count by, whatever its key: refused under each of them.
NOBODY_KNOWS = (
    "~5{}", "≈5{}", "about 5{}", "approx 5{}", "5{} or so", "5-ish{}", "<5{}", ">5{}", "≥5{}",
    "≤5{}", "5±1{}", "5?{}", "0 5{}", "5, 10{}", "1.5.2{}", "5*{}", "5{} maybe", "less than 5{}",
    "under 5{}", "5!{}", "$5{}", "5^{}",
)  # fmt: skip
UNIT = {
    "salt": "%", "sugar": "%", "vinegar": "%", "temperature": "F", "headspace": " in",
    "altitude": "ft", "ph": "", "cure": "%", "lemon": " tbsp", "brine": "%",
}  # fmt: skip


def kept(key: str, typed: str) -> str | None:
    """What a record keeps; None where it is refused, in a sentence that says what to write."""
    details = read_details([(key, typed)])
    if details.problems:
        (said,) = details.problems
        assert any(hint in said for hint in HINTS.values())
        return None
    ((_, value),) = details.pairs
    return value


@pytest.mark.parametrize("key", UNIT)
@pytest.mark.parametrize("shape", NOBODY_KNOWS)
def test_a_figure_that_nobody_can_count_by_is_refused(key: str, shape: str) -> None:
    assert kept(key, shape.format(UNIT[key])) is None


@pytest.mark.parametrize(
    ("key", "typed"),
    [
        ("salt", "5°"), ("brine", "5°"), ("sugar", "5°"), ("salt", "1/100"), ("vinegar", "1/100"),
        ("vinegar", "1/20"), ("vinegar", "1:20"), ("salt", "1:20"), ("salt", "% 5"),
        ("vinegar", "% 5"), ("salt", "5%%"), ("salt", "5 ppm"), ("vinegar", "5 ppm"),
        ("vinegar", "grain 50"), ("salt", "5‱"), ("vinegar", "5 g/l"), ("salt", "5²%"),
        ("minutes", "10:00"), ("minutes", "25:30"), ("minutes", "75:00"), ("minutes", "4:00"),
        ("minutes", "1:15:00"), ("minutes", "1:75"), ("minutes", "12:00 min"), ("minutes", "~25"),
        ("minutes", "about 25"), ("minutes", "25 or so"), ("minutes", "<25"), ("minutes", "≥25"),
        ("psi", "~11"), ("psi", "11 or so"), ("psi", "<11"), ("psi", "about 11"), ("jar", "~pint"),
        ("jar", "about a pint?"), ("jar", "pint or so"), ("seal", "not checked"),
        ("seal", "rings off"), ("headspace", "1 in or so"), ("vinegar", "50% strength or so"),
        ("vinegar", "half strength"),
        ("vinegar", "diluted 5%"), ("vinegar", "5% and water"), ("temperature", "65 K"),
    ],
)  # fmt: skip
def test_what_says_nothing_that_is_known(key: str, typed: str) -> None:
    assert kept(key, typed) is None


@pytest.mark.parametrize(
    ("typed", "percent"),
    [
        ("5‰", 0.5), ("½‰", 0.05), ("5 ‰", 0.5), ("20-30‰", 2), ("5 per mille", 0.5), ("5%", 5),
        ("５％", 5), ("٥٪", 5), ("٥%", 5), ("५%", 5), ("1½%", 1.5), ("1 ½ %", 1.5), ("1⁄2%", 0.5),
        ("4-5%", 4), ("2,5 %", 2.5), ("20 g/kg", 2), ("2-3 tbsp to 5 lb", 1.6),
        ("3 tbsp to 5-6 lb", 1.9), ("two percent", 2),
    ],
)  # fmt: skip
def test_salt_is_read_as_a_share(typed: str, percent: float) -> None:
    value = kept("salt", typed)
    assert value is not None
    assert read_salt(value) == pytest.approx(percent)
    found = too_weak(Method.LACTIC, CABBAGE, "", {"salt": value}, ())
    assert bool(found) is (percent < 2)


@pytest.mark.parametrize(
    ("key", "typed", "percent"),
    [
        ("salt", "5g/l", 0.5), ("salt", "5 g per litre", 0.5), ("salt", "5 g per l water", 0.5),
        ("salt", "50 g/l", 4.8), ("brine", "20 g to 1 l", 2), ("brine", "20-30 g to 1-2 l", 1),
        ("brine", "5‰", 0.5), ("brine", "five", 5), ("brine", "3", 3), ("brine", "1-2", 1),
        ("salt", "1 tbsp per quart", 1.9), ("brine", "20 g/kg", 2), ("brine", "½%", 0.5),
    ],
)  # fmt: skip
def test_salt_of_the_water_is_read_as_a_brine(key: str, typed: str, percent: float) -> None:
    value = kept(key, typed)
    assert value is not None
    assert read_brine(value) == pytest.approx(percent)
    found = too_weak(Method.LACTIC, CABBAGE, "", {"salt": value}, ())
    assert bool(found) is (percent < 2.25)


@pytest.mark.parametrize("typed", ["1 tsp", "20 g", "3 tbsp sea salt", "two tsp", "1 tsp brine"])
def test_salt_of_no_share_is_asked_about_where_it_keeps_the_food(typed: str) -> None:
    value = kept("salt", typed)
    assert value is not None
    for method in (Method.LACTIC, Method.PASTE, Method.SALTED):
        (said,) = impossible(method, [("salt", value)])
        assert "to how much?" in said
    assert not impossible(Method.PRESSURE, [("salt", value)])
    assert not impossible(Method.LACTIC, [("salt", f"{value} to 5 lb")])


@pytest.mark.parametrize("typed", ["2.5%", "2.5", "yes", "no", "none", "30 g/l", "3 tbsp to 5 lb"])
def test_salt_that_says_its_share_is_not(typed: str) -> None:
    assert not impossible(Method.LACTIC, [("salt", typed)])


@pytest.mark.parametrize(
    ("typed", "weak"),
    [
        ("5‰", True), ("50‰", False), ("5 grain", True), ("49.9 grain", True), ("50 grain", False),
        ("5°", False), ("4°", True), ("５％", False), ("٤٪", True), ("½‰", True), ("0,5%", True),
        ("1½%", True), ("5-6", False), ("4 to 6 %", True), ("0.05", True), ("40-grain", True),
    ],
)  # fmt: skip
def test_a_vinegar_is_as_strong_as_it_says(typed: str, weak: bool) -> None:
    value = kept("vinegar", typed)
    assert value is not None
    assert bool(weak_vinegar(value)) is weak


def least_f(text: str) -> float:
    return min(all_fahrenheit(text))


@pytest.mark.parametrize(
    ("key", "typed", "read"),
    [
        ("minutes", "２５", 25.0), ("minutes", "1:15", 75.0), ("minutes", "1:05", 65.0),
        ("minutes", "3:00", 180.0), ("minutes", "0:25", 25.0), ("minutes", "٢٥ min", 25.0),
        ("psi", "１１", 11.0), ("psi", "10½", 10.5), ("psi", "30", 30.0), ("psi", "76", 11.0),
        ("psi", "76 kPa", 11.0), ("psi", "31 psi", 31.0), ("ph", "４．１", 4.1), ("ph", "٤٫١", 4.1),
        ("temperature", "１６０F", 160.0), ("temperature", "71℃", 159.8),
        ("temperature", "160F (71C)", 159.8), ("temperature", "71C/160F", 159.8),
        ("temperature", "60-71 C", 140.0), ("jar", "５００ml", "quart"),
        ("jar", "1½ pint", "quart"),
    ],
)  # fmt: skip
def test_other_figures_are_figures(key: str, typed: str, read: float | str) -> None:
    value = kept(key, typed)
    assert value is not None
    readers: dict[str, Callable[[str], object]] = {
        "minutes": read_minutes, "psi": read_psi, "ph": read_ph, "jar": read_jar,
        "temperature": least_f,
    }  # fmt: skip
    found = readers[key](value)
    assert found == (read if isinstance(read, str) else pytest.approx(read, abs=0.03))


@pytest.mark.parametrize("sign", ["~", "≈", "<", "≥", "±"])
def test_a_sign_before_a_figure_of_a_line_belongs_to_it(sign: str) -> None:
    line = Line(tokens(f"dill pickles, {sign}5% vinegar"))
    pairs: dict[str, str] = {}
    take_process(line, pairs)
    assert read_details(pairs.items()).problems
