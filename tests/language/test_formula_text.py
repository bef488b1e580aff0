"""Formulas and sentences to the letter, one case for each node at least."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from farmbook.expr import functions as f
from farmbook.expr import nodes as n
from farmbook.expr.axis import Axis
from farmbook.expr.lower import lower
from farmbook.expr.ranking import before, nth_label, nth_value, preference_key, ranking_key
from farmbook.expr.walk import ordered_axes
from farmbook.interpret.formula import formula_of
from farmbook.interpret.words import sentence_of
from farmbook.layout.book import Home
from farmbook.units import unit
from farmbook.workbook.address import Addresses

ROW = Axis("row", "row", "down", 10, named=True)
COLUMN = Axis("column", "column", "across", 20, members=("left", "right"))
FLUSH = Axis("flush", "flush", "down", 30, ordered=True, members=("first", "second"))
MONTH = Axis("month", "month", "across", 90, ordered=True, members=("1", "2", "3"))
WEEK = Axis("week", "week", "down", 95, ordered=True, members=("1", "2", "3", "4"))

KETTLE = n.Constant(2.5, "kettle_size", label="Kettle size", unit=unit("1"), source="arithmetic")
WAITED = n.Constant(1, "last_week", label="Last week", unit=unit("1"), source="arithmetic")


def line(name: str, of: str = "1", *axes: Axis, build: n.Expr | None = None) -> n.Line:
    """A line; without an expression one that is typed in elsewhere."""
    label = name.partition(".")[2].replace("_", " ").capitalize()
    return n.Line(name, label, unit(of), axes, lambda: n.Number(0) if build is None else build)


def cell(name: str, kind: str, *axes: Axis) -> n.RawInput:
    return n.RawInput(name, name.partition(".")[2].capitalize(), kind, unit("1"), axes)


A, B, C = line("bag.a"), line("bag.b"), line("bag.c")
WET, DRY, DAYS = line("bag.wet", "kg_wet"), line("bag.dry", "kg_dry"), line("bag.days", "day")
WARM, RISE = line("room.warm", "degC"), line("room.rise", "delta_degC")
ROWS, OTHER, GRID = line("mix.rows", "1", ROW), line("mix.other", "1", ROW), line("mix.grid", "1", ROW, COLUMN)
FLUSHES, MONTHS, WEEKS = (
    line("crop.flushes", "1", FLUSH),
    line("cash.months", "1", MONTH),
    line("plan.weeks", "1", WEEK),
)
WET_WEEKS = line("plan.wet", "kg_wet", WEEK)
ACROSS = line("cash.across", "1", ROW, MONTH, build=f.starting(A, ROWS * MONTHS))
TURNED = line("plan.turned", "1", FLUSH, WEEK)
CASH = line("cash.closing", "1", MONTH, build=f.starting(A, f.previous(MONTHS, MONTH)))
WORDED = line("mix.worded", "1", ROW, build=n.Label(n.RawInput("mix.row", "Row", "text", unit("1"), (ROW,)), "spare"))
NUMBER, WORD, NAMES, BASIS = (
    cell("bag.own", "number"),
    cell("bag.supply", "choice"),
    cell("mix.row", "text", ROW),
    cell("mix.basis", "basis", ROW),
)
LOW = cell("bag.own_low", "low")
FLAGS = (line("bag.own_flag"), line("bag.wet_flag"))

HOMES: Mapping[n.Line | n.RawInput, Home] = {
    A: Home("Bag", 5, 1),
    B: Home("Bag", 6, 1),
    C: Home("Bag", 7, 1),
    NUMBER: Home("Inputs", 5, 1),
    LOW: Home("Inputs", 5, 3),
    FLAGS[0]: Home("Inputs", 5, 5),
    FLAGS[1]: Home("Inputs", 8, 5),
    ROWS: Home("Mix", 9, 1, (ROW,), (4,)),
    OTHER: Home("Mix", 9, 2, (ROW,), (4,)),
    WORDED: Home("Mix", 9, 3, (ROW,), (4,)),
    NAMES: Home("Tables", 9, 0, (ROW,), (4,)),
    BASIS: Home("Tables", 9, 3, (ROW,), (4,)),
    GRID: Home("Mix", 19, 1, (ROW, COLUMN), (4, 2)),
    FLUSHES: Home("Crop", 9, 1, (FLUSH,), (2,)),
    MONTHS: Home("Cash", 9, 2, (MONTH,), (3,)),
    CASH: Home("Cash", 11, 2, (MONTH,), (3,)),
    ACROSS: Home("Cash", 19, 2, (ROW, MONTH), (4, 3)),
    WEEKS: Home("Plan", 9, 1, (WEEK,), (4,)),
    WET_WEEKS: Home("Plan", 9, 3, (WEEK,), (4,)),
    TURNED: Home("Plan", 29, 1, (FLUSH, WEEK), (2, 4), turned=(FLUSH,)),
}
OWN: Mapping[tuple[Axis, ...], Home] = {
    (): Home("Sum", 3, 1),
    (ROW,): Home("Mix", 9, 6, (ROW,), (4,)),
    (COLUMN,): Home("Mix", 4, 1, (COLUMN,), (2,)),
    (FLUSH,): Home("Crop", 9, 5, (FLUSH,), (2,)),
    (MONTH,): Home("Cash", 30, 2, (MONTH,), (3,)),
    (WEEK,): Home("Plan", 9, 4, (WEEK,), (4,)),
    (ROW, COLUMN): Home("Mix", 29, 1, (ROW, COLUMN), (4, 2)),
    (FLUSH, WEEK): Home("Plan", 49, 1, (FLUSH, WEEK), (2, 4), turned=(FLUSH,)),
    (FLUSH, MONTH): Home("Cash", 49, 2, (FLUSH, MONTH), (2, 3)),
}


def text_of(expr: n.Expr, of: str = "1", *axes: Axis, system: str = "metric", opening: bool = False) -> str:
    """The formula in the second cell along every list of a line; with `opening`, in its opening cell."""
    own = line("own.line", of, *axes, build=expr)
    found = formula_of(own, lower(own, system))
    addresses = Addresses({**HOMES, own: OWN[ordered_axes(axes)]})
    if opening:
        assert found.opening is not None
        return addresses.filling(found.opening, own).at(tuple(-1 if axis.ordered else 1 for axis in ordered_axes(axes)))
    return addresses.filling(found.step, own).at((1,) * len(axes))


TEXTS: Mapping[str, tuple[str, str]] = {
    "a number": (text_of(n.Number(-1)), "-1"),
    "a constant": (text_of(f.named(KETTLE) * A), "kettle_size*bag_a"),
    "a single line goes by its name": (text_of(A + B), "bag_a+bag_b"),
    "a sum needs no brackets": (text_of(A + (B + C)), "bag_a+bag_b+bag_c"),
    "a difference keeps them": (text_of(A - (B - C)), "bag_a-(bag_b-bag_c)"),
    "of a sum": (text_of(A - (B + C)), "bag_a-(bag_b+bag_c)"),
    "from the left": (text_of(A - B - C), "bag_a-bag_b-bag_c"),
    "a product of sums": (text_of((A + B) * (A - C)), "(bag_a+bag_b)*(bag_a-bag_c)"),
    "a quotient by a product": (text_of(A / (B * C)), "bag_a/(bag_b*bag_c)"),
    "a quotient by a quotient": (text_of(A / (B / C)), "bag_a/(bag_b/bag_c)"),
    "a quotient of a quotient": (text_of(A / B / C), "bag_a/bag_b/bag_c"),
    "a guarded quotient": (text_of(f.ratio(A + B, B - C)), "IF(bag_b-bag_c=0,0,(bag_a+bag_b)/(bag_b-bag_c))"),
    "with another answer": (text_of(f.ratio(A, B * C, otherwise=C)), "IF(bag_b*bag_c=0,bag_c,bag_a/(bag_b*bag_c))"),
    "minus a square": (text_of(-(A**2)), "(-1)*bag_a^2"),
    "the square of minus": (text_of((-A) ** 2), "((-1)*bag_a)^2"),
    "a power of a power": (text_of((A**2) ** B), "(bag_a^2)^bag_b"),
    "to a power of a power": (text_of(2 ** (A**2)), "2^(bag_a^2)"),
    "to minus one": (text_of(A**-1), "bag_a^(-1)"),
    "minus one to a power": (text_of(n.Power(n.Number(-1), A)), "(-1)^bag_a"),
    "a comparison is a number": (text_of(A < B), "(bag_a<bag_b)*1"),
    "unless something is worked out with it": (text_of(C * (A >= B) + 1), "bag_c*(bag_a>=bag_b)+1"),
    "all": (text_of(f.all_of(A <= B, C > 0)), "AND((bag_a<=bag_b),(bag_c>0))*1"),
    "any": (text_of(f.any_of(A, B)), "OR(bag_a,bag_b)*1"),
    "not": (text_of(f.negation(A > B)), "NOT((bag_a>bag_b))*1"),
    "a choice by a comparison": (text_of(f.where(A > B, A, B)), "IF((bag_a>bag_b),bag_a,bag_b)"),
    "a choice by a line": (text_of(f.where(A, B, 0)), "IF(bag_a<>0,bag_b,0)"),
    "the smaller": (text_of(f.minimum(A, 1)), "MIN(bag_a,1)"),
    "the larger": (text_of(f.maximum(A - B, 0)), "MAX(bag_a-bag_b,0)"),
    "half way": (text_of(f.mean(A, B)), "AVERAGE(bag_a,bag_b)"),
    "the size": (text_of(f.absolute(A)), "ABS(bag_a)"),
    "rounded up": (text_of(f.whole_up(A / B)), "ROUNDUP(ROUND(bag_a/bag_b,9),0)"),
    "rounded down": (text_of(f.whole_down(A)), "INT(ROUND(bag_a,9))"),
    "rounded to the nearest": (text_of(f.whole_near(A)), "ROUND(ROUND(bag_a,9),0)"),
    "the month": (text_of(f.calendar_month(line("bag.a", "date"))), "MONTH(bag_a)"),
    "the first of a month": (text_of(f.month_start(line("bag.a", "date"), B), "date"), "(EOMONTH(bag_a,bag_b-1)+1)"),
    "a key to rank by": (text_of(ranking_key(A, KETTLE, B)), "ROUND(ROUND(bag_a,9),0)*bag_b-kettle_size"),
    "a key of what may be absent": (
        text_of(ranking_key(A, KETTLE, B, C)),
        "IF(bag_c<>0,ROUND(ROUND(bag_a,9),0)*bag_b,below_all_ranks)-kettle_size",
    ),
    "the largest value": (
        text_of(nth_value((A, B), 1, C, (B, C))),
        "IF(1<=bag_c,INDEX(Bag!$B$7:$B$8,MATCH(LARGE(Bag!$B$6:$B$7,1),Bag!$B$6:$B$7,0),1),0)",
    ),
    "the label of the largest": (
        text_of(nth_label((A, B), A, C, (B, C), "none")),
        'IF(bag_a<=bag_c,INDEX(Bag!$A$7:$A$8,MATCH(LARGE(Bag!$B$6:$B$7,bag_a),Bag!$B$6:$B$7,0),1),"none")',
    ),
    "the largest of a list": (
        text_of(nth_value((ROWS,), 1, C, (OTHER,))),
        "IF(1<=bag_c,INDEX(Mix!$C$10:$C$13,MATCH(LARGE(Mix!$B$10:$B$13,1),Mix!$B$10:$B$13,0),1),0)",
    ),
    "the text of the largest of a list": (
        text_of(nth_value((ROWS,), FLUSHES, C, (WORDED,), "none"), "1", FLUSH),
        'IF($B11<=bag_c,INDEX(Mix!$D$10:$D$13,MATCH(LARGE(Mix!$B$10:$B$13,$B11),Mix!$B$10:$B$13,0),1),"none")',
    ),
    "a key to fill by": (text_of(preference_key(ROWS, OTHER, A), "1", ROW), "ROUND(ROUND($B11,9),0)*bag_a+$C11"),
    "what comes before a row": (
        text_of(before(OTHER, ROWS, ROW), "1", ROW),
        "SUMPRODUCT(($B$10:$B$13<$B11)*$C$10:$C$13)",
    ),
    "what comes before in each column": (
        text_of(before(GRID, ROWS, ROW), "1", ROW, COLUMN),
        "SUMPRODUCT(($B$10:$B$13<$B11)*C$20:C$23)",
    ),
    "what comes before across": (
        text_of(before(MONTHS, CASH, MONTH), "1", MONTH),
        "SUMPRODUCT(($C$12:$E$12<D$12)*$C$10:$E$10)",
    ),
    "a figure or words": (text_of(f.shown(A, B, 'none "yet"')), 'IF(bag_b<>0,bag_a,"none ""yet""")'),
    "a figure by a comparison": (text_of(f.shown(ROWS, A > 0, "none"), "1", ROW), 'IF((bag_a>0),$B11,"none")'),
    "e to a power": (text_of(f.exponential(A)), "EXP(bag_a)"),
    "a natural logarithm": (text_of(f.natural_log(A)), "LN(bag_a)"),
    "a logarithm": (text_of(f.log_10(A)), "LOG10(bag_a)"),
    "a square root": (text_of(f.square_root(A)), "SQRT(bag_a)"),
    "a cell of a list": (text_of(ROWS * A, "1", ROW), "$B11*bag_a"),
    "a cell of a list elsewhere": (text_of(FLUSHES, "1", FLUSH, MONTH), "Crop!$B11"),
    "a cell of a table": (text_of(GRID + ROWS, "1", ROW, COLUMN), "C21+$B11"),
    "a list that runs the other way here": (text_of(FLUSHES + WEEKS, "1", FLUSH, WEEK), "Crop!$B$11+$B11"),
    "a total down": (text_of(f.total(ROWS, ROW)), "SUM(Mix!$B$10:$B$13)"),
    "a total of a product": (text_of(f.total(ROWS * OTHER, ROW)), "SUMPRODUCT(Mix!$B$10:$B$13*Mix!$C$10:$C$13)"),
    "a total for each column": (text_of(f.total(GRID * ROWS, ROW), "1", COLUMN), "SUMPRODUCT(C$20:C$23*$B$10:$B$13)"),
    "a total for each row": (text_of(f.total(GRID, COLUMN), "1", ROW), "SUM($B21:$C21)"),
    "a total across a turned table": (text_of(f.total(TURNED, FLUSH), "1", WEEK), "SUM($B31:$C31)"),
    "how many": (text_of(f.total(ROWS > A, ROW)), "SUMPRODUCT((Mix!$B$10:$B$13>bag_a)*1)"),
    "one month earlier": (text_of(f.previous(CASH, MONTH), "1", MONTH), "C$12"),
    "one month earlier, in a total over another list": (
        text_of(f.total(f.previous(ACROSS, MONTH) * ROWS - f.previous(CASH, MONTH), ROW), "1", MONTH),
        "SUMPRODUCT(C$20:C$23*Mix!$B$10:$B$13-C$12)",
    ),
    "a running sum": (text_of(f.running_sum(MONTHS - A, MONTH), "1", MONTH), "C$31+D$10-bag_a"),
    "its opening cell": (text_of(f.running_sum(MONTHS, MONTH), "1", MONTH, opening=True), "0"),
    "a running product": (text_of(f.running_product(1 - FLUSHES, FLUSH), "1", FLUSH), "$F10*(1-$B11)"),
    "the opening cell of that": (text_of(f.running_product(FLUSHES, FLUSH), "1", FLUSH, opening=True), "1"),
    "a line with an opening value": (text_of(f.starting(A, MONTHS), "1", MONTH), "D$10"),
    "and its opening cell": (text_of(f.starting(A + B, MONTHS), "1", MONTH, opening=True), "bag_a+bag_b"),
    "a value at a position down": (text_of(f.at(WEEKS, WEEK, A - 1)), "INDEX(Plan!$B$10:$B$13,bag_a-1,1)"),
    "a value at a position across": (text_of(f.at(MONTHS, MONTH, A)), "INDEX(Cash!$C$10:$E$10,1,bag_a)"),
    "of one of two lists": (text_of(f.at(ACROSS, MONTH, A), "1", ROW), "INDEX(Cash!$C21:$E21,1,bag_a)"),
    "of one of two lists, turned": (
        text_of(f.at(TURNED, WEEK, MONTHS), "1", FLUSH, MONTH),
        "INDEX(Plan!$C$30:$C$33,D$10,1)",
    ),
    "an internal rate": (text_of(f.internal_rate(MONTHS, MONTH)), "IFERROR(IRR(Cash!$C$10:$E$10),0)"),
    "the least of all months": (text_of(f.lowest_of(MONTHS, MONTH)), "MIN(Cash!$C$10:$E$10)"),
    "the most of all weeks": (text_of(f.highest_of(WEEKS, WEEK) - A), "MAX(Plan!$B$10:$B$13)-bag_a"),
    "the most of all months, in each of them": (
        text_of(f.highest_of(MONTHS, MONTH) <= MONTHS, "1", MONTH),
        "(MAX($C$10:$E$10)<=D$10)*1",
    ),
    "the least in another unit": (text_of(f.lowest_of(WET_WEEKS, WEEK), "g_wet"), "MIN(Plan!$D$10:$D$13)/factor_g"),
    "a cell as typed": (text_of(f.where(n.IsNumber(NUMBER), n.Raw(NUMBER), 0)), "IF(ISNUMBER(bag_own),bag_own,0)"),
    "a usual limit": (text_of(n.Raw(NUMBER) >= n.Raw(LOW)), "(bag_own>=Inputs!$D$6)*1"),
    "whether filled in": (text_of(n.Filled(NAMES), "1", ROW), '(Tables!$A11<>"")*1'),
    "whether a word is chosen": (text_of(f.is_word(WORD, 'the "big" one')), '(bag_supply="the ""big"" one")*1'),
    "whether two cells agree": (text_of(f.same_text(NAMES, WORD), "1", ROW), "(Tables!$A11=bag_supply)*1"),
    "how many say a word": (text_of(n.CountWord(FLAGS, "ok")), 'COUNTIF(Inputs!$F$6:$F$9,"ok")'),
    "how many hold a number": (text_of(n.CountWord(FLAGS, 0)), "COUNTIF(Inputs!$F$6:$F$9,0)"),
    "how many in use say a word": (
        text_of(n.CountUsed((BASIS,), "guess", (ROWS,))),
        'SUMPRODUCT((Tables!$D$10:$D$13="guess")*1*Mix!$B$10:$B$13)',
    ),
    "the first that says a word": (
        text_of(n.FirstLabel(FLAGS, ("Own", "Wet"), "bad", "none")),
        'IF(COUNTIF(Inputs!$F$6:$F$9,"bad")=0,"none",INDEX(Inputs!$A$6:$A$9,MATCH("bad",Inputs!$F$6:$F$9,0),1))',
    ),
    "a label": (text_of(n.Label(WORD, "(none)")), 'IF(bag_supply="","(none)",bag_supply&"")'),
    "one of some sentences": (text_of(f.sentence(1 + A, "no", 'yes, "now"')), 'CHOOSE(1+bag_a,"no","yes, ""now""")'),
    "a kind joined": (text_of(f.joined(WET, "kg_dry") * A, "kg_dry"), "bag_wet*bag_a"),
    "pounds from pounds": (text_of(WET * A, "kg_wet", system="us"), "bag_wet*bag_a"),
    "grams": (text_of(WET, "g_wet"), "bag_wet/factor_g"),
    "ounces": (text_of(WET, "g_wet", system="us"), "bag_wet*factor_lb_per_oz"),
    "hours from days": (text_of(DAYS, "h"), "bag_days*factor_day"),
    "days and hours": (text_of(DAYS + line("bag.hours", "h"), "h"), "bag_days*factor_day+bag_hours"),
    "whole of a plain quotient": (
        text_of(f.whole_up(f.ratio(line("bag.hours", "h"), line("bag.minutes", "min"))) * A),
        "ROUNDUP(ROUND(IF(bag_minutes=0,0,bag_hours/bag_minutes)/factor_min,9),0)*bag_a",
    ),
    "whole ones of the line's own unit": (
        text_of(f.whole_down(f.ratio(line("bag.hours", "h"), A)), "min"),
        "INT(ROUND(IF(bag_a=0,0,bag_hours/bag_a)/factor_min,9))",
    ),
    "degrees": (text_of(WARM + RISE, "degC", system="us"), "room_warm+room_rise"),
    "degrees apart": (text_of((WARM - WARM) * A, "delta_degC", system="us"), "(room_warm-room_warm)*bag_a"),
}


@pytest.mark.parametrize("name", TEXTS)
def test_formulas_to_the_letter(name: str) -> None:
    found, expected = TEXTS[name]
    assert found == expected


SENTENCES: Mapping[str, tuple[n.Expr, str]] = {
    "a product of sums": ((A + B) * (A - C), "(a + b) x (a - c)"),
    "a difference": (A - (B - C), "A - (b - c)"),
    "minus": (-A + B, "Minus a + b"),
    "a quotient": (A / (B * f.named(KETTLE)), "A / (b x kettle size)"),
    "a guarded quotient": (f.ratio(A, B), "A / b"),
    "with another answer": (f.ratio(A, B, otherwise=C), "A / b, or c where that cannot be divided"),
    "a power is kept together": (A**2 * B, "(a to the power 2) x b"),
    "a comparison": (A <= B, "1 if a is at most b"),
    "all": (f.all_of(A > 0, B < C), "1 if a is above 0 and b is below c"),
    "or inside and": (f.all_of(A >= 1, f.any_of(B, C)), "1 if a is at least 1 and (b or c)"),
    "not": (f.negation(A > B), "1 if not (a is above b)"),
    "a choice": (f.where(A > 0, B, 0), "B if a is above 0, otherwise 0"),
    "the smaller": (f.minimum(A, B + C) * C, "(the smaller of a and b + c) x c"),
    "the larger": (f.maximum(A, 0), "The larger of a and 0"),
    "half way": (f.mean(A, B), "Half way between a and b"),
    "the size": (f.absolute(A - B), "The size of a - b"),
    "rounded up": (f.whole_up(A / B), "A / b, rounded up to a whole number"),
    "rounded down": (f.whole_down(A), "A, rounded down to a whole number"),
    "rounded to the nearest": (f.whole_near(A), "A, rounded to the nearest whole number"),
    "the month": (f.calendar_month(A), "The month of a"),
    "the first of a month": (f.month_start(A, B), "The first of the month of a, later by months: b"),
    "the largest value": (
        nth_value((A, B), 1, C, (B, C)),
        "The value that ranks as number 1, the largest first, or 0 above c",
    ),
    "the label of the largest": (
        nth_label((A, B), A - 1, C, (B, C), "none"),
        'The label that ranks as number a - 1, the largest first, or "none" above c',
    ),
    "the text of the largest": (
        nth_value((ROWS,), 1, C, (WORDED,), "none"),
        'The text that ranks as number 1, the largest first, or "none" above c',
    ),
    "what comes before a row": (before(OTHER, ROWS, ROW), "Total of other over each row whose rows is lower"),
    "a figure or words": (f.shown(A, B > 0, "none yet"), 'A if b is above 0, otherwise "none yet"'),
    "e": (f.exponential(A), "E to the power a"),
    "a natural logarithm": (f.natural_log(A), "Natural logarithm of a"),
    "a logarithm": (f.log_10(A), "Logarithm of a"),
    "a root": (f.square_root(A), "Square root of a"),
    "a total is kept together": (f.total(ROWS * OTHER, ROW) * A, "(total over each row of rows x other) x a"),
    "an opening value": (
        f.starting(A, f.previous(CASH, MONTH) + B),
        "Starts from a; then closing one month earlier + b",
    ),
    "a running sum": (f.running_sum(MONTHS, MONTH), "Sum so far of months"),
    "a running product": (f.running_product(1 - FLUSHES, FLUSH), "Product so far of (1 - flushes)"),
    "at a position": (f.at(WEEKS, WEEK, A - 1), "Weeks at week (a - 1)"),
    "a kind joined": (f.joined(WET, "kg_dry"), "Wet"),
    "as typed": (n.Raw(NUMBER) - A, "Own as typed - a"),
    "a number": (n.IsNumber(NUMBER), "1 if own holds a number"),
    "filled in": (n.Filled(NAMES), "1 if row is filled in"),
    "a word": (f.is_word(WORD, "big"), '1 if supply is "big"'),
    "two words": (f.same_text(WORD, NAMES), "1 if supply is row"),
    "how many": (n.CountWord(FLAGS, "ok"), 'How many of these 2 cells say "ok"'),
    "how many in use": (n.CountUsed((BASIS,), "guess", (ROWS,)), 'How many cells in use say "guess"'),
    "the first": (n.FirstLabel(FLAGS, ("a", "b"), "bad", "none"), 'The first of these that says "bad"'),
    "a label": (n.Label(WORD, "none"), "Supply as typed"),
    "in words": (f.sentence(1 + A, "no", "yes"), "In words: 1 + a"),
    "a rate": (
        f.internal_rate(MONTHS, MONTH),
        "The rate for each month at which all months are worth nothing together",
    ),
    "the least": (f.lowest_of(CASH, MONTH) - A, "(the least of each month's closing) - a"),
    "the most": (f.highest_of(CASH, MONTH), "The most of each month's closing"),
}


@pytest.mark.parametrize("name", SENTENCES)
def test_sentences_to_the_letter(name: str) -> None:
    expr, expected = SENTENCES[name]
    assert sentence_of(expr) == expected


def test_used_is_not_said() -> None:
    """A number typed in goes by the label of its cell; the ending of a label alone says nothing."""
    cell = n.RawInput("bag.size", "Size", "number", unit("1"), ())
    used = n.Line("bag.size_used", "Size (used)", unit("1"), (), lambda: n.Used(cell))
    assert sentence_of(used * A) == "Size x a"
    other = n.Line("bag.width", "Width (used)", unit("1"), (), lambda: n.Number(0))
    assert sentence_of(other * A) == "Width (used) x a"
