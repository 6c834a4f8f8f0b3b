"""The wheel, installed into a bare environment, carries its tables and runs from any folder."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import venv
from pathlib import Path

import pytest

from tests.once import once, shared

ROOT = Path(__file__).resolve().parent.parent
FIELDS = {
    "code", "container_ids", "food", "method", "place", "count", "state", "verdict", "best_by",
    "discard_after", "days_left", "reasons",
}  # fmt: skip


def run(*command: str | Path, cwd: Path) -> str:
    done = subprocess.run(
        [str(part) for part in command], cwd=cwd, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, f"{command}\n{done.stdout}\n{done.stderr}"
    return done.stdout


@pytest.fixture(scope="session")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of scripts of a fresh environment that holds the built wheel and nothing else."""
    base = once(shared(tmp_path_factory), "wheel", _install)
    return base / "env" / ("Scripts" if os.name == "nt" else "bin")


def _install(base: Path) -> None:
    run(
        *(sys.executable, "-m", "build", "--wheel", "--no-isolation"),
        *("--outdir", base / "dist", ROOT),
        cwd=base,
    )
    (wheel,) = (base / "dist").glob("pantry_tui-*.whl")
    venv.create(base / "env", with_pip=True)
    python = base / "env" / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
    run(
        *(python, "-m", "pip", "install", "--quiet", "--disable-pip-version-check", wheel),
        cwd=base,
    )


def test_due_answers_from_another_folder(installed: Path, tmp_path: Path) -> None:
    store = tmp_path / "demo.db"
    run(installed / "pantry-tui", "demo", "--init", store, cwd=tmp_path)

    rows = json.loads(
        run(installed / "pantry-tui", "--store", store, "due", "--json", cwd=tmp_path)
    )

    assert isinstance(rows, list)
    assert rows
    assert all(row.keys() >= FIELDS for row in rows)


def test_tables_and_styles_are_in_the_wheel(installed: Path, tmp_path: Path) -> None:
    probe = (
        "from pathlib import Path; import pantry_tui; from pantry_tui.paths import data_dir;"
        "home = Path(pantry_tui.__file__).parent; assert data_dir() == home / 'data';"
        "print(*sorted(str(p.relative_to(home)) for p in home.rglob('*')), sep='\\n')"
    )
    shipped = set(run(installed / "python", "-c", probe, cwd=tmp_path).splitlines())

    wanted = {str(Path("data", p.relative_to(ROOT / "data"))) for p in ROOT.glob("data/**/*.csv")}
    wanted |= {str(p.relative_to(ROOT / "pantry_tui")) for p in ROOT.glob("pantry_tui/**/*.tcss")}
    assert wanted
    assert wanted <= shipped
