"""Symbols are told from words by how they are written."""

from __future__ import annotations

import pytest

from jacketcheck.conformance.symbols import unknown_symbols, without_introduction
from jacketcheck.results import Step


@pytest.mark.parametrize(
    ("expression", "known", "missing"),
    [
        pytest.param("F_y A_g", {"F_y"}, ("A_g",), id="index"),
        pytest.param("2 F_u,s t", {"F_u"}, ("F_u,s", "t"), id="index of two parts"),
        pytest.param("f′c + 2 x²", {"x"}, ("f′c",), id="prime and power"),
        pytest.param("min(A_e/A_g, 0.85)", {"A_e/A_g"}, (), id="ratio that has a symbol"),
        pytest.param("R_i du/dp", {"du/dp", "R_i"}, (), id="derivative"),
        pytest.param("2 √(μ p)/π", {"p"}, ("μ",), id="Greek letter and constant"),
        pytest.param("Δh + h", {"h"}, ("Δh",), id="Greek letter before a letter"),
        pytest.param("4 in + 4 t ≤ 7 in", {"t"}, (), id="unit beside a number"),
        pytest.param("0.79 d_b f_s, in and ksi", {"d_b", "f_s"}, (), id="units of a formula"),
        pytest.param("ASTM F3125 A325, 7/8 in", set(), (), id="name of a product"),
        pytest.param("net section, AISC 360-22 J4.1(b)", set(), (), id="clause"),
        pytest.param("share of a bar in a hole", set(), (), id="words"),
        pytest.param("a + b", {"b"}, ("a",), id="a letter that is no article"),
        pytest.param("at the expected f_ye", set(), ("f_ye",), id="symbol among words"),
        pytest.param("n_c V", {"V", "n"}, ("n_c",), id="longer than a known one"),
    ],
)
def test_what_is_a_symbol(expression: str, known: set[str], missing: tuple[str, ...]) -> None:
    assert unknown_symbols(expression, known) == missing


def test_a_step_does_not_introduce_what_stands_above_it_or_itself() -> None:
    steps = (
        Step("R", "R A", 1.0, "N", "statics"),
        Step("A", "given", 1.0, "mm2", "input"),
        Step("S", "R A", 1.0, "N", "statics"),
    )
    assert [(step.symbol, symbol) for step, symbol in without_introduction(steps)] == [
        ("R", "R"),
        ("R", "A"),
    ]
