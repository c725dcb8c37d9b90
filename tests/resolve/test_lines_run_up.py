"""What is offered to a man whose line is inside his own tackle can be typed beside his lines."""

from __future__ import annotations

from together import together

from resolve.texts import DOUBLES_ELEVEN, ELEVEN, codes, compiled, dress
from stemline.session import Session

SEAM = """
concept Verticals
    a is strong #1
    a runs go
    b is weak #1
    b runs go
    seam is strong #2
    seam runs seam up hash
"""


def verticals(*lines: str) -> Session:
    text = SEAM + "".join(f"    {line}\n" for line in lines)
    return compiled(ELEVEN, DOUBLES_ELEVEN, text, dress("Doubles", concept="Verticals"))


def offered(session: Session) -> str:
    (found,) = [d for d in session.diagnostics if d.code == "W417"]
    return str(dict(found.values)["when"])


@together(
    ("own", "wanted"),
    [
        ((), "into boundary"),
        (("seam runs bender when middle open",), "into boundary, middle closed"),
        (("seam runs hook when press",), "into boundary, off"),
        (
            ("seam runs bender when middle open", "seam runs hook when middle closed, press"),
            "into boundary, middle closed, off",
        ),
        (("seam runs post when 3x1",), "into boundary, 2x2"),
        (("seam runs post when into field",), "into boundary"),
    ],
)
def test_the_line_for_the_short_side_agrees_with_those_he_has(
    own: tuple[str, ...], wanted: str
) -> None:
    when = offered(verticals(*own))
    assert when == wanted
    typed = verticals(*own, f"seam runs seam up divide when {when}")
    assert not {"E420", "E421", "W417"} & {*codes(typed)}
