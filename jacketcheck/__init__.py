"""Limit-state checks for steel jackets that relocate the plastic hinge of a damaged column."""
