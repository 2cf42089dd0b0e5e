"""Change the formulas in small ways and see whether their tests notice.

Run as ``python tests/mutation/run.py --sample 600 --seed 1 --jobs 2``, or with ``--modules slip
hoop`` for every mutant of some modules of ``jacketcheck/mechanics``.  Each mutant is tested with
the focused tests of its module, which stop at the first failure: the files below
``tests/mechanics`` that import it, or, of a module with a leading underscore, those that import
what it is used by.  Nothing in the repository is written to: the run works on a copy, and the
mutant is compiled in the memory of a process of its own.
"""

# ruff: noqa: T201 - a command prints
from __future__ import annotations

import argparse
import ast
import os
import random
import resource
import shutil
import signal
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterable, Iterator
from importlib.abc import Loader, MetaPathFinder
from importlib.machinery import ModuleSpec
from importlib.util import spec_from_file_location
from pathlib import Path
from types import ModuleType
from typing import Any, Final

ROOT = Path(__file__).parents[2]
PACKAGE = "jacketcheck.mechanics"
PROCESSOR_SECONDS = 120
"""Processor time that the tests of a mutant may take [s]; all together take less without one."""
SECONDS = 900.0
"""Time after which a mutant's process is ended [s]."""
MEMORY = 4 * 2**30
"""Address space of a mutant's process [bytes]."""
KILLED, SURVIVED, TIMED_OUT, NO_TESTS = "killed", "survived", "timed out", "no tests"
_ENDS: Final = {0: SURVIVED, 5: NO_TESTS, -signal.SIGXCPU: TIMED_OUT}
_SLOW: Final = frozenset({"test_moment_curvature_libraries.py"})
"""Tests that take longer than all others of their modules together."""

os.environ.setdefault("OMP_NUM_THREADS", "1")
sys.path.insert(0, str(ROOT))

from tests.mutation.mutants import Mutant, code_of, mutants_of  # noqa: E402 - the path comes first


class _MutantLoader(Loader):
    """Loads one module with its change."""

    def __init__(self, path: Path, number: int) -> None:
        self._path = path
        self._number = number

    def create_module(self, spec: ModuleSpec) -> None:
        """Leave it to the import system."""

    def exec_module(self, module: ModuleType) -> None:
        """Run the changed code."""
        code = code_of(self._path.read_text("utf-8"), self._number, path=str(self._path))
        exec(code, module.__dict__)  # noqa: S102 - code of this repository


class _MutantFinder(MetaPathFinder):
    """Finds the module that is changed before anybody else does."""

    def __init__(self, name: str, path: Path, number: int) -> None:
        self._name = name
        self._loader = _MutantLoader(path, number)
        self._path = path

    def find_spec(self, fullname: str, *_: Any) -> ModuleSpec | None:
        """Specification of the module that is changed; None of others."""
        if fullname != self._name:
            return None
        return spec_from_file_location(fullname, self._path, loader=self._loader)


class Project:
    """The copy that is worked on, and which tests belong to which module."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        for name in ("jacketcheck", "tests", "reference_cases"):
            shutil.copytree(ROOT / name, folder / name)
        shutil.copy(ROOT / "pyproject.toml", folder)
        paths = sorted((folder / "jacketcheck" / "mechanics").glob("*.py"))
        self.modules = {path.stem: path for path in paths if path.stem != "__init__"}
        self._imports = {name: set(_imported(path)) for name, path in self.modules.items()}
        tests = sorted((folder / "tests" / "mechanics").rglob("test_*.py"))
        self._tests = {
            path: set(_imported(path))
            for path in tests
            if "frozen" not in path.parts and path.name not in _SLOW
        }

    def tests_of(self, module: str) -> list[Path]:
        """Test files that import a module, or what a private one is used by; its own first."""
        wanted = {module}
        if module.startswith("_"):
            # a test that imports it may do so for its types alone
            wanted |= {name for name, names in self._imports.items() if module in names}
        while not (found := [path for path, names in self._tests.items() if names & wanted]):
            wanted |= {name for name, names in self._imports.items() if names & wanted}
        own = f"test_{module}.py"
        return sorted(found, key=lambda path: (path.name != own, path.stat().st_size))

    def all_tests(self) -> list[Path]:
        """Every test file that a mutant may be tested with."""
        return list(self._tests)

    def mutants(self, modules: Iterable[str]) -> list[Mutant]:
        """Every mutant of some modules."""
        return [
            mutant
            for name in modules
            for mutant in mutants_of(name, self.modules[name].read_text("utf-8"))
        ]


def _imported(path: Path) -> Iterator[str]:
    """Modules of the package that a file imports, without the package's name."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module == PACKAGE:
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and (node.module or "").startswith(f"{PACKAGE}."):
            yield str(node.module).rpartition(".")[2]


def _test(project: Project, mutant: Mutant | None) -> int:
    """Run tests in this process, which is a child; exit code of pytest."""
    import pytest
    from hypothesis import Phase, settings

    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    resource.setrlimit(resource.RLIMIT_CPU, (PROCESSOR_SECONDS, PROCESSOR_SECONDS))
    os.chdir(project.folder)
    sys.path.insert(0, str(project.folder))
    settings.register_profile(
        "mutation", phases=[Phase.explicit, Phase.generate], derandomize=True, deadline=None,
        database=None, max_examples=50,
    )  # fmt: skip
    settings.load_profile("mutation")
    if mutant is not None:
        name, path = f"{PACKAGE}.{mutant.module}", project.modules[mutant.module]
        sys.meta_path.insert(0, _MutantFinder(name, path, mutant.number))
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, 1)
    os.dup2(nowhere, 2)
    tests = project.all_tests() if mutant is None else project.tests_of(mutant.module)
    paths = [str(path) for path in tests]
    return int(pytest.main(["-x", "-q", "--assert=plain", "-p", "no:cacheprovider", *paths]))


def _start(project: Project, mutant: Mutant | None) -> int:
    """Begin to test a mutant; number of the process."""
    process = os.fork()
    if process == 0:
        code = 70
        try:
            code = _test(project, mutant)
        finally:
            os._exit(code)
    return process


def _ends(project: Project, asked: Iterable[Mutant], jobs: int) -> Iterator[tuple[Mutant, str]]:
    """What becomes of each mutant."""
    running: dict[int, tuple[Mutant, float]] = {}
    for mutant in asked:
        while len(running) >= jobs:
            yield from _ended(running)
        running[_start(project, mutant)] = (mutant, time.monotonic() + SECONDS)
    while running:
        yield from _ended(running)


def _ended(running: dict[int, tuple[Mutant, float]]) -> Iterator[tuple[Mutant, str]]:
    time.sleep(0.02)
    for process, (mutant, end) in list(running.items()):
        done, status = os.waitpid(process, os.WNOHANG)
        if not done and time.monotonic() > end:
            os.kill(process, signal.SIGKILL)
            done, status = os.waitpid(process, 0)
            status = signal.SIGXCPU
        if done:
            del running[process]
            yield mutant, _ENDS.get(os.waitstatus_to_exitcode(status), KILLED)


def _tell(everything: list[Mutant], ends: Counter[tuple[str, str]], modules: list[str]) -> None:
    """A table of all modules, as Markdown."""
    print("\n| module | mutants | tried | killed | by time | surviving |")
    print("|---|--:|--:|--:|--:|--:|")
    made = Counter(mutant.module for mutant in everything)
    total = [0] * 5
    for module in modules:
        killed, timed, survived = (ends[module, end] for end in (KILLED, TIMED_OUT, SURVIVED))
        row = [made[module], killed + timed + survived, killed + timed, timed, survived]
        total = [one + other for one, other in zip(total, row, strict=True)]
        print(f"| {module} | {' | '.join(map(str, row))} |")
    print(f"| all | {' | '.join(map(str, total))} |")


def _options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--modules", nargs="+", help="modules of mechanics (default: all)")
    parser.add_argument("--sample", type=int, help="so many mutants, at random (default: all)")
    parser.add_argument("--seed", type=int, default=1, help="seed of the sample (default: 1)")
    parser.add_argument("--jobs", type=int, default=2, help="processes (default: 2)")
    parser.add_argument("--only", nargs="+", metavar="MODULE:NUMBER", help="these mutants alone")
    return parser.parse_args()


def _chosen(everything: list[Mutant], options: argparse.Namespace) -> list[Mutant]:
    if options.only:
        return [one for one in everything if f"{one.module}:{one.number}" in options.only]
    if options.sample is None or options.sample >= len(everything):
        return everything
    return random.Random(options.seed).sample(everything, options.sample)  # noqa: S311 - repeatable


def main() -> int:
    """Test mutants; print those that survive, then the table."""
    options = _options()
    import hypothesis  # noqa: F401 - before the children are forked
    import pytest  # noqa: F401 - same
    import scipy.integrate
    import scipy.optimize  # noqa: F401 - same

    with tempfile.TemporaryDirectory() as folder:
        project = Project(Path(folder) / "copy")
        modules = sorted(options.modules or project.modules)
        everything = project.mutants(modules)
        chosen = _chosen(everything, options)
        print(f"{len(everything)} mutants of {len(modules)} modules, {len(chosen)} asked for")
        _, status = os.waitpid(_start(project, None), 0)
        if status:
            sys.exit("the tests do not pass without a change")
        ends: Counter[tuple[str, str]] = Counter()
        try:
            for mutant, end in _ends(project, chosen, options.jobs):
                ends[mutant.module, end] += 1
                if end in {SURVIVED, NO_TESTS}:
                    where = f"{mutant.module}:{mutant.number} line {mutant.line}"
                    print(f"{ends.total()}. {end}: {where}: {mutant.change}", flush=True)
        except KeyboardInterrupt:
            print(f"interrupted after {ends.total()} mutants")
        _tell(everything, ends, modules)
    return 0


if __name__ == "__main__":
    sys.exit(main())
