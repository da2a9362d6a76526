"""The program's face: commands in groups by what the author is doing."""

from __future__ import annotations

from typing import Any

import typer
from typer.core import TyperGroup

MAKE = "Make an episode"
ANSWER = "Answer viewers"
KEEP = "Keep the library"
_GROUPS = (MAKE, ANSWER, KEEP)


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
        no_args_is_help=True,
        pretty_exceptions_enable=False,
        context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 80},
        help="From setups and the reasons behind them to everything a tuning episode needs.",
    )
