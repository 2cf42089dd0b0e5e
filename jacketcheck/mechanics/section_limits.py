"""Characteristic points of a moment-curvature response, and its bilinear idealisation.

Points are found by linear interpolation between the analysed curvatures, and only up to the first
one at which the section no longer carries its axial load.  A point that is not reached has
infinite curvature and strains and a moment of NaN, so that no check can pass on it by chance.

Examples
--------
>>> from jacketcheck.mechanics.bar_steel import BarSteel
>>> from jacketcheck.mechanics.concrete_law import popovics_concrete_law
>>> from jacketcheck.mechanics.moment_curvature import moment_curvature
>>> from jacketcheck.mechanics.section import BarGroup, CircularSection, ConcreteZone
>>> core = popovics_concrete_law(
...     peak_stress=47.0, peak_strain=0.0077, elastic_modulus=27e3, ultimate_strain=0.02)
>>> steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
>>> bars = BarGroup.ring(20, radius=420.0, area=645.0, steel=steel)
>>> section = CircularSection((ConcreteZone("core", 1000.0, core),), (bars,))
>>> response = moment_curvature(section, axial_load=2e6)
>>> first_yield(response).cause, nominal_point(response).cause, ultimate_point(response).cause
('bar yield', 'concrete strain', 'core strain')
>>> curve = bilinear_curve(response)
>>> round(curve.plastic_moment / 1e6), round(curve.curvature_ductility, 1)
(3208, 13.6)
>>> [round(point_at_core_strain(response, strain=0.004).moment / 1e6),
...  round(point_at_extreme_strain(response, strain=0.004).moment / 1e6),
...  round(point_at_bar_strain(response, strain=0.03).moment / 1e6),
...  round(peak_point(response).moment / 1e6)]
[2900, 2900, 3241, 3631]
>>> core_strain_at_moment(response, np.array([1500e6, 1e12])).round(4).tolist()
[0.001, inf]
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, TypeAlias

import numpy as np

from jacketcheck.mechanics._arrays import Floats, Real, require_at_least, require_positive
from jacketcheck.mechanics.moment_curvature import MomentCurvature

__all__ = [
    "BilinearCurve",
    "Cause",
    "SectionPoint",
    "bilinear_curve",
    "core_strain_at_moment",
    "first_yield",
    "nominal_point",
    "peak_point",
    "point_at_bar_strain",
    "point_at_core_strain",
    "point_at_extreme_strain",
    "ultimate_point",
]

Cause: TypeAlias = Literal[
    "bar yield",
    "bar strain",
    "bar fracture",
    "concrete strain",
    "core strain",
    "moment loss",
    "loss of equilibrium",
    "end of analysis",
    "largest moment",
    "not reached",
]
"""What makes a point of the response the one asked for."""


@dataclass(frozen=True)
class SectionPoint:
    """A point of a moment-curvature response.

    Attributes
    ----------
    curvature
        Curvature [1/mm]; infinite where the point is not reached.
    moment
        Moment [N mm]; NaN where the point is not reached.
    cause
        What makes it this point.
    """

    curvature: float
    moment: float
    cause: Cause

    @property
    def reached(self) -> bool:
        """Whether the response has this point."""
        return bool(np.isfinite(self.curvature))


@dataclass(frozen=True)
class BilinearCurve:
    """Elastic and perfectly plastic idealisation of a moment-curvature response.

    Attributes
    ----------
    yield_curvature
        Idealised yield curvature [1/mm]; NaN without a first yield.
    plastic_moment
        Idealised plastic moment [N mm]; NaN without a first yield.
    ultimate_curvature
        Ultimate curvature [1/mm].
    ultimate_cause
        What limits the curvature.
    """

    yield_curvature: float
    plastic_moment: float
    ultimate_curvature: float
    ultimate_cause: Cause

    @property
    def effective_stiffness(self) -> float:
        """Slope of the elastic branch [N mm²]: moment over curvature at first yield."""
        return self.plastic_moment / self.yield_curvature

    @property
    def curvature_ductility(self) -> float:
        """Ultimate over idealised yield curvature [-]."""
        return self.ultimate_curvature / self.yield_curvature


def _crossing(
    response: MomentCurvature, values: Floats, limit: float, cause: Cause
) -> SectionPoint:
    """First point at which `values` rise to `limit`."""
    above = np.flatnonzero(values[: response.valid_count] >= limit)
    if above.size == 0:
        return SectionPoint(np.inf, np.nan, "not reached")
    last = int(above[0])
    before, after = values[max(last - 1, 0)], values[last]
    share = float((limit - before) / (after - before)) if last > 0 else 1.0
    return _between(response, last, share, cause)


def _between(response: MomentCurvature, last: int, share: float, cause: Cause) -> SectionPoint:
    """The point a share of the way from the analysed one before `last`."""
    first = max(last - 1, 0)
    curvature, moment = (
        float(values[first] + share * (values[last] - values[first]))
        for values in (response.curvature, response.moment)
    )
    return SectionPoint(curvature, moment, cause)


def _first(*points: SectionPoint) -> SectionPoint:
    """The point with the smallest curvature."""
    return min(points, key=lambda point: point.curvature)


def point_at_core_strain(response: MomentCurvature, *, strain: float) -> SectionPoint:
    """Point at which the edge of the core reaches a compressive strain.

    Parameters
    ----------
    response
        Moment-curvature response of a section.
    strain
        Compressive strain [-], above zero.

    Returns
    -------
    SectionPoint
        The point; not `reached` if the response ends before.

    Raises
    ------
    DomainError
        If the strain is not finite and above zero.

    References
    ----------
    Plane sections.
    """
    require_positive(strain=strain)
    return _crossing(response, response.core_compressive_strain, strain, "core strain")


def point_at_extreme_strain(response: MomentCurvature, *, strain: float) -> SectionPoint:
    """Point at which the outermost concrete fibre reaches a compressive strain.

    Parameters
    ----------
    response
        Moment-curvature response of a section.
    strain
        Compressive strain [-], above zero.

    Returns
    -------
    SectionPoint
        The point; not `reached` if the response ends before.

    Raises
    ------
    DomainError
        If the strain is not finite and above zero.

    References
    ----------
    Plane sections.
    """
    require_positive(strain=strain)
    return _crossing(response, response.extreme_compressive_strain, strain, "concrete strain")


def point_at_bar_strain(response: MomentCurvature, *, strain: float) -> SectionPoint:
    """Point at which the extreme tension bar reaches a strain, such as one that lets it buckle.

    Parameters
    ----------
    response
        Moment-curvature response of a section.
    strain
        Tensile strain [-], above zero.

    Returns
    -------
    SectionPoint
        The point; not `reached` if the response ends before.  Bars whose bond cannot develop
        their yield strength are left out.

    Raises
    ------
    DomainError
        If the strain is not finite and above zero.

    References
    ----------
    Plane sections.
    """
    require_positive(strain=strain)
    return _crossing(response, response.extreme_tensile_strain, strain, "bar strain")


def first_yield(response: MomentCurvature, *, concrete_strain: float = 0.002) -> SectionPoint:
    """First yield of the section.

    Parameters
    ----------
    response
        Moment-curvature response of a section.
    concrete_strain
        Strain of the outermost concrete fibre that counts as yield [-], above zero.

    Returns
    -------
    SectionPoint
        The point at which the first bar yields, in tension or compression, or the concrete
        reaches its strain, whichever comes first.

    Raises
    ------
    DomainError
        If the strain is not finite and above zero.

    Notes
    -----
    Bars whose bond cannot develop their yield strength are left out.  The concrete's strain
    governs only under high axial load.

    References
    ----------
    Priestley, Calvi and Kowalsky, Displacement-Based Seismic Design of Structures (2007),
    sec. 4.2; AASHTO Guide Spec Seismic 2nd ed. (2011) 8.5 counts bars only.
    """
    section = response.section
    ratio = np.where(
        section.bar_yields, np.abs(response.bar_strain) / section.bar_yield_strain, 0.0
    ).max(axis=1, initial=0.0)
    return _first(
        _crossing(response, ratio, 1.0, "bar yield"),
        point_at_extreme_strain(response, strain=concrete_strain),
    )


def nominal_point(
    response: MomentCurvature, *, concrete_strain: float = 0.004, bar_strain: float = 0.015
) -> SectionPoint:
    """Nominal moment of the section at serviceability strains.

    Parameters
    ----------
    response
        Moment-curvature response of a section.
    concrete_strain
        Compressive strain of the outermost concrete fibre [-], above zero.
    bar_strain
        Tensile strain of the extreme bar [-], above zero.

    Returns
    -------
    SectionPoint
        The point at which the first of the two strains is reached.

    Raises
    ------
    DomainError
        If a strain is not finite and above zero.

    References
    ----------
    Priestley, Calvi and Kowalsky, Displacement-Based Seismic Design of Structures (2007),
    sec. 4.2: strains 0.004 and 0.015.
    """
    return _first(
        point_at_extreme_strain(response, strain=concrete_strain),
        point_at_bar_strain(response, strain=bar_strain),
    )


def peak_point(response: MomentCurvature) -> SectionPoint:
    """Largest moment of the response.

    Parameters
    ----------
    response
        Moment-curvature response of a section.

    Returns
    -------
    SectionPoint
        The point; not `reached` if the section carries its axial load at no curvature.

    References
    ----------
    None: search of the response.
    """
    if response.valid_count == 0:
        return SectionPoint(np.inf, np.nan, "not reached")
    peak = int(np.argmax(response.moment[: response.valid_count]))
    return _between(response, peak, 1.0, "largest moment")


def ultimate_point(response: MomentCurvature, *, moment_loss: float = 0.2) -> SectionPoint:
    """Ultimate curvature of the section.

    Parameters
    ----------
    response
        Moment-curvature response of a section.
    moment_loss
        Share of the largest moment whose loss counts as failure [-], above zero.

    Returns
    -------
    SectionPoint
        The first of: the edge of the core at its ultimate strain, fracture of a bar, loss of
        moment, and loss of equilibrium.  If nothing of this happens the last analysed point,
        with cause ``end of analysis``: a lower bound.

    Raises
    ------
    DomainError
        If the loss is not finite and above zero.

    Notes
    -----
    A bar fractures only where its bond can develop its tensile strength.

    References
    ----------
    AASHTO Guide Spec Seismic 2nd ed. (2011) 8.5; the loss of 20 % is the usual definition of
    failure in tests (common practice, no published source).
    """
    require_positive(moment_loss=moment_loss)
    end = response.valid_count
    if end == 0:
        return SectionPoint(np.inf, np.nan, "not reached")
    whole = end == response.curvature.size
    last = _between(response, end - 1, 1.0, "end of analysis" if whole else "loss of equilibrium")
    core = response.section.zones[0].law.ultimate_strain
    return _first(
        point_at_core_strain(response, strain=core),
        _bar_fracture(response),
        _moment_loss(response, moment_loss),
        last,
    )


def _whole_count(response: MomentCurvature) -> int:
    """Number of points with equilibrium before the first fracture of a bar."""
    broken = np.flatnonzero(response.bar_fractured.any(axis=1))
    return min(response.valid_count, int(broken[0]) if broken.size else response.valid_count)


def _bar_fracture(response: MomentCurvature) -> SectionPoint:
    """First fracture of a bar, with the moment of the last point before it."""
    section, last = response.section, _whole_count(response)
    if last >= response.valid_count:
        return SectionPoint(np.inf, np.nan, "not reached")
    rows = slice(max(last - 1, 0), last + 1)
    used = response.bar_strain[rows] / section.bar_ultimate_strain
    ratio = np.where(section.bar_anchored, used, 0.0).max(axis=1)
    share = float(np.clip((1.0 - ratio[0]) / max(ratio[-1] - ratio[0], 1e-12), 0.0, 1.0))
    curvature = _between(response, last, share, "bar fracture").curvature
    return SectionPoint(curvature, float(response.moment[rows][0]), "bar fracture")


def _moment_loss(response: MomentCurvature, loss: float) -> SectionPoint:
    """First loss of a share of the largest moment so far, before any bar fractures."""
    moment = response.moment[: _whole_count(response)]
    largest = np.maximum.accumulate(moment)
    lost = np.where(largest > 0.0, 1.0 - moment / np.where(largest > 0.0, largest, 1.0), 0.0)
    return _crossing(response, lost, loss, "moment loss")


def bilinear_curve(response: MomentCurvature, *, moment_loss: float = 0.2) -> BilinearCurve:
    """Elastic and perfectly plastic curve with the same area as the response.

    Parameters
    ----------
    response
        Moment-curvature response of a section.
    moment_loss
        Loss of moment that counts as failure [-], see `ultimate_point`.

    Returns
    -------
    BilinearCurve
        The idealisation.

    Raises
    ------
    DomainError
        If the loss is not finite and above zero.

    Notes
    -----
    The elastic branch runs through `first_yield`; the plastic moment balances the areas
    between the response and the idealisation from first yield to the ultimate curvature.  With
    stiffness ``k``, area ``A`` beyond first yield and ``S = A + M_y phi_y / 2``:
    ``Mp = k (phi_u - sqrt(phi_u**2 - 2 S / k))``.

    References
    ----------
    AASHTO Guide Spec Seismic 2nd ed. (2011) 8.5; Caltrans SDC 1.7 (2013) 3.3.1.
    """
    ultimate = ultimate_point(response, moment_loss=moment_loss)
    start = first_yield(response)
    if not start.reached or not start.curvature < ultimate.curvature:
        return BilinearCurve(np.nan, np.nan, ultimate.curvature, ultimate.cause)
    curvature, moment = response.curvature, response.moment
    inside = (curvature > start.curvature) & (curvature < ultimate.curvature)
    phi = np.concatenate([[start.curvature], curvature[inside], [ultimate.curvature]])
    height = np.concatenate([[start.moment], moment[inside], [ultimate.moment]])
    area = np.trapezoid(height, phi) + 0.5 * start.moment * start.curvature
    stiffness = start.moment / start.curvature
    rest = ultimate.curvature**2 - 2.0 * area / stiffness
    root = np.sqrt(rest) if rest >= 0.0 else np.nan  # a response above its elastic branch
    plastic = stiffness * (ultimate.curvature - root)
    return BilinearCurve(
        float(plastic / stiffness), float(plastic), ultimate.curvature, ultimate.cause
    )


def core_strain_at_moment(response: MomentCurvature, moment: Real) -> Real:
    """Compressive strain at the edge of the core when the section first carries a moment.

    Parameters
    ----------
    response
        Moment-curvature response of a section.
    moment
        Moment [N mm], at least zero; scalar or array.

    Returns
    -------
    Real
        Strain [-]; infinite where the section never carries the moment.

    Raises
    ------
    DomainError
        If a moment is negative or not finite.

    References
    ----------
    Plane sections.
    """
    require_at_least(0.0, moment=moment)
    count = response.valid_count
    target = np.asarray(moment, dtype=float)
    if count == 0:
        return np.full(target.shape, np.inf)[()]
    reached = np.maximum.accumulate(response.moment[:count])
    strain = response.core_compressive_strain[:count]
    last = np.searchsorted(reached, target)
    inside = np.minimum(last, count - 1)
    before = np.maximum(inside - 1, 0)
    rise = reached[inside] - reached[before]
    share = np.where(rise > 0.0, (target - reached[before]) / np.where(rise > 0.0, rise, 1.0), 1.0)
    found = strain[before] + share * (strain[inside] - strain[before])
    return np.where(last < count, found, np.inf)[()]
