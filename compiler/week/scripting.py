"""The practice script: its clock, its reps, its minutes of contact."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from stemline.week.call_sheet import spot_letter
from stemline.week.killed_rows import killed, printed_row, told_kills
from stemline.week.practising import EVERYBODY, contact_minutes, day_place
from stemline.week.week_values import PlanPeriod, PlanRow, Week

SECONDS = {"fast": 22, "normal": 40, "slow": 40, "look": 30, "freeze": 30}
"""Seconds from one rep to the next: 20 to 25 without a huddle, 35 to 45 with one; common practice,
no published source."""
_USUAL = "normal"


@dataclass(frozen=True)
class ScriptLine:
    """One row of a period; ``first`` is the number of its first rep, ``card`` of its scout card
    ("" without one). ``said`` is the call as it is printed, ``kills`` on what it is killed, where
    no other column says it."""

    first: int
    reps: int
    number: str
    call: str
    page: str
    spot: str
    situation: str
    look: str
    people: str
    tempo: str
    note: str
    card: str
    said: str
    kills: str


@dataclass(frozen=True)
class ScriptPeriod:
    """A period with its times in words; ``holds`` are the reps that its minutes hold at the usual
    tempo, ``needs`` the seconds that its rows take."""

    order: int
    name: str
    begins: str
    ends: str
    minutes: int
    contact: str
    full: bool
    groups: str
    holds: int
    needs: int
    lines: tuple[ScriptLine, ...]

    @property
    def over(self) -> bool:
        """Whether its rows take longer than it has."""
        return self.needs > 60 * self.minutes

    @property
    def scripted(self) -> int:
        return sum(line.reps for line in self.lines)


@dataclass(frozen=True)
class ContactLine:
    """Minutes of full contact of the team or a group: a day's or the week's."""

    who: str
    when: str
    minutes: int
    limit: str
    over: bool


@dataclass(frozen=True)
class ScriptDay:
    """A day's practice in order."""

    title: str
    periods: tuple[ScriptPeriod, ...]
    contact: tuple[ContactLine, ...]


@dataclass(frozen=True)
class Script:
    """A week's practices, and the contact of all of it; ``source`` is where the limit is from."""

    title: str
    days: tuple[ScriptDay, ...]
    week: tuple[ContactLine, ...]
    source: str


CARE = (
    "This is a sum and no advice: your league's rule book and qualified medical staff decide. Who "
    "may have a concussion comes out at once and stays out until medical staff clear him."
)


def script_of(week: Week) -> Script:
    """The script of every day of the week."""
    plan = week.plan
    cards = card_numbers(week)
    minutes = contact_minutes(plan.periods)
    limit = plan.limit
    days = []
    for day in sorted({p.day for p in plan.periods}, key=day_place):
        periods = [p for p in plan.periods if p.day == day]
        at = plan.starts.get(day, 0)
        made = []
        for order, period in enumerate(periods, 1):
            made.append(_period(week, order, period, at, cards))
            at += period.minutes
        lines = [
            _contact(who, day or "the practice", by_day.get(day, 0), limit.value.day)
            for who, by_day in ((EVERYBODY, minutes.days),
                                *((g, d) for g, (d, _) in minutes.by_group.items()))
        ]  # fmt: skip
        days.append(ScriptDay(day or "Practice", tuple(made), tuple(lines)))
    whole = [
        _contact(who, "the week", found, limit.value.week)
        for who, found in ((EVERYBODY, minutes.week),
                           *((g, w) for g, (_, w) in minutes.by_group.items()))
    ]  # fmt: skip
    title = f"Week {plan.number}: {plan.opponent}"
    return Script(title, tuple(days), tuple(whole), limit.cited)


def _contact(who: str, when: str, found: int, most: int | None) -> ContactLine:
    limit = "no figure" if most is None else str(most)
    return ContactLine(who, when, found, limit, most is not None and found > most)


def card_numbers(week: Week) -> dict[tuple[str, str, str], int]:
    """The number of the card of each call, look and spot, in the order in which cards lie."""
    numbers: dict[tuple[str, str, str], int] = {}
    for row in shown_rows(week):
        numbers.setdefault(card_key(row), len(numbers) + 1)
    return numbers


def card_key(row: PlanRow) -> tuple[str, str, str]:
    """What a card is of: rows of one call, look and spot share it."""
    return row.call, row.against, spot_letter(row.spot)


def shown_rows(week: Week) -> Iterator[PlanRow]:
    """Rows against a look that could be drawn, as the look team turns its cards: those of the
    script in its order, then those that are only among the cards."""
    for row in (*_scripted(week), *_scouted(week)):
        if (row.call, row.against, row.spot) in week.plan.shown:
            yield row


def _scouted(week: Week) -> Iterator[PlanRow]:
    for each in week.plan.scouts:
        yield from each.rows


def _scripted(week: Week) -> Iterator[PlanRow]:
    for period in sorted(week.plan.periods, key=lambda p: day_place(p.day)):
        yield from period.rows


def _period(
    week: Week, order: int, period: PlanPeriod, at: int, cards: dict[tuple[str, str, str], int]
) -> ScriptPeriod:
    lines: list[ScriptLine] = []
    needs, rep = 0, 1
    for row in period.rows:
        entry = week.entry(row.call)
        reps = row.reps or 1
        needs += reps * SECONDS[row.tempo or _USUAL]
        card = cards.get(card_key(row)) if row.against else None
        kills = killed(row, entry.play)
        # Where no look is run against, its column says what the row's own kill is seen by.
        kills = kills[1:] if row.kill_to and not row.against else kills
        lines.append(
            ScriptLine(
                first=rep,
                reps=reps,
                number="" if entry.number is None else str(entry.number),
                call=row.call,
                page="" if entry.page is None else str(entry.page),
                spot=spot_letter(row.spot),
                situation=row.situation,
                look=row.against or row.look,
                people=entry.personnel,
                tempo=row.tempo,
                note=row.note,
                card="" if card is None else str(card),
                said=printed_row(row, entry.play),
                kills=told_kills(kills),
            )
        )
        rep += reps
    return ScriptPeriod(
        order=order,
        name=period.name,
        begins=clock(at),
        ends=clock(at + period.minutes),
        minutes=period.minutes,
        contact=period.contact.value,
        full=period.contact.full,
        groups=", ".join(period.groups),
        holds=60 * period.minutes // SECONDS[_USUAL],
        needs=needs,
        lines=tuple(lines),
    )


def clock(minutes: int) -> str:
    """Minutes after midnight as on a watch; past it the next day begins."""
    return f"{minutes // 60 % 24}:{minutes % 60:02d}"
