"""The shape of one catalogue entry, and the catalogue put together from its parts."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Wording:
    """How one code is said.

    ``title`` names the mistake in a few words and never changes with the case;
    ``message`` says what is wrong, ``label`` stands under the marked text, ``help`` says
    what to write instead. All three may hold ``{fields}`` filled from the diagnostic.
    Lower case, no full stop at the end.
    """

    title: str
    message: str
    label: str = ""
    help: str = ""
