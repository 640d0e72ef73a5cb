"""The words makers and suppliers use in cells, in several languages, and our word for each."""

import re
from collections.abc import Mapping

from subsearch.errors import QuantityError, nearest, one_of
from subsearch.terms import C0G, CLASS_2, FILM_PET, FILM_PP, HYBRID, PAPER, POLYMER, TANTALUM, TERMS, WET

SPOKEN: Mapping[str, Mapping[str, str]] = {
    "technology": {
        WET: "al electrolytic, aluminium electrolytic, aluminum electrolytic, electrolytic, wet electrolytic, "
        "aluminium, elektrolyt (nass), elektrolyt, elko, elektrolytkondensator, alu-elko, électrolytique",
        POLYMER: "polymer al, polymer aluminum, solid polymer, polymer, conductive polymer, polymer-elko",
        HYBRID: "hybrid al, hybrid aluminum, hybrid polymer, polymer hybrid, hybrid, hybrid-elko",
        TANTALUM: "tantalum bead, solid tantalum, tantal, tantalperle",
        FILM_PET: "pet film, pet, polyester film, polyester, pet-folie, polyesterfolie, pet foil",
        FILM_PP: "pp film, pp, polypropylene film, polypropylene, pp-folie, polypropylenfolie, pp foil",
        C0G: "c0g ceramic, ceramic c0g, c0g, np0, c0g/np0, np0 ceramic, ceramic np0, keramik c0g, keramik np0",
        CLASS_2: "class 2 ceramic, class 2, keramik klasse 2, klasse 2, x7r, x5r, ceramic x7r, keramik x7r",
        PAPER: "paper capacitor, metallised paper, wax paper, papier, metallpapier, mp",
    },
    "polarity": {
        "polar": "polarised, polarized, gepolt, polarisé",
        "bipolar": "non-polarised, non-polarized, non-polar, nonpolar, unpolarised, unpolarized, un-polarised, "
        "un-polarized, bi-polar, bi, bp, b.p., np, n.p., n/p, ungepolt, non polarisé",
    },
    "life_basis": {
        "endurance": "endurance test, dauerprüfung, dauertest",
        "load life": "load life test, load, lastprüfung",
        "useful life": "service life, brauchbarkeitsdauer",
    },
    "life_reference": {
        "ambient": "ambient temperature, ta, umgebung, umgebungstemperatur",
        "case": "case temperature, tc, gehäuse, gehäusetemperatur",
    },
    "shape": {
        "can": "radial, radial can, cylinder, snap-in, snap in, rund, becher, zylinder",
        "box": "radial box, rectangular, quader, quaderförmig, rechteckig",
        "axial": "axial leads, axiale anschlüsse",
    },
    "lead_form": {
        "straight": "long, straight leads, gerade, lang",
        "formed": "taped and formed, taped, formed and taped, geformt, gegurtet",
        "cut": "cut leads, short, gekürzt, geschnitten, kurz",
        "snap-in": "snap in, einrastend",
    },
    "vent": {
        "vented": "yes, vent, with vent, ja, mit ventil",
        "none": "no, no vent, unvented, without vent, nein, ohne, ohne ventil",
    },
    "safety_class": {
        "none": "no, -, keine, kein, ohne, without",
        **{name: f"class {name}, klasse {name}" for name in ("X1", "X2", "Y1", "Y2")},
    },
    "life_cycle": {
        "active": "in production, aktiv, lieferbar",
        "not for new designs": "nrnd, not recommended for new designs, nicht für neuentwicklungen",
        "discontinued": "obsolete, end of life, eol, last time buy, abgekündigt",
    },
    "condition": {
        "new": "unused, neu, neuware",
        "old stock": "new old stock, nos, old new stock, altbestand, lagerware alt",
        "pulled": "used, pulled from equipment, gebraucht, ausgebaut",
    },
    "traceable": {
        "yes": "y, true, 1, ja, oui",
        "no": "n, false, 0, nein, non",
    },
}


def _plain(text: str) -> str:
    return re.sub(r"[\s_\-\u2010-\u2013]+", " ", text.casefold()).strip(" .")


MEANT: Mapping[str, Mapping[str, str]] = {
    term: {_plain(word): ours for ours, spoken in words.items() for word in (ours, *spoken.split(", "))}
    for term, words in SPOKEN.items()
}


def read_word(term: str, text: str) -> str:
    """Give our word for a supplier's word.

    term: name of a term that has words. text: the cell. Result: one of Term.words. Raises QuantityError
    with fault "unknown_word".

    >>> read_word("polarity", "Ungepolt"), read_word("technology", "PET-Folie")
    ('bipolar', 'film PET')
    """
    meant = MEANT[term]
    plain = _plain(text)
    if plain in meant:
        return meant[plain]
    raise QuantityError(
        f'"{text.strip()}" is not a known word for {term} ({TERMS[term].meaning}). '
        f"Use {one_of(TERMS[term].words)}.{nearest(plain, meant)}",
        "unknown_word",
    )
