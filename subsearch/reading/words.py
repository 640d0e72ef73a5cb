"""The words makers and suppliers use in cells, in several languages, and our word for each."""

from collections.abc import Mapping

from subsearch.errors import QuantityError, nearest, one_of
from subsearch.reading.spelling import plain_words
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
        "can": "radial, radial can, radial leads, radial leaded, "
        "cylinder, cylindrical, snap-in, snap in, rund, becher, zylinder, round, radiale, "
        "cylindrique, cilindrico, cilíndrico, radiaal, radialny, radialne, radiální, радиальный, радиальные, ラジアル, "
        "径向, 라디알",
        "box": "radial box, rectangular, quader, quaderförmig, rechteckig, boxed, rectangulaire, rettangolare, "
        "rechthoekig, prostokątny, kvádr, прямоугольный, 角形, 方形",
        "axial": "axial leads, axial leaded, "
        "axiale anschlüsse, axiale, assiale, axiaal, osiowy, osiowe, axiální, аксиальный, "
        "аксиальные, アキシャル, 轴向, 軸向, 축방향",
    },
    "lead_form": {
        "straight": "long, straight leads, gerade, lang, droits, diritti, rectos, recht, proste, rovné, прямые, 直脚",
        "formed": "taped and formed, taped, formed and taped, geformt, gegurtet, formés, formati, conformados, "
        "gevormd, formowane, tvarované, формованные, 成型",
        "cut": "cut leads, short, gekürzt, geschnitten, kurz, coupés, tagliati, cortados, geknipt, cięte, zkrácené, "
        "обрезанные, 剪脚",
        "snap-in": "snap in, einrastend",
    },
    "vent": {
        "vented": "yes, vent, with vent, ja, mit ventil, oui, sì, sí, tak, ano, да, 有",
        "none": "no, no vent, unvented, without vent, nein, ohne, ohne ventil, non, nee, nie, ne, нет, 无",
    },
    "safety_class": {
        "none": "no, -, keine, kein, ohne, without, aucune, nessuna, ninguna, geen, brak, žádná, нет, なし, 无",
        **{name: f"class {name}, klasse {name}" for name in ("X1", "X2")},
        # a part of both kinds of class stands in either place; Y, the stricter, is kept, as by the reader of markings
        **{
            name: f"class {name}, klasse {name}, X1/{name}, {name}/X1, X2/{name}, {name}/X2, X1{name}, X2{name}"
            for name in ("Y1", "Y2")
        },
    },
    "life_cycle": {
        "active": "in production, aktiv, lieferbar, actif, en production, attivo, in produzione, activo, actief, "
        "aktywny, aktivní, ve výrobě, активен, серийный, 生産中, 量产, 在产",
        "not for new designs": "nrnd, not recommended for new designs, nicht für neuentwicklungen, "
        "déconseillé pour nouvelles conceptions, 新規設計非推奨",
        "discontinued": "obsolete, end of life, eol, last time buy, abgekündigt, ausgelaufen, obsolète, arrêté, "
        "fuori produzione, obsoleto, descatalogado, uit productie, wycofany, ukončená výroba, снят с производства, "
        "生産終了, 廃番, 停产, 단종",
    },
    "condition": {
        "new": "unused, neu, neuware, neuf, nuovo, nuevo, nieuw, nowy, nowe, nový, nové, новый, новые, "
        "新品, 全新, 새 제품",
        "old stock": "new old stock, nos, old new stock, altbestand, lagerware alt, vieux stock, vecchio stock, "
        "stare zapasy, staré zásoby, старые запасы, 長期在庫, 库存旧货",
        "pulled": "used, pulled from equipment, gebraucht, ausgebaut, occasion, d'occasion, usato, usado, gebruikt, "
        "używany, używane, z demontażu, použité, б/у, с разбора, 中古, 拆机, 二手, 중고",
    },
    "traceable": {
        "yes": "y, true, 1, ja, oui, sì, sí, tak, ano, да, はい, 是, 예",
        "no": "n, false, 0, nein, non, nee, nie, ne, нет, いいえ, 否, 아니오",
    },
}


def _plain(text: str) -> str:
    return plain_words(text) or text.strip()


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
