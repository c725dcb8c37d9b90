"""Tags, as they are written and as a call gives one man a route."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from stemline.diagnostics.catalogue.football import E472, E473
from stemline.diagnostics.catalogue.names import E301, E310, INTO_ONE
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.diagnostics.in_words import either
from stemline.diagnostics.nearest import nearest
from stemline.playbook.concepts import Body, Concept, Tag
from stemline.playbook.role_rules import ByLetter, Choice
from stemline.playbook.said import Said
from stemline.read.name_table import name_key
from stemline.read.read_any import MANY, AnyConcept, read_any
from stemline.read.read_bodies import Bodies
from stemline.read.read_concepts import read_body
from stemline.read.read_guards import read_guard
from stemline.read.read_roles import read_men
from stemline.read.read_routes import read_run
from stemline.read.words import Words
from stemline.syntax.tree import Block, Phrase


@dataclass(frozen=True)
class Tags:
    """Reads tags over the concepts that they are for."""

    bodies: Bodies
    concepts: Mapping[str, Concept]

    def written(self) -> dict[tuple[str, str], Tag]:
        """The playbook's tags by concept and name."""
        tags: dict[tuple[str, str], Tag] = {}
        for block in self.bodies.blocks.of("tag"):
            owner = block.join("for")
            if owner is None:
                continue
            if (many := read_any(owner)) is not None:
                meant = self._any(many, owner)
            else:
                one = self.meant(owner)
                meant = [one] if one is not None else []
            told: list[Diagnostic] = []
            for key in meant:
                tag, found = self._tag(block, key, alone=many is None)
                tag = replace(tag, shared=many is not None or self.bodies.blocks.has_many(block))
                told += [d for d in found if d not in told]
                first = tags.setdefault((key, name_key(block.name)), tag)
                if first is not tag and first.span != tag.span:
                    again = E301(kind="tag", name=tag.name, times="twice", instead=INTO_ONE)
                    defined = (Related(first.span, "first defined here"),)
                    told.append(again.at(block.name.span, related=defined))
            self.bodies.found.extend(told)
        return tags

    def _tag(self, block: Block, meant: str, *, alone: bool) -> tuple[Tag, list[Diagnostic]]:
        """The tag as it is for one concept; ``alone`` tells that it may name the concept's roles,
        which a tag for any concept cannot: two concepts call different men `clear`."""
        concept = self.bodies.blocks.by_key[self.concepts[meant].kind.value, meant, ""]
        lineage = self.bodies.lineage(concept) if alone else []
        own = self.bodies.scope(lineage)
        owned = tuple(role for role in own.roles if role not in own.pointed)
        scope = replace(self.bodies.scope([*lineage, block]), calls_men=True, owned=owned)
        body, keeps, found = read_body(block.facts, scope)
        before = len(self.bodies.found)
        body = self.bodies.joined(body, self.concepts[meant].body, self.concepts)
        found += self.bodies.found[before:]
        del self.bodies.found[before:]
        broken = self.bodies.blocks.is_broken(block, found) or self.bodies.runs_broken(body)
        return Tag(block.name.text, meant, body, keeps, block.name.span, broken), found

    def _any(self, said: AnyConcept, owner: Phrase) -> list[str]:
        """The keys of the concepts that `any pass but Crossers` means."""
        families = {c.family.casefold() for c in self.concepts.values()}
        if said.what not in ("call", "pass", "run", *families):
            choices = ("pass", "run", "call", *sorted({c.family for c in self.concepts.values()}))
            kind = MANY.get(said.what.split()[-1])
            near = (f"any {kind}",) if kind else nearest(said.what, choices)
            self.bodies.found.append(
                E472(found=owner.text.partition(" but ")[0], choices=either(choices)).at(
                    owner.span, nearest=near
                )
            )
            return []
        without = [self.meant(phrase) for phrase in said.but]
        return [
            key
            for key, concept in self.concepts.items()
            if key not in without
            and said.what in ("call", concept.kind_word, concept.family.casefold())
        ]

    def called_route(
        self,
        concept: str,
        letters: Sequence[str],
        tags: dict[tuple[str, str], Tag],
        said: Phrase,
    ) -> str | None:
        """The tag of a route that a call gives one man: `X runs fade` is called *X Fade*."""
        words = [atom.word for atom in said.atoms]
        if "runs" not in words[1:-1]:
            return None
        at = words.index("runs")
        who, route = Phrase(said.atoms[:at]), Phrase(said.atoms[at + 1 :])
        men: Mapping[str, Choice] = read_men(who)
        if not men and who.text in letters:
            men = {who.text: ByLetter(who.text)}
        if not men:
            raise Words([who]).miss(E473, letters)
        always = read_guard(None, self.bodies.receivers)
        job = Said(read_run(route, said.span, self.bodies.routes, ()), always, said.span)
        name = f"{_titled(who.text)} {_titled(route.text)}"
        body = Body(
            jobs=dict.fromkeys(men, (job,)),
            called={man: Said(choice, always, said.span) for man, choice in men.items()},
        )
        tag = Tag(name, concept, body, (), said.span, False)
        tags.setdefault((concept, name.casefold()), tag)
        return name.casefold()

    def meant(self, name: Phrase) -> str | None:
        """The key of the concept that a tag or a dress-up names.

        A misspelt one is reported and read as the nearest, so that its lines are looked at and
        what hangs on them is known; nothing is called by it.
        """
        if name_key(name) in self.concepts:
            return name_key(name)
        names = [c.name for c in self.concepts.values()]
        near = nearest(name.text, names)
        told = E310(kind="concept", found=name.text, choices=either(names))
        self.bodies.found.append(told.at(name.span, nearest=near))
        return near[0].casefold() if near else None


def _titled(words: str) -> str:
    return " ".join(word[:1].upper() + word[1:] for word in words.split())
