"""Plan → `Week`: numbers, short names and pages given to its calls, once for all papers."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from stemline.week.bands import shorts_for
from stemline.week.call_sheet import Ems
from stemline.week.game_plan import GamePlan
from stemline.week.install_days import InstallSheet
from stemline.week.week_values import AgainstLooks, Plan, Week, entries_of
from stemline.week.wristband_numbers import numbers_of


def last_numbers(plans: Iterable[Plan], before: int) -> dict[str, int]:
    """The numbers of the last week before the one of that number, by call; none where it is the
    first. ``plans`` stand in the order of the games."""
    last: dict[str, int] = {}
    for plan in plans:
        if plan.number < before:
            last = numbers_of(plan, last)
    return last


def work_out(
    plan: Plan,
    last: Mapping[str, int],
    pages: Mapping[str, int],
    ems: Ems,
    game: GamePlan | None = None,
    install: InstallSheet | None = None,
    against: AgainstLooks | None = None,
) -> Week:
    """The week of a plan. ``last`` are last week's numbers and ``pages`` the book's, by call;
    ``game`` is its game plan, ``install`` what is put in by then and ``against`` its runs against
    the opponent's looks, where they are asked for."""
    numbers = numbers_of(plan, last)
    shorts = shorts_for(plan, lambda call: str(numbers[call]), ems)
    return Week(plan, entries_of(plan, numbers, pages, shorts), last, game, install, against or {})
