"""What is published about players' health, by code: the head, contact in practice, heat, youth.

Each text stands on the page with its source and any doubt. None is a verdict of this program: the
league's current book and qualified medical staff decide.
"""

from __future__ import annotations

from dataclasses import dataclass

from stemline.football.rulebook.rules import Certainty, Known

HEAD = (
    "No contact with the head, given or led with: hands first or the near shoulder, pads low, eyes "
    "up."
)
"""The sentence on the page on care, and the one that a warning about a sentence repeats. So teach
Football Canada's Safe Contact (2015) and the helmet rules of every code below."""

_FC14 = "Football Canada, rule-change release of 20 May 2014; targeting rule of 2018"
_FC_AGES = "Football Canada, notice on its under-8 mandate, 2019"
_SAFE = "Football Canada, Safe Contact, since 2017, as a provincial body prints it"
_HIT14 = (
    "NFHS, Recommendations and Guidelines for Minimizing Head Impact Exposure and Concussion Risk "
    "in Football, July 2014"
)
_HEAT09 = (
    "Inter-Association Task Force, Preseason Heat-Acclimatization Guidelines for Secondary School "
    "Athletics, Journal of Athletic Training 44(3), 2009"
)
_AMSTERDAM = (
    "Consensus statement on concussion in sport, Amsterdam 2022, British Journal of Sports "
    "Medicine 57(11), 2023"
)
_NO_CANADIAN = "no Canadian figure was seen"

_FIRST_DAYS = (
    "The first five days one practice a day, three hours at most; helmets only on days 1 and 2, "
    "shoulder pads from day 3, live contact from day 6 at the earliest. Two practices in a day "
    "never on two days running."
)
_FULL_CONTACT = (
    "In season no more than 2 to 3 practices a week with full contact (thud and live), no more "
    "than 30 minutes of it in a day and 60 to 90 minutes in a week. Count them for each player: "
    "men who play both ways take more than the team's clock shows."
)


@dataclass(frozen=True)
class CareRule:
    """One note of the page: its label, and the text with its source."""

    label: str
    text: Known[str]


@dataclass(frozen=True)
class CareRules:
    """What the page says for one code, and ``past_line``, the rule on blocks past the line while a
    pass is on its way, for the page of a concept that has such a block."""

    head: Known[str]
    practice: Known[str]
    heat: Known[str]
    youth: tuple[Known[str], ...]
    past_line: Known[str]
    concussion: tuple[Known[str], ...]

    @property
    def notes(self) -> tuple[CareRule, ...]:
        """In the order of the page."""
        youth = ("Ages", "Youth limits")
        return (
            CareRule("Head and helmet", self.head),
            CareRule("Contact in practice", self.practice),
            CareRule("Heat", self.heat),
            CareRule("Water", _WATER),
            *(CareRule(label, text) for label, text in zip(youth, self.youth, strict=True)),
            *(
                CareRule(label, text)
                for label, text in zip(
                    ("Concussion", "Cleared to play"), self.concussion, strict=False
                )
            ),
        )


_WATER = Known(
    "Water is there at every practice, and everybody may drink at any time, not at breaks only. "
    "Who is confused or goes down in the heat is an emergency: stop, call for help, cool him at "
    "once, as your medical staff have planned it before the season.",
    Certainty.REPORTED,
    "USA Football, National Practice Guidelines for Youth Tackle Football, 2015, on water; NFHS "
    "Sports Medicine Advisory Committee, Heat Acclimatization and Heat Illness Prevention",
)
_CONCUSSION = Known(
    "A player who may have a concussion comes out at once, does not go back the same day, and "
    "comes back in steps and only when a qualified health professional has cleared him. In "
    "doubt: out.",
    Certainty.PUBLISHED,
    f"{_AMSTERDAM}, with its Concussion Recognition Tool 6",
)
_CONCUSSION_CANADA = Known(
    "No return to full practice or games without a medical clearance letter.",
    Certainty.PUBLISHED,
    "Canadian Guideline on Concussion in Sport, Parachute, 2017",
)
_CONCUSSION_SCHOOLS = Known(
    "An official sends off who shows signs of a concussion, and the state's law says who may "
    "clear him.",
    Certainty.MEMORY,
    "NFHS Football Rules Book, 3-5-10b",
)

_YOUTH_CANADA = (
    Known(
        "Under 8 there is no contact. From 8 to 11 tackle football is played 6-a-side and 9-a-side "
        "in place of 12, phased in from 2022.",
        Certainty.PUBLISHED,
        _FC_AGES,
    ),
    Known(
        "At least 3 hours of helmet-only Safe Contact work before any other at the start of a "
        "season; games 4 days apart. No limit in minutes was seen.",
        Certainty.REPORTED,
        _SAFE,
    ),
)
_YOUTH_US = (
    Known(
        "No age for the first tackle is set by the national body; paediatricians ask that every "
        "child may choose a league without tackling. Your league's ages bind.",
        Certainty.REPORTED,
        "American Academy of Pediatrics, Tackling in Youth Football, 2015",
    ),
    Known(
        "Full contact for 30 minutes of a practice at most; four practices a week before the "
        "season, three in it, never two in a day. As reported in 2021: 75 minutes a week before "
        "the season, 60 in it.",
        Certainty.REPORTED,
        "USA Football, National Practice Guidelines for Youth Tackle Football, 2015",
    ),
)


AMATEUR = CareRules(
    head=Known(
        f"{HEAD} Nobody, the ball carrier either, may butt or ram with the helmet, and nobody may "
        "hit a man who cannot defend himself on the head or neck.",
        Certainty.PUBLISHED,
        _FC14,
    ),
    practice=Known(
        f"{_FULL_CONTACT} A guide from US schools; your association may allow less.",
        Certainty.REPORTED,
        f"{_HIT14}; {_NO_CANADIAN}",
    ),
    heat=Known(f"{_FIRST_DAYS} A guide from US schools.", Certainty.PUBLISHED, _HEAT09),
    youth=_YOUTH_CANADA,
    past_line=Known(
        "On a pass thrown past the line nobody of yours may block past it until the ball is "
        "caught; behind the line you may.",
        Certainty.REPORTED,
        "Canadian officials' sheet on pass interference",
    ),
    concussion=(_CONCUSSION, _CONCUSSION_CANADA),
)

CANADIAN_PRO = CareRules(
    head=Known(
        f"{HEAD} Any blow that lands with the helmet first is spearing, a man who runs low with "
        "the ball apart.",
        Certainty.PUBLISHED,
        "CFL, report of the 2018 rule changes",
    ),
    practice=Known(
        "No pads in practice once the season has begun: helmets are all that is worn.",
        Certainty.REPORTED,
        "joint announcement of league and players, 13 September 2017",
    ),
    heat=Known(
        f"{_FIRST_DAYS} Written for schools; what league and players have agreed decides.",
        Certainty.PUBLISHED,
        _HEAT09,
    ),
    youth=_YOUTH_CANADA,
    past_line=Known(
        "You may block anywhere from the snap, but not while a pass is thrown across the line.",
        Certainty.PUBLISHED,
        "CFL Official Playing Rules 2016, 9-2-1",
    ),
    concussion=(_CONCUSSION, _CONCUSSION_CANADA),
)

SCHOOLS = CareRules(
    head=Known(
        f"{HEAD} To start contact with the helmet is a foul, whether with its front or its crown, "
        "by a blocker, a tackler or a runner; so is to aim above the shoulders.",
        Certainty.PUBLISHED,
        "NFHS Football Rules Book, 2-20-1 (2019) and 2-43 (2014)",
    ),
    practice=Known(
        f"{_FULL_CONTACT} Your state association may allow less.", Certainty.REPORTED, _HIT14
    ),
    heat=Known(
        f"{_FIRST_DAYS} Your state association's own plan comes first.",
        Certainty.PUBLISHED,
        _HEAT09,
    ),
    youth=_YOUTH_US,
    past_line=Known(
        "When a pass crosses the neutral zone, nobody eligible may block past it until the ball is "
        "touched, and a lineman only his own man at once, inside two yards.",
        Certainty.PUBLISHED,
        "NFHS Football Rules Book, 7-5-8a, 7-5-10 and 2-28",
    ),
    concussion=(_CONCUSSION, _CONCUSSION_SCHOOLS),
)

COLLEGES = CareRules(
    head=Known(
        f"{HEAD} To aim and hit with the crown of the helmet is a foul, and so is to aim at the "
        "head or neck of a man who cannot defend himself; who does it is sent off.",
        Certainty.PUBLISHED,
        "NCAA, 9-1-3 and 9-1-4, officials' notes for 2013",
    ),
    practice=Known(
        "Before the season at most 18 practices with contact, nine of them in full pads; full "
        "contact for 75 minutes of a practice at most and never three days running; no drill of "
        "two men in a straight line all year.",
        Certainty.REPORTED,
        "NCAA Division I, adopted 19 May 2021",
    ),
    heat=Known(
        "Practice begins with seven days to get used to the heat: one practice on the field a day, "
        "three hours at most.",
        Certainty.PUBLISHED,
        "NCAA Division I, bylaw 17.11.2.4 as changed in 2021",
    ),
    youth=_YOUTH_US,
    past_line=Known(
        "On a pass that crosses the neutral zone a block past it that hinders a defender is "
        "interference; a lineman's charge at the snap, within a yard, is not.",
        Certainty.PUBLISHED,
        "NCAA, 7-3-8b, and NCAA Football Rules 2016-17, A.R. 7-3",
    ),
    concussion=(_CONCUSSION,),
)

US_PRO = CareRules(
    head=Known(
        f"{HEAD} To lower the head and hit anybody with the helmet is a foul, by either team, "
        "anywhere on the field.",
        Certainty.REPORTED,
        "reports of the league's rule change of March 2018",
    ),
    practice=Known(
        "In season at most 14 practices in pads, eleven of them in the first eleven weeks.",
        Certainty.REPORTED,
        "the agreement of league and players of 2011, as reported in 2017",
    ),
    heat=CANADIAN_PRO.heat,
    youth=_YOUTH_US,
    past_line=Known(
        "A block more than a yard past the line before the ball arrives, or as it flies, is "
        "interference by the offence.",
        Certainty.REPORTED,
        "NFL Official Playing Rules, digest",
    ),
    concussion=(_CONCUSSION,),
)


def care_rules(key: str) -> CareRules:
    """The texts for the code of that name; a reduced game has those of the game it grew from."""
    match key:
        case "college":
            return COLLEGES
        case "professional":
            return US_PRO
    if key.startswith("canadian professional"):
        return CANADIAN_PRO
    return AMATEUR if key.startswith("canadian") else SCHOOLS
