"""What a pass has against each look, and what is asked of a call before its play is wanted, kept:
as JSON has it, and read back as that alone."""

from __future__ import annotations

from collections.abc import Sequence

from stemline.football.call_facts import CallFacts
from stemline.football.field import BallSpot
from stemline.football.put_to_looks import LookAnswered, PutToLooks, ReadAtLook
from stemline.proofs.reading import Reading


def put_as_data(made: Sequence[PutToLooks | None], _: Reading) -> object:
    """One value or none, as plain data."""
    (put,) = made
    if put is None:
        return []
    rows = [
        [
            row.look, row.best, row.out, row.hot, row.rusher, row.told,
            [[each.cover, each.yards, each.nearest, each.run] for each in row.reads],
        ]
        for row in put.rows
    ]  # fmt: skip
    return [put.concept, put.formation, put.reads, rows, put.theirs, put.ours]


def put_from_data(held: object, _: Reading) -> list[PutToLooks | None]:
    """The value that was written. Raises ValueError for what is not as we write."""
    match held:
        case []:
            return [None]
        case [str(concept), str(formation), list(reads), list(rows), list(theirs), list(ours)]:
            named = tuple(map(_read, reads))
            made = PutToLooks(
                concept, formation, named, tuple(map(_row, rows)), _letters(theirs), _letters(ours)
            )
            return [made]
    raise ValueError(held)


def _read(held: object) -> tuple[str, str]:
    match held:
        case [str(number), str(target)]:
            return number, target
    raise ValueError(held)


def _row(held: object) -> LookAnswered:
    match held:
        case [
            str(look), int() | None as best, float() | None as out, str() | None as hot,
            float() | None as rusher, str(told), list(reads),
        ]:  # fmt: skip
            return LookAnswered(look, tuple(map(_at_look, reads)), best, out, hot, rusher, told)
    raise ValueError(held)


def _at_look(held: object) -> ReadAtLook:
    match held:
        case [str(cover), float(yards), str(nearest), bool(run)]:
            return ReadAtLook(cover, yards, nearest, run)
    raise ValueError(held)


def _letters(held: Sequence[object]) -> tuple[str, ...]:
    if not all(isinstance(letter, str) for letter in held):
        raise ValueError(held)
    return tuple(map(str, held))


def facts_as_data(facts: CallFacts, _: Reading) -> object:
    return [facts.right, facts.reads, facts.run, facts.ball.value]


def facts_from_data(held: object, _: Reading) -> CallFacts:
    """The value that was written. Raises ValueError for what is not as we write."""
    match held:
        case [bool(right), bool(reads), bool(run), str(ball)]:
            return CallFacts(right, reads, run, BallSpot(ball))
    raise ValueError(held)
