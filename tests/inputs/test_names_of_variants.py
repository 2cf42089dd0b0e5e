"""Names of variants that cannot be told apart, and overrides that would do nothing."""

from __future__ import annotations

import unicodedata

import pytest

from jacketcheck.errors import InputError
from jacketcheck.inputs import read_text
from jacketcheck.starter import starter_text

HEAD = starter_text("si").partition("# Variants override")[0]


def told(text: str) -> str:
    with pytest.raises(InputError) as refused:
        read_text(HEAD + text)
    return str(refused.value)


@pytest.mark.parametrize("override", ['job.title = "Other"', 'job.units = "us"', "job = {}"])
def test_a_variant_does_not_override_the_job(override: str) -> None:
    assert "variants.a.job: cannot be overridden" in told(f"[variants.a]\n{override}\n")
    assert "variants.a.job: cannot" in told('[variants.a.job]\nnote = "x"\n')


@pytest.mark.parametrize("name", ["all", " all", "ａｌｌ"])
def test_no_variant_is_called_all(name: str) -> None:
    assert "stands for every variant" in told(f'[variants."{name}"]\nsleeve.thickness = "12 mm"\n')


def test_the_file_itself_is_not_called_all() -> None:
    head = HEAD.replace("[job]\n", '[job]\nvariant = "all"\n')
    with pytest.raises(InputError, match=r'job\.variant = "all": must not be'):
        read_text(head)


@pytest.mark.parametrize(
    "second", ["thin  sleeve", "thin sleeve ", "thin\N{NO-BREAK SPACE}sleeve", "ｔhin sleeve"]
)
def test_names_that_look_alike(second: str) -> None:
    text = f'[variants."thin sleeve"]\nsleeve.thickness = "9 mm"\n[variants."{second}"]\n'
    message = told(text)
    assert 'reads like "thin sleeve"' in message or "printable" in message


def test_composed_and_decomposed_letters() -> None:
    composed = "Bögen"
    apart = unicodedata.normalize("NFD", composed)
    assert composed != apart
    assert "reads like" in told(f'[variants."{composed}"]\n[variants."{apart}"]\n')


def test_a_variant_like_the_file_itself() -> None:
    assert "is the name of the file itself" in told('[variants."as  written"]\n')


def test_names_that_differ() -> None:
    read = read_text(f'{HEAD}[variants."thin"]\n[variants."Thin"]\n[variants."thin 2"]\n')
    assert len(read.variants) == 4
