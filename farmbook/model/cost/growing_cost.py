"""What a bag costs by the time it fruits, stage by stage, with the lost bags carried by those that live."""

from __future__ import annotations

from farmbook.calc.calendar import DAYS_IN_A_WEEK
from farmbook.calc.loss import cost_per_survivor
from farmbook.calc.tolerance import is_rounding
from farmbook.expr.functions import any_of, joined, ratio, where
from farmbook.expr.nodes import Expr
from farmbook.expr.sentences import figure, say
from farmbook.model.cost.harvest import Harvest
from farmbook.model.cost.mixing import Mixing
from farmbook.model.cost.spawn_supply import SpawnSupply
from farmbook.model.crop.crop import Crop
from farmbook.model.mix.bag import Bag
from farmbook.model.place.farm_plan import Farm
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.model.steam.steamer_in_use import SteamerInUse
from farmbook.sections.declare import check, line, number, uses
from farmbook.sections.section import Section
from farmbook.sources import ARITHMETIC, COMMON_PRACTICE

__all__ = ["GrowingCost"]


class GrowingCost(Section):
    """Cost of growing, from the filling table to the spent bag, before picking and selling."""

    title = "What growing costs"

    farm = uses(Farm)
    bag = uses(Bag)
    mixing = uses(Mixing)
    steamer_in_use = uses(SteamerInUse)
    crop = uses(Crop)
    spawn = uses(Spawn)
    supply = uses(SpawnSupply)
    harvest = uses(Harvest)

    shelving_rate = number(
        "Bags shelved and checked in an hour of work",
        unit="bag_inoculated/person_hour",
        usual=(150, 400),
        hard=(1, 5000),
        default=260,
        how="Bags carried in and set on shelves, and looked over until they move, over the hours of all hands.",
        source=COMMON_PRACTICE,
    )
    opening_rate = number(
        "Bags moved and opened in an hour of work",
        unit="bag_live/person_hour",
        usual=(100, 300),
        hard=(1, 5000),
        default=170,
        how="Bags carried to the fruiting room and cut, over the hours of all hands.",
        source=COMMON_PRACTICE,
    )
    clearing_rate = number(
        "Spent bags cleared in an hour of work",
        unit="bag_live/person_hour",
        usual=(80, 200),
        hard=(1, 5000),
        default=130,
        how="Bags taken out and tipped, over the hours of all hands; washing the room is not in it.",
        source=COMMON_PRACTICE,
    )
    culling_rate = number(
        "Lost bags taken out in an hour of work",
        unit="bag_inoculated/person_hour",
        usual=(20, 120),
        hard=(1, 5000),
        default=60,
        how="Half a minute to three minutes a bag: find it, bag it, carry it out, note it.",
        source=COMMON_PRACTICE,
    )
    incubation_room_rate = number(
        "Room cost of a bag in the spawn run, for each week",
        unit="money/bag_inoculated/week",
        usual=(0, 0.5),
        hard=(0, 100),
        default=0,
        how="Rent, power and heat of the incubation room in a week, over the bags that stand in it.",
        source=COMMON_PRACTICE,
        decided=True,
        note="0 on purpose: rent and power stand with the yearly bills. Type it here only if you leave it out there.",
    )
    fruiting_room_rate = number(
        "Room cost of a fruiting place, for each week",
        unit="money/bag_live/week",
        usual=(0, 0.5),
        hard=(0, 100),
        default=0,
        how="Rent, power and water of the fruiting rooms in a week, over the places in them.",
        source=COMMON_PRACTICE,
        decided=True,
        note="0 on purpose: rent and power stand with the yearly bills. Type it here only if you leave it out there.",
    )

    # Work on a bag, and its room

    @line("Shelving and checking a bag", unit="money/bag_inoculated")
    def shelving_cost(self) -> Expr:
        """An hour of work over the bags done in it."""
        return ratio(self.farm.labour_rate, self.shelving_rate)

    @line("Moving and opening a bag", unit="money/bag_live")
    def opening_cost(self) -> Expr:
        """An hour of work over the bags done in it."""
        return ratio(self.farm.labour_rate, self.opening_rate)

    @line("Clearing a spent bag", unit="money/bag_live")
    def clearing_cost(self) -> Expr:
        """An hour of work over the bags done in it; hauling it away is a yearly bill."""
        return ratio(self.farm.labour_rate, self.clearing_rate)

    @line("Taking out a lost bag", unit="money/bag_inoculated")
    def culling_cost(self) -> Expr:
        """An hour of work over the bags taken out in it, at whatever stage they are lost."""
        return ratio(self.farm.labour_rate, self.culling_rate)

    @line("Room for a bag in the spawn run", unit="money/bag_inoculated")
    def incubation_room_cost(self) -> Expr:
        """Nothing as long as rent and power stand with the yearly bills; in both places they would count twice."""
        return self.incubation_room_rate * (self.harvest.spawn_run_days / DAYS_IN_A_WEEK)

    @line("Room for a bag in fruiting", unit="money/bag_live")
    def fruiting_room_cost(self) -> Expr:
        """Until the place is washed and free again: a bag lost on the way leaves its place empty till then."""
        return self.fruiting_room_rate * (self.harvest.days_place_taken / DAYS_IN_A_WEEK)

    # Stage by stage: what is added to each bag that enters, and the cost so far, the lost bags carried by those left

    @line("Mixed and filled: cost of a bag", unit="money/bag_filled")
    def filled_cost(self) -> Expr:
        """Ingredients, bag and tie, and the work of mixing and filling."""
        return self.bag.material_cost + self.mixing.mix_and_fill_cost

    @line("Steamed: cost so far of each bag steamed", unit="money/bag_filled")
    def cost_through_steaming(self) -> Expr:
        """A bag that bursts has cost as much as one that does not."""
        return self.filled_cost + self.steamer_in_use.cost_per_bag

    @line("Steamed: cost so far of each bag left", unit="money/bag_inoculated", source=ARITHMETIC, zero_is_none=True)
    def cost_after_steaming(self) -> Expr:
        """Those left carry the lost ones: cost divided by the share left, not raised by the share lost."""
        removal = joined(self.culling_cost, "money/bag_filled")
        return cost_per_survivor(
            self.cost_through_steaming, removal, self.crop.loss_steamed, self.crop.inoculated_per_filled
        )

    @line("Inoculated: added to each bag", unit="money/bag_inoculated")
    def inoculation_added(self) -> Expr:
        """Spawn and the work of putting it in."""
        return self.supply.cost_per_bag_inoculated + self.spawn.inoculation_cost

    @line("Inoculated: cost so far of each bag", unit="money/bag_inoculated", zero_is_none=True)
    def cost_after_inoculation(self) -> Expr:
        """No bag is lost at this step, so the cost is simply added."""
        return where(self.crop.inoculated_per_filled > 0, self.cost_after_steaming + self.inoculation_added, 0)

    @line("Spawn run: added to each bag", unit="money/bag_inoculated")
    def spawn_run_added(self) -> Expr:
        """Shelving and checking, and the room if it is counted here."""
        return self.shelving_cost + self.incubation_room_cost

    @line("Spawn run: cost so far of each bag that entered", unit="money/bag_inoculated", zero_is_none=True)
    def cost_through_spawn_run(self) -> Expr:
        """Before the bags lost here are carried by the others."""
        return where(self.crop.inoculated_per_filled > 0, self.cost_after_inoculation + self.spawn_run_added, 0)

    @line("Spawn run: cost so far of each bag left", unit="money/bag_live", source=ARITHMETIC, zero_is_none=True)
    def cost_after_spawn_run(self) -> Expr:
        """A bag moved to fruiting carries all bags lost up to here."""
        return cost_per_survivor(
            self.cost_through_spawn_run,
            self.culling_cost,
            self.crop.chosen_loss_in_spawn_run,
            self.crop.live_per_inoculated,
        )

    @line("Fruiting: taking bags out, for each bag moved there", unit="money/bag_live")
    def leaving_cost(self) -> Expr:
        """Bags that stand to the end are cleared, the others are taken out one by one before."""
        standing = self.crop.standing_at_end
        return self.clearing_cost * standing + joined(self.culling_cost, "money/bag_live") * (1 - standing)

    @line("Fruiting: added to each bag moved there", unit="money/bag_live")
    def fruiting_added(self) -> Expr:
        """Opening, the room if it is counted here, and taking the bag out again in the end."""
        return self.opening_cost + self.fruiting_room_cost + self.leaving_cost

    @line("Grown cost of a bag that fruits", unit="money/bag_live", zero_is_none=True)
    def grown_cost_per_live(self) -> Expr:
        """From the filling table until the spent bag is cleared away, before picking and selling.

        Steaming is in it with energy, water and work. Owning and upkeep of steamer and lab are not: they stand beside it.
        """
        return where(self.crop.live_per_filled > 0, self.cost_after_spawn_run + self.fruiting_added, 0)

    # What it comes to

    @line("Grown cost of a bag filled", unit="money/bag_filled", zero_is_none=True)
    def grown_cost_per_filled(self) -> Expr:
        """The same money over all bags filled: less for each, since there are more of them.

        Owning and upkeep of steamer and lab are not in it: they stand beside it.
        """
        return self.grown_cost_per_live * self.crop.live_per_filled

    @line("Grown cost of the weight picked, before picking and selling", unit="money/kg_picked", zero_is_none=True)
    def cost_per_picked(self) -> Expr:
        """Picking, packing, selling, yearly bills and the fixed weekly hours of rounds and washing come on top."""
        return ratio(self.grown_cost_per_filled, self.crop.picked_per_filled)

    @line("Grown cost of the weight packed, before picking and selling", unit="money/kg_packed", zero_is_none=True)
    def cost_per_packed(self) -> Expr:
        """Dearer than when picked: the trimmings cost as much to grow."""
        return ratio(self.grown_cost_per_filled, self.crop.packed_per_filled)

    @line(
        "Grown cost of the weight taken to customers, before picking and selling",
        unit="money/kg_taken",
        zero_is_none=True,
    )
    def cost_per_taken(self) -> Expr:
        """Picking, packing, selling and the yearly bills are still to come, and owning and upkeep of steamer and lab."""
        return ratio(self.grown_cost_per_filled, self.crop.taken_per_filled)

    # The other way round: what is spent at each stage, over all bags filled

    @line("Steamed: spent, over all bags filled", unit="money/bag_filled")
    def steaming_spent(self) -> Expr:
        """The steam load, and taking out the bags that burst."""
        return self.steamer_in_use.cost_per_bag + joined(self.culling_cost, "money/bag_filled") * self.crop.loss_steamed

    @line("Inoculated: spent, over all bags filled", unit="money/bag_filled")
    def inoculation_spent(self) -> Expr:
        """Only bags left after steaming are inoculated."""
        return self.inoculation_added * self.crop.inoculated_per_filled

    @line("Spawn run: spent, over all bags filled", unit="money/bag_filled")
    def spawn_run_spent(self) -> Expr:
        """With the taking out of the bags lost here."""
        culling = self.culling_cost * self.crop.chosen_loss_in_spawn_run
        return (self.spawn_run_added + culling) * self.crop.inoculated_per_filled

    @line("Fruiting: spent, over all bags filled", unit="money/bag_filled")
    def fruiting_spent(self) -> Expr:
        """Only bags left after the spawn run come here."""
        return self.fruiting_added * self.crop.live_per_filled

    @line("Spent in all, over all bags filled", unit="money/bag_filled")
    def spent_per_filled(self) -> Expr:
        """Money that goes out, with no bag carrying another: must agree with the grown cost of a bag filled."""
        before = self.filled_cost + self.steaming_spent + self.inoculation_spent
        return before + self.spawn_run_spent + self.fruiting_spent

    @line("Mixed and filled: share of the cost", unit="share")
    def filled_share(self) -> Expr:
        """Of all that is spent on growing."""
        return ratio(self.filled_cost, self.spent_per_filled)

    @line("Steamed: share of the cost", unit="share")
    def steaming_share(self) -> Expr:
        """Of all that is spent on growing."""
        return ratio(self.steaming_spent, self.spent_per_filled)

    @line("Inoculated: share of the cost", unit="share")
    def inoculation_share(self) -> Expr:
        """Of all that is spent on growing."""
        return ratio(self.inoculation_spent, self.spent_per_filled)

    @line("Spawn run: share of the cost", unit="share")
    def spawn_run_share(self) -> Expr:
        """Of all that is spent on growing."""
        return ratio(self.spawn_run_spent, self.spent_per_filled)

    @line("Fruiting: share of the cost", unit="share")
    def fruiting_share(self) -> Expr:
        """Of all that is spent on growing."""
        return ratio(self.fruiting_spent, self.spent_per_filled)

    @line("Spent in all, that bags left can carry", unit="money/bag_filled")
    def spent_carried(self) -> Expr:
        """All of it; 0 where no bag reaches fruiting, since then none is left to carry the cost."""
        left = self.crop.live_per_filled
        return where(any_of(left > 0, left < 0), self.spent_per_filled, 0)

    @line("Grown cost: the answer", unit="1")
    def answer(self) -> Expr:
        """In a sentence."""
        return say(
            "A bag that fruits has cost ",
            figure(self.grown_cost_per_live, 2, named=False),
            ", the good ones carrying the lost; that is ",
            figure(self.cost_per_taken, 2),
            ". Rooms, picking and selling come on top.",
        )

    @check(
        "Grown cost agrees with the money spent",
        kind="error",
        says="The cost that surviving bags carry is not the money spent: a formula of the cost sheet was changed.",
    )
    def cost_adds_up(self) -> Expr:
        """Worked out twice: carried along from stage to stage, and added up over all bags filled."""
        return is_rounding(self.grown_cost_per_filled - self.spent_carried, self.filled_cost, self.spent_per_filled)
