"""Conversions needed inside equations that their source prints in US customary units."""

from __future__ import annotations

__all__ = ["INCH", "KIP", "KSI", "PSI"]

INCH = 25.4
"""One inch [mm], exact."""
KIP = 4448.2216152605
"""One kip [N], exact."""
KSI = KIP / INCH**2
"""One ksi [MPa]."""
PSI = KSI / 1000.0
"""One psi [MPa]."""
