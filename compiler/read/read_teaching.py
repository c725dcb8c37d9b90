"""`signal`, `word`, `suits` and `tempo`: lines of a definition that change no play.

They are taken off their blocks before these are read (`Blocks`), so that no reader of football has
to know them.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from stemline.diagnostics.catalogue.football import E402, E420
from stemline.diagnostics.catalogue.lesson_words import E774, E775, E776, E777
from stemline.diagnostics.catalogue.weeks import E981, W981
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.football.lessons import TEMPOS, Lesson
from stemline.football.rulebook.rules import Code
from stemline.football.situations import misfits
from stemline.playbook.concepts import Tag
from stemline.read.read_situations import pieces, read_situation
from stemline.read.words import Misread, Words, one_phrase, string_of
from stemline.syntax.tree import Block, Fact, phrases

_SHOWN = {"signal": "signalled", "word": "called"}


def read_teaching(
    taught: Iterable[tuple[Block, tuple[Fact, ...]]], code: Code
) -> tuple[tuple[Lesson, ...], tuple[Diagnostic, ...]]:
    """What the lines say, a definition at a time; two things with one signal or word are told."""
    found: list[Diagnostic] = []
    made: list[Lesson] = []
    for block, facts in taught:
        one = Lesson(block.kind, block.name.text, block.name.span)
        said: dict[str, Fact] = {}
        for fact in facts:
            try:
                first = said.setdefault(fact.key, fact)
                if first is not fact and fact.key != "suits":
                    other = (Related(first.span, "the other line is here"),)
                    what = f"the {fact.key} of {one.name}"
                    raise Misread(E420(what=what).at(fact.span, related=other))
                one = _with(one, fact, code, found)
            except Misread as miss:
                found.append(miss.diagnostic)
        made.append(one)
        found += _taken(one, said, made[:-1])
    return tuple(made), tuple(found)


def with_tempos(
    tags: Mapping[tuple[str, str], Tag], taught: Iterable[Lesson]
) -> dict[tuple[str, str], Tag]:
    """The tags, each with the tempo that its lines say."""
    tempos = {one.span: one.tempo for one in taught if one.tempo}
    return {key: replace(tag, tempo=tempos.get(tag.span, "")) for key, tag in tags.items()}


def _with(one: Lesson, fact: Fact, code: Code, told: list[Diagnostic]) -> Lesson:
    match fact.key:
        case "install":
            day = next(
                (a.text for p in phrases(fact.value) for a in p.atoms if a.word != "day"), "1"
            )
            raise Misread(E777(day=day, name=one.name).at(fact.span))
        case "suits":
            said = pieces(fact.value)
            if not said:
                raise Misread(E402(what="a situation").at(fact.span))
            found = tuple(read_situation([each]) for each in said)
            for situation, (_, at, _) in zip(found, said, strict=True):
                for misfit in misfits(situation, code):
                    wrong = E981 if misfit.binding else W981
                    told.append(wrong(situation=situation.words, why=misfit.why).at(at))
            return replace(one, suits=(*one.suits, *found))
        case "tempo":
            words = Words([one_phrase(fact.value, "a tempo", fact.span)])
            tempo = words.expect(TEMPOS, E775)
            words.finish("a tempo")
            return replace(one, tempo=tempo)
        case "signal":
            return replace(one, signal=string_of(fact.value, fact.span))
    return replace(one, word=string_of(fact.value, fact.span))


def _taken(one: Lesson, said: dict[str, Fact], others: Iterable[Lesson]) -> Iterator[Diagnostic]:
    """A signal or a word that another thing has already."""
    for other in others:
        for key, how in _SHOWN.items():
            mine = getattr(one, key).casefold()
            if mine and mine == getattr(other, key).casefold() and one.key != other.key:
                first = Related(other.span, f"{other.name} has it")
                told = (E774 if key == "signal" else E776)(
                    said=getattr(one, key), first=f"{other.kind} {other.name}",
                    second=f"{one.kind} {one.name}", how=how,
                )  # fmt: skip
                yield told.at(said[key].span, related=(first,))
