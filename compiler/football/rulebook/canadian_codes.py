"""The Canadian codes, twelve men, every figure with its edition and rule and how sure it is."""

from __future__ import annotations

from dataclasses import replace

from stemline.football.rulebook.rules import (
    CFL,
    Certainty,
    Code,
    Known,
    MotionWay,
    PlayClock,
    memory,
    published,
    rare,
    table,
)

_FC_OLD = "Canadian Rule Book for Amateur Tackle Football, undated web copy"
_FC16 = "Football Canada, 2016 rule-change release"
_FC19 = "Football Canada, rule changes for 2019"
_FC26 = "Football Canada Tackle Rule Book 2026"
_CFL08 = f"{CFL} 2008"
_CFL21 = f"{CFL} 2021, 4-5"
_CFL_2018 = "CFL, report of the 2018 rule changes"
_CFL_2022 = "CFL announcement of rule changes, 27 April 2022"
_CFL_2025 = "CFL announcement, 22 September 2025"
_CFL_2026 = "CFL Board of Governors release, 12 May 2026"

CANADIAN_AMATEUR = Code(
    key="canadian amateur",
    **rare("canadian amateur"),
    title="Canadian amateur, 12 men",
    players=published(12, _FC16),
    length=published(110, f"{_FC_OLD}, 1-1-1"),
    width=published(65, f"{_FC_OLD}, 1-1-1"),
    end_zone=published(20, f"{_FC_OLD}, 1-1-1"),
    hash_from_sideline=published(24, f"{_FC_OLD}, 1-1-6"),
    numbers_from_sideline=memory(
        10, "the amateur code asks for no painted numbers; 10 to 12 yards is a usual landmark"
    ),
    restraining=memory(1, f"as the Canadian professional rule, {_CFL08}, 4-1-3"),
    downs=memory(3, "three downs; no rule text seen"),
    line=("LT", "LG", "C", "RG", "RT"),
    ineligible=published(5, f"{_FC19}: line players are the five ineligibles and two ends"),
    on_line=published(7, f"{_FC19}, implied: five ineligibles and an eligible man at each end"),
    in_backfield=Known(5, Certainty.REPORTED, f"what {_FC19} leave: twelve less seven"),
    line_reach=memory(1, f"within a yard of the ball, as {_CFL08}, 4-1-2"),
    back_depth=Known(1, Certainty.MEMORY, f"as {_CFL08}, 4-1-2"),
    between_foul=Known(True, Certainty.MEMORY, f"as {_CFL08}, 4-1-2"),
    eligible=Known(
        "one man at each end of the line, and every back",
        Certainty.MEMORY,
        f"the ends by {_FC19}; that every back is eligible is from memory",
    ),
    ineligible_numbers=Known(
        ((50, 69),),
        Certainty.REPORTED,
        "40-69 by an older report, 50-69 possible now, unsettled: ask the league",
    ),
    also_ineligible=Known((), Certainty.MEMORY, "40 to 49 by an older report, unsettled"),
    motion_most=Known(None, Certainty.MEMORY, "every back but the quarterback, as in the CFL"),
    motion_way=Known(MotionWay.ANY, Certainty.MEMORY, "any way behind the line, as in the CFL"),
    motion_set=memory(0, "no set time for backs, as in the CFL"),
    motion_from_line=Known(None, Certainty.MEMORY, "line players are still; no depth known"),
    downfield=Known(1, Certainty.MEMORY, "figure not confirmed in any amateur text seen"),
    downfield_crossing=Known(True, Certainty.MEMORY, "not confirmed in any amateur text seen"),
    block_past=memory(1, "within a yard past the line, as is usual teaching"),
    play_clock=Known(
        PlayClock(20, "the referee's whistle"), Certainty.MEMORY, "no amateur text seen"
    ),
    low_block=Known(
        "Blocks below the waist are illegal for both teams except close to the ball: between the "
        "tight ends, from the first spot of the quarterback or kicker to 2 yards past the line.",
        Certainty.PUBLISHED,
        _FC19,
    ),
    behind_block=Known(
        "A push from behind or a bump above the waist is an illegal block.",
        Certainty.PUBLISHED,
        f"{_FC26}, 7-1-2",
    ),
    blindside_block=Known(
        "Forcible blocks by a man who moves back toward his own dead line are illegal anywhere.",
        Certainty.PUBLISHED,
        _FC19,
    ),
    crossing_contact=Known(
        "A crosser who runs into a defender past the line before the catch is interfering. "
        "Cross close, touch nobody.",
        Certainty.REPORTED,
        "Canadian officials' sheet on pass interference",
    ),
    chop_block=Known(
        "Two men on one: where one blocks him high, nobody goes low. No Canadian text on high and "
        "low blocks was seen: ask your league.",
        Certainty.MEMORY,
        "as the US codes have it",
    ),
    authority="Football Canada's current rule book and your league",
    canadian=True,
)

CANADIAN_PROFESSIONAL = replace(
    CANADIAN_AMATEUR.recalled("as in the Canadian amateur code"),
    key="canadian professional",
    **rare("canadian professional"),
    title="Canadian professional, 12 men, 2022 to 2026",
    players=Known(12, Certainty.REPORTED, "the professional game, as reported"),
    length=published(110, f"{CFL}, Rule 1 section 1, web copy from before 2022"),
    width=table(65, "CFL field"),
    end_zone=table(20, "CFL field"),
    hash_from_sideline=published(28, f"{_CFL_2022} (until 2021: 24)"),
    numbers_from_sideline=table(
        8, "CFL field: bottoms 7 yards from the sideline, 2 high; their middle"
    ),
    restraining=published(1, f"{_CFL08}, 4-1-3"),
    downs=published(3, f"{_CFL_2025}: three downs are kept"),
    ineligible=published(5, f"{_CFL21}: five in one unbroken run, the centre among them"),
    on_line=published(7, f"{_CFL21}-1"),
    in_backfield=Known(
        5, Certainty.PUBLISHED, f"{_CFL21}-1; the 2013 text counts the quarterback among the five"
    ),
    line_reach=published(1, f"{_CFL08}, 4-1-2: head and shoulders within a yard of the line"),
    back_depth=Known(
        1, Certainty.PUBLISHED, f"{_CFL08}, 4-1-2: nobody may stand in doubt, a yard is the line's"
    ),
    between_foul=Known(True, Certainty.PUBLISHED, f"{_CFL08}, 4-1-2: nobody may stand in doubt"),
    eligible=Known("ends of the line and backs, by number", Certainty.PUBLISHED, _CFL21),
    ineligible_numbers=Known(((50, 69),), Certainty.PUBLISHED, _CFL21),
    motion_most=Known(None, Certainty.REPORTED, "every back but the quarterback, as reported"),
    motion_way=Known(MotionWay.ANY, Certainty.REPORTED, "any way behind the line, as reported"),
    motion_set=memory(0, "no set time for backs; no rule text seen"),
    motion_from_line=Known(None, Certainty.MEMORY, "line players are still; no depth known"),
    downfield=Known(1, Certainty.MEMORY, "a yard past the line is the usual teaching"),
    downfield_crossing=Known(True, Certainty.MEMORY, "not confirmed in any text seen"),
    block_past=published(
        0, f"{CFL} 2016, 9-2-1: blocking is free except when a pass is thrown across the line"
    ),
    play_clock=Known(
        PlayClock(
            35,
            "the end of the last play",
            20,
            "the whistle, in the last 3 minutes of a half and after a penalty or another stop",
        ),
        Certainty.PUBLISHED,
        f"{_CFL_2025}, and {_CFL_2026}; to 2025 it was 20 from the whistle",
    ),
    low_block=Known(
        "Low blocks are legal only in the box: from tight end to tight end, from the depth of the "
        "quarterback or kicker to 2 yards past the line.",
        Certainty.PUBLISHED,
        _CFL_2018,
    ),
    behind_block=Known(
        "Clipping in close line play was narrowed or ended in 2014: check the current book.",
        Certainty.REPORTED,
        "report of a proposal for 2014",
    ),
    blindside_block=Known(
        "Forcible blocks by a man who moves toward his own goal line are illegal.",
        Certainty.PUBLISHED,
        _CFL_2018,
    ),
    crossing_contact=Known(
        "Past five yards nobody, receiver or defender, may start contact that turns the other. "
        "Blocking past the line is free except when a pass is thrown across it.",
        Certainty.PUBLISHED,
        f"CFL, report of the 2015 rule changes; {CFL} 2016, 9-2-1",
    ),
    authority="the league's current rule book",
)

CANADIAN_PROFESSIONAL_2027 = replace(
    CANADIAN_PROFESSIONAL.recalled("as to 2026; announced for 2027, details open"),
    key="canadian professional 2027",
    **rare("canadian professional 2027"),
    title="Canadian professional, 12 men, announced for 2027, details open",
    length=published(100, _CFL_2025),
    width=published(65, _CFL_2025),
    end_zone=published(15, _CFL_2025),
    hash_from_sideline=memory(28, "assumed as to 2026: announced, details open"),
    downs=published(3, f"{_CFL_2025}: three downs are kept"),
)

_AS_TWELVE = CANADIAN_AMATEUR.recalled("as in the twelve-man game")
_ONTARIO6 = "6-a-side rules of an Ontario league, 2023"
_SIX_LEAGUES = "6-a-side rules of an Ontario league, 2023, and of a Saskatchewan association"

CANADIAN_NINE = replace(
    _AS_TWELVE,
    key="canadian nine-man",
    **rare("canadian nine-man"),
    title="Canadian amateur, 9 men",
    players=memory(9, "nine men; no rule text seen"),
    length=Known(100, Certainty.REPORTED, "a report on the nine-man game in Saskatchewan"),
    width=memory(65, "the full field; unsettled, no rule text seen"),
    line=("LG", "C", "RG"),
    ineligible=memory(3, "as the twelve-man game with two linemen fewer"),
    on_line=memory(5, "three ineligible men and an eligible one at each end"),
    in_backfield=memory(4, "what nine less five leave"),
)

CANADIAN_SIX = replace(
    _AS_TWELVE,
    key="canadian six-man",
    **rare("canadian six-man"),
    title="Canadian amateur, 6 men",
    players=published(6, _ONTARIO6),
    length=published(110, f"{_ONTARIO6}; 100 or 110 in Saskatchewan"),
    width=published(40, _SIX_LEAGUES),
    end_zone=published(10, _SIX_LEAGUES),
    hash_from_sideline=published(13, _ONTARIO6),
    numbers_from_sideline=memory(6, "no painted numbers asked for; as on the US six-man field"),
    line=("C",),
    ineligible=memory(0, "all six, or all but the centre: unsettled, ask the league"),
    on_line=memory(3, "a least number is asked for, the figure was not seen"),
    in_backfield=memory(3, "what six less three leave"),
    eligible=Known(
        "all six, or all but the centre: ask the league", Certainty.MEMORY, "no text seen"
    ),
    ineligible_numbers=Known((), Certainty.MEMORY, "any number"),
    downfield=Known(None, Certainty.MEMORY, "everybody is eligible"),
)
