"""The two pages: the app with the keys that a phone lacks, and the one that asks for the password.

They hold nothing of the store, no path, no name of the machine, and nothing from elsewhere.
"""

from __future__ import annotations

from html import escape

#: As they are tapped: two rows of ten.
KEYS = (*"1234567890", "Esc", "↑", "↓", "Enter", "Space", "←", "/", "u", "z", "?")

_HEAD = """<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>pantry-tui</title>
<link rel="icon" href="data:,">
<link rel="stylesheet" href="/page.css">
"""


def app(socket: str, letter_px: int) -> str:
    """The app in a window of its own; `socket` is the address that it speaks through."""
    keys = "".join(
        f'<button type="button" data-key="{escape(key)}">{escape(key)}</button>' for key in KEYS
    )
    return (
        f'{_HEAD}<link rel="stylesheet" href="/static/css/xterm.css">\n'
        '<script src="/page.js"></script>\n<script src="/static/js/textual.js"></script>\n'
        '</head>\n<body class="window">\n'
        '<div id="closed"><p>This window is closed. All that was booked is kept.</p>'
        '<p><a href="/">Open it again</a></p></div>\n'
        '<div id="terminal" class="textual-terminal" '
        f'data-session-websocket-url="{escape(socket)}" data-font-size="{letter_px}"></div>\n'
        f'<div id="keys">{keys}</div>\n</body>\n</html>\n'
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
