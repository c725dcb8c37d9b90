"""A path moved to another place: what a test draws wrong on purpose."""

from __future__ import annotations

from dataclasses import replace

from stemline.geometry.paths import Path, Point


def shifted(path: Path, by: Point) -> Path:
    legs = tuple(replace(leg, to=leg.to + by) for leg in path.legs)
    return Path(path.start + by, legs, path.ending)
