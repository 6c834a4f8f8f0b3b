"""The served app in a real browser, at the size of a phone and by touch alone.

`PANTRY_BROWSER=/path/to/chromium python -m tests.long browser` plays it; without that variable
nothing here starts. devtools.py speaks to the browser, phone.py is a hand on its glass.
"""
