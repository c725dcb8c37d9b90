"""What whoever prints is told."""

from __future__ import annotations

from collections.abc import Callable

Progress = Callable[[int, int], None]
"""Told after each picture how many are drawn, and of how many."""
