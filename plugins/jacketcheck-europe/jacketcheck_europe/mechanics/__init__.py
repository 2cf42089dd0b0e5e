"""Formulas of the Eurocodes: pure functions on N, mm and MPa that broadcast over numpy arrays.

Design resistances are returned. Partial factors are arguments without a default: what a national
annex may set is never hidden in a formula.
"""
