"""Sheet templates: one text file (TOML) for each sheet, in reading order; read and checked here."""

from __future__ import annotations

import tomllib
from collections.abc import Collection, Sequence
from dataclasses import dataclass, field, replace
from functools import cache
from pathlib import Path
from typing import Any, Final

from farmbook.errors import ModelFault

__all__ = [
    "PLAIN",
    "Block",
    "Template",
    "fitting",
    "read_templates",
    "reading_order",
    "shipped_templates",
    "starter",
    "template_folder",
]

KINDS: Final = {
    "list", "table", "across", "matrix", "text", "cautions", "inputs", "input_table", "checks", "contents", "constants", "sources",
    "glance", "legend", "stamp", "chart", "compare", "case", "cases", "front", "says", "matters", "matters_chart", "matters_left_out",
    "months", "years", "weeks", "card", "limits",
}  # fmt: skip
CLASSES: Final = (
    "start",
    "inputs",
    "worked",
    "checks",
    "reference",
    "months",
    "years",
    "weeks",
    "card",
    "bank",
    "statement",
)
KEYS: Final = ("sheet", "title", "question", "class", "answer", "comes_to", "unsaid", "prints", "heads", "only")
ON_OWN_GRID: Final = {
    "months": {"months", "text"},
    "years": {"years", "chart", "text"},
    "weeks": {"weeks", "text"},
    "card": {"card", "text"},
}
"""Of classes with a grid of their own, the kinds of block that stand on it; they stand on no other."""
PLAIN: Final = "plain"
"""The look of a block whose rows are only read: a card has nothing to tick or to write in, a table no words beside it."""
NEEDED: Final = {
    "list": ("lines",), "table": ("axis", "lines"), "across": ("axis", "lines"), "matrix": ("lines",), "text": ("paragraphs",),
    "cautions": ("paragraphs",), "inputs": ("inputs",), "input_table": ("inputs",), "checks": ("of",), "chart": ("title",),
    "compare": ("heads", "rows"), "limits": ("heads", "told", "rows", "spans"),
    "glance": ("of",), "case": ("of",), "cases": ("cases", "heads"), "front": ("title", "rows", "bars"), "says": ("lines",),
    "matters": ("title", "first"), "matters_chart": ("title", "first"), "matters_left_out": ("title",),
    "years": ("title", "heads", "lines"), "weeks": ("title",),
    "card": ("title",),
}  # fmt: skip


@dataclass(frozen=True)
class Block:
    """One block of a sheet; those `below` stand under what is printed, a chart may stand `beside` what the sheet comes to.

    Of what matters, so many stand `first`, `after` so many that stand elsewhere; of a table that ends a print, the `first` rows
    print. Of the rows of years, `levels` end a year as its last month does, `rates` are not added up, `totals` are bold under a
    rule, and `lowest` is marked in its lowest month. A chart of columns draws its `lowest` dark over them; one of lines has their
    names at their end, or their `start`. A card has boxes for the `days` of a week, and so many rows left `blank`. A block, like a
    sheet, may stand `only` in books with that part of the model. Of limits, `told` has the words of each row.
    """

    kind: str
    title: str = ""
    lines: tuple[str, ...] = ()
    inputs: tuple[str, ...] = ()
    axis: str = ""
    paragraphs: tuple[str, ...] = ()
    of: str = ""
    look: str = ""
    series: tuple[dict[str, str], ...] = ()
    axis_title: str = ""
    value_title: str = ""
    heads: tuple[str, ...] = ()
    rows: tuple[list[str], ...] = ()
    told: tuple[list[str], ...] = ()
    below: bool = False
    beside: bool = False
    bars: tuple[list[str], ...] = ()
    across: str = ""
    marks: tuple[list[str], ...] = ()
    form: str = "lines"
    cases: tuple[str, ...] = ()
    spans: tuple[int, ...] = ()
    signed: bool = False
    first: int = 0
    after: int = 0
    levels: tuple[str, ...] = ()
    rates: tuple[str, ...] = ()
    totals: tuple[str, ...] = ()
    lowest: str = ""
    start: bool = False
    days: bool = False
    blank: int = 0
    only: str = ""


@dataclass(frozen=True)
class Template:
    """One sheet as its file describes it: `answer` names its sentence, `comes_to` the lines that stand at its head.

    Its labels leave out the words `unsaid`, which the title says. A sheet of which `prints` is false is for the screen. `heads`
    are lines that stay on the screen above all months, or left of all weeks.
    """

    path: str
    sheet: str
    title: str
    question: str
    kind: str
    blocks: tuple[Block, ...] = field(default_factory=tuple)
    answer: str = ""
    comes_to: tuple[str, ...] = ()
    unsaid: tuple[str, ...] = ()
    prints: bool = True
    heads: tuple[str, ...] = ()
    only: str = ""

    @property
    def homes(self) -> list[str]:
        """The lines that live on this sheet."""
        listed = [name for block in self.blocks for name in block.lines]
        compared = [name for block in self.blocks for row in block.rows for name in row[1:]]
        said = [self.answer] if self.answer else []
        return [name for name in (*said, *self.heads, *listed, *compared) if not name.startswith("show:")]


def starter(units: str) -> str:
    """The scenario file to start from, in these units."""
    return (template_folder() / f"starter_{units}.txt").read_text(encoding="utf-8")


def template_folder() -> Path:
    """The folder of templates: package data in an installed wheel, else beside the package."""
    inside = Path(__file__).resolve().parent.parent / "templates_src"
    beside = Path(__file__).resolve().parent.parent.parent / "templates_src"
    for folder in (inside, beside):
        if folder.is_dir():
            return folder
    raise ModelFault("the sheet templates are missing from this installation", why=f"looked for {inside.name}/")


def read_templates(folder: Path | None = None) -> list[Template]:
    """All templates in the order of their file names; raises ModelFault naming the file at fault."""
    folder = folder or template_folder()
    found = [_read(path) for path in sorted(folder.glob("*.toml"))]
    if not found:
        raise ModelFault("no sheet templates found", where=folder.name)
    sheets = [template.sheet for template in found]
    for sheet in sheets:
        if sheets.count(sheet) > 1:
            raise ModelFault(f"two templates make a sheet called `{sheet}`")
    return found


@cache
def shipped_templates() -> tuple[Template, ...]:
    """The templates of this installation, read once."""
    return tuple(read_templates())


def fitting(templates: Sequence[Template], parts: Collection[str]) -> list[Template]:
    """The sheets, and their blocks, of a book with these parts of the model."""
    kept = ("", *parts)
    return [
        replace(template, blocks=tuple(block for block in template.blocks if block.only in kept))
        for template in templates
        if template.only in kept
    ]


def reading_order(template: Template) -> list[Block]:
    """The blocks of a sheet from the top: what is printed, then what stands below."""
    return sorted(template.blocks, key=lambda block: block.below)


def _read(path: Path) -> Template:
    try:
        data = tomllib.loads(path.read_text(encoding="utf-8"))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise ModelFault("a sheet template cannot be read", where=path.name, why=str(error)) from None
    blocks = tuple(_block(block, path) for block in data.pop("block", []))
    missing = [key for key in ("sheet", "title", "question", "class") if key not in data]
    unknown = [key for key in data if key not in KEYS]
    if missing or unknown:
        raise ModelFault(f"sheet template: missing {missing}, unknown {unknown}", where=path.name)
    if data["class"] not in CLASSES or not str(data["sheet"]).isalpha() or len(data["sheet"]) > 20:
        raise ModelFault(
            f"sheet `{data['sheet']}`: the name takes letters only, the class is one of {CLASSES}", where=path.name
        )
    _stand_on_their_grid(data, blocks, path)
    return Template(
        path.name,
        data["sheet"],
        data["title"],
        data["question"],
        data["class"],
        blocks,
        data.get("answer", ""),
        tuple(data.get("comes_to", ())),
        tuple(data.get("unsaid", ())),
        data.get("prints", True),
        tuple(data.get("heads", ())),
        data.get("only", ""),
    )


def _stand_on_their_grid(data: dict[str, Any], blocks: tuple[Block, ...], path: Path) -> None:
    """Refuse blocks on a grid that is not theirs, and workings by week or month without heads."""
    kind = data["class"]
    own = set().union(*ON_OWN_GRID.values()) - {"text", "chart"}
    fit = ON_OWN_GRID.get(kind, KINDS - own)
    for block in blocks:
        if block.kind not in fit:
            raise ModelFault(f"a block of kind `{block.kind}` stands on no sheet of class `{kind}`", where=path.name)
    if (kind in ("months", "weeks")) != bool(data.get("heads")):
        raise ModelFault(
            f"a sheet of class `{kind}` {'takes no' if data.get('heads') else 'needs'} heads", where=path.name
        )
    if kind in ON_OWN_GRID and (data.get("comes_to") or any(block.beside or block.bars for block in blocks)):
        raise ModelFault(f"a sheet of class `{kind}` has no room for what it comes to, nor for bars", where=path.name)
    if kind == "weeks" and data.get("prints", True):
        raise ModelFault("a sheet of all weeks does not print; say so", where=path.name)


def _block(data: dict[str, Any], path: Path) -> Block:
    kind = data.get("kind", "")
    if kind not in KINDS:
        raise ModelFault(f"unknown kind of block `{kind}`", where=path.name)
    lacking = [key for key in NEEDED.get(kind, ()) if not data.get(key)]
    fields = Block.__dataclass_fields__
    unknown = [key for key in data if key not in fields]
    listed = [key for key in data if key in fields and isinstance(data[key], list) != (fields[key].default == ())]
    if listed:
        raise ModelFault(f"block `{data.get('title', kind)}`: a list, or not one, in {listed}", where=path.name)
    if lacking or unknown:
        raise ModelFault(f"block `{data.get('title', kind)}`: missing {lacking}, unknown {unknown}", where=path.name)
    values: dict[str, Any] = {key: tuple(value) if isinstance(value, list) else value for key, value in data.items()}
    return Block(**values)
