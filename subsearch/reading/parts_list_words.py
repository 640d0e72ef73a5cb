"""The words that parts lists use: in headings, for parts that are no capacitors, and for what is not fitted.

English, German, French, Italian, Spanish, Dutch, Polish, Czech, Russian, Japanese, Chinese (both scripts) and Korean.
"""

from collections.abc import Mapping

HEADINGS: Mapping[str, str] = {
    "reference": "reference, references, ref, refs, réf, ref no, ref number, symbol no, circuit no, parts no, "
    "ref des, refdes, reference designator, reference designators, designator, designators, designation, "
    "designations, part reference, component reference, position, positions, pos, circuit reference, circuit ref, "
    "schematic reference, location, locations, parts, part, component, symbol, referenz, referenzen, bezeichner, "
    "bauteilbezeichner, bauteil, bauteile, bauteilbezeichnung, bauteilname, lage, bezeichnung im plan, "
    "positionsnummer, bauelement, bauelemente, repère, repères, référence, référence schéma, composant, composants, "
    "désignateur, riferimento, riferimenti, rif, designatore, componente, componenti, sigla, posizione, referencia, "
    "referencias, designador, posición, componentes, referentie, referenties, onderdeel, onderdelen, positie, "
    "posities, oznaczenie, oznaczenia, element, elementy, pozycja, symbol elementu, označení, pozice, součástka, "
    "součástky, reference součástky, обозначение, поз обозначение, позиционное обозначение, позиция, поз, элемент, "
    "部品番号, 部品記号, 記号, 回路記号, 参照, 位置, リファレンス, 部品, 位号, 标号, 元件标号, 元件位号, 位號, 標號, "
    "元件標號, 元件位號, 编号, 부품기호, 부품 번호, 부품번호, 참조, 위치, 기호",
    "value": "value, values, val, part value, nominal, nominal value, rating, ratings, cap, capacitance, capacity, "
    "wert, werte, bauteilwert, nennwert, kapazität, nennkapazität, valeur, valeurs, capacité, valore, valori, "
    "capacità, valor, valores, capacidad, capacidade, waarde, waarden, capaciteit, wartość, wartości, pojemność, "
    "hodnota, hodnoty, kapacita, номинал, значение, емкость, ёмкость, номинальное значение, 定数, 値, 容量, "
    "静電容量, 数值, 数値, 值, 电容值, 电容量, 參數, 参数, 数據, 數值, 電容值, 電容量, 값, 수치, 용량, 정전용량, 정격",
    "marking": "marking, markings, printed, old value, aufdruck, marquage, marcatura, marcado, opdruk, oznakowanie, "
    "potisk, маркировка, 表示, 印字, 丝印, 絲印, 표시",
    "voltage": "voltage, voltages, volt, volts, v, vdc, v dc, rated voltage, working voltage, voltage rating, wv, "
    "wvdc, old rating, spannung, nennspannung, spannungsfestigkeit, betriebsspannung, tension, tension nominale, "
    "tension de service, tensione, tensione nominale, tensione di lavoro, tensión, tensión nominal, voltaje, "
    "spanning, werkspanning, nominale spanning, napięcie, napięcie znamionowe, napięcie pracy, napětí, "
    "jmenovité napětí, напряжение, номинальное напряжение, рабочее напряжение, 耐圧, 電圧, 定格電圧, 耐压, 电压, "
    "额定电压, 耐壓, 電壓, 額定電壓, 전압, 정격전압, 내압",
    "tolerance": "tolerance, tol, old tolerance, toleranz, tolérance, tolleranza, tolerancia, tolerantie, "
    "tolerancja, tolerance součástky, допуск, допустимое отклонение, 許容差, 誤差, 公差, 容差, 误差, 精度, 허용오차, "
    "오차",
    "technology": "dielectric, technology, construction, old technology, dielektrikum, bauart, technologie, "
    "diélectrique, dielettrico, tecnologia, dieléctrico, tecnología, diëlektricum, dielektryk, technologia, "
    "диэлектрик, 誘電体, 介质, 材质, 種類, 介質, 材質, 유전체, 재질",
    "lead_spacing": "lead spacing, lead pitch, pitch, spacing, ls, rm, raster, rastermaß, rasterabstand, pas, "
    "entraxe, passo, paso, steek, steekmaat, raster wyprowadzeń, rozstaw, rozteč, шаг, шаг выводов, ピッチ, 足間隔, "
    "脚距, 引脚间距, 間距, 腳距, 리드 간격, 피치",
    "polarity": "polarity, polung, polarität, polarité, polarità, polaridad, polariteit, polaryzacja, polarita, "
    "полярность, 極性, 极性, 극성",
    "safety_class": "safety class, x/y class, entstörklasse, classe de sécurité, classe di sicurezza, "
    "clase de seguridad, klasa bezpieczeństwa, класс безопасности, 安全規格, 安规, 안전등급",
    "quantity": "quantity, qty, q ty, qnty, quant, count, pcs, pieces, number of, no of, amount, menge, anzahl, "
    "stück, stückzahl, stk, quantité, qté, nombre, nb, quantità, qta, q tà, numero pezzi, cantidad, cant, aantal, "
    "hoeveelheid, ilość, szt, liczba, sztuk, množství, počet, ks, počet kusů, количество, кол во, кол, шт, 数量, "
    "個数, 員数, 数目, 數量, 用量, 수량, 개수",
    "description": "description, descriptions, desc, descr, details, part description, component description, "
    "comment, comments, remark, remarks, note, notes, name, specification, spec, type, kind, category, part type, "
    "device, beschreibung, bezeichnung, bemerkung, bemerkungen, anmerkung, kommentar, typ, art, hinweis, benennung, "
    "désignation, remarque, remarques, commentaire, descrizione, commento, tipo, descripción, comentario, "
    "comentarios, observaciones, nota, notas, omschrijving, beschrijving, opmerking, opmerkingen, soort, opis, "
    "uwagi, komentarz, rodzaj, nazwa, popis, poznámka, název, druh, описание, наименование, примечание, тип, "
    "комментарий, 名称, 品名, 備考, 説明, 仕様, 型式, 种类, 描述, 说明, 备注, 规格, 型号, 名稱, 說明, 備註, 規格, "
    "型號, 설명, 비고, 품명, 규격, 사양, 종류",
    "package": "package, footprint, case, size, dimensions, body, body size, case size, mounting, gehäuse, bauform, "
    "abmessungen, maße, größe, boîtier, empreinte, dimensioni, contenitore, encapsulado, tamaño, dimensiones, "
    "behuizing, afmetingen, obudowa, wymiary, rozmiar, pouzdro, rozměry, корпус, размер, размеры, 外形, サイズ, "
    "寸法, パッケージ, 封装, 尺寸, 封裝, 패키지, 크기, 치수",
    "fitted": "fitted, populated, mounted, fit, assembled, bestückt, bestückung, monté, montato, montado, geplaatst, "
    "montaż, osazeno, установлен, 実装, 贴装, 실장",
    "not_fitted": "dnp, dnf, dni, do not populate, do not fit, not fitted, nicht bestückt, unbestückt, non monté, "
    "non montato, no montado, niet geplaatst, niemontowane, neosazeno, не устанавливать, 未実装, 不贴, 미실장",
    "card": "card, board, pcb, assembly, platine, leiterplatte, karte, baugruppe, carte, scheda, placa, tarjeta, "
    "printplaat, płytka, deska, плата, 基板, 电路板, 電路板, 기판",
    "unit": "unit, units, einheit, unité, unità, unidad, eenheid, jednostka, jednotka, ед изм, единица, 単位, 单位, "
    "單位, 단위",
    "maker": "part number, part no, mpn, manufacturer part number, manufacturer, mfr, maker, supplier, order code, "
    "order no, stock code, hersteller, herstellernummer, artikelnummer, bestellnummer, fabricant, produttore, "
    "codice, fabricante, código, fabrikant, producent, výrobce, производитель, артикул, メーカー, 型番, 品番, 厂家, "
    "制造商, 廠商, 제조사",
    "unused": "item, item no, item number, no, nr, line, line no, #, id, lfd nr, lfd, ligne, article, riga, "
    "artículo, regel, lp, č, řádek, №, п/п, № п/п, 番号, 序号, 序號, 번호, price, unit price, cost, total, preis, "
    "prix, prezzo, precio, prijs, cena, цена, 単価, 价格, 價格, 단가, 가격, section, role, sheet, x, y, rotation, "
    "side, layer",
}
MEASURED = (  # in a heading beside a known word: what was found at the bench, which is nothing the part states
    "measured, actual, tested, supply, rail, ripple, peak, surge, gemessen, gemessene, gemessener, mesuré, mesurée, "
    "misurato, misurata, medido, medida, gemeten, zmierzona, zmierzone, naměřená, naměřené, измеренное, измеренная, "
    "実測, 测量, 實測, 실측"
)
UNITS: Mapping[str, str] = {"voltage": "V", "tolerance": "%", "lead_spacing": "mm"}
"""The unit that bare numbers of a column are in, where its heading names none."""

NOT_FITTED = (
    "dnp, dnf, dni, dns, n/f, n.f., not fitted, not populated, not mounted, not used, not installed, no fit, "
    "no load, unpopulated, do not populate, do not fit, do not place, do not install, do not mount, nicht bestückt, "
    "unbestückt, nicht bestücken, n.b., entfällt, non monté, ne pas monter, non câblé, non montato, non montare, "
    "no montado, no montar, no poner, niet geplaatst, niet monteren, niet bestukt, nie montować, nie montowany, "
    "niemontowany, neosazeno, neosazovat, не устанавливать, не установлен, не ставить, не монтировать, 未実装, "
    "実装しない, 不実装, 実装なし, 不贴, 不焊, 不装, 空贴, 未贴, 不貼, 不焊接, 空貼, 미실장, 실장 안함"
)
YES = "yes, y, x, 1, true, ja, oui, sì, si, sí, tak, ano, да, ✓, ✔, ○, はい, 是, 예"
NO = "no, n, 0, false, nein, non, nee, nie, ne, нет, ✗, ×, いいえ, 否, 아니오"

OTHER_PREFIXES: Mapping[str, str] = {
    "a resistor": "R, RN, RR, RS, RES",
    "a variable resistor": "RV, VR, P, RP, POT, VRV, RT",
    "an inductor": "L, CH, FB, IND, LP, FL, FR",
    "a transformer or a transistor": "T, TF",
    "a diode": "D, CR, ZD, Z, DZ, VD, DR, BR, SR, TVS, GR, DB",
    "a light": "LED, LD, DS, HL, NE, PL, LA",
    "a transistor": "Q, TR, VT, QN, FET, TS, TRS",
    "an integrated circuit": "U, IC, N, DA, DD, OP, REG, OK, OC",
    "a valve": "V, VL, TB",
    "a connector": "J, CN, CON, X, XS, XP, JP, PJ, SK, SKT, XT, W, WH, TB, CNA, ST, BU, KL",
    "a fuse": "F, FU, FS, SI",
    "a switch": "S, SW, SA, SB, TA",
    "a relay": "K, RL, RY, REL, RLY",
    "a crystal": "Y, XTAL, XL, ZQ, QZ, XO",
    "a battery": "B, BT, BAT, GB",
    "a test point": "TP, MP, E",
    "a motor or a loudspeaker": "M, LS, SP, BA, MK, MIC",
    "a hole or a mechanical part": "H, MH, FID, HS",
    "a variable capacitor": "TC, VC, CV, CTR, CVAR, CTRIM",
    "a circuit breaker": "CB",
}
CAPACITOR_WORDS = (  # a star stands for any ending
    "capacitor*, condenser*, kondensator*, kondensátor*, kondenzator*, elko, elkos, elyt*, condensateur*, "
    "condensatore*, condensador*, condensator*, elektrolytkondensator*, elettrolitic*, électrochimique*, "
    "конденсатор*, コンデンサ, キャパシタ, 电容, 電容, 콘덴서, 커패시터, 캐패시터, ceramic cap, film cap, cap cer, "
    "cap alu"
)
VARIABLE_WORDS = (
    "trimmer*, trimkondensator*, trimmkondensator*, drehko*, varicap*, varactor*, variable*, tuning capacitor*, "
    "ajustable*, variabile, trymer*, dolaďovací, подстроечн*, переменн*, トリマ, バリコン, 可变电容, 可變電容, "
    "트리머, 가변"
)


def words_of(text: str) -> tuple[str, ...]:
    """The words or phrases of one of these lists.

    >>> words_of("qty, no of")
    ('qty', 'no of')
    """
    return tuple(word.strip() for word in text.split(","))


MAINS_WORDS = (
    "mains, across the line, across line, line filter, line to neutral, netz, netzfilter, netzseitig, entstör*, "
    "funkentstör*, interference, emi filter, secteur, antiparasit*, rete, filtro rete, red eléctrica, lichtnet, "
    "sieciow*, síťov*, сетев*, помехоподав*, 電源フィルタ, 安规, 전원필터"
)
