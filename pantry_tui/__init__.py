"""A pantry inventory for people who preserve food at home: what to eat first, and why."""

__version__ = "0.2.0"
