"""Who may come in: whose page it is, the password, and how often it may be tried."""

from __future__ import annotations

import base64
import hashlib
import hmac
import json
import os
import secrets
from collections.abc import Callable, Collection
from pathlib import Path

from pantry_tui.errors import BadInput, StoreError

#: Letters of a password at least, and at most: a longer one would be work for nothing.
SHORTEST, LONGEST = 8, 200
#: scrypt (RFC 7914): 2**14 rounds of 8 blocks take 16 MB and some 50 ms.
_ROUNDS, _BLOCKS = 2**14, 8
#: Wrong tries that cost nothing; each further one doubles the wait, up to the longest, seconds.
FREE_TRIES, LONGEST_WAIT = 3, 300.0
#: Browsers that are let in and addresses whose wrong tries are counted, at most.
_MOST = 1000


class Password:
    """The password of this machine's `serve`, of which only a salted hash is kept, in a file that
    its owner alone may read."""

    def __init__(self, path: Path) -> None:
        self.path = path

    @property
    def is_set(self) -> bool:
        return self.path.is_file()

    def set(self, typed: str) -> None:
        """Raises BadInput for one that is too short or too long, StoreError where it cannot be
        kept."""
        if not SHORTEST <= len(typed) <= LONGEST:
            raise BadInput(f"Choose a password of {SHORTEST} to {LONGEST} letters.")
        salt = secrets.token_bytes(16)
        kept = {"salt": salt.hex(), "scrypt": _hash(typed, salt).hex()}
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            self.path.unlink(missing_ok=True)
            # Exclusive: a link that somebody laid there is not followed.
            handle = os.open(self.path, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600)
            with open(handle, "w", encoding="ascii") as file:
                json.dump(kept, file)
        except OSError as error:
            raise StoreError(
                f"{self.path} cannot be written ({error.strerror}): choose another folder with "
                "XDG_CONFIG_HOME."
            ) from error

    def fits(self, typed: str) -> bool:
        """Whether it is the one that was set. Raises StoreError where the file is none of ours."""
        try:
            kept = json.loads(self.path.read_text(encoding="ascii"))
            salt, right = bytes.fromhex(kept["salt"]), bytes.fromhex(kept["scrypt"])
        except (OSError, ValueError, KeyError, TypeError) as error:
            raise StoreError(
                f"{self.path} holds no password: delete it and start `serve --lan` again."
            ) from error
        return len(typed) <= LONGEST and hmac.compare_digest(_hash(typed, salt), right)


def _hash(typed: str, salt: bytes) -> bytes:
    letters = typed.encode("utf-8", "surrogatepass")
    return hashlib.scrypt(letters, salt=salt, n=_ROUNDS, r=_BLOCKS, p=1)


class Gate:
    """Lets browsers in.

    `hosts` are the names with ports under which the page may be asked for: any other name leads
    here by a trick of somebody's name server. Without `password` whoever asks by one of them is in.
    `now` gives seconds that only grow.
    """

    def __init__(
        self, hosts: Collection[str], password: Password | None, now: Callable[[], float]
    ) -> None:
        self._hosts = frozenset(one.lower() for one in hosts)
        self._password, self._now = password, now
        self._in: dict[str, None] = {}
        self._wrong: dict[str, tuple[int, float]] = {}

    def knows(self, host: str | None) -> bool:
        """Whether the page was asked for by a name of this machine."""
        return host is not None and host.lower() in self._hosts

    def is_ours(self, origin: str | None, host: str | None) -> bool:
        """Whether a page that this server gave out is what speaks: a browser says whose page it
        is with each form and each web socket."""
        return (
            self.knows(host) and origin is not None and origin.lower() == f"http://{host}".lower()
        )

    def is_in(self, token: str | None) -> bool:
        return self._password is None or (token is not None and token in self._in)

    def wait(self, address: str) -> float:
        """Seconds until this address may try again."""
        tries, last = self._wrong.get(address, (0, 0.0))
        if tries < FREE_TRIES:
            return 0.0
        pause = min(2.0 ** min(tries - FREE_TRIES + 1, 16), LONGEST_WAIT)
        return max(0.0, last + pause - self._now())

    def enter(self, typed: str, address: str) -> str | None:
        """A token for a browser that typed the password; None where it is wrong, or comes too
        soon after too many wrong ones. Raises StoreError."""
        if self._password is None or self.wait(address):
            return None
        if not self._password.fits(typed):
            tries, _ = self._wrong.pop(address, (0, 0.0))
            self._wrong[address] = (tries + 1, self._now())
            if len(self._wrong) > _MOST:
                del self._wrong[next(iter(self._wrong))]
            return None
        self._wrong.pop(address, None)
        token = base64.urlsafe_b64encode(secrets.token_bytes(32)).decode("ascii")
        self._in[token] = None
        if len(self._in) > _MOST:
            del self._in[next(iter(self._in))]
        return token
