"""First-order reliability method: the point of failure nearest to the means."""

from __future__ import annotations

import math
from collections.abc import Callable, Generator, Mapping
from dataclasses import dataclass
from typing import Final, TypeAlias

import numpy as np

from jacketcheck.mechanics._arrays import Floats

__all__ = [
    "DesignPoint",
    "LimitFunctionOfNormals",
    "design_point",
    "design_points",
    "exceedance_of_index",
]

LimitFunctionOfNormals: TypeAlias = Callable[[Floats], Floats]
"""Margin at some points, shape (variables, points) to (points,); negative where it fails."""
_Search: TypeAlias = "Generator[Floats, Floats, DesignPoint | None]"
"""Asks for margins at points, one set after the other, and ends with what it found."""

_MOST_STEPS: Final = 30
_PERTURBATION: Final = 1e-3
_TRIED: Final = 0.5 ** np.arange(9)
_FARTHEST: Final = 12.0


@dataclass(frozen=True, eq=False)
class DesignPoint:
    """Most likely point of failure in the space of independent standard normal variables.

    Attributes
    ----------
    index
        Reliability index ``β`` [-]: distance from the origin, negative where the origin fails.
    alpha
        Unit vector from the origin towards failure.
    point
        The point itself, ``β alpha``.
    steps
        Iterations taken.
    """

    index: float
    alpha: Floats
    point: Floats
    steps: int

    @property
    def probability(self) -> float:
        """First-order probability of failure ``Φ(-β)`` [-]."""
        return exceedance_of_index(self.index)


def exceedance_of_index(index: float) -> float:
    """Probability ``Φ(-β)`` that belongs to a reliability index.

    Examples
    --------
    >>> round(exceedance_of_index(3.0), 5)
    0.00135
    """
    return 0.5 * math.erfc(index / math.sqrt(2.0))


def design_point(
    margin: LimitFunctionOfNormals, variables: int, *, tolerance: float = 1e-4
) -> DesignPoint | None:
    """Search the design point of a limit function.

    Parameters
    ----------
    margin
        Function that takes many points at once.
    variables
        Number of variables.
    tolerance
        Largest change of the point from one iteration to the next, and largest margin left over
        its first value [-].

    Returns
    -------
    DesignPoint or None
        None where there is no gradient, the search does not settle, or the margin is not a finite
        number.

    Notes
    -----
    Linearised at each iteration, ``u' = [(∇g·u - g)/|∇g|²] ∇g``, with a step length that lowers
    the merit function ``|u|²/2 + c |g|``. All differences of the gradient, and then all step
    lengths, are evaluated at once. With one design point and a nearly flat limit surface
    ``Φ(-β)`` is close to the probability; it is reported beside the sampled one, not instead of it.

    References
    ----------
    Hasofer and Lind, J. Eng. Mech. Div. ASCE 100(1) (1974), 111-121; Rackwitz and Fiessler,
    Comput. Struct. 9(5) (1978), 489-494; Zhang and Der Kiureghian, in Reliability and Optimization
    of Structural Systems (1995), 297-304, for the merit function.

    Examples
    --------
    >>> found = design_point(lambda u: 3.0 - u[0] - u[1], 2)
    >>> round(found.index, 4)
    2.1213
    """
    found = design_points({"": variables}, lambda points: {"": margin(points[""])}, tolerance)
    return found[""]


def design_points(
    variables: Mapping[str, int],
    margins: Callable[[Mapping[str, Floats]], Mapping[str, Floats]],
    tolerance: float = 1e-4,
) -> dict[str, DesignPoint | None]:
    """Search the design points of several limit functions side by side.

    Parameters
    ----------
    variables
        Number of variables of each, by name.
    margins
        Margins of those that are still being searched, at points of their own.
    tolerance
        As in `design_point`.
    """
    searches = {name: _search(count, tolerance) for name, count in variables.items()}
    asked = {name: next(search) for name, search in searches.items()}
    found: dict[str, DesignPoint | None] = {}
    while asked:
        answers = margins(asked)
        following = {}
        for name in asked:
            try:
                following[name] = searches[name].send(np.asarray(answers[name], dtype=float))
            except StopIteration as end:
                found[name] = end.value
        asked = following
    return found


def _search(variables: int, tolerance: float) -> _Search:
    point = np.zeros(variables)
    scale: float | None = None
    penalty = 0.0
    for step in range(1, _MOST_STEPS + 1):
        values = yield _around(point)
        value, gradient = _linearised(values)
        length = float(np.linalg.norm(gradient))
        if not math.isfinite(value) or not math.isfinite(length) or length < 1e-12:
            return None
        scale = max(abs(value), 1e-12) if scale is None else scale
        target = (float(gradient @ point) - value) / length**2 * gradient
        moved = float(np.linalg.norm(target - point))
        if abs(value) <= tolerance * max(scale, 1e-3) and moved <= 10.0 * tolerance:
            alpha = -gradient / length
            return DesignPoint(float(alpha @ point), alpha, point, step)
        penalty = max(penalty, 2.0 * float(np.linalg.norm(target)) / length + 1.0)
        tried = point[:, None] + (target - point)[:, None] * _TRIED
        margin = yield tried
        merit = np.sum(tried**2, axis=0) / 2.0 + penalty * np.abs(margin)
        # the point with the smallest merit on the way to the target
        point = tried[:, int(np.argmin(np.where(np.isfinite(merit), merit, np.inf)))]
        if float(np.linalg.norm(point)) > _FARTHEST:
            return None
    return None


def _around(point: Floats) -> Floats:
    """A point and its neighbors on either side along each axis."""
    steps = _PERTURBATION * np.eye(len(point))
    return np.hstack([point[:, None], point[:, None] + steps, point[:, None] - steps])


def _linearised(values: Floats) -> tuple[float, Floats]:
    """Margin at a point and its gradient by central differences, from the margins around it."""
    count = len(values) // 2
    gradient = (values[1 : count + 1] - values[count + 1 :]) / (2.0 * _PERTURBATION)
    return float(values[0]), gradient
