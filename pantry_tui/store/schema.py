"""The tables of a store file, as migrations. The log is the truth; nothing here is deleted."""

from __future__ import annotations

from sqlite_utils import Database, Migrations

#: "Pant" as the file's application id, so that a foreign SQLite file is known at once.
APPLICATION_ID = 0x50616E74

migrations = Migrations("pantry_tui")


@migrations()
def m001_log_and_settings(db: Database) -> None:
    """The event log and the household's settings."""
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


NAMES = ("m001_log_and_settings", "m002_drafts")
