"""A value as text again, in one canonical form: what `//` comments and margins do is not here."""

from __future__ import annotations

from stemline.syntax.tree import Atom, AtomKind, Block, Fact, Linked, Mark, Phrase, Series, Value

_PARTED = {
    Mark.ORDER: " > ",
    Mark.THEN: " then ",
    Mark.AND: ", ",
    Mark.OR: " or ",
    Mark.TOGETHER: " + ",
}


def written(value: Value | None) -> str:
    """The value with one blank between words and each mark as a coach writes it; "" for none."""
    match value:
        case None:
            return ""
        case Phrase():
            return " ".join(map(atom_text, value.atoms))
        case Series():
            return _PARTED[value.mark].join(map(written, value.items))
        case Linked():
            links = (f"{link.connector.text} {written(link.value)}" for link in value.links)
            return " ".join(filter(None, (written(value.head), *links)))


def atom_text(atom: Atom) -> str:
    """The atom as it is written, a string in straight quotes."""
    return f'"{atom.text}"' if atom.kind is AtomKind.STRING else atom.text


def written_fact(fact: Fact) -> str:
    """A whole line without its margin."""
    head = (
        [fact.label.text]
        if fact.label is not None
        else [", ".join(map(written, fact.subject)), fact.verb.text if fact.verb else ""]
    )
    guard = f"when {written(fact.guard)}" if fact.guard is not None else ""
    return " ".join(filter(None, (*head, written(fact.value), guard)))


def written_header(block: Block) -> str:
    """The first line of a block."""
    joins = (f"{join.connector.text} {written(join.value)}" for join in block.joins)
    names = ", ".join(map(written, (block.name, *block.also)))
    return " ".join((block.kind, names, *joins))
