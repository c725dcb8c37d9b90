"""A block against a front in words for the assignment table: "Double N with C, then M."."""

from __future__ import annotations

from stemline.football.blocking.run_rules import MEANINGS, PULLS, BlockWay
from stemline.football.blocking.run_scheme import BlockTaken
from stemline.football.defenders import Level
from stemline.football.play import Play

_NOBODY = {
    BlockWay.HINGE: "hinge: inside gap first, then the edge",
    BlockWay.SCOOP: "scoop: nobody is left, run to the ball",
    BlockWay.STALK: "stalk the first man who shows",
    BlockWay.CRACK: "crack: nobody is inside you, stalk the first man who shows",
    BlockWay.WRAP: "wrap: the first man inside the kick",
    BlockWay.PULL: "pull: the first man outside the end",
    BlockWay.LEAD: "lead: the first man in the hole",
    BlockWay.ARC: "arc: the first man outside the end",
}
_SHOWS = "climb: the first man who shows"


def taken_words(block: BlockTaken, play: Play, holds: bool = False) -> str:
    """One man's block, as he would say it back: capital first, a full stop at the end.

    ``holds`` tells a lineman of a pass that shows a run: he goes nowhere past the line.
    """
    said = _held(block.way) if holds and not block.defender else _said(block, play)
    return f"{said[:1].upper()}{said[1:]}."


def _said(block: BlockTaken, play: Play) -> str:
    way, on, partner = block.way, block.defender, " and ".join(block.with_)
    if not on:
        return _NOBODY.get(way, _SHOWS) if way is not None else "help inside, then climb"
    if partner:
        then = f", then {block.climb}" if block.climb else ""
        told = f"help {partner} on {on}" if way is None else f"double {on} with {partner}"
        return told + then
    if way is None:
        return f"nobody on you: climb to {on}"
    if way is BlockWay.SCOOP and not _on_line(on, play):
        return f"scoop, climb to {on}"
    if way is BlockWay.DOUBLE:
        return f"block {on}"
    return f"{MEANINGS[way].said} {on}"


def _held(way: BlockWay | None) -> str:
    if way in PULLS:
        return f"{way.value}, and stay behind the line: the first man who comes"
    if way is BlockWay.HINGE:
        return _NOBODY[way]
    return "show the run and stay at the line: help inside"


def _on_line(label: str, play: Play) -> bool:
    return play.defence is not None and play.defence.defender(label).level is Level.LINE
