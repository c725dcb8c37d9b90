"""Figures of the rule books, copied here with edition and rule: the tests read no other file. What
formations of `test_legality.py` decide needs no row, nor what stands from memory in the code.

``seen`` tells how the figure was checked: the article itself, a report of it, a data table, our own
reading of a text without a figure, or none of these.
"""

from __future__ import annotations

from dataclasses import dataclass

from stemline.football.rulebook.rules import MotionWay, PlayClock

Value = float | None | bool | tuple[tuple[int, int], ...] | MotionWay | PlayClock


@dataclass(frozen=True)
class Printed:
    """A figure as a book or table has it; lengths in yards, times in seconds."""

    code: str
    figure: str
    value: Value
    source: str
    seen: str


ARTICLE = "the article"
REPORT = "a report of the rule"
TABLE = "a data table"
READING = "our reading of the article"
NOTHING = "no text seen"


def rows(code: str, seen: str, source: str, **figures: Value) -> tuple[Printed, ...]:
    return tuple(Printed(code, name, value, source, seen) for name, value in figures.items())


_ANY, _NOT_FORWARD = MotionWay.ANY, MotionWay.NOT_FORWARD
_FIFTIES = ((50, 69),)
_SEVENTIES = ((50, 79),)
_FORTY = PlayClock(
    40, "the end of the last play", 25, "the ready signal after a penalty or another stop"
)
_TWENTY = PlayClock(20, "the referee's whistle")
_THIRTY_FIVE = PlayClock(
    35, "the end of the last play", 20,
    "the whistle, in the last 3 minutes of a half and after a penalty or another stop",
)  # fmt: skip

# Football Canada's amateur code. The field is from an older web copy of its rule book, without a
# date, kept by a New Brunswick body.
CANADIAN_AMATEUR = (
    *rows("canadian amateur", ARTICLE, "Canadian Rule Book for Amateur Tackle Football, undated "
          "web copy, 1-1-1", length=110, width=65, end_zone=20),
    *rows("canadian amateur", ARTICLE, "the same, 1-1-6", hash_from_sideline=24),
    *rows("canadian amateur", ARTICLE, "Football Canada, release of the 2016 rule changes",
          players=12),
    *rows("canadian amateur", ARTICLE, "Amateur Tackle Rule Book Changes for 2019: the five "
          "ineligibles and one eligible man at each end; low blocks from tight end to tight end, "
          "to 2 yards past the line", ineligible=5, on_line=7),
    *rows("canadian amateur", REPORT, "twelve less the seven of 2019", in_backfield=5),
    *rows("canadian amateur", REPORT, "an older report says 40-69; unsettled",
          ineligible_numbers=_FIFTIES),
    *rows("canadian amateur", NOTHING, "", numbers_from_sideline=10, restraining=1, downs=3,
          line_reach=1, back_depth=1, between_foul=True, motion_most=None,
          motion_way=_ANY, motion_set=0, motion_from_line=None, downfield=1,
          downfield_crossing=True, also_ineligible=(), block_past=1, exchange=False,
          play_clock=_TWENTY),
)  # fmt: skip

CANADIAN_PROFESSIONAL = (
    *rows("canadian professional", ARTICLE, "Official Playing Rules for the CFL, Rule 1 section 1",
          length=110),
    *rows("canadian professional", ARTICLE, "announcement of rule changes, 27 April 2022",
          hash_from_sideline=28),
    *rows("canadian professional", ARTICLE, "Official Playing Rules for the CFL 2008, 4-1-2: "
          "within a yard of the line, and nobody may stand in doubt", line_reach=1, back_depth=1,
          between_foul=True),
    *rows("canadian professional", ARTICLE, "the same, 4-1-3", restraining=1),
    *rows("canadian professional", ARTICLE, "announcement, 22 September 2025", downs=3),
    *rows("canadian professional", ARTICLE, "Official Playing Rules for the CFL 2021, 4-5",
          ineligible=5, on_line=7, in_backfield=5, ineligible_numbers=_FIFTIES),
    *rows("canadian professional", REPORT, "news reports", players=12, motion_most=None,
          motion_way=_ANY),
    *rows("canadian professional", TABLE, "sportypy 1.0.0, cfl", width=65, end_zone=20,
          numbers_from_sideline=8),
    *rows("canadian professional", ARTICLE, "2016, 9-2-1: free except when a pass is thrown across",
          block_past=0),
    *rows("canadian professional", ARTICLE, "announcement, 22 September 2025: 35 seconds from the "
          "end of the play; release of 12 May 2026: 20 in the last 3 minutes and after stops",
          play_clock=_THIRTY_FIVE),
    *rows("canadian professional", NOTHING, "", motion_set=0, motion_from_line=None,
          downfield=1, downfield_crossing=True, also_ineligible=(), exchange=False),
    *rows("canadian professional", ARTICLE, "Official Playing Rules for the CFL 2013, 6-4: one on "
          "any down", forward_passes=1),
    *rows("canadian professional", ARTICLE, "the same, 2010, 6-2: handed behind the line",
          hand_past=False),
    *rows("canadian professional", ARTICLE, "the same, 2013, 6-4: from behind the scrimmage line",
          pass_past=False),
)  # fmt: skip

CANADIAN_PROFESSIONAL_2027 = (
    *rows("canadian professional 2027", ARTICLE, "announcement, 22 September 2025", length=100,
          width=65, end_zone=15, downs=3),
    *rows("canadian professional 2027", NOTHING, "details open", players=12, hash_from_sideline=28,
          numbers_from_sideline=8, restraining=1, ineligible=5,
          on_line=7, in_backfield=5, line_reach=1, back_depth=1, between_foul=True,
          ineligible_numbers=_FIFTIES, motion_most=None, motion_way=_ANY, motion_set=0,
          motion_from_line=None, downfield=1, downfield_crossing=True,
          also_ineligible=(), block_past=0, exchange=False, play_clock=_THIRTY_FIVE),
)  # fmt: skip

CANADIAN_NINE = (
    *rows("canadian nine-man", REPORT, "the nine-man game in Saskatchewan", length=100),
    *rows("canadian nine-man", NOTHING, "as twelve men with two linemen fewer", players=9, width=65,
          end_zone=20, hash_from_sideline=24, numbers_from_sideline=10,
          restraining=1, downs=3, ineligible=3, on_line=5, in_backfield=4, line_reach=1,
          back_depth=1, between_foul=True, ineligible_numbers=_FIFTIES, also_ineligible=(),
          motion_most=None, motion_way=_ANY, motion_set=0, motion_from_line=None, downfield=1,
          downfield_crossing=True, block_past=1, exchange=False, play_clock=_TWENTY),
)  # fmt: skip

CANADIAN_SIX = (
    *rows("canadian six-man", ARTICLE, "6-a-side rules of an Ontario league, 2023", players=6,
          length=110, width=40, end_zone=10, hash_from_sideline=13),
    *rows("canadian six-man", NOTHING, "read 6 for 12", numbers_from_sideline=6,
          restraining=1, downs=3, ineligible=0, on_line=3, in_backfield=3,
          line_reach=1, back_depth=1, between_foul=True, ineligible_numbers=(), also_ineligible=(),
          motion_most=None, motion_way=_ANY, motion_set=0, motion_from_line=None, downfield=None,
          downfield_crossing=True, block_past=1, exchange=False, play_clock=_TWENTY),
)  # fmt: skip

HIGH_SCHOOL = (
    *rows("high school", ARTICLE, "NFHS Football Rules Book, 1-1-2: 360 by 160 feet with the end "
          "zones; four downs", length=100, width=160 / 3, end_zone=10, downs=4),
    *rows("high school", ARTICLE, "the same, 1-1-3", players=11),
    *rows("high school", ARTICLE, "the same, 2-28-1: the neutral zone is as long as the ball",
          restraining=0),
    *rows("high school", ARTICLE, "the same, case 1.1.3: five men is the least", on_line=5),
    *rows("high school", ARTICLE, "the same, 2-28-2 and 7-5-12", downfield=2,
          downfield_crossing=True),
    *rows("high school", REPORT, "the same, 7-2-5a, as reported in 2024", ineligible=5,
          in_backfield=4, ineligible_numbers=_SEVENTIES),
    *rows("high school", TABLE, "sportypy 1.0.0, nfhs11: three equal lanes of 53 ft 4 in; numbers "
          "from 7 to 9", hash_from_sideline=160 / 9, numbers_from_sideline=8),
    *rows("high school", NOTHING, "", line_reach=0.5, back_depth=None,
          between_foul=True, motion_most=1, motion_way=_NOT_FORWARD, motion_set=1,
          motion_from_line=5, also_ineligible=(), exchange=False),
    *rows("high school", ARTICLE, "the same, 7-5-8a: past the neutral zone", block_past=0),
    *rows("high school", ARTICLE, "the same, 7-5-1, as an officials' page prints it: one in the "
          "down", forward_passes=1),
    *rows("high school", ARTICLE, "the same, 7-5-1: both feet in or behind the neutral zone",
          pass_past=False),
    *rows("high school", REPORT, "the same, 3-6-1", play_clock=_FORTY),
)  # fmt: skip

COLLEGE = (
    *rows("college", ARTICLE, "NCAA Football Rules and Interpretations, 1-1-1", players=11),
    *rows("college", ARTICLE, "the same, 2016-17, 1-2-1", length=100, hash_from_sideline=20),
    *rows("college", ARTICLE, "the same, 2016-17, 2-17-1", restraining=0),
    *rows("college", ARTICLE, "the same, 2016-17, 5-1-1", downs=4),
    *rows("college", ARTICLE, "the same, 7-1-4a-2 to -4", ineligible=5, on_line=5, in_backfield=4),
    *rows("college", ARTICLE, "the same, 7-3-3", ineligible_numbers=_SEVENTIES),
    *rows("college", ARTICLE, "the same, 2016-17, 2-27-4: places, no yards", back_depth=None,
          motion_from_line=None),
    *rows("college", ARTICLE, "the same, 2016-17, A.R. 7-1-4", motion_way=_NOT_FORWARD),
    *rows("college", ARTICLE, "the same, 2016-17, 2-22-1", motion_set=1),
    *rows("college", ARTICLE, "the same, 2016-17, A.R. 7-3-10", downfield=3,
          downfield_crossing=True),
    *rows("college", REPORT, "officials' slides", motion_most=1),
    *rows("college", READING, "the same, 2016-17, 2-27-4: his head breaks the plane",
          line_reach=0.5),
    *rows("college", TABLE, "sportypy 1.0.0, ncaa", width=160 / 3, end_zone=10,
          numbers_from_sideline=8),
    *rows("college", ARTICLE, "the same, 2016-17, A.R. 7-3: a charge within a yard", block_past=1),
    *rows("college", ARTICLE, "the same, 7-3-2-d: not the second of a down", forward_passes=1),
    *rows("college", ARTICLE, "the same, 7-1-6: both behind the line", hand_past=False),
    *rows("college", ARTICLE, "the same, 7-3-2-a: not from beyond the neutral zone",
          pass_past=False),
    *rows("college", NOTHING, "", also_ineligible=(), exchange=False,
          play_clock=_FORTY),
)  # fmt: skip

PROFESSIONAL = (
    *rows("professional", ARTICLE, "NFL Official Playing Rules, digest", length=100, end_zone=10,
          hash_from_sideline=70.75 / 3),
    *rows("professional", ARTICLE, "the league's operations glossary", back_depth=1,
          ineligible_numbers=_SEVENTIES),
    *rows("professional", REPORT, "5-3-1", also_ineligible=((90, 99),)),
    *rows("professional", ARTICLE, "4-6", play_clock=_FORTY),
    *rows("professional", REPORT, "digest", block_past=1),
    *rows("professional", REPORT, "7-5-1", on_line=7),
    *rows("professional", REPORT, "8-3-1", downfield=1, downfield_crossing=False),
    *rows("professional", TABLE, "sportypy 1.0.0, nfl", width=160 / 3, numbers_from_sideline=13),
    *rows("professional", NOTHING, "", players=11, restraining=0, downs=4, ineligible=5,
          in_backfield=4, line_reach=0.5, between_foul=True, motion_most=1,
          motion_way=_NOT_FORWARD, motion_set=1, motion_from_line=None,
          exchange=False),
)  # fmt: skip

NINE_MAN = (
    *rows("nine-man", REPORT, "five on the line, four back", on_line=5, in_backfield=4),
    *rows("nine-man", TABLE, "sportypy 1.0.0, nfhs9", length=80, width=40, end_zone=10,
          hash_from_sideline=(40 - 70 / 9) / 2, numbers_from_sideline=6),
    *rows("nine-man", NOTHING, "", players=9, restraining=0, downs=4, ineligible=3,
          line_reach=0.5, back_depth=None, between_foul=True, ineligible_numbers=_SEVENTIES,
          motion_most=1, motion_way=_NOT_FORWARD, motion_set=1, motion_from_line=5, downfield=2,
          downfield_crossing=True, also_ineligible=(), block_past=0, exchange=False,
          play_clock=_FORTY),
)  # fmt: skip

EIGHT_MAN = (
    *rows("eight-man", ARTICLE, "NFHS eight-player modifications, Rule 1", players=8, length=80,
          width=40, hash_from_sideline=15),
    *rows("eight-man", ARTICLE, "the same, Rule 7: two ends, up to three backs, any number",
          ineligible=3, in_backfield=3, ineligible_numbers=()),
    *rows("eight-man", TABLE, "sportypy 1.0.0, nfhs8", end_zone=10, numbers_from_sideline=6),
    *rows("eight-man", ARTICLE, "the same, Rule 7a: at least three; older texts say five",
          on_line=3),
    *rows("eight-man", NOTHING, "", also_ineligible=(), block_past=0, exchange=False,
          play_clock=_FORTY, restraining=0, downs=4, line_reach=0.5, back_depth=None,
          between_foul=True, motion_most=1, motion_way=_NOT_FORWARD, motion_set=1,
          motion_from_line=5, downfield=2, downfield_crossing=True),
)  # fmt: skip

SIX_MAN = (
    *rows("six-man", REPORT, "reports on the six-player game", length=80, ineligible=0,
          on_line=3, downfield=None),
    *rows("six-man", TABLE, "sportypy 1.0.0, nfhs6", width=40, end_zone=10, hash_from_sideline=15,
          numbers_from_sideline=6),
    *rows("six-man", NOTHING, "", players=6, restraining=0, downs=4, in_backfield=3,
          line_reach=0.5, back_depth=None, between_foul=True, ineligible_numbers=(), motion_most=1,
          motion_way=_NOT_FORWARD, motion_set=1, motion_from_line=5, downfield_crossing=True,
          also_ineligible=(), block_past=0, play_clock=_FORTY),
    *rows("six-man", REPORT, "a report; a Texas association's Section 163, 3: the receiver of the "
          "snap and another player", exchange=True),
)  # fmt: skip

PRINTED = (
    *CANADIAN_AMATEUR,
    *CANADIAN_PROFESSIONAL,
    *CANADIAN_PROFESSIONAL_2027,
    *CANADIAN_NINE,
    *CANADIAN_SIX,
    *HIGH_SCHOOL,
    *COLLEGE,
    *PROFESSIONAL,
    *NINE_MAN,
    *EIGHT_MAN,
    *SIX_MAN,
)

# Texts: how the rule they tell was seen. One told from two sources is as sure as the weaker.
TEXTS: dict[str, dict[str, str]] = {
    "canadian amateur": {
        "eligible": NOTHING,
        "low_block": ARTICLE,
        "behind_block": ARTICLE,
        "blindside_block": ARTICLE,
        "crossing_contact": REPORT,
        "chop_block": NOTHING,
    },
    "canadian professional": {
        "eligible": ARTICLE,
        "low_block": ARTICLE,
        "behind_block": REPORT,
        "blindside_block": ARTICLE,
        "crossing_contact": ARTICLE,
    },
    "canadian professional 2027": {},
    "canadian nine-man": {},
    "canadian six-man": {},
    "high school": {
        "eligible": NOTHING,
        "low_block": ARTICLE,
        "behind_block": ARTICLE,
        "blindside_block": ARTICLE,
        "crossing_contact": ARTICLE,
        "chop_block": ARTICLE,
    },
    "college": {
        "eligible": ARTICLE,
        "low_block": REPORT,
        "behind_block": ARTICLE,
        "blindside_block": NOTHING,
        "crossing_contact": ARTICLE,
        "chop_block": ARTICLE,
    },
    "professional": {
        "eligible": ARTICLE,
        "low_block": ARTICLE,
        "behind_block": REPORT,
        "blindside_block": NOTHING,
        "crossing_contact": REPORT,
        "chop_block": REPORT,
    },
    "nine-man": {},
    "eight-man": {"eligible": ARTICLE},
    "six-man": {"eligible": REPORT},
}


@dataclass(frozen=True)
class Hash:
    """Hash marks of one code and edition: yards from the sideline and yards apart."""

    code: str
    edition: str
    from_sideline: float
    apart: float
    source: str


HASHES = (
    Hash("canadian amateur", "the older web copy", 24, 17, "Canadian Rule Book for Amateur Tackle "
         "Football, undated web copy, 1-1-6"),
    Hash("canadian professional", "to 2021", 24, 17, "Official Playing Rules for the Canadian "
         "Football League, Rule 1 section 1"),
    Hash("canadian professional", "2022 on", 28, 9, "CFL announcement of rule changes, 27 April "
         "2022"),
    Hash("college", "2016-17", 20, 40 / 3, "NCAA Football Rules and Interpretations, 1-2-1"),
    Hash("professional", "digest", 70.75 / 3, 18.5 / 3, "NFL Official Playing Rules, digest: 70 ft "
         "9 in from the sideline"),
    Hash("eight-man", "undated page", 15, 10, "NFHS eight-player modifications"),
)  # fmt: skip
