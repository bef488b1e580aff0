"""The page of questions keeps what it promises: each has its sheet, its heading there, and its figure under it."""

from __future__ import annotations

import re
from pathlib import Path
from typing import NamedTuple

import pytest

from farmbook.layout.template import Template, shipped_templates
from farmbook.results import whole_farm

PAGE = Path(__file__).parents[2] / "docs" / "questions.md"
LATER = {7, 9, 12, 13, 25, 28, 31}
"""Questions that need a log."""


class Row(NamedTuple):
    """One row of the table."""

    number: int
    sheet: str
    heading: str
    line: str


def rows() -> list[Row]:
    """The table of the page."""
    found = re.findall(
        r"^\| (\d+) \| [^|]+ \| (\w+) \| ([^|]+) \| `([\w.]+)` \|$", PAGE.read_text(encoding="utf-8"), re.MULTILINE
    )
    return [Row(int(number), sheet, heading, line) for number, sheet, heading, line in found]


def template_of(sheet: str) -> Template:
    """The sheet's template."""
    return next(each for each in shipped_templates() if each.sheet == sheet)


def test_every_question_up_to_37_has_a_row_or_comes_later() -> None:
    assert {row.number for row in rows()} | LATER == set(range(1, 38))
    assert not {row.number for row in rows()} & LATER


@pytest.mark.parametrize("row", rows(), ids=lambda row: f"{row.number}-{row.line}")
def test_the_sheet_asks_it_and_has_the_figure(row: Row) -> None:
    template = template_of(row.sheet)
    titles = {template.question, *(block.title.replace(", {unit}", "") for block in template.blocks)}
    assert row.heading in titles
    assert row.line in {line.name for line in whole_farm().lines}
    asked = [block for block in template.blocks if block.title == row.heading] or list(template.blocks)
    named = {name.removeprefix("show:") for block in asked for name in block.lines}
    named |= {name.removeprefix("show:") for block in asked for row in block.rows for name in row[1:]}
    named |= {name.removeprefix("show:") for name in template.comes_to} if row.heading == template.question else set()
    assert row.line in named


def test_what_is_left_out_is_named() -> None:
    text = PAGE.read_text(encoding="utf-8")
    told = {int(number) for number in re.findall(r"\b(\d+)\b", text.partition("Not answered yet")[2])}
    assert set(range(38, 53)) | LATER <= told
