"""The US codes of eleven men, every figure with its edition and rule and how sure it is."""

from __future__ import annotations

from dataclasses import replace

from stemline.football.rulebook.rules import (
    NCAA,
    NFHS,
    SDCFOA,
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

_NCAA16 = "NCAA Football Rules 2016-17"
_NFL = "NFL Official Playing Rules"
_ELEVEN = "as in the US high school code"
_NONE_FURTHER = "no further numbers known"
_FORTY = PlayClock(
    40, "the end of the last play", 25, "the ready signal after a penalty or another stop"
)
_ENDS_AND_BACKS = "the two ends of the line, and the backs"

HIGH_SCHOOL = Code(
    key="high school",
    **rare("high school"),
    title="US high school, 11 men",
    players=published(11, f"{NFHS}, 1-1-3"),
    length=published(100, f"{NFHS}, 1-1-2 (360 by 160 feet with end zones)"),
    width=published(160 / 3, f"{NFHS}, 1-1-2 (360 by 160 feet with end zones)"),
    end_zone=published(10, f"{NFHS}, 1-1-2 (360 by 160 feet with end zones)"),
    hash_from_sideline=table(160 / 9, "NFHS field: 53 ft 4 in"),
    numbers_from_sideline=table(8, "NFHS field: numbers from 7 to 9 yards; their middle"),
    restraining=published(0, f"{NFHS}, 2-28-1 (length of the ball)"),
    downs=published(4, f"{NFHS}, 1-1-2"),
    line=("LT", "LG", "C", "RG", "RT"),
    ineligible=Known(5, Certainty.REPORTED, f"{NFHS}, 7-2-5a as reported for 2024"),
    on_line=published(5, f"{NFHS}, case 1.1.3 on the five-man minimum of 7-2-5a"),
    in_backfield=Known(4, Certainty.REPORTED, f"{NFHS}, 7-2-5a as reported for 2024"),
    line_reach=memory(0.5, f"{NFHS}, 2-32-9: head or foot breaks the plane of the snapper's waist"),
    back_depth=Known(None, Certainty.MEMORY, f"{NFHS}, 2-32: a place, no figure in yards"),
    between_foul=Known(True, Certainty.MEMORY, f"{NFHS}, 7-2"),
    eligible=Known(_ENDS_AND_BACKS, Certainty.MEMORY, f"{NFHS}, 7-5-6"),
    ineligible_numbers=Known(
        ((50, 79),), Certainty.REPORTED, f"{NFHS}, 7-2-5a as reported for 2024"
    ),
    also_ineligible=Known((), Certainty.MEMORY, _NONE_FURTHER),
    motion_most=Known(1, Certainty.MEMORY, f"{NFHS}, 7-2-7"),
    motion_way=Known(MotionWay.NOT_FORWARD, Certainty.MEMORY, f"{NFHS}, 7-2-7"),
    motion_set=memory(1, f"{NFHS}, 7-2-6"),
    motion_from_line=Known(5, Certainty.MEMORY, f"{NFHS}, 7-2-7: a back, or 5 yards deep"),
    downfield=Known(2, Certainty.PUBLISHED, f"{NFHS}, 2-28-2 and 7-5-12"),
    downfield_crossing=Known(True, Certainty.PUBLISHED, f"{NFHS}, 7-5-12"),
    block_past=published(0, f"{NFHS}, 7-5-8a and 7-5-10: past the neutral zone"),
    play_clock=Known(_FORTY, Certainty.REPORTED, f"{NFHS}, 3-6-1"),
    low_block=Known(
        "Blocks below the waist are legal only between linemen in the free-blocking zone and at "
        "once at the snap. Clipping is illegal everywhere.",
        Certainty.PUBLISHED,
        f"{NFHS}, 2-17-2 (2021) and 2-17-3 (2016)",
    ),
    behind_block=Known(
        "A block in the back is legal only by linemen on linemen in the free-blocking zone.",
        Certainty.PUBLISHED,
        "NFHS news, 2021",
    ),
    blindside_block=Known(
        "A forceful block on a man who does not see it coming, outside the free-blocking zone, "
        "must be begun with open hands.",
        Certainty.PUBLISHED,
        f"{NFHS}, 2-3-10 and 9-4-3n (2017)",
    ),
    crossing_contact=Known(
        "An eligible receiver may not contact a defender past the neutral zone until the ball is "
        "touched, when the pass crosses it. Cross close, touch nobody.",
        Certainty.PUBLISHED,
        f"{NFHS}, 7-5-8a and 7-5-10",
    ),
    chop_block=Known(
        "Two men on one: where one blocks him high, nobody blocks him at the knee or below. "
        "Together that is a chop block.",
        Certainty.PUBLISHED,
        f"{NFHS}, 2-3-8 and 9-3-6",
    ),
    authority="the current NFHS rules book and your state association",
)

COLLEGE = replace(
    HIGH_SCHOOL.recalled(_ELEVEN),
    key="college",
    **rare("college"),
    title="US college, 11 men",
    players=published(11, f"{NCAA}, 1-1-1"),
    length=published(100, f"{_NCAA16}, 1-2-1"),
    width=table(160 / 3, "NCAA field"),
    end_zone=table(10, "NCAA field"),
    hash_from_sideline=published(20, f"{_NCAA16}, 1-2-1 (60 feet)"),
    numbers_from_sideline=table(
        8,
        f"NCAA field: numbers from 7 to 9 yards, their middle; {_NCAA16}, 1-2-1 has the tops at 9",
    ),
    restraining=published(0, f"{_NCAA16}, 2-17-1 (length of the ball)"),
    downs=published(4, f"{_NCAA16}, 5-1-1"),
    ineligible=published(5, f"{NCAA}, 7-1-4a-3, {SDCFOA}: five men numbered 50 to 79"),
    on_line=published(5, f"{NCAA}, 7-1-4a-3, {SDCFOA}"),
    in_backfield=Known(4, Certainty.PUBLISHED, f"{NCAA}, 7-1-4a-4, {SDCFOA}"),
    line_reach=Known(
        0.5,
        Certainty.CUSTOM,
        f"half a yard is our reading of {_NCAA16}, 2-27-4: his head breaks the plane through the "
        "snapper's waist",
    ),
    back_depth=Known(
        None,
        Certainty.PUBLISHED,
        f"{_NCAA16}, 2-27-4: head and shoulders clear of the plane through the waist of the "
        "nearest lineman, no figure in yards",
    ),
    between_foul=Known(
        True, Certainty.PUBLISHED, f"{NCAA}, 7-1-4a-2, {SDCFOA}: neither lineman nor back"
    ),
    eligible=Known(_ENDS_AND_BACKS, Certainty.PUBLISHED, f"{NCAA}, 7-3-3, {SDCFOA}"),
    ineligible_numbers=Known(((50, 79),), Certainty.PUBLISHED, f"{NCAA}, 7-3-3, {SDCFOA}"),
    motion_most=Known(1, Certainty.REPORTED, "officials' slides on college rules: one back"),
    motion_way=Known(MotionWay.NOT_FORWARD, Certainty.PUBLISHED, f"{_NCAA16}, A.R. 7-1-4"),
    motion_set=published(1, f"{_NCAA16}, 2-22-1"),
    motion_from_line=Known(
        None,
        Certainty.PUBLISHED,
        f"{_NCAA16}, 2-27-4: no depth, he is a back only when he has stopped in a back's place",
    ),
    downfield=Known(3, Certainty.PUBLISHED, f"{_NCAA16}, A.R. 7-3-10"),
    downfield_crossing=Known(True, Certainty.PUBLISHED, f"{_NCAA16}, A.R. 7-3-10"),
    block_past=published(1, f"{_NCAA16}, A.R. 7-3: an immediate charge within a yard is no foul"),
    play_clock=Known(_FORTY, Certainty.MEMORY, f"{NCAA}, 3-2-4"),
    low_block=Known(
        "Only linemen and still backs inside the tackle box may block below the waist, up to a "
        "yard past the neutral zone, and nobody outside it.",
        Certainty.REPORTED,
        f"{NCAA}, 9-1-6 as reported for 2022",
    ),
    behind_block=Known(
        "A block in the back and a clip are fouls.",
        Certainty.PUBLISHED,
        f"{_NCAA16}, 9-3-6 (9-3-5 in later editions), 2-5 and 9-1-5",
    ),
    blindside_block=Known(
        "Forcible contact with a man who does not see it coming is a foul.",
        Certainty.MEMORY,
        f"{NCAA}, 9-1-18 (2019)",
    ),
    crossing_contact=Known(
        "Contact past the neutral zone that hinders a defender is interference by the offence on "
        "a pass that crosses it: it is for the receiver to avoid him.",
        Certainty.PUBLISHED,
        f"{NCAA}, 7-3-8b",
    ),
    chop_block=Known(
        "Two men on one: where one blocks him high, nobody blocks him at the thigh or below. "
        "Together that is a chop block, at once or one after the other.",
        Certainty.PUBLISHED,
        f"{_NCAA16}, 2-3-3 and 9-1-10",
    ),
    authority="the current NCAA rules book",
)

PROFESSIONAL = replace(
    HIGH_SCHOOL.recalled(_ELEVEN),
    key="professional",
    **rare("professional"),
    title="US professional, 11 men",
    players=memory(11, "eleven men; no rule text seen"),
    length=published(100, f"{_NFL}, digest"),
    width=table(160 / 3, "NFL field"),
    end_zone=published(10, f"{_NFL}, digest"),
    hash_from_sideline=published((70 + 9 / 12) / 3, f"{_NFL}, digest (70 ft 9 in)"),
    numbers_from_sideline=table(
        13, "NFL field: bottoms 12 yards from the sideline, 2 high; their middle"
    ),
    restraining=memory(0, f"{_NFL}, 3-19 (length of the ball)"),
    downs=memory(4, "four downs; no rule text seen"),
    ineligible=memory(5, "five ineligible by position, unless they report; no rule text seen"),
    on_line=Known(7, Certainty.REPORTED, f"{_NFL}, 7-5-1"),
    in_backfield=Known(4, Certainty.MEMORY, "what eleven less seven leave; no rule text seen"),
    line_reach=memory(0.5, f"{_NFL}, 3-18: helmet breaks the plane of the snapper's beltline"),
    back_depth=Known(
        1,
        Certainty.PUBLISHED,
        "the league's operations glossary: a yard back, but for the man under centre",
    ),
    between_foul=Known(True, Certainty.MEMORY, f"{_NFL}, 7-5"),
    eligible=Known(
        "the two ends of the line and backs a yard back; not a quarterback under centre",
        Certainty.PUBLISHED,
        f"{_NFL}, 8-1, and its digest on the quarterback",
    ),
    ineligible_numbers=Known(
        ((50, 79),),
        Certainty.PUBLISHED,
        "the league's operations glossary: unless he has reported",
    ),
    also_ineligible=Known(
        ((90, 99),), Certainty.REPORTED, f"{_NFL}, 5-3-1: unless he has reported"
    ),
    motion_most=Known(1, Certainty.MEMORY, "one back; no rule text seen"),
    motion_way=Known(MotionWay.NOT_FORWARD, Certainty.MEMORY, f"{_NFL}, 7-4-8"),
    motion_set=memory(1, f"{_NFL}, 7-4-7"),
    motion_from_line=Known(None, Certainty.MEMORY, "no depth known"),
    downfield=Known(1, Certainty.REPORTED, f"{_NFL}, 8-3-1"),
    downfield_crossing=Known(False, Certainty.REPORTED, f"{_NFL}, 8-3-1: any forward pass"),
    block_past=Known(1, Certainty.REPORTED, f"{_NFL}, digest"),
    play_clock=Known(_FORTY, Certainty.PUBLISHED, f"{_NFL}, 4-6"),
    low_block=Known(
        "Blocks below the waist are barred beyond 5 yards to either side of the line and more than "
        "2 yards outside either tackle.",
        Certainty.PUBLISHED,
        "the league's operations page on the 2021 rule changes",
    ),
    behind_block=Known(
        "A clip above the knee was once allowed in close line play: check the current book.",
        Certainty.REPORTED,
        f"{_NFL}, an older 12-2-1",
    ),
    blindside_block=Known(
        "A man more than 2 yards outside the tackle, or in motion, may not crack back low or at "
        "the head. Low blocks toward your own end line are barred, and so is forcible contact "
        "with a man who does not see it coming.",
        Certainty.MEMORY,
        f"crack and peel-back blocks as reported; forcible contact from memory, {_NFL}, 12-2-7",
    ),
    crossing_contact=Known(
        "Blocking more than a yard past the line before or as the pass flies, and a pick by "
        "design, are interference by the offence.",
        Certainty.REPORTED,
        f"{_NFL}, digest",
    ),
    chop_block=Known(
        "Two men on one: where one blocks him high, nobody blocks him at the thigh or below. All "
        "chop blocks are fouls since 2016.",
        Certainty.REPORTED,
        f"{_NFL}, 12-2-3",
    ),
    authority="the league's current rule book",
)
