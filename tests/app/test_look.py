"""Contrast, marks beside colours, NO_COLOR and few colours."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

import pytest
from rich.style import Style
from textual.color import Color
from textual.theme import Theme

from pantry_tui.app.main import PantryApp
from pantry_tui.app.roles import STYLE
from pantry_tui.app.theme import OURS, ROLES, THEMES, wanted_theme
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


@pytest.mark.parametrize("theme", OURS, ids=[one.name for one in OURS])
def test_every_text_is_readable_on_every_ground(theme: Theme) -> None:
    """WCAG 2.2 AA: 4.5 to 1 for text, the line under the cursor and the heads included; 7 to 1
    where a person asked for high contrast."""
    enough = 7 if theme.name.endswith("contrast") else 4.5
    drawn = theme.to_color_system().generate()
    grounds = [drawn[name] for name in ("background", "surface", "panel", "panel-lighten-1")]
    inks = [re.findall("#[0-9a-f]{6}", one)[0] for one in ROLES[theme.name].values()]
    for ground in grounds:
        for ink in (str(theme.foreground), *inks):
            assert contrast(ink, Color.parse(ground).hex) >= enough, (ink, ground)


def test_every_role_looks_like_something_in_every_theme() -> None:
    assert all(set(roles) == set(ROLES[OURS[0].name]) for roles in ROLES.values())
    assert set(STYLE.values()) < set(ROLES[OURS[0].name])


def test_without_colours_the_terminals_own_theme_is_not_taken() -> None:
    assert wanted_theme("terminal", {}).startswith("ansi")
    assert wanted_theme("terminal", {"NO_COLOR": "1"}) == OURS[0].name
    assert wanted_theme("light", {"NO_COLOR": "1"}) == "pantry-light"


@pytest.mark.parametrize("name", ["light", "contrast", "terminal"])
async def test_a_theme_is_a_setting_and_paints_the_list_in_its_inks(
    tmp_path: Path, away_from_home: Path, name: str
) -> None:
    folder = away_from_home / "config" / "pantry-tui"
    folder.mkdir(parents=True)
    (folder / "settings.toml").write_text(f'theme = "{name}"\n')
    path = tmp_path / "demo.db"
    build_demo(path, TODAY)
    with open_pantry(path, TODAY) as pantry:
        async with PantryApp(pantry).run_test(size=(80, 24)) as pilot:
            assert pilot.app.theme == THEMES[name]
            strips = pilot.app.screen._compositor.render_strips()
            danger = Style.parse(ROLES[THEMES[name]]["danger"])
            heads = [one for strip in strips for one in strip if "Must go" in one.text]
            assert heads
            for head in heads:
                assert head.style
                assert head.style.bold
                # What a terminal's own red is, is for the terminal to say.
                assert name == "terminal" or head.style.color == danger.color


def test_a_verdict_is_a_word_and_a_mark_of_its_own_before_a_colour() -> None:
    assert set(MARK) == set(Verdict) == set(STYLE)
    assert len(set(MARK.values())) == len(MARK)
    assert all(len(mark) == 1 and mark.isascii() for mark in MARK.values())


@pytest.mark.parametrize("screen", ["", "S", "W", "p", "l", "y", "c", "4"])
async def test_without_colour_everything_is_still_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, screen: str
) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    path = tmp_path / "demo.db"
    build_demo(path, TODAY)
    with open_pantry(path, TODAY) as pantry:
        async with PantryApp(pantry).run_test(size=(80, 30)) as pilot:
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
                assert "Must go: do not eat" in text
                assert "discard " in text
                assert "Past best, still safe" in text
