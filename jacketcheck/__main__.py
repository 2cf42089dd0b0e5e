"""``python -m jacketcheck``."""

from jacketcheck.cli.entry import run

if __name__ == "__main__":
    raise SystemExit(run())
