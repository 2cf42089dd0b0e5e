"""The kit as a pytest decorator; pytest is imported only when it is used."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from difflib import get_close_matches
from typing import TYPE_CHECKING

from jacketcheck.conformance.cases import conformance_cases
from jacketcheck.conformance.standard import Repairs
from jacketcheck.errors import ConformanceError
from jacketcheck.host.isolation import DEFAULT_TIME_LIMIT

if TYPE_CHECKING:
    import pytest

__all__ = ["conformance_checks"]


def conformance_checks(
    plugin: object,
    *,
    repairs: Repairs | None = None,
    beside: Iterable[object] = (),
    expected_failures: Mapping[str, str] | None = None,
    seconds: float = DEFAULT_TIME_LIMIT,
) -> pytest.MarkDecorator:
    """Parametrise a test over every check of the kit; the test calls its argument `case`.

    Parameters
    ----------
    plugin, repairs, beside, seconds
        As in `conformance_cases`.
    expected_failures
        Reason by the id of each case that is known to fail, e.g. ``"limit state north/slip:
        moves_as_declared"``. One that passes after all is a failure: take it out of the list.

    Raises
    ------
    ValueError
        If an expected failure is none of the cases, or has no reason.

    Examples
    --------
    >>> @conformance_checks("us")
    ... def test_keeps_the_contract(case):
    ...     case()
    """
    import pytest  # noqa: PLC0415 - needed in a test only

    cases = list(conformance_cases(plugin, repairs=repairs, beside=beside, seconds=seconds))
    reasons = dict(expected_failures or {})
    _require_known(reasons, [case.id for case in cases])
    return pytest.mark.parametrize(
        "case",
        [
            pytest.param(
                case,
                id=case.id,
                marks=pytest.mark.xfail(
                    reason=reasons[case.id], strict=True, raises=ConformanceError
                )
                if case.id in reasons
                else (),
            )
            for case in cases
        ],
    )


def _require_known(reasons: Mapping[str, str], ids: list[str]) -> None:
    for name, reason in reasons.items():
        if name not in ids:
            near = get_close_matches(name, ids, n=1, cutoff=0.5)
            hint = f"; did you mean {near[0]!r}?" if near else ""
            raise ValueError(f"expected failure {name!r} is none of the kit's cases{hint}")
        if not reason.strip():
            raise ValueError(f"expected failure {name!r} has no reason")
