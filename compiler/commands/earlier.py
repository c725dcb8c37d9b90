"""The playbook as it was: last season's folder, or an earlier revision of the same one."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from stemline.commands.side_files import BEFORE, earlier_files
from stemline.compare.comparing import former_name
from stemline.diagnostics.catalogue.calls import E602, E606
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.play import Play
from stemline.one_picture import call_play
from stemline.session import Session
from stemline.source import Source

CALL = "--before-call"
"""The option that asks for its call there, as the place where its mistakes are shown."""


@dataclass(frozen=True)
class Earlier:
    """A call as it was; None with the reasons, and the texts that they are shown in."""

    play: Play | None
    found: tuple[Diagnostic, ...]
    sources: dict[str, Source]


def earlier_call(
    folder: Path, now: Session, said: str, renamed: str, play: Play, against: str
) -> Earlier:
    """The call of ``play`` in the playbook that ``said`` names, from where ``play`` is drawn.

    ``now`` is the session that ``play`` is of. ``renamed`` is its spoken name there, "" where it
    is the same, or is found by what else the two playbooks say; ``against`` what it was asked to be
    drawn against.
    """
    files = earlier_files(folder, said)
    texts = {**files.by_name, BEFORE: Source(BEFORE, said)}
    if not files.sources:
        return Earlier(None, files.found, texts)
    compiled = Session(files.sources, said)
    name = renamed or play.call.spoken
    if not renamed and name not in compiled.calls.by_name:
        name = former_name(compiled, now, name) or name
    place = CALL if renamed else "the call"
    texts[place] = Source(place, name)
    if compiled.book is None:
        return Earlier(None, compiled.definitions, texts)
    faced = against or _faced(play, compiled)
    made, found = call_play(compiled, name, play.ball.value, faced, place)
    return Earlier(made, tuple(_reasons(found, compiled, place, said)), texts)


def _faced(play: Play, compiled: Session) -> str:
    """What the play is drawn against, where the earlier playbook has it too."""
    if play.defence is None:
        return ", ".join(play.against)
    assert compiled.book is not None, "asked of a playbook that was read"
    return play.defence.name if play.defence.name.casefold() in compiled.book.looks else ""


def _reasons(
    found: Sequence[Diagnostic], compiled: Session, place: str, said: str
) -> Iterator[Diagnostic]:
    """Why there is no call: its name, said of the playbook that does not know it, or what is wrong
    in that playbook, the cause before what follows from it."""
    if all(problem.span.source == place for problem in found):
        yield from (_missing(problem, said) for problem in found)
        return
    wrong = [problem for problem in compiled.definitions if problem.is_error]
    yield from dict.fromkeys((*wrong, *found) if wrong else found)


def _missing(problem: Diagnostic, said: str) -> Diagnostic:
    if not isinstance(problem.said, E602):
        return problem
    return E606(call=problem.said.call, before=said).at(problem.span, nearest=problem.nearest)
