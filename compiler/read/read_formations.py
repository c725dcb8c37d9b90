"""Who is on the field and where: personnel and formations."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from stemline.diagnostics.catalogue.exchange_lines import E799
from stemline.diagnostics.catalogue.football import E402, E420, E441, E458, E501
from stemline.diagnostics.catalogue.legality import E514, E515, E518, E519, E550, E554
from stemline.diagnostics.catalogue.names import E310, E323, E325, E326
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.diagnostics.in_words import either
from stemline.diagnostics.nearest import nearest
from stemline.football.line import ENDINGS, KNOWN_LINEMEN, LEAST_SPLIT, MOST_SPLIT, SNAPPER
from stemline.football.players import FASTEST_FORTY, HIGHEST_NUMBER, SLOWEST_FORTY, Position
from stemline.playbook.formations import Formation, LineDef, MotionDef, Person
from stemline.playbook.places import Place
from stemline.playbook.playbook import Settings
from stemline.playbook.said import Said, SideWord
from stemline.read.name_table import Blocks, name_key
from stemline.read.read_guards import clashes, read_guard
from stemline.read.read_motions import read_motion
from stemline.read.read_places import read_place
from stemline.read.words import Misread, Words, one_phrase, string_of
from stemline.source import Span
from stemline.syntax.tree import AtomKind, Block, Fact, Mark, Phrase, items

_POSITIONS = {p.value: p for p in Position}


class Formations:
    """Reads the blocks that put men on the field; ``found`` collects what is wrong with them."""

    def __init__(self, blocks: Blocks, settings: Settings, found: list[Diagnostic]) -> None:
        self.blocks = blocks
        self.settings = settings
        self.found = found
        self.receivers = settings.code.receivers

    def _broken(self, block: Block, before: int) -> bool:
        return self.blocks.is_broken(block, self.found[before:])

    # Personnel.

    def people(self) -> dict[str, Person]:
        people: dict[str, Person] = {}
        for block in self.blocks.of("personnel"):
            for fact in block.facts:
                if fact.key != "is":
                    continue
                try:
                    for subject in fact.subject:
                        self._join(people, self._person(fact, subject))
                except Misread as miss:
                    self.found.append(miss.diagnostic)
        return people

    def _join(self, people: dict[str, Person], person: Person) -> None:
        """A letter is one position in every group; what is said of him once holds for all."""
        first = people.setdefault(person.letter, person)
        for what, one, two in (
            (f"what {person.letter} is", first.position, person.position),
            (f"the number of {person.letter}", first.number, person.number),
            (f"the forty of {person.letter}", first.forty, person.forty),
        ):
            if None not in (one, two) and one is not two and one != two:
                other = (Related(first.span, "the other line is here"),)
                raise Misread(E420(what=what).at(person.span, related=other))
        numbered = first.number is None and person.number is not None
        people[person.letter] = replace(
            person if numbered else first,
            number=person.number if numbered else first.number,
            forty=person.forty if first.forty is None else first.forty,
        )

    def _person(self, fact: Fact, subject: Phrase) -> Person:
        letter = _letter(subject)
        phrases = [one_phrase(v, "a position", fact.span) for v in items(fact.value, Mark.AND)]
        words = Words(phrases[:1])
        position = words.expect(_POSITIONS, E326)
        words.finish("a position")
        hand = "right" if self.settings.right_handed else "left"
        number: int | None = None
        forty: float | None = None
        for phrase in phrases[1:]:
            words = Words([phrase])
            if words.take_word("forty"):
                forty = _forty(words)
                continue
            jersey = words.take(AtomKind.NUMBER)
            if jersey is not None:
                number = _jersey(jersey.number, jersey.span, jersey.text)
                words.finish("a number")
                continue
            hand = words.expect(("right", "left"), E323)
            words.take_word("hand", "handed")
            words.finish("a hand")
        if number is not None and len(fact.subject) > 1:
            raise Misread(E519(found=f"one number for {len(fact.subject)}").at(fact.span))
        return Person(letter, _POSITIONS[position], hand == "right", fact.span, number, forty)

    def letters(self, people: Mapping[str, Person]) -> tuple[str, ...]:
        """Every letter a line may name: the personnel, and whoever a formation lines up."""
        letters = dict.fromkeys(people)
        for block in self.blocks.of("formation"):
            for fact in block.facts:
                if fact.key == "at":
                    letters.update(dict.fromkeys(p.text for p in fact.subject))
        return tuple(letters)

    # Formations.

    def formation(self, block: Block, letters: tuple[str, ...]) -> Formation:
        men: dict[str, list[Said[Place]]] = {}
        says: list[str] = []
        man_says: dict[str, tuple[str, ...]] = {}
        line = _Line()
        people = snap_to = ""
        before = len(self.found)
        for fact in self.blocks.facts(block):
            try:
                if fact.key == "at":
                    for subject in fact.subject:
                        self._line_up(fact, subject, letters, men)
                    continue
                if fact.guard is not None:
                    raise Misread(E514(verb=fact.key).at(fact.guard.span))
                match fact.key:
                    case "say":
                        says.append(string_of(fact.value, fact.span))
                    case "says":
                        for subject in fact.subject:
                            letter, text = _letter(subject), string_of(fact.value, fact.span)
                            man_says[letter] = (*man_says.get(letter, ()), text)
                    case "line":
                        line.labels(fact, letters)
                    case "splits":
                        line.splits(fact)
                    case "people":
                        people = self._group(fact)
                    case "snap":
                        snap_to = _snapped_to(fact, letters)
            except Misread as miss:
                self.found.append(miss.diagnostic)
        self.found += _mixed(block.name.text, men)
        broken = self._broken(block, before)
        for letter, said in men.items():
            self.found += clashes(said, self.receivers, f"where {letter} lines up")
        table = {letter: tuple(said) for letter, said in men.items()}
        made = Formation(
            block.name.text, table, tuple(says), block.name.span, broken, line.made(), people,
            man_says, snap_to,
        )  # fmt: skip
        if snap_to and snap_to not in men:
            self.found.append(E501(man=snap_to, formation=made.name).at(made.span))
        self._check_people(made)
        return made

    def _line_up(
        self,
        fact: Fact,
        subject: Phrase,
        letters: tuple[str, ...],
        men: dict[str, list[Said[Place]]],
    ) -> None:
        letter = _letter(subject)
        guard = read_guard(fact.guard, self.receivers, looks=False)
        place = read_place(fact.value, fact.span, letters)
        men.setdefault(letter, []).append(Said(place, guard, fact.span))

    def _group(self, fact: Fact) -> str:
        """The personnel that a `people` line names, as its own block spells it."""
        phrase = one_phrase(fact.value, "the name of a personnel", fact.span)
        names = {name_key(b.name): b.name.text for b in self.blocks.of("personnel")}
        if name_key(phrase) not in names:
            near = nearest(phrase.text, names.values())
            told = E310(kind="personnel", found=phrase.text, choices=either(names.values()))
            raise Misread(told.at(phrase.span, nearest=near))
        return names[name_key(phrase)]

    def _check_people(self, formation: Formation) -> None:
        """Everybody whom the formation lines up is in the personnel that it names, and everybody
        it speaks to stands in it."""
        line = formation.line.labels if formation.line is not None else ()
        standing = {*formation.men, *line, *self.settings.code.line, SNAPPER}
        for letter in formation.man_says:
            if letter not in standing:
                self.found.append(E501(man=letter, formation=formation.name).at(formation.span))
        group = next(
            (b for b in self.blocks.of("personnel") if b.name.text == formation.people), None
        )
        if group is None:
            return
        named = {p.text for f in group.facts if f.key == "is" for p in f.subject}
        lined = {letter: said[0].span for letter, said in formation.men.items()}
        if formation.line is not None:
            lined |= dict.fromkeys(line, formation.line.span)
        exempt = {*KNOWN_LINEMEN, *self.settings.code.line, SNAPPER}
        for letter, span in lined.items():
            if letter not in named | exempt:
                related = (Related(group.name.span, "this personnel"),)
                self.found.append(
                    E518(man=letter, people=formation.people).at(span, related=related)
                )

    # Motions.

    def motion(self, block: Block, letters: tuple[str, ...]) -> MotionDef:
        before = len(self.found)
        lines = (f for b in self.blocks.of("formation") for f in b.facts if f.key == "line")
        linemen = (p.text for f in lines for p in items(f.value, Mark.AND) if isinstance(p, Phrase))
        movers = tuple(dict.fromkeys((*letters, *self.settings.code.line, *linemen, SNAPPER)))
        made, found = read_motion(block, self.blocks.facts(block), letters, movers)
        self.found += found
        return MotionDef(
            block.name.text,
            made.moves,
            made.speed,
            block.name.span,
            self._broken(block, before),
            made.says,
        )


class _Line:
    """What `line` and `splits` say of the interior line."""

    def __init__(self) -> None:
        self._labels: tuple[str, ...] = ()
        self._split: float | None = None
        self._span: Span | None = None

    def labels(self, fact: Fact, letters: tuple[str, ...]) -> None:
        """Letters of the personnel, or labels whose last character says what a lineman is."""
        labels: list[str] = []
        for item in items(fact.value, Mark.AND):
            phrase = one_phrase(item, "linemen parted by commas", fact.span)
            label = _letter(phrase)
            if label not in (*letters, SNAPPER) and label[-1] not in ENDINGS:
                raise Misread(E515(found=label).at(phrase.span))
            if label in labels:
                raise Misread(E420(what=f"where {label} stands").at(phrase.span))
            labels.append(label)
        self._labels, self._span = tuple(labels), fact.span

    def splits(self, fact: Fact) -> None:
        words = Words([one_phrase(fact.value, "yards", fact.span)])
        yards = words.take_number()
        if yards is None:
            raise words.miss(E441)
        words.finish("the splits of the line")
        if not LEAST_SPLIT <= yards <= MOST_SPLIT:
            raise Misread(
                E550(yards=f"{yards:g}", least=LEAST_SPLIT, most=f"{MOST_SPLIT:g}").at(fact.span)
            )
        self._split = yards
        self._span = self._span or fact.span

    def made(self) -> LineDef | None:
        if self._span is None:
            return None
        return LineDef(self._labels, self._split, self._span)


def _letter(subject: Phrase) -> str:
    if len(subject.atoms) != 1 or len(subject.text) > 2:
        raise Misread(E325(found=subject.text).at(subject.span))
    return subject.text


def _snapped_to(fact: Fact, letters: tuple[str, ...]) -> str:
    """The letter of who takes the snap."""
    words = Words([one_phrase(fact.value, "`to` and a letter", fact.span)])
    if not words.take_word("to") or words.done:
        raise Misread(E402(what="`to` and the letter of who takes the snap").at(words.here))
    letter = words.expect(letters, E799)
    words.finish("the man who takes the snap")
    return letter


def _forty(words: Words) -> float:
    """Seconds for 40 yards, after the word `forty`."""
    start = words.last
    seconds = words.take_number()
    if seconds is None or not words.done or not FASTEST_FORTY <= seconds <= SLOWEST_FORTY:
        found = " ".join(a.text for a in words.atoms[1:]) or "nothing"
        least, most = f"{FASTEST_FORTY:g}", f"{SLOWEST_FORTY:g}"
        at = start.to(words.atoms[-1].span)
        raise Misread(E554(found=found, least=least, most=most).at(at))
    return seconds


_BY_FIELD = {SideWord.FIELD: SideWord.CALL, SideWord.BOUNDARY: SideWord.AWAY}


def _mixed(formation: str, men: Mapping[str, Sequence[Said[Place]]]) -> list[Diagnostic]:
    """The first man who stands by the field where others stand by the call: called to one side
    such men change places, or stand on each other, from one hash to the other."""
    by_field = [
        (letter, said.span, said.value.side)
        for letter, places in men.items()
        for said in places
        if said.value.side in _BY_FIELD
    ]
    by_call = [
        letter
        for letter, places in men.items()
        if any(said.value.side in _BY_FIELD.values() for said in places)
    ]
    if not by_field or not by_call:
        return []
    man, span, side = by_field[0]
    line = f"{man} at {_BY_FIELD[side].value}"
    return [E458(formation=formation, man=man, other=by_call[0], line=line).at(span)]


def _jersey(number: float, span: Span, text: str) -> int:
    if not 0 <= number <= HIGHEST_NUMBER or number != int(number):
        raise Misread(E519(found=text).at(span))
    return int(number)
