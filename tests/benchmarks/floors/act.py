"""Floor: one durable transaction, an event and the row of what it changes."""

import sqlite3
import sys

db = sqlite3.connect(sys.argv[1], isolation_level=None)
db.execute("begin immediate")
(last,) = db.execute("select max(id) from events").fetchone()
db.execute("insert into events values (?, ?, ?)", (last + 1, "2026-11-25", '{"used": "2A/1"}'))
db.execute("update stock set left = left - 1 where code = ?", ("2A",))
db.execute("commit")
db.close()
