"""Format, lint and types, held by the tools that pyproject.toml sets up."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
CODE = ("farmbook", "tests", "benchmarks", "docs")


@pytest.mark.parametrize(
    "command",
    [
        ("ruff", "format", "--check", *CODE),
        ("ruff", "check", *CODE),
        ("mypy", "farmbook", "tests", "docs", "benchmarks"),
    ],
    ids=["format", "lint", "types"],
)
def test_the_tool_finds_nothing(command: tuple[str, ...]) -> None:
    done = subprocess.run([sys.executable, "-m", *command], check=False, capture_output=True, text=True, cwd=ROOT)
    assert done.returncode == 0, done.stdout + done.stderr
