"""Twin of the flushes, kept or not, and of the stop whose whole year is best."""

from __future__ import annotations

import math

from tests.twin.farm_twin_ground import ROUNDING, Given, Results, chosen_rows, over

__all__ = ["CLOSE", "STOPS", "as_it_is", "flushes", "stop_choice"]

FLUSHES = 4
STOPS = ("one", "two", "three", "four")
CLOSE = 0.03
"""Two years that differ by no more than this share of the takings are as good as each other."""


def last_kept(given: Given) -> int:
    """The number of the last flush picked, the first at least."""
    return max(1, sum(bool(flush + 1 <= given["crop.flushes_kept"]) for flush in range(FLUSHES)))


def if_kept(given: Given, out: Results) -> Results:
    """Fresh weight over dry mix in each flush; of one that was never weighed, by how the typed ones fall off."""
    last = last_kept(given)
    table = given["recipe.efficiency_given"]
    typed = [sum(float(table[mix][flush]) for mix in chosen_rows(given)) for flush in range(FLUSHES)]
    counted = [float(each) for each in out["crop.efficiency"]]
    weighed = given["crop.yield_given"].lower() != "biological efficiency"
    moved = over(counted[last - 1], typed[last - 1])
    unknown = [weighed and not out["crop.flush_kept"][flush] and counted[flush] <= 0 for flush in range(FLUSHES)]
    return {
        "typed_efficiency": typed,
        "typed_last": typed[last - 1],
        "counted_last": counted[last - 1],
        "counted_over_typed": moved,
        "last_kept": float(last),
        "not_known": [float(each) for each in unknown],
        "efficiency": [typed[flush] * moved if unknown[flush] else counted[flush] for flush in range(FLUSHES)],
    }


def flushes(given: Given, out: Results) -> Results:
    """Every flush as if bags were kept for it: weight, days, and what it leaves of a bag that is opened."""
    found = if_kept(given, out)
    fresh = [out["bag.dry_mass"] * found["efficiency"][flush] * out["crop.reaching"][flush] for flush in range(FLUSHES)]
    ends = [float(day) for day in out["harvest.day_of_flush"]]
    now = ends[last_kept(given) - 1]
    sellable = 1 - min(1.0, float(given["crop.trim"]))
    sellable *= 1 - min(1.0, float(given["crop.shrink"]))
    last, following = (float(out[f"customer_year.{which}_one"]) for which in ("last", "next"))
    brings = [last if out["crop.flush_kept"][flush] else following for flush in range(FLUSHES)]
    work = float(out["one_more.grown_in_money"])
    leaves = [fresh[flush] * sellable * (brings[flush] - work) for flush in range(FLUSHES)]
    cost = over(out["one_more.bag_in_money"], out["crop.live_per_filled"])
    so_far = [sum(leaves[: flush + 1]) for flush in range(FLUSHES)]
    days = [float(out["harvest.days_place_taken"]) + end - now for end in ends]
    found |= {
        "fresh": fresh,
        "days": days,
        "days_now": now,
        "taken_per_picked": sellable,
        "brings": brings,
        "leaves": leaves,
        "bag_cost": cost,
        "leaves_so_far": [each - cost for each in so_far],
        "left_so_far": so_far,
        "leaves_a_day": [over(so_far[flush] - cost, days[flush]) for flush in range(FLUSHES)],
    }
    return {f"flushes.{name}": value for name, value in found.items()}


def cents(money: float) -> int:
    """Whole cents, halves away from zero."""
    amount = round(abs(money) * 100, 9)
    whole = math.floor(amount) + (1 if amount - math.floor(amount) >= 0.5 else 0)
    return int(math.copysign(whole, money))


def in_order(out: Results) -> list[int]:
    """The stops, from 0, the best year first; of equal ones the earlier."""
    return sorted(range(FLUSHES), key=lambda stop: (-cents(float(out[f"stop_year_{STOPS[stop]}.profit"])), stop))


def what_would_turn_it(out: Results, best: int, second: int, ahead: float) -> dict[str, float]:
    """How far prices, or the weight between the two stops, must move for the second to be as good."""
    takings = [float(out[f"stop_year_{stop}.net_takings"]) for stop in STOPS]
    picked = [sum(float(each) for each in out["flushes.fresh"][: stop + 1]) for stop in range(FLUSHES)]
    early, late = min(best, second), max(best, second)
    between = takings[late] * over(picked[late] - picked[early], picked[late])
    takings_apart = takings[second] - takings[best]
    sell_apart = abs(takings_apart) > abs(takings[best]) * ROUNDING
    return {
        "takings_apart": takings_apart,
        "sell_apart": float(sell_apart),
        "price_turn": over(ahead, takings_apart) if sell_apart else 0.0,
        "fresh_earlier": picked[early],
        "fresh_later": picked[late],
        "later_takings": takings[late],
        "takings_between": between,
        "best_is_later": float(best > second),
        "weight_turn": over(-ahead if best > second else ahead, between),
    }


def stop_choice(given: Given, out: Results) -> Results:
    """The best stop beside the next best."""
    best, second, *_ = in_order(out)
    profit = [float(out[f"stop_year_{stop}.profit"]) for stop in STOPS]
    takings = [float(out[f"stop_year_{stop}.net_takings"]) for stop in STOPS]
    ahead = profit[best] - profit[second]
    apart = over(ahead, abs(takings[best]))
    found: Results = {
        "best": best + 1.0,
        "second": second + 1.0,
        "best_word": best + 1.0,
        "second_word": second + 1.0,
        "best_profit": profit[best],
        "second_profit": profit[second],
        "best_takings": takings[best],
        "second_takings": takings[second],
        "best_bags": out[f"stop_year_{STOPS[best]}.bags"],
        "second_bags": out[f"stop_year_{STOPS[second]}.bags"],
        "ahead": ahead,
        "apart": apart,
        "clear": float(apart > CLOSE),
        "fresh_so_far": [sum(float(each) for each in out["flushes.fresh"][: stop + 1]) for stop in range(FLUSHES)],
        "none_pays": float(all(each <= 0 for each in out["flushes.leaves_so_far"])),
        **what_would_turn_it(out, best, second, ahead),
    }
    return {f"flush_choice.{name}": value for name, value in found.items()}


def as_it_is(given: Given, out: Results) -> Results:
    """The stop that is kept now."""
    stop = STOPS[last_kept(given) - 1]
    return {f"as_it_is.{name}": out[f"stop_year_{stop}.{name}"] for name in ("bags", "profit", "net_takings")}
