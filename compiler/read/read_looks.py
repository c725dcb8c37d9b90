"""Look blocks: fronts by technique, the second level and secondary by rule, duties, rushes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from stemline.diagnostics.catalogue.football import E402, E405, E411, E420
from stemline.diagnostics.catalogue.looks import E486, E487, E495, E497, W429
from stemline.diagnostics.catalogue.names import E325
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.football.conditions import LookWord
from stemline.football.defence.techniques import LINEBACKERS
from stemline.playbook.look_definitions import (
    AtTechnique,
    Choices,
    FacedSet,
    InGap,
    LookDef,
    LookSide,
    OverReceiver,
    Rush,
    Stand,
    Strength,
)
from stemline.playbook.playbook import Settings
from stemline.playbook.said import Said
from stemline.read.name_table import Blocks, adjusts_to, fact_key, one_subject_each
from stemline.read.read_duties import NOBODYS, read_duty, read_rush
from stemline.read.read_faces import read_faces
from stemline.read.read_guards import clashes, read_guard, read_looks
from stemline.read.read_stands import read_stands
from stemline.read.stunts import behind_nobody
from stemline.read.words import Misread, Words, one_phrase, string_of
from stemline.source import Span
from stemline.syntax.tree import Block, Fact, Phrase, phrases

STRENGTHS = {s.value: s for s in Strength}
DUTIES = ("covers", "rushes")
"""Both say what a defender does on a pass, so a child's line of either replaces its parent's."""

_NOT_DEEP = 8.0
"""Yards off the line up to which a man may take the edge. Common practice."""
_WORDS = tuple(look.value for look in LookWord)


def read_look(
    block: Block, blocks: Blocks, settings: Settings, letters: Mapping[str, str] = NOBODYS
) -> tuple[LookDef, tuple[Diagnostic, ...]]:
    """The look of a block, with what is wrong in it; ``letters`` are the offence's men."""
    reader = _LookReader(settings.code.receivers, blocks.names("formation"), letters)
    name = block.name
    if name.text.casefold() in _WORDS:
        reader.found.append(E487(name=name.text).at(name.span))
    if not blocks.is_broken(block):
        reader.found += _placed_twice(block, blocks)
    reader.read_all(_facts(block, blocks))
    part = blocks.is_parent(block) and reader.is_part(
        int(settings.code.players.value), together=blocks.is_parent(block, together=True)
    )
    if not blocks.is_broken(block, reader.found):
        reader.check(part=part)
        reader.found += _contain_left(block, blocks, reader)
    broken = blocks.is_broken(block, reader.found)
    return replace(reader.look(name, broken), part=part), tuple(reader.found)


def _placed_twice(block: Block, blocks: Blocks) -> Iterator[Diagnostic]:
    """Lines of two parents on one thing, which the look does not settle itself."""
    own = {_thing(fact) for fact in one_subject_each(block.facts)}
    first: dict[tuple[str, str], tuple[str, Fact]] = {}
    names = block.joined("extends")
    for name, parent in zip(names, blocks.parents(block), strict=False):
        for fact in blocks.facts(parent):
            key = _thing(fact)
            if key in own or not fact.subject:
                continue
            other, before = first.setdefault(key, (parent.name.text, fact))
            if other != parent.name.text:
                man = fact.subject[0].text
                told = E497(man=man, first=other, second=parent.name.text, what=fact.key)
                yield told.at(name.span, related=(Related(before.span, f"{other} says it here"),))


def _contain_left(block: Block, blocks: Blocks, reader: _LookReader) -> Iterator[Diagnostic]:
    """Who has contain in the look that this one extends and comes inside in this one, where nobody
    else has it."""
    own = {f.subject[0].text: f for f in one_subject_each(block.facts) if f.key == "rushes"}
    if not own:
        return
    before = {
        fact.subject[0].text: read_rush(fact.value, fact.span).tasks[0]
        for parent in blocks.parents(block)
        for fact in blocks.facts(parent)
        if fact.key == "rushes" and fact.subject[0].text in own and fact.guard is None
    }
    for man, fact in own.items():
        had, rushes = (
            before.get(man),
            [t for one in reader.duties.get(man, ()) for t in one.value.tasks],
        )
        comes = [task for task in rushes if isinstance(task, Rush) and task.gap is not None]
        if not isinstance(had, Rush) or had.gap is not None or had.side is None or not comes:
            continue
        if not reader.contains(had.side):
            yield W429(man=man, look=block.name.text, who=reader.outside(had.side, man),
                       side=had.side.value).at(fact.span)  # fmt: skip


def _thing(fact: Fact) -> tuple[str, str]:
    """What a line settles: a man's place, or what he does."""
    key, subject = fact_key(fact)
    return ("does" if key in DUTIES else key), subject


def read_facts(
    name: Phrase, facts: Iterable[Fact], receivers: int
) -> tuple[LookDef, tuple[Diagnostic, ...]]:
    """The look of a block that stands by itself; ``receivers`` are the offence's, to count by."""
    reader = _LookReader(receivers)
    reader.read_all(facts)
    return reader.look(name, broken=False), tuple(reader.found)


def _facts(block: Block, blocks: Blocks) -> list[Fact]:
    """The block's lines and those it takes over; a man's duty is replaced as a whole."""
    lineage = [block, *blocks.ancestors(block)]
    nearness = {f.span: n for n, b in reversed(list(enumerate(lineage))) for f in b.facts}
    facts = blocks.facts(block)
    nearest_duty: dict[str, int] = {}
    for fact in facts:
        if fact.key in DUTIES:
            label, near = _man_of(fact), nearness[fact.span]
            nearest_duty[label] = min(near, nearest_duty.get(label, near))
    return [f for f in facts if f.key not in DUTIES or nearness[f.span] == nearest_duty[_man_of(f)]]


def _man_of(fact: Fact) -> str:
    """Whose line it is; one on a motion is by itself."""
    return fact.subject[0].text.casefold() + adjusts_to(fact)


class _LookReader:
    """Reads a look's lines one after another."""

    def __init__(
        self,
        receivers: int,
        formations: Sequence[str] = (),
        letters: Mapping[str, str] = NOBODYS,
    ) -> None:
        self.letters = letters
        self.receivers = receivers
        self.formations = formations
        self.faces: dict[str, tuple[FacedSet, ...]] = {"only": (), "never": ()}
        self.shown: tuple[LookWord, ...] = ()
        self.found: list[Diagnostic] = []
        self.says: list[str] = []
        self.strength = Strength.PASSING
        self.said: Span | None = None
        self.stands: dict[str, list[Said[tuple[Stand, ...]]]] = {}
        self.duties: dict[str, list[Said[Choices]]] = {}
        self.man_says: dict[str, list[str]] = {}

    def read_all(self, facts: Iterable[Fact]) -> None:
        # Where each stands before what he does: `flat` alone is the one on his side.
        for fact in sorted(facts, key=lambda fact: fact.key in DUTIES):
            try:
                self.read(fact)
            except Misread as miss:
                self.found.append(miss.diagnostic)

    def look(self, name: Phrase, broken: bool) -> LookDef:
        """What was read, under its name."""
        return LookDef(
            name=name.text,
            says=tuple(self.says),
            span=name.span,
            broken=broken,
            strength=self.strength,
            stands={label: tuple(said) for label, said in self.stands.items()},
            duties={label: tuple(said) for label, said in self.duties.items()},
            man_says={label: tuple(said) for label, said in self.man_says.items()},
            only_for=self.faces["only"],
            never_for=self.faces["never"],
            shown=self.shown,
        )

    def read(self, fact: Fact) -> None:
        match fact.key:
            case "say":
                self.says.append(string_of(fact.value, fact.span))
            case "strength":
                self._strength(fact)
            case "only" | "never":
                self.faces[fact.key] += read_faces(fact, self.formations, self.receivers)
            case "shows":
                self._shows(fact)
            case "says":
                text = string_of(fact.value, fact.span)
                self.man_says.setdefault(_label(fact), []).append(text)
            case "at" | "in":
                guard = read_guard(fact.guard, self.receivers, looks=False, moves=True)
                stands = read_stands(fact.value, fact.span)
                if fact.key == "in" and not isinstance(stands[0].where, AtTechnique | InGap):
                    where = ", ".join(p.text for p in phrases(fact.value))
                    man = fact.subject[0].text
                    raise Misread(E405(man=man, place=where).at(fact.span))
                self.stands.setdefault(_label(fact), []).append(Said(stands, guard, fact.span))
            case _:
                guard = read_guard(fact.guard, self.receivers, looks=False, moves=True)
                stands = tuple(s for said in self.stands.get(_label(fact), ()) for s in said.value)
                duty = (
                    read_duty(fact.value, fact.span, stands, self.letters)
                    if fact.key == "covers"
                    else read_rush(fact.value, fact.span)
                )
                self.duties.setdefault(_label(fact), []).append(Said(duty, guard, fact.span))

    def contains(self, side: LookSide) -> bool:
        """Whether somebody has contain on a side, by its name or as the one where he stands."""
        for label, said in self.duties.items():
            stands = self.stands.get(label, ())
            own = stands[0].value[0].side if stands else None
            for task in (task for one in said for task in one.value.tasks):
                if isinstance(task, Rush) and task.gap is None and (task.side or own) is side:
                    return True
        return False

    def outside(self, side: LookSide, man: str) -> str:
        """Who could take over the edge of a side from ``man``: who stands off the line there but
        no corner, a man who hangs outside before a linebacker, by his letter."""
        there: dict[bool, str] = {}
        for label, said in self.stands.items():
            stand = said[0].value[0]
            where, deep = stand.where, stand.depth or 0.0
            backer = isinstance(where, AtTechnique) and where.name in LINEBACKERS
            corner = isinstance(where, OverReceiver) and where.number == 1
            if label == man or corner or stand.side is not side:
                continue
            if backer or 1 < deep < _NOT_DEEP:
                there.setdefault(backer, label)
        return there.get(False) or there.get(True) or "S"

    def _shows(self, fact: Fact) -> None:
        if fact.value is None:
            raise Misread(E402(what="what is seen before the snap").at(fact.span))
        shown = (*self.shown, *read_looks(fact.value))
        for word in shown:
            if word.opposite in shown:
                why = "they exclude each other"
                raise Misread(E411(guard=f"shows {word.value}", why=why).at(fact.span))
        self.shown = tuple(dict.fromkeys(shown))

    def _strength(self, fact: Fact) -> None:
        words = Words([one_phrase(fact.value, "a side", fact.span)])
        strength = STRENGTHS[words.expect(STRENGTHS, E486)]
        words.finish("a side")
        if self.said is not None and strength is not self.strength:
            other = (Related(self.said, "the other line is here"),)
            what = "which side is strong"
            raise Misread(E420(what=what).at(fact.span, related=other))
        self.strength, self.said = strength, fact.span

    def is_part(self, players: int, *, together: bool) -> bool:
        """Whether it is a coverage, whose men stand nowhere, or a front of which nobody covers,
        short of the code's ``players`` or extended ``together`` with another look. One that has
        both and a man too few is a mistake."""
        tasks = (t for said in self.duties.values() for one in said for t in one.value.tasks)
        front = all(isinstance(task, Rush) for task in tasks)
        return not self.stands or (front and (together or len(self.stands) < players))

    def check(self, *, part: bool) -> None:
        """What only the whole block shows: lines that clash, men with a job and no place, unless
        it is but a ``part`` of others."""
        for label, stands in self.stands.items():
            self.found += clashes(stands, self.receivers, f"where {label} stands")
        if not part:
            self.found += behind_nobody(self.stands, self.duties)
        for label, duties in self.duties.items():
            self.found += clashes(duties, self.receivers, f"what {label} does")
        spans = {label: said[0].span for label, said in self.duties.items()}
        for label, span in spans.items():
            if label not in self.stands and not part:
                self.found.append(E495(man=label).at(span))


def _label(fact: Fact) -> str:
    subject = fact.subject[0]
    if len(subject.atoms) != 1 or len(subject.text) > 2:
        raise Misread(E325(found=subject.text).at(subject.span))
    return subject.text
