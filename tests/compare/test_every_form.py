"""One thing changed in each form of line: that is told, in a sentence, and nothing else is."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest
from compare.forms import Form, forms
from syrupy.assertion import SnapshotAssertion

from stemline.compare.aloud import dress_words, lines_words
from stemline.compare.comparing import compared
from stemline.compare.comparison import Comparison
from stemline.compare.definitions import Definition, definitions
from stemline.compare.line_changes import LineChange, line_changes
from stemline.compare.told import told
from stemline.outside.texts import read_files
from stemline.session import Session
from stemline.source import Source
from stemline.syntax.parser import parse

HERONS = Path(__file__).parents[2] / "playbooks" / "saltmarsh-herons"
REACHING = (
    ("5 or fewer in box", "6 or fewer in box", "Back Angle", 5,
     "we kill it to Draw with 6 or fewer in the box", "Q"),
    ("hands to carrier\n    carrier hands", "tosses to carrier\n    carrier hands", "Reverse", 2,
     "the quarterback now tosses to the carrier instead of handing", "Q and R"),
    ("after 1.5 seconds", "after 2 seconds", "Flea Flicker", 1,
     "after 2 seconds instead of 1.5", "Q and R"),
    ("to strong #1 or run", "to strong #1", "Double Pass", 1,
     "out throws to strong #1 instead of strong #1 or run", "S"),
    ("if he opens to the slants", "if he stays", "Zone", 1, "we give if he stays instead of", "Q"),
    ("hot into the ground if nobody believes it", "hot into the ground", "Slip", 5,
     "the hot throw is into the ground", "Q"),
    ("read drive on 3 > rest", "read drive on 3 > dig on hitch > flat on reset", "Pivot", 0,
     "we read as before: the line says it in other words", ""),
    ("with your hands up", "with hands up", "Shovel", 0, "we now tell the carrier", ""),
)  # fmt: skip
"""What is changed in the Herons' texts and in which concept; how many calls that reaches, a part of
what is said of it, and for whom."""
_LABELS = frozenset(("picture", "draw"))
"""Two labels for one thing."""
_WORD = re.compile(r"[\w.-]+")


@cache
def _changes(form: Form) -> tuple[LineChange, ...]:
    was, now = (_one(form.head, line) for line in (form.was, form.now))
    return line_changes(was.lines, now.lines, {}, now.kind)


def _one(head: str, line: str) -> Definition:
    more = "date 2026-10-16" if head.startswith("week") else 'say "Always."'
    document, found = parse(Source("a.play", f"{head}\n    {line}\n    {more}\n"))
    assert [d for d in found if d.code != "E203"] == [], line
    (one,) = definitions([document]).values()
    return one


def _said(form: Form) -> str:
    words = dress_words if form.head.startswith("dress") else lines_words
    return "\n".join(line.text.strip() for line in words(_changes(form)))


def test_one_thing_changed_in_each_form_is_said(snapshot: SnapshotAssertion) -> None:
    lines = [f"{form.now.splitlines()[-1].strip()}\n{_said(form)}\n" for form in forms()]
    assert "\n".join(lines) == snapshot


def test_what_was_and_what_is_are_both_said_and_it_is_one_change() -> None:
    for form in forms():
        was, now = (set(_WORD.findall(text.casefold())) for text in (form.was, form.now))
        said = {word[:3] for word in _WORD.findall(_said(form).casefold())}
        assert {word[:3] for word in (was ^ now) - _LABELS} - {"whe"} <= said, (form, _said(form))
        men = form.was.partition(" blocks ")[0].count(",") + 1 if " blocks " in form.was else 1
        assert len(_changes(form)) == men, (form, _said(form))


@cache
def _edited() -> Comparison:
    """The Herons with one thing changed in each of several concepts."""
    texts = [s for s in read_files(HERONS).sources if not s.stem.startswith(("week", "install"))]
    new = [Source(s.name, _with_edits(s.text)) for s in texts]
    assert sum(a.text != b.text for a, b in zip(texts, new, strict=True)) >= 4
    old = Session(texts, "was")
    return compared(old, Session(new, "is", beside=old))


def _with_edits(text: str) -> str:
    for was, now, *_ in REACHING:
        text = text.replace(was, now)
    return text


@pytest.mark.parametrize(("was", "now", "concept", "calls", "said", "whom"), REACHING)
def test_how_the_ball_goes_and_what_is_seen_reach_their_calls(
    was: str, now: str, concept: str, calls: int, said: str, whom: str
) -> None:
    found = _edited()
    (change,) = (c for c in found.definitions if c.one.name == concept)
    assert len(change.calls) == calls
    lines = [line.text.strip() for line in told(found, change.one.owner or concept, whole=False)]
    assert any(said in line for line in lines)
    reach = rf"that changes .* for {whom}(:|$)" if whom else "nobody lines up"
    assert sum(re.match(reach, line) is not None for line in lines) == 1
