"""The same search with pandas: every column held in memory beforehand, masks narrowed step by step."""

from typing import Any

import duckdb
import numpy as np
from numpy.typing import NDArray

from speed.asked import Answered, answered_rows
from speed.by_hand import PART, TAKEN
from subsearch.search.requirement import Requirement

Numbers = NDArray[np.float64]
LASTING = ("film PET", "film PP", "ceramic C0G", "ceramic class 2")
WORN = ("wet aluminium", "hybrid aluminium", "polymer aluminium")
OFFERS = """select pk, supplier, supplier_number, stock::double as stock, condition, coalesce(minimum, 1) as minimum,
    coalesce(pack, 1) as pack, worth::double as worth, {breaks} from offer left join currency_rate using (currency)
    order by pk, supplier, supplier_number"""
MOST_BREAKS = 4
NO, UNKNOWN, YES = 0, 1, 2


def _least(*answers: NDArray[np.int8]) -> NDArray[np.int8]:
    """Answers joined by "and": any no, else any not stated, else yes."""
    joined: NDArray[np.int8] = np.minimum.reduce(answers)
    return joined


def _answers(holds: NDArray[np.bool_], *numbers: Numbers) -> NDArray[np.int8]:
    """What a comparison answers, not stated where one of its numbers is unknown."""
    unknown = np.logical_or.reduce([np.isnan(number) for number in numbers])
    return np.where(unknown, UNKNOWN, np.where(holds, YES, NO)).astype(np.int8)


def _mounted(fit: Any, asked: Requirement) -> tuple[NDArray[np.int8], NDArray[np.bool_], Numbers, Numbers]:
    """Whether a part can be mounted, whether in its second way, and the room and the offset of the leads there."""
    holes, headroom = float(asked.hole_spacing_mm or 0), float(asked.headroom_mm or 0)
    axial, wires = (fit[name].to_numpy() for name in ("axial", "wires"))
    long, tallest, straight, bent, thick, turn, span, end_span = (
        fit[name].to_numpy()
        for name in ("lead_length_mm", "tallest", "straight", "bent_along", "thick", "turn", "span", "end_span")
    )
    off = np.abs(fit["spacing"].to_numpy() - holes) / 2
    lifted = tallest + off + straight
    lifted = np.where(np.isnan(lifted) & (tallest > headroom + 1e-6), tallest, lifted)  # whatever its leads add
    rooms = headroom - tallest, headroom - np.where(axial, bent + thick / 2, lifted)
    reach = np.where(axial, bent + straight + turn + holes + 3, off * 2**0.5 + straight + 3)
    plain, worked = np.where(axial, holes - span, 0.3 - off), np.where(axial, holes - end_span, 2.6 - off)
    stated = ~np.isnan(long)
    first = _least(
        _answers(plain >= -1e-6, plain), _answers(rooms[0] >= -1e-6, rooms[0]),
        np.where(stated & ~axial, _answers(long >= 3 - 1e-6, long), YES),
    )  # fmt: skip
    second = _least(
        _answers(worked >= -1e-6, worked), _answers(rooms[1] >= -1e-6, rooms[1]),
        np.where(stated, _answers(long >= reach - 1e-6, long, reach), YES), np.where(axial | wires, YES, NO),
    )  # fmt: skip
    other = np.where(first == YES, False, np.where(second == YES, True, first == NO))
    return np.maximum(first, second), other, np.where(other, rooms[1], rooms[0]), off


class Frames:
    """Parts and offers in memory; text as categories."""

    def __init__(self, con: duckdb.DuckDBPyConnection) -> None:
        self.parts = con.execute(f"{PART} order by pk").df()
        breaks = ", ".join(
            f'prices[{i}]."from"::double as from{i}, prices[{i}].price::double as price{i}'
            for i in range(1, MOST_BREAKS + 1)
        )
        self.offers = con.execute(OFFERS.format(breaks=breaks)).df()
        for frame, names in ((self.parts, ("technology",)), (self.offers, ("supplier", "condition"))):
            for name in names:
                frame[name] = frame[name].astype("category")

    def best(self, asked: Requirement, most: int) -> Answered:
        """Give what must be equal to the other ways' answers."""
        fit = self._fit(asked)
        offers = self._sold(fit, asked)
        first = offers.drop_duplicates("pk")
        fit = fit.merge(first[["pk", "buys", "cost", "stock", "supplier_number"]], on="pk")
        fit["answer"] = np.minimum(fit["fits"], fit["buys"])
        fit = fit[fit["answer"] > NO]
        fit["total"] = self._total(fit, asked)
        fit["rounded"] = fit["total"].round(9)
        rows: list[tuple[Any, ...]] = []
        for code, answer in ((YES, True), (UNKNOWN, None)):
            its = fit[fit["answer"] == code]
            last = its["rounded"].nlargest(most).min()
            top = its[its["rounded"] >= last].sort_values(
                ["rounded", "maker", "part_number"], ascending=[False, True, True]
            )[:most]
            told = zip(top["total"], top["part_number"], top["supplier_number"], strict=True)
            rows += [(answer, place, len(its), *one) for place, one in enumerate(told, 1)]
        return answered_rows(rows)

    def _fit(self, asked: Requirement) -> Any:
        low, high = asked.capacitance_low_f or 0, asked.capacitance_high_f or np.inf
        value = self.parts["capacitance_f"].to_numpy()
        inside = (value >= low * (1 - 1e-9)) & (value <= high * (1 + 1e-9))
        fit = self._claimed(self.parts[inside | np.isnan(value)], asked)
        mounted, fit["second"], fit["room"], fit["off"] = _mounted(fit, asked)
        life = fit["life_h"].to_numpy() * 2 ** ((fit["rated_c"].to_numpy() - asked.working_c) / 10)
        worn, lasting = (fit["technology"].isin(words).to_numpy() for words in (WORN, LASTING))
        fit["years"] = years = np.where(worn, life / (365 * asked.hours_a_day), np.nan)
        lives = _answers(years >= float(asked.life_wanted_y or 0) * (1 - 1e-9), years)
        fit["lasting"], fit["fits"] = lasting, _least(fit["fits"], mounted, np.where(lasting, YES, lives))
        return fit[fit["fits"] > NO]

    def _claimed(self, fit: Any, asked: Requirement) -> Any:
        """Those of these parts that their claims alone do not refuse."""
        volts, hot = float(asked.rated_v or 0), float(asked.working_c or 0)
        technology, rated, top = fit["technology"], fit["rated_v"].to_numpy(), fit["rated_c"].to_numpy()
        fits = _least(
            _answers(np.full(len(fit), True), fit["capacitance_f"].to_numpy()),
            _answers(rated >= volts * (1 - 1e-9), rated), _answers(top >= hot - abs(hot) * 1e-9, top),
            np.where(technology.isna(), UNKNOWN, np.where(technology.isin(asked.technologies or ()), YES, NO)),
        )  # fmt: skip
        fit = fit[fits > NO].copy()
        fit["fits"] = fits[fits > NO]
        return fit

    def _sold(self, fit: Any, asked: Requirement) -> Any:
        """The offers of these parts that are not answered no, or are all there is; the best of each part first."""
        wanted = np.zeros(len(self.parts) + 1, dtype=bool)
        wanted[fit["pk"].to_numpy()] = True
        offers = self.offers[wanted[self.offers["pk"].to_numpy()]].copy()
        stock, condition = offers["stock"].to_numpy(), offers["condition"]
        taken = np.where(condition.isna(), UNKNOWN, np.where(condition.isin(TAKEN), YES, NO)).astype(np.int8)
        offers["buys"] = _least(taken, _answers(stock >= asked.pieces, stock))
        cost = np.full(len(offers), np.nan)
        pack = offers["pack"].to_numpy()
        least = np.maximum(asked.pieces, offers["minimum"].to_numpy())
        for i in range(1, MOST_BREAKS + 1):
            ordered = np.ceil(np.maximum(least, offers[f"from{i}"].to_numpy()) / pack) * pack
            cost = np.fmin(cost, ordered * offers[f"price{i}"].to_numpy())
        offers["cost"] = np.where(cost == 0, 0.0, cost * offers["worth"].to_numpy())
        return offers.sort_values(
            ["pk", "buys", "cost", "supplier", "supplier_number"], ascending=[True, False, True, True, True]
        )

    def _total(self, fit: Any, asked: Requirement) -> Numbers:
        value, volts, cost, stock, off, axial = (
            fit[name].to_numpy() for name in ("capacitance_f", "rated_v", "cost", "stock", "off", "axial")
        )
        pieces = asked.pieces
        lives = fit["years"].to_numpy() / asked.life_wanted_y
        with np.errstate(divide="ignore", invalid="ignore"):
            doublings = np.where(fit["lasting"], 3.0, np.minimum(np.log2(lives), 3.0))
            stocked = np.where(stock > 0, np.clip(np.log2(stock / pieces), -3, 3) / 3, np.where(stock == 0, -1, np.nan))
        parts = (
            np.minimum(fit["room"].to_numpy() / 2, 1.0),
            1 - np.abs(np.log2(value / asked.capacitance_f)),
            np.minimum(volts / float(asked.rated_v or 0) - 1, 0.5),
            np.where(axial, 1.0 - fit["second"], np.where(off <= 0.3, 1 - off / 0.6, np.maximum(0.5 - off / 5.2, 0))),
            0.5 * doublings, 1 / (1 + cost / pieces), 0.25 * stocked,
        )  # fmt: skip
        total: Numbers = sum((np.nan_to_num(part) for part in parts), np.zeros(len(fit)))
        return total
