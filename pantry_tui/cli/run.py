"""The command line: find the verb, read its words, run it, and never show a traceback.

Nothing is loaded here that every verb does not need: neither the store nor the tables, and of the
verbs only the one that was typed.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence
from typing import TYPE_CHECKING

from pantry_tui.cli import registry
from pantry_tui.core.text import clean
from pantry_tui.errors import BadInput, PantryError, Unclear

if TYPE_CHECKING:
    from pathlib import Path

    from pantry_tui.cli.call import Call
    from pantry_tui.services.moments import Moment

_TEXT = ("--store", "--today")
_BARE = ("--json", "--version", "--help", "-h")


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command. Returns the exit code: 0 done, 1 refused, 2 bad input."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")  # a terminal without UTF-8 still gets its words
    typed = sys.argv[1:] if argv is None else argv
    try:
        code = _run(typed)
        sys.stdout.flush()
        return code
    except PantryError as error:
        print(clean(error.message), file=sys.stderr)
        return error.code
    except BrokenPipeError:
        # The reader left (`| head`); nothing is wrong, and Python must not complain at exit.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except KeyboardInterrupt:
        return 130
    except UnicodeEncodeError:
        print("What was typed holds bytes that are no text: type it again.", file=sys.stderr)
        return 2
    except OSError as error:
        return _cannot_say(error)
    except Exception as error:  # the last net: a person gets a sentence, a developer the rest
        if os.environ.get("PANTRY_DEBUG"):
            raise
        booked = isinstance(error, _BookedAlready)
        what = "what you did is booked (see `pantry-tui log`)" if booked else "nothing was booked"
        name = type(error.__cause__ if booked else error).__name__
        print(
            f"Something is wrong inside the program ({name}): {what}; "
            "run again with PANTRY_DEBUG=1 and report what it prints.",
            file=sys.stderr,
        )
        return 1


class _BookedAlready(Exception):
    """What went wrong did so behind the commit, while the answer was made."""


def _has_booked(call: Call) -> bool:
    """Whether this command has written to its store."""
    from pantry_tui.store.store import BOOKED_IN

    return call.path in BOOKED_IN


def _cannot_say(error: OSError) -> int:
    """The answer, or a file that was named, cannot be written or read."""
    why = clean(error.strerror or str(error))
    if error.filename is not None:
        name = clean(str(error.filename))[:200]
        print(f"{name} cannot be used ({why}): name another file.", file=sys.stderr)
        return 1
    # What stdout still holds must not be tried again at exit, with a traceback.
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    print(
        f"The answer cannot be written here ({why}); what was to be booked is booked: see "
        "`pantry-tui log`.",
        file=sys.stderr,
    )
    return 1


def _run(typed: Sequence[str]) -> int:
    told, words = split(typed)
    if "--version" in told:
        from pantry_tui import __version__

        print(__version__)
        return 0
    entry, length = registry.find(words) if words else (registry.APP, 0)
    if "--help" in told or "-h" in told:
        return _help(entry, words)
    if entry is None:
        raise BadInput(_no_verb(words))
    from pantry_tui.cli.call import Call, Question, print_json
    from pantry_tui.cli.parse import parse

    verb = parse(entry.load(), entry.name, words[length:])
    call = Call(_told(told.get("--today")), _store(told.get("--store")), "--json" in told)
    try:
        code = verb.run(call)
        call.settle()
        return code
    except Question as error:
        call.mend(error, words)
        if call.as_json:
            print_json({"error": clean(error.message), **error.asked})
        raise
    except PantryError as error:
        call.mend(error, words)
        if call.as_json and isinstance(error, Unclear):
            asks = [
                {"about": error.about, "typed": error.typed, "choices": list(error.choices)},
            ]
            print_json({"error": clean(error.message), "asks": asks})
        raise
    except (OSError, UnicodeEncodeError):
        raise
    except Exception as error:
        if _has_booked(call):
            raise _BookedAlready from error
        raise


def split(typed: Sequence[str]) -> tuple[dict[str, str], list[str]]:
    """What is said for every verb, before or after it, and the words that are left.

    Raises BadInput for a flag without its value.
    """
    told: dict[str, str] = {}
    words: list[str] = []
    waiting = list(reversed(typed))
    while waiting:
        said = waiting.pop()
        if said == "--":
            return told, [*words, said, *reversed(waiting)]
        flag, equals, value = said.partition("=")
        if said in _BARE:
            told[said] = "yes"
        elif flag in _TEXT and equals:
            told[flag] = value
        elif flag in _TEXT:
            if not waiting or waiting[-1].startswith("--"):
                raise BadInput(f"{flag} needs a value; see `pantry-tui --help`.")
            told[flag] = waiting.pop()
        else:
            words.append(said)
    return told, words


def _store(typed: str | None) -> Path | None:
    if not typed:
        return None
    from pathlib import Path

    return Path(os.path.expanduser(typed))


def _told(typed: str | None) -> Moment | None:
    """The moment that is taken as now; None for the real one."""
    text = typed or os.environ.get("PANTRY_TODAY")
    if not text:
        return None
    from pantry_tui.services.moments import read_today

    return read_today(text)


def _help(entry: registry.Entry | None, words: Sequence[str]) -> int:
    from pantry_tui.cli import help as texts

    if not words:
        lines = texts.overview()
    elif entry is not None:
        lines = texts.of(entry)
    elif registry.under(words[0]):
        lines = texts.several(words[0])
    else:
        raise BadInput(_no_verb(words))
    print("\n".join(lines))
    return 0


def _no_verb(words: Sequence[str]) -> str:
    said = clean(words[0])[:40]
    if said.startswith("-"):
        return f"{said!r} stands before a verb and means nothing there; see `pantry-tui --help`."
    more = registry.under(words[0])
    if more:
        return f"Say which: {' or '.join(entry.name for entry in more)}."
    from pantry_tui.cli.parse import near_words

    firsts = {entry.name.partition(" ")[0]: None for entry in registry.every()}
    near = near_words(words[0], firsts)
    hint = f"near it: {', '.join(near)}; " if near else ""
    return f"{said!r} is no verb; {hint}`pantry-tui --help` lists them all."
