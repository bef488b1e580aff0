"""One scenario gives one file, byte for byte, whatever the machine is set to."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

import pytest

from tests.live.turns import turn_of
from tests.workbook.shipped import ROOT, SCENARIOS, ShippedBook


@dataclass(frozen=True)
class Settings:
    """How a machine is set: seed of hashes, time zone, language, and where the command is started."""

    seed: str
    zone: str
    language: str
    folder: Path


def languages() -> list[str]:
    """The languages that this machine has, as `locale -a` lists them."""
    if shutil.which("locale") is None:
        return []
    done = subprocess.run(["locale", "-a"], capture_output=True, text=True, check=True, timeout=30)
    return done.stdout.split()


def another_language() -> str:
    """A language that writes numbers and dates differently, where the machine has one."""
    return next((name for name in languages() if name.startswith(("de_DE", "fr_FR"))), "C.UTF-8")


def started(scenario: Path, target: Path, settings: Settings) -> subprocess.Popen[str]:
    """A build under way in a process of its own."""
    environment = {key: value for key, value in os.environ.items() if not key.startswith("LC_")} | {
        "PYTHONPATH": str(ROOT),
        "PYTHONHASHSEED": settings.seed,
        "TZ": settings.zone,
        "LC_ALL": settings.language,
        "LANG": settings.language,
    }
    command = [sys.executable, "-m", "farmbook", "build", str(scenario), "--out", str(target)]
    return subprocess.Popen(command, cwd=settings.folder, env=environment, stderr=subprocess.PIPE, text=True)


@pytest.mark.parametrize("name", SCENARIOS)
def test_two_builds_are_alike(
    tmp_path: Path, books: Mapping[str, ShippedBook], name: str, pytestconfig: pytest.Config
) -> None:
    if not pytestconfig.getoption("whole") and turn_of(list(SCENARIOS).index(name), len(SCENARIOS)):
        pytest.skip("this book is built on two machines at other commits, and with --whole")
    here, there = tmp_path / "here.xlsx", tmp_path / "there.xlsx"
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    builds = [
        started(SCENARIOS[name].relative_to(ROOT), here, Settings("1", "America/St_Johns", "C", ROOT)),
        started(SCENARIOS[name], there, Settings("4242", "Pacific/Kiritimati", another_language(), elsewhere)),
    ]
    for build in builds:
        _, said = build.communicate(timeout=120)
        assert build.returncode == 0, said
    assert here.read_bytes() == there.read_bytes()
    assert here.read_bytes() == books[name].path.read_bytes()


def test_another_scenario_gives_another_file(books: Mapping[str, ShippedBook]) -> None:
    assert len({book.path.read_bytes() for book in books.values()}) == len(books) >= 2
