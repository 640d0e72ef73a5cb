-- The catalog: what makers and suppliers print, where and when it was printed, and what could not be read.
-- Claims only: nothing here is computed, judged or guessed. Null always has one meaning, said beside the column;
-- "none" is a word. The names of terms, their units and sane ranges stand in subsearch/terms.py.

-- One row: says that the file is ours, and which edition of this schema it follows.
CREATE TABLE catalog_edition (
    edition INTEGER NOT NULL -- raised when a table below changes its meaning
);

-- One list that was loaded. A later intake has a higher number.
CREATE TABLE intake (
    intake INTEGER NOT NULL, -- number of the intake, from 1
    supplier VARCHAR NOT NULL, -- whose list it is
    file VARCHAR NOT NULL, -- name of the file, without its folder
    sha256 VARCHAR NOT NULL, -- fingerprint of the file's bytes
    loaded TIMESTAMP NOT NULL, -- when it was loaded, in universal time
    seen DATE, -- the day the list was seen at the supplier; null: not stated
    headings VARCHAR[] NOT NULL, -- the heading line as printed
    skipped_headings VARCHAR[] NOT NULL, -- headings that name no term; their cells are kept in listing.printed
    lines_read INTEGER NOT NULL, -- data lines: kept and refused together
    lines_kept INTEGER NOT NULL, -- lines with a row in listing
    lines_refused INTEGER NOT NULL -- lines with at least one row in refusal
);

-- One fault of one refused line. A line with two faults has two rows.
CREATE TABLE refusal (
    intake INTEGER NOT NULL, -- which list
    line INTEGER NOT NULL, -- line of the file or row of the sheet, from 1; of a cell of a size table that times 1000, and its column
    heading VARCHAR NOT NULL, -- heading of the cell as printed; '' when the whole line is meant
    term VARCHAR NOT NULL, -- the term the cell should have stated; '' when the whole line is meant
    found VARCHAR NOT NULL, -- the text that was found
    fault VARCHAR NOT NULL, -- missing, unreadable, wrong_unit, out_of_range, unknown_word, cells, breaks, repeated or contradiction
    reason VARCHAR NOT NULL -- the fault in a sentence
);

-- What one unit of a currency is worth in the builder's own currency, whose own worth is 1.
CREATE TABLE currency_rate (
    currency VARCHAR NOT NULL, -- three letters
    worth DECIMAL(18, 9) NOT NULL, -- in the builder's own currency
    dated DATE -- the day of the rate; null: not stated
);

-- One kept line of one list: its cells as printed, and what they state. History: nothing is ever taken out.
CREATE TABLE listing (
    intake INTEGER NOT NULL, -- which list
    line INTEGER NOT NULL, -- line of the file or row of the sheet, from 1; of a cell of a size table that times 1000, and its column
    printed VARCHAR[] NOT NULL, -- the cells as printed, the skipped ones too
    maker VARCHAR, -- who makes the part; null: not stated in this line
    part_number VARCHAR NOT NULL, -- the maker's part number
    series VARCHAR, -- the maker's name for the family; null: not stated in this line
    technology VARCHAR, -- how the capacitor is built: wet aluminium, polymer aluminium, hybrid aluminium, tantalum, film PET, film PP, ceramic C0G, ceramic class 2 or paper; null: not stated in this line
    polarity VARCHAR, -- whether it stands voltage of one sign only: polar or bipolar; null: not stated in this line
    capacitance_f DOUBLE NOT NULL, -- nominal capacitance [F]
    tolerance_low_pct DOUBLE, -- tolerance below nominal, a negative number [%]; null: not stated in this line
    tolerance_high_pct DOUBLE, -- tolerance above nominal [%]; null: not stated in this line
    rated_v DOUBLE, -- rated d.c. voltage [V]; null: not stated in this line, which then states rated_ac_v
    rated_ac_v DOUBLE, -- rated a.c. voltage, rms at mains frequency [V]; null: not stated in this line
    lowest_c DOUBLE, -- lower category temperature [°C]; null: not stated in this line
    rated_c DOUBLE, -- upper category temperature, at which the life is stated [°C]; null: not stated in this line
    life_h DOUBLE, -- life at the upper category temperature [h]; null: not stated in this line
    life_basis VARCHAR, -- what that life means: endurance, load life or useful life; null: not stated in this line
    life_reference VARCHAR, -- where the temperature of that life is taken: ambient or case; null: not stated in this line
    tan_delta DOUBLE, -- loss factor, upper limit; null: not stated in this line
    tan_delta_hz DOUBLE, -- frequency at which the loss factor is stated [Hz]; null: not stated in this line
    esr_ohm DOUBLE, -- equivalent series resistance, upper limit [Ω]; null: not stated in this line
    esr_hz DOUBLE, -- frequency at which the series resistance is stated [Hz]; null: not stated in this line
    ripple_a DOUBLE, -- rated ripple current, rms, at the upper category temperature [A]; null: not stated in this line
    ripple_hz DOUBLE, -- frequency at which the ripple current is stated [Hz]; null: not stated in this line
    leakage_rule VARCHAR, -- the maker's leakage limit, as written; null: not stated in this line
    leakage_factor DOUBLE, -- what that limit lets leak for each µF·V, in µA, at rated voltage and 20 °C; null: not stated in this line, or in words that give no number
    leakage_plus_a DOUBLE, -- what that limit adds to it [A]; null: not stated in this line, or in words that give no number
    leakage_floor_a DOUBLE, -- what that limit lets leak however small the part [A]; null: not stated in this line, or in words that give no number
    shape VARCHAR, -- the outline of the body: can, box or axial; null: not stated in this line
    along_mm DOUBLE, -- nominal body size in the line of the leads [mm]; null: not stated in this line
    across_mm DOUBLE, -- nominal body size across the line of the leads [mm]; null: not stated in this line
    tall_mm DOUBLE, -- nominal body height with the leads down [mm]; null: not stated in this line
    along_plus_mm DOUBLE, -- the maker's plus tolerance on the size along [mm]; null: not stated in this line
    across_plus_mm DOUBLE, -- the maker's plus tolerance on the size across [mm]; null: not stated in this line
    tall_plus_mm DOUBLE, -- the maker's plus tolerance on the height [mm]; null: not stated in this line
    lead_spacing_mm DOUBLE, -- lead spacing where the leads leave the body [mm]; null: not stated in this line
    delivered_spacing_mm DOUBLE, -- lead spacing as delivered, where taping or forming has changed it [mm]; null: not stated in this line
    lead_diameter_mm DOUBLE, -- diameter of a lead [mm]; null: not stated in this line
    lead_form VARCHAR, -- how the leads are delivered: straight, formed, cut or snap-in; null: not stated in this line
    lead_length_mm DOUBLE, -- length of the shorter lead [mm]; null: not stated in this line
    vent VARCHAR, -- whether the case has a pressure relief: vented or none; null: not stated in this line
    safety_class VARCHAR, -- class of interference suppression capacitor: X1, X2, Y1, Y2 or none; null: not stated in this line
    life_cycle VARCHAR, -- what the maker says of its future: active, not for new designs or discontinued; null: not stated in this line
    supplier VARCHAR NOT NULL, -- who sells it: the builder's own drawer is a supplier whose price is 0
    supplier_number VARCHAR, -- the supplier's own number for the offer; null: not stated in this line
    currency VARCHAR, -- three-letter currency of the prices; null: not stated in this line
    stock INTEGER, -- pieces in stock, 0 when on order; null: not stated in this line
    minimum INTEGER, -- fewest pieces one can buy; null: not stated in this line
    pack INTEGER, -- pieces are sold in multiples of this; null: not stated in this line
    lead_time_days INTEGER, -- days until delivery when not in stock; null: not stated in this line
    date_seen DATE, -- the day the offer was seen; null: not stated in this line
    date_bought DATE, -- the day it was bought, for parts in the builder's own drawer; null: not stated in this line
    condition VARCHAR, -- what state the parts are in: new, old stock or pulled; null: not stated in this line
    date_code VARCHAR, -- date code printed on the parts, as written; null: not stated in this line
    traceable BOOLEAN, -- whether the supplier shows where the parts came from; null: not stated in this line
    prices STRUCT("from" INTEGER, price DECIMAL(14, 6))[] NOT NULL -- from that many pieces, price of one; ascending
);

-- One part as all living lines together claim it; rebuilt at each load. Where they contradict each other the more
-- cautious claim stands here, or none. Rows stand in the order of pk: by capacitance, rated voltage, maker, number.
CREATE TABLE part (
    pk INTEGER NOT NULL, -- row number from 1; never leaves the file, since each load numbers anew
    maker VARCHAR, -- who makes the part; null: not stated
    part_number VARCHAR NOT NULL, -- the maker's part number
    series VARCHAR, -- the maker's name for the family; null: not stated
    technology VARCHAR, -- how the capacitor is built: wet aluminium, polymer aluminium, hybrid aluminium, tantalum, film PET, film PP, ceramic C0G, ceramic class 2 or paper; null: not stated, or stated differently by different lists
    polarity VARCHAR, -- whether it stands voltage of one sign only: polar or bipolar; null: not stated
    capacitance_f DOUBLE, -- nominal capacitance [F]; null: not stated, or stated differently by different lists
    tolerance_low_pct DOUBLE, -- tolerance below nominal, a negative number [%]; null: not stated
    tolerance_high_pct DOUBLE, -- tolerance above nominal [%]; null: not stated
    rated_v DOUBLE, -- rated d.c. voltage [V]; null: not stated
    rated_ac_v DOUBLE, -- rated a.c. voltage, rms at mains frequency [V]; null: not stated
    lowest_c DOUBLE, -- lower category temperature [°C]; null: not stated
    rated_c DOUBLE, -- upper category temperature, at which the life is stated [°C]; null: not stated
    life_h DOUBLE, -- life at the upper category temperature [h]; null: not stated
    life_basis VARCHAR, -- what that life means: endurance, load life or useful life; null: not stated
    life_reference VARCHAR, -- where the temperature of that life is taken: ambient or case; null: not stated
    tan_delta DOUBLE, -- loss factor, upper limit; null: not stated
    tan_delta_hz DOUBLE, -- frequency at which the loss factor is stated [Hz]; null: not stated
    esr_ohm DOUBLE, -- equivalent series resistance, upper limit [Ω]; null: not stated
    esr_hz DOUBLE, -- frequency at which the series resistance is stated [Hz]; null: not stated
    ripple_a DOUBLE, -- rated ripple current, rms, at the upper category temperature [A]; null: not stated
    ripple_hz DOUBLE, -- frequency at which the ripple current is stated [Hz]; null: not stated
    leakage_rule VARCHAR, -- the maker's leakage limit, as written; null: not stated
    leakage_factor DOUBLE, -- what that limit lets leak for each µF·V, in µA, at rated voltage and 20 °C; null: not stated, or in words that give no number
    leakage_plus_a DOUBLE, -- what that limit adds to it [A]; null: not stated, or in words that give no number
    leakage_floor_a DOUBLE, -- what that limit lets leak however small the part [A]; null: not stated, or in words that give no number
    shape VARCHAR, -- the outline of the body: can, box or axial; null: not stated, or stated differently by different lists
    along_mm DOUBLE, -- nominal body size in the line of the leads [mm]; null: not stated
    across_mm DOUBLE, -- nominal body size across the line of the leads [mm]; null: not stated
    tall_mm DOUBLE, -- nominal body height with the leads down [mm]; null: not stated
    along_plus_mm DOUBLE, -- the maker's plus tolerance on the size along [mm]; null: not stated
    across_plus_mm DOUBLE, -- the maker's plus tolerance on the size across [mm]; null: not stated
    tall_plus_mm DOUBLE, -- the maker's plus tolerance on the height [mm]; null: not stated
    lead_spacing_mm DOUBLE, -- lead spacing where the leads leave the body [mm]; null: not stated, or stated differently by different lists
    delivered_spacing_mm DOUBLE, -- lead spacing as delivered, where taping or forming has changed it [mm]; null: not stated, or stated differently by different lists
    lead_diameter_mm DOUBLE, -- diameter of a lead [mm]; null: not stated
    lead_form VARCHAR, -- how the leads are delivered: straight, formed, cut or snap-in; null: not stated, or stated differently by different lists
    lead_length_mm DOUBLE, -- length of the shorter lead [mm]; null: not stated
    vent VARCHAR, -- whether the case has a pressure relief: vented or none; null: not stated
    safety_class VARCHAR, -- class of interference suppression capacitor: X1, X2, Y1, Y2 or none; null: not stated
    life_cycle VARCHAR, -- what the maker says of its future: active, not for new designs or discontinued; null: not stated
    contradictions INTEGER NOT NULL -- how many terms are stated differently by different lines
);

-- One offer of one supplier for one part; rebuilt at each load. Rows stand in the order of pk.
CREATE TABLE offer (
    pk INTEGER NOT NULL, -- the part
    supplier VARCHAR NOT NULL, -- who sells it: the builder's own drawer is a supplier whose price is 0
    supplier_number VARCHAR, -- the supplier's own number for the offer; null: not stated
    currency VARCHAR, -- three-letter currency of the prices; null: not stated
    stock INTEGER, -- pieces in stock, 0 when on order; null: not stated
    minimum INTEGER, -- fewest pieces one can buy; null: not stated
    pack INTEGER, -- pieces are sold in multiples of this; null: not stated
    lead_time_days INTEGER, -- days until delivery when not in stock; null: not stated
    date_seen DATE, -- the day the offer was seen; null: neither the line nor the load said it
    date_bought DATE, -- the day it was bought, for parts in the builder's own drawer; null: not stated, or not from the builder's own drawer
    condition VARCHAR, -- what state the parts are in: new, old stock or pulled; null: not stated
    date_code VARCHAR, -- date code printed on the parts, as written; null: not stated
    traceable BOOLEAN, -- whether the supplier shows where the parts came from; null: not stated
    prices STRUCT("from" INTEGER, price DECIMAL(14, 6))[] NOT NULL -- from that many pieces, price of one; ascending
);
