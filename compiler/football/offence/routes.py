"""The route library: every named route with its default depth, as strokes.

Depths are high-school defaults and common practice, with no published source unless the row
says so; a coach changes one where he calls it or writes a route block of the same name.
Published trees differ (a youth-flag tree and a high-school staff's tree number them otherwise),
so the numbers are names like any other.
"""

from __future__ import annotations

from stemline.football.offence.landmarks import Landmark
from stemline.football.offence.strokes import (
    Break,
    Depth,
    Lateral,
    Route,
    RunTo,
    Settle,
    Stroke,
    Target,
    Up,
)

IN, OUT = Lateral.IN, Lateral.OUT
CALLED = Depth(0, called=True)


def _short(yards: float) -> Depth:
    """``yards`` before the called depth."""
    return Depth(-yards, called=True)


def _wider(yards: float) -> Target:
    """``yards`` outside the place where he started."""
    return Target(None, yards)


def _far_tackle(past: float) -> Target:
    return Target(Landmark.TACKLE, past, far=True)


_HITCH: tuple[Stroke, ...] = (Up(CALLED), Break(IN, 1.0, 165), Settle())
_SLANT: tuple[Stroke, ...] = (Up(CALLED), Break(IN, 9, 50))
_OUT: tuple[Stroke, ...] = (Up(CALLED), Break(OUT, 6))
_DIG: tuple[Stroke, ...] = (Up(CALLED), Break(IN, 9))
_CURL: tuple[Stroke, ...] = (Up(CALLED), Break(IN, 2.4, 145), Settle())
_COMEBACK: tuple[Stroke, ...] = (Up(CALLED), Break(OUT, 2.8, 135), Settle())
_CORNER: tuple[Stroke, ...] = (Up(CALLED), Break(OUT, 10, 45))
_POST: tuple[Stroke, ...] = (Up(CALLED), Break(IN, 11, 32))
_GO: tuple[Stroke, ...] = (Up(CALLED),)
_FLAT: tuple[Stroke, ...] = (Up(Depth(1)), RunTo(_wider(6), CALLED))
_CROSS: tuple[Stroke, ...] = (
    Up(Depth(1.5)),
    RunTo(Target(Landmark.TACKLE, 0.5), CALLED),
    RunTo(_far_tackle(6), CALLED),
)

_ROWS: tuple[Route, ...] = (
    # The numbered tree: even breaks in, odd breaks out.
    Route("0", 6, _HITCH),
    Route("1", 4, _FLAT),
    Route("2", 4, _SLANT),
    Route("3", 14, _COMEBACK),
    Route("4", 12, _CURL),
    Route("5", 10, _OUT),
    Route("6", 12, _DIG),
    Route("7", 10, _CORNER),
    Route("8", 10, _POST),
    Route("9", 22, _GO, taught=False),
    # Quick game.
    Route("hitch", 6, _HITCH),
    Route("slant", 4, _SLANT),
    Route("quick out", 5, _OUT),
    Route("speed out", 5, (Up(CALLED), Break(OUT, 6, 85, speed=True))),
    Route("stick", 6, (Up(CALLED), Break(OUT, 1.2, 110), Settle())),
    Route("snag", 6, (Up(Depth(2)), Break(IN, 4.5, 48), Up(CALLED), Settle())),
    Route("now", -1, (RunTo(_wider(-1.8), Depth(-1.3)), Settle()), taught=False),
    # Underneath.
    Route("flat", 4, _FLAT),
    Route("arrow", 3, (RunTo(_wider(5.5), CALLED),)),
    Route("cross", 5, _CROSS),
    Route("high cross", 6, _CROSS),
    Route(
        "cross and sit",
        5,
        (
            Up(Depth(1.5)),
            RunTo(Target(Landmark.TACKLE, 0.5), CALLED),
            # Past the far tackle, out of the window of a man who settles over the ball.
            RunTo(Target(Landmark.BALL, 3.5, far=True), CALLED),
            Settle(),
        ),
    ),
    Route(
        "return",
        5,
        (
            Up(Depth(1.5)),
            RunTo(Target(Landmark.TACKLE, -0.6), CALLED, speed=True),
            RunTo(Target(Landmark.TACKLE, 5), CALLED, speed=False),
        ),
    ),
    Route("whip", 5, (Up(Depth(2)), Break(IN, 3.5, 50), RunTo(_wider(2.5), CALLED, speed=False))),
    Route("sit", 8, (Up(_short(4.5)), RunTo(Target(Landmark.BALL), CALLED), Settle())),
    Route("hook", 6, (Up(CALLED), Break(IN, 1.0, 120), Settle())),
    # Intermediate.
    Route("curl", 12, _CURL),
    Route("comeback", 14, _COMEBACK),
    Route("out", 10, _OUT),
    Route("sail", 14, (Up(_short(4)), Break(OUT, 5, 50), RunTo(_wider(11), CALLED))),
    Route("in", 10, (Up(CALLED), Break(IN, 8))),
    Route("dig", 12, _DIG),
    Route(
        "over",
        16,
        (
            Up(Depth(4)),
            RunTo(Target(Landmark.BALL), _short(3)),
            RunTo(_far_tackle(9), CALLED),
        ),
    ),
    # Vertical.
    Route("go", 22, _GO, taught=False),
    Route("fade", 22, (Up(Depth(2)), Break(OUT, 4, 30), Up(CALLED)), taught=False),
    Route("seam", 20, _GO, taught=False),
    Route("bender", 10, (Up(CALLED), Break(IN, 11, 25))),
    Route("post", 12, _POST),
    Route("skinny post", 8, (Up(CALLED), Break(IN, 11, 20))),
    Route("corner", 10, _CORNER),
    # Double moves.
    Route("out and up", 5, (Up(CALLED), Break(OUT, 3.5), Up(Depth(20)))),
    Route("hitch and go", 6, (Up(CALLED), Break(IN, 0.9, 150), Break(OUT, 1.4, 60), Up(Depth(22)))),
    Route("slant and go", 4, (Up(CALLED), Break(IN, 3.5, 50), Up(Depth(20)))),
    Route("post corner", 8, (Up(CALLED), Break(IN, 3, 35), Break(OUT, 10, 42))),
    Route("corner post", 8, (Up(CALLED), Break(OUT, 3, 40), Break(IN, 10, 32))),
    # Out of the backfield.
    Route("shoot", 2, (RunTo(_wider(8), CALLED),), taught=False),
    Route(
        "swing",
        0,
        (
            RunTo(_wider(3.5), Depth(-4.7)),
            RunTo(_wider(8), Depth(-1)),
        ),
        taught=False,
    ),
    Route(
        "wheel",
        18,
        (
            RunTo(_wider(5.5), Depth(0)),
            RunTo(_wider(9), Depth(3.5)),
            Up(CALLED),
        ),
        taught=False,
    ),
    Route(
        "angle",
        4,
        (RunTo(_wider(3.5), Depth(1)), Break(IN, 7, 55)),
        taught=False,
    ),
    Route(
        "check",
        4,
        (RunTo(Target(Landmark.GUARD), Depth(-2)), RunTo(Target(Landmark.GUARD), CALLED), Settle()),
    ),
    Route(
        "leak",
        5,
        (RunTo(Target(Landmark.TACKLE, 0.5), Depth(-1)), RunTo(Target(Landmark.TACKLE, 5), CALLED)),
    ),
    # Screens: caught behind the line.
    Route("bubble", -1, (RunTo(_wider(1.5), Depth(-2.2)), RunTo(_wider(6), CALLED)), taught=False),
    Route(
        "tunnel",
        -1,
        (Up(Depth(1)), Break(IN, 4, 110, speed=True), RunTo(_wider(-8), CALLED)),
        taught=False,
    ),
    Route(
        "slow screen",
        -2,
        (
            RunTo(Target(Landmark.GUARD), Depth(-3.5)),
            RunTo(Target(Landmark.TACKLE, 3), Depth(-3)),
            Settle(),
        ),
        taught=False,
    ),
)

LIBRARY: dict[str, Route] = {route.name: route for route in _ROWS}
