"""The picture said in words."""

from __future__ import annotations

from syrupy.assertion import SnapshotAssertion

from draw.sample_plays import counter, quads
from draw.sample_runs import look_page, outside_zone
from stemline.draw.describe import describe


def test_a_pass(snapshot: SnapshotAssertion) -> None:
    assert describe(quads()).replace(". ", ".\n") == snapshot


def test_a_run(snapshot: SnapshotAssertion) -> None:
    assert describe(counter()).replace(". ", ".\n") == snapshot


def test_a_run_against_a_look(snapshot: SnapshotAssertion) -> None:
    assert describe(outside_zone()).replace(". ", ".\n") == snapshot


def test_a_look(snapshot: SnapshotAssertion) -> None:
    assert describe(look_page()).replace(". ", ".\n") == snapshot
