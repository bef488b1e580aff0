"""Heat, air, light and water of the incubation room."""

from __future__ import annotations

from farmbook.model.rooms.incubation_room import IncubationRoom
from farmbook.model.rooms.room_climate import RoomClimate
from farmbook.sections.declare import number, uses
from farmbook.sources import COMMON_PRACTICE

__all__ = ["IncubationClimate"]


class IncubationClimate(RoomClimate, words="incubation room"):
    """Growing bags warm it, so it often wants cooling."""

    title = "The incubation room: heat, air, light and water"

    room = uses(IncubationRoom)

    temperature = number(
        "Temperature held in the incubation room",
        unit="degC",
        usual=(18, 26),
        hard=(0, 40),
        default=22.5,
        how="Thermometer at mid height; the middle of a bag is some degrees warmer and must stay below 29 degC (85 degF).",
        source=COMMON_PRACTICE,
    )
    air_changes = number(
        "Air changes an hour in the incubation room",
        unit="1/h",
        usual=(0.1, 4),
        hard=(0, 100),
        default=0.5,
        how="Flow of the fan over the air in the room; with no fan, some 0.3 to 1 through cracks and doors.",
        source=COMMON_PRACTICE,
    )
    bag_heat = number(
        "Heat that a bag gives off in the incubation room",
        unit="W/place",
        usual=(0.3, 3),
        hard=(0, 50),
        default=1,
        how="Hard to measure: the cooling that a full room wants on a day as warm as the room, over its bags.",
        source=COMMON_PRACTICE,
        note="From memory: 1 to 3 W at its strongest for a bag of 2 to 3 kg, less on average.",
    )
    mist = number(
        "Water misted for each bag a day in the incubation room",
        unit="L/place/day",
        usual=(0, 0.05),
        hard=(0, 10),
        default=0,
        how="Read the meter of the mist maker over a week, over the bags there.",
        source=COMMON_PRACTICE,
    )
