"""What the coach says in a route of his own is told to whoever runs it, in his job."""

from __future__ import annotations

from resolve.texts import THREE_TWO, TWELVE, codes, compiled, play

RULE = "He is inside: out. He is outside: in."
TEXT = f"""
route Choice
    depth 6
    stroke up to depth then out 6
    say "{RULE}"

concept Choices
    first is strong #1
    first runs choice
    second is weak #1
    second runs hitch
    second runs choice when man
    third is strong #2
    third runs hitch

dress Choices
    in Three Two
"""


def test_who_runs_a_route_is_told_what_it_says_and_nobody_else() -> None:
    result = compiled(TWELVE, THREE_TWO, TEXT)
    assert not [code for code in codes(result) if code.startswith("E")]
    made = play(result, "Three Two Right Choices")
    told = {a.role: a.says for a in made.assignments if a.role}
    assert told["first"] == told["second"] == (RULE,)
    assert told["third"] == ()
