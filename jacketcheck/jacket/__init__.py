"""The built jacket: what the user wrote, with the catalogue's figures and derived geometry.

A jacket is one design, or many at once: every field typed `Real` may be an array over designs.
"""

from jacketcheck.jacket.build import build_jacket
from jacketcheck.jacket.jacket import Jacket

__all__ = ["Jacket", "build_jacket"]
