"""The program's face: commands in groups by what the author is doing."""

from __future__ import annotations

import re
from typing import Any

import typer
from typer.core import TyperCommand, TyperGroup

MAKE = "Make an episode"
ANSWER = "Answer viewers"
KEEP = "Keep the library"
UNDERSTAND = "See what the program understands"
_HELP = """From setups and the reasons behind them to everything a tuning episode needs.

'producer new library PATH' starts a library, 'producer COMMAND --help' tells more about a command.
"""
_KINDS = re.compile(r"<(\w+)>")
_GROUPS = (MAKE, ANSWER, KEEP, UNDERSTAND)


class Plain(TyperCommand):
    """Help of one command in the words of the shell's manuals: `EPISODE`, no kinds of a programming language."""

    def collect_usage_pieces(self, ctx: Any) -> list[str]:
        """`EPISODE` where one is needed, `[EPISODE...]` where any number may be left out."""
        return ["[OPTIONS]", *(_usage(one) for one in self.get_params(ctx) if one.param_type_name == "argument")]

    def format_options(self, ctx: Any, formatter: Any) -> None:
        """Arguments first, each by its name alone."""
        rows: dict[str, list[tuple[str, str]]] = {"Arguments": [], "Options": []}
        for one in self.get_params(ctx):
            record = one.get_help_record(ctx)
            if record is not None and one.param_type_name == "argument":
                rows["Arguments"].append((one.metavar or record[0], str(getattr(one, "help", None) or "")))
            elif record is not None:
                rows["Options"].append((_KINDS.sub(lambda kind: kind.group(1).upper(), record[0]), record[1]))
        for title, block in rows.items():
            if block:
                with formatter.section(title):
                    formatter.write_dl(block)


def _usage(argument: Any) -> str:
    name = argument.metavar or argument.name
    name = name if argument.nargs == 1 else f"{name}..."
    return name if argument.required else f"[{name}]"


class Grouped(TyperGroup):
    """Help that lists commands under what they are for (`rich_help_panel` names the group), without rich."""

    def format_commands(self, ctx: Any, formatter: Any) -> None:
        """Write one block a group, in the order of the work."""
        for group in _GROUPS:
            rows = [
                (name, command.get_short_help_str(limit=68))
                for name in self.list_commands(ctx)
                if (command := self.get_command(ctx, name)) is not None
                and not command.hidden
                and getattr(command, "rich_help_panel", None) == group
            ]
            if rows:
                with formatter.section(group):
                    formatter.write_dl(rows)


def new_app() -> typer.Typer:
    """A typer application that starts fast: no rich markup, no completion installer."""
    return typer.Typer(
        cls=Grouped,
        rich_markup_mode=None,
        add_completion=False,
        invoke_without_command=True,
        pretty_exceptions_enable=False,
        context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 80},
        help=_HELP,
    )
