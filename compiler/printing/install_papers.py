"""A week's install sheet: its calls as every paper names them, by the day that completed each and
by their numbers, so that a call moved to another situation stays where it is."""

from __future__ import annotations

from collections.abc import Iterable

from stemline.emit.week_install import InstalledCall, InstalledCalls
from stemline.printing.position_papers import listed
from stemline.week.install_days import InstallSheet
from stemline.week.week_values import Week

NOWHERE_RUN = "in no practice"


def installed_calls(sheet: InstallSheet, week: Week) -> tuple[InstalledCalls, ...]:
    """The week's calls, with the days on which its practices run each."""
    practised = dict(sheet.practised)
    scripted = any(days for _, days in sheet.practised)

    def told(call: str) -> InstalledCall:
        each, days = listed(week.entry(call)), ", ".join(day[:3] for day in practised[call] if day)
        ran = days or ("run" if practised[call] else NOWHERE_RUN if scripted else "")
        return InstalledCall(each.number, each.call, each.page, ran)

    def in_order(calls: Iterable[str]) -> tuple[InstalledCall, ...]:
        return tuple(map(told, sorted(calls, key=lambda call: week.entry(call).number or 0)))

    return tuple(InstalledCalls(d.title, in_order(d.calls)) for d in sheet.planned)
