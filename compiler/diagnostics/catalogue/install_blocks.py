"""The install: codes 730 to 739 that the reader tells; the others are in the check's file."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake


class E735(Mistake):
    title = "two install blocks"
    message = "a playbook has one `install` block"
    label = "the second one"
    help = "put the days of both into one block"
