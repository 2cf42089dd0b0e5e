"""Hypothesis strategies over the generators of the long run."""

from __future__ import annotations

from hypothesis import strategies as st

from tests.fuzz.mutations import Broken, mutated
from tests.fuzz.repairs import valid_repair
from tests.fuzz.toml_writing import Table

__all__ = ["broken_files", "repairs"]


def repairs() -> st.SearchStrategy[Table]:
    """Tables of repairs that must be accepted."""
    return st.randoms(use_true_random=False).map(valid_repair)


def broken_files() -> st.SearchStrategy[Broken]:
    """Repair files with some mutations."""
    return st.builds(mutated, st.randoms(use_true_random=False), repairs())
