"""Loading: order of hooks, what each may bring, and a name to every problem."""

from __future__ import annotations

import inspect
import threading
from collections.abc import Callable
from dataclasses import replace
from importlib.metadata import EntryPoint
from types import ModuleType
from typing import Any

import pytest

from jacketcheck import hookspecs
from jacketcheck.catalog.bond_models import BondModel
from jacketcheck.catalog.catalog import built_in_catalog
from jacketcheck.errors import InputError, NotEvaluatedError
from jacketcheck.hookspecs import HOOK_NAMES, hookimpl
from jacketcheck.host import BUILT_IN, Host, PluginInfo, load_host
from jacketcheck.jacket import Jacket
from jacketcheck.limit_state import LimitState, Provisions
from jacketcheck.results import Result

Make = Callable[..., Any]


def problems(host: Host) -> list[str]:
    """What and message of every problem, which must all be those of `north`."""
    assert all(problem.plugin.name == "north" for problem in host.problems)
    return [f"{problem.what}: {problem.message}" for problem in host.problems]


def test_the_built_in_plug_in_comes_first_and_is_sound(load_with: Make) -> None:
    host = load_with()
    (own,) = host.plugins
    assert (own.name, own.distribution, own.built_in) == (BUILT_IN, "jacketcheck", True)
    assert host.problems == ()
    assert own.provisions == ("us",)
    assert len(own.limit_states) == len(set(own.limit_states)) > 0
    assert all(name.startswith("us/") for name in own.limit_states)


def test_hooks_are_called_once_each_in_this_order(load_with: Make, plugin: Make) -> None:
    called: list[str] = []

    def recorder(name: str) -> Callable[[], list[Any]]:
        def hook() -> list[Any]:
            called.append(name)
            return []

        return hook

    names = [name.removeprefix("jacketcheck_") for name in HOOK_NAMES]
    load_with(plugin(**{name: recorder(name) for name in names}))
    assert called == [
        "provisions",
        "bars",
        "rebar_steels",
        "bolts",
        "plate_steels",
        "faying_classes",
        "bond_models",
        "limit_states",
    ]


def test_every_specified_hook_is_asked() -> None:
    specified = {
        name
        for name, value in vars(hookspecs).items()
        if inspect.isfunction(value) and hasattr(value, "jacketcheck_spec")
    }
    assert specified == set(HOOK_NAMES)
    for name in HOOK_NAMES:
        assert "Since version" in str(inspect.getdoc(getattr(hookspecs, name)))


def test_what_a_plug_in_brings_is_there(
    load_with: Make, plugin: Make, alone: Provisions, limit_state: Make
) -> None:
    catalog = built_in_catalog()
    host = load_with(
        plugin(
            provisions=lambda: [alone],
            bars=lambda: [replace(catalog.bar("No. 9"), name="N 29", aliases=())],
            rebar_steels=lambda: [
                replace(catalog.rebar_steel("EN B500B"), name="N 500", aliases=())
            ],
            bolts=lambda: [
                replace(catalog.bolt_product("ASTM F3125 A325"), name="N 800", aliases=())
            ],
            plate_steels=lambda: [
                replace(catalog.plate_steel("ASTM A36"), name="N 250", aliases=())
            ],
            faying_classes=lambda: [
                replace(catalog.faying_class("AISC A"), code="North", aliases=())
            ],
            bond_models=lambda: [
                replace(catalog.bond_model("fib Model Code 2010"), name="N bond", aliases=())
            ],
            limit_states=lambda: [limit_state(), limit_state(name="second")],
        )
    )
    assert problems(host) == []
    assert host.plugins[1].provisions == ("alone",)
    assert host.plugins[1].limit_states == ("alone/first", "alone/second")
    assert host.catalog.bar("n 29").name == "N 29"
    assert host.catalog.rebar_steel("N 500").name == "N 500"
    assert host.catalog.bolt_product("N 800").size("1 in").name == "1 in"
    assert host.catalog.plate_steel("N 250").name == "N 250"
    assert host.catalog.faying_class("North A").name == "North A"
    assert host.catalog.bond_model("N bond").name == "N bond"
    assert [one.limit_state.id for one in host.limit_states("alone")] == ["first", "second"]


def test_hooks_may_leave_their_return_a_tuple_or_a_generator(
    load_with: Make, plugin: Make, alone: Provisions, limit_state: Make
) -> None:
    host = load_with(
        plugin(provisions=lambda: (alone,), limit_states=lambda: (one for one in [limit_state()]))
    )
    assert host.plugins[1].limit_states == ("alone/first",)


def boom() -> None:
    raise ValueError("no good")


def empty() -> list[Any]:
    return []


def mapping() -> dict[str, Any]:
    return {}


def with_argument(size: str) -> list[str]:
    return [size]


def nothing(jacket: Jacket) -> list[Result]:
    del jacket
    return []


@pytest.mark.parametrize(
    ("hook", "function", "problem"),
    [
        ("limit_states", boom, "jacketcheck_limit_states: raised ValueError: no good (test_loadi"),
        ("provisions", lambda: None, "jacketcheck_provisions: returned nothing, not a sequence"),
        ("limit_states", lambda: 3, "jacketcheck_limit_states: raised TypeError: 'int' object is"),
        ("limit_states", lambda: "ab", "jacketcheck_limit_states: returned a str, not a sequence"),
        ("limit_states", mapping, "jacketcheck_limit_states: returned a dict, not a sequence"),
        ("limit_states", lambda: [3], "jacketcheck_limit_states: brought a int, not a LimitState"),
        ("bars", lambda: [None], "jacketcheck_bars: brought a NoneType, not a Bar"),
        ("bolts", lambda: ["A325"], "jacketcheck_bolts: brought a str, not a BoltProduct"),
        (
            "bars",
            lambda: [replace(built_in_catalog().bar("No. 9"))],
            "catalogue: bar size 'No. 9' is taken already, by No. 9",
        ),
        (
            "bond_models",
            lambda: [replace(built_in_catalog().bond_model("MC2010"))],
            "catalogue: bond model 'fib Model Code 2010' is taken already",
        ),
        (
            "bars",
            lambda: [replace(built_in_catalog().bar("No. 9"), name="N", diameter=float("nan"))],
            "jacketcheck_bars: bar size 'N' has diameter = nan; must be a number above zero",
        ),
        (
            "provisions",
            lambda: [Provisions("us", "Ours now")],
            "provisions us: id is already taken",
        ),
        (
            "limit_states",
            lambda: [LimitState("Bad Id", "t", "us", nothing)],
            "jacketcheck_limit_states: raised ValueError: limit state id 'Bad Id': must be lower",
        ),
        (
            "limit_states",
            lambda: [LimitState("lost", "t", "nowhere", nothing)],
            "limit state lost: belongs to provisions nowhere, which are not known",
        ),
        ("nonsense", empty, "registration: raised PluginValidationError: unknown hook 'jacket"),
        ("bars", with_argument, "registration: raised PluginValidationError: Plugin 'north' for"),
    ],
)  # fmt: skip
def test_a_problem_names_the_plug_in_and_what_it_is(
    load_with: Make, plugin: Make, hook: str, function: Callable[..., Any], problem: str
) -> None:
    host = load_with(plugin(**{hook: function}))
    (found,) = problems(host)
    assert found.startswith(problem)
    assert found.isprintable()
    assert host.problems[0].plugin.origin == "jacketcheck-north 1.2"
    assert host.plugins[1].problems == (found,)
    assert host.plugins[0].problems == ()


def test_what_a_broken_hook_leaves_whole_is_used(
    load_with: Make, plugin: Make, alone: Provisions, limit_state: Make
) -> None:
    host = load_with(
        plugin(
            provisions=lambda: [alone],
            bars=boom,
            limit_states=lambda: [limit_state(), limit_state(), 3, limit_state(name="second")],
        )
    )
    assert [one.limit_state.id for one in host.limit_states("alone")] == ["first", "second"]
    of_bars, taken, number = problems(host)
    assert of_bars.startswith("jacketcheck_bars: raised ValueError: no good")
    assert taken == (
        "limit state first: id is already taken in provisions alone by north "
        "(jacketcheck-north 1.2)"
    )
    assert number == "jacketcheck_limit_states: brought a int, not a LimitState"


def test_a_hook_that_hangs(load_with: Make, plugin: Make) -> None:
    host = load_with(plugin(bars=lambda: threading.Event().wait(20.0)), seconds=0.2)
    assert problems(host) == ["jacketcheck_bars: did not return within 0.2 s"]


def test_a_hook_that_leaves(load_with: Make, plugin: Make) -> None:
    def leave() -> None:
        raise SystemExit(0)

    (problem,) = problems(load_with(plugin(bars=leave)))
    assert problem.startswith("jacketcheck_bars: raised SystemExit: 0")


def test_a_hook_without_its_mark_is_told_and_not_left_out(load_with: Make) -> None:
    module = ModuleType("unmarked")
    module.jacketcheck_bars = list  # type: ignore[attr-defined] # that is what is tested
    assert problems(load_with(module)) == [
        "registration: jacketcheck_bars is not marked with jacketcheck.hookspecs.hookimpl"
    ]


class Trap:
    """An object that fails when it is looked at."""

    def __getattr__(self, name: str) -> object:
        raise SystemExit(name)


@pytest.mark.parametrize(
    "module",
    [
        pytest.param(lambda: None, id="none"),
        pytest.param(lambda: 3, id="number"),
        pytest.param(lambda: "text", id="text"),
        pytest.param(Trap, id="trap"),
        pytest.param(lambda: object, id="class"),
    ],
)
def test_objects_that_are_no_plug_ins_do_no_harm(
    load_with: Make, module: Callable[[], object]
) -> None:
    host = load_with(module())
    assert len(host.plugins) == 2
    assert host.limit_states("us")


def test_a_record_of_a_class_of_its_own(load_with: Make, plugin: Make) -> None:
    class Strange(Provisions):
        def __getattribute__(self, name: str) -> Any:
            if name == "id":
                raise RuntimeError("not today")
            return super().__getattribute__(name)

    strange = Strange.__new__(Strange)
    (problem,) = problems(load_with(plugin(provisions=lambda: [strange])))
    # it would fail when our own code reads it
    assert problem == "jacketcheck_provisions: brought a Strange, not a Provisions"


@pytest.mark.parametrize("name", ["north", "jacketcheck-north", "Jacketcheck_North"])
def test_a_plug_in_can_be_switched_off(load_with: Make, plugin: Make, name: str) -> None:
    host = load_with(plugin(bars=boom), without=(name,))
    assert [one.name for one in host.plugins] == [BUILT_IN]
    assert host.problems == ()
    assert host.switched_off == (name,)


def test_what_is_not_there_cannot_be_switched_off(load_with: Make, plugin: Make) -> None:
    with pytest.raises(InputError) as caught:
        load_with(plugin(), without=("nord", "built-in", "\x1b[2J"))
    assert [str(one) for one in caught.value.problems] == [
        'without = "nord": is not an installed plug-in; installed are north',
        'without = "built-in": cannot be switched off',
        'without = "\\u001b[2J": is not an installed plug-in; installed are north',
    ]


def test_installed_distributions_are_found_by_entry_point(monkeypatch: pytest.MonkeyPatch) -> None:
    found = [
        EntryPoint("sound", "types:SimpleNamespace", hookspecs.ENTRY_POINT_GROUP),
        EntryPoint("missing", "no_such_module_at_all", hookspecs.ENTRY_POINT_GROUP),
    ]
    asked: list[str] = []

    def entry_points(*, group: str) -> list[EntryPoint]:
        asked.append(group)
        return found

    monkeypatch.setattr("jacketcheck.host.loading.entry_points", entry_points)
    host = load_host()
    assert asked == ["jacketcheck.plugins"]
    assert [plugin.name for plugin in host.plugins] == [BUILT_IN, "missing", "sound"]
    (problem,) = host.problems
    assert problem.plugin == PluginInfo("missing", "unknown", "unknown")
    assert problem.what == "import"
    assert problem.message.startswith("raised ModuleNotFoundError: No module named 'no_such")


def inheriting(name: str, parent: str | None, **omits: str) -> Provisions:
    return Provisions(name, f"Provisions {name}", parent, omits)


def test_provisions_inherit_replace_and_omit(
    load_with: Make, plugin: Make, limit_state: Make
) -> None:
    host = load_with(
        plugin(
            provisions=lambda: [
                inheriting("child", "parent", second="the child's code has no such rule"),
                inheriting("parent", None, third="not in the parent's code"),
                inheriting("grandchild", "child"),
            ],
            limit_states=lambda: [
                *(limit_state(name=name, provisions="parent") for name in ("first", "second")),
                limit_state(name="first", provisions="child"),
                limit_state(name="second", provisions="grandchild"),
                limit_state(name="third", provisions="grandchild"),
            ],
        )
    )
    assert problems(host) == []
    assert [one.id for one in host.lineage("grandchild")] == ["parent", "child", "grandchild"]
    chosen = host.limit_states("grandchild")
    assert [(one.limit_state.id, one.limit_state.provisions) for one in chosen] == [
        ("first", "child"),
        ("second", "grandchild"),
        ("third", "grandchild"),
    ]
    assert host.omitted("child") == {
        "second": "the child's code has no such rule",
        "third": "not in the parent's code",
    }
    # brought again by the grandchild
    assert host.omitted("grandchild") == {}


def test_provisions_that_are_not_known(load_with: Make, plugin: Make) -> None:
    host = load_with(plugin(provisions=lambda: [inheriting("orphan", "nobody")], bars=boom))
    with pytest.raises(InputError) as caught:
        host.lineage("uk")
    message = str(caught.value.problems[0])
    assert message.startswith('provisions = "uk": is not known; known are orphan, us; plug-ins wit')
    assert "north (jacketcheck-north 1.2) raised ValueError: no good" in message
    with pytest.raises(InputError, match="inherits from 'nobody', which is not known; known are"):
        host.lineage("orphan")


def test_provisions_that_inherit_from_themselves(load_with: Make, plugin: Make) -> None:
    host = load_with(
        plugin(
            provisions=lambda: [
                inheriting("one", "two"),
                inheriting("two", "one"),
                inheriting("self", "self"),
            ]
        )
    )
    with pytest.raises(InputError, match="inherits from itself, by way of 'one'"):
        host.limit_states("one")
    with pytest.raises(InputError, match="inherits from itself, by way of 'self'"):
        host.limit_states("self")


CONDITIONS: Any = "conditions"
"""What surrounds the bar: no law of these tests looks at it."""


def bond_model(law: Callable[..., Any]) -> BondModel:
    known = built_in_catalog().bond_model("fib Model Code 2010")
    return replace(known, name="N bond", aliases=(), law=law)


@pytest.mark.parametrize(
    ("law", "message"),
    [
        (lambda _: boom(), "raised ValueError: no good (test_loading.py, line "),
        (lambda _: None, "returned a NoneType, not a BondLaw"),
        (lambda _: 0.5, "returned a float, not a BondLaw"),
        (lambda: None, "raised TypeError: "),
    ],
)
def test_a_bond_model_that_fails_names_itself(
    load_with: Make, plugin: Make, law: Callable[..., Any], message: str
) -> None:
    host = load_with(plugin(bond_models=lambda: [bond_model(law)]))
    with pytest.raises(NotEvaluatedError) as caught:
        host.catalog.bond_model("N bond").law(CONDITIONS)
    who = "plug-in north (jacketcheck-north 1.2), bond model N bond: "
    assert str(caught.value).startswith(who + message)


def test_a_bond_model_that_hangs_names_itself(load_with: Make, plugin: Make) -> None:
    model = bond_model(lambda _: threading.Event().wait(20.0))
    host = load_with(plugin(bond_models=lambda: [model]), seconds=0.2)
    with pytest.raises(NotEvaluatedError, match=r"N bond: did not return within 0\.2 s"):
        host.catalog.bond_model("N bond").law(CONDITIONS)


def test_hookimpl_is_the_mark_that_the_guide_names() -> None:
    @hookimpl
    def jacketcheck_bars() -> list[Any]:
        return []

    assert hasattr(jacketcheck_bars, "jacketcheck_impl")
