"""Protections that every playbook has: written in the notation, so that a coach's own replace them.

Common practice, with the published rules that `football.protecting` names: slides by gap, man sides
by count from the ball, backs inside out.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import cache

from stemline.football.blocking.block_names import PROTECTIONS
from stemline.playbook.protection_definitions import Protection
from stemline.read.read_protections import read_facts
from stemline.source import Source

READY = """
protection five
    line blocks man

protection five slide
    toward call
    line blocks slide

protection six
    toward away from back or weak
    centre, playside guard, playside tackle blocks slide
    backside guard, backside tackle blocks man
    helper is back
    helper blocks scan

protection six slide
    toward away from back or call
    line blocks slide
    helper is back
    helper blocks backside edge

protection big on big
    line blocks big on big
    point middle linebacker
    helper is back
    helper blocks scan near linebacker > far linebacker

protection seven
    toward away from back or call
    centre, playside guard, playside tackle blocks slide
    backside guard, backside tackle blocks man
    helper is back
    helper blocks scan
    second is tight end or back or weak inside
    second blocks edge

protection max
    toward call
    line blocks slide
    helper is back
    helper blocks scan
    second is strong tight end or strong inside
    second blocks edge
    third is weak tight end or back or weak inside
    third blocks edge

protection sprint
    toward launch
    centre, playside guard, playside tackle blocks reach
    backside guard, backside tackle blocks hinge
    helper is back or nobody
    helper blocks playside edge

protection boot
    toward away from launch
    line blocks slide

protection screen
    toward launch
    playside tackle, backside tackle blocks man
    centre, playside guard, backside guard blocks set and release
"""


@cache
def ready(receivers: int) -> Mapping[str, Protection]:
    """The ready protections by key, for a code with this many men who may go out for a pass."""
    # Where all trees are known, and no play asks for this, nothing is parsed.
    from stemline.syntax.parser import parse

    document, problems = parse(Source("ready protections", READY))
    made: dict[str, Protection] = {}
    for block in document.blocks:
        protection, found = read_facts(block, block.facts, receivers)
        assert not problems and not found, (problems, found)
        key = block.name.text.casefold()
        made[key] = replace(protection, words=PROTECTIONS[key])
    return made
