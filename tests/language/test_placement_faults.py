"""Faults of templates and placement: each names the file, and the line it is about; each line has one home."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, replace
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from farmbook.errors import ModelFault
from farmbook.expr import functions as f
from farmbook.expr import nodes as n
from farmbook.expr.axis import Axis
from farmbook.layout import template
from farmbook.layout.place import BLOCKS
from farmbook.layout.template import KINDS, NEEDED, Block, Template, read_templates
from farmbook.sections.declare import line, number, text
from farmbook.sections.model import Model
from farmbook.sections.section import Section
from tests.language.books import Worked, work_out

ROW = Axis("row", "row", "down", 10, members=("upper", "lower"))
COLUMN = Axis("column", "column", "across", 20, members=("left", "right"))
FLUSH = Axis("flush", "flush", "down", 30, ordered=True, members=("first", "second"))
WEEK = Axis("week", "week", "down", 90, ordered=True, members=("1", "2", "3"))
SIZES = {ROW: 2, COLUMN: 2, FLUSH: 2, WEEK: 3}


class Shed(Section):
    """A little of everything."""

    name = text("Name", default="", how="Any.")
    size = number("Size", unit="m", usual=(1, 9), default=4, how="Measure.")
    rows = number("Rows", unit="1", axes=(ROW,), usual=(0, 9), default=2, how="Count.")

    @line("Heading", unit="1")
    def heading(self) -> n.Expr:
        """On every sheet."""
        return n.Label(self.model.section(Shed).raw(Shed.name), "(none)")

    @line("Twice", unit="m")
    def twice(self) -> n.Expr:
        """Two of them."""
        return self.size + self.size

    @line("Grid", unit="1", axes=(ROW, COLUMN))
    def grid(self) -> n.Expr:
        """A table."""
        return self.rows

    @line("Weeks", unit="1", axes=(WEEK,))
    def weeks(self) -> n.Expr:
        """Counted."""
        return f.running_sum(1, WEEK)


class Crosswise(Section):
    """A product of a list that runs down and one that is turned."""

    @line("Share of the flush", unit="1", axes=(FLUSH,))
    def share(self) -> n.Expr:
        """Counted."""
        return f.running_sum(1, FLUSH)

    @line("Flush and week", unit="1", axes=(FLUSH, WEEK))
    def both(self) -> n.Expr:
        """Weeks down, flushes across."""
        return self.share * self.model.section(Shed).weeks

    @line("Crossed", unit="1", axes=(WEEK,))
    def crossed(self) -> n.Expr:
        """Down times across."""
        return f.total(self.both * self.share, FLUSH)


FILES: Mapping[str, str] = {
    "10_start.toml": """
sheet = "Start"
title = "Start"
question = "What is here?"
class = "start"
[[block]]
kind = "list"
title = "Single"
lines = ["shed.heading", "shed.twice"]
[[block]]
kind = "matrix"
lines = ["shed.grid"]
[[block]]
kind = "table"
title = "Rows"
axis = "row"
lines = ["shed.rows_used"]
[[block]]
kind = "table"
title = "Weeks"
axis = "week"
lines = ["shed.weeks"]
""",
    "20_inputs.toml": """
sheet = "Inputs"
title = "Inputs"
question = "What is typed in?"
class = "inputs"
[[block]]
kind = "inputs"
title = "Single"
inputs = ["shed.name", "shed.size"]
[[block]]
kind = "input_table"
title = "Rows"
inputs = ["shed.rows"]
""",
}


def folder(path: Path, old: str = "", new: str = "") -> Path:
    """The files in a folder, one text in them replaced."""
    assert not old or sum(content.count(old) for content in FILES.values()) == 1
    for name, content in FILES.items():
        (path / name).write_text(content.replace(old, new) if old else content, encoding="utf-8")
    return path


@cache
def shed() -> Worked:
    return work_out(Model([Shed]), "metric", SIZES, {})


def lay_out(templates: list[Template]) -> None:
    shed().laid_out(templates, "shed.heading")


def test_the_files_as_they_are_place_every_line(tmp_path: Path) -> None:
    book, plan = shed().laid_out(read_templates(folder(tmp_path)), "shed.heading")
    assert [sheet.name for sheet in book.sheets] == ["Start", "Inputs"]
    assert set(shed().roots) <= set(plan.homes)


CLASSES = ("start", "inputs", "worked", "checks", "reference", "months", "years", "weeks", "card", "bank", "statement")
READING: Mapping[str, tuple[str, str, str, str]] = {
    "an unknown kind of block": ('kind = "matrix"', 'kind = "cube"', "unknown kind of block `cube`", "10_start.toml"),
    "a block without a kind": ('kind = "matrix"\n', "", "unknown kind of block ``", "10_start.toml"),
    "a missing key of a block": ('axis = "row"\n', "", "block `Rows`: missing ['axis'], unknown []", "10_start.toml"),
    "an unknown key of a block": (
        'axis = "row"\n',
        'axis = "row"\nlist = "x"\n',
        "block `Rows`: missing [], unknown ['list']",
        "10_start.toml",
    ),
    "a word for a list": (
        'lines = ["shed.grid"]',
        'lines = "shed.grid"',
        "block `matrix`: a list, or not one, in ['lines']",
        "10_start.toml",
    ),
    "a list for a word": (
        'axis = "row"',
        'axis = ["row"]',
        "block `Rows`: a list, or not one, in ['axis']",
        "10_start.toml",
    ),
    "a missing key of the sheet": (
        'question = "What is typed in?"\n',
        "",
        "sheet template: missing ['question'], unknown []",
        "20_inputs.toml",
    ),
    "an unknown key of the sheet": (
        'title = "Inputs"\n',
        'title = "Inputs"\ncolour = "red"\n',
        "sheet template: missing [], unknown ['colour']",
        "20_inputs.toml",
    ),
    "a name of a sheet that formulas could not use": (
        'sheet = "Inputs"',
        'sheet = "My inputs"',
        f"sheet `My inputs`: the name takes letters only, the class is one of {CLASSES}",
        "20_inputs.toml",
    ),
    "a block on a grid that is not its own": (
        'kind = "matrix"',
        'kind = "months"',
        "a block of kind `months` stands on no sheet of class `start`",
        "10_start.toml",
    ),
    "heads on a sheet that has none": (
        'class = "inputs"\n',
        'class = "inputs"\nheads = ["shed.weeks"]\n',
        "a sheet of class `inputs` takes no heads",
        "20_inputs.toml",
    ),
    "a file that is no TOML": (
        'sheet = "Inputs"',
        "sheet = Inputs",
        "a sheet template cannot be read",
        "20_inputs.toml",
    ),
}


@pytest.mark.parametrize("name", READING)
def test_a_template_at_fault_names_its_file(tmp_path: Path, name: str) -> None:
    old, new, what, where = READING[name]
    with pytest.raises(ModelFault) as raised:
        read_templates(folder(tmp_path, old, new))
    assert (raised.value.what, raised.value.where) == (what, where)


def test_two_templates_cannot_make_one_sheet(tmp_path: Path) -> None:
    with pytest.raises(ModelFault, match="two templates make a sheet called `Start`"):
        read_templates(folder(tmp_path, 'sheet = "Inputs"', 'sheet = "Start"'))


def test_no_templates_at_all(tmp_path: Path) -> None:
    with pytest.raises(ModelFault, match="no sheet templates found"):
        read_templates(tmp_path)


def test_every_kind_of_block_is_known_to_both_sides() -> None:
    assert set(BLOCKS) == KINDS
    assert set(NEEDED) <= KINDS


REPEATED = ', "show:shed.rows_used"'
WEEKS = '[[block]]\nkind = "table"\ntitle = "Weeks"\naxis = "week"\nlines = ["shed.weeks"]\n'
CHART = """[[block]]
kind = "chart"
title = "Drawn"
axis = "week"
series = [{ name = "Weeks", line = "shed.weeks" }]
"""


def test_what_a_file_does_not_say_of_a_block_is_empty() -> None:
    said = asdict(Block("text"))
    assert said.pop("kind") == "text"
    assert said.pop("form") == "lines"
    assert set(said.values()) == {"", (), False}


PLACING: Mapping[str, tuple[str, str, str, str]] = {
    "an unknown line": (
        '"shed.twice"]',
        '"shed.twice", "shed.thrice"]',
        "there is no line called `shed.thrice`",
        "10_start.toml",
    ),
    "an unknown input": (
        '"shed.size"]',
        '"shed.size", "shed.age"]',
        "there is no input called `shed.age`",
        "20_inputs.toml",
    ),
    "an unknown list": ('axis = "row"', 'axis = "pile"', "there is no list called `pile`", "10_start.toml"),
    "a line placed twice": (
        '"shed.twice"]',
        '"shed.twice", "shed.twice"]',
        "`shed.twice` is placed twice: on Start and on Start",
        "10_start.toml",
    ),
    "an input placed twice": (
        '"shed.size"]',
        '"shed.size", "shed.size"]',
        "`shed.size` is placed twice: on Inputs and on Inputs",
        "20_inputs.toml",
    ),
    "a table in a list": (
        '"shed.twice"]',
        '"shed.twice", "shed.rows_used"]',
        "`shed.rows_used` has a value for each row; it cannot stand in a list",
        "10_start.toml",
    ),
    "a single line in a table": (
        'lines = ["shed.rows_used"]',
        'lines = ["shed.twice"]',
        "`shed.twice` does not run down over row, alone or with one list that runs across",
        "10_start.toml",
    ),
    "two lists of which the table's own comes first": (
        'lines = ["shed.rows_used"]',
        'lines = ["shed.grid"]',
        "`shed.grid` does not run down over row, alone or with one list that runs across",
        "10_start.toml",
    ),
    "one list in a table of two": (
        'lines = ["shed.grid"]',
        'lines = ["shed.rows_used"]',
        "`shed.rows_used` does not have two lists",
        "10_start.toml",
    ),
    "a table among single inputs": (
        '"shed.size"]',
        '"shed.size", "shed.rows"]',
        "`shed.rows` is a table; it cannot stand in a list of inputs",
        "20_inputs.toml",
    ),
    "a single input in a table of inputs": (
        'inputs = ["shed.rows"]',
        'inputs = ["shed.size"]',
        "the inputs of table `Rows` do not share their lists",
        "20_inputs.toml",
    ),
    "inputs of different lists in one table": (
        'inputs = ["shed.rows"]',
        'inputs = ["shed.rows", "shed.size"]',
        "the inputs of table `Rows` do not share their lists",
        "20_inputs.toml",
    ),
    "a table wider than the sheet": (
        '"shed.rows_used"]',
        f'"shed.rows_used"{REPEATED * 8}]',
        "table `Rows` has 9 columns; 8 fit",
        "10_start.toml",
    ),
    "a drawing of a line over another list": (
        WEEKS,
        WEEKS + CHART.replace("shed.weeks", "shed.rows_used"),
        "`shed.rows_used` does not run over week; it cannot be drawn so",
        "10_start.toml",
    ),
    "a comparison of two with a row of one": (
        WEEKS,
        WEEKS
        + '[[block]]\nkind = "compare"\ntitle = "Both"\nheads = ["One", "Two"]\nrows = [["Size", "show:shed.twice"]]\n',
        "row `Size` of `Both` has 1 lines for 2 columns",
        "10_start.toml",
    ),
    "a case that there is not": (
        WEEKS,
        WEEKS + '[[block]]\nkind = "case"\nof = "dry"\n',
        "there is no case called `dry` with lines to place",
        "10_start.toml",
    ),
}


@pytest.mark.parametrize("name", PLACING)
def test_a_line_out_of_place_names_itself_and_the_file(tmp_path: Path, name: str) -> None:
    old, new, what, where = PLACING[name]
    with pytest.raises(ModelFault) as raised:
        lay_out(read_templates(folder(tmp_path, old, new)))
    assert (raised.value.what, raised.value.where) == (what, where)
    assert str(raised.value).endswith(f"declared at {where}")


@pytest.mark.parametrize(
    ("old", "new"),
    [('"shed.rows_used"]', f'"shed.rows_used"{REPEATED * 7}]'), (WEEKS, CHART + WEEKS)],
    ids=["a table as wide as the sheet", "a drawing before the table of its list"],
)
def test_what_just_fits_is_placed(tmp_path: Path, old: str, new: str) -> None:
    lay_out(read_templates(folder(tmp_path, old, new)))


class ShedBy(Section):
    """Its only line and one of the section after it would have one name in the workbook."""

    @line("By width", unit="1")
    def width(self) -> n.Expr:
        """Called shed_by_width."""
        return n.wrap(1)


def test_two_cells_cannot_have_one_name(tmp_path: Path) -> None:
    """A section and a line are joined by a point in the model, and by what words are joined by in a workbook."""
    clash = type("Shed", (Section,), {"by_width": line("Clash", unit="1")(lambda self: n.wrap(1))})
    found = work_out(Model([clash, ShedBy]), "metric", SIZES, {})
    block = Block("list", "Single", ("shed.by_width", "shed_by.width"))
    with pytest.raises(ModelFault) as raised:
        found.laid_out(
            [Template("10_start.toml", "Start", "Start", "What is here?", "start", (block,))], "shed.by_width"
        )
    assert raised.value.what == "two cells would be called `shed_by_width`"
    assert raised.value.where == "10_start.toml"


def test_templates_that_were_not_installed_are_missed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(template, "__file__", str(tmp_path / "farmbook" / "layout" / "template.py"))
    with pytest.raises(ModelFault, match="the sheet templates are missing from this installation") as raised:
        read_templates()
    assert raised.value.why == "looked for templates_src/"


def test_lines_and_inputs_placed_nowhere_are_all_named(tmp_path: Path) -> None:
    files = folder(tmp_path, ', "shed.twice"]', "]")
    (files / "20_inputs.toml").write_text(FILES["20_inputs.toml"].replace('"shed.name", ', ""), encoding="utf-8")
    with pytest.raises(ModelFault) as raised:
        lay_out(read_templates(files))
    assert raised.value.what == "2 lines or inputs are placed on no sheet"
    declared = f"test_placement_faults.py:{Shed.twice.method.__code__.co_firstlineno})"
    first, second = raised.value.why.split("\n")
    assert first.startswith("shed.twice (")
    assert first.endswith(declared)
    assert second == "shed.name"


def test_a_line_shown_twice_and_at_home_once_is_fine(tmp_path: Path) -> None:
    lay_out(read_templates(folder(tmp_path, '"shed.twice"]', '"shed.twice", "show:shed.twice", "show:shed.twice"]')))


CROSSED = """
[[block]]
kind = "table"
title = "Flushes"
axis = "flush"
lines = ["crosswise.share"]
[[block]]
kind = "matrix"
lines = ["crosswise.both"]
[[block]]
kind = "table"
title = "Crossed"
axis = "week"
lines = ["crosswise.crossed"]
"""


def test_ranges_that_lie_crosswise_are_refused(tmp_path: Path) -> None:
    """A spreadsheet would multiply each cell of the one by each of the other, and say nothing."""
    found = work_out(Model([Shed, Crosswise]), "metric", SIZES, {})
    files = folder(tmp_path)
    (files / "10_start.toml").write_text(FILES["10_start.toml"] + CROSSED, encoding="utf-8")
    with pytest.raises(ModelFault) as raised:
        found.written(tmp_path / "crossed.xlsx", read_templates(files), "shed.heading")
    assert raised.value.what == "ranges over flush lie crosswise in line `crosswise.crossed`"
    why = "`crosswise.share` runs down its sheet and `crosswise.both` across; make a line of their product"
    assert raised.value.why == why
    assert raised.value.where.endswith(f"test_placement_faults.py:{Crosswise.crossed.method.__code__.co_firstlineno}")


def test_a_result_that_is_no_number_is_never_written(tmp_path: Path) -> None:
    found = work_out(Model([Shed]), "metric", SIZES, {})
    found = replace(found, values={**found.values, found.line("shed.twice"): np.array([np.nan])})
    with pytest.raises(ModelFault, match=r"`shed\.twice` comes to no number in this scenario"):
        found.written(tmp_path / "none.xlsx", read_templates(folder(tmp_path)), "shed.heading")
