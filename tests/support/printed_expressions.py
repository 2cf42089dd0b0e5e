"""Evaluates the expressions that the steps of a result print, from the steps printed above them.

An expression is read as an engineer reads it: symbols beside one another are multiplied, `×` and
`−` are signs, `²` a power, `≤` and `≥` bounds. What holds a word that is no symbol printed above is
not an equation and evaluates to nothing.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterable, Mapping
from typing import Final

from jacketcheck.results import Result, Step

__all__ = ["evaluated", "reproduced", "value_of"]

_FUNCTIONS: Final[Mapping[str, Callable[..., float]]] = {
    "min": min,
    "max": max,
    "ln": math.log,
}
_NUMBER: Final = re.compile(r"\d+(\.\d+)?")
_FRACTION: Final = re.compile(r"(\d+)/(\d+)(?= in\b)")
_SUPERSCRIPTS: Final = {"²": 2.0, "³": 3.0}
_IN_UNITS: Final = re.compile(
    r"(?P<rule>.*), in (?P<first>psi|ksi|in)(?: and (?P<second>psi|ksi|in))?"
)
_INCH: Final = 25.4
_POUND: Final = 4.4482216152605
_STRESSES: Final = {"psi": _POUND / _INCH**2, "ksi": 1000.0 * _POUND / _INCH**2}


class _NotAnEquationError(Exception):
    """The text holds something that no step above has printed."""


def value_of(expression: str, values: Mapping[str, float]) -> float | None:
    """Value of an expression, None where it is words.

    Examples
    --------
    >>> value_of("min(2 a, b²)/√(c)", {"a": 3.0, "b": 4.0, "c": 4.0})
    3.0
    >>> value_of("the larger", {}) is None
    True
    """
    try:
        reader = _Reader(_words_of(expression, values), values)
        value = reader.bounded()
    except _NotAnEquationError:
        return None
    return value if reader.done else None


def evaluated(results: Iterable[Result]) -> Iterable[tuple[Result, Step, float]]:
    """Every step whose expression is an equation, with the value that it prints."""
    for result in results:
        values: dict[str, float] = {}
        units: dict[str, str] = {}
        for step in result.steps:
            if isinstance(step.value, str):
                continue
            printed = _printed(step, values, units)
            if printed is not None:
                yield result, step, printed
            values[step.symbol], units[step.symbol] = float(step.value), step.unit


def _printed(step: Step, values: Mapping[str, float], units: Mapping[str, str]) -> float | None:
    """What an expression gives, also one that says in which customary units it holds."""
    found = _IN_UNITS.fullmatch(step.expression)
    if found is None:
        return value_of(step.expression, values)
    stress = next(one for one in found.groups()[1:] if one in _STRESSES)
    factors = _customary(stress)
    converted = {name: value / factors.get(units[name], 1.0) for name, value in values.items()}
    value = value_of(found["rule"], converted)
    return None if value is None else value * factors.get(step.unit, 1.0)


def _customary(stress: str) -> dict[str, float]:
    """Internal units in inches and a unit of stress, and in the force that goes with them."""
    return {
        "mm": _INCH,
        "mm2": _INCH**2,
        "MPa": _STRESSES[stress],
        "N": _STRESSES[stress] * _INCH**2,
        "N/mm": _STRESSES[stress] * _INCH,
        "N mm": _STRESSES[stress] * _INCH**3,
    }


def reproduced(step: Step, printed: float) -> bool:
    """Whether a printed expression gives the step's own value."""
    return math.isclose(printed, float(step.value), rel_tol=1e-9, abs_tol=1e-12)


def _words_of(expression: str, values: Mapping[str, float]) -> list[str]:
    names = sorted([*values, *_FUNCTIONS], key=len, reverse=True)
    words: list[str] = []
    rest = expression.strip()
    while rest:
        if fraction := _FRACTION.match(rest):
            # 5/8 in is a size, not a quotient of inches
            words.append(str(int(fraction[1]) / int(fraction[2])))
            rest = rest[fraction.end() :].lstrip()
            continue
        found = next((name for name in names if _begins(rest, name)), None)
        number = _NUMBER.match(rest)
        if found is None and number is not None:
            found = number.group()
        if found is None and re.match(r"in\b", rest) and words and _NUMBER.fullmatch(words[-1]):
            found = "in"
        power = re.match(r"\^\d+(\.\d+)?", rest)
        if found is None and power is not None:
            found = power.group()
        if found is None and rest[0] in "+−×/(),²³√π⅔≤≥":
            found = rest[0]
        if found is None:
            raise _NotAnEquationError(rest)
        words.append(found)
        rest = rest[len(found) :].lstrip()
    return words


def _begins(text: str, name: str) -> bool:
    """Whether a text begins with a whole symbol, not with a longer word."""
    after = text[len(name) : len(name) + 1]
    longer = after.isalpha() or after.isdecimal() or after in {"_", "′"}
    whole = not (longer and (name[-1].isalnum() or name[-1] == "′"))
    return text.startswith(name) and whole


class _Reader:
    """Reads words by the usual order of operations."""

    def __init__(self, words: list[str], values: Mapping[str, float]) -> None:
        self._words, self._values = words, values

    @property
    def done(self) -> bool:
        return not self._words

    def bounded(self) -> float:
        value = self._sum()
        while self._next("≤", "≥"):
            sign = self._words.pop(0)
            bound = self._sum()
            value = min(value, bound) if sign == "≤" else max(value, bound)
        return value

    def _sum(self) -> float:
        value = self._product()
        while self._next("+", "−"):
            sign = self._words.pop(0)
            value += self._product() * (1.0 if sign == "+" else -1.0)
        return value

    def _product(self) -> float:
        """A quotient binds what stands beside one another: a b/c d is (a b)/c times d."""
        value = self._factor()
        while self._words and self._words[0] not in "+−,)≤≥":
            if self._words[0] == "×":
                self._words.pop(0)
            if self._next("/"):
                self._words.pop(0)
                value /= self._factor()
            else:
                value *= self._factor()
        return value

    def _factor(self) -> float:
        if not self._words:
            raise _NotAnEquationError("ends early")
        value = self._atom(self._words.pop(0))
        while self._words and (self._next(*_SUPERSCRIPTS) or self._words[0][0] == "^"):
            power = self._words.pop(0)
            value **= _SUPERSCRIPTS.get(power) or float(power[1:])
        return value

    def _atom(self, word: str) -> float:
        if word in _FUNCTIONS:
            return _FUNCTIONS[word](*self._arguments())
        if word == "√":
            return math.sqrt(self._factor())
        if word == "(":
            self._words.insert(0, "(")
            return self._arguments()[0]
        if word in self._values:
            return self._values[word]
        if word in {"π", "⅔"}:
            return math.pi if word == "π" else 2.0 / 3.0
        if _NUMBER.fullmatch(word):
            value = float(word)
            if self._next("⅔"):
                self._words.pop(0)
                value += 2.0 / 3.0
            if self._next("in"):
                self._words.pop(0)
                value *= 25.4
            return value
        raise _NotAnEquationError(word)

    def _arguments(self) -> list[float]:
        if not self._next("("):
            raise _NotAnEquationError("no bracket")
        self._words.pop(0)
        found = [self.bounded()]
        while self._next(","):
            self._words.pop(0)
            found.append(self.bounded())
        if not self._next(")"):
            raise _NotAnEquationError("open bracket")
        self._words.pop(0)
        return found

    def _next(self, *words: str) -> bool:
        return bool(self._words) and self._words[0] in words
