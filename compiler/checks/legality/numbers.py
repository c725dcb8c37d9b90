"""Does everybody wear a number that fits his place, where the personnel says it?

Officials tell who may catch a pass by the number. A lineman's number at a wide place is a foul or
makes him ineligible; too few of those numbers inside is a foul of the formation. A code without
numbers, eight-man or six-man, asks for nothing.

Example: ``X is wideout, 72``. Write instead a number that may catch a pass, or let him report.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.legality.snap import Snap, When, broken, ranges, within
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.players import Position

WHEN = When.STANDING


def check_numbers(snap: Snap) -> Iterator[Diagnostic]:
    code, known = snap.code, snap.code.ineligible_numbers
    for man in snap.men:
        if man.interior or man.position is Position.QUARTERBACK or man.number is None:
            continue
        for rule in (known, code.also_ineligible):
            if within(man.number, rule.value):
                yield broken(
                    527, rule, code, snap.numbers.get(man.label) or snap.at(man), man=man.label,
                    jersey=man.number, ranges=ranges(rule.value),
                )  # fmt: skip
    if not known.value:
        return
    inside = [m for m in snap.on_line if m.interior]
    may = (*known.value, *code.also_ineligible.value)
    wrong = [m for m in inside if m.number is not None and not within(m.number, may)]
    if len(inside) - len(wrong) < code.ineligible.value <= len(inside):
        for man in wrong:
            yield broken(
                528, known, code, snap.numbers.get(man.label) or snap.at(man), man=man.label,
                jersey=man.number, ranges=ranges(may), wanted=int(code.ineligible.value),
            )  # fmt: skip
