"""A changed input written as the table of a variant, to paste into the file it came from."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Final

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from jacketcheck.inputs.fields import quantity_of
from jacketcheck.inputs.overrides import REMOVE
from jacketcheck.inputs.quantity import Quantity
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.inputs.written import dotted
from jacketcheck.units import DisplaySystem, parse_quantity
from jacketcheck.units.inches import inch_text

__all__ = ["variant_table", "written_quantity"]

_NOT_DESIGN: Final = frozenset({"job", "sizing", "chance"})
_GONE: Final = object()


def variant_table(
    name: str, base: RepairInput, changed: RepairInput, *, system: DisplaySystem
) -> str:
    """Table of a variant that turns one input into another.

    Parameters
    ----------
    name
        Name of the variant.
    base
        Input of the file without overrides.
    changed
        What the variant must come to.
    system
        Units in which lengths are written where that is exact.

    Returns
    -------
    str
        TOML text; it holds a header alone where nothing differs.

    Examples
    --------
    >>> from jacketcheck.inputs import read_text
    >>> from jacketcheck.inputs.replaced import replaced
    >>> from jacketcheck.starter import starter_text
    >>> base = read_text(starter_text("us")).base
    >>> print(variant_table("thin", base, replaced(base, {"sleeve.thickness": 9.525}), system="us"))
    [variants.thin]
    sleeve.thickness = "3/8 in"
    """
    lines = [f"[variants.{dotted([name])}]"]
    gone: list[str] = []
    for path, info, value in _differences(base, changed, ""):
        if value is _GONE:
            gone.append(path)
        else:
            lines.append(f"{path} = {_toml(value, info, system)}")
    if gone:
        lines.append(f"{REMOVE} = [{', '.join(_quoted(path) for path in gone)}]")
    return "\n".join(lines)


def _differences(
    before: Any, after: Any, path: str, info: FieldInfo | None = None
) -> Iterator[tuple[str, FieldInfo | None, Any]]:
    """Path, field and new value of everything that differs."""
    if before == after:
        return
    if after is None:
        yield path, info, _GONE
    elif isinstance(after, BaseModel):
        for name, inner in type(after).model_fields.items():
            if path or name not in _NOT_DESIGN:
                default = inner.get_default(call_default_factory=True, validated_data={})
                old = default if before is None else getattr(before, name)
                yield from _differences(
                    old, getattr(after, name), f"{path}.{name}".lstrip("."), inner
                )
    elif isinstance(after, tuple) and isinstance(before, tuple) and len(before) == len(after):
        for index, (old, new) in enumerate(zip(before, after, strict=True), start=1):
            yield from _differences(old, new, f"{path}.{index}", info)
    else:
        yield path, info, after


def _toml(value: Any, info: FieldInfo | None, system: DisplaySystem) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, tuple):
        return f"[{', '.join(_toml(one, info, system) for one in value)}]"
    quantity = None if info is None else quantity_of(info)
    if isinstance(value, float) and quantity is not None:
        return written_quantity(value, quantity, system)
    return _quoted(value) if isinstance(value, str) else str(value)


def written_quantity(value: float, quantity: Quantity, system: DisplaySystem) -> str:
    """A quantity as a file holds it, in units that say it exactly.

    Examples
    --------
    >>> from typing import get_args
    >>> from jacketcheck.inputs.quantity import Spacing
    >>> spacing = get_args(Spacing)[1]
    >>> written_quantity(88.9, spacing, "us"), written_quantity(90.0, spacing, "us")
    ('"3-1/2 in"', '"90 mm"')
    """
    if quantity.unit == "1":
        return repr(value)
    texts = [f"{value:.9g} {quantity.unit}", f"{value!r} {quantity.unit}"]
    if quantity.unit == "mm" and system == "us":
        texts.insert(0, inch_text(value))
    exact = next(text for text in texts if parse_quantity(text, quantity.unit) == value)
    return _quoted(exact)


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'
