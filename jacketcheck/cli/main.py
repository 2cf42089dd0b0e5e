"""Entry point: one parser, one module for each command, one place where errors become exit codes.

Exit codes: 0 all ratios within 1; 1 something exceeds 1; 2 input or command cannot be used; 3 a
check could not be evaluated; 130 interrupted; 143 terminated.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from importlib import import_module
from typing import NoReturn, Protocol, cast

from jacketcheck.cli._streams import outlets
from jacketcheck.cli._termination import Terminated, orderly_termination
from jacketcheck.errors import InputError, JacketcheckError, MissingExtraError

__all__ = ["main"]

_COMMANDS = {
    "check": "table of demand/capacity ratios of a repair",
    "batch": "every repair file of an inventory: on all cores, resumable",
    "explain": "every step of one check, with numbers",
    "size": "lightest and quickest jackets that work, within bounds",
    "sweep": "ratios of many designs that differ in a few fields",
    "chance": "probability that limit states, and the repair as a whole, are exceeded",
    "bolts": "bolt schedule: what a shop orders, installs and inspects",
    "confirm": "what was delivered and measured against what was specified",
    "shop": "flat patterns as DXF, and quantities of steel, bolts and grout",
    "report": "the whole calculation as HTML or Markdown, to print and to sign",
    "draw": "figures as SVG or PNG",
    "new": "write a commented starter file",
    "plugins": "list plug-ins, provisions and limit states",
    "catalog": "list what an input may name",
    "schema": "print the JSON schema of the input or of the output",
}
_INPUT, _NOT_EVALUATED, _INTERRUPTED, _TERMINATED = 2, 3, 130, 143


class Command(Protocol):
    """What a command's module offers."""

    @staticmethod
    def add_arguments(parser: argparse.ArgumentParser) -> None:
        """Declare the command's options."""

    @staticmethod
    def run(options: argparse.Namespace) -> int:
        """Do the work and return the exit code."""


class _Parser(argparse.ArgumentParser):
    """A parser that suggests ``--help`` in its one-line errors."""

    def error(self, message: str) -> NoReturn:
        self.exit(_INPUT, f"{self.prog}: {message} (see {self.prog} --help)\n")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line and return its exit code."""
    with outlets() as (output, _):
        code = _verdict(list(sys.argv[1:] if arguments is None else arguments))
        output.flush()
        if output.error is not None and not output.reader_left:
            print(f"jacketcheck: cannot write the output: {output.error.strerror}", file=sys.stderr)
            # what was found and not told is no pass
            return max(code, _INPUT)
    return code


def _verdict(given: list[str]) -> int:
    """Exit code of what is asked for; errors are told in one line."""
    try:
        with orderly_termination():
            return _run(given)
    except InputError as error:
        print(error, file=sys.stderr)
        return _INPUT
    except JacketcheckError as error:
        print(f"jacketcheck: {error}", file=sys.stderr)
        return _INPUT if isinstance(error, MissingExtraError) else _NOT_EVALUATED
    except Terminated:
        print("jacketcheck: terminated", file=sys.stderr)
        return _TERMINATED
    except KeyboardInterrupt:
        print("jacketcheck: interrupted", file=sys.stderr)
        return _INTERRUPTED


def _run(given: list[str]) -> int:
    """Find the command, and do what it is asked."""
    parser, commands = _parser()
    name = given[0] if given and given[0] in _COMMANDS else None
    if name is None:
        parser.parse_args(given)
        parser.print_help()
        return _INPUT
    # only the command that was asked for is imported: the others cost start-up time
    command = cast("Command", import_module(f"jacketcheck.cli.{name}"))
    command.add_arguments(commands[name])
    return command.run(parser.parse_args(given))


def _parser() -> tuple[argparse.ArgumentParser, dict[str, argparse.ArgumentParser]]:
    parser = _Parser(
        prog="jacketcheck",
        description="Checks bolted, grouted steel jackets that relocate the plastic hinge of a "
        "damaged bridge column.",
        epilog="Exit codes: 0 all ratios within 1; 1 something exceeds 1; 2 input or command "
        "cannot be used; 3 a check could not be evaluated.",
    )
    parser.add_argument("--version", action=_Version, nargs=0, help="print the version and stop")
    group = parser.add_subparsers(metavar="COMMAND", parser_class=_Parser, dest="command")
    commands: dict[str, argparse.ArgumentParser] = {
        name: group.add_parser(name, help=text, description=f"{text[0].upper()}{text[1:]}.")
        for name, text in _COMMANDS.items()
    }
    return parser, commands


class _Version(argparse.Action):
    """Prints the version; looked up only when asked for."""

    def __call__(self, parser: argparse.ArgumentParser, *_: object) -> NoReturn:
        from importlib.metadata import version  # noqa: PLC0415 - not needed otherwise

        print(f"jacketcheck {version('jacketcheck')}")
        parser.exit(0)
