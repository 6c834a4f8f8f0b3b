"""A pantry inventory with first-in-first-out rotation, for people who put up their own food."""
