"""What a crew does and what an inspector looks at, picked for a product and a method."""

from __future__ import annotations

import tomllib
from functools import lru_cache
from importlib.resources import files
from typing import Any, Literal

from jacketcheck.schedule.assembly import Assembly
from jacketcheck.schedule.records import Instruction

__all__ = ["instructions"]


def instructions(
    assembly: Assembly, which: Literal["procedure", "inspection"]
) -> tuple[Instruction, ...]:
    """Instructions that hold for an assembly, in the order in which things happen.

    Where the catalogue names no standard for the product, only those that hold for all.
    """
    rules, method = assembly.rules, assembly.tightening
    standard = None if rules is None else rules.standard
    general = tuple(
        Instruction(entry["text"], entry["source"])
        for entry in _written()[which]
        if ("standards" not in entry or standard in entry["standards"])
        and ("methods" not in entry or method in entry["methods"])
    )
    if rules is None or rules.installation is None:
        return general
    brought = getattr(rules.installation, which)
    return general + tuple(
        Instruction(step.text, step.source)
        for step in brought
        if not step.methods or method in step.methods
    )


@lru_cache(maxsize=1)
def _written() -> dict[str, list[dict[str, Any]]]:
    content = (files("jacketcheck.schedule") / "data" / "instructions.toml").read_bytes()
    return tomllib.loads(content.decode())
