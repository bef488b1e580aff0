"""Twin of the year: things that wear out, the bills, and a ledger of what comes in and goes out in a typical year."""

from __future__ import annotations

from tests.twin.farm_twin_ground import ROUNDING, Given, Results, over, same, taken_of_a_profit
from tests.twin.farm_twin_loans import loans_of_a_year

__all__ = ["bills", "capital", "owned", "safety_paid", "year"]

LONGEST = 1000.0
"""Years after which money is worth nothing today."""
MONTHS = 12


def steamer_used(given: Given) -> str:
    """The table of the steamer in use."""
    return "vessel" if same(given["steamer.kind"], "pressure vessel") else "cabinet"


def worn_off(price: float, left: float, life: float) -> float:
    """What a thing loses a year."""
    return over(float(price) - float(left), float(life))


def worth_at_end(rate: float, life: float) -> float:
    """What 1 at the end of a life is worth today."""
    growth = 1 + rate
    return float(growth ** -min(life, LONGEST)) if growth > 0 else 0.0


def an_item(given: Given, row: int, rate: float) -> dict[str, float]:
    """One row of what is owned."""
    cost, left, life = (float(given[f"item.{name}"][row]) for name in ("price", "salvage", "life"))
    return owned(cost, left, life, rate)


def owned(cost: float, left: float, life: float, rate: float) -> dict[str, float]:
    """One thing owned: what it loses a year, and the level payment that stands for it."""
    names = ("yearly_loss", "end_of_life", "equal_share", "payment_factor", "owning_cost")
    at_end, equal = worth_at_end(rate, life), over(1, life)
    payment = equal if at_end == 1 else over(rate, 1 - at_end)
    owning = cost * payment - left * payment + left * rate
    return dict(zip(names, (worn_off(cost, left, life), at_end, equal, payment, owning), strict=True))


def equipment(given: Given, out: Results) -> dict[str, float]:
    """What steamer and lab lose a year, and what it costs to own them."""
    used, made = steamer_used(given), bool(out["spawn_source.made"])
    steamer = worn_off(*(given[f"{used}.{name}"] for name in ("price", "salvage", "life")))
    lab = worn_off(*(given[f"make_or_buy.{name}"] for name in ("lab_price", "resale", "life")))
    return {
        "steamer_loss": steamer,
        "lab_loss": lab if made else 0.0,
        "owning": float(out[f"{used}_year.owning_cost"]) + (float(out["make_or_buy.owning"]) if made else 0.0),
    }


def capital(given: Given, out: Results) -> Results:
    """Things that wear out."""
    rate, rows = float(out["steaming.yearly_rate"]), range(len(given["item.name"]))
    lines = [an_item(given, row, rate) for row in rows]
    each = {name: [line[name] for line in lines] for name in lines[0]}
    bought, costs = given["item.bought_in"], [float(cost) for cost in given["item.price"]]
    big = equipment(given, out)
    listed = sum(each["yearly_loss"]) + big["steamer_loss"] + big["lab_loss"]
    one_sum = same(given["capital.counted"], "one sum")
    rooms = 2.5 * float(out["fruiting_room.taken"])
    usual = rooms + big["steamer_loss"] + big["lab_loss"]
    typed = float(given["capital.own_loss"])
    in_one_sum = typed if given["capital.own_loss_given"] else usual
    found: Results = {
        "usual_rest": rooms,
        "usual_loss": usual,
        "steamer_then": big["steamer_loss"],
        "own_loss_counted": typed,
        "in_one_sum": in_one_sum,
        "lab_loss": big["lab_loss"],
        "items_loss": sum(each["yearly_loss"]),
        "listed_loss": listed,
        "loss": in_one_sum if one_sum else listed,
        "items_owning": sum(each["owning_cost"]),
        "owning": sum(each["owning_cost"]) + big["owning"],
        "items_cost": sum(costs),
        "to_buy": sum(cost for row, cost in enumerate(costs) if bought[row] > 0),
    }
    yearly = {
        f"{place}_year.yearly_loss": worn_off(*(given[f"{place}.{name}"] for name in ("price", "salvage", "life")))
        for place in ("cabinet", "vessel")
    }
    used = steamer_used(given)
    in_use: Results = {
        "steamer_in_use_year.yearly_loss": big["steamer_loss"],
        "steamer_in_use_year.owning_cost": float(out[f"{used}_year.owning_cost"]),
        "steamer_in_use_year.upkeep": float(given[f"{used}.upkeep"]),
        "steamer_in_use_year.loads_a_year": loads_a_year(given, out),
    }
    items: Results = {f"owned_items.{name}": values for name, values in each.items()}
    return yearly | in_use | items | {f"capital.{name}": value for name, value in found.items()}


def loads_a_year(given: Given, out: Results) -> float:
    """Steam loads of the weeks worked."""
    return float(out["steamer_in_use.loads_a_week"]) * float(given["farm.weeks_worked"])


def worked_out_energy(given: Given, out: Results) -> dict[str, float]:
    """Energy of steaming and of the lab, load by load and month by month, and with it that of the rooms."""
    loads = loads_a_year(given, out)
    steaming = loads * float(out["steamer_in_use.energy_cost_per_run"])
    steaming += MONTHS * float(out["steamer_in_use.demand_cost_per_month"])
    cooker = float(out["own_spawn_work.cooking_cost"]) * float(given["farm.weeks_worked"])
    lab = cooker if out["spawn_source.made"] else 0.0
    rooms = float(out["room_energy.cost"])
    return {
        "steaming_energy": steaming,
        "lab_energy": lab,
        "worked_energy": steaming + lab,
        "all_worked_energy": steaming + lab + rooms,
    }


def safety_paid(given: Given) -> float:
    """What is put by a year against what can hurt people."""
    return sum(float(given[f"safety.{name}"]) for name in ("inspection", "insurance", "alarms", "respirators"))


def listed_bills(given: Given, out: Results) -> dict[str, float]:
    """Every bill of the list, the water of steaming and of mist, and the upkeep of steamer and lab."""
    water = loads_a_year(given, out) * float(out["steamer_in_use.water_cost_per_run"])
    water += float(out["room_energy.water_cost"])
    upkeep = float(given[f"{steamer_used(given)}.upkeep"])
    if out["spawn_source.made"]:
        upkeep += float(given["make_or_buy.upkeep"])
    listed = water + upkeep
    for amount in given["bill.amount"]:
        listed += float(amount)
    listed += safety_paid(given)
    both = {"water_and_upkeep": water + upkeep, "water_and_upkeep_then": water + upkeep}
    return {"water": water, "upkeep": upkeep, "listed": listed, **both}


def bills(given: Given, out: Results) -> Results:
    """Energy, and all other bills."""
    energy, rest = worked_out_energy(given, out), listed_bills(given, out)
    known = bool(given["bills.energy_given"])
    counted = float(given["bills.energy"]) if known else energy["all_worked_energy"]
    of_rooms = counted - energy["worked_energy"]
    one_sum = same(given["bills.counted"], "one sum")
    but_energy = float(given["bills.in_all"]) - counted
    other = but_energy if one_sum else rest["listed"]
    found = {
        **energy,
        **rest,
        "energy_then": energy["all_worked_energy"],
        "energy_billed": counted,
        "in_one_sum": but_energy,
        "energy_cost": counted,
        "energy_of_rooms": of_rooms,
        "energy_not_explained": of_rooms - float(out["room_energy.cost"]),
        "other": other,
        "energy_covers_steaming": float(not known or of_rooms >= 0),
        "energy_is_in_the_bills": float(other >= 0),
    }
    return {f"bills.{name}": value for name, value in found.items()}


def goods(given: Given, out: Results) -> dict[str, float]:
    """Materials of the bags, and spawn as it is bought or as what it is made of."""
    weeks = float(given["farm.weeks_worked"])
    materials = float(out["farm.bags_filled_a_year"]) * float(out["bag.material_cost"])
    inoculated = float(out["spawn.bags_inoculated_a_week"]) * weeks
    spawn = inoculated * float(out["spawn.cost_per_bag_inoculated"])
    if out["spawn_source.made"]:
        spawn = weeks * float(out["own_spawn_work.materials_in_all"]) + float(out["own_spawn_work.yearly_bills"])
    return {
        "spawn_as_made": weeks * float(out["own_spawn_work.materials_in_all"])
        + float(out["own_spawn_work.yearly_bills"]),
        "materials": materials,
        "spawn": spawn,
        "goods": materials + spawn,
    }


def rooms_paid(given: Given, out: Results) -> float:
    """Rooms that are paid for each bag by the week."""
    week = float(out["growing_cost.incubation_room_cost"]) * float(out["spawn.bags_inoculated_a_week"])
    week += float(out["growing_cost.fruiting_room_cost"]) * float(out["harvest.live_a_week"])
    return week * float(given["farm.weeks_worked"])


def cash_book(given: Given, out: Results) -> dict[str, float]:
    """What goes out and comes in, each kind on a line of its own."""
    bought, rooms = goods(given, out), rooms_paid(given, out)
    standing = [float(out["bills.energy_cost"]), float(out["bills.other"]), rooms]
    selling = [float(out[f"customer_year.{name}_in_all"]) for name in ("fees", "packing", "stalls", "delivery")]
    gone_out = [bought["materials"], bought["spawn"], *standing, *selling, float(out["hours.labour_cost"])]
    come_in = float(out["customer_year.takings_in_all"])
    return bought | {
        "rooms_by_the_week": rooms,
        "standing": sum(standing),
        "selling": sum(selling),
        "cash_cost": sum(gone_out),
        "takings": come_in,
        "cash_profit": come_in - sum(gone_out),
    }


def household_goes(given: Given) -> float:
    """Living, and debts that are not in it."""
    return float(given["household.needs"]) + float(given["household.debts"])


def what_is_left(given: Given, out: Results, book: dict[str, float]) -> dict[str, float]:
    """From the cash book to the profit, and on to the household."""
    worn = float(out["capital.loss"])
    paid_back, interest = loans_of_a_year(given)
    profit = book["takings"] - (book["cash_cost"] + worn + interest)
    tax = profit * taken_of_a_profit(given) if profit > 0 else 0.0
    household = book["takings"] - (book["cash_cost"] + paid_back + tax + worn)
    left = household + float(given["household.other_income"]) - household_goes(given)
    own = float(out["hours.own_value"])
    return {
        "interest": interest,
        "repaid": paid_back - interest,
        "profit": profit,
        "profit_after_own_hours": profit - own,
        "tax": tax,
        "left": household,
        "left_over": left,
        "left_over_a_month": left / MONTHS,
        "earned_an_hour": over(profit, out["hours.own_a_year"]),
        "cost_in_money": book["cash_cost"] + worn + interest,
        "full_cost": book["cash_cost"] + worn + interest + own,
    }


def cost_of_one(given: Given, out: Results, money: float, full: float) -> dict[str, float]:
    """The year's cost over kilograms, bags, loads and places."""
    sold, bags = out["customer_year.sold_in_all"], out["farm.bags_filled_a_year"]
    place_weeks = float(out["fruiting_room.taken"]) * float(given["farm.weeks_worked"])
    return {
        "place_weeks": place_weeks,
        "money_per_sold": over(money, sold),
        "full_per_sold": over(full, sold),
        "money_per_bag": over(money, bags),
        "full_per_bag": over(full, bags),
        "full_per_load": over(full, loads_a_year(given, out)),
        "full_per_place_week": over(full, place_weeks),
    }


def price_parts(out: Results, book: dict[str, float], profit: float, owning: float) -> dict[str, float]:
    """Where the average price goes, part by part of what is sold."""
    sold, price = float(out["customer_year.sold_in_all"]), float(out["customer_year.average_price"])
    bought = book["materials"] + book["spawn"]
    parts = {"goods": bought, "labour": float(out["hours.labour_cost"]), "standing": book["standing"]}
    parts |= {"selling": book["selling"], "owning": owning, "left": profit}
    found = {name: over(money, sold) for name, money in parts.items()}
    whole = sum(found.values())
    costs = whole - found["left"]
    return found | {
        "costs": costs,
        "added_up": whole,
        "all_parts": float(abs(whole - price) <= ROUNDING * (abs(costs) + abs(price))),
    }


def break_even(out: Results, money: float, full: float) -> dict[str, float]:
    """The price, and the weight sold, at which nothing is left and nothing is missing."""
    sold, takings = float(out["customer_year.sold_in_all"]), float(out["customer_year.takings_in_all"])
    fees, packing = float(out["customer_year.fees_in_all"]), float(out["customer_year.packing_in_all"])
    pieces = float(out["picking.piece_cost"])
    kept = 1 - fees / takings if takings else 0.0
    with_the_weight = over(packing + pieces, sold)
    leaves = float(out["customer_year.average_price"]) * kept - with_the_weight
    enough = (money - fees - packing - pieces) / leaves if leaves > 0 else 0.0
    return {
        "share_kept": kept,
        "price_in_money": over(money - fees, sold * kept),
        "price_in_full": over(full - fees, sold * kept),
        "with_each": with_the_weight,
        "whatever_is_sold": money - fees - packing - pieces,
        "left_of_price": leaves,
        "sold": enough,
        "picked": over(float(out["crop.picked_per_filled"]) * enough, sold),
        "share_needed": over(enough, sold),
        "safety": 1 - over(enough, sold) if enough > 0 else 0.0,
    }


def year(given: Given, out: Results) -> Results:
    """A typical year of the whole farm."""
    book = cash_book(given, out)
    left = what_is_left(given, out, book)
    money, full = left["cost_in_money"], left["full_cost"]
    unaccounted = money + left["profit"] - book["takings"]
    household = {name: left.pop(name) for name in ("tax", "left", "left_over", "left_over_a_month")}
    loans = {name: left.pop(name) for name in ("interest", "repaid")}
    household["goes"] = household_goes(given)
    household["lives"] = float(household["goes"] <= 0 or household["left_over"] >= 0)
    household["incorporated"] = float(same(given["household.form"], "corporation"))
    adds_up = float(abs(unaccounted) <= ROUNDING * (abs(money) + abs(book.pop("takings"))))
    parts: dict[str, Results] = {
        "loans": loans,
        "year": {**book, **left, **cost_of_one(given, out, money, full), "adds_up": adds_up},
        "household": household,
        "price_parts": price_parts(out, book, left["profit"], float(out["capital.loss"]) + loans["interest"]),
        "break_even": break_even(out, money, full),
    }
    return {f"{part}.{name}": value for part, found in parts.items() for name, value in found.items()}
