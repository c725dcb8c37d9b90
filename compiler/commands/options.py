"""What several commands are given. Nothing here loads what a command needs to run."""

from __future__ import annotations

from pathlib import Path

import click

FOLDER = click.argument("folder", type=click.Path(path_type=Path))
THEME = click.option(
    "--theme", default="", help="A theme's name or folder, over the playbook's own."
)
PAPER = click.option(
    "--paper", type=click.Choice(["letter", "a4"]), default="letter", show_default=True
)
NO_CACHE = click.option(
    "--no-cache",
    is_flag=True,
    envvar="STEMLINE_NO_CACHE",
    help="Keep nothing on this machine for the next time, and use nothing of the last.",
)
SPOTS = ("left hash", "middle", "right hash")
"""The ball spots by the words of `football.field.BallSpot`, and the sizes by those of
`theme.SIZES`; a test holds them to each other."""
SIZES = ("large", "quarter", "small")
