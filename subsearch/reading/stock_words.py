"""What a list says of its stock and of the time until delivery: numbers, at least so many, or words."""

import re
from contextlib import suppress
from math import ceil

from subsearch.errors import QuantityError
from subsearch.reading.quantities import Stated, in_range, number_of, whole
from subsearch.reading.spelling import one_spelling, plain_words
from subsearch.terms import TERMS

NOTHING_LEFT = """on order, not available, unavailable, nicht lagernd, nicht verfügbar, non, no disponible, なし,
 auf bestellung, bestellt, back order, backorder, out of stock, none, no, sold out, no stock,
not in stock, nicht auf lager, nicht lieferbar, nicht vorrätig, ausverkauft, vergriffen, kein, keine, nein,
épuisé, en rupture, rupture de stock, en rupture de stock, sur commande, non disponible, indisponible, esaurito,
su ordinazione, agotado, sin stock, bajo pedido, uitverkocht, niet op voorraad, in bestelling, brak, niedostępny,
wyprzedane, na zamówienie, není skladem, vyprodáno, na objednávku, нет, нет в наличии, под заказ, распродано,
在庫なし, 在庫切れ, 取寄せ, 取り寄せ, 缺货, 无货, 無貨, 无库存, 품절, 재고 없음, 재고없음"""
SOME_LEFT = """limited, limited stock, low stock, few left, many, plenty, wenige, viele, begrenzt, reichlich, あり,
in stock, stock, yes, available, ex stock, lots in stock, auf lager, ab lager, lagernd, ja, lieferbar,
sofort lieferbar, vorrätig, verfügbar, en stock, disponible, oui, disponibile, in magazzino, sì, en existencias, sí,
op voorraad, voorradig, leverbaar, w magazynie, dostępny, na stanie, jest, tak, skladem, ano, в наличии, есть, есть
в наличии, на складе, да, 在庫あり, 有, 有货, 有貨, 现货, 現貨, 재고 있음, 재고있음, 있음"""
UNSAID = """call, ask, please ask, on request, request, tbd, tba, n/a, na, -, ?, auf anfrage, anfrage, anfragen, bitte
anfragen, a.a., unbekannt, unknown, sur demande, nous consulter, su richiesta, a richiesta, consultar, a consultar, op
aanvraag, na zapytanie, zapytaj, na dotaz, по запросу, уточняйте, 要問合せ, お問い合わせ, 询价, 請洽詢, 문의"""
AT_LEAST = (
    r"(?:(?:[>≥]=?|more than|over|at least|min\.?|über|mehr als|mind\.?|plus de|più di|más de|meer dan|od|více než"
)
AT_LEAST += r"|ponad|более|больше|около|ca\.?|about|approx\.?|~)\s*)"
PIECES = r"(?:(?:pcs?|pieces?|ea|stk|stück|st|pi[eè]ces?|pz|pezzi|uds?|piezas|stuks|szt|sztuk|ks|шт"
PIECES += r"|個|个|개|本)\.?)"
HERE = r"(?:in stock|auf lager|ab lager|lagernd|available|en stock|op voorraad|skladem|в наличии)"
NUMBER = r"\d[\d.,' ]*\d|\d"
DAY_WORDS = {
    1: "d day days tag tage tagen tg jour jours j giorno giorni gg día días dia dias dag dagen dzień dni den dny dnů "
    "день дня дней дн 日 天 일",
    7: "w wk wks week weeks wo woche wochen semaine semaines sem settimana settimane sett semana semanas weken "
    "tydzień tygodni tygodnie tyg týden týdny týdnů týd неделя недели недель нед 週間 週 周 주",
    30: "month months mo monat monate monaten mon mois mese mesi mes meses maand maanden miesiąc miesiące měsíc měsíce "
    "месяц месяца месяцев мес ヶ月 か月 个月 個月 개월",
}
WORKING = "working day, working days, business days, at, arbeitstage, arbeitstagen, werktage, werktagen, jours ouvrés, "
WORKING += "giorni lavorativi, días laborables, werkdagen, dni roboczych, pracovních dnů, pracovní dny, рабочих дней, "
WORKING += "営業日, 工作日, 영업일, bd, wd"
AT_ONCE = "immediate, immediately, at once, sofort, prompt, immédiat, immédiatement, immediato, subito, inmediato, "
AT_ONCE += "inmediata, direct, od ręki, ihned, сразу, 即納, 即日, 立即, 즉시"


def _words(spoken: str) -> frozenset[str]:
    return frozenset(plain_words(word) or word.strip() for word in spoken.split(","))


NONE, SOME, OPEN, NOW = map(_words, (NOTHING_LEFT, SOME_LEFT, UNSAID, AT_ONCE))
DAYS = {plain_words(word): days for days, words in DAY_WORDS.items() for word in words.split()}
WORKDAYS = _words(WORKING)


def read_stock(text: str) -> Stated:
    """Give the pieces in stock: of "at least so many" that number; nothing where words say no number.

    "In stock" and "on request" leave the number not stated; "sold out" and "on order" mean 0. Raises QuantityError.

    >>> read_stock(">1000"), read_stock("auf Lager"), read_stock("ausverkauft"), read_stock("12 Stk. auf Lager")
    ({'stock': 1000}, {}, {'stock': 0}, {'stock': 12})
    """
    tidy = one_spelling(text)
    words = plain_words(tidy) or tidy
    if words in NONE:
        return {"stock": 0}
    if words in SOME or words in OPEN:
        return {}
    found = re.fullmatch(
        rf"(?:{HERE}\s*:?\s*)?{AT_LEAST}?(?P<number>(?:{NUMBER})\s*k?)\s*\+?"
        rf"(?:\s*-\s*(?:{NUMBER})\+?)?\s*{PIECES}?\s*(?:{HERE})?\s*(?:以上|이상)?",
        tidy,
        re.IGNORECASE,
    )
    if re.match(r"<|less than|weniger als|unter\b", tidy):
        return {}  # fewer than so many: how many is not said
    if found:
        return {"stock": whole("stock", number_of(found["number"]))}
    if re.search(r"\d.*[^\W\d_]", tidy):  # nothing lies there, but it comes: "3-5 days"
        with suppress(QuantityError):
            return read_lead_time(text)
    return {"stock": whole("stock", text)}


def read_lead_time(text: str, unit: str = "") -> Stated:
    """Give the days until delivery: of a range the longer end; nothing where words say no number.

    unit: what a bare number is in, as the heading says; "" is days. Raises QuantityError.

    >>> read_lead_time("3-5 days"), read_lead_time("2 Wochen"), read_lead_time("sofort"), read_lead_time("on request")
    ({'lead_time_days': 5}, {'lead_time_days': 14}, {'lead_time_days': 0}, {})
    """
    tidy = one_spelling(text)
    words = plain_words(tidy) or tidy
    if words in NOW or words in SOME:
        return {"lead_time_days": 0}
    if words in OPEN or words in NONE:
        return {}
    found = re.fullmatch(
        r"(?:ca\.?|about|approx\.?|~|max\.?|within|innerhalb|bis zu|[<≤])?\s*(?:\d+\s*(?:-|to|bis|à|/|~|do|до|至)\s*)?"
        r"(\d[\d.,' ]*)\s*(.*)",
        tidy,
        re.IGNORECASE,
    )
    name = plain_words(found[2]) or unit if found else "?"
    if not found or (name not in DAYS and name not in WORKDAYS and name not in ("", "h", "hours", "std")):
        raise QuantityError(f'"{text}" is not a lead time. Write it in days, like 14.')
    number = whole("lead_time_days", found[1].strip())
    if name in WORKDAYS:
        days = ceil(number * 7 / 5)
    else:
        days = ceil(number / 24) if name in ("h", "hours", "std") else number * DAYS.get(name, 1)
    return {"lead_time_days": int(in_range(TERMS["lead_time_days"], days, text))}
