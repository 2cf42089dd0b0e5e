"""The command line: reads options, calls the package, prints what it returns."""

from jacketcheck.cli.main import main

__all__ = ["main"]
