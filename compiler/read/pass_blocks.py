"""What a man of a protection blocks, and whom a man looks for who goes out afterwards."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from stemline.diagnostics.catalogue.football import E402, E462
from stemline.diagnostics.catalogue.protections import E691
from stemline.football.blocking.block_names import DEFENDERS
from stemline.football.blocking.protecting import ProtectionRule
from stemline.playbook.pass_block import PassBlock
from stemline.read.read_places import SIDES
from stemline.read.words import Misread, Words, one_phrase
from stemline.source import Span
from stemline.syntax.tree import Mark, Phrase, Series, Value, items

BLOCKS: Mapping[str, ProtectionRule] = {rule.value: rule for rule in ProtectionRule} | {
    "scan inside out": ProtectionRule.SCAN,
}
FOR_LINE = tuple(
    rule.value
    for rule in ProtectionRule
    if rule.by_gap
    or rule.by_man
    or rule in (ProtectionRule.HINGE, ProtectionRule.EDGE, ProtectionRule.SCAN)
)
FOR_HELP = (
    "scan", "scan inside out", "edge", "check", "check then release", "check edge then release",
    "man", "slide",
)  # fmt: skip
_OUT = ("release", "releases", "go out", "get out", "goes out", "gets out", "release out", "leave")
_INSIDE_OUT = ("scan inside out", "inside out", "scan", "his man", "inside", "rusher", "rushers")


def read_block(value: Value | None, span: Span, names: Iterable[str]) -> PassBlock:
    """``slide`` · ``backside edge`` · ``scan middle linebacker > near linebacker`` ·
    ``check edge then release``."""
    names = tuple(names)
    first, *others = _without_release(value, names) or [None]
    words = Words([one_phrase(first, "a block", span)])
    words.take_word("the")
    if "check" in names and words.take_word("check", "checks"):
        block = looked_for(words)
    else:
        block = _block(words, names)
    words.finish("a block")
    wants = list(block.wants)
    for other in others:
        words = Words([one_phrase(other, "a defender", span)])
        wants.append(_defender(words))
        words.finish("a defender")
    if others and not block.rule.scans:
        more = one_phrase(others[0], "a defender", span)
        raise Misread(E402(what="one block").at(more.span))
    return PassBlock(block.rule, block.side, tuple(wants))


def looked_for(words: Words) -> PassBlock:
    """Whom he looks for who checks, from what stands behind the word: ``edge``, ``backside edge``,
    ``near linebacker``; nothing of it leaves the words where they are."""
    at = words.at
    words.take_word("the")
    words.take_word("his")
    side = words.take_name(SIDES)
    if words.take_word("edge"):
        return PassBlock(ProtectionRule.CHECK_EDGE, SIDES[side] if side is not None else None)
    if (defender := words.take_name(DEFENDERS)) is not None:
        return PassBlock(ProtectionRule.CHECK, None, (f"{side or ''} {defender}".strip(),))
    if side is None and words.take_name(_INSIDE_OUT) is not None:
        return PassBlock(ProtectionRule.CHECK)
    words.at = at
    return PassBlock(ProtectionRule.CHECK)


def way_out(value: Value | None) -> Value | None:
    """A check with where he goes then, as a route is said: ``check edge then flat``; of several
    whom he looks for the first. None for another block."""
    first = items(items(value, Mark.ORDER)[0], Mark.THEN)[0] if value is not None else None
    if not isinstance(first, Phrase) or first.atoms[0].word != "check":
        return None
    return value if not isinstance(value, Series) or value.mark is Mark.THEN else first


def _without_release(value: Value | None, names: Iterable[str]) -> list[Value | None]:
    """The blocks in order, without where he goes who checks: `then release`, `then flat`."""
    blocks: list[Value | None] = list(items(value, Mark.ORDER))
    last = blocks[-1] if blocks else None
    pieces = items(last, Mark.THEN)
    if "check" in names and len(pieces) > 1:
        first = items(blocks[0], Mark.THEN)[0]
        checks = isinstance(first, Phrase) and first.atoms[0].word in ("check", "checks")
        if checks and (len(blocks) == 1 or released(pieces[1])):
            blocks[-1] = pieces[0]
    return blocks


def released(piece: Value) -> bool:
    """Whether this says no more than that he goes out."""
    if not isinstance(piece, Phrase):
        return False
    words = Words([piece])
    return words.take_name(_OUT) is not None and words.done


def _defender(words: Words) -> str:
    """A described defender, perhaps of a side: ``backside end man on line``."""
    words.take_word("the")
    side = words.take_name(SIDES)
    return f"{side or ''} {words.expect(DEFENDERS, E462)}".strip()


def _block(words: Words, names: tuple[str, ...]) -> PassBlock:
    side = words.take_name(SIDES)
    if side is not None:
        words.expect(("edge",), E691)
        return PassBlock(ProtectionRule.EDGE, SIDES[side])
    if words.take_word("edges"):  # `back, fullback blocks the edges`
        return PassBlock(ProtectionRule.EDGE)
    rule = BLOCKS[words.expect(names, E691)]
    wants: tuple[str, ...] = ()
    if rule.scans and not words.done:
        wants = (_defender(words),)
    return PassBlock(rule, None, wants)
