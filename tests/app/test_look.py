"""Contrast, marks beside colours, NO_COLOR and few colours."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

import pytest
from textual.color import Color

from pantry_tui.app.main import PantryApp
from pantry_tui.app.theme import GROUND, INK, STYLE, THEME
from pantry_tui.core.words import MARK, Verdict
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import open_pantry

TODAY = date(2026, 11, 25)


def luminance(colour: str) -> float:
    """Relative luminance, WCAG 2.2."""

    def linear(part: int) -> float:
        share = part / 255
        return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4

    red, green, blue = Color.parse(colour).rgb
    return 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue)


def contrast(one: str, other: str) -> float:
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_measure_is_right() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.01)


@pytest.mark.parametrize("ground", [GROUND, str(THEME.surface), str(THEME.panel)])
def test_every_text_is_readable_on_every_ground(ground: str) -> None:
    """WCAG 2.2 AA: 4.5 to 1 for text."""
    colours = [INK, *(re.findall("#[0-9a-f]{6}", style)[0] for style in STYLE.values())]
    for colour in colours:
        assert contrast(colour, ground) >= 4.5, (colour, ground)


def test_a_verdict_is_a_word_and_a_mark_of_its_own_before_a_colour() -> None:
    assert set(MARK) == set(Verdict) == set(STYLE)
    assert len(set(MARK.values())) == len(MARK)
    assert all(len(mark) == 1 and mark.isascii() for mark in MARK.values())


@pytest.mark.parametrize("screen", ["", "S", "W", "p", "l", "y"])
async def test_without_colour_everything_is_still_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, screen: str
) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    path = tmp_path / "demo.db"
    build_demo(path, TODAY)
    with open_pantry(path, TODAY) as pantry:
        async with PantryApp(pantry).run_test(size=(80, 24)) as pilot:
            await pilot.press(*screen)
            await pilot.pause()
            colours = set()
            text = ""
            for strip in pilot.app.screen._compositor.render_strips():
                for segment in strip:
                    text += segment.text
                    if segment.style and segment.style.color and segment.text.strip():
                        ground = segment.style.bgcolor
                        colours.add((segment.style.color.name, ground.name if ground else ""))
            assert all(front != back for front, back in colours), "text on its own colour"
            if not screen:
                assert "x discard" in text
                assert "- past best" in text
