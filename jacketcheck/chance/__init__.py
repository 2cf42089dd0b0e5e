"""Probability that limit states are exceeded, from the scatter of what they rest on."""

from jacketcheck.chance.estimate import chance_of_exceedance
from jacketcheck.chance.result import ChanceResult, Settings

__all__ = ["ChanceResult", "Settings", "chance_of_exceedance"]
