"""A line of the field that a man is told to run up, where he cannot be on it in time or it is
inside his own tackle; and the line of text that mends it."""

from __future__ import annotations

import math
from collections.abc import Sequence

from stemline.diagnostics.catalogue.football import E416, W417
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.conditions import Guard, Lie, worlds
from stemline.football.offence.rails import Rail, on_by, stem_of
from stemline.football.offence.tracing import Runner, called_depth, target_x
from stemline.football.play import Man
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import Job, RouteJob
from stemline.playbook.said import Said


def beside(said: Said[Job], jobs: Sequence[Said[Job]], picture: LinedUp) -> str:
    """When another line of his would hold that is for the short side only: told apart from each
    line that he has already, of which it would be no special case."""
    words = [said.guard.text] if said.guard.text else []
    words.append(Lie.BOUNDARY.value)
    known = worlds(picture.receivers)
    short = {n for n in said.guard.worlds if known[n].lie is Lie.BOUNDARY}
    for other in (job.guard for job in jobs):
        if _apart(short, other) or any(look.opposite.value in words for look in other.looks):
            continue
        looks = [look for look in other.looks if look.value not in words]
        more = looks[0].opposite.value if len(looks) == 1 else picture.count.shape_word
        if more not in words:
            words.append(more)
    return ", ".join(words)


def _apart(short: set[int], other: Guard) -> bool:
    """Whether a line for these worlds, and one under ``other``, never ask for two jobs at once."""
    both = short & other.worlds
    return not both or both == short or both == other.worlds


def off_the_rail(
    run: RouteJob, rail: Rail, man: Man, runner: Runner, said: Said[Job], when: str, call: str
) -> Diagnostic | None:
    """A line that he cannot be on in time, and one inside the tackle for a man who is outside:
    ``when`` is what a line for the short side would say (`beside`)."""
    depth = called_depth(run.route, run.depth)
    stem = stem_of(run.route.strokes, depth) or depth
    by = on_by(rail, stem)
    x = target_x(rail.line, runner)
    across = abs(x - man.snap.x)
    if across > by - man.snap.y:
        more, nearer = math.ceil(across), "say a line that is nearer to him"
        reached = abs(man.snap.x) - (by - man.snap.y)
        outside = max(1, math.ceil(reached - runner.field.marks.tackle(1)))
        inward = abs(x) < abs(man.snap.x)
        nearer += f", from there `up {outside} outside tackle`" if inward else ""
        return E416(
            man=man.label, across=f"{across:.0f}", by=f"{by:.0f}", call=call,
            instead=f"give him longer, `by {more}`, or {nearer}" if more < stem
            else f"{nearer}, or have him break deeper than {more}",
            spot=runner.field.spot.value,
        ).at(said.span)  # fmt: skip
    elif not rail.line.far and abs(x) < runner.field.marks.tackle(1) < abs(man.snap.x):
        return W417(man=man.label, call=call, spot=runner.field.spot.value, when=when).at(said.span)
    return None
