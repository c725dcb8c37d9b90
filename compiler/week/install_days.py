"""What the install sheet shows: the season by day, and what this week's calls were taught on."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class NewJobs:
    """Men, by letter, who have the same to learn on a day: how many jobs no call before gave them,
    and the concepts these come from."""

    men: tuple[str, ...]
    jobs: int
    concepts: tuple[str, ...]


@dataclass(frozen=True)
class InstallDay:
    """A day or a week of the install. ``new`` are names by kind ("formations"); ``count`` is how
    many; ``came`` the calls that can be called from this day on, ``callable`` all that then can.
    ``now`` tells that the week's game is the first after it."""

    title: str
    date: str
    new: tuple[tuple[str, tuple[str, ...]], ...]
    count: int
    again: tuple[str, ...]
    men: tuple[NewJobs, ...]
    came: tuple[str, ...]
    callable: int
    now: bool


@dataclass(frozen=True)
class DayOfCalls:
    """Calls of the week's plan that this day completed, by how they are spoken; ``title`` is "" for
    those that no day has put in."""

    title: str
    calls: tuple[str, ...]


@dataclass(frozen=True)
class RetaughtDay:
    """A practice of the week: the concepts that its script runs again, each with the day that put
    it in ("" for none)."""

    day: str
    concepts: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class InstallSheet:
    """``practised`` are the days on which the week runs each call of its plan."""

    name: str
    says: tuple[str, ...]
    days: tuple[InstallDay, ...]
    planned: tuple[DayOfCalls, ...]
    practices: tuple[RetaughtDay, ...]
    practised: tuple[tuple[str, tuple[str, ...]], ...]
    all_calls: int
