"""Quantities on the terminal."""

from __future__ import annotations

from collections.abc import Sequence

from jacketcheck.host.made_by import made_by
from jacketcheck.render.shop_blocks import DEFAULT_WIDTH, job_heading, paragraph
from jacketcheck.render.shop_numbers import shop_quantity
from jacketcheck.render.text_style import bullets, grid, subheading
from jacketcheck.shop.package import ShopPackage
from jacketcheck.units import DisplaySystem

__all__ = ["shop_text"]


def shop_text(
    package: ShopPackage,
    *,
    system: DisplaySystem,
    written: Sequence[str],
    width: int | None = None,
) -> str:
    """Quantities with their sources, and what was written."""
    columns = max(width or DEFAULT_WIDTH, 80)
    sources: dict[str, int] = {}
    rows = [
        [
            one.item,
            shop_quantity(one.value, one.unit, system),
            one.basis,
            f"[{sources.setdefault(one.source, len(sources) + 1)}]",
        ]
        for one in package.quantities
    ]
    facts = [
        f"variant {package.variant}",
        f"input {package.source}, SHA-256 {package.digest[:16]}…",
    ]
    free = columns - 28
    table = grid(
        rows,
        headers=["item", "quantity", "basis", "source"],
        align=["left", "right", "left", "left"],
        style="text",
        widths=[int(0.38 * free), None, int(0.62 * free), None],
    )
    notes = [paragraph(f"[{number}] {text}", "text", columns) for text, number in sources.items()]
    return (
        "\n\n".join(
            [
                job_heading(package.job, "Shop quantities", facts, "text", columns),
                table,
                subheading("Sources", "text"),
                "\n".join(notes),
                bullets("Written:", written, "text"),
                f"Made by {made_by(package.version, package.plugins, package.switched_off)}.",
                bullets("Cautions:", package.cautions, "text"),
            ]
        )
        + "\n"
    )
