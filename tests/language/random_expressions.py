"""Expressions made at random, of every node and function, with units and lists that agree."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator, Sequence
from typing import Final

from farmbook.expr import functions as f
from farmbook.expr import nodes as n
from farmbook.expr.axis import Axis
from farmbook.expr.ranking import before, nth_label, nth_value
from farmbook.sections.model import Model
from farmbook.sections.section import BELOW, Bound
from farmbook.units import unit
from tests.language.pool import COLUMN, CONSTANTS, FLUSH, ROW, SPELL, STEP, Pool

__all__ = ["random_lines"]

Axes = tuple[Axis, ...]
SHAPES: Final[Sequence[Axes]] = (
    (), (), (ROW,), (COLUMN,), (STEP,), (FLUSH,), (SPELL,), (ROW, COLUMN), (ROW, STEP), (FLUSH, STEP), (ROW, SPELL),
    (FLUSH, SPELL),
)  # fmt: skip
UNITS: Final = (
    "kg_wet", "kg_dry", "h", "day", "money", "m", "L", "kWh", "degC", "delta_degC", "share", "1", "flag",
    "bag_filled", "kg_dry/h", "g_wet", "kJ", "cm", "m3", "min", "money/g_wet",
)  # fmt: skip
SAME_KIND: Final = {
    "g_wet": "kg_wet", "kJ": "kWh", "cm": "m", "m3": "L", "min": "day", "money/g_wet": "money/kg_wet",
}  # fmt: skip
"""Units in which nothing is typed in, and one of the same kind in which something is: a factor has to come between."""
PLAIN: Final = ("share", "1", "flag")


class Maker:
    """Makes expressions of a wanted unit, over some lists at the most."""

    def __init__(self, seed: int, model: Model) -> None:
        self.rng = random.Random(seed)
        self.model, self.pool = model, model.section(Pool)
        self.worked = [one for one in model.lines if one.kind in ("used", "worked") and one.name != "pool.heading"]

    def leaf(self, of: str, axes: Axes) -> n.Expr:
        """A line, a constant or a bare number."""
        of = SAME_KIND.get(of, of)
        fitting = [one for one in self.worked if str(one.unit) == of and set(one.axes) <= set(axes)]
        found: list[n.Expr] = [*fitting, *(n.Named(each) for name, each in CONSTANTS.items() if name == of)]
        if of in PLAIN:
            found += [
                n.Number(1),
                *(one for one in self.worked if str(one.unit) in PLAIN and set(one.axes) <= set(axes)),
            ]
        if not found:
            found = [f.joined(self.leaf("kg_wet", axes), of)] if of == "kg_dry" else [n.Number(0)]
        return self.rng.choice(found)

    def make(self, of: str, axes: Axes, depth: int) -> n.Expr:
        """An expression of a unit."""
        if depth == 0:
            return self.leaf(of, axes)
        if of == "degC":
            return self.rng.choice([self.warm, self.warmer])(axes, depth - 1)
        rules: list[Callable[[str, Axes, int], n.Expr]] = [
            self.add, self.subtract, self.scaled, self.over_constant, self.ratio, self.chosen, self.call, self.summed,
            self.stepped,
            self.by_rate, self.leaf_again,
        ]  # fmt: skip
        if of in PLAIN:
            rules += [self.compared, self.logic, self.of_cells, self.power, self.pure, self.quotient, self.whole] * 2
        if of == "delta_degC":
            rules += [self.difference] * 4
        if of in ("kg_wet", "kg_dry"):
            rules += [self.rekinded] * 3
        if of == "bag_filled":
            rules += [self.whole] * 3
        return self.rng.choice(rules)(of, axes, depth - 1)

    def leaf_again(self, of: str, axes: Axes, depth: int) -> n.Expr:
        return self.leaf(of, axes)

    def add(self, of: str, axes: Axes, depth: int) -> n.Expr:
        return self.make(of, axes, depth) + self.make(of, axes, depth)

    def subtract(self, of: str, axes: Axes, depth: int) -> n.Expr:
        return self.make(of, axes, depth) - self.make(of, axes, depth)

    def scaled(self, of: str, axes: Axes, depth: int) -> n.Expr:
        sides = [self.make(of, axes, depth), self.make("1", axes, depth)]
        self.rng.shuffle(sides)
        return self.rng.choice([sides[0] * sides[1], -sides[0] * sides[1]])

    def over_constant(self, of: str, axes: Axes, depth: int) -> n.Expr:
        return self.make(of, axes, depth) / (n.Named(CONSTANTS["1"]) * n.Named(CONSTANTS["share"]))

    def ratio(self, of: str, axes: Axes, depth: int) -> n.Expr:
        other = self.rng.choice([n.Number(0), self.leaf(of, axes)])
        return f.ratio(self.make(of, axes, depth), self.make("1", axes, depth), otherwise=other)

    def quotient(self, of: str, axes: Axes, depth: int) -> n.Expr:
        kind = self.rng.choice(("h", "kg_wet", "money", "m", "L"))
        return f.ratio(self.make(kind, axes, depth), self.leaf(kind, axes), otherwise=self.rng.choice((0, 1)))

    def by_rate(self, of: str, axes: Axes, depth: int) -> n.Expr:
        if of == "money":
            return self.leaf("money/kg_wet", axes) * self.make("kg_wet", axes, depth)
        if of == "kg_dry":
            return self.leaf("kg_dry/h", axes) * self.make(self.rng.choice(("h", "day")), axes, depth)
        if of == "kg_dry/h":
            return f.ratio(self.make("kg_dry", axes, depth), self.make("h", axes, depth))
        return self.scaled(of, axes, depth)

    def chosen(self, of: str, axes: Axes, depth: int) -> n.Expr:
        return f.where(self.make("flag", axes, min(depth, 1)), self.leaf(of, axes), self.leaf(of, axes))

    def call(self, of: str, axes: Axes, depth: int) -> n.Expr:
        one, other = self.make(of, axes, depth), self.leaf(of, axes)
        return self.rng.choice([f.minimum(one, other), f.maximum(other, one), f.mean(one, other), f.absolute(one)])

    def whole(self, of: str, axes: Axes, depth: int) -> n.Expr:
        if of != "bag_filled":
            return self.rng.choice([f.whole_up, f.whole_down])(self.make("1", axes, depth))
        return self.rng.choice([f.whole_up, f.whole_down])(self.leaf("bag_filled", axes) * self.make("1", axes, depth))

    def pure(self, of: str, axes: Axes, depth: int) -> n.Expr:
        above = f.maximum(self.make("1", axes, depth), 1)
        roots = [f.natural_log(above), f.log_10(above), f.square_root(above)]
        return self.rng.choice([*roots, f.exponential(f.minimum(self.make("1", axes, depth), 1))])

    def power(self, of: str, axes: Axes, depth: int) -> n.Expr:
        base = f.maximum(self.make("1", axes, depth), 1)
        return self.rng.choice(
            [self.leaf("1", axes) ** 2, base**-1, base ** self.leaf("share", axes), 2 ** self.leaf("share", axes)]
        )

    def compared(self, of: str, axes: Axes, depth: int) -> n.Expr:
        kind = self.rng.choice(("h", "kg_wet", "money", "degC", "1"))
        sign = self.rng.choice(("<", "<=", ">", ">="))
        return n.Compare(sign, self.make(kind, axes, depth), self.make(kind, axes, depth))

    def logic(self, of: str, axes: Axes, depth: int) -> n.Expr:
        terms = [self.compared(of, axes, 0), self.make("flag", axes, min(depth, 1)), self.of_cells(of, axes, 0)]
        return self.rng.choice([f.all_of(*terms), f.any_of(*terms[:2]), f.negation(terms[1])])

    def of_cells(self, of: str, axes: Axes, depth: int) -> n.Expr:
        """What can be asked of cells as typed."""
        pool, inputs = self.pool, self.model.inputs
        flags = tuple(inputs[each].flag for each in (Pool.wet, Pool.dry, Pool.hours))
        grid = inputs[Pool.grid_dry]
        assert grid.basis is not None
        assert all(flag is not None for flag in flags)
        found: list[n.Expr] = [
            pool.given(pool.own), n.Filled(inputs[Pool.own].cell), f.is_word(pool.word, "three-phase"),
            f.same_text(pool.word, pool.note),
            n.CountWord(tuple(flag for flag in flags if flag is not None), BELOW),
            n.CountUsed((grid.basis,), "Assumed", (self.model.axes[ROW].present,)),
            n.CountChanged((inputs[Pool.wet].cell,), (built_of(inputs[Pool.dry]),)),
            n.CountChanged((grid.cell,), (built_of(grid),), (grid.basis,), "assumed"),
            f.where(n.IsNumber(inputs[Pool.share].cell), n.Raw(inputs[Pool.share].cell), 0),
        ]  # fmt: skip
        if ROW in axes:
            found += [n.Filled(self.model.axes[ROW].names), f.same_text(self.model.axes[ROW].names, pool.note)]
        return self.rng.choice(found)

    def warm(self, axes: Axes, depth: int) -> n.Expr:
        return self.leaf("degC", axes) + self.make("delta_degC", axes, min(depth, 1))

    def warmer(self, axes: Axes, depth: int) -> n.Expr:
        one, other = self.leaf("degC", axes), self.leaf("degC", axes)
        return self.rng.choice(
            [f.mean(one, other), f.maximum(one, other), f.where(self.make("flag", axes, 1), one, other)]
        )

    def difference(self, of: str, axes: Axes, depth: int) -> n.Expr:
        return self.make("degC", axes, depth) - self.leaf("degC", axes)

    def rekinded(self, of: str, axes: Axes, depth: int) -> n.Expr:
        return f.joined(self.make("kg_wet" if of == "kg_dry" else "kg_dry", axes, depth), of)

    def stepped(self, of: str, axes: Axes, depth: int) -> n.Expr:
        """A value at another step, or the least or the most of all, of a line that has this unit; else something else."""
        fitting = [one for one in self.worked if str(one.unit) == of and one.axes and one.axes[-1].ordered]
        opened = [one for one in fitting if isinstance(one.expr, n.Starting | n.Running) and set(one.axes) <= set(axes)]
        far = [one for one in fitting if set(one.axes[:-1]) <= set(axes)]
        choices = [f.previous(one, one.axes[-1]) for one in opened] + [self.at(one, axes) for one in far]
        extremes = f.lowest_of, f.highest_of
        choices += [self.rng.choice(extremes)(one, one.axes[0]) for one in far if len(one.axes) == 1]
        return self.rng.choice(choices) if choices else self.add(of, axes, depth)

    def at(self, line: n.Line, axes: Axes) -> n.Expr:
        last = line.axes[-1]
        wanted = f.maximum(f.minimum(f.whole_up(self.leaf("1", axes)), f.whole_down(n.Named(CONSTANTS["1"]) ** 2)), 1)
        return f.at(line, last, self.rng.choice([n.Number(1), wanted]))

    def summed(self, of: str, axes: Axes, depth: int) -> n.Expr:
        """A total over one more list: signs and comparisons alone, and no ranges that lie crosswise."""
        over = self.rng.choice([axis for axis in (ROW, COLUMN, FLUSH, STEP, SPELL) if axis not in axes] or [None])
        if over is None or len(axes) > 1:
            return self.add(of, axes, depth)
        inside = (*axes, over)
        turned = sum(axis.direction == "down" for axis in inside) == 2 and SPELL in inside
        fitting = [
            one for one in self.worked
            if over in one.axes and set(one.axes) <= set(inside) and (not turned or len(one.axes) == 2)
        ]  # fmt: skip
        same = [one for one in fitting if str(one.unit) == of]
        if not same:
            return self.add(of, axes, depth)
        first, other = self.rng.choice(same), self.rng.choice(fitting)
        parts = [
            first,
            first + self.leaf(of, axes),
            first * self.leaf("share", axes),
            first * (other > self.leaf(str(other.unit), axes)),
        ]
        parts += [
            first / (n.Named(CONSTANTS["1"]) * n.Named(CONSTANTS["1"])),
            -first,
            first * n.Power(self.leaf("1", axes), n.Number(2)),
        ]
        parts += [
            first + f.previous(one, one.axes[-1])
            for one in same
            if one.axes[-1] in axes and isinstance(one.expr, n.Starting | n.Running)
        ]
        if over is ROW and not turned:
            parts.append(first * n.Filled(self.model.axes[ROW].names))
        return f.total(self.rng.choice(parts), over)

    def rooted(self, of: str, axes: Axes, depth: int) -> n.Expr:
        """What stands only as the whole of a line."""
        last = axes[-1]
        step = self.make(of, axes, depth)
        found = [f.starting(self.make(of, axes[:-1], 1), step)]
        if of != "degC":
            found.append(f.running_sum(step, last))
        if of in PLAIN:
            found.append(f.running_product(f.minimum(f.absolute(step), 1), last))
        return self.rng.choice(found)


def random_lines(model: Model, count: int, seed: int) -> Iterator[n.Line]:
    """Lines with random expressions, of every shape and unit in turn, and some that give words or a rate."""
    maker, pool = Maker(seed, model), model.section(Pool)
    for number in range(count):
        axes, of = SHAPES[number % len(SHAPES)], UNITS[number % len(UNITS)]
        rooted = bool(axes) and axes[-1].ordered and maker.rng.random() < 0.4
        expr = (maker.rooted if rooted else maker.make)(of, axes, maker.rng.choice((1, 2, 3)))
        yield line_of(f"random.line_{number}", of, axes, expr)
    state = 1 + f.whole_down(f.minimum(f.absolute(pool.share), 1))
    flags = [model.inputs[each].flag for each in (Pool.wet, Pool.dry)]
    labels = (Pool.wet.label, Pool.dry.label)
    worded = n.FirstLabel(tuple(flag for flag in flags if flag is not None), labels, BELOW, "none of them")
    keys = (pool.plain_key, pool.bags_key, pool.share_key)
    for name, expr in {
        "chosen": f.sentence(state, "the first", 'the "second" & last'),
        "label": n.Label(pool.word, "(no word)"),
        "first": worded,
        "rate": f.internal_rate(pool.flows, STEP),
        "largest": nth_value(keys, 1, pool.steps, keys),
        "second": nth_label(keys, pool.steps - 1 - 1, pool.steps - 1, keys, "none"),
        "figure": f.shown(pool.steps, pool.three_phase, "no figure on one phase"),
        "words": f.shown(pool.steps, pool.one_phase, "no figure on three phases"),
    }.items():
        yield line_of(f"random.{name}", "1", (), expr)
    for name, extreme in (("least", f.lowest_of), ("most", f.highest_of)):
        yield line_of(f"random.{name}", "money", (), extreme(pool.flows, STEP))
    yield line_of("random.before", "money", (STEP,), before(pool.step_cash, pool.step_key, STEP))
    yield line_of("random.each_figure", "share", (FLUSH,), f.shown(pool.alive, pool.alive > pool.share, "less"))


def built_of(bound: Bound) -> n.RawInput:
    """The cells that repeat an input as built; held against another one, they differ."""
    assert bound.built is not None
    return bound.built


def line_of(name: str, of: str, axes: Axes, expr: n.Expr) -> n.Line:
    """A line whose expression is already there."""
    return n.Line(name, name.replace(".", " ").replace("_", " "), unit(of), axes, lambda: expr)
