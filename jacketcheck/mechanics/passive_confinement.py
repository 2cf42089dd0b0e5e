"""Stress-strain curve of a core whose pressure grows with its own dilation.

Mander's curve holds for a constant pressure. In a sleeve that starts unstressed the pressure
follows the dilation, so each axial strain has its own pressure; the curve that joins these states
is what section analysis needs.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats, require_at_least, require_positive
from jacketcheck.mechanics.concrete_law import ConcreteLaw, strain_grid, tabulated_concrete_law
from jacketcheck.mechanics.core_concrete import CoreConcrete
from jacketcheck.mechanics.dilation import (
    DilationEquilibrium,
    axial_strain_at_hoop_strain,
    axial_strain_at_sleeve_yield,
    dilation_equilibrium,
)
from jacketcheck.mechanics.restraint import Restraint

__all__ = ["PassiveConfinement", "passive_confinement"]

_DEFAULT_COUNT = 150


@dataclass(frozen=True, eq=False)
class PassiveConfinement:
    """Curve of one passively confined core.

    Attributes
    ----------
    state
        Pressure, strains and stress at each axial strain of the curve, shape (n,).
    axial_strain_at_sleeve_yield
        Axial strain at which the sleeve first yields in hoop tension [-].
    energy_ultimate_strain
        Ultimate axial strain by the energy of the confining steel [-].
    hoop_limit_ultimate_strain
        Axial strain at which the sleeve reaches its hoop-strain limit [-].
    """

    state: DilationEquilibrium
    axial_strain_at_sleeve_yield: float
    energy_ultimate_strain: float
    hoop_limit_ultimate_strain: float

    @property
    def ultimate_strain(self) -> float:
        """The smaller of the two ultimate strains [-]."""
        return min(self.energy_ultimate_strain, self.hoop_limit_ultimate_strain)

    def law(self) -> ConcreteLaw:
        """The curve as a concrete law, carrying the smaller ultimate strain.

        The curve continues beyond the ultimate strain, so that an analysis can pass it.
        """
        return tabulated_concrete_law(
            np.asarray(self.state.axial_strain),
            np.asarray(self.state.concrete_stress),
            ultimate_strain=self.ultimate_strain,
        )


def passive_confinement(
    *,
    core: CoreConcrete,
    restraint: Restraint,
    energy_ultimate_strain: float,
    hoop_strain_limit: float,
    axial_strain: Floats | None = None,
) -> PassiveConfinement:
    """Stress-strain curve and ultimate strains of one passively confined core.

    Parameters
    ----------
    core
        Concrete of the core; every field a single number.
    restraint
        Sleeve and column hoops; every field a single number.
    energy_ultimate_strain
        Ultimate axial strain from `jacketcheck.mechanics.confinement.ultimate_strain` or
        `jacketcheck.mechanics.confinement.combined_ultimate_strain`, with the confined strength at
        `Restraint.largest_core_pressure` [-], above zero.
    hoop_strain_limit
        Hoop strain that the sleeve must not exceed [-], above zero.
    axial_strain
        Ascending axial strains of the curve [-], at least two, the first at least zero; by default
        150 strains from zero to the end of the grid of concrete laws, closer near zero.

    Returns
    -------
    PassiveConfinement
        The curve, both ultimate strains and the axial strain at which the sleeve yields.

    Raises
    ------
    DomainError
        If an argument lies outside its range or describes more than one core.

    Notes
    -----
    Each strain is solved on its own: the secant dilation model has no history. The energy form does
    not see when the pressure arrives, the hoop-strain limit does not see the energy; the smaller of
    the two ultimate strains counts.

    References
    ----------
    Spoelstra and Monti, FRP-Confined Concrete Model, J. Compos. Constr. 3(3) (1999), 143-150;
    Priestley, Seible and Calvi, Seismic Design and Retrofit of Bridges (1996), ch. 5.

    Examples
    --------
    >>> from jacketcheck.mechanics.core_concrete import CoreConcrete
    >>> from jacketcheck.mechanics.restraint import Restraint
    >>> curve = passive_confinement(
    ...     core=CoreConcrete(unconfined_strength=30.0, elastic_modulus=27386.0),
    ...     restraint=Restraint(
    ...         inner_radius=600.0, core_radius=600.0, radial_compliance=0.3,
    ...         sleeve_compliance=0.3, yield_pressure=2.5),
    ...     energy_ultimate_strain=0.02,
    ...     hoop_strain_limit=0.00125)
    >>> round(curve.ultimate_strain, 5) == round(curve.axial_strain_at_sleeve_yield, 5)
    True
    """
    require_positive(
        energy_ultimate_strain=energy_ultimate_strain, hoop_strain_limit=hoop_strain_limit
    )
    strains = _default_strains() if axial_strain is None else axial_strain
    require_at_least(0.0, axial_strain=strains)
    if strains.ndim != 1 or strains.size < 2 or np.any(np.diff(strains) <= 0.0):
        raise DomainError("axial_strain", strains.shape, "two or more ascending strains")
    hoop_limit = axial_strain_at_hoop_strain(hoop_strain_limit, core=core, restraint=restraint)
    if np.ndim(hoop_limit) != 0:
        raise DomainError("core or restraint", np.shape(hoop_limit), "single numbers")
    return PassiveConfinement(
        state=dilation_equilibrium(strains, core=core, restraint=restraint),
        axial_strain_at_sleeve_yield=float(
            axial_strain_at_sleeve_yield(core=core, restraint=restraint)
        ),
        energy_ultimate_strain=float(energy_ultimate_strain),
        hoop_limit_ultimate_strain=float(hoop_limit),
    )


def _default_strains() -> Floats:
    """Axial strains [-] from zero to the end of the grid, their spacing growing linearly."""
    steps = np.arange(_DEFAULT_COUNT, dtype=float)
    return np.asarray(strain_grid()[-1] * np.square(steps / steps[-1]))
