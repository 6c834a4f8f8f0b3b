"""One file that holds every reference table compiled, each part loadable by itself.

The file is only ever a copy: it stands for the tables as long as `key` tells that nothing changed,
and whatever is wrong with it, it is passed over. Nothing in it is executed: the parts are plain
tuples, dicts, words and numbers as marshal writes them, and are not even looked at before the
check value of the whole file is right.

    magic · check value (4 bytes) · length of key, length of directory (4 bytes each) · key ·
    directory (fingerprint, {part: (offset, length)}) · parts
"""

from __future__ import annotations

import marshal
import os
from binascii import crc32
from collections.abc import Callable, Iterator, Mapping
from contextlib import suppress
from typing import Any

_MAGIC = b"pantry-tui reference tables 1\n"
_HEAD = len(_MAGIC) + 12


class Parts(Mapping[str, Any]):
    """Parts by name, each unmarshalled whenever it is asked for; `fingerprint` says which rules
    they are."""

    def __init__(
        self, fingerprint: str, directory: dict[str, tuple[int, int]], body: memoryview
    ) -> None:
        self.fingerprint = fingerprint
        self._directory, self._body = directory, body

    def __getitem__(self, name: str) -> Any:
        offset, length = self._directory[name]
        return marshal.loads(self._body[offset : offset + length])

    def __contains__(self, name: object) -> bool:
        return name in self._directory

    def __iter__(self) -> Iterator[str]:
        return iter(self._directory)

    def __len__(self) -> int:
        return len(self._directory)


def _number(value: int) -> bytes:
    return value.to_bytes(4, "little")


def written(key: bytes, fingerprint: str, parts: Mapping[str, Any]) -> bytes:
    """What the file holds for these parts."""
    directory: dict[str, tuple[int, int]] = {}
    blobs = []
    offset = 0
    for name, part in parts.items():
        blob = marshal.dumps(part)
        directory[name] = (offset, len(blob))
        blobs.append(blob)
        offset += len(blob)
    names = marshal.dumps((fingerprint, directory))
    rest = _number(len(key)) + _number(len(names)) + key + names + b"".join(blobs)
    return _MAGIC + _number(crc32(rest)) + rest


def read(text: bytes, key: bytes) -> Parts | None:
    """The parts in a file's bytes; None where it is another's, damaged, or not for `key`."""
    if not text.startswith(_MAGIC) or len(text) < _HEAD:
        return None
    whole = memoryview(text)
    check, key_length, names_length = (
        int.from_bytes(whole[at : at + 4], "little") for at in range(len(_MAGIC), _HEAD, 4)
    )
    names = _HEAD + key_length
    if whole[_HEAD:names] != key or crc32(whole[len(_MAGIC) + 4 :]) != check:
        return None
    try:
        fingerprint, directory = marshal.loads(whole[names : names + names_length])
    except (ValueError, TypeError, EOFError):
        return None
    return Parts(fingerprint, directory, whole[names + names_length :])


def load(path: str, key: bytes) -> Parts | None:
    """The same from a file. It is read whole: who replaces it meanwhile changes nothing here."""
    try:
        with open(path, "rb") as handle:
            return read(handle.read(), key)
    except OSError:
        return None


def replace(path: str, make: Callable[[], bytes | None]) -> bytes | None:
    """What `make` gives, put in the stead of the file in one step; None where it gives nothing.

    Where no file can be written `make` is not called, so that no work is done for nothing; where
    only the end fails (a full disk) the old file stays.
    """
    new = f"{path}.{os.getpid()}.new"
    try:
        os.makedirs(os.path.dirname(path), mode=0o700, exist_ok=True)
        handle = open(new, "xb")  # noqa: SIM115 -- closed below, after what may fail
    except OSError:
        return None
    text = None
    try:
        with handle:
            text = make()
            handle.write(text or b"")
        if text is not None:
            os.replace(new, path)
    except OSError:
        pass  # the old file stays, and what was made serves this run
    finally:
        with suppress(OSError):
            os.unlink(new)
    return text
