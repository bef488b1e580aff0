"""Twin of the ten changes set in order: the three worth most, and how many pass a limit."""

from __future__ import annotations

from tests.twin.farm_twin_ground import Given, Results

__all__ = ["NAMES", "SIZES", "change_ranks"]

SIZES = ("price", "weight", "losses", "bags", "pay", "energy", "spawn", "unsold", "weeks")
NAMES = (*(f"{what}_change" for what in SIZES), "own_change_year")
"""The ten in their order."""


def change_ranks(given: Given, out: Results) -> Results:
    """By what each is worth, passes and counts; of two worth the same the one that stands first."""
    del given
    passing, counted = ([float(out[f"{name}.{what}"]) for name in NAMES] for what in ("passes", "ranked"))
    order = sorted(range(len(NAMES)), key=lambda place: -float(out[f"{NAMES[place]}.gain"]))
    places = [float(place + 1) for place in order if counted[place]] + [0.0, 0.0, 0.0]
    return {
        "change_ranks.first": places[0],
        "change_ranks.second": places[1],
        "change_ranks.third": places[2],
        "change_ranks.ranked": sum(counted),
        "change_ranks.ranked_first": sum(counted[:5]),
        "change_ranks.ranked_last": sum(counted[5:]),
        "change_ranks.passing": sum(passing),
        "change_ranks.passing_first": sum(passing[:5]),
        "change_ranks.passing_last": sum(passing[5:]),
    }
