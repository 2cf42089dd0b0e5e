"""A commented, valid repair file to start from, written out of the input models themselves."""

from jacketcheck.starter.write import starter_text

__all__ = ["starter_text"]
