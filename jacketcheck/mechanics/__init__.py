"""Pure formulas on N, mm and MPa that broadcast over numpy arrays.

Nothing in here knows about units, files, catalogues or plug-ins.
"""
