"""The interior line as drawn: what the landmarks `guard`, `tackle` and `end` are read from."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.football.players import Position

SPLIT = 1.3
"""Yards from a lineman to his neighbour, centre to centre, where nothing is said: a split of two to
three feet between them. Common practice, no published source."""
LEAST_SPLIT, MOST_SPLIT = 0.5, 2.0
"""Foot to foot on the goal line, and as wide as a line can still help itself. Common practice."""
FULL_LINE = 5
"""Interior linemen of a line that has its tackles."""


@dataclass(frozen=True)
class LineMarks:
    """``split`` yards between neighbours; ``left`` and ``right`` men on each side of the centre."""

    split: float = SPLIT
    left: int = 2
    right: int = 2

    @classmethod
    def of(cls, line: tuple[str, ...]) -> LineMarks:
        """A code's own line, given by its labels from left to right, the centre C among them."""
        return cls(SPLIT, line.index("C"), len(line) - line.index("C") - 1)

    def tackle(self, sign: int) -> float:
        """x of the last interior man on the side of ``sign`` (-1 left, 1 right of the ball)."""
        return self._out(self.right if sign > 0 else self.left, sign)

    def guard(self, sign: int) -> float:
        """x of the centre's neighbour, or of the place where he would stand."""
        return self._out(1, sign)

    def end(self, sign: int) -> float:
        """x of a tight end: one split outside the last interior man."""
        return self._out((self.right if sign > 0 else self.left) + 1, sign)

    def _out(self, men: int, sign: int) -> float:
        # Rounded, so that three splits of 1.3 are 3.9; zero without a sign.
        return sign * round(men * self.split, 6) + 0.0


ENDINGS = {"T": Position.TACKLE, "G": Position.GUARD, "C": Position.CENTRE}
"""What the last character of a lineman's label says of him: LT, ET, RG, C."""


KNOWN_LINEMEN = frozenset({"LT", "LG", "RG", "RT", "ET", "EG"})
"""Labels that mean a lineman wherever a formation lines them up; E is an extra one. C is not among
them: many a staff has a receiver C."""


SNAPPER = "SN"
"""The centre's label where a receiver has his letter."""
