"""`stemline draw`: one call's picture."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from stemline.commands.options import FOLDER, NO_CACHE, SIZES, SPOTS, THEME

if TYPE_CHECKING:
    from stemline.football.play import Play
    from stemline.session import Session


@click.command()
@FOLDER
@click.argument("call")
@click.option("-o", "--output", type=click.Path(path_type=Path), help="This SVG, PDF or PNG file.")
@click.option("--from", "spot", type=click.Choice(SPOTS), help="Where the ball is.")
@click.option(
    "--against", default="", help="A look of the playbook, or what it shows, such as 'zone, off'."
)
@click.option(
    "--size", type=click.Choice(SIZES), default="large", show_default=True,
    help="For a page, for a quarter of one, or the small one of a dress-up.",
)  # fmt: skip
@click.option("--only", "man", default="", help="Draw this man strong and the others pale.")
@click.option(
    "--before", metavar="FOLDER", default="",
    help="Under it, pale, the call as it was: in this folder, or at this git revision.",
)  # fmt: skip
@click.option("--before-call", "renamed", default="", help="Its name there, where it had another.")
@THEME
@NO_CACHE
def draw(
    folder: Path,
    call: str,
    output: Path | None,
    spot: str | None,
    against: str,
    size: str,
    man: str,
    before: str,
    renamed: str,
    theme: str,
    no_cache: bool,
) -> None:
    """Draw one CALL; as SVG to the terminal where no file is given."""
    from contextlib import AbstractContextManager, nullcontext

    from stemline.commands.opening import kept, kind_of, known, opened, theme_for, writing
    from stemline.diagnostics.in_words import how_many
    from stemline.diagnostics.render import render
    from stemline.outside.file import write_file
    from stemline.source import Source, Span
    from stemline.theme import SIZES as BY_WORD

    kind = kind_of(output, (".svg", ".pdf", ".png")) if output is not None else ".svg"
    texts, compiled = opened(folder, known(not no_cache))
    look = theme_for(folder, theme, compiled, texts)
    from stemline.one_picture import call_play, drawn, his_label

    play, found = call_play(compiled, call, spot, against)
    words = {"the call": Source("the call", call), "--against": Source("--against", against)}
    if play is None:
        reasons = found or compiled.definitions
        click.echo(render((*texts.found, *reasons), {**texts.by_name, **words}), nl=False, err=True)
        raise SystemExit(1)
    label, found = his_label(play, man, Span.over("--only", man)) if man else (None, ())
    if found:
        click.echo(render(found, {"--only": Source("--only", man)}), nl=False, err=True)
        raise SystemExit(2)
    was = _before(folder, compiled, before, renamed, play, against)
    assert compiled.book is not None, "a play comes from a book"
    level = compiled.book.settings.level
    room: AbstractContextManager[object] = nullcontext()
    if kind == ".pdf":
        from stemline.outside.workroom import workroom

        room = workroom()
    with writing(), room, kept(not no_cache) as store:
        data = drawn(
            play, look, BY_WORD[size], kind,
            only=label, before=was, level=level, duties=bool(against), store=store,
        )  # fmt: skip
    others = sum(d.is_error for d in (*texts.found, *compiled.definitions))
    if others:
        click.echo(f"the playbook has {how_many(others, 'error')}: see stemline check", err=True)
    if output is None:
        click.echo(data, nl=False)
        return
    with writing():
        write_file(output, data)


def _before(
    folder: Path, now: Session, before: str, renamed: str, play: Play, against: str
) -> Play | None:
    """The call as it was, where that is asked for; the reasons where it is not to be had."""
    if not before:
        if renamed:
            raise click.UsageError("--before-call goes with --before")
        return None
    from stemline.commands.earlier import earlier_call
    from stemline.diagnostics.render import render
    from stemline.session import no_collecting

    with no_collecting():
        made = earlier_call(folder, now, before, renamed, play, against)
    if made.play is None:
        click.echo(render(made.found, made.sources), nl=False, err=True)
        raise SystemExit(2)
    return made.play
