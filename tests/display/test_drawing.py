"""The drawing of a position: its scale, what its words say, and that nothing comes in from outside."""

from dataclasses import replace
from random import Random
from typing import Any
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

import pytest
from repair.common import candidate

from subsearch.display.drawing import WIDE_PT, drawing, side_by_side
from subsearch.display.drawing_pen import Pen
from subsearch.display.drawing_views import ABOVE, bounds, side_view
from subsearch.display.drawing_words import sentence
from subsearch.display.outlines import Outline, outside
from subsearch.repair.in_place import Placed
from subsearch.repair.placing import PLACING, placed
from subsearch.search.derived_ways import BOARD_MM
from subsearch.search.requirement import Requirement

ROOM: dict[str, Any] = {"left_mm": 8.0, "right_mm": 9.0, "front_mm": 6.0, "back_mm": 7.0, "headroom_mm": 15.0}
NEED = Requirement(reference="C7", hole_spacing_mm=5.0, hole_diameter_mm=1.0, may_lie_flat=True, **ROOM)
BOX: dict[str, Any] = {
    "shape": "box", "along_mm": 7.2, "across_mm": 5.0, "tall_mm": 10.0, "lead_spacing_mm": 5.0, "lead_diameter_mm": 0.5,
}  # fmt: skip
CAN: dict[str, Any] = {"lead_spacing_mm": 2.5, "lead_diameter_mm": 0.5}
AXIAL: dict[str, Any] = {"shape": "axial", "along_mm": 18.0, "across_mm": 6.5, "tall_mm": 6.5, "lead_diameter_mm": 0.6}


def parsed(told: Placed) -> Element:
    return ElementTree.fromstring(drawing(told))


def views(told: Placed) -> list[Element]:
    found = parsed(told).findall(".//svg")
    assert len(found) == 2
    return found


def shapes(view: Element, kind: str, tag: str) -> list[dict[str, float]]:
    return [
        {
            name: float(value)
            for name, value in one.attrib.items()
            if name in ("x", "y", "width", "height", "cx", "cy", "r")
        }
        for one in view.findall(f".//g[@data-kind='{kind}']/{tag}")
    ]


def words(view: Element) -> list[str]:
    return [one.text or "" for one in view.iter("text")]


def label(told: Placed) -> str:
    return next(one.attrib["aria-label"] for one in parsed(told).iter() if one.get("role") == "img")


def test_a_millimetre_is_one_unit_of_both_views() -> None:
    above, side = views(placed(NEED, candidate(**BOX)))
    assert shapes(above, "body", "rect") == [{"x": -3.6, "y": -2.5, "width": 7.2, "height": 5.0}]
    assert shapes(side, "body", "rect") == [{"x": -3.6, "y": -10.0, "width": 7.2, "height": 10.0}]
    assert shapes(above, "most", "rect") == [{"x": -3.85, "y": -2.75, "width": 7.7, "height": 5.5}]
    assert shapes(side, "most", "rect") == [{"x": -3.85, "y": -10.5, "width": 7.7, "height": 10.5}]
    assert shapes(above, "thin", "circle") == [{"cx": at, "cy": 0.0, "r": 0.5} for at in (-2.5, 2.5)]


def test_back_is_up_and_right_is_right() -> None:
    flat = candidate({"way": "laid flat to the back"}, **CAN)
    above, side = views(placed(NEED, flat))
    (body,) = shapes(above, "body", "rect")
    assert body["y"] + body["height"] < 0
    (body,) = shapes(side, "body", "rect")  # seen from the right: the back is at the right
    assert body["x"] > 0
    assert {"front", "back"} <= set(words(side))


@pytest.mark.parametrize("made", [candidate(**BOX), candidate(**CAN), None])
def test_both_views_have_one_scale_and_one_width(made: Any) -> None:
    scales = []
    for view in views(placed(NEED, made)):
        box = [float(one) for one in view.attrib["viewBox"].split()]
        assert float(view.attrib["width"]) == pytest.approx(WIDE_PT, abs=1)
        scales += [float(view.attrib["width"]) / box[2], float(view.attrib["height"]) / box[3]]
    assert max(scales) / min(scales) == pytest.approx(1.0, abs=0.01)


@pytest.mark.parametrize("way", PLACING)
def test_every_way_is_drawn_inside_its_picture(way: str) -> None:
    part = AXIAL if "axial" in way or "lying" in way or "on end" in way else CAN
    wide = replace(NEED, hole_spacing_mm=30.0 if part is AXIAL or "between" in way else 5.0)
    told = placed(wide, candidate({"way": way}, **part), "left")
    assert way in label(told)
    for view in views(told):
        assert shapes(view, "body", "rect") + shapes(view, "body", "circle")
        left, top, across, down = (float(one) for one in view.attrib["viewBox"].split())
        for u, v in _corners(view):
            assert left - 1e-6 <= u <= left + across + 1e-6
            assert top - 1e-6 <= v <= top + down + 1e-6


def _corners(view: Element) -> list[tuple[float, float]]:
    found = []
    for one in view.iter():
        if one.tag == "rect":
            x, y, wide, high = (float(one.attrib[name]) for name in ("x", "y", "width", "height"))
            found += [(x, y), (x + wide, y + high)]
        elif one.tag == "polyline":
            found += [(float(u), float(v)) for u, v in (pair.split(",") for pair in one.attrib["points"].split())]
        elif one.tag == "text":
            found.append((float(one.attrib["x"]), float(one.attrib["y"])))
        elif one.tag == "path" and "A" not in one.attrib["d"]:
            pairs = one.attrib["d"].replace("L", "M").split("M")[1:]
            found += [(float(u), float(v)) for u, v in (pair.split(",") for pair in pairs)]
    return found


def test_the_numbers_a_builder_reads_stand_there() -> None:
    above, side = (words(view) for view in views(placed(NEED, candidate(**BOX))))
    assert {"7.2, at most 7.7", "5, at most 5.5", "holes 5", "left 8", "spare 4.15", "right 9", "spare 5.15"} <= set(
        above
    )
    assert {"front 6, spare 3.25", "back 7, spare 4.25", "from above"} <= set(above)
    assert {"10", "at most 10.5", "headroom 15, spare 4.5", "10 mm", "left", "right"} <= set(side)


def test_the_sentence_says_everything() -> None:
    told = placed(NEED, candidate({"way": "leads formed"}, **CAN, vent="vented", along_mm=8.0, across_mm=8.0), "left")
    said = label(told)
    for one in (
        "C7", "Mill Hollow 1", "leads formed", "8 mm wide, 8 mm deep, 11 mm high", "8.5 mm wide, 8.5 mm deep,",
        "12.5 mm high", "holes 5 mm apart", "headroom 15 mm", "left spare 3.75 mm", "headroom spare 0.45 mm",
        "lifted by 2.05 mm", "2 mm for its vent", "its stripe, minus, right", "plus at the left hole",
    ):  # fmt: skip
        assert one in said, one
    assert said == sentence(told)


def test_an_empty_space_is_drawn() -> None:
    told = placed(NEED, None, "right")
    above, side = views(told)
    assert not shapes(above, "body", "rect")
    assert {"left 8", "right 9", "back 7", "front 6", "+"} <= set(words(above))
    assert "headroom 15" in words(side)
    assert "nothing stands in it" in label(told)
    assert len(views(placed(Requirement(), None))) == 2


def test_what_leaves_the_room_is_hatched_and_said() -> None:
    fits = drawing(placed(NEED, candidate(**BOX)))
    told = placed(replace(NEED, left_mm=3.0, headroom_mm=9.0), candidate(**BOX))
    above, side = views(told)
    assert 'data-kind="over"' not in fits
    assert above.findall(".//g[@data-kind='over']/path")
    assert side.findall(".//g[@data-kind='over']/path")
    assert {"over by 0.85"} <= set(words(above))
    assert "headroom 9, over by 1.5" in words(side)
    assert "Out of the free space: left by 0.85 mm, headroom by 1.5 mm." in drawing(told)
    assert "left over by 0.85 mm" in label(told)


def test_hatching_covers_what_is_outside_and_nothing_else() -> None:
    """Points of the lines lie in the shape and not in the room; their length times their distance is the area."""
    room = Outline((-4.0, 4.0), (-9.0, 9.0), rim_mm=5.0)
    for shape in (Outline((-2.0, 6.0), (-3.0, 3.0)), Outline((-1.0, 7.0), (-4.0, 4.0), True)):
        area = 0.0
        for (a, b), (c, d) in outside(shape, room, 0.01):
            area += ((c - a) ** 2 + (d - b) ** 2) ** 0.5 * 0.01
            u, v = (a + c) / 2, (b + d) / 2
            assert shape.u[0] <= u <= shape.u[1]
            assert u > 4.0 or u**2 + v**2 > 25.0
        assert area == pytest.approx(_area_outside(shape), rel=0.01)


def _area_outside(shape: Outline, step: float = 0.02) -> float:
    u, v = sum(shape.u) / 2, sum(shape.v) / 2
    radius = (shape.u[1] - shape.u[0]) / 2
    inside = 0
    for column in range(int((shape.u[1] - shape.u[0]) / step)):
        for row in range(int((shape.v[1] - shape.v[0]) / step)):
            a, b = shape.u[0] + (column + 0.5) * step, shape.v[0] + (row + 0.5) * step
            in_shape = not shape.is_round or (a - u) ** 2 + (b - v) ** 2 <= radius**2
            inside += in_shape and (a > 4.0 or a**2 + b**2 > 25.0)
    return inside * step**2


def test_hostile_names_are_only_text() -> None:
    nasty = "<script>alert(1)</script>\"'&"
    need = replace(NEED, reference=f"<b>{nasty}")
    told = placed(need, candidate(**CAN, part_number=nasty), f"<i>{nasty}")
    page = parsed(told)  # well-formed
    assert not [one for one in page.iter() if one.tag in ("script", "b", "i")]
    assert nasty in label(told)
    assert any(nasty in (one.text or "") for one in page.iter("p"))


def test_nothing_comes_from_outside_and_no_colour_stands_alone() -> None:
    text = drawing(placed(replace(NEED, left_mm=3.0), candidate(**CAN), "left"))
    assert "http" not in text
    assert "xmlns" not in text
    assert "url(" not in text
    assert "#" not in text.replace("color:#000", "")
    assert len(text.encode()) < 12_000


@pytest.mark.parametrize(("size", "unit"), [(200.0, "10 mm"), (2.0, "5 mm")])
def test_huge_and_tiny_parts_have_letters_of_one_size_on_the_screen(size: float, unit: str) -> None:
    part = BOX | {"along_mm": size, "across_mm": size / 3, "tall_mm": size / 3, "lead_spacing_mm": size * 0.8}
    told = placed(Requirement(hole_spacing_mm=size * 0.8, left_mm=size, right_mm=size), candidate(**part))
    above, side = views(told)
    assert unit in words(side)
    for view in (above, side):
        scale = float(view.attrib["width"]) / float(view.attrib["viewBox"].split()[2])
        letters = {float(one.attrib["font-size"]) * scale for one in view.iter("text")}
        assert min(letters) > 10
        assert max(letters) < 20
        (body,) = shapes(view, "body", "rect")
        assert body["width"] * scale > 55


def test_a_lead_not_stated_is_a_thin_broken_line() -> None:
    stated = views(placed(NEED, candidate(**CAN)))[1]
    unknown = views(placed(NEED, candidate(**(CAN | {"lead_diameter_mm": None}))))[1]
    assert len(stated.findall(".//g[@data-kind='lead']/polyline")) == 2
    assert not unknown.findall(".//g[@data-kind='lead']/polyline")
    assert len(unknown.findall(".//g[@data-kind='hidden']/polyline")) == 2
    assert all(float(one.attrib["stroke-width"]) == 0.5 for one in stated.findall(".//g[@data-kind='lead']/polyline"))


def test_whatever_is_not_stated_or_asked_it_is_drawn_without_a_false_number() -> None:
    dice = Random(1)

    def some(low: float, high: float) -> float | None:
        return None if dice.random() < 0.35 else round(dice.uniform(low, high), 2)

    for _ in range(300):
        sides: dict[str, Any] = {side: some(0.5, 60) for side in (*ROOM, "hole_spacing_mm", "free_diameter_mm")}
        part: dict[str, Any] = {size: some(1, 60) for size in ("along_mm", "across_mm", "tall_mm", "lead_spacing_mm")}
        part |= {"lead_diameter_mm": some(0.2, 2), "vent": dice.choice([None, "vented"]), "polarity": None}
        made = {"way": dice.choice([None, *PLACING])}
        one = candidate(made, shape=dice.choice([None, "can", "box", "axial"]), technology=None, **part)
        text = drawing(placed(Requirement(**sides), one, "left"))
        ElementTree.fromstring(text)
        assert "nan" not in text
        assert "inf" not in text
        assert "None" not in text
        assert len(text.encode()) < 12_000
        assert all("nan" not in small for small in side_by_side([placed(Requirement(**sides), one)]))


def test_small_drawings_have_one_scale() -> None:
    told = [
        placed(NEED, candidate(**CAN)),
        placed(NEED, candidate({"way": "laid flat to the left"}, **CAN)),
        placed(NEED, None),
    ]
    small = side_by_side(told)
    assert len(small) == 3
    assert side_by_side([]) == []
    scales = set()
    for text in small:
        page = ElementTree.fromstring(text)
        assert "10 mm" in [one.text for one in page.iter("text")]
        for view in page.iter("svg"):
            box = [float(one) for one in view.attrib["viewBox"].split()]
            scales.add(round(float(view.attrib["width"]) / box[2], 1))
    assert len(scales) == 1


def test_the_room_for_the_vent_stands_on_the_body_at_its_largest() -> None:
    told = placed(NEED, candidate(**CAN, vent="vented"))
    above, side = views(told)
    assert shapes(side, "vent", "rect") == [{"x": -3.25, "y": -14.5, "width": 6.5, "height": 2.0}]
    assert not shapes(above, "vent", "rect")
    assert "vent 2" in words(side)
    assert not shapes(views(placed(NEED, candidate(**CAN, vent="none")))[1], "vent", "rect")


@pytest.mark.parametrize(("plus", "at"), [("left", -2.5), ("right", 2.5)])
def test_the_plus_stands_at_its_hole_and_the_minus_at_the_stripe(plus: str, at: float) -> None:
    for view in views(placed(NEED, candidate(**CAN), plus)):
        signs = {one.text: float(one.attrib["x"]) for one in view.iter("text") if one.text in ("+", "\N{MINUS SIGN}")}
        assert signs["+"] == at
        assert signs["\N{MINUS SIGN}"] * at < 0
        (stripe,) = view.findall(".//g[@data-kind='mark']/*")
        edge = float(stripe.attrib["x"]) if stripe.tag == "rect" else float(stripe.attrib["d"][1:].split(",")[0])
        assert edge * at < 0
    text = drawing(placed(NEED, candidate(**CAN), "edge connector"))
    assert ">+<" not in text
    assert 'data-kind="mark"' not in text


def test_the_segment_of_a_stripe_bulges_outwards() -> None:
    """Of the two arcs through its ends, each stripe has the one on its own side."""
    pen, circle = Pen(1.0), Outline((-5.0, 5.0), (-5.0, 5.0), True)
    for sideways, high, sweep in ((True, True, 0), (True, False, 1), (False, True, 1), (False, False, 0)):
        pen.segment(circle, sideways, high, 0.1)
        start, arc = pen.drawn.split('d="')[-1].split(" Z")[0].split(" A")
        u, v = (float(one) for one in start[1:].split(","))
        assert (u if sideways else -v) == (4.0 if high else -4.0)
        assert arc.split()[3] == str(sweep)


def test_the_picture_is_made_for_the_leads_too() -> None:
    told = placed(NEED, candidate(**CAN))
    assert bounds(told, side_view(told)).v[0] == -BOARD_MM
    assert bounds(placed(NEED, None), side_view(told)).v[0] > -BOARD_MM


def test_a_far_wall_is_told_and_not_drawn() -> None:
    told = placed(replace(NEED, left_mm=200.0, back_mm=150.0), candidate(**CAN))
    above, _ = views(told)
    assert {"\N{UPWARDS ARROW} left 200", "spare 196.8", "\N{UPWARDS ARROW} back 150, spare 146.8"} <= set(words(above))
    assert "right 9" in words(above)
    assert bounds(told, ABOVE).u[0] > -10


def test_two_together_are_both_drawn() -> None:
    told = placed(NEED, candidate(**CAN))
    (stand,) = told.stands
    moved = replace(stand, largest=stand.largest._replace(x=stand.largest.x), name="Mill Hollow 2")
    above, _ = views(replace(told, stands=(stand, moved)))
    assert len(shapes(above, "body", "circle")) == 2
