"""What a person does with a phone at the shelf, by touch alone. Each scene gets a phone that shows
the due list of the demo, and raises when something does not work."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from pathlib import Path

from pantry_tui.core.log.events import Did
from pantry_tui.services.pantry import open_pantry
from tests.app.web.serving import TODAY
from tests.browser.phone import BOX, Phone

#: The line that comes last above the due list of the demo, and moves all others down.
JOB = "taste, 9K"

Scene = Callable[[Phone, Path], Awaitable[None]]


def booked(path: Path) -> list[Did]:
    """What was booked, in order."""
    with open_pantry(path, TODAY) as p:
        return [event.did for event in p.events]


def expect(holds: object, said: str) -> None:
    if not holds:
        raise AssertionError(said)


async def room(phone: Phone, key: str) -> None:
    """Taps a room on the top line."""
    top = (await phone.lines())[0]
    left, above, wide, high = await phone.page.script(BOX)
    at = top.index(f" {key} ") + 1
    await phone.touch(left + (at + 0.5) * wide, above + 0.5 * high)


async def a_jar_is_used(phone: Phone, path: Path) -> None:
    await phone.tap("applesauce")
    await phone.until("›! applesauce")
    await phone.tap("u use")
    await phone.until("Used")
    expect(booked(path)[-1] is Did.USE, "nothing was used")
    await phone.button("z")
    await phone.until_true(lambda _: booked(path)[-1] is Did.UNDO, "it is taken back")


async def a_lid_code_is_typed(phone: Phone, path: Path) -> None:
    """Before the glass was ever touched: the keys of the page must do."""
    await phone.button("7", "c", "u")
    await phone.until("Used", "7C")
    expect(booked(path)[-1] is Did.USE, "nothing was used")


async def letters_come_and_go(phone: Phone, _: Path) -> None:
    """The phone's own keyboard stays away until it is asked for; the page's letters come with the
    line that is typed."""
    await phone.tap("applesauce")
    mode = "document.activeElement.inputMode"
    expect(await phone.page.script(mode) == "none", "a tap lifts the phone's keyboard")
    await phone.button("/")
    await phone.button("p", "e", "a")
    found = await phone.until("pea")
    lines = len(found.splitlines())
    shown = await phone.page.script("document.querySelector('.xterm-screen').clientHeight")
    given = await phone.page.script("document.querySelector('#terminal').clientHeight")
    expect(shown <= given, "the letters lie over the last lines")
    await phone.button("áé")
    expect(await phone.page.script(mode) == "text", "the phone's keyboard does not come")
    await phone.type("s")
    await phone.until("peas")
    await phone.button("Esc")
    await phone.page_until("!document.querySelector('#keys').matches('.-letters, .-own')")
    expect(await phone.page.script(mode) == "none", "the phone's keyboard stays")
    await phone.until_true(lambda text: len(text.splitlines()) > lines, "the list grows again")


async def a_shelf_is_counted(phone: Phone, path: Path) -> None:
    await room(phone, "c")
    await phone.until("Count which place?")
    await phone.tap("north wall")
    text = await phone.until("to go", "exp")
    lines = [line for line in text.splitlines() if line[:1] in "› " and line[6:8].strip()]
    await phone.button("Enter", "Enter", "3")
    await phone.until("3 !")
    await phone.tap("f book")
    await phone.until("expected 4")
    await phone.shot_of("count")
    await phone.tap("f book these differences")
    expect(lines, "no lines to count")
    await phone.until_true(lambda _: Did.COUNT in booked(path)[-20:], "the count is booked")


async def a_suspect_jar_is_read(phone: Phone, path: Path) -> None:
    await phone.tap("sweet corn") if "sweet corn" in await phone.text() else None
    await phone.button("5", "e", "Enter")
    await phone.until("sweet corn", "in doubt")
    await phone.button("Enter")
    await phone.until("What it is")
    page = await phone.text()
    await phone.swipe(190, 560, 260)
    await phone.until_true(lambda text: text != page, "the page is scrolled by a finger")
    await phone.tap("s sign")
    await phone.until("What do you see")
    await phone.button("1")
    await phone.until("What to do", "Enter records this")
    await phone.shot_of("sign")
    await phone.button("Enter")
    await phone.until_true(lambda _: booked(path)[-1] is Did.SIGN, "the sign is booked")


async def the_palette_finds(phone: Phone, _: Path) -> None:
    await phone.button("abc", "Shift", ":")
    await phone.until("Search for commands")
    await phone.button("r", "e", "c", "a")
    await phone.tap("Recall")
    await phone.until("Where all of")
    await phone.shot_of("palette")
    await phone.button("Esc")
    await phone.until("in store")


async def dialogs_answer_to_a_tap(phone: Phone, path: Path) -> None:
    await phone.tap("jerky")
    await phone.until("›x jerky")
    await phone.tap("d discard", -1)
    await phone.until("Discard: why?")
    await phone.shot_of("discard")
    await phone.tap("Esc leaves")
    await phone.until("Discard: why?", gone=True)
    await phone.tap("applesauce")
    await phone.until("›! applesauce")
    await phone.tap("m move")
    await phone.until("Move to which place?")
    await phone.tap("kitchen shelf")
    await phone.until("Moved")
    expect(booked(path)[-1] is Did.MOVE, "nothing was moved")


async def a_finger_scrolls(phone: Phone, _: Path) -> None:
    before = await phone.lines()
    await phone.swipe(190, 560, 200)
    await phone.until(JOB, gone=True)
    after = await phone.lines()
    expect(before[0] == after[0], "the top line moved")
    row = next(line for line in after[4:20] if line[3:15].strip() and "·" not in line)
    await phone.tap(row[3:15].strip())
    await phone.until("›")
    await phone.swipe(190, 200, 600)
    await phone.until(JOB)


async def a_picture_is_walked(phone: Phone, _: Path) -> None:
    await room(phone, "S")
    await phone.until("S shelves")
    await phone.button("abc", "v", "abc")
    await phone.until("? 4N/1")  # the cell under the cursor, in words
    await phone.tap("-  -")
    await phone.until("- 2A/")
    await phone.shot_of("picture")


async def guides_and_keys_are_read(phone: Phone, _: Path) -> None:
    await phone.tap("? more keys")
    await phone.until("Keys", "Esc closes")
    await phone.tap("Esc closes")
    await phone.until("in store")


async def batches_are_put_up(phone: Phone, path: Path) -> None:
    await phone.button("abc", "p")
    await phone.until("Put up")
    for word in ("2", "pint", "jars", "plum", "jam", "larder"):
        await phone.button(*word, "Space")
    await phone.until("plum")
    await phone.shot_of("putup")
    await phone.button("Enter")
    await phone.until_true(lambda _: Did.PUT_UP in booked(path)[-3:], "it is booked")


SCENES: dict[str, Scene] = {
    "a jar is used": a_jar_is_used,
    "a lid code is typed": a_lid_code_is_typed,
    "letters come and go": letters_come_and_go,
    "a shelf is counted": a_shelf_is_counted,
    "a suspect jar is read": a_suspect_jar_is_read,
    "the palette finds": the_palette_finds,
    "dialogs answer to a tap": dialogs_answer_to_a_tap,
    "a finger scrolls": a_finger_scrolls,
    "a picture is walked": a_picture_is_walked,
    "keys are read": guides_and_keys_are_read,
    "a batch is put up": batches_are_put_up,
}
