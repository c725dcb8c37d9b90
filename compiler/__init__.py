"""A plain-text playbook compiler for gridiron football coaches."""

from __future__ import annotations

import time

BEGAN = time.time()
"""When the program was loaded, before any other part of it: what has been written to its source
since is not what runs."""
