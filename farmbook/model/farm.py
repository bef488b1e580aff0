"""The whole farm: its sections in reading order. Only wiring stands here."""

from __future__ import annotations

from typing import Final

from farmbook.model.ahead.ahead import Ahead
from farmbook.model.ahead.four_weeks_on import FourWeeksOn
from farmbook.model.ahead.spawn_ahead import SpawnAhead
from farmbook.model.ahead.this_week import ThisWeek
from farmbook.model.alternatives.as_it_is import AsItIs
from farmbook.model.alternatives.change_ranks import ChangeRanks
from farmbook.model.alternatives.change_sizes import ChangeSizes, OwnChange
from farmbook.model.alternatives.changes import (
    BagsChange,
    EnergyChange,
    LossesChange,
    OwnChangeYear,
    PayChange,
    PriceChange,
    SpawnChange,
    UnsoldChange,
    WeeksChange,
    WeightChange,
)
from farmbook.model.alternatives.flush_choice import FlushChoice
from farmbook.model.alternatives.flushes import Flushes
from farmbook.model.alternatives.other_recipe import OtherRecipeRoom, OtherRecipeYear
from farmbook.model.alternatives.other_steamer import OtherSteamerRoom, OtherSteamerYear
from farmbook.model.alternatives.recipe_choice import RecipeChoice
from farmbook.model.alternatives.recipe_turn import RecipeTurn
from farmbook.model.alternatives.recipes import Recipes
from farmbook.model.alternatives.steamer_gap import SteamerGap
from farmbook.model.alternatives.steamer_whole import SteamerWhole
from farmbook.model.alternatives.stops import (
    StopRoomFour,
    StopRoomOne,
    StopRoomThree,
    StopRoomTwo,
    StopYearFour,
    StopYearOne,
    StopYearThree,
    StopYearTwo,
)
from farmbook.model.as_built import AsBuilt
from farmbook.model.axes import sizes_of_plan
from farmbook.model.bank.answers import Answers
from farmbook.model.bank.bands import Bands
from farmbook.model.bank.collateral import Collateral
from farmbook.model.bank.covenants import Covenants
from farmbook.model.bank.crosswalk import Crosswalk
from farmbook.model.bank.debts import Debts
from farmbook.model.bank.evidence import Evidence
from farmbook.model.bank.largest_loan import LargestLoan
from farmbook.model.bank.people import People
from farmbook.model.bank.permits import Permits
from farmbook.model.bank.project import Project
from farmbook.model.bank.reached import Reached
from farmbook.model.bank.record import Record
from farmbook.model.bank.request import Request
from farmbook.model.borrowing.loan_checks import LoanChecks
from farmbook.model.borrowing.loan_list import LoanList
from farmbook.model.calendar.plan_months import PlanMonths
from farmbook.model.calendar.plan_start import PlanStart
from farmbook.model.calendar.plan_weeks import PlanWeeks
from farmbook.model.calendar.plan_years import PlanYears
from farmbook.model.choices.equipment_cost import EquipmentCost
from farmbook.model.choices.make_or_buy import MakeOrBuy
from farmbook.model.choices.make_or_buy_turn import MakeOrBuyTurn
from farmbook.model.choices.make_or_buy_worth import MakeOrBuyWorth
from farmbook.model.choices.steamer_choice import SteamerChoice
from farmbook.model.cook.cabinet_cook import CabinetCook
from farmbook.model.cook.cook_curve import CookCurve
from farmbook.model.cook.cook_strength import LethalRates
from farmbook.model.cook.core_heating import CoreHeating
from farmbook.model.cook.vessel_cook import VesselCook
from farmbook.model.cost.growing_cost import GrowingCost
from farmbook.model.cost.harvest import Harvest
from farmbook.model.cost.lost_bags import LostBags
from farmbook.model.cost.mixing import Mixing
from farmbook.model.cost.own_spawn_work import OwnSpawnWork
from farmbook.model.cost.spawn_supply import SpawnSupply
from farmbook.model.cost.steamer_year import CabinetYear, SteamerInUseYear, VesselYear
from farmbook.model.crop.crop import Crop
from farmbook.model.crop.spawn_source import SpawnSource
from farmbook.model.decisions.building import Building, FirstBuilding, SecondBuilding
from farmbook.model.decisions.cheaper_bag import CheaperBag
from farmbook.model.decisions.crop_forgone import CropForgone
from farmbook.model.decisions.filling_machine import FillingMachine
from farmbook.model.decisions.missing_hour import MissingHour
from farmbook.model.decisions.steam_fuel import SteamFuel
from farmbook.model.decisions.volume_offer import VolumeOffer
from farmbook.model.front import Front
from farmbook.model.heat.cabinet_heat import CabinetHeat
from farmbook.model.heat.steaming import Steaming
from farmbook.model.heat.vessel_heat import VesselHeat
from farmbook.model.heat.vessel_steam import VesselSteam
from farmbook.model.labour.fruiting_tasks import ClearingWork, CullingWork, OpeningWork, RoundWork
from farmbook.model.labour.hours import Hours
from farmbook.model.labour.making_tasks import InoculatingWork, MixingWork, ShelvingWork, SpawnWork, SteamingWork
from farmbook.model.labour.other_tasks import OfficeWork, PackingWork, PickingWork, SellingWork, UpkeepWork
from farmbook.model.labour.picking import Picking
from farmbook.model.limits.busiest_day import BusiestDay
from farmbook.model.limits.capacities import Capacities
from farmbook.model.limits.limits import Limits
from farmbook.model.limits.making_stages import BenchStage, CoolingStage, MixingStage, SteamerStage
from farmbook.model.limits.other_stages import CustomerStage, LabourStage
from farmbook.model.limits.room_stages import ColdRoomStage, FruitingStage, IncubationStage
from farmbook.model.limits.widenings import (
    BenchWidening,
    ColdRoomWidening,
    CoolingWidening,
    CustomerWidening,
    FruitingWidening,
    IncubationWidening,
    LabourWidening,
    MixingWidening,
    SteamerWidening,
)
from farmbook.model.mix.bag import Bag
from farmbook.model.mix.recipe import Recipe
from farmbook.model.mix.recipe_beside import RecipeBeside
from farmbook.model.mix.recipe_checks import RecipeChecks
from farmbook.model.mix.supplement import Supplement
from farmbook.model.months.last_year import LastYear
from farmbook.model.months.month_bills import MonthBills
from farmbook.model.months.month_capital import MonthCapital
from farmbook.model.months.month_cash import MonthCash
from farmbook.model.months.month_household import MonthHousehold
from farmbook.model.months.month_sales import MonthSales
from farmbook.model.months.month_sales_tax import MonthSalesTax
from farmbook.model.months.month_spawn import MonthSpawn
from farmbook.model.months.month_supplies import MonthSupplies
from farmbook.model.months.month_totals import MonthTotals
from farmbook.model.months.stop import Stop
from farmbook.model.owning.bills import Bills
from farmbook.model.owning.capital import Capital, OwnedItems
from farmbook.model.place.altitude import AltitudeBoiling, AltitudePressure, WantedSteam
from farmbook.model.place.energy import Energy
from farmbook.model.place.farm_plan import Farm
from farmbook.model.place.site import Site
from farmbook.model.repaying.loan_months import ListedLoans, LoanMonths
from farmbook.model.repaying.loan_years import LoanYears
from farmbook.model.repaying.loans_then import LoansAtMonth, LoansAtYear, LoansYearOn
from farmbook.model.report import Report
from farmbook.model.report_matters import ReportMatters
from farmbook.model.report_tables import ReportTables
from farmbook.model.rooms.fruiting_climate import FruitingClimate
from farmbook.model.rooms.fruiting_room import FruitingRoom
from farmbook.model.rooms.incubation_climate import IncubationClimate
from farmbook.model.rooms.incubation_room import IncubationRoom
from farmbook.model.rooms.outdoors import Outdoors
from farmbook.model.rooms.room_energy import RoomEnergy
from farmbook.model.safety.safety import Safety
from farmbook.model.safety.safety_costs import SafetyCosts
from farmbook.model.safety.sales_tests import SalesTests
from farmbook.model.schedule.cold_room import ColdRoom
from farmbook.model.schedule.filling import Filling
from farmbook.model.schedule.in_process import InProcess
from farmbook.model.schedule.in_turn import InTurn
from farmbook.model.schedule.lags import Bench, Dumping, Freeing, Keeping, Lags, Opening
from farmbook.model.schedule.picks import Picks
from farmbook.model.schedule.plan_changes import PlanChanges
from farmbook.model.schedule.shortages import Shortages
from farmbook.model.schedule.spawn_leads import Ordering, SteamingAhead
from farmbook.model.schedule.start_up import StartUp
from farmbook.model.schedule.week_hours import WeekHours
from farmbook.model.selling.customer_months import CustomerMonths
from farmbook.model.selling.customer_year import CustomerYear
from farmbook.model.selling.customers import Customers
from farmbook.model.shocks.shocks import Shocks
from farmbook.model.spawn.own_spawn import OwnSpawn
from farmbook.model.spawn.own_spawn_way import OwnSpawnWay
from farmbook.model.spawn.spawn_bought import Spawn
from farmbook.model.statements.accrued import Accrued
from farmbook.model.statements.bags_value import BagsValue
from farmbook.model.statements.coverage import Coverage
from farmbook.model.statements.coverage_price import CoveragePrice
from farmbook.model.statements.equipment_schedule import EquipmentSchedule
from farmbook.model.statements.farm_ratios import FarmRatios
from farmbook.model.statements.month_balance import MonthBalance
from farmbook.model.statements.month_income import MonthIncome
from farmbook.model.statements.spawn_stock import SpawnStock
from farmbook.model.statements.start_balance import StartBalance
from farmbook.model.statements.year_balance import YearBalance
from farmbook.model.statements.year_statements import YearStatements
from farmbook.model.steam.cabinet import Cabinet
from farmbook.model.steam.cabinet_run import CabinetRun
from farmbook.model.steam.steamer_in_use import SteamerInUse
from farmbook.model.steam.to_steam import ToSteam
from farmbook.model.steam.vessel import Vessel
from farmbook.model.steam.vessel_run import VesselRun
from farmbook.model.stress.bad_cases import CASES as BAD_CASES
from farmbook.model.stress.best_customer import BestCustomer
from farmbook.model.stress.cover_wanted import CoverWanted
from farmbook.model.stress.how_far import HowFar
from farmbook.model.stress.if_badly import IfBadly
from farmbook.model.stress.reverse_price import PRICE_FALLS
from farmbook.model.stress.reverse_weight import WEIGHT_FALLS
from farmbook.model.stress.sizes_told import SizesTold
from farmbook.model.stress.stress_sizes import StressSizes
from farmbook.model.stress.to_lose import ToLoseOfAsked, ToLoseOfOne
from farmbook.model.stress.weight_lost import WeightLost
from farmbook.model.trials.bag_size import BagTrial
from farmbook.model.trials.bag_to_fruiting import BagToFruiting
from farmbook.model.trials.bag_tried import BagTried
from farmbook.model.trials.buy_in import BuyIn
from farmbook.model.trials.one_fewer import OneFewer
from farmbook.model.trials.other_spawn import OtherSpawn, SpawnYears
from farmbook.model.trials.run_days import RunDaysTrial
from farmbook.model.trials.spawn_rate import SpawnRateTrial
from farmbook.model.trials.trials import Trials
from farmbook.model.trials.widenings_tried import HoursTrial, LoadsTrial, PlacesTrial, WidenAnswer
from farmbook.model.year.break_even import BreakEven
from farmbook.model.year.floor_price import FloorPrice
from farmbook.model.year.household import Household
from farmbook.model.year.loans import Loans
from farmbook.model.year.one_more import OneMore
from farmbook.model.year.price_parts import PriceParts
from farmbook.model.year.year import Year
from farmbook.sections.model import Model
from farmbook.sections.section import Section

__all__ = ["SECTIONS", "farm_model"]

BANK: Final[tuple[type[Section], ...]] = (
    *(
        Request,
        Answers,
        People,
        Project,
        Collateral,
        Debts,
        Evidence,
        Record,
        Reached,
        Permits,
        Covenants,
        Bands,
        LargestLoan,
    ),
)
"""What only a lender is shown."""

SECTIONS: Final[tuple[type[Section], ...]] = (
    *(Shocks, Farm, Site, AltitudeBoiling, WantedSteam, AltitudePressure, Energy),
    *(Recipe, RecipeBeside, RecipeChecks, Supplement, Bag),
    *(Steaming, CabinetHeat, VesselSteam, VesselHeat),
    *(SpawnSource, Crop),
    *(Spawn, OwnSpawnWay, OwnSpawn),
    *(ToSteam, CabinetRun, Cabinet, VesselRun, Vessel, SteamerInUse),
    *(LethalRates, CoreHeating, CabinetCook, VesselCook, CookCurve),
    *(OwnSpawnWork, SpawnSupply, Mixing, Harvest, GrowingCost, LostBags, CabinetYear, VesselYear, SteamerInUseYear),
    *(SteamerChoice, MakeOrBuy, MakeOrBuyTurn, MakeOrBuyWorth, EquipmentCost),
    *(IncubationRoom, FruitingRoom, Outdoors, IncubationClimate, FruitingClimate, RoomEnergy),
    *(Customers, CustomerMonths, CustomerYear),
    *(Picking, MixingWork, SteamingWork, InoculatingWork, SpawnWork, ShelvingWork),
    *(OpeningWork, ClearingWork, CullingWork, RoundWork),
    *(PickingWork, PackingWork, SellingWork, UpkeepWork, OfficeWork, Hours),
    *(SafetyCosts, Safety, SalesTests),
    *(OwnedItems, Capital, Bills),
    *(LoanList, LoanChecks),
    *(Loans, Year, Household, PriceParts, BreakEven, OneMore, FloorPrice),
    *(Capacities, MixingStage, SteamerStage, CoolingStage, BenchStage, IncubationStage, FruitingStage),
    *(LabourStage, ColdRoomStage, CustomerStage, Limits, BusiestDay),
    *(MixingWidening, SteamerWidening, CoolingWidening, BenchWidening, IncubationWidening),
    *(FruitingWidening, LabourWidening, ColdRoomWidening, CustomerWidening),
    *(VolumeOffer, CropForgone, MissingHour),
    *(FillingMachine, CheaperBag, SteamFuel, FirstBuilding, SecondBuilding, Building),
    *(OneFewer, SpawnRateTrial, BagTried, BagTrial, RunDaysTrial, Trials),
    *(PlacesTrial, HoursTrial, LoadsTrial, WidenAnswer),
    *(BagToFruiting, OtherSpawn, SpawnYears, BuyIn),
    *(Flushes, StopRoomOne, StopRoomTwo, StopRoomThree, StopRoomFour),
    *(StopYearOne, StopYearTwo, StopYearThree, StopYearFour, FlushChoice, AsItIs),
    *(Recipes, OtherRecipeRoom, OtherRecipeYear, RecipeTurn, RecipeChoice),
    *(OtherSteamerRoom, OtherSteamerYear, SteamerGap, SteamerWhole),
    *(ChangeSizes, OwnChange, PriceChange, WeightChange, LossesChange, BagsChange, PayChange),
    *(EnergyChange, SpawnChange, UnsoldChange, WeeksChange, OwnChangeYear, ChangeRanks),
    *(PlanStart, PlanMonths, PlanWeeks, PlanYears),
    *(
        PlanChanges,
        StartUp,
        Filling,
        Lags,
        Bench,
        Opening,
        Dumping,
        Freeing,
        Keeping,
        InProcess,
        Picks,
        InTurn,
        ColdRoom,
    ),
    *(WeekHours, SteamingAhead, Ordering, Shortages),
    *(LoansAtMonth, LoansYearOn, LoansAtYear, ListedLoans, LoanMonths, LoanYears),
    *(
        MonthTotals,
        MonthSpawn,
        MonthSales,
        MonthSupplies,
        MonthBills,
        MonthCapital,
        MonthSalesTax,
        MonthHousehold,
        MonthCash,
    ),
    *(LastYear, Stop),
    *(BagsValue, SpawnStock, Accrued, EquipmentSchedule, StartBalance, MonthIncome, MonthBalance),
    *(YearBalance, YearStatements, Coverage, CoveragePrice, FarmRatios),
    *(Ahead, SpawnAhead, ThisWeek, FourWeeksOn),
    *(StressSizes, SizesTold, BestCustomer, CoverWanted, *BAD_CASES, IfBadly),
    *(ToLoseOfAsked, ToLoseOfOne, *PRICE_FALLS, WeightLost, *WEIGHT_FALLS, HowFar),
    *BANK,
    *(Crosswalk,),
    *(ReportTables, Report, ReportMatters, Front, AsBuilt),
)


WITH_A_REQUEST: Final[frozenset[type[Section]]] = frozenset((*BANK, AsBuilt))
"""What is only for a lender: it exists where a scenario has the table [request]."""
WITH_A_CROSSWALK: Final[frozenset[type[Section]]] = frozenset((Crosswalk,))
"""What is only for one form: it exists where a scenario has the table [crosswalk]."""


def farm_model() -> Model:
    """The farm's model, for plans of any length, with all that a lender is shown; its kinds are not yet checked."""
    return Model(
        SECTIONS, made_for=sizes_of_plan, parts={Request.table: WITH_A_REQUEST, Crosswalk.table: WITH_A_CROSSWALK}
    )
