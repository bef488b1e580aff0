"""An explanation: as deep as asked, no wider than a screen, and silent on what has no say, which then has none."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from farmbook.cli import main
from farmbook.explain import DEPTH, explanation
from farmbook.expr.nodes import Line, RawInput
from farmbook.finding import WIDTH
from farmbook.interpret.numbers import Cells
from farmbook.relevance import reads
from farmbook.results import Computed, compute, load_scenario

FARMS = ("kestrel_hollow", "hof_fennewald")
ALL = 99
TAIL = "... stands where"


@cache
def farm(name: str = "kestrel_hollow") -> Computed:
    return compute(load_scenario(scenario(name)))


def scenario(name: str) -> Path:
    return Path(__file__).parents[2] / "scenarios" / f"{name}.toml"


def told(what: str, depth: int = DEPTH, name: str = "kestrel_hollow") -> list[str]:
    return explanation(farm(name), what, depth).splitlines()


def test_the_steamer_that_is_not_used_is_named_and_not_gone_into() -> None:
    assert told("crop.loss_steamed") == [
        "Bags lost at steaming, steamer in use: 1.2%   [crop.loss_steamed]",
        "  = The smaller of (bags lost at steaming in the pressure vessel if the farm steams in the pressure",
        "      vessel, otherwise bags lost at steaming in the cabinet) and 1",
        "  The farm steams in the pressure vessel: no   [vessel_heat.in_use]",
        '    = 1 if steamer that the farm uses is "pressure vessel"',
        "    Steamer that the farm uses: cabinet   [steamer.kind, input]",
        '  Bags lost at steaming in the pressure vessel: not used, as steamer that the farm uses is "cabinet"',
        "  Bags lost at steaming in the cabinet: 1.2%   [crop.loss_at_steaming, input]",
    ]


@pytest.mark.parametrize(("name", "unused"), [("kestrel_hollow", "[vessel."), ("hof_fennewald", "[cabinet.")])
def test_nothing_of_the_other_steamer_is_told_to_the_bottom(name: str, unused: str) -> None:
    rows = told("steamer_in_use.cost_per_run", ALL, name)
    assert len(rows) > 100
    assert [row for row in rows if unused in row] == []


def test_what_a_meter_holds_is_said() -> None:
    text = " ".join(" ".join(told("cabinet.energy_per_run")).split())
    why = "not used, as energy of a load of the cabinet by your meter is above 0"
    assert f"Energy of a load of the cabinet, as worked out: {why}" in text


def test_what_a_flag_makes_nothing_is_said() -> None:
    text = " ".join(" ".join(told("spawn_source.extra_loss_counted")).split())
    assert (
        'Extra bags lost in the spawn run with own spawn: not used, as where the spawn comes from is "bought"' in text
    )


def below(computed: Computed, line: Line) -> tuple[set[Line], set[RawInput]]:
    """The lines and cells that have a say in a line."""
    lines, cells, waiting = {line}, set(), [line]
    while waiting:
        current = waiting.pop()
        for read, why in reads(computed, current).items():
            if isinstance(read, RawInput) and not why:
                cells.add(read)
            elif isinstance(read, Line) and not why and read not in lines:
                lines.add(read)
                waiting.append(read)
    return lines, cells


def without_a_say(computed: Computed) -> Iterator[tuple[Line, set[RawInput]]]:
    """Lines that read something without a say, and the numbers typed in that reach them by that alone."""
    for line in computed.roots:
        if any(reads(computed, line).values()):
            lines, cells = below(computed, line)
            every = computed.graph.before([line])
            typed = {cell for each in every - lines for cell in computed.graph.cells(each)} - cells
            if numbers := {cell for cell in typed if cell.kind == "number"}:
                yield line, numbers


@pytest.mark.parametrize("name", FARMS)
def test_what_is_said_to_have_no_say_has_none(name: str) -> None:
    """Every number that reaches a line only by what is not used is changed at once, and the line stays as it is."""
    computed = farm(name)
    found = list(without_a_say(computed))
    assert len(found) > 20
    for line, numbers in found:
        cells = {cell: computed.scenario.cells[cell] for cell in numbers}
        changes = {cell: Cells(each.numbers * 1.07 + 0.01, each.texts) for cell, each in cells.items()}
        assert list(computed.what_if(changes, [line])[line].flat) == list(computed.values[line].flat), line.name


def test_each_level_goes_deeper_and_tells_how_much_is_left() -> None:
    what, depths = "growing_cost.cost_per_taken", (1, 2, 3, ALL)
    names = [set(re.findall(r"\[([\w.]+)", "\n".join(told(what, depth)))) for depth in depths]
    assert names[0] == {what, "growing_cost.grown_cost_per_filled", "crop.taken_per_filled"}
    assert names[0] < names[1] < names[2] < names[3]
    lines, _ = below(farm(), farm().line(what))
    for depth, shown in zip(depths[:3], names, strict=False):
        text = " ".join(told(what, depth)[-2:])
        assert f"--depth {depth + 1} goes one level deeper" in text
        (left,) = re.findall(r"(\d+) lines and inputs further down", text)
        assert int(left) == len([line for line in lines if not called_in(line, shown)])
    assert TAIL not in "\n".join(told("growing_cost.cost_per_taken", ALL))


def called_in(line: Line, names: set[str]) -> bool:
    return line.name in names or (line.hands_on is not None and line.hands_on.name in names)


@pytest.mark.parametrize("name", FARMS)
def test_no_row_is_wider_than_a_screen(name: str) -> None:
    of_the_book = [line for line in farm(name).roots if line.name.startswith("report")]
    assert len(of_the_book) > 60
    for line in [*list(farm(name).roots)[::20], *of_the_book]:
        rows = told(line.name, DEPTH, name)
        assert [row for row in rows if len(row) > WIDTH] == []
        assert len(rows) < 400, line.name


def test_what_is_told_twice_is_folded() -> None:
    rows = told("growing_cost.grown_cost_per_filled")
    assert rows.count("    Bags moved to fruiting per bag filled: 94%   [crop.live_per_filled]") == 1
    assert "  Bags moved to fruiting per bag filled: 94%   [crop.live_per_filled, as above]" in rows


@pytest.mark.parametrize(
    ("what", "said"),
    [
        ("recipe.moisture", "for each recipe"),
        ("recipe.present", "Recipe in use: yes, yes, yes for each recipe"),
        ("ingredient.dry_matter", ": 58.0%, 90.0%, 91.0% and 1 more, for each ingredient"),
        ("recipe.as_delivered", ": 1.28, 1.34, 1.00 lb a lb dry for each recipe; ingredient maple_sawdust alone, of 4"),
        ("ingredient.label", ": Maple sawdust; Soybean hull pellets; Oat hulls and 1 more, for each ingredient"),
        ("vessel_heat.in_use", ": no"),
    ],
)
def test_lists_are_folded_and_flags_are_answers(what: str, said: str) -> None:
    text = " ".join(" ".join(told(what, 1)).split())
    assert said in text


@pytest.mark.parametrize("depth", ["-1", "0", "x", "2.5", "", "\u0663", "9" * 30])
def test_a_depth_that_is_none_is_wrong_usage(depth: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit, match="2"):
        main(["explain", str(scenario("kestrel_hollow")), "farm.wage", f"--depth={depth}"])
    assert "give a whole number of levels, 1 or more" in capsys.readouterr().err


def test_the_depth_is_heard(capsys: pytest.CaptureFixture[str]) -> None:
    for depth in (1, 2):
        assert main(["explain", str(scenario("kestrel_hollow")), "cabinet.cost_per_run", "--depth", str(depth)]) == 0
        assert f"--depth {depth + 1} goes one level deeper" in " ".join(capsys.readouterr().out.split())
