"""Trees → a `Playbook`: every block read, all mistakes collected."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from stemline.diagnostics.model import Diagnostic, Related, diagnose
from stemline.diagnostics.nearest import nearest
from stemline.football.codes import CODES
from stemline.football.players import Position
from stemline.football.routes import LIBRARY
from stemline.football.strokes import Decide, Route, Stroke
from stemline.resolve.definitions import (
    Body,
    Concept,
    Dress,
    Formation,
    MotionDef,
    Move,
    Person,
    Place,
    Playbook,
    Run,
    Said,
    Settings,
    Tag,
)
from stemline.resolve.names import Blocks, name_key
from stemline.resolve.read_concepts import Scope, read_body, read_decide, subject_name
from stemline.resolve.read_dresses import Known, read_dress
from stemline.resolve.read_guards import clashes, read_guard
from stemline.resolve.read_places import read_depth, read_mover, read_place
from stemline.resolve.read_routes import read_strokes
from stemline.resolve.words import Misread, Words, one_phrase, string_of
from stemline.source import Span
from stemline.syntax.tree import Block, Document, Fact, Linked, Mark, Phrase, items

VERSION = 1
GUN_DEPTH = 5.0
"""Depth of the quarterback in the gun where a formation does not say. Common practice."""
RUNNING_SPEED = 6.0
"""Yards a second of a man in motion at the snap, where nothing is said. Common practice."""
_POSITIONS = {p.value: p for p in Position}
_PICTURES = ("middle", "strength to field", "strength to boundary")
_HOUSE = ("numbers", "gun")


def read_playbook(
    documents: Sequence[Document], mistakes: Sequence[Diagnostic], folder: str
) -> tuple[Playbook | None, tuple[Diagnostic, ...]]:
    """The playbook that the documents make, as far as it could be read.

    ``mistakes`` are the parser's, so that a block with an unread line is known to be broken.

    None where there is no playbook block with a known code: without it nothing can be counted.
    """
    blocks = Blocks(documents, mistakes)
    found = blocks.found + blocks.check_extends()
    settings = _settings(blocks, folder, found)
    if settings is None:
        return None, tuple(found)
    return _Reader(blocks, settings, found).playbook(), tuple(found)


def _settings(blocks: Blocks, folder: str, found: list[Diagnostic]) -> Settings | None:
    books = blocks.of("playbook")
    if not books:
        found.append(diagnose("E305", Span(folder, 0, 0, 0)))
        return None
    for extra in books[1:]:
        first = (Related(books[0].name.span, "the first playbook block is here"),)
        found.append(diagnose("E306", extra.name.span, related=first))
    book = books[0]
    if not any(f.key == "code" for f in book.facts):
        found.append(diagnose("E307", book.name.span, choices=", ".join(CODES)))
        return None
    values: dict[str, str] = {}
    house: dict[str, float] = {}
    says: dict[str, list[str]] = {"say": [], "caution": []}
    for fact in book.facts:
        try:
            _setting(fact, values, house, says)
        except Misread as miss:
            found.append(miss.diagnostic)
            if fact.key == "code" and miss.diagnostic.nearest:
                # Read as the code that was meant, so that the rest of the book is looked at.
                values["code"] = miss.diagnostic.nearest[0]
    if "code" not in values:
        return None
    code = CODES[values["code"]]
    return Settings(
        name=book.name.text,
        code=code,
        season=values.get("season", ""),
        numbers=house.get("numbers", code.numbers_from_sideline.value),
        gun_depth=house.get("gun", GUN_DEPTH),
        right_handed=values.get("quarterback", "right") == "right",
        picture=values.get("picture", "middle"),
        sections=tuple(_sections(book, found)),
        says=tuple(says["say"]),
        cautions=tuple(says["caution"]),
        span=book.span,
    )


def _sections(book: Block, found: list[Diagnostic]) -> Iterator[tuple[str, Span]]:
    """The families of the `sections` lines, in their order."""
    for fact in book.facts:
        if fact.key == "sections":
            for item in items(fact.value, Mark.AND):
                if isinstance(item, Phrase):
                    yield item.text, item.span
                else:
                    found.append(diagnose("E402", item.span, what="families parted by commas"))


def _setting(
    fact: Fact, values: dict[str, str], house: dict[str, float], says: dict[str, list[str]]
) -> None:
    if fact.key == "sections":
        return
    if fact.key in says:
        says[fact.key].append(string_of(fact.value, fact.span))
        return
    if fact.key == "house":
        link = fact.value.link("is") if isinstance(fact.value, Linked) else None
        head = fact.value.head if isinstance(fact.value, Linked) else None
        name = Words([one_phrase(head, "a house figure", fact.span)]).expect(_HOUSE, "E322")
        number = Words([one_phrase(link, "yards", fact.span)]).take_number()
        if number is None:
            raise Misread(diagnose("E441", fact.span, found="nothing"))
        house[name] = number
        return
    words = Words([one_phrase(fact.value, "one value", fact.span)])
    match fact.key:
        case "version":
            number = words.take_number()
            if number != VERSION:
                raise Misread(
                    diagnose(
                        "E308", words.atoms[0].span, current=VERSION, found=words.atoms[0].text
                    )
                )
            values["version"] = str(VERSION)
        case "code":
            values["code"] = words.expect(CODES, "E309")
            words.finish("a rule code")
        case "quarterback":
            values["quarterback"] = words.expect(("right", "left"), "E323")
        case "picture":
            values["picture"] = words.expect(_PICTURES, "E324")
        case _:
            values[fact.key] = words.rest


class _Reader:
    """Reads one kind of block after another; what was read before is known to the next."""

    def __init__(self, blocks: Blocks, settings: Settings, found: list[Diagnostic]) -> None:
        self.blocks = blocks
        self.settings = settings
        self.found = found
        self.receivers = settings.code.receivers
        self.broken_routes: set[str] = set()

    def playbook(self) -> Playbook:
        people = self._people()
        letters = self._letters(people)
        routes = self._routes()
        formations = {
            name_key(b.name): self._formation(b, letters) for b in self.blocks.of("formation")
        }
        motions = {name_key(b.name): self._motion(b, letters) for b in self.blocks.of("motion")}
        concepts = {name_key(b.name): self._concept(b, routes) for b in self.blocks.of("concept")}
        tags = self._tags(routes, concepts)
        return Playbook(
            settings=self.settings,
            people=people,
            formations=formations,
            motions=motions,
            routes=routes,
            concepts=concepts,
            tags=tags,
            dresses=self._dresses(concepts, tags),
        )

    def _broken(self, block: Block, before: int) -> bool:
        """Whether the parser, or the reading since ``before``, could not read a line of it."""
        return self.blocks.is_broken(block) or any(d.is_error for d in self.found[before:])

    # People and formations.

    def _people(self) -> dict[str, Person]:
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

    def _letters(self, people: Mapping[str, Person]) -> tuple[str, ...]:
        """Every letter a line may name: the personnel, and whoever a formation lines up."""
        letters = dict.fromkeys(people)
        for block in self.blocks.of("formation"):
            for fact in block.facts:
                if fact.key == "at":
                    letters.update(dict.fromkeys(p.text for p in fact.subject))
        return tuple(letters)

    def _formation(self, block: Block, letters: tuple[str, ...]) -> Formation:
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

    def _motion(self, block: Block, letters: tuple[str, ...]) -> MotionDef:
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

    # Routes, concepts, tags.

    def _routes(self) -> dict[str, Route]:
        routes = dict(LIBRARY)
        for block in self.blocks.of("route"):
            name = name_key(block.name)
            strokes: list[Stroke] = []
            depth: float | None = None
            decides: Decide | None = None
            before = len(self.found)
            for fact in self.blocks.facts(block):
                try:
                    if fact.key == "depth":
                        words = Words([one_phrase(fact.value, "yards", fact.span)])
                        depth = words.take_number()
                        if depth is None:
                            raise words.miss("E441")
                    elif fact.key == "stroke" and fact.value is not None:
                        strokes += read_strokes(fact.value)
                    elif fact.key == "decides":
                        decides = read_decide(fact)
                except Misread as miss:
                    self.found.append(miss.diagnostic)
            known = LIBRARY.get(name)
            if not strokes and known is None and not self._broken(block, before):
                self.found.append(diagnose("E446", block.name.span, name=block.name.text))
            if self._broken(block, before):
                self.broken_routes.add(name)
            base = known or Route(name, 0, (), taught=depth is not None)
            routes[name] = replace(
                base,
                name=block.name.text.casefold(),
                depth=base.depth if depth is None else depth,
                strokes=tuple(strokes) or base.strokes,
                taught=depth is not None or base.taught,
                decides=decides,
                source="this playbook",
            )
        return routes

    def _scope(self, blocks: Sequence[Block], routes: Mapping[str, Route]) -> Scope:
        roles: dict[str, None] = {}
        spots: dict[str, None] = {}
        for block in blocks:
            for fact in block.facts:
                if fact.key == "is":
                    roles.update(dict.fromkeys(subject_name(p) for p in fact.subject))
                head = fact.value.head if isinstance(fact.value, Linked) else None
                if fact.key == "spot" and isinstance(head, Phrase):
                    spots[subject_name(head)] = None
        return Scope(self.receivers, routes, tuple(roles), tuple(spots))

    def _lineage(self, block: Block) -> list[Block]:
        return [*reversed(self.blocks.ancestors(block)), block]

    def _concept(self, block: Block, routes: Mapping[str, Route]) -> Concept:
        facts = self.blocks.facts(block)
        before = len(self.found)
        body, _, found = read_body(facts, self._scope(self._lineage(block), routes))
        self.found += found
        broken = self._broken(block, before) or self._runs_broken(body)
        for role, said in body.rules.items():
            if role not in body.jobs and not body.swaps and not broken:
                self.found.append(diagnose("E471", said[0].span, role=role))
        broken = broken or self._broken(block, before)
        family = next((f for f in facts if f.key == "family"), None)
        title = _file_title(block) if family is None else _family(family)
        return Concept(block.name.text, title, body, block.name.span, broken)

    def _runs_broken(self, body: Body) -> bool:
        """Whether a role runs a route of this playbook that could not be read."""
        jobs = (said.value for told in body.jobs.values() for said in told)
        return any(isinstance(j, Run) and j.route.name in self.broken_routes for j in jobs)

    def _tags(
        self, routes: Mapping[str, Route], concepts: Mapping[str, Concept]
    ) -> dict[tuple[str, str], Tag]:
        tags: dict[tuple[str, str], Tag] = {}
        for block in self.blocks.of("tag"):
            owner = block.join("for")
            if owner is None:
                continue
            before = len(self.found)
            meant = self._meant(owner, concepts)
            if meant is None:
                continue
            concept = self.blocks.by_key["concept", meant, ""]
            scope = self._scope([*self._lineage(concept), block], routes)
            body, keeps, found = read_body(block.facts, scope)
            self.found += found
            broken = self._broken(block, before) or self._runs_broken(body)
            tag = Tag(block.name.text, meant, body, keeps, block.name.span, broken)
            tags.setdefault((meant, name_key(block.name)), tag)
        return tags

    def _meant(self, name: Phrase, concepts: Mapping[str, Concept]) -> str | None:
        """The key of the concept that a tag or a dress-up names.

        A misspelt one is reported and read as the nearest, so that its lines are looked at and
        what hangs on them is known; nothing is called by it.
        """
        if name_key(name) in concepts:
            return name_key(name)
        near = nearest(name.text, [c.name for c in concepts.values()])
        self.found.append(
            diagnose("E310", name.span, nearest=near, kind="concept", found=name.text)
        )
        return near[0].casefold() if near else None

    def _dresses(
        self, concepts: Mapping[str, Concept], tags: Mapping[tuple[str, str], Tag]
    ) -> tuple[Dress, ...]:
        dresses = []
        for block in self.blocks.of("dress"):
            concept = self._meant(block.name, concepts)
            if concept is None:
                continue
            known = Known(
                tuple(self.blocks.names("formation")),
                tuple(self.blocks.names("motion")),
                tuple(t.name for (owner, _), t in tags.items() if owner == concept),
            )
            broken = self.blocks.is_broken(block)
            dress, found = read_dress(block, concept, block.facts, known, broken)
            self.found += found
            if concept != name_key(block.name):
                dress = replace(dress, formations=(), never=(), only=(), aliases=())
            dresses.append(dress)
        return tuple(dresses)


def _family(fact: Fact) -> str:
    return string_of(fact.value, fact.span)


def _file_title(block: Block) -> str:
    """The family of a concept that names none: its file's name, as a title."""
    stem = block.span.source.replace("\\", "/").rsplit("/", 1)[-1].rsplit(".", 1)[0]
    return stem.replace("-", " ").replace("_", " ").title()
