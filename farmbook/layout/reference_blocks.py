"""Blocks that speak of the book itself: paragraphs, cautions, checks, contents, constants, sources, the legend of looks, the stamp."""

from __future__ import annotations

from farmbook.expr.lower import constant_value, factor_value
from farmbook.expr.nodes import Constant, Factor, Line, Named
from farmbook.interpret.formula import factor_name, workbook_name
from farmbook.layout.book import Figure, Formula, Home, Link, Shown, Text, Worked
from farmbook.layout.grid import HOW, HOW_COLUMNS, LABEL, NAME, NUMBER, UNIT, VALUE
from farmbook.layout.list_blocks import sentences
from farmbook.layout.page import Page, Plan
from farmbook.layout.template import Block
from farmbook.sources import Source, source_of
from farmbook.units import SYMBOLS, Unit, displayed

__all__ = [
    "cautions_block", "checks_block", "constants_block", "contents_block", "glance_block", "legend_block", "sources_block",
    "stamp_block", "text_block",
]  # fmt: skip

LEGEND = {
    "input_sample": "Straw with a box: type here. A number, a word from a list, or a name.",
    "assumed_sample": "White with the same box: type here too. The figure is the book's, until you say how you know yours.",
    "choice_sample": "Cream: how you know a figure; pick a word.",
    "worked": "A rule under it: worked out on this line; locked.",
    "limit": "Small and grey: the usual range. A value outside it is marked, not refused.",
    "fixed": "On the band: fixed when the book was made; change it in the scenario file and build again.",
}
LEGEND_SAMPLES = {"choice_sample": "measured", "limit": "10 to 20", "fixed": "metric"}


ALL = HOW + HOW_COLUMNS
"""Columns of a sheet that print."""
CHECK_FORM = '"holds";;"LOOK"'
GLANCE_HEIGHT = 16


def text_block(page: Page, block: Block) -> None:
    """Paragraphs across the grid."""
    page.heading(block.title)
    for paragraph in block.paragraphs:
        page.words(page.row, LABEL, paragraph, "paragraph", across=page.sheet.grid.printed - LABEL)
        page.row += 1


def cautions_block(page: Page, block: Block) -> None:
    """Cautions, one a row, each with a box to tick on paper."""
    page.heading(block.title)
    for paragraph in block.paragraphs:
        page.words(page.row, NUMBER, "[  ]", "number")
        page.words(page.row, LABEL, paragraph, "caution", across=ALL - LABEL)
        page.row += 1


def glance_block(page: Page, block: Block) -> None:
    """Every check of one kind on one line, in two columns down the sheet; where it is looked into stands elsewhere."""
    page.heading(block.title)
    checks = [check for check in page.plan.model.checks if check.kind == block.of]
    rows = -(-len(checks) // 2)
    for at, check in enumerate(checks):
        row, right = page.row + at % rows, at >= rows
        label, state = (HOW, ALL - 1) if right else (NUMBER, UNIT)
        page.sheet.heights[row] = GLANCE_HEIGHT
        page.ruled(row, label, check.label, "glance", across=state - label)
        page.put(row, state, Shown(check, ()), "glance_state", form=CHECK_FORM)
    page.row += rows


def checks_block(page: Page, block: Block) -> None:
    """Every check of one kind, with its result, and in words what is wrong."""
    page.heading(block.title)
    for check, says in page.plan.model.checks.items():
        if check.kind == block.of:
            _check_row(page, check, says)
            page.row += 1


def _check_row(page: Page, check: Line, says: Line) -> None:
    row, plan = page.row, page.plan
    page.ruled(row, NUMBER, "", "number")
    page.put(row, LABEL, Text(check.label), "label")
    page.put(row, VALUE, Worked(check, ()), "check", form=CHECK_FORM)
    page.ruled(row, UNIT, check.note, "words", across=3)
    page.put(row, UNIT + 3, Worked(says, ()), "worked_text", across=4)
    for sentence in sentences(says):
        page.room(row, UNIT + 3, sentence, "worked_text", across=4)
    page.words(row, NAME, workbook_name(check), "name")
    for line, column in ((check, VALUE), (says, UNIT + 3)):
        plan.settle(line, Home(page.sheet.name, row, column, label_column=LABEL))
        page.name(workbook_name(line), row, column)


def contents_block(page: Page, block: Block) -> None:
    """All sheets with links and the question each answers."""
    page.heading(block.title)
    for name, _, question in page.plan.sheets:
        page.put(page.row, LABEL, Link(name, name), "link")
        page.words(page.row, VALUE, question, "paragraph", across=ALL - VALUE)
        page.row += 1


def legend_block(page: Page, block: Block) -> None:
    """A sample of each look and what it means."""
    page.heading(block.title)
    for look, meaning in LEGEND.items():
        page.put(page.row, VALUE, Text(LEGEND_SAMPLES.get(look, "123")), look)
        page.words(page.row, UNIT, meaning, "paragraph", across=ALL - UNIT)
        page.row += 1


def stamp_block(page: Page, block: Block) -> None:
    """What was fixed when the book was made."""
    page.heading(block.title)
    for label, words in page.plan.stamp.items():
        page.words(page.row, LABEL, label, "label")
        page.put(page.row, VALUE, Text(words), "fixed", across=ALL - VALUE)
        page.name(f"book_{label.lower().replace(' ', '_')}", page.row, VALUE)
        page.row += 1


def constants_block(page: Page, block: Block) -> None:
    """Every coefficient that a formula names, and every conversion factor, each in its own cell."""
    page.heading(block.title or "Coefficients")
    for constant in constants_used(page.plan):
        unit = displayed(constant.unit, page.plan.system) if constant.unit.point else constant.unit
        value = Figure(constant_value(constant, page.plan.system))
        source = "" if not constant.source else sentence(source_of(constant.source))
        _constant_row(page, constant.label, value, unit.shown(page.plan.currency), source, constant.note, constant.name)
        page.plan.constants[constant.name] = constant
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
    page.ruled(page.row, NUMBER, "", "number")
    page.put(page.row, LABEL, Text(label), "label")
    page.put(page.row, VALUE, value, "worked", form="General")
    page.put(page.row, UNIT, Text(unit), "unit")
    page.ruled(page.row, HOW, f"{source} {note}".strip(), "words", across=HOW_COLUMNS)
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
    for source, users in sources_used(page.plan).items():
        page.ruled(page.row, LABEL, source.title, "label", across=3)
        parts = (source.author, str(source.year) if source.year else "", source.place)
        page.ruled(page.row, HOW, ", ".join(part for part in parts if part), "words", across=3)
        shown = ", ".join(users[:3]) + (f" and {len(users) - 3} more" if len(users) > 3 else "")
        page.ruled(page.row, HOW + 3, f"{source.how_known}. Used by {shown}", "words", across=3)
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
