"""Calls that fail alike are one diagnostic with their number: what may differ between them."""

from __future__ import annotations

from stemline.checks.blocks_find_men import W670
from stemline.checks.men_without_jobs import W650
from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.resolve.gathering import gathered
from stemline.source import Span

AT = Span("book.play", 3, 1, 5)


def one(*found: Mistake) -> dict[str, str]:
    (told,) = gathered(mistake.at(AT) for mistake in found)
    return dict(told.values)


def idle(call: str, *men: str) -> Mistake:
    return W650(call=call, concept="Test", man=men, from_spot="")


def free(call: str, *men: str) -> Diagnostic:
    return W670(call=call, free=men, look="Bear").at(AT)


def test_all_the_men_of_calls_that_are_counted_together_are_named_once() -> None:
    values = one(idle("A", "X", "Z"), idle("B", "Z"), idle("C", "H"))
    assert (values["man"], values["call"]) == ("X, Z, H", "A and 2 more calls")


def test_the_same_men_from_the_other_side_are_one_cause_and_others_another() -> None:
    told = gathered([free("A", "J", "W"), free("B", "W", "J"), free("C", "M", "W")])
    said = [dict(d.values) for d in told]
    assert [v["call"] for v in said] == ["A and 1 more call", "C"]
    assert said[0]["free"] == "J and W"
