"""Everything a plug-in may implement.

A plug-in is an object (usually a module) with functions of these names, each marked with
`hookimpl`, registered by its distribution under the entry-point group ``jacketcheck.plugins``.
Each hook is called once, when a host is built. Plug-ins are called one after the other: the
built-in one first, then the others in the order of their distribution's and entry point's names.
A hook may only grow by new arguments, which implementations are free to leave out.
"""

from __future__ import annotations

from collections.abc import Sequence

import pluggy

from jacketcheck.catalog.bond_models import BondModel
from jacketcheck.catalog.records import Bar, BoltProduct, FayingClass, PlateSteel, RebarSteel
from jacketcheck.limit_state import LimitState, Provisions

__all__ = ["API_VERSION", "ENTRY_POINT_GROUP", "HOOK_NAMES", "PROJECT", "hookimpl", "hookspec"]

PROJECT = "jacketcheck"
ENTRY_POINT_GROUP = "jacketcheck.plugins"
API_VERSION = 1
"""Grows when a hook is added or changed."""

hookspec = pluggy.HookspecMarker(PROJECT)
hookimpl = pluggy.HookimplMarker(PROJECT)


@hookspec
def jacketcheck_provisions() -> Sequence[Provisions]:
    """Sets of provisions that the plug-in brings. Since version 1.

    Returns
    -------
    sequence of Provisions
        Their ids must be new; the set they inherit from may come from any plug-in.
    """
    raise NotImplementedError


@hookspec
def jacketcheck_limit_states() -> Sequence[LimitState]:
    """Limit states that the plug-in brings, for its own or for anyone's provisions.

    Since version 1.

    Returns
    -------
    sequence of LimitState
        In the order in which they are evaluated. An id may stand once in each set of provisions.
    """
    raise NotImplementedError


@hookspec
def jacketcheck_bars() -> Sequence[Bar]:
    """Bar sizes that an input may name. Since version 1.

    Returns
    -------
    sequence of Bar
        Their names must be new.
    """
    raise NotImplementedError


@hookspec
def jacketcheck_rebar_steels() -> Sequence[RebarSteel]:
    """Reinforcing steels that an input may name. Since version 1.

    Returns
    -------
    sequence of RebarSteel
        Their names must be new.
    """
    raise NotImplementedError


@hookspec
def jacketcheck_bolts() -> Sequence[BoltProduct]:
    """Bolt products that an input may name. Since version 1.

    Returns
    -------
    sequence of BoltProduct
        Their names must be new.
    """
    raise NotImplementedError


@hookspec
def jacketcheck_plate_steels() -> Sequence[PlateSteel]:
    """Plate steels that an input may name. Since version 1.

    Returns
    -------
    sequence of PlateSteel
        Their names must be new.
    """
    raise NotImplementedError


@hookspec
def jacketcheck_faying_classes() -> Sequence[FayingClass]:
    """Faying classes that an input may name, always with their code. Since version 1.

    Returns
    -------
    sequence of FayingClass
        Code and letter together must be new.
    """
    raise NotImplementedError


@hookspec
def jacketcheck_bond_models() -> Sequence[BondModel]:
    """Local bond laws that ``judgement.bond_model`` may name. Since version 1.

    Returns
    -------
    sequence of BondModel
        Their names must be new.
    """
    raise NotImplementedError


HOOK_NAMES = (
    "jacketcheck_provisions",
    "jacketcheck_bars",
    "jacketcheck_rebar_steels",
    "jacketcheck_bolts",
    "jacketcheck_plate_steels",
    "jacketcheck_faying_classes",
    "jacketcheck_bond_models",
    "jacketcheck_limit_states",
)
"""All hooks in the order in which each plug-in is asked."""
