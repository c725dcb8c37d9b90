"""A protection as the coach wrote it: the way of the slide, and what each man is told."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum

from stemline.playbook.concepts import RouteJob
from stemline.playbook.pass_block import PassBlock
from stemline.playbook.role_rules import RoleRule
from stemline.playbook.run_definitions import LineSpot
from stemline.playbook.said import Said, SideWord
from stemline.source import Span


class SlideWay(Enum):
    """Which way a line slides, seen from a man or from the throw: no side where he is not there."""

    TO_BACK = "back"
    FROM_BACK = "away from back"
    TO_END = "tight end"
    FROM_END = "away from tight end"
    TO_LAUNCH = "launch"
    FROM_LAUNCH = "away from launch"


Toward = SideWord | SlideWay


@dataclass(frozen=True)
class HotDef:
    """What is thrown when one more comes than is blocked; ``given`` is "" or when, in words.

    ``man`` is the words for him whose job it is and ``rule`` who that is by where he stands, where
    the text names a man; ``job`` is what he runs then, where it names a route.
    """

    throws: str
    given: str
    span: Span
    man: str = ""
    rule: Said[RoleRule] | None = None
    job: Said[RouteJob] | None = None


@dataclass(frozen=True)
class Protection:
    """A protection block, read; ``broken`` where a line of it could not be.

    ``line`` holds the rules of men of the line by their place and ``line_says`` a word to them,
    ``rules`` who each helper is and
    ``jobs`` what he does, ``outs`` the route of one who checks and whom the concept sends nowhere;
    ``point`` is the linebacker counted with the front ("middle linebacker").
    ``words`` is the whole of it in a sentence.
    """

    name: str
    says: tuple[str, ...]
    span: Span
    broken: bool
    words: str = ""
    toward: tuple[Said[tuple[Toward, ...]], ...] = ()
    line: Mapping[LineSpot, tuple[Said[PassBlock], ...]] = field(default_factory=dict)
    rules: Mapping[str, tuple[Said[RoleRule], ...]] = field(default_factory=dict)
    jobs: Mapping[str, tuple[Said[PassBlock], ...]] = field(default_factory=dict)
    outs: Mapping[str, tuple[Said[RouteJob], ...]] = field(default_factory=dict)
    role_says: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    line_says: Mapping[LineSpot, tuple[str, ...]] = field(default_factory=dict)
    point: str = ""
    hot: tuple[HotDef, ...] = ()
    cautions: tuple[str, ...] = ()
