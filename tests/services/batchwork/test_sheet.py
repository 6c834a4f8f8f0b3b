"""The record of a put-up: what is asked, what is published beside it, what a wrong one means."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.record import KEYS
from pantry_tui.services.batchwork import sheet
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.pantry import Pantry


def made(p: Pantry, line: str) -> str:
    return put_up(p, read(p, line)).code


def told(p: Pantry, code: str) -> dict[str, sheet.Asked]:
    return {one.key: one for one in sheet.fields(p, code)}


def test_a_canned_batch_is_asked_for_its_process_in_order(larder: Pantry) -> None:
    code = made(larder, "7 pint jars runner beans, pressure canned, larder")
    keys = [one.key for one in sheet.fields(larder, code)]
    assert keys == [
        "altitude", "canner", "jar", "pack", "headspace", "acid", "minutes", "psi", "seal",
    ]  # fmt: skip
    asked = told(larder, code)
    assert asked["canner"].published == "dial or weighted"
    # MSU 1997 (USDA): 20 minutes, each time with its own pressure.
    assert asked["minutes"].published == "20 min at 11 psi (dial) or 20 min at 10 psi (weighted)"
    assert asked["headspace"].published == "1 in"
    sheet.write(larder, code, [("canner", "weighted")])
    assert told(larder, code)["psi"].published == "20 min at 10 psi (weighted)"


def test_a_wrong_value_is_marked_with_what_it_means(larder: Pantry) -> None:
    code = made(larder, "7 pint jars runner beans, pressure canned, canner=dial, larder")
    done = sheet.write(larder, code, [("minutes", "10"), ("psi", "11")])
    assert any("too little" in one for one in done.warnings)
    wrong = {key: one.wrong for key, one in told(larder, code).items() if one.wrong}
    assert "minutes" in wrong
    assert "20 minutes" in wrong["minutes"][0]
    sheet.write(larder, code, [("minutes", "20")])
    assert not any(one.wrong for one in told(larder, code).values())


@pytest.mark.parametrize(
    ("line", "key", "published"),
    [
        ("1 crock sauerkraut, lactic ferment, larder", "salt", "2.25 to 2.5 % of the vegetables"),
        ("1 crock sauerkraut, lactic ferment, larder", "temperature", "21 to 28 days"),
        ("2 bags carrots, dried, larder", "blanched", "3.5 min in water"),
        ("4 bags jerky, dried, larder", "temperature", "160 °F inside"),
        ("4 pint jars dill pickles, fridge pickle, fridge", "vinegar", "5 %"),
        ("7 pint jars crushed tomatoes, boiling-water canned, larder", "acid", "lemon juice"),
        ("7 pint jars peaches, boiling-water canned, larder", "acid", "none is added"),
        ("2 packs trout, hot smoked, fridge", "temperature", "160 °F inside, held for 30 minutes"),
        ("2 bags lettuces, dried, larder", "blanched", "no published figure"),
    ],
)
def test_what_is_published_stands_beside_the_field(
    larder: Pantry, line: str, key: str, published: str
) -> None:
    assert published in told(larder, made(larder, line))[key].published


def test_every_method_asks_only_for_what_a_record_knows() -> None:
    assert all(key in KEYS for keys in sheet.FIELDS.values() for key in keys)
