"""Editions that the built-in provisions follow; they stand in the clause of every row."""

from __future__ import annotations

from typing import Final

__all__ = ["AASHTO", "ACI", "AISC", "FIB", "GUIDE_SPEC", "PRIESTLEY", "RCSC"]

AISC: Final = "AISC 360-22"
AASHTO: Final = "AASHTO LRFD 9th ed. (2020)"
GUIDE_SPEC: Final = "AASHTO Guide Spec Seismic 2nd ed. (2011)"
ACI: Final = "ACI 318-19"
RCSC: Final = "RCSC 2020"
FIB: Final = "fib Model Code 2010"
PRIESTLEY: Final = "Priestley, Seible and Calvi 1996"
