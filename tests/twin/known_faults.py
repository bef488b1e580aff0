"""Lines that the twin has right and the model wrong, and when; held by tests marked xfail until the model is mended."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from tests.twin.edge_farms import Changes, changes_of
from tests.twin.farm_twin_ground import Given, Results

__all__ = ["KNOWN_FAULTS", "Fault", "excused"]


@dataclass(frozen=True)
class Fault:
    """What is wrong with a line, the lines that carry it on, when it shows, and a farm on which it does."""

    line: str
    wrong: str
    when: Callable[[Given, Results], bool]
    shows: Changes
    carried: tuple[str, ...] = ()

    def excuses(self, name: str) -> bool:
        """Whether a line is this one or one that carries it on."""
        return name == self.line or name.startswith(self.carried)


def one_nitrogen(given: Given, ours: Results) -> bool:
    """Both ingredients to try are found and hold the same nitrogen."""
    found = ours["supplement.both_found"] == 1
    return bool(found and ours["supplement.base_nitrogen"] == ours["supplement.rich_nitrogen"])


def no_moisture(given: Given, ours: Results) -> bool:
    """The moisture cell of a recipe is cleared."""
    cleared = given["recipe.target_moisture"] == 0
    return any(name and zero for name, zero in zip(given["recipe.recipes"], cleared, strict=True))


def no_bag_lives(given: Given, ours: Results) -> bool:
    """No bag is left at the end of the spawn run."""
    return bool(ours["crop.live_per_filled"] == 0)


KNOWN_FAULTS: Final = (
    Fault(
        "supplement.can_be_mixed",
        "two ingredients of one nitrogen pass as able to make any other",
        one_nitrogen,
        changes_of({"supplement.base": "Gypsum", "supplement.rich": "Gypsum"}),
    ),
    Fault(
        "recipe_checks.too_wet",
        "with its moisture cleared a recipe wants no water, and any that comes in is not too much",
        no_moisture,
        changes_of({"recipe.target_moisture": None}),
        carried=("recipe_checks.dry_enough",),
    ),
    Fault(
        "growing_cost.cost_per_picked",
        "a cost of weight that is not picked, where no bag lives",
        no_bag_lives,
        changes_of({"crop.loss_at_steaming": 1}),
    ),
    Fault(
        "lost_bags.spent_a_week",
        "no money spent where all bags are lost, though the bags were paid for",
        no_bag_lives,
        changes_of({"crop.loss_at_steaming": 1}),
        carried=("lost_bags.share_of_cost", "lost_bags.bags_make_up_the_cost"),
    ),
)


def excused(given: Given, ours: Results) -> tuple[Fault, ...]:
    """The faults to be reckoned with on a farm."""
    return tuple(fault for fault in KNOWN_FAULTS if fault.when(given, ours))
