"""Where each law and each constant comes from, and how well it is known: the one home of publishers' names.

Two tables in plain text, so that each source is one line: the documents, and what each key takes from which. A line
that begins with spaces goes on with the one above it.
"""

import inspect
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from types import ModuleType

READ, COMPUTED = "read in the source", "computed from a stated formula"
SECOND_HAND, MEMORY, PRACTICE = "second hand", "from memory", "common practice"
STATUSES = (READ, COMPUTED, SECOND_HAND, MEMORY, PRACTICE)
NONE = "no publisher"
OPEN = "not stated"


@dataclass(frozen=True)
class Source:
    """A source: "not stated" where an edition or section is not known; the status is one of STATUSES."""

    title: str
    publisher: str
    edition: str
    section: str
    status: str


# name | title | publisher | edition
DOCUMENTS = """
ambient faq | Technical FAQ: capacitor lifetime with changing ambient | Cosel | web page, no date
technical notes | Aluminum electrolytic capacitors, technical notes | Rubycon | web page, no date
lifetime formula | Lifetime calculation formula of aluminum electrolytic capacitors | Rubycon, Engineering Division
    | stored copy, no date; the layout of its tables garbled
life model | Capacitor life time calculation, a blog restating the Jianghai model | circuitlover.com | web page, no date
supply manual | Manual PS9011-2420-0001, quoting its capacitor supplier | Beckhoff | web page, no date
standard 85 | SU series datasheet, 85 C | Panasonic | not stated
bipolar 105 | SN non-polar series datasheet, 105 C | Teapo | copy with a garbled layout
small cans | ESC series datasheet, A4006 | KEMET | 2019
bipolar cans 85 | Capacitor datasheet, non-polar, 85 C | Meritek | rev. 7a
another small can | ESY series datasheet, A4007 | KEMET | not stated
axial sheets | Capacitor sheets 28325, 28327 and 28366, axial | Vishay BCcomponents | not stated
film sheets | Capacitor datasheets F3101, F3102 and F3092, film | KEMET | not stated
inch film sheet | Capacitor datasheet F3011, paper | KEMET | not stated
film catalogue | Capacitor catalogue, film | WIMA | 2013
hole note | Hole rule of IPC-2222, quoted in a design note of one page | not stated | not stated
soldering page | Technical page on soldering, in the style of IPC-A-610 | Olympic College | web page, no date
use notes | Notes for use of aluminium capacitors | Shenmao | not stated
discharging | Safe discharging of capacitors | repairfaq.org | web page, no date
capacitor guide | Guide to aluminium electrolytic capacitors, pages 2, 4 and 5 | United Chemi-Con | web pages, no date
filter wikis | Wikis on power supplies | GitHub wikis power-battery, paretech/ps1 | no date
touch discussion | Discussion 28777 on 61010-1 | IET EngX | web page, no date
activation how-to | how to calculate the life of an electrolytic capacitor | 51itpx.com | web page, no date
emc book | behind the mystery of EMC design | Wuerth Elektronik | eBook 2022
voltage note | note on the life of aluminium capacitors | SamTechK | web page, no date
pulse film | SLAC-PUB-14112 (Kemp, Burkhart, Tang) | SLAC | copy of a paper, no date
film ageing | IEEE TDEI 11(6), p. 1007 (Kong, Lee) | IEEE | 2004
polyester film | MKS 2 and MKS 4 datasheets | WIMA | 11.13 and 11.12
polypropylene film | MKP 10 datasheet | WIMA | not stated
chip sheet | datasheet of non-polar chips, life of aluminum electrolytic capacitors | DB Lectro | not stated
two-page notes | technical notes for electrolytic capacitor | not stated
    | stored copy of two pages, its maker not visible
useful life page | useful life | Kendeil | web page, no date
supply faq | FAQ on the life of power supplies | TDK | web page, no date
electronics primer | electronics primer, vol. 7 | TDK | web page, no date
processor article | article on the voltage supply of processors, p. 3; its nomogram credited to Fujitsu-Siemens
    | ZDNet.de | web page, no date
lifetime article | how the lifetime of capacitors is estimated | Jianghai
    | web page, its start and one page of a translation
standard 105 | RGA series datasheet, 105 C, 2000 h | Lelon | not stated
low impedance 105 | B41858 datasheet, 105 C | TDK | 2012
hundred hertz 85 | radial 85 C sheet, p. 9 of a catalogue | Keltron | not stated
long life high voltage | B43888 datasheet | TDK | 2015
low leakage cans | A4074 datasheet | KEMET | not stated
high voltage sheet | capacitor datasheet of 160 to 450 V, its number not noted | KEMET | not stated
low profile 85 | SAK datasheet, 85 C, p. 43 | Illinois Capacitor | copy with a garbled layout
snap-in sheet | capacitor sheet 28340, snap-in | Vishay BCcomponents | not stated
impedance slides | slides on the impedance of capacitors | docslides | web page, no date
makers' information | general technical information, as quoted in a copied page | TDK | web page, no date
shelf note | note on storage and re-ageing of 1993, reprinted | CDE | web page, no date
handling notes | handling notes of a maker of cans | Incap | web page, no date
application data | application data, pp. 67-69 | GE | not stated
large bipolar cans | ALC10 datasheet, A4020, p. 13 | KEMET | not stated
reverse page | page on reverse voltage | xccapacitors | web page, no date
series list | list of the preferred number series | qsl.net/g4usp | web page, no date
letter table | table of tolerance letters, C 5062 | ichibaphone.com | web page, no date
letter lists | lists of tolerance letters, one of them in a forum | not stated | web pages, no date
small value table | table of capacitor codes | dummies | web page, no date
imprinted markings | imprinted markings of components | primidi.com | web page, no date
date page | date codes of components | newtoncbraga | web page, no date
code table | capacitor and voltage codes | oriedza | 2014-04
seal note | real life of sealing rubber | dengen-navi.com | web page, no date
life words | video on useful life, load life and endurance, yGHV7xeKGcE | not stated | its description
hot cans | B41866 datasheet, 125 C | TDK | 2008
pulse snap-in sheet | capacitor sheet 28375, snap-in, 105 C | Vishay BCcomponents | not stated
screw sheet | PEH200 datasheet, A4034, p. 5 | KEMET | not stated
polymer slides | slides on polymer capacitors | Murata | not stated
"""
# key | document, or = and a title that no publisher stands behind | section | status
KEYS = """
ten-degree rule | ambient faq | Example | read in the source
ten-degree range | technical notes | part 4-5 | read in the source
core rise | lifetime formula | section 1 | read in the source
ripple on the core | =Halving of life for every 10 K rise of the core temperature | not stated | from memory
ripple factor | life model | factors KT and KR, with Ki = 2 and 4 | second hand
calendar ceiling | supply manual | Lifetime expectancy | second hand
hours in years | =Arithmetic: 365 days a year | not stated | computed from a stated formula
loss factor | =Definition: tan delta = 2 pi f C ESR | not stated | computed from a stated formula
quality factor | =Definition: Q = 1/tan delta | not stated | computed from a stated formula
heat in a resistance | =Definition: P = I^2 R | not stated | computed from a stated formula
float noise | =Arithmetic of binary fractions: about 16 figures | not stated | computed from a stated formula
plane geometry | =Arithmetic of rectangles and circles | not stated | computed from a stated formula
can tolerance | standard 85 | Dimensions | read in the source
short can tolerance | bipolar 105 | Dimensions | read in the source
large can tolerance | =Plus tolerance of cans from 20 mm and snap-in cans | not stated | from memory
box and axial tolerance | =Plus tolerance of boxes and axial bodies | not stated | from memory
vent clearance | small cans | p. 10, Mounting positions | read in the source
vent clearance in large cans | use notes | not stated | read in the source
cans with a vent | standard 85 | vents above 6.3 mm | read in the source
leads into other holes | =Bench practice: offset a lead takes unformed | not stated | from memory
can leads | standard 85 | Dimensions | read in the source
leads of other cans | bipolar 105 | Dimensions | read in the source
formed small cans | small cans | taping and forming | read in the source
leads of large cans | =Bench knowledge: lead spacing and leads of cans of 20 and 25 mm, and of short ones | not stated
    | from memory
snap-in leads | =Bench knowledge: tags of snap-in cans | not stated | from memory
can sizes | =Bench knowledge: sizes of cans with leads | not stated | from memory
axial sizes | axial sheets | sizes named | read in the source
more axial sizes | =Bench knowledge: sizes of axial cans that are often met | not stated | from memory
axial leads | =Bench knowledge: leads of axial cans | not stated | from memory
film box sizes | =Bench knowledge: sizes of film boxes | not stated | from memory
film spacings of one maker | film sheets | lead spacing | read in the source
film spacings of another | film catalogue | contents | read in the source
inch spacings | inch film sheet | lead spacing | read in the source
formed leads | =Bench practice: offset to which leads are formed | not stated | from memory
straight before a bend | soldering page | Lead length before bend | read in the source
lead bends | soldering page | Lead bends | read in the source
plated hole | hole note | Through hole clearance | read in the source
lead in its hole | =Bench practice: what a lead leaves of its hole | not stated | from memory
axial hole span | =Hole span of axial parts: length and about 5 mm | not stated | from memory
high-pass | =First-order high-pass: corner 1/(2 pi R C) | not stated | computed from a stated formula
discharge through a resistor | =V(t) = V0 exp(-t/(R C)); P = V0^2/R | not stated | computed from a stated formula
bleed resistor | discharging | text | read in the source
stored energy | =Definition: E = C V^2 / 2 | not stated | computed from a stated formula
laid flat | =Bench practice: a radial part laid flat, its leads bent down | not stated | from memory
on end | =Bench practice: an axial part on end, its upper lead bent back down | not stated | from memory
vent position | small cans | p. 10, Mounting positions | read in the source
equal circles in a circle | =Arithmetic of one to four equal circles in a circle | not stated
    | computed from a stated formula
two bodies in a rectangle | =Arithmetic of two outlines in opposite corners of a rectangle | not stated
    | computed from a stated formula
price breaks | =How distributors' price breaks are applied | not stated | common practice
parallel and series | =Arithmetic of capacitances in parallel and in series | not stated
    | computed from a stated formula
back to back | =Arithmetic of two equal parts in series with like poles joined | not stated
    | computed from a stated formula
voltage back to back | =Bench practice: about the rating of one part each way | not stated | from memory
shares of a series pair | =Arithmetic of series capacitors: one charge on both | not stated
    | computed from a stated formula
balancing | capacitor guide | not stated | read in the source
currents of a balanced pair | =Arithmetic of the currents at the midpoint | not stated | computed from a stated formula
worst case | =Arithmetic of capacitances at the ends of their tolerances | not stated | computed from a stated formula
chance | =Arithmetic of independent deviations: their squares add up | not stated | computed from a stated formula
life of a set | =Arithmetic: the shortest of the lives | not stated | computed from a stated formula
worst value | =Arithmetic of tolerance and ageing: both factors | not stated | computed from a stated formula
reservoir ripple | filter wikis | power supply filtering | read in the source
valley of the ripple | =Arithmetic of a falling line and a rising sine | not stated | computed from a stated formula
touch voltage | touch discussion | 6.3.1 c) and figure 3 | read in the source
voltage reserve | =Bench practice: a rating a quarter above the highest voltage | not stated | common practice
shelf life | shelf note | after 3 years: test first | read in the source
parts from used equipment | handling notes | parts taken out are not used again | read in the source
twice the old value | =Bench practice: over twice the old capacitance a part is another part | not stated
    | common practice
long film body | =Bench practice: a film body over 15 mm picks up hum in a sensitive stage | not stated
    | common practice
tantalum at half its rating | =Bench practice: solid tantalum at no more than half its rated voltage | not stated
    | common practice
old ratings | =Bench practice: 6.4 and 64 V count as 6.3 and 63 V | not stated | common practice
reverse limit | =Bench practice: 0.5 V for long, 1 V in short peaks | not stated | from memory
sum of d.c. and peak | capacitor guide | not stated | read in the source
Arrhenius | activation how-to | step 1 | read in the source
Boltzmann constant | =definition of the units: 1.380649e-23 joules a kelvin over 1.602176634e-19 coulombs | CODATA 2018
    | computed from a stated formula
kelvin and Celsius | =definition: zero degrees are 273.15 kelvin | not stated | computed from a stated formula
powers of two | =exp(x) = 2^(x / ln 2) | not stated | computed from a stated formula
ten-degree energy | =solved for a doubling in ten degrees: energy = k ln 2 x product of both temperatures / 10
    | not stated | computed from a stated formula
sum of wear | ambient faq | Example; the formula was not visible in the copy | read in the source
equivalent temperature | =the ten-degree rule turned round | not stated | computed from a stated formula
voltage factor by type | voltage note | K voltage | read in the source
voltage on small parts | chip sheet | p. 13, life | read in the source
voltage power | life model | factor KV | second hand
voltage line | =straight line of large screw and snap-in parts: 4.3 - 3.3 x ratio | not stated | from memory
twenty-degree rule | emc book | p. 18, Lifetime consideration | read in the source
twofold polymer rule | =twofold in ten degrees for solid polymer, as some makers have it | not stated | from memory
hybrid rule | =hybrid parts age with temperature as wet ones do | not stated | from memory
film life | =film parts: a power of the voltage ratio, and a halving in ten degrees | not stated | from memory
film voltage exponent | =film parts: powers of 7 to 9 | not stated | from memory
measured voltage exponent | pulse film | Abstract | read in the source
film halving | film ageing | Abstract | read in the source
film operational life | polyester film | Reliability | read in the source
polyester derating | polyester film | Electrical data | read in the source
polypropylene derating | polypropylene film | Electrical data | read in the source
five-degree ripple law | chip sheet | p. 13, equations (1) to (3) | read in the source
bending ripple law | lifetime formula | section 1 | read in the source
range of core rises | life model | rated core rise by class | second hand
ripple temperature coefficients | lifetime formula | section 3, table | read in the source
ripple of several tones | two-page notes | section 4 | read in the source
core over case | lifetime formula | section 2, table | read in the source
core over case again | two-page notes | section 4 | read in the source
can surface | =surface of a cylinder without its base | not stated | from memory
surface rise | two-page notes | section 4.2, equations 4.2 and 4.3 | read in the source
case temperature rule | supply faq | not stated | read in the source
nomogram above the rated current | processor article | section 2.1.1, example | read in the source
case allowance | useful life page | not stated | read in the source
bottom of the can | lifetime article | not stated | read in the source
loss of standard 85 | standard 85 | Specifications | read in the source
loss of standard 105 | standard 105 | Specifications | read in the source
loss of low impedance 105 | low impedance 105 | loss factor | read in the source
loss at 100 Hz | hundred hertz 85 | loss factor at 27 C | read in the source
loss of bipolar 105 | bipolar 105 | Dissipation factor, at 25 C | read in the source
loss of bipolar 85 | bipolar cans 85 | loss factor; the order of the last five inferred | read in the source
loss of high voltage | long life high voltage | loss factor | read in the source
adder above 1000 µF | standard 85 | note below the table; the like in six other sheets | read in the source
ratings between columns | =a limit that condemns: the larger of two neighbours | not stated | common practice
leakage up to 100 V | standard 85 | DC leakage | read in the source
leakage up to 100 V in another sheet | low leakage cans | leakage; its time not seen | read in the source
leakage after 1 minute | standard 85 | DC leakage | read in the source
leakage through 1000 ohm | hundred hertz 85 | leakage | read in the source
leakage above 100 V | standard 105 | Leakage | read in the source
leakage above 100 V of standard 85 | standard 85 | DC leakage | read in the source
leakage of 160 to 450 V | high voltage sheet | leakage; its time not seen | read in the source
leakage of bipolar 105 | bipolar 105 | DC leakage | read in the source
leakage of bipolar 85 | bipolar cans 85 | Leakage current | read in the source
leakage of common bipolar | =limit of many bipolar parts: 0.03 of capacitance times voltage, at least 3 | not stated
    | from memory
power-law leakage | =0.3 of the 0.7th power of capacitance times voltage, and 4, in the style of 41332 | not stated
    | from memory
series impedance | impedance slides | impedance and self-resonance | read in the source
usual inductance | low impedance 105 | series inductance | read in the source
cold impedance of standard 85 | standard 85 | low temperature characteristics; the layout garbled | read in the source
cold impedance of bipolar 85 | bipolar cans 85 | low temperature characteristics | read in the source
reactive current | =Definition: I = 2 pi f C V | not stated | computed from a stated formula
heat of losses | =Definition: P = V I tan delta | not stated | computed from a stated formula
reverse for a short time | makers' information | Reverse voltage | read in the source
reverse of large cans | large bipolar cans | reverse voltage | read in the source
reverse at most | application data | p. 68 | read in the source
reverse as a range | reverse page | text | read in the source
reverse test | =test of 60384-4 in reverse, about 1 V | not stated | from memory
multipliers of axial parts | axial sheets | 28325, ripple multipliers | read in the source
multipliers of snap-in parts | snap-in sheet | ripple multipliers | read in the source
multipliers at 120 Hz | low profile 85 | Ripple multipliers | read in the source
multipliers between frequencies | =Between two printed frequencies straight over their logarithm | not stated
    | common practice
ratio of multipliers | =two multipliers of one row, one over the other | not stated | computed from a stated formula
resistance behind a multiplier | =equal heat: resistance over that at the rated frequency is one over the square
    | not stated | computed from a stated formula
preferred values | series list | list | read in the source
closer series | =Arithmetic: roots of ten, rounded to three figures | not stated | computed from a stated formula
rated voltages | =How rated voltages go up | not stated | from memory
old voltages | =How old rated voltages are replaced by modern ones | not stated | from memory
surge by a quarter | bipolar cans 85 | Surge voltage | read in the source
surge by rating | low impedance 105 | surge voltage | read in the source
surge ratio | =How far the standard for wet aluminium lets a surge go | not stated | from memory
digit codes | code table | Decoding | read in the source
letter codes | imprinted markings | value code | read in the source
R on capacitors | =How an R on a capacitor is read | not stated | from memory
voltage codes | code table | table | read in the source
further voltage codes | =How five more voltage codes are read | not stated | from memory
structure of voltage codes | =Arithmetic: figures by the letter, power of ten by the digit | not stated
    | computed from a stated formula
smallest electrolytics | =Bench knowledge: electrolytics begin at about 0.1 µF | not stated | from memory
closest electrolytics | =Bench knowledge: none within 1 % | not stated | from memory
millifarad or microfarad | =How an m on an old capacitor is read | not stated | from memory
tolerance letters | letter table | table | read in the source
tolerance letter H | letter lists | not stated | read in the source
tolerance letter Q | low profile 85 | p. 43 | read in the source
tolerance letter T | axial sheets | not stated | read in the source
tolerance letter S | letter lists | not stated | read in the source
tolerance letter Z | letter lists | not stated | read in the source
older tolerance letters | letter lists | not stated | read in the source
tolerance letters in pF | small value table | not stated | read in the source
tolerance letter G in pF | =How a G on a very small capacitor is read | not stated | from memory
year letters | date page | 1994 to 2000 | read in the source
later year letters | imprinted markings | 2003 to 2009 | read in the source
year letters from memory | =How the sequence of year letters is filled up | not stated | from memory
first cycle of year letters | =How year letters were used from 1970 on | not stated | from memory
month characters | date page | not stated | read in the source
year and week | date page | not stated | read in the source
service life | electronics primer | service life | read in the source
seal life | seal note | not stated | read in the source
ends of life | life words | description | read in the source
ends of life of axial parts | axial sheets | endurance, useful life, storage | read in the source
ends of life of the thinnest axial parts | axial sheets | 28327, endurance, useful life | read in the source
ends of life of snap-in parts | pulse snap-in sheet | endurance, useful life, storage | read in the source
ends of life of snap-in parts of 85 °C | snap-in sheet | useful life | read in the source
end of life at 105 °C | low impedance 105 | useful life | read in the source
end of life at 125 °C | hot cans | useful life | read in the source
ends of life of long-life parts | long life high voltage | useful life, endurance | read in the source
end of endurance at 85 °C | standard 85 | endurance | read in the source
ends of life at 105 °C | standard 105 | load life, shelf life | read in the source
end of life of bipolar parts at 105 °C | bipolar 105 | load life | read in the source
end of life of bipolar parts at 85 °C | bipolar cans 85 | load life | read in the source
end of life of screw parts | screw sheet | p. 5 | read in the source
latest end of life | useful life page | not stated | read in the source
end of life of polymer parts | polymer slides | text | read in the source
"""


def _rows(table: str) -> Iterator[list[str]]:
    for line in re.sub(r"\n\s+", " ", table.strip()).splitlines():
        yield [cell.strip() for cell in line.split("|")]


def _sources() -> dict[str, Source]:
    documents = {name: about for name, *about in _rows(DOCUMENTS)}
    found: dict[str, Source] = {}
    for key, document, section, status in _rows(KEYS):
        ours = document.startswith("=")
        title, publisher, edition = (document[1:], NONE, OPEN) if ours else documents[document]
        assert key not in found, key
        found[key] = Source(title, publisher, edition, section, status)
    return found


SOURCES = _sources()


def keys_in(module: ModuleType) -> set[str]:
    """The keys that a module names: behind "Source:", in docstrings and beside constants, and as a field `source`.

    >>> from subsearch.formulas import coupling
    >>> sorted(keys_in(coupling))
    ['high-pass', 'worst value']
    """
    named = re.findall(r'Source: (.+)|\bsource="([^"]+)"', inspect.getsource(module))
    return {key.strip() for behind, field in named for key in (behind or field).split(", ")}


def sources_of(modules: Iterable[ModuleType]) -> dict[str, Source]:
    """The sources behind some modules, by their keys, in the order of this file.

    >>> from subsearch.formulas import coupling
    >>> sources_of([coupling])["high-pass"].status
    'computed from a stated formula'
    """
    keys = set().union(*map(keys_in, modules))
    return {key: source for key, source in SOURCES.items() if key in keys}
