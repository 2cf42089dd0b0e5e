"""What a crew does and what an inspector looks at, picked for a product and a method."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import lru_cache
from importlib.resources import files
from typing import Any, Literal

from jacketcheck.catalog.installation_rules import InstallationStep
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
    inside = any(ply.name == "inside splice plate" for ply in assembly.plies)
    plates = "both" if inside else "outside"
    standard = None if rules is None else rules.standard
    entries = [
        entry
        for entry in _written()[which]
        if ("standards" not in entry or standard in entry["standards"])
        and ("methods" not in entry or method in entry["methods"])
        and entry.get("plates", plates) == plates
    ]
    brought: tuple[InstallationStep, ...] = ()
    if rules is not None and rules.installation is not None:
        brought = getattr(rules.installation, which)
    return (
        *(_instruction(entry) for entry in entries if not _comes_last(entry)),
        *(
            Instruction(step.text, step.source)
            for step in brought
            if not step.methods or method in step.methods
        ),
        *(_instruction(entry) for entry in entries if _comes_last(entry)),
    )


def _instruction(entry: Mapping[str, Any]) -> Instruction:
    return Instruction(entry["text"], entry["source"])


def _comes_last(entry: Mapping[str, Any]) -> bool:
    return bool(entry.get("after_tightening", False))


@lru_cache(maxsize=1)
def _written() -> dict[str, list[dict[str, Any]]]:
    content = (files("jacketcheck.schedule") / "data" / "instructions.toml").read_bytes()
    return tomllib.loads(content.decode())
