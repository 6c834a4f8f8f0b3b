"""The published tables: read once, typed and frozen; foods and methods by any usual name."""

from pantry_tui.reference.compiled import rules_fingerprint

__all__ = ["rules_fingerprint"]
