"""`stemline rename`: another name for a definition or a role, everywhere it is used."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from stemline.commands.options import FOLDER

if TYPE_CHECKING:
    from stemline.compare.renaming import RenameTarget
    from stemline.session import Session


@click.command()
@FOLDER
@click.argument("old")
@click.argument("new")
@click.option("--kind", default="", help="Where several things have the name: which of them.")
@click.option("--of", "owner", default="", metavar="CONCEPT", help="The concept of a tag or role.")
@click.option("--yes", is_flag=True, help="Do it without asking.")
def rename(folder: Path, old: str, new: str, kind: str, owner: str, yes: bool) -> None:
    """Call OLD by the name NEW in every text of FOLDER: a formation, concept, role, tag, look.

    The plan is shown first. A name that would change a play, or that is taken, is refused.
    """
    from stemline.commands.opening import opened, writing
    from stemline.compare.comparing import compared
    from stemline.compare.renaming import renamed, targets
    from stemline.diagnostics.in_words import how_many
    from stemline.diagnostics.render import render
    from stemline.outside.file import write_file
    from stemline.session import Session

    texts, before = opened(folder)
    if before.book is None or any(d.is_error for d in (*texts.found, *before.definitions)):
        click.echo("the playbook has errors: see stemline check", err=True)
        raise SystemExit(1)
    new = " ".join(new.split())
    trees = [tree for tree, _ in before.trees]
    found = [
        t for t in targets(trees, " ".join(old.split()))
        if kind in ("", t.kind) and owner.casefold() in ("", t.owner.casefold())
    ]  # fmt: skip
    target = _one(found, before, old)
    sources = renamed(trees, target, new)
    after = Session(sources, str(folder), whole=True)
    wrong = [d for d in after.definitions if d.is_error]
    wrong += [d for week in after.weeks for d in week.found if d.is_error]
    if wrong or after.book is None or not compared(before, after).no_play_changed:
        taken = [t.title for t in targets(trees, new) if t.kind == target.kind]
        why = f"there is a {taken[0]}" if taken else "the text could not be read so"
        click.echo(f"{target.title} cannot be called {new}: {why}", err=True)
        click.echo(render(wrong[:1], {s.name: s for s in sources}), nl=False, err=True)
        raise SystemExit(1)
    lines = 0
    for was, now in zip(texts.sources, sources, strict=True):
        for n, (a, b) in enumerate(zip(was.lines, now.lines, strict=True), 1):
            if a != b:
                lines += 1
                click.echo(f"{was.name}:{n}:\n  - {a.strip()}\n  + {b.strip()}")
    if not yes:
        click.confirm(f"{target.title} → {new}: {how_many(lines, 'line')}?", abort=True)
    with writing():
        for was, now in zip(texts.sources, sources, strict=True):
            if was.text != now.text:
                write_file(Path(now.name), now.text.encode())
    click.echo(f"{target.title} is called {new}: {how_many(lines, 'line')}")


def _one(found: list[RenameTarget], session: Session, old: str) -> RenameTarget:
    """The one thing that is meant; the reasons where there is none or more."""
    from stemline.compare.renaming import names
    from stemline.diagnostics.nearest import nearest

    if len(found) == 1:
        return found[0]
    if found:
        said = ", ".join(target.title for target in found)
        click.echo(f"several things are called {old}: {said}; say --kind or --of", err=True)
    elif session.book is not None and old.upper() in session.book.people:
        click.echo(
            f"{old.upper()} is a man's letter, and plays are compared by letters: change it where "
            "his `personnel` says it, and `stemline check` names each line that still has it",
            err=True,
        )
    else:
        near = nearest(old, names(tree for tree, _ in session.trees))
        hint = f"; nearest: {near[0]}" if near else ""
        click.echo(f"nothing is called {old}{hint}", err=True)
    raise SystemExit(2)
