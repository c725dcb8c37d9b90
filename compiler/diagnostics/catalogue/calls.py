"""Calls, roles, tags and dress-ups: codes 600 to 799."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

WORDING: dict[str, Wording] = {}
