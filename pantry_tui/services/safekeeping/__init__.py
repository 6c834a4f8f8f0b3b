"""Nothing lost, and it can be proved: backup, restore, verify, salvage."""
