"""What nothing can be faster than: each a script of its own, run as a person's command is run."""
