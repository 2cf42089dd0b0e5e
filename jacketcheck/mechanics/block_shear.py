"""Block shear at a seam: rows of bolts that tear a block out of the plate's edge.

The hoop force is horizontal. A block of neighbouring bolt rows tears out towards the vertical
edge: by shear along its horizontal boundaries and by tension along the innermost bolt line. A
block within the height has two shear planes; one at the plate's upper or lower end has one, and
its tension plane reaches to that end.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final, NamedTuple

import numpy as np

from jacketcheck.mechanics._arguments import require_reduction, require_whole
from jacketcheck.mechanics._arrays import Floats, Real, require_at_least, require_positive

__all__ = [
    "AASHTO_BLOCK_SHEAR_FACTOR",
    "AISC_BLOCK_SHEAR_FACTOR",
    "BlockShearAreas",
    "SeamBlock",
    "aashto_block_shear_resistance",
    "aisc_block_shear_strength",
    "seam_block",
    "seam_block_shear_strength",
    "seam_blocks",
]

AISC_BLOCK_SHEAR_FACTOR: Final = 0.75
"""Resistance factor for block shear rupture (AISC 360-22 J4.3)."""

AASHTO_BLOCK_SHEAR_FACTOR: Final = 0.80
"""Resistance factor phi_bs (AASHTO LRFD 9th ed. (2020) 6.5.4.2)."""


class BlockShearAreas(NamedTuple):
    """Areas on the boundary of a block.

    Attributes
    ----------
    gross_shear, net_shear
        Gross and net area in shear [mm²].
    net_tension
        Net area in tension [mm²]; zero for a single row with a shear plane on either side.
    """

    gross_shear: Real
    net_shear: Real
    net_tension: Real


class SeamBlock(NamedTuple):
    """A block of neighbouring bolt rows.

    Attributes
    ----------
    rows
        Bolt rows that push on the block.
    areas
        Areas on its boundary.
    """

    rows: Real
    areas: BlockShearAreas


def _block_shear(
    areas: BlockShearAreas,
    *,
    shear_coefficient: float,
    yield_strength: Real,
    tensile_strength: Real,
    stress_uniformity: Real,
) -> Real:
    """Tension rupture plus the lesser of shear rupture and shear yielding."""
    require_positive(
        gross_shear=areas.gross_shear,
        net_shear=areas.net_shear,
        yield_strength=yield_strength,
        tensile_strength=tensile_strength,
    )
    require_at_least(0.0, net_tension=areas.net_tension)
    require_reduction(stress_uniformity=stress_uniformity)
    shear = shear_coefficient * np.minimum(
        np.multiply(tensile_strength, areas.net_shear),
        np.multiply(yield_strength, areas.gross_shear),
    )
    return shear + np.multiply(stress_uniformity, tensile_strength) * areas.net_tension


def aisc_block_shear_strength(
    areas: BlockShearAreas,
    *,
    yield_strength: Real,
    tensile_strength: Real,
    stress_uniformity: Real = 1.0,
) -> Real:
    """Nominal strength for block shear rupture, AISC.

    Parameters
    ----------
    areas
        Areas on the boundary of the block [mm²]; scalars or arrays.
    yield_strength
        Specified minimum yield strength of the plate F_y [MPa], above zero.
    tensile_strength
        Specified minimum tensile strength of the plate F_u [MPa], above zero.
    stress_uniformity
        Factor U_bs [-], above zero and at most one: 1.0 where the tension is uniform, as at a
        seam.

    Returns
    -------
    Real
        Nominal strength R_n [N]; the resistance factor is `AISC_BLOCK_SHEAR_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``R_n = 0.60 F_u A_nv + U_bs F_u A_nt <= 0.60 F_y A_gv + U_bs F_u A_nt`` (Eq. J4-5).

    References
    ----------
    AISC 360-22, Specification for Structural Steel Buildings (2022), J4.3, Eq. J4-5.

    Examples
    --------
    >>> areas = BlockShearAreas(gross_shear=2000.0, net_shear=1500.0, net_tension=500.0)
    >>> float(aisc_block_shear_strength(areas, yield_strength=250.0, tensile_strength=400.0))
    500000.0
    """
    return _block_shear(
        areas,
        shear_coefficient=0.60,
        yield_strength=yield_strength,
        tensile_strength=tensile_strength,
        stress_uniformity=stress_uniformity,
    )


def aashto_block_shear_resistance(
    areas: BlockShearAreas,
    *,
    yield_strength: Real,
    tensile_strength: Real,
    hole_factor: Real,
    stress_uniformity: Real = 1.0,
) -> Real:
    """Nominal resistance for block shear rupture, AASHTO.

    Parameters
    ----------
    areas
        Areas on the boundary of the block [mm²]; scalars or arrays.
    yield_strength
        Specified minimum yield strength of the plate F_y [MPa], above zero.
    tensile_strength
        Specified minimum tensile strength of the plate F_u [MPa], above zero.
    hole_factor
        Factor R_p from `jacketcheck.mechanics.plate_strength.punched_hole_factor` [-].
    stress_uniformity
        Factor U_bs [-], above zero and at most one: 1.0 where the tension is uniform, as at a
        seam.

    Returns
    -------
    Real
        Nominal resistance [N]; the resistance factor is `AASHTO_BLOCK_SHEAR_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``R_p (0.58 F_u A_vn + U_bs F_u A_tn) <= R_p (0.58 F_y A_vg + U_bs F_u A_tn)``
    (Eq. 6.13.4-1).

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), 6.13.4, from memory.

    Examples
    --------
    >>> areas = BlockShearAreas(gross_shear=2000.0, net_shear=1500.0, net_tension=500.0)
    >>> resistance = aashto_block_shear_resistance(
    ...     areas, yield_strength=250.0, tensile_strength=400.0, hole_factor=0.9)
    >>> round(float(resistance))
    441000
    """
    require_reduction(hole_factor=hole_factor)
    strength = _block_shear(
        areas,
        shear_coefficient=0.58,
        yield_strength=yield_strength,
        tensile_strength=tensile_strength,
        stress_uniformity=stress_uniformity,
    )
    return np.multiply(hole_factor, strength)


def seam_block(
    rows: Real,
    *,
    at_end: bool,
    columns: Real,
    pitch: Real,
    gauge: Real,
    edge_distance: Real,
    end_distance: Real,
    thickness: Real,
    hole_along: Real,
    hole_across: Real,
    damage: Real,
) -> SeamBlock:
    """Block of neighbouring bolt rows at a seam, with the areas on its boundary.

    Parameters
    ----------
    rows
        Bolt rows in the block, at least one and whole; scalar or array.
    at_end
        Whether the block lies at the plate's upper or lower end.
    columns
        Bolts in a row, at least one and whole.
    pitch
        Vertical spacing of the rows [mm], above zero.
    gauge
        Horizontal spacing of the bolts in a row [mm], at least zero.
    edge_distance
        Bolt line nearest to the plate's vertical edge, to that edge [mm], above zero: the sleeve's
        edge at the seam, or the splice plate's outer edge.
    end_distance
        First or last row to the plate's horizontal end [mm], above zero.
    thickness
        Thickness of the plate [mm], above zero.
    hole_along, hole_across
        Hole dimensions along and across the hoop force [mm], above zero.
    damage
        Allowance added to each hole [mm], at least zero; see
        `jacketcheck.mechanics.plate_strength`.

    Returns
    -------
    SeamBlock
        Rows and areas [mm²], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range, or the holes leave nothing of a plane.

    Notes
    -----
    A shear plane runs from the edge to the centre of the innermost hole:
    ``edge_distance + (columns - 1) gauge`` gross, less ``columns - 0.5`` holes. The tension plane
    runs between the outermost holes of the block, and on to the plate's end if it lies there.

    References
    ----------
    Geometry; areas as in AISC 360-22 (2022) J4.3.

    Examples
    --------
    >>> block = seam_block(
    ...     2, at_end=False, columns=1, pitch=75.0, gauge=0.0, edge_distance=40.0,
    ...     end_distance=40.0, thickness=10.0, hole_along=22.0, hole_across=22.0, damage=2.0)
    >>> block.areas.gross_shear, block.areas.net_shear, block.areas.net_tension
    (np.float64(800.0), np.float64(560.0), np.float64(510.0))
    """
    require_whole(1, rows=rows, columns=columns)
    require_at_least(0.0, gauge=gauge, damage=damage)
    require_positive(pitch=pitch, edge_distance=edge_distance, end_distance=end_distance)
    require_positive(thickness=thickness, hole_along=hole_along, hole_across=hole_across)
    hole = np.add(hole_across, damage)
    shear_length = edge_distance + np.subtract(columns, 1.0) * gauge
    net_length = shear_length - np.subtract(columns, 0.5) * np.add(hole_along, damage)
    tension_length = np.subtract(rows, 1.0) * np.subtract(pitch, hole)
    if at_end:
        tension_length = tension_length + end_distance - hole / 2.0
    require_positive(net_shear_length=net_length)
    require_at_least(0.0, net_tension_length=tension_length)
    shear_thickness = np.multiply(1.0 if at_end else 2.0, thickness)
    areas = BlockShearAreas(
        gross_shear=shear_length * shear_thickness,
        net_shear=net_length * shear_thickness,
        net_tension=tension_length * thickness,
    )
    return SeamBlock(rows, areas)


def seam_blocks(
    *,
    rows: Real,
    columns: Real,
    pitch: Real,
    gauge: Real,
    edge_distance: Real,
    end_distance: Real,
    thickness: Real,
    hole_along: Real,
    hole_across: Real,
    damage: Real,
) -> dict[str, SeamBlock]:
    """The four blocks of a seam of which the weakest governs.

    Parameters
    ----------
    rows
        Bolt rows of the seam, at least one and whole; scalar or array.
    columns
        Bolts in a row, at least one and whole.
    pitch
        Vertical spacing of the rows [mm], above zero.
    gauge
        Horizontal spacing of the bolts in a row [mm], at least zero.
    edge_distance
        Bolt line nearest to the plate's vertical edge, to that edge [mm], above zero.
    end_distance
        First or last row to the plate's horizontal end [mm], above zero.
    thickness
        Thickness of the plate [mm], above zero.
    hole_along, hole_across
        Hole dimensions along and across the hoop force [mm], above zero.
    damage
        Allowance added to each hole [mm], at least zero.

    Returns
    -------
    dict
        Block by its name: ``one row``, ``all rows``, ``end row``, ``all rows to one end``
        [mm²].

    Raises
    ------
    DomainError
        If an argument lies outside its range, or the holes leave nothing of a plane.

    Notes
    -----
    Each row brings the same force and the strength of a block of ``k`` rows is linear in ``k``, so
    that strength per row is monotonic in ``k``: no block between one row and all rows is weaker
    than both, neither within the height nor at an end.

    References
    ----------
    Geometry; AISC 360-22 (2022) J4.3 and AASHTO LRFD 9th ed. (2020) 6.13.4 for the mechanism.

    Examples
    --------
    >>> blocks = seam_blocks(
    ...     rows=8, columns=1, pitch=75.0, gauge=0.0, edge_distance=40.0, end_distance=40.0,
    ...     thickness=10.0, hole_along=22.0, hole_across=22.0, damage=2.0)
    >>> sorted(blocks)
    ['all rows', 'all rows to one end', 'end row', 'one row']
    """

    def block(rows_in_block: Real, *, at_end: bool) -> SeamBlock:
        return seam_block(
            rows_in_block,
            at_end=at_end,
            columns=columns,
            pitch=pitch,
            gauge=gauge,
            edge_distance=edge_distance,
            end_distance=end_distance,
            thickness=thickness,
            hole_along=hole_along,
            hole_across=hole_across,
            damage=damage,
        )

    return {
        "one row": block(1.0, at_end=False),
        "all rows": block(rows, at_end=False),
        "end row": block(1.0, at_end=True),
        "all rows to one end": block(rows, at_end=True),
    }


def seam_block_shear_strength(
    blocks: dict[str, SeamBlock], strength: Callable[[BlockShearAreas], Real]
) -> Real:
    """Block shear strength of a seam per bolt row, the weakest of its blocks.

    Parameters
    ----------
    blocks
        Blocks from `seam_blocks`.
    strength
        Strength of one block from its areas, such as `aisc_block_shear_strength` with the steel
        bound to it.

    Returns
    -------
    Real
        Strength for each bolt row [N], nominal or design as `strength` is.

    Raises
    ------
    DomainError
        As `strength` does.

    Notes
    -----
    To be compared with the hoop force of the row that has the most of the sleeve to hold: counting
    it for every row of a block errs on the safe side by what an end row takes less or more.

    References
    ----------
    AISC 360-22 (2022) J4.3; AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), 6.13.4.

    Examples
    --------
    >>> from functools import partial
    >>> blocks = seam_blocks(
    ...     rows=8, columns=1, pitch=75.0, gauge=0.0, edge_distance=40.0, end_distance=40.0,
    ...     thickness=10.0, hole_along=22.0, hole_across=22.0, damage=2.0)
    >>> steel = partial(aisc_block_shear_strength, yield_strength=250.0, tensile_strength=400.0)
    >>> round(float(seam_block_shear_strength(blocks, steel)))
    120000
    """
    per_row = [np.divide(strength(block.areas), block.rows) for block in blocks.values()]
    weakest: Floats = np.min(np.broadcast_arrays(*per_row), axis=0)
    return weakest
