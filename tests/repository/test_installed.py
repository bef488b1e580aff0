"""The three ways farmbook is found: an installed wheel, an editable install, a raw checkout. Each carries its templates."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
SCENARIO = ROOT / "scenarios" / "hof_fennewald.toml"


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("wheel")
    source = folder / "source"
    subprocess.run(["git", "clone", "-q", str(ROOT), str(source)], check=True)
    command = [sys.executable, "-m", "pip", "wheel", "-q", "--no-deps", "--wheel-dir", str(folder), str(source)]
    subprocess.run(command, check=True, capture_output=True)
    return next(folder.glob("farmbook-*.whl"))


def build(search: Path, target: Path) -> subprocess.CompletedProcess[str]:
    """Build a book from another folder, with farmbook looked for in `search` first."""
    return subprocess.run(
        [sys.executable, "-m", "farmbook", "build", str(SCENARIO), "--out", str(target / "book.xlsx")],
        check=False,
        capture_output=True,
        text=True,
        cwd=target,
        env={**os.environ, "PYTHONPATH": str(search)},
    )


def test_the_wheel_carries_the_templates(wheel: Path) -> None:
    names = zipfile.ZipFile(wheel).namelist()
    wanted = [path.name for path in (ROOT / "templates_src").iterdir() if path.suffix in (".toml", ".txt")]
    assert wanted
    assert {f"farmbook/templates_src/{name}" for name in wanted} <= set(names)
    assert "farmbook/py.typed" in names


def test_an_installed_wheel_builds_the_same_book_as_a_checkout(wheel: Path, tmp_path: Path) -> None:
    place = tmp_path / "installed"
    command = [sys.executable, "-m", "pip", "install", "-q", "--no-deps", "--target", str(place), str(wheel)]
    subprocess.run(command, check=True, capture_output=True)
    books = []
    for name, search in (("wheel", place), ("checkout", wheel.parent / "source")):
        target = tmp_path / name
        target.mkdir()
        done = build(search, target)
        assert done.returncode == 0, done.stderr
        books.append((target / "book.xlsx").read_bytes())
    assert books[0] == books[1]


def test_the_folder_of_templates_is_found_here() -> None:
    from farmbook.layout.template import read_templates, template_folder

    assert template_folder() == ROOT / "templates_src"
    assert [template.sheet for template in read_templates()][0] == "Start"
