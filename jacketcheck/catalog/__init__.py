"""Catalogues of bars, bolts, steels and faying classes, with the source of every figure."""
