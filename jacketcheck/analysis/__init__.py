"""Analyses of a jacket that several limit states share: formulas put together, each done once."""
