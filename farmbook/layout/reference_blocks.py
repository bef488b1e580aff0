"""Blocks that speak of the book itself: paragraphs, cautions, checks, contents, constants, sources, the legend of looks, the stamp."""

from __future__ import annotations

from farmbook.expr.lower import constant_value, factor_value
from farmbook.expr.nodes import Constant, Factor, Line, Named
from farmbook.interpret.formula import factor_name, workbook_name
from farmbook.layout.book import Figure, Formula, Home, Link, Text, Worked
from farmbook.layout.page import HOW, LABEL, NAME, NOTE, UNIT, VALUE, Page, Plan
from farmbook.layout.template import Block
from farmbook.sources import Source, source_of
from farmbook.units import SYMBOLS, Unit, displayed

__all__ = [
    "cautions_block", "checks_block", "constants_block", "contents_block", "legend_block", "sources_block", "stamp_block", "text_block",
]  # fmt: skip

LEGEND = {
    "input": "Type here. Straw fill and a box: a number, a word from a list, or a name.",
    "worked": "Worked out on this line; locked.",
    "shown": "Italic: repeated from the sheet where it is worked out.",
    "opening": "Dotted box beside a table: the value before the first row or column.",
    "check": "Boxed and bold: a check, 1 when all is well, 0 when not.",
    "fixed": "Grey with dotted box: fixed when the book was made; change it in the scenario file and build again.",
    "limit": "Small and grey: the usual range. A value outside it is flagged in words, not refused.",
}


def text_block(page: Page, block: Block) -> None:
    """Paragraphs across the grid."""
    page.heading(block.title)
    for paragraph in block.paragraphs:
        page.words(page.row, LABEL, paragraph, "paragraph", across=len(page.sheet.widths) - 1)
        page.row += 1
    page.row += 1


def cautions_block(page: Page, block: Block) -> None:
    """Cautions, one a row, each with a box to tick on paper."""
    page.heading(block.title)
    for paragraph in block.paragraphs:
        page.words(page.row, LABEL, paragraph, "caution", across=len(page.sheet.widths) - 2)
        page.words(page.row, len(page.sheet.widths) - 2, " [  ] seen to", "unit", across=2)
        page.row += 1
    page.row += 1


def checks_block(page: Page, block: Block) -> None:
    """Every check of one kind, with its result, and in words what is wrong."""
    page.heading(block.title)
    page.put(page.row, VALUE, Text("1 = well"), "column_head_right")
    page.heads(
        page.row,
        [
            (LABEL, "Check", 1),
            (UNIT, "Kind", 1),
            (HOW, "In words", 4),
            (NOTE, "What it looks at", 3),
            (NAME, "Name", 1),
        ],
    )
    page.row += 1
    for check, says in page.plan.model.checks.items():
        if check.kind == block.of:
            _check_row(page, check, says)
            page.row += 1
    page.row += 1


def _check_row(page: Page, check: Line, says: Line) -> None:
    row, plan = page.row, page.plan
    page.words(row, LABEL, check.label, "label")
    page.put(row, VALUE, Worked(check, ()), "check", form="0")
    page.words(row, UNIT, check.kind, "unit")
    page.put(row, HOW, Worked(says, ()), "worked_text", across=4)
    page.grow(row, 40)
    page.words(row, NOTE, check.note, "words", across=3)
    page.words(row, NAME, workbook_name(check), "name")
    for line, column in ((check, VALUE), (says, HOW)):
        plan.settle(line, Home(page.sheet.name, row, column, label_column=LABEL))
        page.name(workbook_name(line), row, column)


def contents_block(page: Page, block: Block) -> None:
    """All sheets with links and the question each answers."""
    page.heading(block.title)
    for name, title, question in page.plan.sheets:
        page.put(page.row, LABEL, Link(name, name), "link")
        page.words(page.row, VALUE, title, "paragraph", across=4)
        page.words(page.row, VALUE + 4, question, "paragraph", across=5)
        page.row += 1
    page.row += 1


def legend_block(page: Page, block: Block) -> None:
    """A sample of each look and what it means."""
    page.heading(block.title)
    for look, meaning in LEGEND.items():
        page.put(page.row, LABEL, Text(look_sample(look)), look if look != "input" else "input_sample")
        page.words(page.row, VALUE, meaning, "paragraph", across=8)
        page.row += 1
    page.row += 1


def look_sample(look: str) -> str:
    """What stands in the sample cell."""
    return {"input": "123 (an input looks like this)", "check": "1", "limit": "10 to 20"}.get(look, "123")


def stamp_block(page: Page, block: Block) -> None:
    """What was fixed when the book was made."""
    page.heading(block.title)
    for label, words in page.plan.stamp.items():
        page.words(page.row, LABEL, label, "label")
        page.put(page.row, VALUE, Text(words), "fixed", across=4)
        page.row += 1
    page.row += 1


def constants_block(page: Page, block: Block) -> None:
    """Every coefficient that a formula names, and every conversion factor, each in its own cell."""
    page.heading(block.title or "Coefficients")
    heads = [(LABEL, "Constant", 1), (UNIT, "Unit", 1), (HOW, "Source", 4), (NOTE, "Note", 3), (NAME, "Name", 1)]
    page.put(page.row, VALUE, Text("Value"), "column_head_right")
    page.heads(page.row, heads)
    page.row += 1
    for constant in constants_used(page.plan):
        unit = displayed(constant.unit, page.plan.system) if constant.unit.point else constant.unit
        value = Figure(constant_value(constant, page.plan.system))
        source = "" if not constant.source else sentence(source_of(constant.source))
        _constant_row(page, constant.label, value, unit.shown(page.plan.currency), source, constant.note, constant.name)
        page.plan.constants[constant.name] = constant
    page.row += 1
    page.heading("Conversions between units")
    factors = factors_used(page.plan)
    singles = sorted({((name, 1),) for factor in factors for name, _ in factor.powers})
    for powers in singles:
        name = powers[0][0]
        base = base_words(name)
        _constant_row(
            page,
            f"1 {SYMBOLS[name].shown} in {base}",
            Figure(float(SYMBOLS[name].size)),
            base,
            "Exact by definition.",
            "",
            factor_name(powers),
        )
    for factor in factors:
        if factor.powers not in singles:
            text = "*".join(_term(name, power) for name, power in sorted(factor.powers, key=lambda each: -each[1]))
            formula = Formula(text, float(factor_value(factor.powers)))
            _constant_row(
                page,
                f"Conversion {Unit(factor.powers).shown()}",
                formula,
                "factor",
                "Made of the exact factors above.",
                "",
                factor_name(factor.powers),
            )


def _term(name: str, power: int) -> str:
    own = factor_name(((name, 1),))
    return own if power == 1 else f"{own}^({power})"


def _constant_row(
    page: Page, label: str, value: Figure | Formula, unit: str, source: str, note: str, name: str
) -> None:
    page.words(page.row, LABEL, label, "label")
    page.put(page.row, VALUE, value, "worked", form="General")
    page.words(page.row, UNIT, unit, "unit")
    page.words(page.row, HOW, source, "words", across=4)
    page.words(page.row, NOTE, note, "words", across=3)
    page.words(page.row, NAME, name, "name")
    page.name(name, page.row, VALUE)
    page.row += 1


def base_words(symbol: str) -> str:
    """The base unit behind a symbol, in words."""
    parts = [
        f"{SYMBOLS[base].shown if base in SYMBOLS else base}{power if power not in (1, -1) else ''}"
        for base, power in _ordered(symbol)
    ]
    signs = [power for _, power in _ordered(symbol)]
    return "".join(
        ("/" if sign < 0 else " x " if position else "") + part
        for position, (part, sign) in enumerate(zip(parts, signs, strict=True))
    )


def _ordered(symbol: str) -> list[tuple[str, int]]:
    return sorted(SYMBOLS[symbol].measures, key=lambda each: -each[1])


def constants_used(plan: Plan) -> list[Constant]:
    """Every constant that some line names, once, in reading order."""
    found: dict[str, Constant] = {}
    for node in plan.nodes:
        if isinstance(node, Named):
            found.setdefault(node.constant.name, node.constant)
    return list(found.values())


def factors_used(plan: Plan) -> list[Factor]:
    """Every conversion factor that some line needs, once."""
    found = {node.powers: node for node in plan.nodes if isinstance(node, Factor)}
    return [found[powers] for powers in sorted(found)]


def sentence(source: Source) -> str:
    """A source in one line."""
    parts = [source.title, source.author, str(source.year) if source.year else "", source.place]
    return ", ".join(part for part in parts if part) + "."


def sources_block(page: Page, block: Block) -> None:
    """Every source that a line, an input or a constant of this book rests on."""
    page.heading(block.title)
    page.heads(
        page.row,
        [
            (LABEL, "Source", 1),
            (VALUE, "Author, year and place", 6),
            (VALUE + 6, "How it is known", 2),
            (NAME - 1, "Used by", 2),
        ],
    )
    page.row += 1
    for source, users in sources_used(page.plan).items():
        page.words(page.row, LABEL, source.title, "label")
        parts = (source.author, str(source.year) if source.year else "", source.place)
        page.words(page.row, VALUE, ", ".join(part for part in parts if part), "paragraph", across=6)
        page.words(page.row, VALUE + 6, source.how_known, "paragraph", across=2)
        shown = ", ".join(users[:3]) + (f" and {len(users) - 3} more" if len(users) > 3 else "")
        page.words(page.row, NAME - 1, shown, "words", across=2)
        page.row += 1


def sources_used(plan: Plan) -> dict[Source, list[str]]:
    """Each source and the names of what rests on it."""
    found: dict[Source, list[str]] = {}
    for line in plan.roots:
        if line.source:
            found.setdefault(source_of(line.source), []).append(line.name)
    for declared, bound in plan.model.inputs.items():
        if declared.source is not None:
            found.setdefault(declared.source, []).append(bound.cell.name)
    for constant in constants_used(plan):
        if constant.source:
            found.setdefault(source_of(constant.source), []).append(constant.name)
    return found
