"""Check files that are broken in every way we could think of, by the hundred thousand.

Run as ``OMP_NUM_THREADS=1 python tests/fuzz/run.py --cases 100000 --seed 1 --jobs 2``.  Each case
is a repair file, drawn at random or written by hand, with none to four mutations.  It ends with 1
if any case brought a defect to light; the files at fault are then kept in the folder named by
``--keep``, and ``--only NUMBER`` runs one of them again.
"""

# ruff: noqa: T201 - a command prints
from __future__ import annotations

import argparse
import multiprocessing
import resource
import signal
import sys
import tempfile
import time
import traceback
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

from jacketcheck.host import Host, load_host  # noqa: E402 - the path comes first
from tests.fuzz.cases import Case, case_of  # noqa: E402 - found on the path set above
from tests.fuzz.judge import Defect, judged  # noqa: E402 - found on the path set above

SECONDS = 5.0
"""Processor time that a case may take [s]."""
WALL_SECONDS = 60
"""Time after which a case is stopped [s]."""
MEGABYTES = 200.0
"""Memory that a case may add to the most that any before it took [MB]."""
MEMORY = 4 * 2**30
"""Address space of a process [bytes]."""
BATCH = 50


@dataclass(frozen=True)
class Found:
    """What came of one case."""

    number: int
    verdict: str
    how: tuple[str, ...]
    seconds: float
    defect: str = ""


class Overtime(BaseException):
    """A case that does not end."""


@lru_cache(maxsize=1)
def host() -> Host:
    """The host of this process."""
    return load_host(installed=False)


def tried(seed: int, number: int, folder: Path) -> Found:
    """Run one case and judge it."""
    case = case_of(seed, number, host().catalog)
    path = folder / "repair.toml"
    path.write_bytes(case.content)
    begin, before = time.process_time(), _most_memory()
    verdict, defect = _judged(case, path)
    seconds, more = time.process_time() - begin, _most_memory() - before
    if not defect and seconds > SECONDS:
        defect = f"takes {seconds:.1f} s"
    if not defect and more > MEGABYTES:
        defect = f"takes {more:.0f} MB"
    return Found(number, verdict, case.how, seconds, defect)


def _judged(case: Case, path: Path) -> tuple[str, str]:
    signal.alarm(WALL_SECONDS)
    try:
        rendered = case.number % 10 == 0
        verdict = judged(path, host=host(), reason=case.reason, rendered=rendered)
        if case.good and verdict != "checked":
            return verdict, "refuses a repair that breaks no rule"
    except Defect as defect:
        return "defect", str(defect)
    except Overtime:
        return "defect", f"does not end within {WALL_SECONDS} s"
    except BaseException:  # noqa: BLE001 - whatever escapes is what we look for
        return "defect", traceback.format_exc(limit=-6)
    finally:
        signal.alarm(0)
    return verdict, ""


def _most_memory() -> float:
    """The most memory this process has held so far [MB]."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0


def _prepare() -> None:
    def stop(*_: object) -> None:
        raise Overtime

    signal.signal(signal.SIGALRM, stop)
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))


def _batch(asked: tuple[int, int, int]) -> list[Found]:
    seed, first, last = asked
    with tempfile.TemporaryDirectory() as folder:
        return [tried(seed, number, Path(folder)) for number in range(first, last)]


def _all(options: argparse.Namespace) -> Iterator[Found]:
    end = options.first + options.cases
    batches = [
        (options.seed, first, min(first + BATCH, end)) for first in range(options.first, end, BATCH)
    ]
    with multiprocessing.Pool(options.jobs, _prepare) as pool:
        for found in pool.imap_unordered(_batch, batches):
            yield from found


def _tell(found: list[Found], elapsed: float) -> None:
    verdicts = Counter(one.verdict for one in found)
    slowest = max(one.seconds for one in found)
    print(f"{len(found)} cases in {elapsed:.0f} s, at most {slowest:.2f} s of processor for one")
    for verdict, count in verdicts.most_common():
        print(f"  {verdict}: {count}")
    print("by mutation (a case may have several): cases, of these refused")
    by_name = Counter(name for one in found for name in one.how)
    refused = Counter(name for one in found if "refused" in one.verdict for name in one.how)
    for name, count in sorted(by_name.items()):
        print(f"  {name}: {count}, {refused[name]}")


def _keep(one: Found, options: argparse.Namespace) -> None:
    options.keep.mkdir(parents=True, exist_ok=True)
    case = case_of(options.seed, one.number, host().catalog)
    path = options.keep / f"{options.seed}-{one.number}.toml"
    path.write_bytes(case.content)
    print(f"case {one.number} ({', '.join(one.how)}): {one.defect}\n  kept as {path}", flush=True)


def _options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--cases", type=int, default=1000, help="how many (default: 1000)")
    parser.add_argument("--first", type=int, default=0, help="number of the first (default: 0)")
    parser.add_argument("--seed", type=int, default=1, help="seed (default: 1)")
    parser.add_argument("--jobs", type=int, default=2, help="processes (default: 2)")
    parser.add_argument("--only", type=int, help="run this case alone and show its file")
    parser.add_argument("--keep", type=Path, default=Path("fuzz-defects"), help="folder of defects")
    return parser.parse_args()


def _one(seed: int, number: int) -> int:
    """Run a case again and show its file."""
    _prepare()
    print(case_of(seed, number, host().catalog).content.decode("utf-8", "replace"))
    with tempfile.TemporaryDirectory() as folder:
        found = tried(seed, number, Path(folder))
    print(f"# {', '.join(found.how)}: {found.defect or found.verdict}")
    return int(bool(found.defect))


def main() -> int:
    """Run the cases; 1 if any brought a defect to light."""
    options = _options()
    if options.only is not None:
        return _one(options.seed, options.only)
    begin, results = time.monotonic(), []
    try:
        for found in _all(options):
            results.append(found)
            if found.defect:
                _keep(found, options)
            if len(results) % 5000 == 0:
                print(f"{len(results)} cases, {time.monotonic() - begin:.0f} s", flush=True)
    except KeyboardInterrupt:
        print("interrupted")
    _tell(results, time.monotonic() - begin)
    defects = sum(bool(one.defect) for one in results)
    print(f"{defects} defects")
    return int(bool(defects))


if __name__ == "__main__":
    sys.exit(main())
