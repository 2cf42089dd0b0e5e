"""A figure with what it shows in words."""

from __future__ import annotations

from dataclasses import dataclass, field

from matplotlib.figure import Figure

__all__ = ["Drawing"]


@dataclass(frozen=True, eq=False)
class Drawing:
    """A figure and its texts.

    Attributes
    ----------
    name
        Short name, fit for a file, e.g. ``seam-detail``.
    title
        What it shows, in a few words.
    alt
        The content in sentences with the numbers, for readers who do not see the figure.
    figure
        The figure; it has no title of its own.
    remark
        What a reader must know to read it right; may be empty.
    """

    name: str
    title: str
    alt: str
    figure: Figure = field(repr=False)
    remark: str = ""
