"""Motions: who moves before the snap, which way, from when, and how he is at the snap."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from stemline.diagnostics.catalogue.football import E420, E439
from stemline.diagnostics.catalogue.legality import E514, E551, E552
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.football.timing.levels import PACE
from stemline.playbook.formations import Move, Mover
from stemline.read.read_places import read_depth, read_mover, read_place
from stemline.read.words import Misread, Words, one_phrase
from stemline.source import Span
from stemline.syntax.tree import AtomKind, Block, Fact, Mark, Phrase, Value, items

_STATES = ("set", "running")


@dataclass(frozen=True)
class Moves:
    """The moves of one motion block; ``speed`` yards a second at the snap, 0 when set."""

    moves: tuple[Move, ...]
    speed: float


@dataclass(frozen=True)
class _Start:
    """When a man begins, in seconds before the snap, and how fast he is at the snap (None: as the
    motion says)."""

    seconds: float
    speed: float | None
    span: Span


def read_motion(
    block: Block, facts: Iterable[Fact], letters: tuple[str, ...], movers: tuple[str, ...]
) -> tuple[Moves, tuple[Diagnostic, ...]]:
    """``letters`` may be named in a place; ``movers``, the linemen among them, may move."""
    moves: dict[Mover, Move] = {}
    starts: dict[Mover, _Start] = {}
    snaps: dict[float, Span] = {}
    found: list[Diagnostic] = []
    for fact in facts:
        try:
            if fact.guard is not None:
                raise Misread(E514(verb=fact.key).at(fact.guard.span))
            if fact.key == "moves":
                for subject in fact.subject:
                    move = _move(fact, subject, letters, movers)
                    first = moves.setdefault(move.mover, move)
                    _once(first.span, move.span, f"where {subject.text} moves")
            elif fact.key == "starts":
                for subject in fact.subject:
                    start = _start(fact)
                    kept = starts.setdefault(read_mover(subject, movers), start)
                    _once(kept.span, start.span, f"when {subject.text} starts")
            elif fact.key == "snap":
                phrase = one_phrase(fact.value, "`set` or `running`", fact.span)
                snaps.setdefault(_state(Words([phrase])), fact.span)
        except Misread as miss:
            found.append(miss.diagnostic)
    if len(snaps) > 1:
        one, two = list(snaps.values())[:2]
        other = (Related(one, "the other line is here"),)
        found.append(E420(what="how they are at the snap").at(two, related=other))
    for mover, start in starts.items():
        if mover in moves:
            moves[mover] = replace(moves[mover], starts=start.seconds, speed=start.speed)
        elif not found:
            found.append(E551(motion=block.name.text).at(start.span))
    return Moves(tuple(moves.values()), next(iter(snaps), 0.0)), tuple(found)


def _once(first: Span, second: Span, what: str) -> None:
    if first != second:
        other = (Related(first, "the other line is here"),)
        raise Misread(E420(what=what).at(second, related=other))


def _move(fact: Fact, subject: Phrase, letters: tuple[str, ...], movers: tuple[str, ...]) -> Move:
    mover = read_mover(subject, movers)
    pieces = items(fact.value, Mark.THEN)
    first = pieces[0] if pieces else None
    words = _from(first)
    if words is not None and len(pieces) == 1:
        if words.done or words.atoms[words.at].kind is not AtomKind.NUMBER or not _deep(words):
            start = read_place(first, fact.span, letters, moving=True)
            return Move(mover, (), None, fact.span, start=start)
        depth, _ = read_depth(words)
        words.finish("a depth")
        return Move(mover, (), depth, fact.span)
    places = tuple(read_place(p, fact.span, letters, moving=True) for p in pieces)
    return Move(mover, places, None, fact.span)


def _from(first: Value | None) -> Words | None:
    """The words after `from`, None where a place he moves to is told."""
    phrases = [p for p in items(first, Mark.AND) if isinstance(p, Phrase)]
    if not phrases:
        return None
    words = Words(phrases)
    return words if words.take_word("from") else None


def _deep(words: Words) -> bool:
    """`6 deep`, and not `6 outside tackle`."""
    ahead = words.atoms[words.at + 1 :]
    return not ahead or ahead[0].word not in ("inside", "outside")


def _start(fact: Fact) -> _Start:
    """``1.5 seconds``, or ``2 counts, running 7``: when before the snap, and how he is then."""
    parts = [one_phrase(v, "seconds", fact.span) for v in items(fact.value, Mark.AND)]
    words = Words(parts)
    seconds = words.take_number()
    words.take_word("counts", "count")  # common practice: a count is a second
    if not seconds:
        raise words.miss(E552)
    speed = None if words.done else _state(words)
    words.finish("when he starts")
    return _Start(seconds, speed, fact.span)


def _state(words: Words) -> float:
    """Yards a second at the snap; 0 for a man who is set."""
    state = words.expect(_STATES, E439)
    speed = words.take_number() if state == "running" else None
    words.finish("how he is at the snap")
    return speed or PACE if state == "running" else 0.0
