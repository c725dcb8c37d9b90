"""A line coach's answers: every run of both playbooks worked through by hand for eight fronts.

A row is a front and the men's blocks; the run goes right. ``T`` is that man alone, ``T+RG`` with
the right guard, ``T+RG>W`` with one of the two going on to W, ``-`` nobody. Behind ``/`` stands
what other good coaches do, and either answer passes; a man who is not named is not asked.
``open`` is without a tight end, ``tight`` with Y on the line. ``free`` are those of the box whom
nobody blocks, the nearest to the hole first: a receiver, a fake or the carrier has them, or the
call is checked; ``key`` are those who are read.

The *rule* of each table is published, as named beside it. The *cells* are that rule worked
through for the front: common practice, no published source, where no other source stands.
"""

from __future__ import annotations

# "X's & O's: Split Zone", American Football Coaches Association, Insider; "A Beginner's Guide to
# Zone: Covered and Uncovered Rules", coaching blog, November 2017: a covered man blocks, an
# uncovered man helps the next one to the play and one of them goes up. Tite: D. Leister,
# "Attacking the Tite Front with Inside Zone", USA Football blog, August 2019: on the 4i, or fan.
# Both A gaps mugged (`mug`): the line goes inside first, and the last man of the backside is left;
# common practice, no published source.
ZONE = """
over       | LT J | LG N / N+C>W / N+C>M | C T+RG>M / N+LG>W / N+LG>M | RG T+C>M / T | RT E
under      | LT J | LG T | C N+RG>M / N | RG N+C>M / E+RT>M | RT E / E+RG>M
odd        | LT D | LG N+C>W | C N+LG>W | RG E+RT>M / M | RT E+RG>M / E
tite       | LT D | LG N+C>W | C N+LG>W | RG E+RT>M / E | RT E+RG>M / S
stack      | LT D | LG N+C>M | C N+LG>M | RG E+RT>S / S | RT E+RG>S / E
stack tight| LG N+C>M / N+C>W | C N+LG>M / N+LG>W | RG E+RT>S / S / M
bear       | LT J | LG TL | C N | RG TR / TR+RT>M
bear open  | RT E
bear tight | RT M / W / TR+RG>M | Y E
even       | LT J | LG TL | C TR+RG>M | RG TR+C>M | RT E
goal       | LT W | LG NL | C NR | RG M | RT T | Y E | U D
mug        | LT N | LG W | C M | RG T | RT E / E+Y
tite open  | free S J
tite tight | Y S | free J
bear open  | free M W
bear tight | free W
"""

ZONE_READ = """
over       | LT N+LG>W / W | LG N+LT>W / N+C>M | C T+RG>M / N+LG>M | RG T+C>M / T | RT E
under      | LT T+LG>W / W | LG T+LT>W / T | C N+RG>M / N | RG N+C>M / E+RT>M | RT E / E+RG>M
odd        | LT D | LG N+C>W | C N+LG>W | RG E+RT>M / M | RT E+RG>M / E
tite       | LT D | LG N+C>W | C N+LG>W | RG E+RT>M / E | RT E+RG>M / S
stack      | LT W | LG N+C>M | C N+LG>M | RG E+RT>S / S | RT E+RG>S / E
bear       | LT TL / TL+LG>W | LG N+C>W / TL+LT>W | C N+LG>W / N | RG TR / TR+RT>M
bear open  | RT E
bear tight | RT M / TR+RG>M | Y E
even       | LT TL+LG>W / W | LG TL+LT>W / TL | C TR+RG>M | RG TR+C>M | RT E
goal       | LT W | LG NL | C NR | RG M | RT T | Y E | U D / -
over       | key J | free -
under      | key J | free -
odd        | key J
tite       | key J
tite open  | free S
tite tight | Y S | free -
stack      | key D | free -
bear       | key J
bear open  | free M
bear tight | free -
even       | key J | free -
goal       | key J
"""

# The same page of the association: another man crosses to the backside end; the line as when he
# is read. R. Kelly's Canadian line-play pages of July 2013 draw it so too.
SPLIT = """
over       | F J | LT N+LG>W / W | LG N+LT>W / N+C>M | C T+RG>M / N+LG>M | RG T+C>M / T | RT E
under      | F J | LT T+LG>W / W | LG T+LT>W / T | C N+RG>M / N | RG N+C>M / E+RT>M
odd        | F J | LT D | LG N+C>W | C N+LG>W | RG E+RT>M / M | RT E+RG>M / E
tite       | F J | LT D | LG N+C>W | C N+LG>W | RG E+RT>M / E | RT E+RG>M / S
stack      | F D | LT W | LG N+C>M / N+C | C N+LG>M / N+LG | RG E+RT>S / S / M | RT E+RG>S / E
bear       | F J | LT TL / TL+LG>W | LG N+C>W / TL+LT>W | C N+LG>W / N | RG TR / TR+RT>M
bear open  | RT E
bear tight | RT M / TR+RG>M | Y E
even       | F J | LT TL+LG>W / W | LG TL+LT>W / TL | C TR+RG>M | RG TR+C>M | RT E
goal       | F J | LT W | U D | LG NL | C NR | RG M | RT T | Y E
over       | free -
under      | free -
odd open   | free S
odd tight  | Y S | free -
tite open  | free S
tite tight | Y S | free -
stack      | free -
bear open  | free M
bear tight | free -
even       | free -
goal       | free S
"""

# "Blocking the Stretch/Outside Zone Scheme", X&O Labs; the covered and uncovered rules as above:
# covered reaches, uncovered overtakes, the backside cuts off and never chases.
OUTSIDE_ZONE = """
over       | LT W | LG N | C T+RG>M / M | RG T / T+C>M | RT E
under      | LT T | LG N+C>W / W | C N / N+LG>W | RG E+RT>M / M | RT E / E+RG>M
odd        | LT D | LG N+C>W / W | C N / N+LG>W | RG E+RT>M / M | RT E / E+RG>M
tite       | LT D | LG N+C>W / W | C N / N+LG>W | RG E / E+RT>M / M | RT E / E+RG>M / M
stack | LT D / W | LG N+C>M / M / N+C>W
stack | C N / N+LG>M / N+LG>W | RG E+RT>S / S / M | RT E / E+RG>S
bear       | LT TL | LG N+C>W / N+C>M | C N+LG>W / N+LG>M | RG TR
bear open  | RT E
bear tight | RT M | Y E
even       | LT W | LG TL | C TR+RG>M / TR | RG TR+C>M / E+RT>M / M | RT E / E+RG>M
goal       | LT W | LG NL | C NR | RG M | RT T | Y E
tite open  | free S J
tite tight | Y S | free J
bear open  | free W J / M J
bear tight | Y E | free J
"""

# "Inside the Playbook: Blocking Power O", Maize n Brew, August 2013; B. Turner, "Counter Trey:
# Down, Kickout and Wrap",
# coaching blog: inside gap, on or double, then the far backer; guard wraps to
# the first backer inside the kick. Bear: all down by one, or the 3 doubled and the centre alone:
# coaches differ. Tite: down on the 4i, tackle hinges on the other, centre and guard on the nose
# (S. Davis, "Using the FAT Double Team to Block 4i's in Gap Schemes", X&O Labs, has the fullback
# help on him).
POWER = """
over       | LT J / - | LG M | C N | RG T+RT>W | RT T+RG>W
over open  | F E
over tight | Y E | F S
under      | LG M
under open | LT T / J | C N+RG / N+RG>W / T | RG N+C / N+C>W / N | RT W | F E
under tight| LT T / J | C N+RG>W / T | RG N+C>W / N | RT E+Y | Y E+RT | F S
odd        | LT D | LG M
odd open   | C N+RG>W | RG N+C>W | RT E | F S
odd tight  | C N+RG | RG N+C | RT E+Y | Y E+RT | F S
tite       | LT D | LG M | C N+RG>W | RG N+C>W | F S
tite open  | RT E
tite tight | RT E+Y / E | Y E+RT
stack      | LT D | LG S | C N+RG | RG N+C
stack open | RT M | F E
stack tight| RT E+Y | Y E+RT | F O
bear       | LT TL / J | LG M | C N+RG>W / N / TL | RG N / N+C>W / TR+RT | RT TR / TR+RG | F E
bear tight | Y W / R
even       | LT J / - | LG M | C TL | RG TR / TR+RT>W | RT W / TR+RG>W / E+Y>W
even open  | F E
even tight | Y E / E+RT>W | F S
goal       | LT W / - | LG S | C NL | RG NR | RT M / NR+RG>M | Y T | F E
tite       | free J
bear       | free J / W J
"""

# "QB Power from Empty Formations", American Football Coaches Association, Insider: the line as in
# power, the back kicks.
QUARTERBACK_POWER = """
over       | LT J / - | LG M | C N | RG T+RT>W | RT T+RG>W
over open  | B E
over tight | Y E | B S
under open | LG M | RT W | B E
odd        | LT D | LG M
odd open   | C N+RG>W | RG N+C>W | RT E | B S
tite       | LT D | LG M | C N+RG>W | RG N+C>W | B S
tite open  | RT E
bear       | LT TL / J | LG M | C N+RG>W / N / TL | RG N / N+C>W / TR+RT | RT TR / TR+RG | B E
even       | LT J / - | LG M | C TL | RG TR / TR+RT>W | RT W / TR+RG>W / E+Y>W
even open  | B E
apex open  | LT D | LG M | C N+RG | RG N+C | RT W | B E
tite tight | RT E+Y / E | Y E+RT | free J
bear       | free J
bear tight | Y W / R
"""

# "Run Game: Counter Trey", I Teach, I Coach, I Blog, January 2011; Turner as above. Where a man
# stands over each puller the centre cannot reach two gaps: common practice, coaches differ.
COUNTER = """
over       | C N | RG T+RT>W | RT T+RG>W | LT M
over open  | LG E
over tight | LG S | Y E
under      | C T / N+RG / N+RG>W | RG N / N+C / N+C>W | LT M
under open | RT W | LG E
under tight| RT E+Y | Y E+RT | LG S
odd        | C N+RG>W / N+RG / N / D / W | RG N / N+C>W / N+C | LG S | LT M
odd open   | RT E
odd tight  | RT E+Y | Y E+RT
tite       | C N+RG>W / N / D | RG N / N+C>W | LG S | LT M
tite open  | RT E
tite tight | RT E+Y / E | Y E+RT / W
stack      | RG N+C / N / N+C>M / N+C>W | LT S
stack open | RT M | LG E
stack tight| RT E+Y | Y E+RT | LG O
bear       | C N+RG>W / N / TL | RG N / N+C>W / TR+RT>W | RT TR / TR+RG>W | LG E | LT M
bear tight | Y W / R
even       | C TL | RG TR / TR+RT>W | RT W / TR+RG>W / E+Y>W | LT M
even open  | LG E
even tight | Y E / E+RT>W | LG S
goal       | C NL | RG NR | RT M | Y T | LG E | LT S
over       | F J
tite       | F D | free J
bear       | F TL | free J
goal       | F W / D
"""

# K. McElvany, "13 Variations of the Wing-T Trap Game", X&O Labs, 2012; Denton, "Blocking the Guard
# Trap vs. Multiple Fronts with Variations", coaching magazine, February 2009: playside tackle by
# the cleanest way to the first backer inside, guard gap, double, backer; a 2i may be trapped.
TRAP = """
over       | LT J | LG T | C N | RG W / M | RT M / W
under      | LT T / J | LG E / N | C N+RG>W / T | RG N+C>W / W | RT M
odd        | LT D | LG E | C N+RG>W | RG N+C>W | RT M
tite       | LT D | LG E | C N+RG>W | RG N+C>W | RT M
stack      | LT D | LG E | C N+RG>M / N+RG>W | RG N+C>M / N+C>W | RT S / M
bear       | LT TL | LG TR | C N+RG>W | RG N+C>W | RT M
even       | LT W / J | LG E / TR | C TL | RG TR / M / W | RT M
goal       | LT W | LG T / NR | C NL | RG NR / M | RT M / T | Y S / E
tite open  | free S J
tite tight | Y S | free J
bear open  | free E J
bear tight | Y E | free J
"""

# Z. Dunn, "Duo/Double", blog, March 2017; "Running the Duo", American Football Coaches
# Association, Insider: doubles straight up, the centre works back to the far backer; whether the
# near one is read by the back or blocked late, coaches differ.
DUO = """
over tight | LT J | LG N+C>W | C N+LG>W | RG T+RT | RT T+RG | Y E
under tight| LT J | LG T | C N+RG>W | RG N+C>W | RT E+Y / E | Y E+RT / S
odd tight  | LT D | LG N+C>W | C N+LG>W | RG E+RT / M | RT E+RG / E | Y S
tite tight | LT D | LG N+C>W | C N+LG>W | RG E+RT | RT E+RG | Y S
stack tight | LT D | LG N+C>W / N+C>M | C N+LG>W / N+LG>M
stack tight | RG E+RT / M / S | RT E+RG / E / E+Y>O | Y O / E+RT>O / E+RT>S
bear tight | LT J / TL | LG TL / N+C>W | C N / N+LG>W | RG TR+RT | RT TR+RG | Y E
even tight | LT J | LG TL+C>W | C TL+LG>W
even tight | RG TR+RT / TR | RT TR+RG / E+Y>M / E+Y>S | Y E / E+RT>M / E+RT>S
goal       | LT W | LG NL | C NR+RG>M / NR | RG NR+C>M / M | RT T+Y>S / T | Y T+RT>S / E | U D
tite tight | free J
bear tight | Y E | free J
"""

# Kuchar, "The Iso Study", X&O Labs; "Iso and Power", beginners' forum guide, March 2015: covered,
# base; uncovered, double to the inside or the backside; the fullback has the first backer from
# the hole, counted from inside out.
ISO = """
over       | LT J | LG N+C>W | C N+LG>W | RG T | RT E | F M
under      | LT J | LG T | C N+RG>W | RG N+C>W | RT E | F M
odd        | LT D | LG W / N+C / N+C>W | C N+RG / N+RG>W / N+LG / N+LG>W | RT E | F M
tite       | LT D | LG N+C>W | C N+LG>W | RG E+RT | RT E+RG | F M
stack      | LT D | LG W / N+C>W | C N+RG>M / N+LG>W | RG N+C>M / M | RT E | F S
bear       | LT J | LG TL | C N | RG TR / TR+RT>W | F M
bear open  | RT E
bear tight | RT W / TR+RG>W | Y E
even       | LT J | LG TL / TL+C>W | C TR+RG>W / TL+LG>W | RG TR+C>W / TR | RT E | F M
goal       | LT W | LG NL | C NR+RG / NR | RG NR+C / M | RT T | Y E | F M / S
mug        | LT N | LG W | C M | RG T | RT E / E+Y
tite open  | free S J
tite tight | Y S | free J
bear open  | free W
bear tight | free -
"""

# "Phrase of the Day: Toss Sweep", fan site, August 2017: the receiver cracks, the man whose own is
# cracked or pinned pulls to the force, the others reach.
TOSS = """
over open | LT W / J | LG N / N+C / N+C>W
over open | C M / T+RG>M / N+LG / N+LG>W | RG T / M / S | RT S / T / E
under open | LT T | LG N+C>W / W | C N / N+LG>W / N+RG>M | RG M / N+C>M | RT S / E
odd open   | LT D | LG N+C>W / W | C N / N+LG>W | RG M / E+RT / E+RT>M | RT E / E+RG / E+RG>M
tite open  | LT D | LG N+C>W / W | C N / N+LG>W | RG M / S / E+RT>M | RT E / E+RG>M
stack open | LT D / W | LG N+C>M / M / N+C>W
stack open | C N / N+LG>M / N+LG>W | RG O / E+RT / S / M | RT E / E+RG / S / O
bear open  | LT TL | LG N+C>W | C N+LG>W | RG TR / M / TR+RT>M
even open  | LT W | LG TL | C TR / TR+RG>M | RG M / TR+C>M | RT S / E
tite open  | H S / R | F R / S | free J
bear open  | H E / R | F R / E / C | free J
"""

# The toss with a wing: he takes the man who hangs over his end, the line whoever is inside of him,
# for no two who climb cross. Common practice, no published source.
WING_TOSS = """
over wing  | C M / N+LG / N | Y E | P S
"""

# "How to Install Buck Sweep", coaching site; "Buck Sweep: Playside Tackle", wing-T teaching page:
# gap, down, backer; the wing the first free man inside; both guards pull.
BUCK = """
over wing  | LT W / J | LG M / W | C N | RT T | Y E | P M / S
under wing | LT T | LG W | C N | RT M | Y E | P S
odd wing   | LT D | LG W | C N | RT M | Y E | P S
tite wing  | LT D | LG W | C N | RT E | Y M | P S
stack wing | LT D | LG M / W | C N | RG O / C | RT N / M / N+C | Y E | P S
bear wing  | LT TL | LG W | C N | RT TR | Y M | P E
even wing  | LT W / J | LG M / W | C TL | RT TR | Y E | P S / M
tite wing  | F J / D | RG C
bear wing  | F J | RG C
"""

# "The Complete Guide to the Draw Play", coaching publisher: five men take the down men and as many
# backers as are left over, the nearest to the ball first.
DRAW = """
over       | LT J | LG N / N+C>M | C M / N+LG>M | RG T | RT E
under      | LT J | LG T | C N / N+RG | RG M | RT E
odd        | LT D | LG W / N+C>W | C N / N+LG>W | RG M | RT E
tite       | LT D | LG W / N+C>W | C N / N+LG>W | RG M | RT E
stack      | LT D | LG M / W / N+C>M / N+C>W | C N / N+LG>M / N+LG>W | RG S / M | RT E
bear open  | LT J | LG TL | C N | RG TR | RT E
even       | LT J | LG TL / TL+C>M | C M / TL+LG>M
even open  | RT E
even tight | LG TL / TL+C>M / TL+C>W | C M / TL+LG>M / TL+LG>W | RG TR | RT E / E+Y>M
mug        | LT N | LG W | C M | RG T | RT E / E+Y
tite open  | free S J
tite tight | Y S | free J
bear open  | free M W
"""

# "Inside Veer Rules" and "The Count System", option blog, January 2015: the first man on or
# outside the tackle and the next are left; tackle and one inside man bracket the backer.
VEER = """
over open  | LT W / J | LG N / W / N+C>W | RG T / T+C>M | RT M
under open | LT T | LG W | C N+RG | RG N+C | RT M
odd open   | LG W | C N+RG | RG N+C | RT M
tite open  | LT D | LG W | C N+RG | RG N+C | RT M
stack open | LG W | C N+RG | RG N+C | RT M
bear open  | LT TL | LG N+C>W | C N+LG>W | RG TR | RT M
even open  | LT W | LG TL | C TR+RG>M / TR+RG | RG TR+C>M / TR+C | RT M
over open  | key E S
under open | key E S
odd open   | key E S
tite open  | key E S | free J
stack open | key E S
bear open  | key E R | free J
even open  | key E S
"""

# The trap as above, with a fullback who leads on the near backer: against a stack the other one
# is the double team's, and the tackle, who cannot get to him in time, goes on to the safety.
# Common practice, no published source.
LEAD_TRAP = """
stack | LT D | LG E | C N+RG>W | RG N+C>W | RT A / S | F M
"""

# "Pin and Pull Scheme: Blocking Rules", coaching blog, October 2015; "Pin-pull sweep", glossary,
# December 2015: a man inside you is pinned, who has none pulls, the first for the force and the
# second for the near backer. Where the centre reaches the man whom the guard pins, both have him.
# At the goal line the guard and tackle are not asked: good coaches differ there.
PIN_AND_PULL = """
over       | LT W | LG N | C M | RG S | RT T | Y E | free J
under      | LT T | LG W | C N+RG>M / M | RG N+C>M / N | RT S | Y E | free J
odd        | LT D | LG N+C>W | C N+LG>W / N | RG M | RT S | Y E | free J
tite       | LT D | LG N+C>W | C N+LG>W / N | RG M | RT E | Y S | free J
stack      | LT D | LG N+C>M | C N+LG>M / N | RG S | RT O | Y E | free W
bear       | LT TL | LG N+C>W | C N+LG>W / N | RG M | RT TR | Y E | free J
even       | LT W | LG TL | C TR+RG>M / M / TR | RG TR+C>M / TR | RT S | Y E | free J
goal       | LT W | LG NL | Y T
"""

# "Counter Trey: Down, Kickout and Wrap", coaching blog: the kick is on the first man outside the
# last down block, whoever makes that one.
KICK = """
over wing  | LG S | Y E | P M
odd wing   | LG C | Y E | P S
tite wing  | LG C | RT E+Y / E | P S
bear wing  | LG C | RT TR+RG / TR | P E
"""

# Each table with the sets that it is asked in: for the fronts that name none, all of them.
TABLES: dict[str, tuple[str, tuple[str, ...]]] = {
    "zone": (ZONE, ("One", "One Tight")),
    "zone read": (ZONE_READ, ("One", "One Tight")),
    "split zone": (SPLIT, ("Two", "Two Tight")),
    "outside zone": (OUTSIDE_ZONE, ("One", "One Tight")),
    "power": (POWER, ("Two", "Two Tight")),
    "quarterback power": (QUARTERBACK_POWER, ("One", "One Tight")),
    "counter": (COUNTER, ("Two", "Two Tight")),
    "trap": (TRAP, ("One", "One Tight")),
    "lead trap": (LEAD_TRAP, ("Two", "Two Tight")),
    "duo": (DUO, ("One", "One Tight")),
    "isolation": (ISO, ("Two", "Two Tight")),
    "toss": (TOSS, ("Two", "Two Tight")),
    "wing toss": (WING_TOSS, ("One Wing",)),
    "buck sweep": (BUCK, ("Wing",)),
    "draw": (DRAW, ("One", "One Tight")),
    "veer": (VEER, ("Two", "Two Tight")),
    "pin and pull": (PIN_AND_PULL, ("One Tight",)),
    "down and kick": (KICK, ("Wing",)),
}

# How each playbook calls them; "" where it has none.
NAMES: dict[str, tuple[str, str]] = {
    "zone": ("Inside Zone", "Zone"),
    "zone read": ("Inside Zone + Read", "Zone + Keep"),
    "split zone": ("Split Zone", "Split Zone"),
    "outside zone": ("Outside Zone", "Stretch"),
    "power": ("Power", "Power"),
    "quarterback power": ("Quarterback Power", "Quarterback Power"),
    "counter": ("Counter", "Counter"),
    "trap": ("Trap", "Trap"),
    "lead trap": ("Trap", "Trap"),
    "duo": ("Duo", "Duo"),
    "isolation": ("Isolation", "Isolation"),
    "toss": ("Toss Sweep", "Toss"),
    "wing toss": ("Toss Sweep", "Toss"),
    "buck sweep": ("", "Buck Sweep"),
    "draw": ("Draw", "Draw"),
    "veer": ("Inside Veer", "Veer"),
    "pin and pull": ("", "Pin and Pull"),
    "down and kick": ("", "Down and Kick"),
}
