"""A coach's own words for what the notation says otherwise: of a line that could not be read, the
line to type in its place.

Nothing here makes a line wrong. The table is asked only about a line whose words are a mistake
already, and its answer, with the coach's names in it, takes the mistake's place.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from functools import cache

from stemline.diagnostics.catalogue.football import E404
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.read.clinic_lines import CLINIC_ROWS, LETTER_ROWS
from stemline.read.coach_lines import MEN, ROWS, Answer, typed
from stemline.read.coordinator_lines import COORDINATOR_ROWS
from stemline.read.newcomer_lines import ANY_ROWS, LAST_ROWS, NEWCOMER_ROWS
from stemline.read.passing_lines import PASSING_ROWS, TWICE_ROWS
from stemline.read.sideline_lines import SIDELINE_ROWS
from stemline.read.situation_lines import head_line
from stemline.read.talk_lines import TALK_ROWS
from stemline.source import Source, Span
from stemline.syntax.lines import KINDS

_NO_MAN = frozenset(("E450", "E451", "E453", "E464"))
_NO_ROLE = frozenset(("E444", "E450", "E464"))
"""What says that a block has no role of a name."""
_ASKED = _NO_MAN | frozenset((
    "E121", "E220", "E221", "E223", "E224", "E225", "E228", "E230", "E231", "E232", "E236", "E309",
    "E310", "E325", "E326", "E401", "E402", "E403", "E410", "E412", "E430", "E431", "E434",
    "E436", "E440", "E441", "E442", "E443", "E444", "E445", "E455", "E460", "E462", "E464",
    "E465", "E469", "E470", "E471", "E481", "E482", "E484", "E485", "E496", "E670", "E673",
    "E675", "E680",
    "E690", "E691", "E692", "E701", "E703", "E780", "E793", "E971",
))  # fmt: skip
"""Mistakes in the words of a line: one of any other kind is told as it is."""

_OF_A_HEAD = frozenset(("E120", "E125", "E232", "E602", "E971", "E974"))
"""Mistakes that a down and distance makes, written as on a call sheet."""

_TOLD_TWICE = "E420"
_TO_BE_ASKED = _ASKED | _OF_A_HEAD | {_TOLD_TWICE}

_UNPLACED = frozenset(("E220", "E221", "E224", "E225", "E403", "E675"))
"""Of these, what says that a line is none of the block's: any row is better than its sample, unless
a word of it is only misspelt."""

_Row = tuple[frozenset[str], str, Answer]


def _by_kind(rows: Iterable[tuple[str, str, Answer]]) -> tuple[_Row, ...]:
    return tuple((frozenset(kinds.split()), text, answer) for kinds, text, answer in rows)


_ROWS = _by_kind(
    (
        *TALK_ROWS,
        *PASSING_ROWS,
        *SIDELINE_ROWS,
        *CLINIC_ROWS,
        *COORDINATOR_ROWS,
        *NEWCOMER_ROWS,
        *ROWS,
    )
)
_MEN = _by_kind((*MEN, *LETTER_ROWS))
_LAST, _ANY_LINE = _by_kind(LAST_ROWS), _by_kind(ANY_ROWS)
_TWICE = _by_kind(TWICE_ROWS)


@cache
def _pattern(text: str) -> re.Pattern[str]:
    """A row's pattern, made when a line first asks for it: most texts ask for none."""
    return re.compile(text, re.IGNORECASE)


def advised(kind: str, line: str, *, no_man: bool = False, last: Iterable[_Row] = ()) -> str:
    """What to type for a line of such a block; "" where no row of the table knows it.

    ``no_man`` tells that the mistake is a man whom no line names; ``last`` are the rows for a line
    of which nothing else is known.
    """
    if '"' in line:
        return ""
    told = _advice((*(_MEN if no_man else ()), *_ROWS), kind, line)
    if told:
        return told
    return _joined(kind, line) or _advice(last, kind, line)


def _advice(rows: Iterable[_Row], kind: str, line: str) -> str:
    """The answer of the first row that knows the line."""
    for kinds, pattern, answer in rows:
        found = _pattern(pattern).fullmatch(line) if kind in kinds else None
        if found is None or _turns(kind, found.groupdict().get("who")):
            continue
        text = answer(found) if callable(answer) else typed(*found.expand(answer).split(" & "))
        if typed(line) in text:
            continue  # it is what he wrote
        return f"write {text}" if text.startswith("`") else text
    return ""


def _turns(kind: str, who: str | None) -> bool:
    """Whether what stands for a man begins with a word that lines of the kind turn on."""
    return bool(who) and str(who).split()[0].casefold() in KINDS[kind].turning


def _joined(kind: str, line: str) -> str:
    """The line without a comma that stands before `when` or one of its connectors."""
    shape = KINDS[kind].turning.get(line.split()[0].casefold())
    words = "|".join(sorted({"when", *(shape.connectors if shape is not None else ())}))
    plain = re.sub(rf", *(?=(?:{words})\b)", " ", line, flags=re.IGNORECASE)
    return f"take the comma off: {typed(plain)}" if plain != line else ""


def in_own_words(found: Iterable[Diagnostic], sources: Iterable[Source]) -> tuple[Diagnostic, ...]:
    """The mistakes, those of a line in a coach's own words told by the line to type instead."""
    found = tuple(found)
    texts = {source.name: source for source in sources}
    names = _quoted(texts.values())
    kept: dict[Diagnostic, None] = {}
    answered: set[tuple[str, int]] = set()
    for d in found:
        place = d.span.source, d.span.line
        asked = d.code in _TO_BE_ASKED and place not in answered
        if asked and _is_of_another(d, found, texts):
            continue
        answer = _told(d, texts, names) if asked else None
        if answer is not None:
            answered.add(place)
        if answer is not None or place not in answered or not d.is_error:
            kept[answer or d] = None
    return tuple(kept)


def _is_of_another(d: Diagnostic, found: Sequence[Diagnostic], texts: Mapping[str, Source]) -> bool:
    """Whether a role is not known because of another mistake: of the line that says who it is, or
    of the name of what its block extends."""
    role = str(d.said.__dict__.get("found", "")).casefold()
    source = texts.get(d.span.source)
    if d.code not in _NO_ROLE or source is None or not role:
        return False
    head = _head(source, d.span.line)
    for other in found:
        if other.span.source != d.span.source or other is d or not other.is_error:
            continue
        line = other.span.line
        if line == head and other.code in ("E302", "E303"):
            return True
        words = source.lines[line - 1].split() if 0 < line <= len(source.lines) else []
        # A line that makes him a role, by `is` or by what he does, and is not read itself.
        says = " ".join(words[: len(role.split())]).casefold().rstrip(":")
        if line != d.span.line and _head(source, line) == head and says == role:
            return True
    return False


def _head(source: Source, line: int) -> int:
    """The line, counted from 1, with which the block of a line begins; 0 for none."""
    for number in range(min(line, len(source.lines)), 0, -1):
        if source.lines[number - 1][:1].isalpha():
            return number
    return 0


def _told(d: Diagnostic, texts: Mapping[str, Source], names: Iterable[str]) -> Diagnostic | None:
    source = texts.get(d.span.source)
    if source is None or not 0 < d.span.line <= len(source.lines):
        return None
    written = source.lines[d.span.line - 1].split("//")[0].rstrip()
    line = " ".join(written.split())
    kind = _kind(source, d.span.line)
    if not line or kind not in KINDS or not written[:1].isspace():
        return None
    if kind == "week" and d.code in _OF_A_HEAD and '"' not in line and (head := head_line(line)):
        return _typed_instead(d, written, f"write {typed(head)}")
    if d.code == _TOLD_TWICE:
        answer = _advice(_TWICE, kind, line)
        return _typed_instead(d, written, answer) if answer else None
    if d.code not in _ASKED:
        return None
    wrong = str(d.said.__dict__.get("found", ""))
    answer = _in_quotes(line, names) or _advised(d, kind, line)
    if d.code == "E464" and wrong and answer.startswith("write `") and wrong in answer:
        answer = ""  # typed so he is no more known, and men who were are changed
    if not answer and " and " in f" {wrong} " and '"' not in line:  # of a list, not of a name
        answer = f"part them with a comma: {typed(line.replace(' and ', ', '))}"
    return _typed_instead(d, written, answer) if answer else None


def _typed_instead(d: Diagnostic, written: str, answer: str) -> Diagnostic:
    """All of the line is underlined: another is typed in its place."""
    line = " ".join(written.split())
    column = len(written) - len(written.lstrip()) + 1
    span = Span(d.span.source, d.span.line, column, len(written) + 1)
    return E404(found=line, answer=answer).at(span)


def _advised(d: Diagnostic, kind: str, line: str) -> str:
    last: tuple[_Row, ...] = ()
    if d.code in _UNPLACED and not d.nearest:
        # Where a line belongs is more than how this block is written.
        last = _LAST if d.code == "E221" else (*_LAST, *_ANY_LINE)
    return advised(kind, line, no_man=d.code in _NO_MAN, last=last)


def _kind(source: Source, line: int) -> str:
    """The kind of the block in which a line stands."""
    for text in reversed(source.lines[: line - 1]):
        if text[:1].isalpha():
            return text.split()[0].casefold()
    return ""


def _quoted(sources: Iterable[Source]) -> tuple[str, ...]:
    """The names that stand in quotes in the first line of a block, the longest first."""
    heads = re.compile(r'^\w+ "([^"\n]+)"', re.MULTILINE)
    names = {name for source in sources for name in heads.findall(source.text)}
    return tuple(sorted(names, key=lambda name: (-len(name), name)))


def _in_quotes(line: str, names: Iterable[str]) -> str:
    """The line with such a name in its quotes, where it stands without them."""
    for name in names:
        bare = re.compile(rf'(?<!["\w]){re.escape(name)}(?!["\w])', re.IGNORECASE)
        if '"' not in line and bare.search(line):
            quoted = bare.sub(lambda _, name=name: f'"{name}"', line)  # type: ignore[misc]
            return f"put the name in quotes: {typed(quoted)}"
    return ""
