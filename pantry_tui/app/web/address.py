"""Under which names and addresses this machine is asked for."""

from __future__ import annotations

import socket
from contextlib import suppress

from pantry_tui.errors import Refused

#: Only this machine.
HERE = "127.0.0.1"


def listening(port: int, lan: bool) -> socket.socket:
    """A socket that waits at the port, 0 for any free one. Raises Refused where it is taken."""
    ours = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    ours.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        ours.bind(("0.0.0.0" if lan else HERE, port))
        ours.listen(64)
    except (OSError, OverflowError) as error:
        ours.close()
        why = getattr(error, "strerror", None) or str(error)
        raise Refused(
            f"Port {port} cannot be used ({why}): name another one with --port."
        ) from error
    return ours


def in_this_network() -> str | None:
    """The address by which others in the network reach this machine. Nothing is sent to find it:
    192.0.2.1 is an address for examples (RFC 5737)."""
    with suppress(OSError), socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        probe.connect(("192.0.2.1", 9))
        address: str = probe.getsockname()[0]
        return None if address == "0.0.0.0" else address
    return None


def hosts(port: int, lan: bool) -> list[str]:
    """Names with ports that a browser may write in `Host`; the first is the one to show."""
    names = ["localhost", HERE]
    if lan:
        name = socket.gethostname()
        found = in_this_network()
        names = [*([found] if found else []), name, f"{name}.local", *names]
    suffix = "" if port == 80 else f":{port}"
    return [f"{name}{suffix}" for name in names if name]


def picture(url: str) -> str:
    """The address as a QR code (ISO/IEC 18004) of half blocks, for a phone's camera. Raises
    Refused where the extra is not installed."""
    from io import StringIO

    try:
        import segno
    except ImportError as error:
        raise Refused(MISSING) from error
    drawn = StringIO()
    segno.make_qr(url, error="m").terminal(drawn, border=2, compact=True)
    return drawn.getvalue()


MISSING = "`serve` needs the extra `web`: install it with `pip install 'pantry-tui[web]'`."
