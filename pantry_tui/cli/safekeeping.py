"""Backup, restore, verify."""

from __future__ import annotations

import sys

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import flag, maybe, option, word
from pantry_tui.cli.printing import safekeeping as lines
from pantry_tui.cli.verb import Verb
from pantry_tui.core.text import clean
from pantry_tui.errors import Refused
from pantry_tui.paths import typed_path


class Backup(Verb):
    path: str | None = maybe("where to; else beside the store or where the settings say", "PATH")

    def run(self, call: Call) -> int:
        from pantry_tui.services.safekeeping.backup import backup

        made = backup(call.path, typed_path(self.path) if self.path is not None else None)
        for sentence in made.wrong:
            print(clean(sentence), file=sys.stderr)
        return call.answer(made, lines.backup_data, lines.backup)


class Restore(Verb):
    path: str = word("the backup to bring back", "PATH")
    dry_run: bool = flag("--dry-run", "say what would be lost and change nothing")

    def run(self, call: Call) -> int:
        from pantry_tui.services.safekeeping import backup

        do = backup.preview if self.dry_run else backup.restore
        found = do(call.path, typed_path(self.path))
        return call.answer(found, lines.restore_data, lambda one: lines.restored(one, self.dry_run))


class Verify(Verb):
    salvage: str | None = option("--salvage", "NEW", "bring what can be read into a new store")
    report: bool = flag("--report", "say what was looked at, check by check")

    def run(self, call: Call) -> int:
        from pantry_tui.services.safekeeping import verify

        if self.salvage is not None:
            saved = verify.save(call.path, typed_path(self.salvage))
            return call.answer(saved, lines.saved_data, lines.saved)
        found = verify.verify(call.path, call.today)
        call.answer(found, lines.report_data, lines.report if self.report else lines.verdict)
        if found.ok:
            return 0
        raise Refused(lines.advice(found, call.path))
