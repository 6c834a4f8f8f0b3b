"""The app in a browser, for a phone at the shelf. Needs the extra `web`.

window.py is one window of the app, a process of its own, as many as there are browsers; server.py
gives each browser one; gate.py says who may come in; address.py where that is.
"""
