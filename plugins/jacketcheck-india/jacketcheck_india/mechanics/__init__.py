"""Pure formulas of the Indian codes on N, mm and MPa."""
