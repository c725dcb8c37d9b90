"""Does a tag keep what it says it keeps?

The worth of a tag is that the quarterback's job stays the same while the picture changes: his
eyes go to the same spots in the same order off the same feet, whoever stands there. So the tagged
call is laid beside the plain one and compared: order, spots, men at the spots, feet.

Example: a tag that sends only one of two crossers back leaves one low spot empty and puts two men
at the other. Send both back, or do not claim ``keeps read``.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from stemline.checks.asked import ProvedCall, When
from stemline.diagnostics.catalogue.calls import E630
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.field import Side
from stemline.football.play import Play, Read, Spot
from stemline.geometry.paths import Ending, Path
from stemline.playbook.concepts import Keep
from stemline.source import Span


class E660(Mistake):
    title = "a tag that does not keep the feet"
    message = "{tag} says it keeps the feet, and changes `{before}` to `{after}` ({call})"
    label = "not kept"
    help = "leave the feet alone, or do not claim to keep them"

    after: str
    before: str
    call: str
    concept: str
    tag: str


class E661(Mistake):
    title = "a tag that does not keep the order"
    message = (
        "{tag} says it keeps the {what}, and changes look {number} from `{before}` to `{after}` "
        "({call})"
    )
    label = "not kept"
    help = "leave the {what} line alone, or do not claim to keep it"

    after: str
    before: str
    call: str
    concept: str
    number: int
    tag: str
    what: str


class E662(Mistake):
    title = "a tag that moves a spot"
    message = (
        "{tag} says it keeps the quarterback's eyes, and {spot} is not where {concept} has it "
        "({call})"
    )
    label = "not kept"
    help = "leave the spot alone, or do not claim to keep it"

    call: str
    concept: str
    spot: str
    tag: str


class E663(Mistake):
    title = "a tag that empties a spot"
    message = (
        "{tag} says it keeps the quarterback's eyes, but nobody comes to {spot}: {instead} ({call})"
    )
    label = "{spot} is empty"
    help = "send somebody to {spot}, or do not claim to keep it"
    varies = ("instead",)

    call: str
    concept: str
    instead: str
    spot: str
    tag: str

    def silences(self, other: Mistake) -> bool:
        return isinstance(other, E630) and other.spot == self.spot


class E664(Mistake):
    title = "a tag that takes a read away"
    message = "{tag} says it keeps the {what}, and {role} does not go out any more ({call})"
    label = "not kept"
    help = "give {role} a route, or do not claim to keep the {what}"

    call: str
    concept: str
    role: str
    tag: str
    what: str

    def silences(self, other: Mistake) -> bool:
        return isinstance(other, E630) and other.spot == self.role


class E665(Mistake):
    title = "a tag that turns a read around"
    message = (
        "{tag} says it keeps the {what}, and {role} goes to the {after} side where {concept} sends "
        "him to the {before} side ({call})"
    )
    label = "not kept"
    help = "send {role} to the same side, or do not claim to keep the {what}"

    after: str
    before: str
    call: str
    concept: str
    role: str
    tag: str
    what: str


WHEN = When.PROVED


def check_keeps(call: ProvedCall) -> Iterator[Diagnostic]:
    """Diagnostics at the tags' own ``keeps`` lines."""
    if call.plain is None:
        return
    # What another tag of the call changes without a promise is not this one's fault.
    shared = set.intersection(*({keep for keep, _ in tag.keeps} for tag in call.tags))
    for tag in call.tags:
        keeps = [(keep, span) for keep, span in tag.keeps if keep in shared]
        yield from _kept(tag.name, keeps, call.plain, call.play)


def _kept(
    tag: str, keeps: Sequence[tuple[Keep, Span]], plain: Play, tagged: Play
) -> Iterator[Diagnostic]:
    for keep, span in keeps:
        match keep:
            case Keep.READ:
                told = [*_order("read", tag, span, plain, plain.reads, tagged, tagged.reads)]
                yield from told or _last(tag, span, plain, tagged)
            case Keep.PRESSURE:
                yield from _order(
                    "pressure", tag, span, plain, plain.pressure, tagged, tagged.pressure
                )
            case Keep.SPOTS:
                yield from _spots(tag, span, plain, tagged, [s.name for s in plain.spots])
            case Keep.FEET:
                yield from _feet(tag, span, plain, tagged)


def _last(tag: str, span: Span, plain: Play, tagged: Play) -> Iterator[Diagnostic]:
    """What he does when no look is open is the end of the order."""
    before, after = (" or ".join(play.last) or "nothing" for play in (plain, tagged))
    if before != after:
        yield E661(
            tag=tag, what="read", number=len(tagged.reads) + 1, before=before, after=after,
            concept=plain.call.concept, call=tagged.call.spoken,
        ).at(span)  # fmt: skip


def _feet(tag: str, span: Span, plain: Play, tagged: Play) -> Iterator[Diagnostic]:
    before, after = ([s.name for s in p.feet] for p in (plain, tagged))
    if before != after:
        yield E660(
            tag=tag, before=", ".join(before) or "nothing", after=", ".join(after) or "nothing",
            concept=plain.call.concept, call=tagged.call.spoken,
        ).at(span)  # fmt: skip


def _order(
    what: str,
    tag: str,
    span: Span,
    plain: Play,
    before: Sequence[Read],
    tagged: Play,
    after: Sequence[Read],
) -> Iterator[Diagnostic]:
    # A man who is called out of the order is passed over: what is left of it is what was promised.
    left = (_left(read, tagged.called_away) for read in before)
    before = [read for read in left if read is not None]
    for number in range(max(len(before), len(after))):
        old = before[number] if number < len(before) else None
        new = after[number] if number < len(after) else None
        if _words(old) != _words(new):
            yield E661(
                tag=tag, what=what, number=number + 1, before=_words(old), after=_words(new),
                concept=plain.call.concept, call=tagged.call.spoken,
            ).at(span)  # fmt: skip
            return
    names = [r.target for r in before]
    spots = {s.name for s in plain.spots}
    yield from _spots(tag, span, plain, tagged, [n for n in names if n in spots])
    for name in names:
        if name not in spots:
            yield from _role(what, tag, span, name, plain, tagged)


def _left(read: Read, away: Sequence[str]) -> Read | None:
    """What is left of a look without the men who are called out of it."""
    both = [role for role in (read.target, read.partner) if role and role not in away]
    if not both:
        return None
    return replace(read, target=both[0], partner=both[1] if len(both) > 1 else "")


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
            yield E662(
                tag=tag, spot=name, concept=plain.call.concept, call=tagged.call.spoken,
            ).at(span)  # fmt: skip
        elif old.men and not new.men:
            yield E663(
                tag=tag, spot=name, instead=_crowd(tagged, plain) or _gone(old, plain, tagged),
                concept=plain.call.concept, call=tagged.call.spoken,
            ).at(span)  # fmt: skip


def _spot(play: Play, name: str) -> Spot | None:
    return next((s for s in play.spots if s.name == name), None)


def _crowd(tagged: Play, plain: Play) -> str:
    """The spot that holds more men than before, and who they are by role."""
    for spot in tagged.spots:
        old = _spot(plain, spot.name)
        if old is not None and len(spot.men) > max(1, len(old.men)):
            roles = [tagged.assignment(label).role_said for label in spot.men]
            return f"{' and '.join(roles)} are both at {spot.name}"
    return ""


def _gone(old: Spot, plain: Play, tagged: Play) -> str:
    """Where the man who was at the spot ends now."""
    role = plain.assignment(old.men[0]).role_said
    now = _route(tagged, plain.assignment(old.men[0]).role)
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
        yield E664(
            tag=tag, what=what, role=role, concept=plain.call.concept, call=tagged.call.spoken,
        ).at(span)  # fmt: skip
    elif old.end.x * new.end.x < 0:
        yield E665(
            tag=tag, what=what, role=role, before=_relative(old.end.x, plain),
            after=_relative(new.end.x, tagged), concept=plain.call.concept,
            call=tagged.call.spoken,
        ).at(span)  # fmt: skip


def _route(play: Play, role: str) -> Path | None:
    """The path of a role that goes out for a pass; None for one that blocks or is nobody."""
    assignment = play.runs(role)
    if assignment is None or assignment.path is None:
        return None
    return None if assignment.path.ending is Ending.BLOCK else assignment.path


def _relative(x: float, play: Play) -> str:
    return "strong" if x * play.strong.value > 0 else "weak"


SAMPLES = """
### E660

The tag promises the quarterback the same feet and gives him others. He would throw on a step that
is not there.

```play fail E660
tag Five Step for Crossers
    feet quick, 5, reset
    read flat on quick > near on 5 > top on reset > far on reset
    keeps feet
```

```play
tag Five Step for Crossers
    feet quick, 5, reset
    read flat on quick > near on 5 > top on reset > far on reset
```

### E661

The tag promises the quarterback the same read and puts it in another order.

```play fail E661
tag Far First for Crossers
    read flat on quick > far on 3 > top on reset > near on reset
    keeps read, feet
```

```play
tag Far First for Crossers
    read flat on quick > far on 3 > top on reset > near on reset
    keeps feet
```

### E662

The tag promises the same eyes and moves the place they go to.

```play fail E662
tag Deep Settle for Crossers
    settle runs sit 14 over ball
    spot top is 14 deep, over ball
    keeps read
```

```play
tag Deep Settle for Crossers
    settle runs sit 14 over ball
    spot top is 14 deep, over ball
    keeps feet
```

### E663

The tag promises the same eyes, but somebody has left a spot and nobody took his place. The message
says where the men went: with one crosser sent back, both arrive on one side.

```play fail E663
tag Under Return for Crossers
    under runs return
    keeps read, feet
```

```play
tag Under Return for Crossers
    over, under runs return
    keeps read, feet
```

### E664

The tag promises the same read and keeps one of its men in.

```play fail E664
tag Stay for Crossers
    flat blocks edge
    keeps read, feet
```

```play
tag Stay for Crossers
    flat blocks edge
    read near on 3 > top on reset > far on reset
    keeps feet
```

### E665

The tag promises the same read and sends the man to the other side: the quarterback would look for
him behind his back.

```play fail E665
tag Swing for Crossers
    flat runs swing same side as settle
    keeps read, feet
```

```play
tag Swing for Crossers
    flat runs swing away from settle
    keeps read, feet
```
"""
