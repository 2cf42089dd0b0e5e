"""Everything that a plug-in may import; the rest of the package may change without notice.

Names come in groups: what a plug-in registers, what a limit state returns, the errors it may
raise, the jacket that it is given, catalogue records, and analyses of the jacket that are done
once and shared. Formulas stand in the modules of `jacketcheck.mechanics` and may be imported from
there, as long as neither module nor function begins with an underscore.

Examples
--------
>>> from jacketcheck.plugin import Jacket, Result, limit_state
>>> @limit_state("sleeve-stock", title="Sleeve plate in stock", provisions="example")
... def sleeve_stock(jacket: Jacket) -> list[Result]:
...     return [Result("Sleeve plate", "sleeve", 6.0, jacket.sleeve.thickness, "mm", "a code, 1.2")]
>>> sleeve_stock.id
'sleeve-stock'
"""

from jacketcheck.analysis.added_bars import (
    LapLength,
    add_clear_distance,
    add_lap_length,
    add_struts_length,
    lap_length,
)
from jacketcheck.analysis.axial_strain import (
    CheckedStrain,
    add_axial_strain,
    checked_axial_strain,
)
from jacketcheck.analysis.base import BaseSection, base_section
from jacketcheck.analysis.bond import BarBond, bar_bonds
from jacketcheck.analysis.clamping import ClampingNeed, clamping_need
from jacketcheck.analysis.damaged_bars import DebondingBars, debonding_bars, target_stress
from jacketcheck.analysis.dilation import Dilation, dilation
from jacketcheck.analysis.displacement import (
    ColumnCapacity,
    capacity_of_original,
    capacity_of_repaired,
)
from jacketcheck.analysis.height import WorstHeight, worst_height
from jacketcheck.analysis.hinge import Hinge, add_hinge, hinge
from jacketcheck.analysis.hinge_model import HINGE_CAUSES, HingeModel, hinge_model
from jacketcheck.analysis.hoop_action import HoopAction, hoop_action
from jacketcheck.analysis.hoop_demand import (
    HoopDemand,
    add_bolt_force,
    add_hoop_force,
    add_row_force,
    hoop_demand,
)
from jacketcheck.analysis.lap import lap_hoop_force
from jacketcheck.analysis.named_losses import added_bar_losses, pressure_losses, supply_losses
from jacketcheck.analysis.repair_anchorage import RepairAnchorage, repair_anchorage
from jacketcheck.analysis.retained import Retained, bond_pressure, clamping_supply, retained
from jacketcheck.analysis.shear import add_shear_force, shear_force, shear_hoop_force
from jacketcheck.analysis.splice import (
    SpliceStrength,
    add_splice_strength,
    effective_planes,
    effective_splice_thickness,
    splice_eccentricity,
    splice_shares,
    splice_strength,
    thinnest_plate,
)
from jacketcheck.catalog.assembly_rules import AssemblyRules
from jacketcheck.catalog.bond_models import BondConditions, BondModel
from jacketcheck.catalog.catalog import Catalog, built_in_catalog
from jacketcheck.catalog.entries import Entries
from jacketcheck.catalog.installation_rules import (
    InstallationRules,
    InstallationStep,
    LotTest,
    MethodFigure,
    TurnBand,
    WasherCase,
)
from jacketcheck.catalog.records import (
    Bar,
    BoltProduct,
    BoltSize,
    FayingClass,
    PlateSteel,
    RebarSteel,
    StrengthBand,
)
from jacketcheck.coverage import BREAKOUT_OPEN
from jacketcheck.errors import CatalogError, DomainError, NotEvaluatedError
from jacketcheck.hookspecs import API_VERSION, hookimpl
from jacketcheck.jacket.column_parts import (
    BarLayer,
    ColumnBar,
    Concrete,
    DamagedColumn,
    FootingBlock,
    Rebar,
    Ties,
)
from jacketcheck.jacket.designs import leaves, pick, with_values
from jacketcheck.jacket.jacket import Demands, Jacket
from jacketcheck.jacket.jacket_parts import (
    AddedBarLayer,
    BoltGroup,
    Grout,
    Hole,
    Plate,
    Sleeve,
    Splice,
)
from jacketcheck.limit_state import (
    LimitState,
    ModelFactor,
    NoScatter,
    Provisions,
    Scatter,
    limit_state,
)
from jacketcheck.limit_states._rows import (
    length_at_least,
    length_at_most,
    not_applicable,
    not_evaluated,
    only_valid,
    within_range,
)
from jacketcheck.limit_states.added_bars import added_bar_lap as us_added_bar_lap
from jacketcheck.limit_states.column_response import (
    add_counted_displacement,
    buckling_row,
    no_capacity_notes,
)
from jacketcheck.limit_states.column_shear import add_hoop_stress_left
from jacketcheck.limit_states.footing_anchorage import added_bar_anchorage as us_added_bar_anchorage
from jacketcheck.limit_states.seam_reserve import seam_hoop_forces
from jacketcheck.limit_states.seam_slip import faying_class_of
from jacketcheck.limit_states.snug_bolts import probable_slip_row
from jacketcheck.mechanics._arrays import (
    Real,
    require_at_least,
    require_finite,
    require_positive,
    require_within,
)
from jacketcheck.mechanics.bond_law import BondLaw
from jacketcheck.mechanics.washer_rules import WasherRule
from jacketcheck.results import Kind, Result, Step, Steps

__all__ = [
    "API_VERSION",
    "BREAKOUT_OPEN",
    "HINGE_CAUSES",
    "AddedBarLayer",
    "AssemblyRules",
    "Bar",
    "BarBond",
    "BarLayer",
    "BaseSection",
    "BoltGroup",
    "BoltProduct",
    "BoltSize",
    "BondConditions",
    "BondLaw",
    "BondModel",
    "Catalog",
    "CatalogError",
    "CheckedStrain",
    "ClampingNeed",
    "ColumnBar",
    "ColumnCapacity",
    "Concrete",
    "DamagedColumn",
    "DebondingBars",
    "Demands",
    "Dilation",
    "DomainError",
    "Entries",
    "FayingClass",
    "FootingBlock",
    "Grout",
    "Hinge",
    "HingeModel",
    "Hole",
    "HoopAction",
    "HoopDemand",
    "InstallationRules",
    "InstallationStep",
    "Jacket",
    "Kind",
    "LapLength",
    "LimitState",
    "LotTest",
    "MethodFigure",
    "ModelFactor",
    "NoScatter",
    "NotEvaluatedError",
    "Plate",
    "PlateSteel",
    "Provisions",
    "Real",
    "Rebar",
    "RebarSteel",
    "RepairAnchorage",
    "Result",
    "Retained",
    "Scatter",
    "Sleeve",
    "Splice",
    "SpliceStrength",
    "Step",
    "Steps",
    "StrengthBand",
    "Ties",
    "TurnBand",
    "WasherCase",
    "WasherRule",
    "WorstHeight",
    "add_axial_strain",
    "add_bolt_force",
    "add_clear_distance",
    "add_counted_displacement",
    "add_hinge",
    "add_hoop_force",
    "add_hoop_stress_left",
    "add_lap_length",
    "add_row_force",
    "add_shear_force",
    "add_splice_strength",
    "add_struts_length",
    "added_bar_losses",
    "bar_bonds",
    "base_section",
    "bond_pressure",
    "buckling_row",
    "built_in_catalog",
    "capacity_of_original",
    "capacity_of_repaired",
    "checked_axial_strain",
    "clamping_need",
    "clamping_supply",
    "debonding_bars",
    "dilation",
    "effective_planes",
    "effective_splice_thickness",
    "faying_class_of",
    "hinge",
    "hinge_model",
    "hookimpl",
    "hoop_action",
    "hoop_demand",
    "lap_hoop_force",
    "lap_length",
    "leaves",
    "length_at_least",
    "length_at_most",
    "limit_state",
    "no_capacity_notes",
    "not_applicable",
    "not_evaluated",
    "only_valid",
    "pick",
    "pressure_losses",
    "probable_slip_row",
    "repair_anchorage",
    "require_at_least",
    "require_finite",
    "require_positive",
    "require_within",
    "retained",
    "seam_hoop_forces",
    "shear_force",
    "shear_hoop_force",
    "splice_eccentricity",
    "splice_shares",
    "splice_strength",
    "supply_losses",
    "target_stress",
    "thinnest_plate",
    "us_added_bar_anchorage",
    "us_added_bar_lap",
    "with_values",
    "within_range",
    "worst_height",
]
