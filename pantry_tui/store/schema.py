"""The tables of a store file, as migrations. The log is the truth; nothing here is deleted.

`PRAGMA user_version` is the number of the schema, so that a start need not ask the migrations.
"""

from __future__ import annotations

from sqlite_utils import Database, Migrations

from pantry_tui.store import past
from pantry_tui.store.upgrade import counted, typed_log

migrations = Migrations("pantry_tui")


@migrations()
def m001_log_and_settings(db: Database) -> None:
    """The event log and the household's settings, as they were at first."""
    db.table("events").create(
        {
            "id": str,
            "recorded": str,
            "day": str,
            "did": str,
            "batch": str,
            "containers": str,
            "data": str,
        },
        pk="id",
        not_null={"recorded", "day", "did", "batch", "containers", "data"},
        strict=True,
    )
    db.table("events").create_index(["batch"])
    db.table("settings").create({"name": str, "value": str}, pk="name", strict=True)


@migrations()
def m002_drafts(db: Database) -> None:
    """Work that is not booked yet, kept so that a killed terminal loses nothing."""
    db.table("drafts").create({"name": str, "data": str}, pk="name", strict=True)


@migrations()
def m003_typed_log_and_stock(db: Database) -> None:
    """Typed payloads with moments; the household's words become events; stock tables beside."""
    for statement in TABLES:
        db.execute(statement)
    typed_log(db.conn)
    db.execute("DROP TABLE events")
    db.execute("DROP TABLE settings")


@migrations()
def m004_counts_and_sums(db: Database) -> None:
    """What belongs together is counted and summed, so that a row that is lost is noticed."""
    counted(db.conn, TABLES)


#: The log, what each event speaks of, and the stock tables: what the log leaves, kept beside it.
#: `lines` hold equal containers of a batch in one place with their ladder of days: `v0` from the
#: first, `v1` from day `d1` on, and so on (core.words.SEVERITY numbers the verdicts). `hash` is a
#: check value of the row, `totals` a count and a sum of them by place ("" for all), `shown` a sum
#: of what lists choose and order all of them by, `sums` the same of all else (sums.py).
TABLES = (
    """CREATE TABLE log (
        id TEXT PRIMARY KEY, recorded TEXT NOT NULL, day TEXT NOT NULL, at INTEGER,
        did TEXT NOT NULL, together TEXT NOT NULL, payload TEXT NOT NULL, hash INTEGER NOT NULL
    ) STRICT, WITHOUT ROWID""",
    "CREATE INDEX log_did ON log (did, id)",
    "CREATE INDEX log_in_turn ON log (day, at) WHERE at < 0",
    "CREATE INDEX log_together ON log (together) WHERE together <> ''",
    """CREATE TABLE undone (event TEXT PRIMARY KEY) STRICT, WITHOUT ROWID""",
    """CREATE TABLE of_batch (
        batch TEXT NOT NULL, event TEXT NOT NULL, PRIMARY KEY (batch, event)
    ) STRICT, WITHOUT ROWID""",
    """CREATE TABLE of_place (
        place TEXT NOT NULL, event TEXT NOT NULL, PRIMARY KEY (place, event)
    ) STRICT, WITHOUT ROWID""",
    """CREATE TABLE codes (
        code TEXT PRIMARY KEY, batch TEXT NOT NULL
    ) STRICT, WITHOUT ROWID""",
    "CREATE INDEX codes_batch ON codes (batch)",
    """CREATE TABLE lines (
        id INTEGER PRIMARY KEY, batch TEXT NOT NULL, code TEXT NOT NULL, food TEXT NOT NULL,
        method TEXT NOT NULL, place TEXT NOT NULL, path TEXT NOT NULL, state TEXT NOT NULL,
        n INTEGER NOT NULL, numbers TEXT NOT NULL, size TEXT NOT NULL, amount TEXT NOT NULL,
        begun INTEGER NOT NULL, reserved TEXT NOT NULL, made TEXT NOT NULL, best_by TEXT,
        discard_after TEXT,
        first_date TEXT NOT NULL,
        harmless INTEGER NOT NULL, why_no_discard TEXT NOT NULL, again_at INTEGER,
        hurried INTEGER NOT NULL, held_v INTEGER, held_best TEXT, held_discard TEXT,
        v0 INTEGER NOT NULL, d1 TEXT, v1 INTEGER, d2 TEXT, v2 INTEGER, d3 TEXT, v3 INTEGER,
        d4 TEXT, v4 INTEGER, suspect INTEGER NOT NULL, reasons TEXT NOT NULL,
        words TEXT NOT NULL, facts_to TEXT NOT NULL, facts_min INTEGER NOT NULL,
        hash INTEGER NOT NULL
    ) STRICT""",
    "CREATE INDEX lines_batch ON lines (batch)",
    "CREATE INDEX lines_code ON lines (code)",
    "CREATE INDEX lines_food ON lines (food)",
    "CREATE INDEX lines_facts ON lines (facts_to)",
    "CREATE INDEX lines_minute ON lines (facts_min)",
    "CREATE INDEX lines_again ON lines (again_at) WHERE again_at IS NOT NULL",
    """CREATE TABLE stood (
        place TEXT NOT NULL, batch TEXT NOT NULL, PRIMARY KEY (place, batch)
    ) STRICT, WITHOUT ROWID""",
    "CREATE INDEX stood_batch ON stood (batch)",
    """CREATE TABLE totals (
        place TEXT PRIMARY KEY, count INTEGER NOT NULL, sum INTEGER NOT NULL,
        shown INTEGER NOT NULL
    ) STRICT, WITHOUT ROWID""",
    """CREATE TABLE places (
        id TEXT PRIMARY KEY, name TEXT NOT NULL, climate TEXT NOT NULL, parent TEXT, target_f REAL,
        capacity INTEGER, checked TEXT, gone INTEGER NOT NULL, facts TEXT NOT NULL,
        hash INTEGER NOT NULL
    ) STRICT, WITHOUT ROWID""",
    """CREATE TABLE marked (what TEXT PRIMARY KEY) STRICT, WITHOUT ROWID""",
    """CREATE TABLE sums (
        what TEXT PRIMARY KEY, count INTEGER NOT NULL, sum INTEGER NOT NULL
    ) STRICT, WITHOUT ROWID""",
    """CREATE TABLE meta (
        name TEXT PRIMARY KEY, value TEXT NOT NULL
    ) STRICT, WITHOUT ROWID""",
    past.TABLE,
)

NAMES = (
    "m001_log_and_settings",
    "m002_drafts",
    "m003_typed_log_and_stock",
    "m004_counts_and_sums",
)
