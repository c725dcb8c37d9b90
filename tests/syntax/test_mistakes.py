"""Every mistake of the form that has a code, with the text it is said of."""

from __future__ import annotations

import pytest
from syrupy.assertion import SnapshotAssertion
from together import together

from stemline.checks.discovered import rows
from stemline.diagnostics.diagnostic import Mistake
from stemline.diagnostics.render import render
from stemline.source import Source
from stemline.syntax.parser import parse

OTHERS = 110
"""Codes 100 to 109 speak of files that could not be opened, which this room never does."""

SAMPLES: tuple[tuple[str, str], ...] = (
    # The marked text stands between ^ and ^; a text without them is marked in its whole first line.
    ("E110", "concept A\n^\t^x is back"),
    ("E111", "concept A\n    x is back\n^    " + "y " * 600 + "^"),
    ("E120", "concept A\n    x is Trips ^&^ Bunch"),
    ("E120", "^(^concept A\n    x is back"),
    ("E121", "concept A\n    feet^:^ quick"),
    ("E121", "concept^:^ A\n    feet quick"),
    ("E122", "concept A\n    feet quick^;^ 3"),
    ("E123", "concept A\n    x ^=^ back"),
    ("E124", "concept A\n    x runs dig ^1,5^"),
    ("E125", "concept A\n    x runs dig ^-^2"),
    ("E125", "concept A\n    x runs dig 10^–^12"),
    ("E126", 'concept A\n    say ^"Over sets the depth.^'),
    ("E126", "concept A\n    say ^“Over // sets^"),
    ("E127", "concept A\n    say ^'^Go'"),
    ("E130", "concept A\n    x is^\x0b^back"),
    ("E130", 'concept "Stick^\u2028^Now"\n    x is back'),
    ("E131", "concept A // one^\x1b^[2J\n    x is back"),
    ("E131", "concept A\n    x is ^\x07^ back"),
    ("E131", 'concept A\n    say "^\x00^"'),
    ("E132", 'concept "Sti^\u200b^ck"\n    x is back'),
    ("E132", "concept A\n    x is ba^\u00ad^ck"),
    ("E132", "^\u202e^concept A\n    x is back"),
    (
        "E133",
        "concept A\n    x is back\n^<<<<<<< mine^\n    y is back\n=======\n    y runs dig\n"
        ">>>>>>> theirs\n    z is back",
    ),
    ("E133", "concept A\n    x is back\n^=======^\n    y runs dig"),
    ("E200", "^concpt^ A\n    x is back"),
    ("E200", "^Crossers^\n    x is back"),
    ("E227", "week 1 A\n    wristband Q\n        ^sise^ 4 x 2 inches"),
    ("E228", "week 1 A\n    ^Trey Right Power^\n    openers"),
    ("E202", "^concept^\n    x is back"),
    ("E202", "^tag^ for A\n    keeps read"),
    ("E202", 'concept ^""^\n    x is back'),
    ("E203", "^concept A^\n\n// nothing\n"),
    ("E204", "^    x is back^\n    y is back\nconcept A\n    x is back"),
    ("E205", "concept A\n    x is back\n^s^ettle is strong #2"),
    ("E205", "concept A\n    x is back\n^keeps^ read, feet"),
    ("E205", "^settle^ is strong #2"),
    ("E206", "concept A\n    x is back\n^      ^y is back\n      z is back"),
    ("E206", "concept A\n    x is back\n^  ^y is back"),
    ("E207", "concept A^,^ B\n    x is back"),
    ("E207", "concept Now ^or^ Never\n    x is back"),
    ("E208", "formation A extends B ^extends^ C\n    X at ball"),
    ("E209", "formation A ^extends^\n    X at ball"),
    ("E210", "^tag Wheel^\n    keeps read"),
    ("E211", "personnel A ^extends^ B\n    X is back"),
    ("E220", "concept A\n    ^reads^ flat > near"),
    ("E220", "concept A\n    X ^runz^ go"),
    ("E220", "concept A\n    ^something else entirely^"),
    ("E220", "concept A\n    ^#2 up^"),
    ("E221", "concept A\n    ^keeps^ read"),
    ("E221", "concept A\n    X ^at^ numbers"),
    ("E223", "concept A\n    ^feet^"),
    ("E223", "concept A\n    ^feet^ when zone"),
    ("E224", "concept A\n    x ^runs^"),
    ("E224", "concept A\n    x ^runs^ when zone"),
    ("E225", "concept A\n    ^is^ strong #2"),
    ("E226", "concept A\n    a ^>^ b runs dig"),
    ("E226", "concept A\n    a ^or^ b runs dig"),
    ("E230", "concept A\n    read a ^on^"),
    ("E230", "concept A\n    read a ^on^ > b"),
    ("E230", "concept A\n    read a ^with^ on 3"),
    ("E231", "concept A\n    read ^>^ a"),
    ("E231", "concept A\n    ^,^ a runs dig"),
    ("E232", "concept A\n    read a ^>^ > b"),
    ("E232", "concept A\n    feet quick, 3^,^"),
    ("E232", "concept A\n    x is back ^or^"),
    ("E232", "concept A\n    a^,^ runs dig"),
    ("E232", "concept A\n    x runs up 5 ^then^ when zone"),
    ("E233", "concept A\n    x runs dig ^when^"),
    ("E233", "concept A\n    x runs dig ^when^ , zone"),
    ("E234", "concept A\n    x runs dig when zone ^when^ 3x1"),
    ("E235", "concept A\n    x ^when^ zone runs dig"),
    ("E236", "concept A\n    x runs dig when zone ^>^ off"),
    ("E236", "concept A\n    x runs dig when zone ^then^ off"),
)
IDS = [f"{code}-{n}" for n, (code, _) in enumerate(SAMPLES)]


def unmarked(sample: str) -> tuple[Source, tuple[int, int, int]]:
    """The text without its two ^, and the line, column and end they stand at."""
    before, marked, after = sample.split("^")
    line = before.count("\n") + 1
    column = len(before) - (before.rfind("\n") + 1) + 1
    return Source("test.play", before + marked + after), (line, column, column + len(marked))


@together(("code", "sample"), SAMPLES, ids=IDS)
def test_the_mistake_is_found_once_and_in_its_place(code: str, sample: str) -> None:
    source, (line, column, end) = unmarked(sample)
    _, found = parse(source)
    assert [(d.code, d.span.line, d.span.column, d.span.end) for d in found] == [
        (code, line, column, end)
    ]


ROWS = [row for row in rows() if row.__module__.endswith((".files", ".forms"))]
"""The codes of characters, lines and blocks."""


def test_every_code_has_a_sample() -> None:
    codes = {row.__name__ for row in ROWS if int(row.__name__[1:]) >= OTHERS}
    assert codes == {code for code, _ in SAMPLES}


def test_wording(snapshot: SnapshotAssertion) -> None:
    printed = []
    for code, sample in SAMPLES:
        if code != "E111":
            source, _ = unmarked(sample)
            printed.append(render(parse(source)[1], {source.name: source}))
    assert "".join(printed) == snapshot


@together("row", ROWS)
def test_wording_shows_no_name_of_the_grammar(row: type[Mistake]) -> None:
    assert not any(
        name in str(row.worded()) for name in ("LABEL", "CONN", "_NL", "INDENT", "token")
    )


@together(
    ("text", "nearest"),
    [
        ("concpt A", ("concept",)),
        ("concept A\n    reads a > b", ("read",)),
        ("concept A\n    X runz go", ("runs",)),
        ("concept A\n    over, under blocs edge", ("blocks",)),
        ("dress A\n    nver in Quads", ("never",)),
        ("concept A\n    something else entirely", ()),
        # "is" and "at" are a letter away from half of the language: nobody is told them.
        ("concept A\n    x as back", ()),
        ("concept A\n    x if back", ()),
        ("formation A\n    X as numbers", ()),
    ],
)
def test_nearest_words(text: str, nearest: tuple[str, ...]) -> None:
    found = [d for d in parse(Source("test.play", text))[1] if d.code != "E203"]
    assert [d.nearest for d in found] == [nearest]


@pytest.mark.parametrize(
    ("kind", "read"),
    [
        ("protecton", ["protection"]),
        ("prtecton", ["protection"]),
        ("prtcton", []),
        ("formatoin", ["formation"]),
        ("frmton", []),
    ],
)
def test_a_block_is_read_as_the_kind_it_nearly_says_and_no_farther(
    kind: str, read: list[str]
) -> None:
    """Three letters off, the nearest kind is told; what stands under it is not read by a guess."""
    tree, found = parse(Source("test.play", f"{kind} A\n    nonsense in every kind\n"))
    assert found[0].code == "E200" and len(found[0].nearest) == 1
    assert [d.code for d in found[1:]] == (["E220"] if read else [])
    assert [block.kind for block in tree.blocks] == read


def test_one_mistake_a_line() -> None:
    text = "concept A\n      x is back\n  read: a > > b = c, when when"
    _, found = parse(Source("test.play", text))
    assert [d.span.line for d in found] == [3]
