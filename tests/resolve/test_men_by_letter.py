"""Men whom lines call by their letters: the play is that of the rules that find the same men."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from resolve.compact import write
from resolve.texts import QUADS, THREE_TWO, TWELVE, codes, compiled, dress, message, play
from stemline.describe.spoken_play import describe
from stemline.football.field import BallSpot
from stemline.resolve.expand import expand

PRO = """
formation Pro
    X at away, numbers, on line
    H at call, 4 outside tackle, off line
    S at call, 5 outside H, off line
    Z at call, numbers, on line
    R at ball, 7 deep
    F at ball, 4 deep
    Q at ball, under centre
"""
SETS = (THREE_TWO, QUADS, PRO)
RULES = {
    "X": ("weak #1", "away #1"),
    "W": ("weak #2", "away #2", "strong #4", "weak inside"),
    "H": ("strong #2", "strong #3", "call #3", "strong inside"),
    "S": ("strong #2", "call #2", "strong #3"),
    "Z": ("strong #1", "call #1"),
    "R": ("back",),
    "F": ("fullback",),
}
"""By letter, rules that find him in one set or another."""
ROUTES = ("post", "dig 12", "cross 5", "corner", "out 6", "seam", "hitch", "curl 10")
BACK_ROUTES = ("flat", "swing", "check")


@st.composite
def concepts(draw: st.DrawFn) -> tuple[str, dict[str, str]]:
    """A concept with the letters of some men, and a rule for each of them."""
    men = draw(st.lists(st.sampled_from("XWHSZR"), min_size=2, max_size=5, unique=True))
    rules = {man: draw(st.sampled_from(RULES[man])) for man in men}
    lines = []
    for man in men:
        does = draw(st.sampled_from(BACK_ROUTES if man == "R" else ROUTES))
        way = draw(st.sampled_from(("", "", "", *(f" away from {m}" for m in men if m != man))))
        look = draw(st.sampled_from(("", "", " when ball in middle")))
        lines.append(f"{man} runs {does}{way}")
        if look:
            lines.append(f"{man} runs hitch{look}" if man != "R" else f"R runs swing{look}")
    order = draw(st.permutations(men))
    lines += ["everyone else runs go", "every other back runs check", "feet 5, hitch, reset"]
    lines.append("read " + " > ".join(order))
    lines.append(f"pressure {order[-1]} on 5")
    if len(men) > 2:
        lines.append(f"claims triangle {', '.join(order[:3])}")
    lines.append(f"pair {order[0]} above {order[1]} on hook defender")
    return "concept Cold\n" + "".join(f"    {line}\n" for line in lines), rules


def by_rule(text: str, rules: dict[str, str]) -> str:
    """The text with a role in the place of each letter."""
    named = re.sub(r"\b[XWHSZR]\b", lambda m: f"man {m[0].lower()}", text)
    return named + "".join(f"    man {man.lower()} is {rule}\n" for man, rule in rules.items())


def without_names(written: str) -> str:
    return re.sub(r"\bman ([a-z])\b", lambda m: m[1].upper(), written)


@settings(max_examples=25, deadline=None)
@given(concepts(), st.sampled_from(SETS), st.sampled_from(list(BallSpot)))
def test_letters_give_the_plays_of_the_rules_that_find_the_same_men(
    made: tuple[str, dict[str, str]], men: str, spot: BallSpot
) -> None:
    text, rules = made
    name = re.findall(r"formation (.+)", men)[0]
    sheets = dress(name, concept="Cold")
    lettered, ruled = (compiled(TWELVE, men, x, sheets) for x in (text, by_rule(text, rules)))
    assert lettered.book is not None and ruled.book is not None, codes(ruled)
    for called in lettered.calls.by_name:
        one, found = expand(lettered.book, lettered.calls.by_name[called], spot)
        two, others = expand(ruled.book, ruled.calls.by_name[called], spot)
        assert one is not None and two is not None
        cast = {a.role: a.man for a in two.assignments if a.role.startswith("man ")}
        if any(cast.get(f"man {man.lower()}") != man for man in rules):
            continue  # a rule finds another man here, or none
        assert write(one) == without_names(write(two))
        assert [d.code for d in found] == [d.code for d in others]


SAID = """
concept Cold
    X runs curl
    Z runs curl when Three Two
    strong inside runs cross
    everyone else runs go
    every other back runs swing away from W
    read S > X with W
    S says "Look early."
    feet 5, hitch
"""


def test_a_letter_without_a_job_points_at_its_man_whatever_role_he_has() -> None:
    book = compiled(TWELVE, THREE_TWO, SAID, dress("Three Two", concept="Cold"))
    made = play(book, "Three Two Right Cold")
    assert [(r.target, r.men, r.partner_man) for r in made.reads] == [
        ("S", ("S",), ""),
        ("X", ("X",), "W"),
    ]
    assert made.assignment("S").role_said == "everyone else"
    assert made.assignment("S").says == ("Look early.",)
    assert "X as X" not in describe(made) and "1 S," in describe(made)


def test_a_set_without_the_man_is_told_once_for_all_its_calls() -> None:
    text = SAID.replace("read S > X with W", "read S > X").replace("away from W", "weak")
    men = (THREE_TWO, PRO.replace("X at", "W at"))
    book = compiled(TWELVE, *men, text, dress("Pro", concept="Cold"))
    told = [d for d in book.diagnostics if d.is_error]
    assert [(d.code, d.span.line) for d in told] == [("E626", 3)]
    assert message(told[0]) == "in Pro Right Cold and 1 more call no X lines up"


@pytest.mark.parametrize(
    ("line", "man"),
    [("carrier is R", "R"), ("carrier is W or R", "R"), ("carrier is F", "F"), ("rb is R", "")],
)
def test_a_rule_may_be_a_letter_and_the_letter_then_means_that_role(line: str, man: str) -> None:
    subject = "R" if line == "carrier is R" else "carrier"
    text = f"run Iso\n    {line}\n    {subject} aims playside A\n    line blocks on or climb\n"
    sheet = dress("Pro", concept="Iso")
    book = compiled(TWELVE, PRO, THREE_TWO, text + "    everyone else blocks stalk\n", sheet)
    if not man:
        assert [d.code for d in book.diagnostics if d.is_error]
        return
    assert not [d for d in book.diagnostics if d.is_error], codes(book)
    assert book.book is not None
    made, _ = expand(book.book, book.calls.by_name["Pro Right Iso"], BallSpot.MIDDLE)
    assert made is not None and made.assignment(man).role == "carrier"


def test_a_tag_and_a_called_route_give_a_letter_of_the_concept_another_route() -> None:
    tag = "tag Up for Cold\n    X runs go\n    S runs corner\n"
    sheet = dress("Three Two", "with Up, X runs fade", concept="Cold")
    book = compiled(TWELVE, THREE_TWO, SAID, tag, sheet)
    up = play(book, "Three Two Right Cold Up")
    assert (up.assignment("X").job, up.assignment("S").job) == ("Go.", "Corner at 10.")
    fade = play(book, "Three Two Right Cold X Fade")
    assert fade.assignment("X").job == "Fade." and "X" not in fade.nobody


def test_linemen_and_the_quarterback_by_their_letters() -> None:
    lines = "LG, RG blocks down or climb\n    LT blocks on\n    line blocks on or climb"
    words = "carrier is R\n    R aims playside A\n    F blocks lead\n    {}\n    {}\n"
    text = "run Iso\n    " + words.format(lines, "Q tosses to R\n    everyone else blocks stalk")
    plain = (
        text.replace("LG, RG", "left guard, right guard").replace("LT ", "left tackle ")
        .replace("Q tosses", "quarterback tosses")
    )  # fmt: skip
    one, two = (
        play(compiled(TWELVE, PRO, x, dress("Pro", concept="Iso")), "Pro Left Iso")
        for x in (text, plain)
    )
    assert write(one) == write(two)
