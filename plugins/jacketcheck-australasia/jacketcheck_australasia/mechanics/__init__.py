"""Pure formulas of the Australian and New Zealand codes on N, mm and MPa."""
