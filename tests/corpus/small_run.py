"""A run of five lines, for texts that go wrong in one of them or in what is said beside it."""

from __future__ import annotations

RUN = """
run Z
    carrier is back
    carrier aims playside A
    line blocks on or climb
    everyone else blocks stalk

dress Z
    in Three Two
"""
