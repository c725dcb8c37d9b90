"""What has become of a line, as a coach says it."""

from __future__ import annotations

from together import together

from stemline.compare.aloud import dress_words, lines_words
from stemline.compare.definitions import Definition, definitions
from stemline.compare.line_changes import line_changes, renamed_roles
from stemline.source import Source
from stemline.syntax.parser import parse


def _one(text: str) -> Definition:
    (found,) = definitions([parse(Source("a.play", text))[0]]).values()
    return found


def _said(head: str, old: str, new: str) -> list[str]:
    sides = [
        _one("\n".join([head, *(f"    {line}" for line in text.split("/"))]) + "\n")
        for text in (old, new)
    ]
    words = dress_words if sides[0].kind == "dress" else lines_words
    return [line.text.strip() for line in words(line_changes(sides[0].lines, sides[1].lines, {}))]


@together(
    ("head", "old", "new", "said"),
    [
        ("concept A", "over runs cross 5", "over runs cross 6",
         ["over runs the cross at 6 instead of 5"]),
        ("concept A", "over runs dig 12 over ball", "over runs post 12",
         ["over runs the post at 12 instead of the dig at 12 over the ball"]),
        ("concept A", "a runs go", "a runs go up 1 outside numbers",
         ["a runs go on a line a yard outside the numbers instead of a plain go"]),
        ("concept A", "a runs comeback 16", "a runs comeback 14 up 2 inside numbers",
         ["a runs the comeback at 14 on a line 2 yards inside the numbers "
          "instead of the comeback at 16"]),
        ("concept A", "a runs dig 9/b runs dig 9", "a runs dig 8/b runs dig 8",
         ["a and b run the dig at 8 instead of 9"]),
        ("concept A", "X, Z runs go/H runs post 12", "X, Z runs go/H runs post 14",
         ["H runs the post at 14 instead of 12"]),
        ("concept A", "X, Z runs go", "Z, X runs fade", ["Z and X run fade instead of go"]),
        ("concept A", "read a on 3 > b on hitch", "read b on 3 > a on hitch",
         ["we now read b on the third step, then a on the hitch",
          "before: a on the third step, then b on the hitch"]),
        ("concept A", "pressure a on 3", "pressure b on quick",
         ["under pressure we now read b on the quick step", "before: a on the third step"]),
        ("concept A", "pressure a on 3", "pressure a on 3 > b on 3",
         ["under pressure we now read a, then b, both on the third step",
          "before: a on the third step"]),
        ("dress A", "in Trey", "in Trey/never in Trey to left", ["never from Trey to the left"]),
        ("concept A", 'a says "In."', 'a says "Out."', ['we now tell a: "Out."', 'before: "In."']),
        ("protection P", "line blocks slide", "line blocks reach",
         ["the line now reaches instead of sliding"]),
        ("protection P", "line blocks man", "line blocks slide",
         ["the line now slides instead of blocking man"]),
        ("protection P", "centre, playside guard blocks man", "centre, playside guard blocks slide",
         ["the centre and playside guard now slide instead of blocking man"]),
        ("protection P", "toward back or weak", "toward call",
         ["it goes toward call instead of back or weak"]),
        ("run R", "backside tackle blocks on or down", "backside tackle blocks on or hinge",
         ["the backside tackle now blocks on or hinge instead of on or down"]),
        ("formation F", "H at call, 5 outside tackle", "H at call, 4 outside tackle",
         ["H lines up at call, 4 outside the tackle, instead of 5"]),
        ("week 1 Us", "faces Odd, Zero/drop A", "faces Odd, Bear/drop B",
         ["now also faces Bear, no longer faces Zero", "dropped: B", "no longer dropped: A"]),
        ("week 1 Us", "situation 3rd and 6/    Trey A", "situation 3rd and 6/    Trey B",
         ["3rd and 6: Trey B instead of Trey A"]),
        ("week 1 Us", "period Team, 12 minutes, thud, Tuesday/    A against Odd/    B against Odd",
         "period Team, 10 minutes, Tuesday/    A against Odd/    C against Odd",
         ["period Team: 10 minutes instead of 12 minutes, thud",
          "new: period Team, 10 minutes, Tuesday: C against Odd",
          "no longer: period Team, 12 minutes, thud, Tuesday: B against Odd"]),
        ("install Camp", "day 1, 2026-08-10/    Trey, Ferry", "day 1, 2026-08-10/    Trey, Zone",
         ["day 1, 2026-08-10: now also Zone, no longer Ferry"]),
        ("dress A", "in Trey/with Wheel/to right", "in Trey/in Quads motion Tuck/to right, left",
         ["now also from Quads with Tuck", "now also to the left", "no longer with Wheel"]),
        ("dress A", "in Trey", "in Trey/in Quads motion Tuck with plain, Wheel, Go to left",
         ["now also from Quads with Tuck, plain, with Wheel and with Go to the left"]),
        ("dress A", "in Trey with Wheel", "in Trey with Wheel, Go",
         ["now also from Trey with Go"]),
        ("dress A", "in Trey", "in Trey with Go to left",
         ["now from Trey with Go to the left instead of Trey"]),
        ("dress A", "in Trey", "in Trey with Go", ["from Trey now with Go"]),
        ("dress A", "in Trey with Go, Up to left", "in Trey with Up to left",
         ["no longer from Trey with Go to the left"]),
        ("dress A", "in Trey with Go", "in Trey with Up", ["from Trey now with Up instead of Go"]),
        ("dress A", "in Trey/best from left hash, right hash to field",
         "in Trey", ["no longer best from either hash to the field"]),
        ("look L", "W rushes B, weak", "W rushes B, weak after 0.5 seconds",
         ["W rushes the weak B gap after half a second instead of at once"]),
        ("look L", "strength weak", "strength weak/T rushes A, strong when motion to weak",
         ["new: T rushes the strong A gap when motion goes to the weak side"]),
        ("concept A", "a runs go when off", "a runs go up 1 outside numbers when off",
         ["against off coverage, a runs go on a line a yard outside the numbers "
          "instead of a plain go"]),
        ("concept A", "feet 3", "feet 3/kill to Stick when Bear One",
         ["new: we kill it to Stick against Bear One"]),
        ("playbook P", "version 1", "version 1/house middle field is right",
         ["new: from the middle we take the right side as the field"]),
        ("playbook P", "house middle field is right", "house middle field is none",
         ["from the middle we take neither side as the field instead of right"]),
        ("concept A", "feet 3", "feet 3/suits 2nd and 4 to 6, red zone",
         ["new: it suits 2nd and 4 to 6 and the red zone"]),
        ("run R", "quarterback runs go", 'quarterback runs go/quarterback says "Safety down."',
         ['we now tell the quarterback: "Safety down."']),
        ("playbook P", "version 1", 'version 1/kill word "Anchor"',
         ['new: what kills a call is the word "Anchor"']),
        ("playbook P", "sections A, B", "sections A, C, B", ["the book's sections: now also C"]),
        ("playbook P", "sections A, B", "sections B, A", ["the book's sections: in another order"]),
        ("dress A", "in Trey/never in Trey to left", "in Trey",
         ["no longer left out: Trey to the left"]),
        ("dress A", "in Trey/against man, off", "in Trey/against zone",
         ["now drawn against zone instead of man, off"]),
    ],
)  # fmt: skip
def test_a_line_is_said_as_a_coach_says_it(head: str, old: str, new: str, said: list[str]) -> None:
    assert _said(head, old, new) == said


def test_a_role_of_another_name_is_the_same_man_by_the_same_rule() -> None:
    sides = (
        "lead is fullback or nobody\n    lead blocks lead on linebacker",
        "second is fullback or nobody\n    second aims playside A",
    )
    was, now = (_one(f"run Sneak\n    {text}\n    carrier is back\n") for text in sides)
    roles = renamed_roles(was, now)
    assert roles == {"lead": "second"}
    (change,) = line_changes(was.lines, now.lines, roles)
    assert [line.text.strip() for line in lines_words((change,))] == [
        "second now aims playside A instead of blocking lead on linebacker"
    ]
