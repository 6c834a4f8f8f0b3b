"""Which files the tables and the verdicts rest on, and whether they are the same as before."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator

import pantry_tui

_PACKAGE = os.path.dirname(os.path.abspath(pantry_tui.__file__))
#: The rooms whose code makes tables and verdicts.
_ROOMS = ("core", "reference")


def _under(folder: str, ending: str) -> Iterator[os.DirEntry[str]]:
    """The files of a folder and of those in it, by name."""
    with os.scandir(folder) as found:
        entries = sorted(found, key=lambda entry: entry.name)
    for entry in entries:
        if entry.name.endswith(ending):
            yield entry
        elif entry.name != "__pycache__" and "." not in entry.name and entry.is_dir():
            yield from _under(entry.path, ending)


def _files(data: str, package: str) -> Iterator[tuple[str, os.DirEntry[str]]]:
    """(name, file) of every table and of every file of the rooms that read and judge."""
    with os.scandir(data) as found:
        tables = sorted(found, key=lambda entry: entry.name)
    for entry in tables:
        if entry.name.endswith(".csv"):
            yield entry.name, entry
    for room in _ROOMS:
        for entry in _under(os.path.join(package, room), ".py"):
            yield entry.path[len(package) :], entry


def listing(data: str, package: str = _PACKAGE) -> tuple[bytes, int]:
    """(all that tells these files from others without reading them, the newest change in ns).

    Holds the version of the program and of Python, and every file's name, size and times; the
    time of its last change of any kind is among them, which no copying tool can set back. Takes
    about half a millisecond. Raises OSError.
    """
    lines = [f"{pantry_tui.__version__} {sys.implementation.cache_tag} {sys.hexversion:x}"]
    newest = 0
    for name, entry in _files(data, package):
        at = entry.stat()
        lines.append(f"{name} {at.st_size} {at.st_mtime_ns} {at.st_ctime_ns}")
        newest = max(newest, at.st_mtime_ns, at.st_ctime_ns)
    return "\n".join(lines).encode(), newest


def contents(data: str, package: str = _PACKAGE) -> str:
    """16 hex digits of what stands in those files and of the program's version: the same on every
    machine that has the same rules. Reads them all, some 3 ms. Raises OSError."""
    from hashlib import blake2b

    said = blake2b(pantry_tui.__version__.encode(), digest_size=8)
    for name, entry in _files(data, package):
        with open(entry.path, "rb") as handle:
            text = handle.read()
        said.update(f"\0{name.replace(os.sep, '/')}\0{len(text)}\0".encode() + text)
    return said.hexdigest()
