"""The same search with polars: every column held in memory beforehand, one lazy query that it may order as it likes."""

from typing import Any

import duckdb
import polars as pl

from speed.asked import Answered, answered_rows
from speed.by_hand import PART, TAKEN
from speed.masks import LASTING, MOST_BREAKS, OFFERS, WORN
from subsearch.search.requirement import Requirement

BREAKS = range(1, MOST_BREAKS + 1)
WORDS = {"technology", "condition", "supplier"}
C = pl.col


def _held(con: duckdb.DuckDBPyConnection, sql: str) -> pl.DataFrame:
    frame = pl.DataFrame(con.sql(sql))
    return frame.with_columns(pl.col(name).cast(pl.Categorical) for name in frame.columns if name in WORDS)


class Columns:
    """Parts and offers in memory; words as categories, offers in the order in which equal costs are told."""

    def __init__(self, con: duckdb.DuckDBPyConnection) -> None:
        breaks = ", ".join(
            f'prices[{i}]."from"::double as from{i}, prices[{i}].price::double as price{i}' for i in BREAKS
        )
        self.parts = _held(con, f"{PART} order by pk")
        self.offers = _held(con, OFFERS.format(breaks=breaks)).with_row_index("lies")

    def best(self, asked: Requirement, most: int) -> Answered:
        """Give what must be equal to the other ways' answers."""
        fit = self._fit(asked).collect()
        sold = self._sold(fit, asked)
        judged = (
            fit.lazy()
            .join(sold, on="pk")
            .with_columns(answer=C("fits") & C("buys"))
            .filter(C("answer").is_null() | C("answer"))
            .with_columns(total=_total(asked))
            .select("answer", "total", "maker", "part_number", "supplier_number", rounded=C("total").round(9))
            .collect()
        )
        rows: list[tuple[Any, ...]] = []
        for answer, its in ((True, judged.filter("answer")), (None, judged.filter(C("answer").is_null()))):
            top = its.filter(C("rounded") >= C("rounded").top_k(most).min()).sort(
                "rounded", "maker", "part_number", descending=[True, False, False], nulls_last=True
            )[:most]
            told = top.select("total", "part_number", "supplier_number").iter_rows()
            rows += [(answer, place, len(its), *one) for place, one in enumerate(told, 1)]
        return answered_rows(rows)

    def _fit(self, asked: Requirement) -> pl.LazyFrame:
        value, technology = C("capacitance_f"), C("technology")
        low, high, hot = asked.capacitance_low_f or 0, asked.capacitance_high_f, asked.working_c or 0
        in_window = value.is_between(low * (1 - 1e-9), (high or float("inf")) * (1 + 1e-9))
        life = C("life_h") * 2 ** ((C("rated_c") - hot) / 10)
        claimed = (
            in_window
            & (C("rated_v") >= (asked.rated_v or 0) * (1 - 1e-9))
            & technology.is_in(asked.technologies or ())
            & (C("rated_c") >= hot - abs(hot) * 1e-9)
        )
        return (
            _mounted(self.parts.lazy().filter(claimed.is_null() | claimed), asked)
            .with_columns(
                room=pl.when("second").then("room2").otherwise("room1"),
                lasting=technology.is_in(LASTING).fill_null(False),
                years=pl.when(technology.is_in(WORN)).then(life / (365 * asked.hours_a_day)),
            )
            .with_columns(
                fits=claimed
                & (C("way1") | C("way2"))
                & (C("lasting") | (C("years") >= (asked.life_wanted_y or 0) * (1 - 1e-9)))
            )
            .filter(C("fits").is_null() | C("fits"))
        )

    def _sold(self, fit: pl.DataFrame, asked: Requirement) -> pl.LazyFrame:
        """The best offer of each of these parts: those that are answered yes first, then the cheapest."""
        least = pl.max_horizontal(pl.lit(asked.pieces), "minimum")
        costs = [(pl.max_horizontal(least, f"from{i}") / C("pack")).ceil() * C("pack") * C(f"price{i}") for i in BREAKS]
        cost = pl.min_horizontal(costs)
        return (
            self.offers.lazy()
            .filter(C("pk").is_in(fit["pk"].implode()))  # about five times faster than a semi join
            .with_columns(
                buys=C("condition").is_in(TAKEN) & (C("stock") >= asked.pieces),
                cost=pl.when(cost == 0).then(0.0).otherwise(cost * C("worth")),
            )
            .with_columns(rank=pl.when("buys").then(0).when(C("buys").is_null()).then(1).otherwise(2))
            .sort("pk", "rank", "cost", "lies", nulls_last=True)
            .group_by("pk", maintain_order=True)
            .first()
            .select("pk", "buys", "cost", "stock", "supplier_number")
        )


def _mounted(parts: pl.LazyFrame, asked: Requirement) -> pl.LazyFrame:
    """The parts with whether they can be mounted in either way, and the room and the offset of the leads in it."""
    holes, off, axial, bent = asked.hole_spacing_mm or 0, C("off"), C("axial"), C("bent_along")
    reach = pl.when(axial).then(bent + C("straight") + C("turn") + holes).otherwise(off * 2**0.5 + C("straight")) + 3
    long = C("lead_length_mm").is_null() | (C("lead_length_mm") >= 3 - 1e-6)
    plain = pl.when(axial).then(holes - C("span") >= -1e-6).otherwise((0.3 - off >= -1e-6) & long)
    worked = pl.when(axial).then(holes - C("end_span")).otherwise(2.6 - off) >= -1e-6
    worked = (axial | C("wires")) & worked & (C("lead_length_mm").is_null() | (C("lead_length_mm") >= reach - 1e-6))
    lifted, too_tall = C("tallest") + off + C("straight"), C("tallest") > (asked.headroom_mm or 0) + 1e-6
    lifted = pl.when(lifted.is_null() & too_tall).then(C("tallest")).otherwise(lifted)  # whatever its leads add
    taller = pl.when(axial).then(bent + C("thick") / 2).otherwise(lifted)
    return (
        parts.with_columns(off=(C("spacing") - holes).abs() / 2, room1=(asked.headroom_mm or 0) - C("tallest"))
        .with_columns(room2=(asked.headroom_mm or 0) - taller)
        .with_columns(way1=plain & (C("room1") >= -1e-6), way2=worked & (C("room2") >= -1e-6))
        .with_columns(second=~C("way1").fill_null(False) & (C("way2").fill_null(False) | C("way1").is_not_null()))
    )


def _total(asked: Requirement) -> pl.Expr:
    """The score: what each contribution adds, nothing where it can't be told."""
    off, pieces = C("off"), asked.pieces
    doublings = pl.when("lasting").then(3.0).otherwise((C("years") / asked.life_wanted_y).log(2).clip(upper_bound=3))
    stocked = (
        pl.when(C("stock") > 0).then((C("stock") / pieces).log(2).clip(-3, 3) / 3).when(C("stock") == 0).then(-1.0)
    )
    adds = (
        (C("room") / 2).clip(upper_bound=1.0),
        1 - (C("capacitance_f") / asked.capacitance_f).log(2).abs(),
        (C("rated_v") / asked.rated_v - 1).clip(upper_bound=0.5),
        pl.when("axial")
        .then(1.0 - C("second").cast(pl.Float64))
        .otherwise(pl.when(off <= 0.3).then(1 - off / 0.6).otherwise((0.5 - off / 5.2).clip(lower_bound=0))),
        0.5 * doublings,
        1 / (1 + C("cost") / pieces),
        0.25 * stocked,
    )
    return pl.sum_horizontal(one.fill_null(0.0) for one in adds)
