"""Reading the catalogue's data files."""

from __future__ import annotations

import tomllib
from functools import lru_cache
from importlib.resources import files
from typing import Any

__all__ = ["read_table"]


@lru_cache(maxsize=None)
def read_table(name: str) -> dict[str, Any]:
    """Parse ``data/NAME.toml`` once; callers must not change what they get."""
    text = files("jacketcheck.catalog").joinpath("data", f"{name}.toml").read_text("utf-8")
    return tomllib.loads(text)
