"""Lethal rates and minutes of cooking in print."""

from __future__ import annotations

from typing import Final

from farmbook.calc import lethality
from tests.calc import chains
from tests.calc.published import HowKnown, Published

NOTE: Final = "technical note on F0, a copy; scribd.com/doc/377248"
TABLES: Final = "tables of lethal rates (Stumbo; Ph. Eur. 5.1.5), worked out with numpy"
EXACT: Final = "exact by the definition"

_AT_121_1: Final = (
    # degC, minutes at 121.1 degC for one minute, z 10 degC
    ("90", "0.000776"),
    ("95", "0.002455"),
    ("98", "0.004898"),
    ("100", "0.007762"),
    ("105", "0.024547"),
    ("110", "0.077625"),
    ("117", "0.38905"),
    ("118", "0.48978"),
    ("119", "0.61660"),
    ("120", "0.77625"),
    ("121", "0.97724"),
    ("122", "1.2303"),
    ("123", "1.5488"),
    ("124", "1.9498"),
    ("125", "2.4547"),
    ("126", "3.0903"),
)

_AT_250: Final = (
    # degF, minutes at 250 degF for one minute, z 18 degF
    ("200", "0.0017"),
    ("212", "0.0077"),
    ("220", "0.0215"),
    ("230", "0.0774"),
    ("240", "0.2783"),
    ("245", "0.5275"),
    ("252", "1.2915"),
    ("260", "3.5938"),
)

_LOG: Final = tuple(
    f"{reading} degC" for reading in (95, 100, 105, 110, 115, 118, 120, *([121] * 10), 120, 115, 108, 100)
)


_HOLDS: Final[tuple[tuple[str, HowKnown, str, str, str, str, str, str], ...]] = (
    (NOTE, "copy", "1.5 min", "111 degC", "121 degC", "15 min", "1e-9", EXACT),
    (NOTE, "library", "29.93 min", "124 degC", "121 degC", "15 min", "", ""),
    ("numpy", "library", "5.589 min", "100.0 degC", "121.1 degC", "12 h", "", ""),
    ("numpy", "library", "3.526 min", "98.0 degC", "121.1 degC", "12 h", "", ""),
    (
        "Ajonina and Tatah 2012: bags at 100 degC for 5 h",
        "library",
        "2.33 min",
        "100 degC",
        "121.1 degC",
        "5 h",
        "",
        "",
    ),
)


def _held(core: str, reference: str, time: str) -> dict[str, str]:
    return {"core": core, "reference": reference, "z_value": "10 delta_degC", "time": time}


ROWS: Final = (
    *(
        Published(
            lethality.lethal_rate,
            TABLES,
            "reference 121.1 degC, z 10 degC",
            "library",
            rate,
            {"temperature": f"{hot} degC", "reference": "121.1 degC", "z_value": "10 delta_degC"},
        )
        for hot, rate in _AT_121_1
    ),
    *(
        Published(
            lethality.lethal_rate,
            "canning texts; the printed table is recalled, the values worked out with numpy",
            "reference 250 degF, z 18 degF",
            "library",
            rate,
            {"temperature": f"{hot} degF", "reference": "250 degF", "z_value": "18 delta_degF"},
        )
        for hot, rate in _AT_250
    ),
    *(
        Published(
            chains.cooked_at,
            source,
            "worked example",
            how,
            printed,
            _held(core, reference, time),
            within=within,
            because=because,
        )
        for source, how, printed, core, reference, time, within, because in _HOLDS
    ),
    Published(
        chains.cooked_on_ramp,
        "closed form of the integral; scipy quad",
        "100 to 121.1 degC at 1 degC a minute",
        "library",
        "4.30923 min",
        {
            "start": "100 degC",
            "end": "121.1 degC",
            "time": "21.1 min",
            "reference": "121.1 degC",
            "z_value": "10 delta_degC",
        },
    ),
    Published(
        chains.cooked_by_log,
        "numpy trapezoid",
        "21 readings a minute apart",
        "library",
        "12.46961 min",
        {"readings": _LOG, "reference": "121.1 degC", "z_value": "10 delta_degC", "step": "1 min"},
    ),
)
