"""What was delivered and measured, compared with what was specified, and checked again."""

from jacketcheck.as_built.confirm import confirm
from jacketcheck.as_built.load import AsBuiltFile, read_as_built, read_as_built_text
from jacketcheck.as_built.records import Confirmation, ConfirmedLine, LineVerdict

__all__ = [
    "AsBuiltFile",
    "Confirmation",
    "ConfirmedLine",
    "LineVerdict",
    "confirm",
    "read_as_built",
    "read_as_built_text",
]
