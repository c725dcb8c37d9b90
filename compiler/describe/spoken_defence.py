"""The defence of a picture said in words."""

from __future__ import annotations

from collections.abc import Iterator

from stemline.describe.phrases import across, depth
from stemline.diagnostics.in_words import bare, together
from stemline.football.defence.zones import shown_words
from stemline.football.defenders import Defence, Defender, Level

_LEVELS = {
    Level.LINE: "On the line",
    Level.SECOND: "Second level",
    Level.DEEP: "Secondary",
}


def look_words(look: Defence, duties: bool, rush: bool) -> str:
    """A look: where everybody stands, each level from left to right.

    ``duties`` adds what each is there for; ``rush`` only who comes and who has a man.
    """
    shows = f" ({', '.join(shown_words(look))})" if look.shows else ""
    told = [f"Against {look.name}{shows}."]
    if look.disguise:
        told.append(f"Before the snap it shows {together(look.disguise)}.")
    if (duties or rush) and look.rush_words:
        told.append(f"{look.rush_words}.")
    return " ".join((*told, *_levels(look, duties, rush)))


def _levels(look: Defence, duties: bool, rush: bool) -> Iterator[str]:
    for level, name in _LEVELS.items():
        men = sorted((d for d in look.defenders if d.level is level), key=lambda d: d.at.x)
        if men:
            told = "; ".join(_defender(d, duties or (rush and _concerns(d))) for d in men)
            yield f"{name}: {told}."


def _concerns(man: Defender) -> bool:
    """Whether a protection has to do with him."""
    return man.duty is not None and (man.rushes or bool(man.duty.man))


def _defender(man: Defender, duty: bool) -> str:
    does = f", {bare(man.duty.words)}" if duty and man.duty is not None and man.duty.words else ""
    if man.technique and man.level is Level.LINE:
        where = _side(man.at.x)
        technique = man.technique if "gap" in man.technique else f"{man.technique} technique"
        return f"{man.label} {technique}{where}{does}"
    return f"{man.label} {across(man.at.x)}, {depth(man.at.y)}{does}"


def _side(x: float) -> str:
    if abs(x) < 0.25:
        return " over the ball"
    return f" {'right' if x > 0 else 'left'}"
