"""The two pages: the app with the keys that a phone lacks, and the one that asks for the password.

They hold nothing of the store, no path, no name of the machine, and nothing from elsewhere.
"""

from __future__ import annotations

from html import escape

#: The letters that are shown while a line is typed, and on `abc`: ten to a row. "Shift" is a key
#: that sends nothing.
BOARD = ("qwertyuiop", "asdfghjkl-", ("Shift", *"zxcvbnm,."))
#: What Shift makes of them, where that is not the capital letter.
SHIFTED = {
    **dict(zip("1234567890", "!@#$%^&*()", strict=True)),
    "-": "+",
    ",": ";",
    ".": ":",
    "/": "=",
}
#: The last row. "abc" shows the letters, "áé" brings the phone's own keyboard, for letters that
#: are not here.
LAST = ("Esc", "↑", "↓", "Enter", "Space", "←", "/", "z", "áé", "?", "abc")
#: Those that send nothing: what the page's script does at them.
_DOES = {"Shift": "shift", "abc": "letters", "áé": "own"}
#: What a reader of the screen says of a key that is drawn.
_SAID = {"↑": "up", "↓": "down", "←": "backspace", "áé": "the phone's own keyboard"}

_HEAD = """<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1, interactive-widget=resizes-content">
<title>pantry-tui</title>
<link rel="icon" href="data:,">
<link rel="stylesheet" href="/page.css">
"""  # noqa: E501 - a line of the page


def app(socket: str, letter_px: int | None) -> str:
    """The app in a window of its own; `socket` is the address that it speaks through. Letters of
    None are as large as leaves room for forty columns, at most 16 pixels."""
    sized = "data-fits" if letter_px is None else ""
    return (
        f'{_HEAD}<link rel="stylesheet" href="/static/css/xterm.css">\n'
        '<script src="/page.js"></script>\n<script src="/static/js/textual.js"></script>\n'
        '</head>\n<body class="window">\n'
        '<div id="closed"><p>This window is closed. All that was booked is kept.</p>'
        '<p><a href="/">Open it again</a></p></div>\n'
        '<div id="terminal" class="textual-terminal" '
        f'data-session-websocket-url="{escape(socket)}" data-font-size="{letter_px or 16}" '
        f"{sized}></div>\n"
        f'<div id="keys">\n{_keys()}</div>\n</body>\n</html>\n'
    )


def _keys() -> str:
    rows = [("", "1234567890"), *(("letters", row) for row in BOARD), ("", LAST)]
    return "".join(
        f'<div class="row {kind}">{"".join(_key(key) for key in row)}</div>\n' for kind, row in rows
    )


def _key(key: str) -> str:
    said = f' aria-label="{escape(_SAID[key])}"' if key in _SAID else ""
    if key in _DOES:
        return f'<button type="button" data-do="{_DOES[key]}"{said}>{escape(key)}</button>'
    shifted = SHIFTED.get(key, key.upper() if len(key) == 1 else key)
    kind = ' class="word"' if len(key) > 1 else ""
    return (
        f'<button type="button"{kind} data-key="{escape(key)}" data-shift="{escape(shifted)}"'
        f"{said}>{escape(key)}</button>"
    )


def asks(said: str = "") -> str:
    """The password, with what was wrong with the last one."""
    told = f'<p class="said">{escape(said)}</p>' if said else ""
    return (
        f"{_HEAD}</head>\n<body>\n<main>\n<h1>pantry-tui</h1>\n{told}\n"
        '<form method="post" action="/enter">\n<label>Password\n'
        '<input type="password" name="password" autocomplete="current-password" autofocus '
        'maxlength="200"></label>\n<button>Come in</button>\n</form>\n</main>\n</body>\n</html>\n'
    )
