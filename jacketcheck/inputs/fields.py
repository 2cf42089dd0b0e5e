"""Finding a field of the input by its path, and reading a value for it as the file would."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from types import UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel, TypeAdapter, ValidationError
from pydantic.fields import FieldInfo

from jacketcheck.catalog.catalog import Catalog
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.inputs.messages import problems_of
from jacketcheck.inputs.quantity import Quantity
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.inputs.written import shown

__all__ = ["InputField", "field_at", "field_paths", "quantity_of", "value_at"]

_LONGEST_LIST = 12
_NOT_DESIGN = {"job", "sizing", "chance"}


@dataclass(frozen=True)
class InputField:
    """One scalar field of the input.

    Attributes
    ----------
    path
        Dotted path; entries of a list are counted from one.
    info
        What the model says of it.
    quantity
        Unit and range; None for counts, names and choices.
    """

    path: str
    info: FieldInfo
    quantity: Quantity | None

    @property
    def is_number(self) -> bool:
        """Whether values are measured, so that any value between two others makes sense."""
        return self.quantity is not None

    @property
    def is_count(self) -> bool:
        """Whether values are whole numbers."""
        return int in _kinds(self.info.annotation) and self.quantity is None

    def read(self, written: Any, *, catalog: Catalog) -> Any:
        """Validate a value as the input file would.

        Raises
        ------
        InputError
            If the value cannot be used; it carries path, value and what is allowed.
        """
        annotation: Any = Annotated[self.info.annotation, self.info]
        try:
            return TypeAdapter(annotation).validate_python(written, context={"catalog": catalog})
        except ValidationError as error:
            problem = problems_of(error, RepairInput)[0]
            found = InputProblem(self.path, shown(written), problem.message)
            raise InputError([found], source="options") from error


def field_at(path: str, repair: RepairInput) -> InputField:
    """Scalar field of an input at a path.

    Raises
    ------
    InputError
        If there is no such field in this input, or it is not a single value; near names are told.
    """
    holder: Any = repair
    steps = path.split(".")
    for step in steps[:-1]:
        holder = _below(holder, step)
    info = type(holder).model_fields.get(steps[-1]) if isinstance(holder, BaseModel) else None
    if steps[0] in _NOT_DESIGN or info is None or not _is_scalar(info):
        raise InputError([InputProblem("path", shown(path), _hint(path, repair))], source="options")
    return InputField(path, info, quantity_of(info))


def quantity_of(info: FieldInfo) -> Quantity | None:
    """Unit and range of a field; None for counts, names and choices."""
    return next((part for part in _parts(info) if isinstance(part, Quantity)), None)


def value_at(path: str, repair: RepairInput) -> Any:
    """Value of an input at the path of one of its fields; None where it is not written."""
    holder: Any = repair
    for step in path.split("."):
        holder = _below(holder, step)
    return holder


def field_paths(repair: RepairInput) -> tuple[str, ...]:
    """Paths of the scalar fields of an input that a design may differ in.

    Those of tables that the input does not have are left out.
    """
    return tuple(p for p in _paths(repair, "") if p.partition(".")[0] not in _NOT_DESIGN)


def _paths(holder: Any, path: str) -> Iterator[str]:
    if isinstance(holder, BaseModel):
        for name, info in type(holder).model_fields.items():
            here = f"{path}.{name}".lstrip(".")
            if _is_scalar(info):
                yield here
            else:
                yield from _paths(getattr(holder, name), here)
    elif isinstance(holder, tuple):
        for index, entry in enumerate(holder, start=1):
            yield from _paths(entry, f"{path}.{index}")


def _below(holder: Any, step: str) -> Any:
    if isinstance(holder, tuple):
        good = step.isdigit() and 1 <= int(step) <= len(holder)
        return holder[int(step) - 1] if good else None
    if isinstance(holder, BaseModel) and step in type(holder).model_fields:
        return getattr(holder, step)
    return None


def _is_scalar(info: FieldInfo) -> bool:
    """Whether a field holds one number, name or choice."""
    return bool(_kinds(info.annotation)) and _kinds(info.annotation) <= {float, int, str, bool}


def _kinds(annotation: Any) -> frozenset[Any]:
    """Plain types that an annotation allows, None left out."""
    origin = get_origin(annotation)
    if origin is Annotated:
        return _kinds(get_args(annotation)[0])
    if origin is Literal:
        return frozenset(type(word) for word in get_args(annotation))
    if origin in {Union, UnionType}:
        return frozenset().union(*(_kinds(part) for part in get_args(annotation)))
    if annotation is type(None):
        return frozenset()
    return frozenset({annotation})


def _parts(info: FieldInfo) -> Iterator[Any]:
    yield from info.metadata
    waiting = [info.annotation]
    while waiting:
        part: Any = waiting.pop()
        yield part
        waiting += get_args(part)


def _hint(path: str, repair: RepairInput) -> str:
    from difflib import get_close_matches  # noqa: PLC0415 - only needed for a bad path

    known = field_paths(repair)
    ends = [one for one in known if one.rpartition(".")[2] == path.rpartition(".")[2]]
    near = [*get_close_matches(path[:100], known, n=3), *ends][:_LONGEST_LIST]
    if near:
        return (
            f"is not a single value of the input; did you mean {' or '.join(dict.fromkeys(near))}?"
        )
    tables = dict.fromkeys(one.partition(".")[0] for one in known)
    return f"is not a single value of the input; its tables are {', '.join(tables)}"
