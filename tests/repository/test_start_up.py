"""Starting costs nothing: importing the package and asking for help load no library but Python's own."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

from tests.repository.source_files import ROOT

PROBE = """
import json, sys
before = set(sys.modules)
{statement}
new = {{name: getattr(sys.modules[name], "__file__", None) or "" for name in set(sys.modules) - before}}
found = {{name for name, file in new.items() if "site-packages" in file or "dist-packages" in file}}
sys.stderr.write(json.dumps(sorted({{name.partition(".")[0] for name in found}} - {{"farmbook"}})))
"""

HELP = """
import runpy
sys.argv = ["farmbook", "--help"]
try:
    runpy.run_module("farmbook", run_name="__main__", alter_sys=True)
except SystemExit as end:
    assert not end.code, end.code
"""


def python(folder: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    """Run a fresh Python that finds the package wherever it is started."""
    environment = os.environ | {"PYTHONPATH": str(ROOT)}
    command = [sys.executable, *arguments]
    return subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True, check=False, timeout=60)


def libraries_after(folder: Path, statement: str) -> tuple[set[str], str]:
    """The third-party libraries in memory after a statement in a fresh Python, and what it printed."""
    done = python(folder, "-c", PROBE.format(statement=statement))
    assert done.returncode == 0, done.stderr
    return set(json.loads(done.stderr)), done.stdout


def test_the_probe_sees_a_library(tmp_path: Path) -> None:
    found, _ = libraries_after(tmp_path, "import openpyxl.utils")
    assert "openpyxl" in found


def test_importing_the_package_loads_no_library(tmp_path: Path) -> None:
    assert libraries_after(tmp_path, "import farmbook") == (set(), "")


def test_importing_the_command_line_loads_no_library(tmp_path: Path) -> None:
    assert libraries_after(tmp_path, "import farmbook.cli; farmbook.cli.main") == (set(), "")


def test_asking_for_help_loads_no_library(tmp_path: Path) -> None:
    found, printed = libraries_after(tmp_path, HELP)
    assert found == set()
    assert printed.startswith("usage: farmbook")


def test_help_names_every_command_and_complains_of_nothing(tmp_path: Path) -> None:
    done = python(tmp_path, "-m", "farmbook", "--help")
    assert (done.returncode, done.stderr) == (0, "")
    for command in ("build", "check", "show", "matters"):
        assert command in done.stdout
