"""Foreign bond models: called by our own limit states, so that they need a guard of their own."""

from __future__ import annotations

import copy
from dataclasses import replace

from jacketcheck.catalog.bond_models import BondConditions, BondModel
from jacketcheck.errors import NotEvaluatedError
from jacketcheck.host.host import PluginInfo
from jacketcheck.host.isolation import call_isolated
from jacketcheck.mechanics.bond_law import BondLaw

__all__ = ["guarded_bond_model"]


def guarded_bond_model(model: BondModel, plugin: PluginInfo, *, seconds: float) -> BondModel:
    """The same model, whose law raises NotEvaluatedError for whatever goes wrong in it.

    Once it has outlasted its time it is not asked again.
    """
    who = f"plug-in {plugin.name} ({plugin.origin}), bond model {model.name}"
    given_up: list[str] = []

    def law(bar: BondConditions) -> BondLaw:
        if given_up:
            raise NotEvaluatedError(f"{who}: {given_up[0]} when it was asked before")
        # a copy: the arrays may be those of an analysis that others use as well
        outcome = call_isolated(model.law, copy.deepcopy(bar), name=who, seconds=seconds)
        if outcome.timed_out:
            given_up.append(str(outcome.problem))
        if outcome.problem is not None:
            raise NotEvaluatedError(f"{who}: {outcome.problem}")
        if not isinstance(outcome.value, BondLaw):
            kind = type(outcome.value).__name__
            raise NotEvaluatedError(f"{who}: returned a {kind}, not a BondLaw")
        return outcome.value

    return replace(model, law=law)
