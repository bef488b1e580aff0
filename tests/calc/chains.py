"""Calculations made of several steps, as the model chains them line by line."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

import numpy as np

from farmbook.calc import climate, fuel, heat, lethality, mixing, places, steam, temperature, worth
from farmbook.calc.calendar import DAYS_IN_A_WEEK, DAYS_IN_A_YEAR

MONTHS_A_YEAR = 12
RADIUS_OF_THE_EARTH = 6_356_766.0
"""In metres, as the US Standard Atmosphere takes it."""


# Steam


def saturation_temperature(pressure: float) -> float:
    """Units: pressure [kPa]; gives [kelvin]."""
    root = steam.root_of_pressure(pressure)
    second = steam.second_term_from_root(root)
    first = steam.first_term_from_root(root)
    constant = steam.constant_term_from_root(root)
    scaled = steam.scaled_from_root(first, constant, steam.discriminant(first, second * constant))
    total = steam.temperature_sum(scaled)
    return steam.temperature_from_scaled(total, steam.discriminant(total, steam.temperature_product(scaled)))


def saturation_pressure(absolute_temperature: float) -> float:
    """Units: absolute_temperature [kelvin]; gives [kPa]."""
    scaled = steam.scaled_temperature(absolute_temperature, steam.distance_from_limit(absolute_temperature))
    second = steam.second_term_from_scaled(scaled)
    first = steam.first_term_from_scaled(scaled)
    constant = steam.constant_term_from_scaled(scaled)
    return steam.pressure_from_root(
        steam.root_from_scaled(first, constant, steam.discriminant(first, second * constant))
    )


def boiling_temperature(pressure: float) -> float:
    """Units: pressure [kPa]; gives [degC]."""
    return temperature.celsius(saturation_temperature(pressure))


def vapour_pressure(water_temperature: float) -> float:
    """Units: water_temperature [degC]; gives [kPa]."""
    return saturation_pressure(temperature.kelvin(water_temperature))


def air_pressure_above_ground(height: float) -> float:
    """At a height by the tape; the standard's own height counts steps of equal weight.

    Units: height [m]; gives [kPa].
    """
    return steam.air_pressure(height * RADIUS_OF_THE_EARTH / (RADIUS_OF_THE_EARTH + height))


def boiling_point_at(height: float) -> float:
    """Units: height [m]; gives [degC]."""
    return boiling_temperature(steam.air_pressure(height))


def vessel_temperature(gauge_pressure: float, height: float) -> float:
    """Units: gauge_pressure [kPa], height [m]; gives [degC]."""
    return boiling_temperature(steam.absolute_pressure(gauge_pressure, steam.air_pressure(height)))


def vessel_temperature_at_sea_level(gauge_pressure: float) -> float:
    """Units: gauge_pressure [kPa]; gives [degC]."""
    return boiling_temperature(steam.absolute_pressure(gauge_pressure, steam.SEA_LEVEL_PRESSURE))


def gauge_pressure_at_sea_level(vessel_temperature: float) -> float:
    """Units: vessel_temperature [degC]; gives [kPa]."""
    return steam.gauge_pressure(vapour_pressure(vessel_temperature), steam.SEA_LEVEL_PRESSURE)


def gauge_pressure_for(vessel_temperature: float, height: float) -> float:
    """Units: vessel_temperature [degC], height [m]; gives [kPa]."""
    return steam.gauge_pressure(vapour_pressure(vessel_temperature), steam.air_pressure(height))


def steam_at_pressure(pressure: float) -> float:
    """Units: pressure [kPa]; gives [kJ/kg_water]."""
    return heat.steam_enthalpy(boiling_temperature(pressure))


def latent_heat_at_pressure(pressure: float) -> float:
    """Units: pressure [kPa]; gives [kJ/kg_water]."""
    return steam_at_pressure(pressure) - water_at(boiling_temperature(pressure))


# Cooking


def cooked_at(core: float, reference: float, z_value: float, time: float) -> float:
    """Units: core [degC], reference [degC], z_value [delta_degC], time [min]; gives [min]."""
    return lethality.lethal_rate(core, reference, z_value) * time


def cooked_by_log(readings: Any, reference: float, z_value: float, step: float) -> float:
    """Units: readings [degC], reference [degC], z_value [delta_degC], step [min]; gives [min]."""
    rates = [lethality.lethal_rate(float(reading), reference, z_value) for reading in readings]
    return sum(lethality.cooked_in_step(earlier, later, step) for earlier, later in pairwise(rates))


def cooked_on_ramp(start: float, end: float, time: float, reference: float, z_value: float) -> float:
    """Units: start [degC], end [degC], time [min], reference [degC], z_value [delta_degC]; gives [min]."""
    steps = 4000
    rates = lethality.lethal_rate(np.linspace(start, end, steps + 1), reference, np.asarray(z_value))
    return float(lethality.cooked_in_step(rates[:-1], rates[1:], time / steps).sum())


# Heat


def dry_wood_heat(mass: float, start: float, end: float) -> float:
    """Units: mass [kg_dry], start [degC], end [degC]; gives [kJ]."""
    capacity = heat.wood_heat_capacity(temperature.kelvin((start + end) / 2))
    return heat.sensible_heat(mass, capacity, end - start)


def water_heat(mass: float, start: float, end: float) -> float:
    """Units: mass [kg_water], start [degC], end [degC]; gives [kJ]."""
    return heat.warming_of_water(mass, water_at(end), water_at(start))


def water_at(water_temperature: float) -> float:
    """Units: water_temperature [degC]; gives [kJ/kg_water]."""
    return heat.water_enthalpy(heat.degrees_above_freezing(water_temperature))


def moist_wood_capacity(share: float, absolute_temperature: float) -> float:
    """Units: share [1], absolute_temperature [kelvin]; gives [kJ/kg/delta_degC]. Water in it counts 4.18, as in print."""
    bound = heat.bound_share(share)
    wood_and_water = (heat.wood_heat_capacity(absolute_temperature) + share * 4.18) / (1 + share)
    return wood_and_water + heat.bound_water_correction(bound, absolute_temperature)


def steel_heat(mass: float, start: float, end: float) -> float:
    """Units: mass [kg], start [degC], end [degC]; gives [kJ]."""
    return heat.sensible_heat(mass, heat.STEEL_HEAT_CAPACITY, end - start)


def load_heat(dry: float, water: float, steel: float, start: float, end: float) -> float:
    """Units: dry [kg_dry], water [kg_water], steel [kg], start [degC], end [degC]; gives [kJ]."""
    return dry_wood_heat(dry, start, end) + water_heat(water, start, end) + steel_heat(steel, start, end)


def wall_energy(area: float, difference: float, resistance: float, time: float) -> float:
    """Units: area [m2], difference [delta_degC], resistance [m2*delta_degC/W], time [h]; gives [W*h]."""
    return heat.wall_loss(area, difference, resistance) * time


def fuel_cost(output: float, efficiency: float, price: float) -> float:
    """Units: output [kJ], efficiency [1], price [money/kJ]; gives [money]."""
    return heat.hold_power(output, efficiency) * price


def steam_fuel_cost(time: float, flow: float, heat_of_steam: float, efficiency: float, price: float) -> float:
    """Units: time [h], flow [kg_water/h], heat_of_steam [kJ/kg_water], efficiency [1], price [money/kJ];
    gives [money].
    """
    return heat.hold_power(flow * heat_of_steam, efficiency) * time * price


def heat_of_propane(volume: float) -> float:
    """Units: volume [gal]; gives [Btu_fuel]."""
    return fuel.heat_in_fuel(volume, fuel.PROPANE_HEAT)


# Mix


def moisture_by_drying(wet: float, dry: float) -> float:
    """Units: wet [kg_wet], dry [kg_dry]; gives [kg_water/kg_wet]."""
    return mixing.moisture(wet - dry, wet)


def weight_of_water(volume: float) -> float:
    """Units: volume [L]; gives [kg_water]."""
    return mixing.WATER_DENSITY * volume


def content_dried(content: float, moisture: float) -> float:
    """Units: content [kg_protein/kg_wet], moisture [kg_water/kg_wet]; gives [kg_protein/kg_dry]."""
    return mixing.content_of_dry(content, mixing.dry_share(moisture))


def second_amount(first: float, first_moisture: float, second_moisture: float, goal: float) -> float:
    """Units: first [kg_wet], first_moisture [1], second_moisture [1], goal [1]; gives [kg_wet]."""
    share = mixing.share_for_content(goal, first_moisture, second_moisture)
    return first * share / (1 - share)


def mix_nitrogen(parts: Any, nitrogen: Any) -> float:
    """Units: parts [kg_dry], nitrogen [kg_nitrogen/kg_dry]; gives [kg_nitrogen]."""
    return float(mixing.weighted_content(parts, nitrogen).sum())


def mix_carbon(parts: Any, carbon: Any) -> float:
    """Units: parts [kg_dry], carbon [kg_carbon/kg_dry]; gives [kg_carbon]."""
    return float(mixing.weighted_content(parts, carbon).sum())


def mix_carbon_to_nitrogen(parts: Any, carbon: Any, nitrogen: Any) -> float:
    """Units: parts [kg_dry], carbon [kg_carbon/kg_dry], nitrogen [kg_nitrogen/kg_dry];
    gives [kg_carbon/kg_nitrogen].
    """
    return mixing.carbon_to_nitrogen(mix_carbon(parts, carbon), mix_nitrogen(parts, nitrogen))


def mix_nitrogen_share(shares: Any, nitrogen: Any) -> float:
    """Units: shares [1], nitrogen [kg_nitrogen/kg_dry]; gives [kg_nitrogen/kg_dry]."""
    return mix_nitrogen(shares, nitrogen)


def mix_carbon_share(shares: Any, carbon: Any) -> float:
    """Units: shares [1], carbon [kg_carbon/kg_dry]; gives [kg_carbon/kg_dry]."""
    return mix_carbon(shares, carbon)


# Worth


def effective_rate(yearly_rate: float, times_a_year: float) -> float:
    """Units: yearly_rate [1/year], times_a_year [1/year]; gives [1/year]."""
    return 1 / worth.discount(yearly_rate, 1.0, 1 / times_a_year) - 1


def level_payment(principal: float, rate: float, months: float) -> float:
    """Units: principal [money], rate [1/month], months [month]; gives [money/month]."""
    return principal * payment_for_each(rate, worth.discount(rate, months, worth.ONE_MONTH))


def payment_for_each(rate: float, discount: float) -> float:
    """Of each 1 borrowed; at interest the equal share plays no part, so that it may be no number at all."""
    return worth.annuity_factor(rate, discount, math.nan)


def monthly_payment(principal: float, yearly_rate: float, months: float) -> float:
    """Units: principal [money], yearly_rate [1/year], months [month]; gives [money/month]."""
    return level_payment(principal, yearly_rate / MONTHS_A_YEAR, months)


def worth_of_flows(flows: Any, rate: float) -> float:
    """Worth on the day of the first flow. Units: flows [money], rate [1/year]; gives [money]."""
    return sum(worth_of_one_flow(float(flow), rate, year) for year, flow in enumerate(flows))


def worth_a_year_before(flows: Any, rate: float) -> float:
    """Worth a year before the first flow, as in a spreadsheet. Units: flows [money], rate [1/year]; gives [money]."""
    return worth.present_worth(worth_of_flows(flows, rate), worth.discount(rate, 1))


def worth_of_one_flow(flow: float, rate: float, time: float) -> float:
    """Units: flow [money], rate [1/year], time [year]; gives [money]."""
    return worth.present_worth(flow, worth.discount(rate, time))


def worth_of_dated_flows(flows: Any, days: Any, rate: float) -> float:
    """Worth on the day that the days count from; a year is 365 of them, as in a spreadsheet.

    Units: flows [money], days [day], rate [1/year]; gives [money].
    """
    years = [float(day) / float(DAYS_IN_A_YEAR) for day in days]
    return sum(worth_of_one_flow(float(flow), rate, year) for flow, year in zip(flows, years, strict=True))


def payback(flows: Any, rate: float) -> float:
    """Years, the first flow being today's. Units: flows [money], rate [1/year]; gives [1]."""
    return simple_payback([worth_of_one_flow(float(flow), rate, year) for year, flow in enumerate(flows)])


def simple_payback(flows: Any) -> float:
    """Years, the first flow being today's. Units: flows [money]; gives [1]."""
    balance, years = float(flows[0]), 0.0
    for flow in map(float, flows[1:]):
        years += worth.unpaid_share_of_year(balance, worth.share_of_year_to_pay(balance, max(flow, 0.0)))
        balance += flow
    return years


def recovery(price: float, resale: float, life: float, rate: float) -> float:
    """Units: price [money], resale [money], life [year], rate [1/year]; gives [money/year]."""
    return worth.capital_recovery(price, resale, payment_for_each(rate, worth.discount(rate, life)), rate)


def yearly_cost(price: float, resale: float, life: float, rate: float, running: float) -> float:
    """Units: price [money], resale [money], life [year], rate [1/year], running [money/year]; gives [money/year]."""
    return worth.equivalent_annual_cost(recovery(price, resale, life, rate), running)


def yearly_cost_without_resale(price: float, life: float, rate: float, running: float) -> float:
    """Units: price [money], life [year], rate [1/year], running [money/year]; gives [money/year]."""
    return worth.equivalent_annual_cost(price * payment_for_each(rate, worth.discount(rate, life)), running)


def yearly_worth(price: float, life: float, rate: float) -> float:
    """Units: price [money], life [year], rate [1/year]; gives [money/year]."""
    return price * payment_for_each(rate, worth.discount(rate, life))


# Places


def present_by_period(entering: float, periods: float) -> float:
    """What stands there if so much comes in every period, of whatever length, and stays so many of them.

    Units: entering [run], periods [1]; gives [run].
    """
    return places.standing(entering, periods * float(DAYS_IN_A_WEEK))


def break_even_without_fees(cost: float, quantity: float) -> float:
    """Price at which what is sold just pays its cost, nothing being taken off it.

    Units: cost [money], quantity [kg]; gives [money/kg].
    """
    return worth.break_even_price(cost, quantity, 1.0)


# Rooms


def air_heat_lost(volume: float, changes: float, difference: float) -> float:
    """Units: volume [m3], changes [1/h], difference [delta_degC]; gives [kJ/h]."""
    return climate.heat_flow(climate.air_leak(volume, changes), difference)


def wall_energy_by_degrees(area: float, resistance: float, difference: float, time: float) -> float:
    """Units: area [m2], resistance [m2*delta_degC*h/kJ], difference [delta_degC], time [h]; gives [kJ]."""
    return climate.heat_flow(climate.wall_leak(area, resistance), difference) * time


def resistance_of_two_parts(share: float, first: float, second: float) -> float:
    """Of a wall of which a share has the first resistance and the rest the second.

    Units: share [1], first [m2*delta_degC/W], second [m2*delta_degC/W]; gives [m2*delta_degC/W].
    """
    return 1 / (climate.wall_leak(share, first) + climate.wall_leak(1 - share, second))
