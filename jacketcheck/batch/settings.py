"""What a batch is run with, and the key under which its results are kept."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable
from dataclasses import asdict, dataclass
from typing import Literal, TypeAlias

from jacketcheck.errors import InputError, InputProblem
from jacketcheck.host.host import Host
from jacketcheck.host.isolation import DEFAULT_TIME_LIMIT

__all__ = ["DEFAULT_FILE_SECONDS", "BatchSettings", "Maker", "Variants", "makers", "settings_for"]

Variants: TypeAlias = Literal["base", "all"]
Maker: TypeAlias = tuple[str, str, str]
"""Name, distribution and version of a plug-in."""

DEFAULT_FILE_SECONDS = 600.0
"""Time that one file may take; a check takes well below a second."""


@dataclass(frozen=True)
class BatchSettings:
    """Everything besides the files that results depend on; travels to every worker.

    Attributes
    ----------
    provisions
        Sets of provisions, in the order in which they are shown.
    variants
        Whether only the files themselves are checked or every variant in them.
    made_by
        Plug-ins that must be loaded wherever a file is checked, the built-in one first.
    without
        Plug-ins that are switched off.
    plugin_seconds
        Time that one call of a plug-in may take [s].
    file_seconds
        Time that one file may take [s]. What outlasts it is a failure and is tried again by the
        next run, so that results do not depend on it.
    """

    provisions: tuple[str, ...]
    variants: Variants
    made_by: tuple[Maker, ...]
    without: tuple[str, ...] = ()
    plugin_seconds: float = DEFAULT_TIME_LIMIT
    file_seconds: float = DEFAULT_FILE_SECONDS

    @property
    def text(self) -> str:
        """What results depend on, as JSON."""
        fields = asdict(self)
        del fields["file_seconds"]
        return json.dumps(fields, sort_keys=True, ensure_ascii=False)

    @property
    def digest(self) -> str:
        """SHA-256 of `text`: results with another digest are not taken over."""
        return hashlib.sha256(self.text.encode()).hexdigest()


def makers(host: Host) -> tuple[Maker, ...]:
    """Plug-ins of a host, the built-in one with the version of the package itself."""
    return tuple((one.name, one.distribution, one.version) for one in host.plugins)


def settings_for(
    host: Host,
    *,
    provisions: Iterable[str],
    variants: Variants,
    file_seconds: float = DEFAULT_FILE_SECONDS,
) -> BatchSettings:
    """Settings of a batch that uses the plug-ins of a host.

    Raises
    ------
    InputError
        If a set of provisions is not known, or none is named.
    """
    asked = tuple(dict.fromkeys((provisions,) if isinstance(provisions, str) else provisions))
    if not asked:
        raise InputError([InputProblem("provisions", "", "must name one at least")])
    for name in asked:
        host.lineage(name)
    return BatchSettings(
        provisions=asked,
        variants=variants,
        made_by=makers(host),
        without=tuple(sorted(host.switched_off)),
        plugin_seconds=host.time_limit,
        file_seconds=file_seconds,
    )
