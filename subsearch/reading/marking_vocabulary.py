"""The words that stand beside a capacitance in lists and on parts, in a dozen languages, and what each one states.

Common practice. A star stands for any ending. Words in signs that are written without spaces stand apart.
"""

from collections.abc import Mapping

from subsearch.terms import C0G, CLASS_2, FILM_PET, FILM_PP, HYBRID, PAPER, POLYMER, TANTALUM, WET

Meaning = tuple[str, str]

FAMILY: Mapping[str, str] = {
    WET: "electrolytic", POLYMER: "electrolytic", HYBRID: "electrolytic", TANTALUM: "tantalum", FILM_PET: "film",
    FILM_PP: "film", C0G: "ceramic", CLASS_2: "ceramic", PAPER: "paper",
}  # fmt: skip
DOUBLE: Meaning = ("double", "yes")
CAPACITOR: Meaning = ("capacitor", "yes")
PLAIN: Meaning = ("plain", "")

WORDS: Mapping[Meaning, str] = {
    ("technology", WET): "electrolytic* electrolyt* elektrolyt* elektrolit* elettrolit* electrolít* électrolyt* elko "
    "elkos elco elcos elyt* elektrolyc* alu aluminium aluminum alum alluminio aluminio chimique* lytic elettr "
    "elec elect elctlt chem electro électrochim* электролит* оксидн* алюмин*",
    ("technology", POLYMER): "polymer* polymère polimer* polímer* polymeer polymerov* полимерн*",
    ("technology", HYBRID): "hybrid* hyb ibrid* híbrid* hybride гибридн*",
    ("technology", TANTALUM): "tantal* tántal* tant ta танталов* тантал* tantaal* tantaaltje",
    ("technology", FILM_PET): "polyester* poliester* poliestr* poliéster* polyestr* pet mkt kt полиэстер* "
    "polyethylenterephthalat* полиэфирн* полиэтилентерефталат*",
    ("technology", FILM_PP): "polyprop* polipropil* polipropyl* pp mkp kp полипропилен* polypropylén* polypropyleen*",
    ("technology", C0G): "c0g cog np0 npo",
    ("technology", PAPER): "paper* pio papier* papír* papel carta papierow* papírov* бумажн* металлобумажн* mp",
    ("family", "film"): "film films folie* foil foils pellicule plastique* plastico* plástico* pellicola película "
    "foliow* foliov* пленочн* плёночн*",
    ("family", "ceramic"): "ceramic* keramik* keramisch* keramick* céramique* ceramico* ceramica* cerámic* ceramiczn* "
    "керамич* cer ker mlcc kerko kerkos multilayer vielschicht* disc scheiben*",
    ("family", "mica"): "mica glimmer silver-mica slída slídov* слюдян* mika mikow*",
    ("family", "polystyrene"): "polystyrol* polystyrene polystyrène polistir* полистирол*",
    (
        "polarity",
        "bipolar",
    ): "bipolar* bi-polar* bipolair* bipolaire* bip bipol nonpol non-pol nonpolar* non-polar* unpolar* "
    "unpol un-polar* ungepolt nicht-polar* nicht-gepolt* nepolar* niepolar* niespolaryz* ongepolaris* niet-gepol* "
    "apolar* bezbiegunow* dwubiegunow* bipolární биполярн* неполярн* bipolarizado",
    (
        "polarity",
        "polar",
    ): "polar pol polarised polarized polarisé* polarizzat* polarizad* gepolt* gepolaris* spolaryz* "
    "polarizovan* polaris polarity-marked polarisiert* biegunow* полярн*",
    (
        "lead_style",
        "radial",
    ): "radial* radiaal* rad rdl stehend* staand* upright vertical* verticaal* senkrecht* радиальн*",
    ("lead_style", "axial"): "axial* ax axl assial* axiaal* liegend* liggend* orizzont* horizontal* osiow* аксиальн*",
    ("lead_style", "snap-in"): "snap-in snap-ins snapin snap einrast*",
    CAPACITOR: "capacitor* kondenzator* cap caps condenser* kondensator* kondensátor* condensateur* condensator* "
    "condensatore* condensador* capacitance* capacité capacità capacidad capaciteit pojemność kapazität kapacita "
    "конденсатор* ёмкость емкость bypass decoupling coupling reservoir smoothing filter* c_pol cp",
    DOUBLE: "double dual twin doppel* dubbel* doppio doble dwojo* podwojn* dvoj*",
    PLAIN: "metallis* metalliz* métallis* metalizow* tol toleran* tolérance tolleranza допуск* smd tht pth "
    "or oder ou low esr high temp temperature max min and with mit avec con met und et type typ case body leads "
    "lead life hours new neu nos wire wires metal metallic pour für for per of the de da di à x rm ls mm rated "
    "rating "
    "voltage volt volts working wkg dc ac wv vdc long audio grade bead beads drop drops disk low-esr low-leakage "
    "pin pins can box",
}
JOINED: Mapping[str, Meaning] = {  # two words that mean one thing
    "el cap": ("technology", WET), "silver mica": ("family", "mica"), "snap in": ("lead_style", "snap-in"),
    "wax paper": ("technology", PAPER),
    "metal film": PLAIN, "carbon film": PLAIN, "metal oxide": PLAIN,  # of resistors
    "polyethylene terephthalate": ("technology", FILM_PET),
    "alum poly": ("technology", POLYMER), "al poly": ("technology", POLYMER), "aluminum poly": ("technology", POLYMER),
}  # fmt: skip
# What stands behind these is a neighbour of the part, not the part itself.
BEFORE_A_NEIGHBOUR = (
    "across parallel near beside behind between next for from to at on over über zwischen neben bei am an "
    "beim für zu zum "
    "zur pour entre sur près tra per su vicino entre para cerca voor naast bij dla przy obok pro u для у около между"
)
NOT = (
    "non",
    "no",
    "not",
    "nicht",
    "kein",
    "keine",
    "niet",
    "un",
    "bi",
    "ohne",
    "nie",
    "ne",
    "sin",
    "sans",
    "senza",
    "bez",
    "не",
    "без",
)
SIGNS: Mapping[str, Meaning] = {  # Japanese, Chinese, Korean: no spaces between words; longer ones first
    "両極性": ("polarity", "bipolar"), "無極性": ("polarity", "bipolar"), "双极性": ("polarity", "bipolar"),
    "无极性": ("polarity", "bipolar"), "双极": ("polarity", "bipolar"), "両極": ("polarity", "bipolar"),
    "無極": ("polarity", "bipolar"), "无极": ("polarity", "bipolar"), "무극성": ("polarity", "bipolar"),
    "양극성": ("polarity", "bipolar"), "有極性": ("polarity", "polar"), "有极性": ("polarity", "polar"),
    "유극성": ("polarity", "polar"), "タンタル": ("technology", TANTALUM), "钽": ("technology", TANTALUM),
    "탄탈": ("technology", TANTALUM), "ポリプロピレン": ("technology", FILM_PP), "聚丙烯": ("technology", FILM_PP),
    "폴리프로필렌": ("technology", FILM_PP), "ポリエステル": ("technology", FILM_PET), "聚酯": ("technology", FILM_PET),
    "涤纶": ("technology", FILM_PET), "폴리에스터": ("technology", FILM_PET), "폴리에스테르": ("technology", FILM_PET),
    "導電性高分子": ("technology", POLYMER), "高分子": ("technology", POLYMER), "固态": ("technology", POLYMER),
    "고분자": ("technology", POLYMER), "アルミ電解": ("technology", WET), "電解": ("technology", WET),
    "铝电解": ("technology", WET), "电解": ("technology", WET), "알루미늄": ("technology", WET),
    "전해": ("technology", WET), "フィルム": ("family", "film"), "薄膜": ("family", "film"), "필름": ("family", "film"),
    "セラミック": ("family", "ceramic"), "陶瓷": ("family", "ceramic"), "瓷片": ("family", "ceramic"),
    "세라믹": ("family", "ceramic"), "コンデンサ": CAPACITOR, "电容": CAPACITOR,
    "電容": CAPACITOR, "콘덴서": CAPACITOR, "커패시터": CAPACITOR,
    "許容差": PLAIN, "公差": PLAIN, "误差": PLAIN, "허용오차": PLAIN,
    "ラジアル": ("lead_style", "radial"), "アキシャル": ("lead_style", "axial"), "径向": ("lead_style", "radial"),
    "立式": ("lead_style", "radial"), "卧式": ("lead_style", "axial"), "牛角": ("lead_style", "snap-in"),
    "轴向": ("lead_style", "axial"), "耐圧": PLAIN, "耐压": PLAIN, "내압": PLAIN,
    "器": PLAIN, "ー": PLAIN, "品": PLAIN,
    "半固定": ("other", "a trimmer"), "可调": ("other", "a trimmer"),
    "抵抗": ("other", "a resistor"), "电阻": ("other", "a resistor"), "저항": ("other", "a resistor"),
    "コイル": ("other", "an inductor"), "电感": ("other", "an inductor"), "인덕터": ("other", "an inductor"),
    "ダイオード": ("other", "a diode"), "二极管": ("other", "a diode"), "다이오드": ("other", "a diode"),
    "トランジスタ": ("other", "a transistor"), "三极管": ("other", "a transistor"),
    "트랜지스터": ("other", "a transistor"), "コネクタ": ("other", "a connector"), "连接器": ("other", "a connector"),
}  # fmt: skip
OTHERS: Mapping[str, str] = {  # what else stands in parts lists
    "a resistor": "resistor* resist widerstand* widerstände résistance* resistance* resistenza resistenze resistencia* "
    "weerstand* rezystor* opornik* odpor rezistor* резистор*",
    "a potentiometer": "potentiometer* poti pot potenziometro potenciómetro potmeter potencjometr* "
    "potenciometr* потенциометр* preset",
    "a trimmer": "trimmer* gang ganged gimmick trimkondensator* varicap* variable drehko* drehkondensator* "
    "trymer* ajustable trim padder* "
    "подстроечн*",
    "an inductor": "inductor* inductance* choke* drossel* spule* self bobine* induttore* induttanza* bobina* spoel* "
    "dławik* cewka* tlumivka cívka индуктивн* дроссель* катушк* coil* ferrite*",
    "a varistor": "varistor* mov vdr варистор* warystor*",
    "a diode": "diode* diodo* dioda* диод* zener* rectifier* gleichrichter* bridge schottky tvs стабилитрон* led leds",
    "a transistor": "transistor* tranzystor* tranzistor* транзистор* mosfet* jfet* fet bjt npn pnp triac* "
    "thyristor* scr",
    "an integrated circuit": "opamp* op-amp regulator* spannungsregler* mikrocontroller microcontroller eeprom timer "
    "микросхем* optocoupler* optokoppler* comparator*",
    "a crystal": "crystal* quartz quarz* xtal resonator* oscillator* кварц*",
    "a connector": "connector* conn stecker* buchse* header* stiftleiste* klemme* connecteur* connettore* "
    "conector* złącze* "
    "konektor* разъем* разъём* jack socket* plug* terminal* sockel*",
    "a fuse": "fuse* sicherung* fusible* fusibile* zekering* bezpiecznik* pojistka предохранител*",
    "a switch or relay": "switch* schalter* taster* relais relay* relè relé* przekaźnik* реле button* pushbutton",
    "a transformer": "transformer* trafo* transformator* transformateur* trasformatore* transformador* трансформатор*",
    "a thermistor": "thermistor* ntc ptc термистор*",
    "a lamp or valve": "lamp* lampe* bulb* glühlampe* valve tube röhre* buzzer* speaker* lautsprecher* "
    "battery batterie*",
    "a line of the list's own": "rev revision version page seite sheet blatt drawing zeichnung total summe",
    "a cable": "coax* koax*",
    "hardware": "screw* schraube* heatsink* kühlkörper* washer* standoff* rack* panel* cable* kabel* pcb platine* "
    "knob* enclosure*",
}
CERTAIN = (
    "a cable",
    "a trimmer",
    "a varistor",
    "a crystal",
    "a thermistor",
    "a potentiometer",
)  # these state farads, and are none
