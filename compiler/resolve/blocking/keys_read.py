"""The men whom a call reads, each in a look, and what is done off him: of a run and of a pass."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from stemline.diagnostics.catalogue.runs import E677
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.blocking.block_names import UNBLOCKED
from stemline.football.defence.described import Described
from stemline.football.defence.fronts import Front
from stemline.football.defenders import Defender
from stemline.football.exchanges import TRAILS
from stemline.football.play import Key, Play
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import Body
from stemline.playbook.run_definitions import KeyDef, Reaction
from stemline.resolve.blocking.keying import Solve, left_instead, read
from stemline.resolve.blocking.told_blocks import described
from stemline.resolve.roles import Bound


def keys_read(
    body: Body,
    bound: Bound,
    picture: LinedUp,
    front: Front | None,
    solve: Solve | None,
    given: str = "",
) -> tuple[Key, ...]:
    """The men who are read; what is done off each is told by the reactions. ``solve`` is the
    blocking of a run, which leaves one of them: None for a pass that shows none. ``given`` is who
    gets a give that names nobody."""
    reactions = body.reactions
    plain = [r for r in reactions if r.off is None]
    named = [key for key in body.keys if key.name]
    pairs = [(key, plain) for key in body.keys[:1]]
    if named:
        pairs = [(key, [r for r in plain if _decides(r, key)]) for key in body.keys]
    pairs += [(r.off, [r]) for r in reactions if r.off is not None]
    keys: list[Key] = []
    targets: list[Described] = []
    for key, theirs in pairs:
        target = described(key.target, picture)
        there = _there(front, target, solve) if front is not None else ()
        taken = {k.man for k in keys}
        man = next((d.label for d in there if d.label not in taken), "")
        choices = tuple((r.does, _to(r, bound, given), _when(r, key)) for r in theirs)
        called = f"{key.name}, the {key.words}" if key.name else key.words
        made = Key(called, man, choices, key.span, name=key.name)
        keys.append(made)
        targets.append(target)
    if front is None or not solve:
        return tuple(keys)
    return tuple(
        replace(key, instead=left_instead(front, target, key.man, _beside(solve, key, keys)))
        if key.throws and target.what != UNBLOCKED else key
        for key, target in zip(keys, targets, strict=True)
    )  # fmt: skip


def _beside(solve: Solve, key: Key, keys: Sequence[Key]) -> Solve:
    """The blocking that leaves whoever else is read: a tackle passes one key and climbs."""
    others = tuple(k.man for k in keys if k is not key and k.man)
    return lambda left: solve((*others, *left))


def unread(body: Body, play: Play) -> tuple[Diagnostic, ...]:
    """What is done off a man who is read, where nobody is."""
    return tuple(
        E677(does=r.does, call=play.call.spoken).at(r.span)
        for r in body.reactions
        if not body.keys and r.off is None
    )


def _there(front: Front, target: Described, solve: Solve | None) -> tuple[Defender, ...]:
    return read(front, target, solve) if solve is not None else front.read_as(target)


def _to(one: Reaction, bound: Bound, given: str) -> str:
    """Who gets the ball: whom the line names, else of a pitch the man who trails for it."""
    trails = (bound.men[r] for r in TRAILS if r in bound.men)
    found = bound.man(one.to) or one.to or (given if one.does == "give" else "")
    return found or next(trails, "") if one.does == "pitch" else found


def _decides(one: Reaction, key: KeyDef) -> bool:
    """Whether this key is the last whom the line asks about."""
    return not one.cases or one.cases[-1][0] == key.name


def _when(one: Reaction, key: KeyDef) -> str:
    """When it is done, in words: what the key does is said of him, what another does by name."""
    if not one.cases:
        return one.when
    others = "".join(f" and the {name} {does}" for name, does in one.cases[:-1])
    return f"he {one.cases[-1][1]}{others}".replace("takes quarterback", "takes the quarterback")
