"""Two orders of the quarterback of which a look decides: what is written instead of `read … when
middle open`, for he has his order before anyone knows what the defence plays."""

from __future__ import annotations

from collections.abc import Sequence

from stemline.diagnostics.catalogue.football import E413, E461
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.conditions import LookWord
from stemline.playbook.concepts import LookAt


def order_by_look(
    refused: Diagnostic, key: str, looks: Sequence[LookAt], concept: str
) -> Diagnostic:
    """``refused`` with the lines to type: a tag that has the order, and one that goes to it at the
    line. Another diagnostic, and one of a tag's or run's line (no ``concept``), is left as it is.
    """
    if not isinstance(refused.said, E413) or not concept:
        return refused
    look = refused.said.look
    other = " ".join(word.capitalize() for word in look.split())
    instead = (
        f"the order that he has for one look is a tag's, and a kill goes to it: `tag {other} for "
        f"{concept}` with `{key} {_said(looks)}`, and `tag By Look for {concept}` with `kill to "
        f"{concept} {other} when {look}`, called as `{concept} By Look`; "
    )
    return E413(look=look, instead=instead).at(refused.span)


def side_by_look(refused: Diagnostic, concept: str) -> Diagnostic:
    """``refused``, where it picks a side by what the defence shows, with the lines to type: the
    concept's order is for the one look, a tag's for the other. Another, and one of a tag's or run's
    line (no ``concept``), is left as it is."""
    look = str(refused.said.__dict__.get("found", "")).casefold()
    word = next((word for word in LookWord if word.value == look), None)
    if not isinstance(refused.said, E461) or word is None or not concept:
        return refused
    other = " ".join(part.capitalize() for part in word.opposite.value.split())
    instead = (
        f"two sides by that are two orders and a kill: `read` here is the order when {look}, `tag "
        f"{other} for {concept}` has a `read` of its own, and `tag By Look for {concept}` with "
        f"`kill to {concept} {other} when {word.opposite.value}` goes to it, called as `{concept} "
        "By Look`; "
    )
    return E413(look=look, instead=instead).at(refused.span)


def _said(looks: Sequence[LookAt]) -> str:
    """An order as it is typed."""
    return " > ".join(
        " or ".join(look.last)
        or look.target
        + (f" on {look.foot}" if look.foot else "")
        + (f" with {look.partner}" if look.partner else "")
        for look in looks
    )
