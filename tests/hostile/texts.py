"""The text of a seed and a number: the same each time."""

from __future__ import annotations

from random import Random

from .bases import base
from .floods import FLOODS, flood
from .mutations import MUTATIONS, bytes_spoilt

_FLOODED = 0.005
_BYTES = 0.1


def text_of(seed: int, number: int) -> tuple[str, bytes]:
    """What was done, in a few words, and the bytes of the file."""
    rng = Random(f"{seed}:{number}")
    if rng.random() < _FLOODED:
        sort = rng.choice(FLOODS)
        return sort.__name__, flood(rng, sort).encode("utf-8", "surrogatepass")
    text, done = base(rng), []
    for _ in range(rng.choice((1, 1, 1, 2, 3, 6))):
        mutation = rng.choice(MUTATIONS)
        text = mutation(rng, text)
        done.append(mutation.__name__)
    raw = text.encode("utf-8", "surrogatepass")
    if rng.random() < _BYTES:
        raw = bytes_spoilt(rng, raw)
        done.append(bytes_spoilt.__name__)
    return " ".join(done), raw
