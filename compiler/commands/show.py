"""`stemline show`: a call at each stage of the compiler, for seeing.

The stages as values and not as pictures: what a contributor looks at first when a picture is wrong,
to tell which stage made it so.
"""

from __future__ import annotations

from pathlib import Path

import click

from stemline.commands.options import FOLDER

STAGES = ("tree", "play", "scene")
"""As `stemline.stages.STAGES` has them."""


@click.command()
@FOLDER
@click.argument("call")
@click.option(
    "--as", "stage", type=click.Choice(STAGES), default="play", show_default=True,
    help="What was read, what was worked out, or what is drawn.",
)  # fmt: skip
def show(folder: Path, call: str, stage: str) -> None:
    """Print what the compiler makes of one CALL, at one stage; for contributors."""
    from stemline.commands.opening import opened, theme_for
    from stemline.diagnostics.render import render
    from stemline.one_picture import call_play
    from stemline.source import Source
    from stemline.stages import stage_lines

    texts, session = opened(folder)
    play, found = call_play(session, call, None, "")
    if play is None:
        words = {"the call": Source("the call", call)}
        reasons = (*texts.found, *(found or session.definitions))
        click.echo(render(reasons, {**texts.by_name, **words}), nl=False, err=True)
        raise SystemExit(1)
    theme = theme_for(folder, "", session, texts)
    for line in stage_lines(session, play, stage, theme):
        click.echo(line)
