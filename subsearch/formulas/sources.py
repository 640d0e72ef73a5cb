"""Where each law and each constant comes from, and how well it is known: the one home of publishers' names."""

from dataclasses import dataclass

READ, COMPUTED = "read in the source", "computed from a stated formula"
SECOND_HAND, MEMORY, PRACTICE = "second hand", "from memory", "common practice"
STATUSES = (READ, COMPUTED, SECOND_HAND, MEMORY, PRACTICE)


@dataclass(frozen=True)
class Source:
    """A source: "not stated" where an edition or section is not known; the status is one of STATUSES."""

    title: str
    publisher: str
    edition: str
    section: str
    status: str


NONE = "no publisher"
OPEN = "not stated"

SOURCES = {
    "ten-degree rule": Source(
        "Technical FAQ: capacitor lifetime with changing ambient", "Cosel", "web page, no date", "Example", READ
    ),
    "ten-degree range": Source(
        "Aluminum electrolytic capacitors, technical notes", "Rubycon", "web page, no date", "part 4-5", READ
    ),
    "core rise": Source(
        "Lifetime calculation formula of aluminum electrolytic capacitors",
        "Rubycon, Engineering Division",
        "stored copy, no date; the layout of its tables garbled",
        "section 1",
        READ,
    ),
    "ripple on the core": Source("Halving of life per 10 K of core rise", NONE, OPEN, OPEN, MEMORY),
    "ripple factor": Source(
        "Capacitor life time calculation, a blog restating the Jianghai model",
        "circuitlover.com",
        "web page, no date",
        "factors KT and KR, with Ki = 2",
        SECOND_HAND,
    ),
    "calendar ceiling": Source(
        "Manual PS9011-2420-0001, quoting its capacitor supplier",
        "Beckhoff",
        "web page, no date",
        "Lifetime expectancy",
        SECOND_HAND,
    ),
    "hours in years": Source("Arithmetic: 365 days a year", NONE, OPEN, OPEN, COMPUTED),
    "loss factor": Source("Definition: tan delta = 2 pi f C ESR", NONE, OPEN, OPEN, COMPUTED),
    "plane geometry": Source("Arithmetic of rectangles and circles", NONE, OPEN, OPEN, COMPUTED),
    "can tolerance": Source("SU series datasheet, 85 C", "Panasonic", OPEN, "Dimensions", READ),
    "short can tolerance": Source(
        "SN non-polar series datasheet, 105 C", "Teapo", "copy with a garbled layout", "Dimensions", READ
    ),
    "large can tolerance": Source("Plus tolerance of cans from 20 mm and snap-in cans", NONE, OPEN, OPEN, MEMORY),
    "box and axial tolerance": Source("Plus tolerance of boxes and axial bodies", NONE, OPEN, OPEN, MEMORY),
    "vent clearance": Source("ESC series datasheet, A4006", "KEMET", "2019", "p. 10, Mounting positions", READ),
    "vent clearance in large cans": Source("Notes for use of aluminium capacitors", "Shenmao", OPEN, OPEN, READ),
    "cans with a vent": Source("SU series datasheet, 85 C: vents above 6.3 mm", "Panasonic", OPEN, OPEN, READ),
    "leads into other holes": Source("Bench practice: offset a lead takes unformed", NONE, OPEN, OPEN, MEMORY),
    "axial hole span": Source("Hole span of axial parts: length and about 5 mm", NONE, OPEN, OPEN, MEMORY),
    "high-pass": Source("First-order high-pass: corner 1/(2 pi R C)", NONE, OPEN, OPEN, COMPUTED),
    "discharge through a resistor": Source("V(t) = V0 exp(-t/(R C)); P = V0^2/R", NONE, OPEN, OPEN, COMPUTED),
    "bleed resistor": Source("Safe discharging of capacitors", "repairfaq.org", "web page, no date", "text", READ),
    "price breaks": Source("How distributors' price breaks are applied", NONE, OPEN, OPEN, PRACTICE),
}
