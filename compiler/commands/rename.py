"""`stemline rename`: another name for a definition or a role, everywhere it is used."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from stemline.commands.options import FOLDER

if TYPE_CHECKING:
    from stemline.compare.renaming import RenameTarget
    from stemline.session import Session
    from stemline.syntax.tree import Document


@click.command()
@FOLDER
@click.argument("old")
@click.argument("new")
@click.option("--kind", default="", help="Where several things have the name: which of them.")
@click.option("--of", "owner", default="", metavar="CONCEPT", help="The concept of a tag or role.")
@click.option("--yes", is_flag=True, help="Do it without asking.")
def rename(folder: Path, old: str, new: str, kind: str, owner: str, yes: bool) -> None:
    """Call OLD by the name NEW in every text of FOLDER: a formation, concept, role, tag, look, or
    a man by another letter.

    The plan is shown first. A name that would change a play, or that is taken, is refused.
    """
    from stemline.commands.opening import opened, writing
    from stemline.compare.comparing import compared
    from stemline.compare.man_letters import LETTER, left_alone, lettered, same_plays
    from stemline.compare.renaming import RenameTarget, renamed, targets
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
    letter = old.upper() if old.upper() in before.book.people else ""
    if letter and kind in ("", "man") and not owner:
        found.append(RenameTarget("man", letter))
    target = _one(found, before, old)
    is_man = target.kind == "man"
    sources = lettered(trees, letter, new) if is_man else renamed(trees, target, new)
    after = Session(sources, str(folder), whole=True)
    wrong = [d for d in after.definitions if d.is_error]
    wrong += [d for week in after.weeks for d in week.found if d.is_error]
    alike = not wrong and after.book is not None
    if alike and is_man:
        alike = same_plays(before, after, (letter, new)) and LETTER.fullmatch(new) is not None
    elif alike:
        alike = compared(before, after).no_play_changed
    if not alike:
        why = _why_not(target, new, trees, before)
        click.echo(f"{target.title} cannot be called {new}: {why}", err=True)
        click.echo(render(wrong[:1], {s.name: s for s in sources}), nl=False, err=True)
        raise SystemExit(1)
    lines = 0
    for was, now in zip(texts.sources, sources, strict=True):
        for n, (a, b) in enumerate(zip(was.lines, now.lines, strict=True), 1):
            if a != b:
                lines += 1
                click.echo(f"{was.name}:{n}:\n  - {a.strip()}\n  + {b.strip()}")
    if is_man and (left := list(left_alone(trees, sources, letter))):
        click.echo("left as they are, in words of yours, or where the letter is a gap:")
        click.echo("\n".join(left))
    if not yes:
        click.confirm(f"{target.title} → {new}: {how_many(lines, 'line')}?", abort=True)
    with writing():
        for was, now in zip(texts.sources, sources, strict=True):
            if was.text != now.text:
                write_file(Path(now.name), now.text.encode())
    click.echo(f"{target.title} is called {new}: {how_many(lines, 'line')}")


def _why_not(target: RenameTarget, new: str, trees: Sequence[Document], session: Session) -> str:
    """Why a thing cannot be called ``new``."""
    from stemline.compare.man_letters import LETTER
    from stemline.compare.renaming import targets

    if target.kind == "man":
        if session.book is not None and new.upper() in session.book.people:
            return "that is a man's letter already"
        if not LETTER.fullmatch(new):
            return "a letter is a capital, alone or with a letter or a figure behind it"
    taken = [t.title for t in targets(trees, new) if t.kind == target.kind]
    return f"there is a {taken[0]}" if taken else "the text could not be read so"


def _one(found: list[RenameTarget], session: Session, old: str) -> RenameTarget:
    """The one thing that is meant; the reasons where there is none or more."""
    from stemline.compare.renaming import names
    from stemline.diagnostics.nearest import nearest

    if len(found) == 1:
        return found[0]
    if found:
        said = ", ".join(target.title for target in found)
        click.echo(f"several things are called {old}: {said}; say --kind or --of", err=True)
    else:
        near = nearest(old, names(tree for tree, _ in session.trees))
        hint = f"; nearest: {near[0]}" if near else ""
        click.echo(f"nothing is called {old}{hint}", err=True)
    raise SystemExit(2)
