"""The install block: what each day of the camp, and each week after it, puts in."""

from __future__ import annotations

import datetime
from dataclasses import dataclass, field

from stemline.diagnostics.catalogue.expected_forms import NO_WHEN
from stemline.diagnostics.catalogue.football import E402
from stemline.diagnostics.catalogue.weeks import E977
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.playbook.install_definitions import InstallDef, InstallItem, InstallStep
from stemline.read.read_situations import pieces
from stemline.read.words import Misread, one_phrase, string_of
from stemline.source import Span
from stemline.syntax.tree import Block, Fact, Linked, Mark, Phrase, items

LAST_DAY = 366
"""No season has more days, or weeks."""


def read_install(block: Block, unread: bool) -> tuple[InstallDef, tuple[Diagnostic, ...]]:
    """The install of a block, with what is wrong in it; ``unread`` tells that the parser could not
    read one of its lines."""
    reader = _InstallReader()
    for fact in block.facts:
        try:
            reader.read(fact)
        except Misread as miss:
            reader.found.append(miss.diagnostic)
    broken = unread or any(d.is_error for d in reader.found)
    steps, says = tuple(reader.steps), tuple(reader.says)
    made = InstallDef(block.name.text, steps, says, block.name.span, broken)
    return made, tuple(reader.found)


@dataclass
class _InstallReader:
    found: list[Diagnostic] = field(default_factory=list)
    steps: list[InstallStep] = field(default_factory=list)
    says: list[str] = field(default_factory=list)

    def read(self, fact: Fact) -> None:
        if fact.guard is not None:
            what = "this line without `when`"
            raise Misread(E402(what=what, instead=NO_WHEN).at(fact.guard.span))
        if fact.key == "say":
            self.says.append(string_of(fact.value, fact.span))
            return
        number, date = _head(fact)
        named: list[InstallItem] = []
        for row in fact.rows:
            try:
                named += _row(row)
            except Misread as miss:
                self.found.append(miss.diagnostic)
        self.steps.append(InstallStep(number, fact.key == "week", date, tuple(named), fact.span))


def _head(fact: Fact) -> tuple[int, str]:
    """The figure of a day or a week, and its date."""
    what = f"the number of the {fact.key}, and perhaps its date"
    said = pieces(fact.value) if not isinstance(fact.value, Linked) else []
    if not 1 <= len(said) <= 2:
        raise Misread(E402(what=what).at(fact.span))
    text, span, _ = said[0]
    if not text.isdecimal() or not 0 < int(text) <= LAST_DAY:
        raise Misread(E402(what=what).at(span))
    return int(text), _date(*said[1][:2]) if len(said) == 2 else ""


def _date(text: str, span: Span) -> str:
    try:
        return datetime.date.fromisoformat(text).isoformat()
    except ValueError:
        raise Misread(E977(found=text).at(span)) from None


def _row(row: Fact) -> list[InstallItem]:
    """The names of a row; behind `for` the concept that its tags are for. `again` before the first
    says that all of them are taught once more."""
    if row.guard is not None:
        raise Misread(E402(what="names, without `when`", instead=NO_WHEN).at(row.guard.span))
    value, owner, owner_span = row.value, "", None
    what = "names parted by commas"
    if isinstance(value, Linked):
        concept = one_phrase(value.links[-1].value, "one concept", row.span)
        owner, owner_span, value = concept.text, concept.span, value.head
    if value is None:
        raise Misread(E402(what=what).at(row.span))
    phrases = [one_phrase(item, what, row.span) for item in items(value, Mark.AND)]
    first = phrases[0].atoms
    again = first[0].word == "again" and len(first) > 1
    if again:
        phrases[0] = Phrase(first[1:])
    return [InstallItem(p.text, p.span, owner, owner_span, again) for p in phrases]
