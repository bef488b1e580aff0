"""What lost bags cost: one bag at each step, and all of them in a week."""

from __future__ import annotations

from farmbook.calc.tolerance import is_rounding
from farmbook.expr.functions import joined, ratio
from farmbook.expr.nodes import Expr
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.harvest import Harvest
from farmbook.model.crop.crop import Crop
from farmbook.model.place.farm_plan import Farm
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.sections.declare import check, line, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC

__all__ = ["LostBags"]


class LostBags(Section):
    """Bags that are paid for and do not fruit. The crop they would have given is left out of every figure here."""

    title = "What lost bags cost"

    farm = uses(Farm)
    crop = uses(Crop)
    spawn = uses(Spawn)
    harvest = uses(Harvest)
    cost = uses(GrowingCost)

    # One bag

    @line("Spent on a bag by the end of the spawn run", unit="money/bag_inoculated", source=ARITHMETIC)
    def spent_in_spawn_run(self) -> Expr:
        """On that bag alone; no other bag's loss is in it, so it stays the same however many are lost."""
        before = joined(self.cost.cost_through_steaming, "money/bag_inoculated")
        return before + self.cost.inoculation_added + self.cost.spawn_run_added

    @line("Spent on a bag once it is opened", unit="money/bag_live", source=ARITHMETIC)
    def spent_by_opening(self) -> Expr:
        """On that bag alone, its place in the fruiting room included if the room is counted here."""
        before = joined(self.spent_in_spawn_run, "money/bag_live")
        return before + self.cost.opening_cost + self.cost.fruiting_room_cost

    @line("A bag lost at steaming costs", unit="money/bag_filled")
    def cost_at_steaming(self) -> Expr:
        """What was spent on it, and taking it out. The crop it would have given is not in this."""
        return self.cost.cost_through_steaming + joined(self.cost.culling_cost, "money/bag_filled")

    @line("A bag lost in the spawn run costs", unit="money/bag_inoculated")
    def cost_in_spawn_run(self) -> Expr:
        """What was spent on it, and taking it out: far more than its ingredients. Its crop is not in this."""
        return self.spent_in_spawn_run + self.cost.culling_cost

    @line("A bag lost before the first pick costs", unit="money/bag_live")
    def cost_before_first_pick(self) -> Expr:
        """The dearest loss: all is spent and nothing comes of it. Its crop is not in this."""
        return self.spent_by_opening + joined(self.cost.culling_cost, "money/bag_live")

    @line("A bag lost between flushes costs", unit="money/bag_live")
    def cost_between_flushes(self) -> Expr:
        """Only taking it out: it has given a flush, and the weight it gives no more is out of the weight picked."""
        return joined(self.cost.culling_cost, "money/bag_live")

    # Bags lost in a week

    @line("Lost at steaming a week", unit="bag_filled/week")
    def lost_at_steaming(self) -> Expr:
        """As an average over many loads."""
        return self.farm.bags_filled_a_week * self.crop.loss_steamed

    @line("Lost in the spawn run a week", unit="bag_inoculated/week")
    def lost_in_spawn_run(self) -> Expr:
        """As an average: a few batches lose none, one loses many."""
        return self.spawn.bags_inoculated_a_week * self.crop.chosen_loss_in_spawn_run

    @line("Lost before the first pick a week", unit="bag_live/week")
    def lost_before_first_pick(self) -> Expr:
        """Of the bags moved to fruiting."""
        return self.harvest.live_a_week * (1 - self.crop.first_pick_per_live)

    @line("Lost between flushes a week", unit="bag_live/week")
    def lost_between_flushes(self) -> Expr:
        """Bags that gave a first pick and do not stand to the end."""
        return self.harvest.live_a_week * (self.crop.first_pick_per_live - self.crop.standing_at_end)

    @line("Cleared a week, having stood to the end", unit="bag_live/week")
    def cleared(self) -> Expr:
        """Bags that gave all flushes kept."""
        return self.harvest.live_a_week * self.crop.standing_at_end

    @line("Lost or cleared a week", unit="bag_filled/week", source=ARITHMETIC)
    def lost_or_cleared(self) -> Expr:
        """Once the farm runs steadily, as many bags are in process at the end of a week as at its start."""
        before = self.lost_at_steaming + joined(self.lost_in_spawn_run, "bag_filled/week")
        later = self.lost_before_first_pick + self.lost_between_flushes + self.cleared
        return before + joined(later, "bag_filled/week")

    # Money a week

    @line("Bags lost at steaming, cost a week", unit="money/week")
    def steaming_bill(self) -> Expr:
        """Bags times what one costs."""
        return self.lost_at_steaming * self.cost_at_steaming

    @line("Bags lost in the spawn run, cost a week", unit="money/week")
    def spawn_run_bill(self) -> Expr:
        """Bags times what one costs."""
        return self.lost_in_spawn_run * self.cost_in_spawn_run

    @line("Bags lost before the first pick, cost a week", unit="money/week")
    def first_pick_bill(self) -> Expr:
        """Bags times what one costs."""
        return self.lost_before_first_pick * self.cost_before_first_pick

    @line("Bags lost between flushes, cost a week", unit="money/week")
    def flush_bill(self) -> Expr:
        """Bags times what one costs."""
        return self.lost_between_flushes * self.cost_between_flushes

    @line("All lost bags, spent on them a week, their crop left out", unit="money/week")
    def bill_a_week(self) -> Expr:
        """What you would have in hand if none were lost and no more were sold. What their crop would bring comes on top."""
        return self.steaming_bill + self.spawn_run_bill + self.first_pick_bill + self.flush_bill

    @line("All lost bags, spent on them a year, their crop left out", unit="money/year")
    def bill_a_year(self) -> Expr:
        """In the weeks worked."""
        return self.bill_a_week * self.farm.weeks_worked

    @line("Spent on growing a week", unit="money/week")
    def spent_a_week(self) -> Expr:
        """On all bags, good and lost."""
        return self.cost.spent_per_filled * self.farm.bags_filled_a_week

    @line("Lost bags, share of what growing costs", unit="share")
    def share_of_cost(self) -> Expr:
        """Above the shares lost: a bag lost late has cost more than the average, and each is taken out by hand."""
        return ratio(self.bill_a_week, self.spent_a_week)

    @line("Spent on bags that give a pick, a week", unit="money/week", source=ARITHMETIC)
    def spent_on_good_bags(self) -> Expr:
        """Bags that reach the first pick, and clearing those that stand to the end."""
        picked = self.crop.first_pick_per_live * self.spent_by_opening
        return self.harvest.live_a_week * (picked + self.crop.standing_at_end * self.cost.clearing_cost)

    @line("Spent on bags picked and on bags lost, a week", unit="money/week")
    def spent_on_either(self) -> Expr:
        """Must agree with what is spent on growing."""
        return self.spent_on_good_bags + self.bill_a_week

    @check(
        "Money spent is spent on bags picked or bags lost",
        kind="error",
        says="Lost bags and good bags do not make up the cost of growing: a formula of the cost sheet was changed.",
    )
    def bags_make_up_the_cost(self) -> Expr:
        """No bag's money is counted twice, and none is left out."""
        return is_rounding(self.spent_on_either - self.spent_a_week, self.spent_on_good_bags, self.bill_a_week)

    @check(
        "Bags filled are bags lost or cleared",
        kind="error",
        says="Bags filled do not agree with those lost and those cleared: a formula of the sheet Crop or Cost was changed.",
    )
    def bags_add_up(self) -> Expr:
        """No bag vanishes, and none comes from nowhere."""
        apart = self.lost_or_cleared - self.farm.bags_filled_a_week
        return is_rounding(apart, self.lost_or_cleared, self.farm.bags_filled_a_week)
