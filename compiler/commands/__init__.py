"""The commands, a file each. Thin: each reads a folder, asks its session, and prints or writes.

Exit codes: 0 done, 1 the playbook has errors, 2 the command itself cannot be carried out, 130 it
was interrupted.

A command's file holds its options and loads what works for it only when it is run, so that help,
version and the completion of a shell need neither the parser nor the numbers.
"""

from __future__ import annotations

import click

from stemline.commands.build import build
from stemline.commands.check import check
from stemline.commands.compare import compare
from stemline.commands.draw import draw
from stemline.commands.format_texts import format_texts
from stemline.commands.handbook import handbook
from stemline.commands.history import history
from stemline.commands.install_git import install_git, tell
from stemline.commands.list_calls import list_calls
from stemline.commands.merge import merge
from stemline.commands.new import new
from stemline.commands.rename import rename
from stemline.commands.sheet import sheet
from stemline.commands.show import show
from stemline.commands.week import week


class _Commands(click.Group):
    """The commands; an interrupt ends any of them as a shell expects it, and in one line."""

    def invoke(self, ctx: click.Context) -> object:
        try:
            return super().invoke(ctx)
        except KeyboardInterrupt:
            click.echo("interrupted: what was written before is as it was", err=True)
            raise SystemExit(130) from None


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="stemline")
def main() -> None:
    """Compile a playbook written as plain text: check it, list its calls, draw and print it."""


for _command in (
    *(check, list_calls, draw, build, sheet, compare, format_texts, rename, new, show),
    *(week, handbook, history, merge, install_git, tell),
):
    main.add_command(_command)
