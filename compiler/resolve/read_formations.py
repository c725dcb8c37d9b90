"""Who is on the field and where: personnel, formations and motions."""

from __future__ import annotations

from collections.abc import Mapping

from stemline.diagnostics.model import Diagnostic, Related, diagnose
from stemline.football.players import Position
from stemline.resolve.definitions import (
    Formation,
    MotionDef,
    Move,
    Person,
    Place,
    Said,
    Settings,
)
from stemline.resolve.names import Blocks
from stemline.resolve.read_guards import clashes, read_guard
from stemline.resolve.read_places import read_depth, read_mover, read_place
from stemline.resolve.words import Misread, Words, one_phrase, string_of
from stemline.syntax.tree import Block, Fact, Mark, Phrase, items

RUNNING_SPEED = 6.0
"""Yards a second of a man in motion at the snap, where nothing is said. Common practice."""
_POSITIONS = {p.value: p for p in Position}


class Formations:
    """Reads the blocks that put men on the field; ``found`` collects what is wrong with them."""

    def __init__(self, blocks: Blocks, settings: Settings, found: list[Diagnostic]) -> None:
        self.blocks = blocks
        self.settings = settings
        self.found = found
        self.receivers = settings.code.receivers

    def _broken(self, block: Block, before: int) -> bool:
        return self.blocks.is_broken(block) or any(d.is_error for d in self.found[before:])

    def people(self) -> dict[str, Person]:
        people: dict[str, Person] = {}
        for block in self.blocks.of("personnel"):
            for fact in block.facts:
                if fact.key != "is":
                    continue
                try:
                    for subject in fact.subject:
                        person = self._person(fact, subject)
                        first = people.setdefault(person.letter, person)
                        if first is not person and first.position is not person.position:
                            other = (Related(first.span, "the other line is here"),)
                            what = f"what {person.letter} is"
                            raise Misread(diagnose("E420", fact.span, related=other, what=what))
                except Misread as miss:
                    self.found.append(miss.diagnostic)
        return people

    def _person(self, fact: Fact, subject: Phrase) -> Person:
        if len(subject.atoms) != 1 or len(subject.text) > 2:
            raise Misread(diagnose("E325", subject.span, found=subject.text))
        phrases = [one_phrase(v, "a position", fact.span) for v in items(fact.value, Mark.AND)]
        words = Words(phrases[:1])
        position = words.expect(_POSITIONS, "E326")
        words.finish("a position")
        hand = "right" if self.settings.right_handed else "left"
        for phrase in phrases[1:]:
            words = Words([phrase])
            hand = words.expect(("right", "left"), "E323")
            words.take_word("hand", "handed")
            words.finish("a hand")
        return Person(subject.text, _POSITIONS[position], hand == "right", fact.span)

    def letters(self, people: Mapping[str, Person]) -> tuple[str, ...]:
        """Every letter a line may name: the personnel, and whoever a formation lines up."""
        letters = dict.fromkeys(people)
        for block in self.blocks.of("formation"):
            for fact in block.facts:
                if fact.key == "at":
                    letters.update(dict.fromkeys(p.text for p in fact.subject))
        return tuple(letters)

    def formation(self, block: Block, letters: tuple[str, ...]) -> Formation:
        men: dict[str, list[Said[Place]]] = {}
        says: list[str] = []
        before = len(self.found)
        for fact in self.blocks.facts(block):
            try:
                if fact.key == "say":
                    says.append(string_of(fact.value, fact.span))
                elif fact.key == "at":
                    for subject in fact.subject:
                        self._line_up(fact, subject, letters, men)
                elif fact.key in ("line", "people", "says"):
                    raise Misread(diagnose("E403", fact.span, verb=fact.key))
            except Misread as miss:
                self.found.append(miss.diagnostic)
        broken = self._broken(block, before)
        for letter, said in men.items():
            self.found += clashes(said, self.receivers, f"where {letter} lines up")
        table = {letter: tuple(said) for letter, said in men.items()}
        return Formation(block.name.text, table, tuple(says), block.name.span, broken)

    def _line_up(
        self,
        fact: Fact,
        subject: Phrase,
        letters: tuple[str, ...],
        men: dict[str, list[Said[Place]]],
    ) -> None:
        if len(subject.atoms) != 1 or len(subject.text) > 2:
            raise Misread(diagnose("E325", subject.span, found=subject.text))
        guard = read_guard(fact.guard, self.receivers, looks=False)
        place = read_place(fact.value, fact.span, letters)
        men.setdefault(subject.text, []).append(Said(place, guard, fact.span))

    def motion(self, block: Block, letters: tuple[str, ...]) -> MotionDef:
        moves: list[Move] = []
        speed = 0.0
        before = len(self.found)
        for fact in self.blocks.facts(block):
            try:
                if fact.key == "moves":
                    moves += [self._move(fact, subject, letters) for subject in fact.subject]
                elif fact.key == "snap":
                    speed = self._snap(fact)
                elif fact.key == "starts":
                    raise Misread(diagnose("E403", fact.span, verb=fact.key))
            except Misread as miss:
                self.found.append(miss.diagnostic)
        broken = self._broken(block, before)
        return MotionDef(block.name.text, tuple(moves), speed, block.name.span, broken)

    def _move(self, fact: Fact, subject: Phrase, letters: tuple[str, ...]) -> Move:
        mover = read_mover(subject, letters)
        pieces = items(fact.value, Mark.THEN)
        first = pieces[0] if pieces else None
        if isinstance(first, Phrase) and first.atoms[0].word == "from":
            words = Words([first])
            words.take_word("from")
            depth, _ = read_depth(words)
            words.finish("a depth")
            return Move(mover, (), depth, fact.span)
        places = tuple(read_place(p, fact.span, letters) for p in pieces)
        return Move(mover, places, None, fact.span)

    def _snap(self, fact: Fact) -> float:
        words = Words([one_phrase(fact.value, "`set` or `running`", fact.span)])
        state = words.expect(("set", "running"), "E439")
        speed = words.take_number()
        words.finish("how he is at the snap")
        return 0.0 if state == "set" else speed or RUNNING_SPEED
