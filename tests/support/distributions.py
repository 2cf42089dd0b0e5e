"""Distributions as an installer leaves them: a module, and a dist-info folder with entry points."""

from __future__ import annotations

import importlib
from dataclasses import dataclass
from pathlib import Path
from textwrap import dedent

__all__ = ["Site"]


@dataclass(frozen=True)
class Site:
    """A folder on the import path in which distributions are installed without an installer.

    Attributes
    ----------
    path
        The folder.
    """

    path: Path

    def install(
        self, distribution: str, code: str, *, version: str = "1.2", plug_in: str | None = None
    ) -> str:
        """Install a distribution with one module; return the module's name.

        Parameters
        ----------
        distribution
            Name as in an index, e.g. ``jacketcheck-north``.
        code
            Text of the module.
        version
            Version of the distribution.
        plug_in
            Name of its entry point; by default the last part of the distribution's name.
        """
        folded = distribution.replace("-", "_")
        name = distribution.rpartition("-")[2] if plug_in is None else plug_in
        module = f"{folded}_{self.path.parent.name.replace('-', '_')}"
        (self.path / f"{module}.py").write_text(dedent(code), "utf-8")
        info = self.path / f"{folded}-{version}.dist-info"
        info.mkdir(exist_ok=True)
        (info / "METADATA").write_text(
            f"Metadata-Version: 2.1\nName: {distribution}\nVersion: {version}\n", "utf-8"
        )
        points = info / "entry_points.txt"
        known = points.read_text("utf-8") if points.exists() else "[jacketcheck.plugins]\n"
        points.write_text(f"{known}{name} = {module}\n", "utf-8")
        importlib.invalidate_caches()  # of what a finder saw in the folder before
        return module
