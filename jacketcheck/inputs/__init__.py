"""What the user writes: frozen models, read from one TOML file per repair."""

from jacketcheck.inputs.load import InputFile, read_input, read_text
from jacketcheck.inputs.repair_file import RepairInput

__all__ = ["InputFile", "RepairInput", "read_input", "read_text"]
