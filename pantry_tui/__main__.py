"""`python -m pantry_tui`."""

from pantry_tui.cli import program

if __name__ == "__main__":
    raise SystemExit(program())
