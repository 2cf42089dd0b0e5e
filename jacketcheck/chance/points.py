"""Points in the space of independent standard normal variables, in independent replicates."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any, Final, Literal, TypeAlias

import numpy as np

from jacketcheck.mechanics._arrays import Floats

__all__ = [
    "DEFAULT_SEED",
    "REPLICATES",
    "Method",
    "drawn_by",
    "replicate_size",
    "standard_normal_points",
]

Method: TypeAlias = Literal["sobol", "latin-hypercube", "random"]

REPLICATES: Final = 16
"""Independent randomisations that the samples are drawn in; the interval follows from their
spread."""

DEFAULT_SEED: Final = 20_240
"""Seed where none is given: two runs of one file give the same figures."""


_FEWEST_SOBOL: Final = 256
"""Points that a Sobol sequence takes to fill planes of some thirty variables evenly: of 16 points,
some pairs of variables are correlated by up to 0.5, of 128 some by 0.12."""


def drawn_by(samples: int, method: Method) -> Method:
    """How points are drawn: too few for a Sobol sequence come from a Latin hypercube.

    Examples
    --------
    >>> drawn_by(256, "sobol"), drawn_by(4096, "sobol"), drawn_by(256, "random")
    ('latin-hypercube', 'sobol', 'random')
    """
    few = replicate_size(samples, method) < _FEWEST_SOBOL
    return "latin-hypercube" if method == "sobol" and few else method


def replicate_size(samples: int, method: Method) -> int:
    """Points of one replicate, so that all together are at least `samples`.

    A Sobol sequence keeps its balance only over a power of two.

    Examples
    --------
    >>> replicate_size(1000, "random"), replicate_size(1000, "sobol")
    (63, 64)
    """
    size = max(math.ceil(samples / REPLICATES), 1)
    return 1 << (size - 1).bit_length() if method == "sobol" else size


def standard_normal_points(
    variables: int, *, samples: int, method: Method, seed: int, stream: int = 0
) -> Iterator[Floats]:
    """Independent standard normal points, replicate by replicate.

    Parameters
    ----------
    variables
        Number of variables.
    samples
        Least number of points of all replicates together.
    method
        Scrambled Sobol sequence (a Latin hypercube of as many points where they are too few for
        one, see `drawn_by`), Latin hypercube, or plain random points.
    seed
        Seed; the same seed gives the same points.
    stream
        Which of the independent sets of points that go with one seed.

    Yields
    ------
    ndarray
        Points of one replicate, shape (variables, points); may be written over by the next.

    References
    ----------
    Owen, Randomly permuted (t,m,s)-nets and (t,s)-sequences, in Monte Carlo and Quasi-Monte Carlo
    Methods in Scientific Computing (1995); McKay, Beckman and Conover, Technometrics 21(2) (1979),
    239-245; as scipy.stats.qmc has them.
    """
    size = replicate_size(samples, method)
    drawn = drawn_by(samples, method)
    place = np.empty((variables, size))
    for source in np.random.SeedSequence((seed, stream)).spawn(REPLICATES):
        generator = np.random.Generator(np.random.SFC64(source))
        if drawn == "random" or not variables:
            # one place for all: fresh memory costs a third of the draw
            yield generator.standard_normal(out=place)
        else:
            yield _from_uniform(_uniform_points(variables, size, drawn, generator))


def _uniform_points(
    variables: int, size: int, method: Method, generator: np.random.Generator
) -> Floats:
    from scipy.stats import qmc  # noqa: PLC0415 - scipy.stats is slow to import

    engine: Any
    if method == "sobol":
        # one point is the middle of a cell, so that none lies on the border at zero
        engine = qmc.Sobol(variables, scramble=True, seed=generator)
        return np.asarray(engine.random(size).T + 0.5 ** (engine.bits + 1), dtype=float)
    engine = qmc.LatinHypercube(variables, seed=generator)
    return np.asarray(engine.random(size).T, dtype=float)


def _from_uniform(points: Floats) -> Floats:
    from scipy.special import ndtri  # noqa: PLC0415 - scipy.special is slow to import

    return np.asarray(ndtri(np.ascontiguousarray(points)))
