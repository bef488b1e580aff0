"""The page on adding things: what it names is there, and its line and its sheet work as they stand."""

from __future__ import annotations

import re
import textwrap
from pathlib import Path

from farmbook.expr.functions import ratio
from farmbook.expr.lower import lower
from farmbook.expr.nodes import Expr
from farmbook.layout.template import read_templates
from farmbook.model.farm import SECTIONS
from farmbook.model.year.year import Year
from farmbook.sections.declare import line
from farmbook.sections.model import Model
from tests.repository.source_files import ROOT

PAGE = (ROOT / "docs" / "adding.md").read_text(encoding="utf-8")
NAMED = re.findall(r"`((?:farmbook|templates_src|tests|docs)/[\w/.]*)`", PAGE)
YEAR = next(place for place, section in enumerate(SECTIONS) if section is Year)


def block(language: str) -> str:
    """The page's one example in this language."""
    (found,) = re.findall(rf"```{language}\n(.*?)```", PAGE, re.DOTALL)
    return textwrap.dedent(found)


def test_every_file_and_folder_named_is_there() -> None:
    assert len(NAMED) >= 6
    assert not [name for name in NAMED if not (ROOT / name).exists()]


def test_the_line_fits_its_section_and_its_unit() -> None:
    source = f"class Added(Year):\n{textwrap.indent(block('python'), '    ')}"
    names = {"Year": Year, "line": line, "ratio": ratio, "Expr": Expr, "__name__": __name__}
    exec(source, names)
    model = Model((*SECTIONS[: YEAR + 1], names["Added"]))  # type: ignore[arg-type]
    (added,) = (each for each in model.lines if each.name == "added.takings_an_hour")
    assert lower(added, "us") is not None


def test_the_sheet_is_one_and_shows_that_line(tmp_path: Path) -> None:
    (tmp_path / "03_hourly.toml").write_text(block("toml"), encoding="utf-8")
    (sheet,) = read_templates(tmp_path)
    assert sheet.sheet == "Hourly"
    assert "year.takings_an_hour" in sheet.homes
