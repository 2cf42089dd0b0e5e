"""Runs limit states on a jacket and keeps every answer to its contract."""

from jacketcheck.engine.evaluate import evaluate

__all__ = ["evaluate"]
