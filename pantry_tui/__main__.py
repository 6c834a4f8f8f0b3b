"""`python -m pantry_tui`."""

from pantry_tui.cli import main

if __name__ == "__main__":
    raise SystemExit(main())
