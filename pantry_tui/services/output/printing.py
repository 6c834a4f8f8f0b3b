"""Onto paper: the printer of this machine where it has one, a browser, or a file."""

from __future__ import annotations

import shutil
import subprocess
import tempfile
import webbrowser
from pathlib import Path

from pantry_tui.errors import Refused
from pantry_tui.services.done import Done
from pantry_tui.store.files import made_whole

#: Seconds after which a printer that does not answer is given up.
PATIENCE = 20.0


def printer() -> str:
    """The program that prints a text; "" where this machine has none."""
    return shutil.which("lp") or shutil.which("lpr") or ""


def to_printer(text: str, title: str) -> Done:
    """Hand a plain text to the printer. Raises Refused with what it said."""
    program = printer()
    if not program:
        raise Refused("This machine has no printer program: write it to a file instead.")
    try:
        done = subprocess.run(
            [program], input=text, capture_output=True, text=True, timeout=PATIENCE, check=False
        )
    except (OSError, subprocess.TimeoutExpired) as error:
        raise Refused(f"The printer did not take it ({error}): write it to a file.") from None
    if done.returncode:
        why = " ".join((done.stderr or done.stdout).split())[:200] or "no reason given"
        raise Refused(f"The printer did not take it ({why}): write it to a file instead.")
    return Done(f"Sent {title} to the printer.")


def to_browser(html: str, title: str) -> Done:
    """A page in the browser of this machine, to print from there. Raises Refused."""
    with tempfile.NamedTemporaryFile(
        "w", suffix=".html", prefix="pantry-", delete=False, encoding="utf-8"
    ) as made:
        made.write(html)
    if not webbrowser.open(Path(made.name).as_uri()):
        raise Refused(f"No browser opened: the page lies in {made.name}.")
    return Done(f"{title} is in your browser: print it there.")


def to_file(text: str, html: str, path: Path) -> Done:
    """A page where the name ends in .html, else plain text; nothing is overwritten."""
    page = path.suffix.lower() in (".html", ".htm")
    with made_whole(path) as making:
        making.write_text(html if page else text, encoding="utf-8")
    return Done(f"Wrote {path}{'' if page else ', as plain text'}.")
