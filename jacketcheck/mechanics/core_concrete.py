"""Concrete that dilates under axial strain: Mander's curve with a secant dilation model.

The loss of secant stiffness on the stress-strain curve measures how far the concrete has cracked
and hence how far it expands laterally. Compression is positive axially, expansion laterally.
"""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive
from jacketcheck.mechanics.confinement import strength_ratio_unchecked

__all__ = [
    "CoreConcrete",
    "dilation_coefficient",
    "printed_dilation_coefficient",
    "secant_lateral_strain",
]


def dilation_coefficient(
    unconfined_strength: Real, *, elastic_modulus: Real, unconfined_peak_strain: Real = 0.002
) -> Real:
    """Coefficient of the secant dilation model that fits a given elastic modulus.

    Parameters
    ----------
    unconfined_strength
        Unconfined strength ``f'co`` [MPa], above zero; scalar or array.
    elastic_modulus
        Elastic modulus ``Ec`` [MPa], above ``f'co / eps_co``.
    unconfined_peak_strain
        Strain ``eps_co`` at the unconfined strength [-], above zero.

    Returns
    -------
    Real
        ``beta = Ec / f'co - 1 / eps_co`` [-], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    This is the value for which unconfined concrete at its peak has regained its original volume:
    ``2 eps_l = eps_co``. With ``Ec = 5700 sqrt(f'co)`` and ``eps_co = 0.002`` it is the printed
    form of `printed_dilation_coefficient`; with a lower modulus the printed form would understate
    the dilation.

    References
    ----------
    Spoelstra and Monti, FRP-Confined Concrete Model, J. Compos. Constr. 3(3) (1999), 143-150,
    after Pantazopoulou and Mills, ACI Mater. J. 92(6) (1995), 605-616; both from memory.

    Examples
    --------
    >>> round(float(dilation_coefficient(25.0, elastic_modulus=25e3)), 6)
    500.0
    """
    require_positive(
        unconfined_strength=unconfined_strength,
        elastic_modulus=elastic_modulus,
        unconfined_peak_strain=unconfined_peak_strain,
    )
    modulus_ratio = np.divide(elastic_modulus, unconfined_strength)
    beta = np.subtract(modulus_ratio, np.divide(1.0, unconfined_peak_strain))
    require_positive(dilation_coefficient=beta)
    return beta


def printed_dilation_coefficient(unconfined_strength: Real) -> Real:
    """Coefficient of the secant dilation model as its source prints it.

    Parameters
    ----------
    unconfined_strength
        Unconfined strength ``f'co`` [MPa], above zero and below 130 MPa, where the coefficient
        reaches zero; scalar or array.

    Returns
    -------
    Real
        ``beta = 5700 / sqrt(f'co) - 500`` [-], same shape.

    Raises
    ------
    DomainError
        If the strength lies outside its range.

    Notes
    -----
    Empirical; strength in MPa. It belongs to ``Ec = 5700 sqrt(f'co)``; see `dilation_coefficient`.

    References
    ----------
    Spoelstra and Monti, FRP-Confined Concrete Model, J. Compos. Constr. 3(3) (1999), 143-150,
    from memory.

    Examples
    --------
    >>> float(printed_dilation_coefficient(25.0))
    640.0
    """
    require_positive(unconfined_strength=unconfined_strength)
    beta = np.divide(5700.0, np.sqrt(unconfined_strength)) - 500.0
    require_positive(dilation_coefficient=beta)
    return beta


def secant_lateral_strain(
    axial_strain: Real, *, axial_stress: Real, elastic_modulus: Real, dilation_coefficient: Real
) -> Real:
    """Lateral strain of concrete from its secant stiffness.

    Parameters
    ----------
    axial_strain
        Axial strain [-], compression positive, at least zero; scalar or array.
    axial_stress
        Axial stress at that strain [MPa], above zero and at most ``Ec eps_c``.
    elastic_modulus
        Elastic modulus ``Ec`` [MPa], above zero.
    dilation_coefficient
        Coefficient ``beta`` [-], above zero.

    Returns
    -------
    Real
        Lateral strain ``eps_l`` [-], expansion positive, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``eps_l = (Ec eps_c - f_c) / (2 beta f_c)``: the loss of secant stiffness measures the area
    strain of the cracks. The model has no elastic part: far below the peak it gives less than
    Poisson's ratio would.

    References
    ----------
    Spoelstra and Monti, FRP-Confined Concrete Model, J. Compos. Constr. 3(3) (1999), 143-150,
    from memory.

    Examples
    --------
    >>> value = secant_lateral_strain(
    ...     0.002, axial_stress=30.0, elastic_modulus=30e3, dilation_coefficient=500.0)
    >>> float(value)
    0.001
    """
    require_at_least(0.0, axial_strain=axial_strain)
    require_positive(
        axial_stress=axial_stress,
        elastic_modulus=elastic_modulus,
        dilation_coefficient=dilation_coefficient,
    )
    lost = np.multiply(elastic_modulus, axial_strain) - axial_stress
    require_at_least(0.0, lost_stress=lost)
    return lost / (2.0 * np.multiply(dilation_coefficient, axial_stress))


@dataclass(frozen=True, eq=False)
class CoreConcrete:
    """Concrete that dilates: Mander's curve with the secant dilation model; fields broadcast.

    On this curve ``eps_l = (eps_c / eps_cc)**r / (2 beta (r - 1))``, which is what
    `secant_lateral_strain` becomes when Popovics' stress is put in; it can be solved for either
    strain.

    Attributes
    ----------
    unconfined_strength
        Unconfined strength ``f'co`` [MPa], above zero.
    elastic_modulus
        Elastic modulus ``Ec`` [MPa], above ``f'co / eps_co``.
    unconfined_peak_strain
        Strain ``eps_co`` at the unconfined strength [-], above zero.
    beta
        Dilation coefficient [-], above zero; None (the default) for `dilation_coefficient` of the
        other three.

    Raises
    ------
    DomainError
        If a field is not finite or lies outside its range.

    References
    ----------
    Mander, Priestley and Park, J. Struct. Eng. 114(8) (1988), 1804-1826; Spoelstra and Monti,
    J. Compos. Constr. 3(3) (1999), 143-150.
    """

    unconfined_strength: Real
    elastic_modulus: Real
    unconfined_peak_strain: Real = 0.002
    beta: Real | None = None
    _doubled_beta: Real = field(init=False, repr=False)

    def __post_init__(self) -> None:
        """Reject fields outside their range."""
        beta = dilation_coefficient(
            self.unconfined_strength,
            elastic_modulus=self.elastic_modulus,
            unconfined_peak_strain=self.unconfined_peak_strain,
        )
        if self.beta is not None:
            require_positive(beta=self.beta)
            beta = self.beta
        object.__setattr__(self, "_doubled_beta", np.multiply(2.0, beta))

    def _curve(self, pressure: Real) -> tuple[Real, Real]:
        """Peak strain ``eps_cc`` and ``r - 1`` of the curve at a pressure, unchecked."""
        ratio = strength_ratio_unchecked(np.divide(pressure, self.unconfined_strength))
        peak_strain = np.multiply(self.unconfined_peak_strain, np.multiply(5.0, ratio) - 4.0)
        secant = np.multiply(self.unconfined_strength, ratio) / peak_strain
        return peak_strain, np.divide(secant, np.subtract(self.elastic_modulus, secant))

    def lateral_strain(self, axial_strain: Real, *, pressure: Real) -> Real:
        """Lateral strain [-] at an axial strain [-] and a pressure [MPa]; arguments unchecked."""
        peak_strain, r_less_one = self._curve(pressure)
        power = np.power(np.divide(axial_strain, peak_strain), np.add(1.0, r_less_one))
        return np.divide(power, np.multiply(self._doubled_beta, r_less_one))

    def axial_strain(self, lateral_strain: Real, *, pressure: Real) -> Real:
        """Axial strain [-] at a lateral strain [-] and a pressure [MPa]; arguments unchecked."""
        peak_strain, r_less_one = self._curve(pressure)
        power = np.multiply(lateral_strain, np.multiply(self._doubled_beta, r_less_one))
        relative = np.power(power, np.divide(1.0, np.add(1.0, r_less_one)))
        return np.multiply(peak_strain, relative)

    def axial_stress(self, axial_strain: Real, *, lateral_strain: Real) -> Real:
        """Axial stress [MPa] from both strains [-]: the secant model solved for the stress."""
        elastic = np.multiply(self.elastic_modulus, axial_strain)
        return np.divide(elastic, np.add(1.0, np.multiply(self._doubled_beta, lateral_strain)))
