"""Twin of make or buy: both ways of having spawn side by side, year by year, and where the answer turns."""

from __future__ import annotations

from tests.twin.farm_twin_ground import Given, Results, nothing_left, over, same

__all__ = ["make_or_buy", "make_or_buy_turn", "make_or_buy_worth"]

TOO_CLOSE = 0.1
YEARS = range(11)
STEPS = range(7)


def bag_lost_in_the_run(given: Given, out: Results) -> dict[str, float]:
    """What a bag lost in the spawn run costs, whichever way its spawn comes."""
    before = out["growing_cost.cost_through_steaming"] + out["spawn.cost_per_bag_inoculated"]
    spent = before + out["spawn.inoculation_cost"] + out["growing_cost.spawn_run_added"]
    limit = given["make_or_buy.limit"]
    place_is_lost = same(limit, "the steamer") or same(limit, "the lab or the spawn run room")
    margin = float(given["make_or_buy.bag_leaves"]) if place_is_lost else 0.0
    return {
        "spent_on_bag": spent,
        "margin_lost": margin,
        "lost_bag_cost": spent + out["growing_cost.culling_cost"] + margin,
    }


def owning(given: Given) -> dict[str, float]:
    """The lab as an equal payment a year: what is borrowed and paid off, and the interest on what is left in it."""
    rate, life = float(given["make_or_buy.wanted_return"]), float(given["make_or_buy.life"])
    laid_out = given["make_or_buy.lab_price"] + given["make_or_buy.trials"]
    at_end = 1 / (1 + rate) ** life
    equal = over(1, life)
    factor = over(rate, 1 - at_end) if rate else equal
    left = float(given["make_or_buy.resale"])
    return {
        "capital": laid_out,
        "discount_at_end": at_end,
        "equal_share": equal,
        "owning_factor": factor,
        "owning": (laid_out - left) * factor + left * rate,
    }


def spawn_bill_of_a_week(given: Given, out: Results) -> float:
    """Money for bought spawn: every delivery at its price, or so much for each bag if that is all that is known."""
    if same(given["spawn.counted"], "one figure"):
        return float(given["spawn.own_cost"]) * float(out["spawn.bags_inoculated_a_week"])
    return float(out["spawn.order_a_week"]) * float(out["spawn.landed_price"])


def yearly(given: Given, out: Results, lost_bag: float) -> dict[str, float]:
    """Cost a year of both ways, the lab left out."""
    weeks = given["farm.weeks_worked"]
    bags = out["spawn.bags_inoculated_a_week"] * weeks
    extra = bags * given["spawn.extra_loss"]
    crowded_out = out["own_spawn.steamed"] * (1 - out["crop.loss_steamed"]) * weeks
    full = same(given["make_or_buy.limit"], "the steamer")
    displaced = crowded_out * given["make_or_buy.bag_leaves"] if full else 0.0
    running = out["own_spawn_work.cost_a_year"] + given["make_or_buy.upkeep"]
    return {
        "bags_a_year": bags,
        "bought": spawn_bill_of_a_week(given, out) * weeks,
        "extra_bags_lost": extra,
        "extra_loss_cost": extra * lost_bag,
        "bags_displaced": crowded_out,
        "displaced": displaced,
        "running": running,
        "made_without_lab": running + extra * lost_bag + displaced,
    }


def comparison(found: Results) -> Results:
    """Which way is cheaper, and whether that can be trusted."""
    bought, made = found["bought"], found["made_without_lab"] + found["owning"]
    gap = over(abs(bought - made), max(bought, made))
    close = gap < TOO_CLOSE
    return {
        "made": made,
        "advantage": bought - made,
        "advantage_without_loss": bought - (made - found["extra_loss_cost"]),
        "saving": bought - found["made_without_lab"],
        "dearer": max(bought, made),
        "gap": gap,
        "too_close": float(close),
        "verdict": 3.0 if close else 2.0 if bought > made else 1.0,
    }


def make_or_buy(given: Given, out: Results) -> Results:
    """Both ways, a year."""
    bag = bag_lost_in_the_run(given, out)
    found: Results = {**bag, **yearly(given, out, bag["lost_bag_cost"]), **owning(given)}
    found |= comparison(found)
    here, there = bag["spent_on_bag"], out["lost_bags.cost_in_spawn_run"]
    # the sheet Cost has the spawn in use in the bag, here it is always bought
    other_spawn = out["spawn.cost_per_bag_inoculated"] - out["spawn_supply.cost_per_bag_inoculated"]
    again = there + other_spawn - out["growing_cost.culling_cost"]
    found["spent_again"] = again
    found["lost_bag_agrees"] = nothing_left(again - here, here, there)
    return {f"make_or_buy.{name}": value for name, value in found.items()}


def years_in_use(given: Given) -> list[int]:
    """The whole years in which the lab works."""
    return [year for year in YEARS if 1 <= year <= given["make_or_buy.life"]]


def flows(given: Given, out: Results) -> dict[str, list[float]]:
    """Money of each year; every year stands for its end."""
    used = years_in_use(given)
    found: dict[str, list[float]] = {}
    for year in YEARS:
        paid = out["make_or_buy.capital"] if year == 0 else 0.0
        saved = out["make_or_buy.saving"] if year in used else 0.0
        sold = float(given["make_or_buy.resale"]) if used and year == used[-1] else 0.0
        today = 1 / (1 + given["make_or_buy.wanted_return"]) ** year
        row = {
            "counted": year + 1.0,
            "year": float(year),
            "at_start": float(year == 0),
            "in_use": float(year in used),
            "at_end": float(bool(used) and year == used[-1]),
            "paid": paid,
            "saved": saved,
            "sold": sold,
            "flow": saved + sold - paid,
            "discount": today,
            "worth": (saved + sold - paid) * today,
            "saved_worth": saved * today,
            "gained": max(0.0, saved),
            "gained_worth": max(0.0, saved * today),
            "spent_on_making": out["make_or_buy.made_without_lab"] if year in used else 0.0,
        }
        for name, value in row.items():
            found.setdefault(name, []).append(value)
    return found


def paying_back(capital: float, saved: list[float], used: list[int]) -> dict[str, list[float]]:
    """Year by year: what is back less the capital; what is short when it starts; how much of it that takes."""
    still = 0.0
    found: dict[str, list[float]] = {"balance": [], "short": [], "share": [], "unpaid": []}
    for year in YEARS:
        share = min(1.0, max(0.0, still) / saved[year]) if saved[year] > 0 else 1.0
        found["short"].append(-max(0.0, still))
        found["share"].append(share)
        found["unpaid"].append(share if year in used and still > 0 else 0.0)
        still = capital if year == 0 else still - saved[year]
        found["balance"].append(-still)
    return found


def pay_back_lines(out: Results, money: dict[str, list[float]], used: list[int]) -> Results:
    """Years until the lab is paid back, without interest and with."""
    capital = out["make_or_buy.capital"]
    plain = paying_back(capital, money["saved"], used)
    later = paying_back(capital, money["saved_worth"], used)
    state = 1.0
    if used and plain["balance"][used[-1]] >= 0:
        state = 3.0 if later["balance"][used[-1]] >= 0 else 2.0
    return {
        "balance": plain["balance"],
        "short": plain["short"],
        "share_to_pay": plain["share"],
        "unpaid": plain["unpaid"],
        "payback": sum(plain["unpaid"]) if state >= 2 else 0.0,
        "discounted_balance": later["balance"],
        "discounted_short": later["short"],
        "discounted_share": later["share"],
        "discounted_unpaid": later["unpaid"],
        "discounted_payback": sum(later["unpaid"]) if state == 3 else 0.0,
        "paid_back": state,
    }


def worth_at(rate: float, flow: list[float]) -> float:
    """What the flows are worth today at a yearly rate."""
    return sum(money / (1 + rate) ** year for year, money in enumerate(flow))


def rate_of(flow: list[float]) -> float:
    """The rate between 0 and far more than anyone earns at which the flows are worth nothing, by halving."""
    low, high = 0.0, 1e6
    for _ in range(200):
        middle = (low + high) / 2
        if worth_at(middle, flow) > 0:
            low = middle
        else:
            high = middle
    return low


def rate_lines(flow: list[float], *, at_once: bool) -> Results:
    """Whether the money in the lab earns a rate, and which."""
    both_signs = min(flow) < 0 < max(flow)
    earns = both_signs and sum(flow) > 0 and not at_once
    return {
        "flow_in_all": sum(flow),
        "sign_changes": float(both_signs),
        "back_at_once": float(at_once),
        "has_rate": float(earns),
        "rate": rate_of(flow) if earns else 0.0,
        "rate_in_words": 2.0 if earns else 3.0 if at_once else 1.0,
    }


def running_sums(out: Results, money: dict[str, list[float]]) -> Results:
    """What both ways have taken so far."""
    bought, made = [0.0], [float(out["make_or_buy.capital"])]
    for year in YEARS[1:]:
        used = money["in_use"][year]
        bought.append(bought[-1] + used * out["make_or_buy.bought"])
        made.append(made[-1] + used * out["make_or_buy.made_without_lab"] - money["sold"][year])
    return {"bought_so_far": bought, "made_so_far": made}


def bags_left_with_own_spawn(given: Given, out: Results) -> float:
    """Of the bags inoculated with bought spawn: those that would be left if own spawn lost its share on top."""
    left = 1 - out["crop.chosen_loss_in_spawn_run"] - given["spawn.extra_loss"]
    return float(left)


def make_or_buy_worth(given: Given, out: Results) -> Results:
    """The lab over its life."""
    used, money = years_in_use(given), flows(given, out)
    whole = len(used) == given["make_or_buy.life"] and len(used) >= 1
    value = sum(money["worth"])
    saved = out["make_or_buy.advantage"]
    # an equal payment stands for the flows only over a whole number of years
    by_payment = value * out["make_or_buy.owning_factor"] if whole else saved
    found: Results = {
        **money,
        "worth_in_all": value,
        **pay_back_lines(out, money, used),
        **rate_lines(money["flow"], at_once=bool(out["make_or_buy.saving"] >= out["make_or_buy.capital"])),
        **running_sums(out, money),
        "years_in_use": float(len(used)),
        "life_whole": float(whole),
        "worth_a_year": by_payment,
        "worth_agrees": nothing_left(by_payment - saved, out["make_or_buy.bought"], out["make_or_buy.made"]),
        "resale_fits": float(given["make_or_buy.resale"] <= given["make_or_buy.lab_price"]),
        "losses_fit": float(out["spawn_source.made"] == 1 or bags_left_with_own_spawn(given, out) > 0),
    }
    return {f"make_or_buy_worth.{name}": value for name, value in found.items()}


def for_each_bag(given: Given, out: Results) -> dict[str, float]:
    """What each bag adds to the cost of making, and what stays the same for few bags as for many."""
    weeks, bags = given["farm.weeks_worked"], out["spawn.bags_inoculated_a_week"]
    growing = out["own_spawn_work.work_cost"] * out["own_spawn_work.growing_share_of_hours"]
    goods = over(out["own_spawn_work.goods_cost"] + growing, bags)
    extra = given["spawn.extra_loss"] * out["make_or_buy.lost_bag_cost"]
    losses = extra + over(out["make_or_buy.displaced"], bags * weeks) if bags * weeks else 0.0
    steady_work = (out["own_spawn_work.work_cost"] - growing) * weeks
    bills = out["own_spawn_work.yearly_bills"] + given["make_or_buy.upkeep"]
    return {
        "growing_work": growing,
        "standing_work": steady_work,
        "goods_per_bag": goods,
        "losses_per_bag": losses,
        "per_bag": goods + losses,
        "fixed": steady_work + bills + out["make_or_buy.owning"],
    }


def paying_from(given: Given, out: Results, found: dict[str, float]) -> dict[str, float]:
    """How many bags it takes for making to pay."""
    saved_by_a_bag = out["spawn.cost_per_bag_inoculated"] - found["per_bag"]
    year = over(found["fixed"], saved_by_a_bag) if saved_by_a_bag > 0 else 0.0
    week = over(over(year, given["farm.weeks_worked"]), 1 - out["crop.loss_steamed"])
    enough = given["farm.bags_filled_a_week"] >= week
    state = 1.0 if saved_by_a_bag <= 0 else 3.0 if enough else 2.0
    return {"pays_from_a_year": year, "pays_from": week, "pays_in_words": state}


def loss_table(given: Given, out: Results) -> Results:
    """Hours of lab work at which both ways cost the same, for each extra loss."""
    weeks = given["farm.weeks_worked"]
    work = out["own_spawn_work.work_cost"] * weeks
    hour = out["farm.labour_rate"] * weeks
    bare = out["make_or_buy.made"] - work - out["make_or_buy.extra_loss_cost"]
    found: Results = {"without_work_and_loss": bare}
    for step in STEPS:
        loss = 0.005 * step
        bill = loss * out["make_or_buy.bags_a_year"] * out["make_or_buy.lost_bag_cost"]
        left = out["make_or_buy.bought"] - bare - bill
        row = {
            "loss_step": step + 1.0,
            "loss": loss,
            "loss_cost": bill,
            "left_for_work": left,
            "turning_hours_a_year": max(0.0, over(left, out["farm.labour_rate"])),
            "turning_hours": max(0.0, over(left, hour)),
            "advantage_at_loss": left - work,
        }
        for name, value in row.items():
            found.setdefault(name, []).append(value)
    every_bag = out["make_or_buy.bags_a_year"] * out["make_or_buy.lost_bag_cost"]
    found["turning_loss"] = max(0.0, over(out["make_or_buy.advantage_without_loss"], every_bag))
    return found


def bad_batches(given: Given, out: Results) -> dict[str, float]:
    """What one bad batch or one bad delivery reaches, and what a week without spawn costs."""
    used = out["own_spawn_way.used_here"]
    last = next(row for row in range(4) if used[row])
    bags, leaves = out["spawn.bags_inoculated_a_week"], given["make_or_buy.bag_leaves"]
    ruined = out["make_or_buy.spent_on_bag"] + out["growing_cost.culling_cost"] + leaves
    made = over(bags, out["own_spawn.batches"][last])
    bought = bags * given["make_or_buy.delivery_weeks"]
    return {
        "last_step": last + 1.0,
        "reached_made": made,
        "reached_bought": bought,
        "ruined_bag_cost": ruined,
        "risk_made": made * ruined,
        "risk_bought": bought * ruined,
        "risk_made_a_year": made * ruined * given["make_or_buy.bad_made"],
        "risk_bought_a_year": bought * ruined * given["make_or_buy.bad_bought"],
        "week_without": bags * leaves,
    }


def make_or_buy_turn(given: Given, out: Results) -> Results:
    """Where the answer turns."""
    bag = for_each_bag(given, out)
    made = out["make_or_buy.made"]
    # without a bag there is no part for each bag, though hours typed by hand still cost
    bags = out["make_or_buy.bags_a_year"]
    again = bag["fixed"] + bag["per_bag"] * bags if bags else made
    found: Results = {
        **bag,
        **paying_from(given, out, bag),
        **loss_table(given, out),
        **bad_batches(given, out),
        "made_again": again,
        "made_adds_up": nothing_left(again - made, bag["fixed"], made),
    }
    return {f"make_or_buy_turn.{name}": value for name, value in found.items()}
