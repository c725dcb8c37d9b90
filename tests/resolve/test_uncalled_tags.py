"""A tag that no call has is proved over the plain calls, and told once, with that it has none."""

from __future__ import annotations

from resolve.texts import ELEVEN, TRIPS, compiled, dress

BOTH = "concept Test\n    a is strong #1\n    a runs go\n    feet 3\n    read a on 3\n\n"
TAG = "tag Wide for Test\n    x is strong #4\n    x runs go\n    y is weak #3\n    y runs go\n"


def test_a_tag_that_no_call_has_is_told_once_and_that_it_has_none() -> None:
    """Two men of it are nobody: one is said, beside that no call has the tag."""
    made = compiled(ELEVEN, TRIPS, BOTH, TAG, dress("Trips", concept="Test"))
    (told,) = [d for d in made.diagnostics if d.is_error]
    assert [r.label for r in told.related] == [
        "no call has Wide yet: a dress-up calls it by `with Wide`"
    ]


def test_a_tag_of_a_call_is_told_whole() -> None:
    calls = "dress Test\n    in Trips with plain, Wide\n"
    made = compiled(ELEVEN, TRIPS, BOTH, TAG, calls)
    told = [d for d in made.diagnostics if d.is_error]
    assert len(told) == 2 and not any(d.related for d in told)
