"""Heat, air, light and water of the fruiting rooms."""

from __future__ import annotations

from farmbook.model.rooms.fruiting_room import FruitingRoom
from farmbook.model.rooms.room_climate import RoomClimate
from farmbook.sections.declare import number, uses
from farmbook.sources import COMMON_PRACTICE

__all__ = ["FruitingClimate"]


class FruitingClimate(RoomClimate, words="fruiting rooms"):
    """Fresh air by the hour carries most of the heat away, and mist takes up more."""

    title = "The fruiting rooms: heat, air, light and water"

    room = uses(FruitingRoom)

    temperature = number(
        "Temperature held in the fruiting rooms",
        unit="degC",
        usual=(10, 24),
        hard=(0, 40),
        default=16,
        how="Thermometer at mid height, mean of day and night; it depends on the strain.",
        source=COMMON_PRACTICE,
    )
    air_changes = number(
        "Air changes an hour in the fruiting rooms",
        unit="1/h",
        usual=(1, 8),
        hard=(0, 100),
        default=4,
        how="Flow of the fans over the air in the rooms, times the share of the hour they run.",
        source=COMMON_PRACTICE,
    )
    bag_heat = number(
        "Heat that a bag gives off in the fruiting rooms",
        unit="W/place",
        usual=(0.1, 2),
        hard=(0, 50),
        default=0.5,
        how="Hard to measure: about half of what a bag gives off in the incubation room.",
        source=COMMON_PRACTICE,
        note="From memory.",
    )
    mist = number(
        "Water misted for each bag a day in the fruiting rooms",
        unit="L/place/day",
        usual=(0.01, 0.12),
        hard=(0, 10),
        default=0.05,
        how="Read the meter of the mist maker over a week, over the bags there.",
        source=COMMON_PRACTICE,
        note="From memory, 4 to 11 litres a day for a hundred bags where floors are hosed too; that water does not evaporate.",
    )
