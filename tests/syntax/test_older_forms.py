"""Lines in an older form: what `format` makes of them, and that it means the same."""

from __future__ import annotations

from pathlib import Path

import pytest

from stemline.session import Session
from stemline.source import Source
from stemline.syntax.formatting import formatted
from stemline.syntax.older_forms import older_forms
from stemline.syntax.parser import parse

BOOKS = Path(__file__).parents[2] / "playbooks"
ROLES = "concept A\n    flat, deep, other, other wide is strong #1\n    spot top is low, strong\n"
REWRITTEN = [
    ("look A\n    T at 3, strong", "T in 3, strong"),
    ("look A\n    M at 10 or 30, strong, 4 deep", "M in 10 or 30, strong, 4 deep"),
    ("look A\n    N at 2i, weak", "N in 2i, weak"),
    ("motion A\n    W starts 3, set", "W starts 3 seconds, set"),
    ("motion A\n    W starts 1", "W starts 1 second"),
    ("playbook A\n    picture strength to field", "draw strong to field"),
    ("playbook A\n    picture middle", "draw from middle"),
    (
        f"{ROLES}    claims stretch flat top other wide deep on corner",
        "claims stretch flat, top, other wide, deep on corner",
    ),
    (
        "concept A\n    flat runs shoot to 6 outside tackle same side as stick",
        "flat runs shoot same side as stick to 6 outside tackle",
    ),
]  # fmt: skip
KEPT = [
    "look A\n    M at weak #2 or 20, weak, 4 deep",
    "look A\n    S at 2 outside numbers, weak, 5 deep",
    "look A\n    S at strong #3, 5 deep",
    "motion A\n    W starts 3 seconds, set",
    "playbook A\n    draw every call",
    "concept A\n    claims triangle one nobody knows",
    "concept A\n    flat runs shoot away from stick to 6 outside tackle",
    "concept A\n    flat runs swing to 7 outside tackle at 1 behind weak",
]


@pytest.mark.parametrize(("text", "new"), REWRITTEN)
def test_an_older_line_is_written_anew_and_then_stays(text: str, new: str) -> None:
    tree = parse(Source("a.play", f"{text}\n"))[0]
    assert [form.new for form in older_forms([tree])] == [new]
    laid = formatted(tree)
    assert laid.splitlines()[-1] == f"    {new}"
    again = parse(Source("a.play", laid))
    assert formatted(again[0]) == laid and not older_forms([again[0]])


@pytest.mark.parametrize("text", KEPT)
def test_a_line_of_which_it_is_not_sure_stays(text: str) -> None:
    tree = parse(Source("a.play", f"{text}\n"))[0]
    assert older_forms([tree]) == () and formatted(tree) == f"{text}\n"


def test_the_bundled_books_have_no_line_in_an_older_form() -> None:
    paths = [p for p in BOOKS.rglob("*.play") if "at" in p.read_text("utf-8")]
    trees = [parse(Source(p.name, p.read_text("utf-8")))[0] for p in paths]
    assert len(trees) > 50 and older_forms(trees) == ()


def test_both_forms_make_the_same_settings_motions_and_looks() -> None:
    """All that a session reads from either, but for the columns of what follows a longer word."""
    old = "\n\n".join(
        (
            "playbook A\n    code high school\n    picture strength to field",
            "look B\n    T at 3, strong\n    M at 10, strong, 4 deep\n    M covers hole",
            "motion C\n    back moves to call, 3 outside tackle, 4 deep\n    back starts 3, set",
        )
    )
    new = formatted(parse(Source("a.play", old))[0])
    assert new != old
    first, second = (Session([Source("a.play", text)], "a").book for text in (old, new))
    assert first is not None and second is not None
    assert first.settings.picture == second.settings.picture == "strength to field"
    stands = [
        {man: [said.value for said in lines] for man, lines in book.looks["b"].stands.items()}
        for book in (first, second)
    ]
    assert stands[0] == stands[1]
    moves = [book.motions["c"].moves[0] for book in (first, second)]
    assert moves[0].starts == moves[1].starts == 3.0 and moves[0].speed == moves[1].speed == 0.0
