"""What the models of the analyses leave open, as factors on what they predict."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from jacketcheck.mechanics._arrays import Real

__all__ = ["AS_PREDICTED", "ModelFactors"]


@dataclass(frozen=True, slots=True)
class ModelFactors:
    """Factors on results of the analyses; 1 for a design, other values for a sample of a study.

    Attributes
    ----------
    axial_strain
        On the axial strain of the core at which its dilation is checked [-].
    section_strength
        On the moment that a section through the repair carries [-].
    bond_stress
        On the local bond stress of fractured bars [-].
    crack_friction
        On the friction on the splitting crack [-].
    interface_resistance
        On the factored shear that the column's face passes to the grout, where sections count
        with it [-].
    """

    axial_strain: Real = 1.0
    section_strength: Real = 1.0
    bond_stress: Real = 1.0
    crack_friction: Real = 1.0
    interface_resistance: Real = 1.0


AS_PREDICTED: Final = ModelFactors()
"""The factors of a design."""
