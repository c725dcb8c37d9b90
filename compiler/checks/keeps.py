"""Does a tag keep what it says it keeps?

The worth of a tag is that the quarterback's job stays the same while the picture changes: his
eyes go to the same spots in the same order off the same feet, whoever stands there. So the tagged
call is laid beside the plain one and compared: order, spots, men at the spots, feet.

Example: a tag that sends only one of two crossers back leaves one low spot empty and puts two men
at the other. Send both back, or do not claim ``keeps read``.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from stemline.diagnostics.diagnostic import Diagnostic, diagnose
from stemline.football.field import Side
from stemline.football.play import Play, Read, Spot
from stemline.geometry.paths import Ending, Path
from stemline.playbook.concepts import Keep
from stemline.source import Span


def check_keeps(
    tag: str, keeps: Sequence[tuple[Keep, Span]], plain: Play, tagged: Play
) -> Iterator[Diagnostic]:
    """Diagnostics at the tag's own ``keeps`` lines."""
    for keep, span in keeps:
        match keep:
            case Keep.READ:
                yield from _order("read", tag, span, plain, plain.reads, tagged, tagged.reads)
            case Keep.PRESSURE:
                yield from _order(
                    "pressure", tag, span, plain, plain.pressure, tagged, tagged.pressure
                )
            case Keep.SPOTS:
                yield from _spots(tag, span, plain, tagged, [s.name for s in plain.spots])
            case Keep.FEET:
                yield from _feet(tag, span, plain, tagged)


def _feet(tag: str, span: Span, plain: Play, tagged: Play) -> Iterator[Diagnostic]:
    before, after = ([s.name for s in p.feet] for p in (plain, tagged))
    if before != after:
        yield diagnose(
            "E660",
            span,
            tag=tag,
            before=", ".join(before) or "nothing",
            after=", ".join(after) or "nothing",
            concept=plain.call.concept,
            call=tagged.call.spoken,
        )


def _order(
    what: str,
    tag: str,
    span: Span,
    plain: Play,
    before: Sequence[Read],
    tagged: Play,
    after: Sequence[Read],
) -> Iterator[Diagnostic]:
    for number in range(max(len(before), len(after))):
        old = before[number] if number < len(before) else None
        new = after[number] if number < len(after) else None
        if _words(old) != _words(new):
            yield diagnose(
                "E661", span, tag=tag, what=what, number=number + 1, before=_words(old),
                after=_words(new), concept=plain.call.concept, call=tagged.call.spoken,
            )  # fmt: skip
            return
    names = [r.target for r in before]
    spots = {s.name for s in plain.spots}
    yield from _spots(tag, span, plain, tagged, [n for n in names if n in spots])
    for name in names:
        if name not in spots:
            yield from _role(what, tag, span, name, plain, tagged)


def _words(read: Read | None) -> str:
    if read is None:
        return "nothing"
    foot = f" on {read.foot}" if read.foot else ""
    partner = f" with {read.partner}" if read.partner else ""
    return f"{read.target}{partner}{foot}"


def _spots(
    tag: str, span: Span, plain: Play, tagged: Play, names: Sequence[str]
) -> Iterator[Diagnostic]:
    """Each spot where it was, with a man at it: said with where the missing man went."""
    for name in names:
        old, new = _spot(plain, name), _spot(tagged, name)
        if old is None:
            continue
        if new is None or old.at.distance(new.at) > min(old.half_width, old.half_height):
            yield diagnose(
                "E662", span, tag=tag, spot=name, concept=plain.call.concept,
                call=tagged.call.spoken,
            )  # fmt: skip
        elif old.men and not new.men:
            yield diagnose(
                "E663",
                span,
                tag=tag,
                spot=name,
                instead=_crowd(tagged, plain) or _gone(old, plain, tagged),
                concept=plain.call.concept,
                call=tagged.call.spoken,
            )


def _spot(play: Play, name: str) -> Spot | None:
    return next((s for s in play.spots if s.name == name), None)


def _crowd(tagged: Play, plain: Play) -> str:
    """The spot that holds more men than before, and who they are by role."""
    for spot in tagged.spots:
        old = _spot(plain, spot.name)
        if old is not None and len(spot.men) > max(1, len(old.men)):
            roles = [tagged.assignment(label).role for label in spot.men]
            return f"{' and '.join(roles)} are both at {spot.name}"
    return ""


def _gone(old: Spot, plain: Play, tagged: Play) -> str:
    """Where the man who was at the spot ends now."""
    role = plain.assignment(old.men[0]).role
    now = _route(tagged, role)
    if now is None:
        return f"{role} has no route"
    end = now.end
    side = "over the ball" if abs(end.x) < 1 else f"{abs(end.x):.0f} {_side(end.x)} of the ball"
    return f"{role} ends {end.y:.0f} deep, {side}"


def _side(x: float) -> str:
    return (Side.RIGHT if x > 0 else Side.LEFT).word


def _role(
    what: str, tag: str, span: Span, role: str, plain: Play, tagged: Play
) -> Iterator[Diagnostic]:
    """A man who is read by himself must still go out, to the same side of the ball."""
    old, new = _route(plain, role), _route(tagged, role)
    if old is None:
        return
    if new is None:
        yield diagnose(
            "E664", span, tag=tag, what=what, role=role, concept=plain.call.concept,
            call=tagged.call.spoken,
        )  # fmt: skip
    elif old.end.x * new.end.x < 0:
        yield diagnose(
            "E665", span, tag=tag, what=what, role=role,
            before=_relative(old.end.x, plain), after=_relative(new.end.x, tagged),
            concept=plain.call.concept, call=tagged.call.spoken,
        )  # fmt: skip


def _route(play: Play, role: str) -> Path | None:
    """The path of a role that goes out for a pass; None for one that blocks or is nobody."""
    assignment = play.runs(role)
    if assignment is None or assignment.path is None:
        return None
    return None if assignment.path.ending is Ending.BLOCK else assignment.path


def _relative(x: float, play: Play) -> str:
    return "strong" if x * play.strong.value > 0 else "weak"
