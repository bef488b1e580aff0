"""Twin of air and steam: pressure by height, boiling point and steam pressure by the release of 1997."""

from __future__ import annotations

from tests.twin.farm_twin_ground import Given, Results

__all__ = ["altitude_boiling", "altitude_pressure", "site", "vessel_steam", "wanted_steam"]

N = (
    1167.0521452767,
    -724213.16703206,
    -17.073846940092,
    12020.82470247,
    -3232555.0322333,
    14.91510861353,
    -4823.2657361591,
    405113.40542057,
    -0.23855557567849,
    650.17534844798,
)
"""IAPWS R7-97, region 4, table 34: coefficients 1 to 10."""
ICE, CRITICAL = 273.15, 647.096
KILOPASCALS_IN_A_PSI = 6.894757293168
METRES_IN_A_FOOT = 0.3048
HEIGHTS = range(9)


def steam_pressure_steps(kelvin: float) -> dict[str, float]:
    """The equation from temperature to pressure, step by step; the pressure in kPa."""
    n1, n2, n3, n4, n5, n6, n7, n8, n9, n10 = N
    theta = kelvin + n9 / (kelvin - n10)
    a = theta**2 + n1 * theta + n2
    b = n3 * theta**2 + n4 * theta + n5
    c = n6 * theta**2 + n7 * theta + n8
    under_the_root = b**2 - 4 * a * c
    root = 2 * c / (-b + under_the_root**0.5)
    return {
        "absolute_wanted": kelvin,
        "distance": kelvin - n10,
        "scaled": theta,
        "square": a,
        "linear": b,
        "alone": c,
        "radicand": under_the_root,
        "root": root,
        "pressure": 1000 * root**4,
    }


def boiling_kelvin(kilopascals: float) -> float:
    """The temperature whose steam has this pressure, found by halving."""
    low, high = ICE, CRITICAL
    for _ in range(60):
        middle = (low + high) / 2
        if steam_pressure_steps(middle)["pressure"] < kilopascals:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def boiling_steps(kilopascals: float) -> dict[str, float]:
    """The equation from pressure to temperature, step by step; the temperature comes from the other direction."""
    n1, n2, n3, n4, n5, n6, n7, n8, n9, n10 = N
    beta = (kilopascals / 1000) ** 0.25
    e = beta**2 + n3 * beta + n6
    f = n1 * beta**2 + n4 * beta + n7
    g = n2 * beta**2 + n5 * beta + n8
    d = 2 * g / (-f - (f**2 - 4 * e * g) ** 0.5)
    return {
        "root": beta,
        "square": e,
        "linear": f,
        "alone": g,
        "radicand": f**2 - 4 * e * g,
        "scaled": d,
        "both_added": n10 + d,
        "both_multiplied": n9 + n10 * d,
        "second_radicand": (n10 + d) ** 2 - 4 * (n9 + n10 * d),
        "absolute_temperature": boiling_kelvin(kilopascals),
    }


def air_pressure(metres: float) -> float:
    """kPa on a mean day, by the United States Standard Atmosphere of 1976."""
    kelvin = 288.15 - 0.0065 * metres
    return float(101.325 * (kelvin / 288.15) ** 5.255876)


def site(given: Given, out: Results) -> Results:
    """Air pressure and boiling point where the farm lies."""
    counted = min(float(given["site.altitude"]), 11_000.0)
    pressure = air_pressure(counted)
    steps = boiling_steps(pressure)
    found = {
        **steps,
        "height_counted": counted,
        "pressure": pressure,
        "boiling_point": steps["absolute_temperature"] - ICE,
    }
    return {f"site.{name}": value for name, value in found.items()}


def by_height(rows: list[dict[str, float]]) -> dict[str, list[float]]:
    """Rows brought into columns."""
    return {name: [row[name] for row in rows] for name in rows[0]}


def altitude_boiling(given: Given, out: Results) -> Results:
    """Boiling without pressure, every thousand feet."""
    rows = []
    for number in HEIGHTS:
        height = 1000 * METRES_IN_A_FOOT * number
        steps = boiling_steps(air_pressure(height))
        boiling = steps["absolute_temperature"] - ICE
        place = {"row": number + 1.0, "height": height, "pressure": air_pressure(height), "boiling_point": boiling}
        rows.append({**steps, **place})
    return {f"altitude_boiling.{name}": value for name, value in by_height(rows).items()}


def wanted_steam(given: Given, out: Results) -> Results:
    """The gauge pressure that a wanted temperature needs."""
    steps = steam_pressure_steps(float(given["vessel.wanted_temperature"]) + ICE)
    found = {**steps, "gauge_here": steps["pressure"] - out["site.pressure"]}
    return {f"wanted_steam.{name}": value for name, value in found.items()}


def altitude_pressure(given: Given, out: Results) -> Results:
    """Steam behind the same gauge reading, every thousand feet."""
    rows = []
    for number in HEIGHTS:
        air = air_pressure(1000 * METRES_IN_A_FOOT * number)
        pressure = air + 15 * KILOPASCALS_IN_A_PSI
        steps = boiling_steps(pressure)
        wanted = out["wanted_steam.pressure"] - air
        temperature = steps["absolute_temperature"] - ICE
        rows.append({**steps, "pressure": pressure, "temperature": temperature, "gauge_wanted": wanted})
    return {f"altitude_pressure.{name}": value for name, value in by_height(rows).items()}


def vessel_steam(given: Given, out: Results) -> Results:
    """From the gauge of the vessel to the steam in it."""
    working, rated = (float(given[f"vessel.{name}_pressure"]) for name in ("working", "rated"))
    pressure = min(working, rated) + out["site.pressure"]
    found = {
        **boiling_steps(pressure),
        "gauge": min(working, rated),
        "pressure": pressure,
    }
    return {f"vessel_steam.{name}": value for name, value in found.items()}
