"""Without matplotlib the answer is one line that says what to install."""

from __future__ import annotations

import sys

import pytest

from jacketcheck.errors import MissingExtraError
from jacketcheck.figures import draw, require_matplotlib
from jacketcheck.report import VariantResults


def test_the_extra_is_named(monkeypatch: pytest.MonkeyPatch, table: VariantResults) -> None:
    monkeypatch.setitem(sys.modules, "matplotlib", None)
    with pytest.raises(MissingExtraError, match=r'pip install "jacketcheck\[figures\]"') as caught:
        require_matplotlib()
    assert (caught.value.extra, caught.value.package) == ("figures", "matplotlib")
    with pytest.raises(MissingExtraError):
        next(draw("plan", (table,), system="si"))
