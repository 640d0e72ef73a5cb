"""The form's script in the browser, without a kernel: what it sends, and what is set into it meanwhile."""

import json
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from subsearch.display.beside import beside

CONTROLS: list[dict[str, Any]] = [
    {"name": "headroom_mm", "label": "Headroom", "kind": "text", "hint": ""},
    {"name": "temperature_c", "label": "Temperature", "kind": "text", "hint": ""},
    {"name": "mains", "label": "On the mains", "kind": "yes", "hint": ""},
    {"name": "role", "label": "Role", "kind": "choice", "hint": "", "options": [["", "not said"], ["reservoir", "r"]]},
    {"name": "lead_style", "label": "Lead style", "kind": "choice", "hint": "", "options": [["", "any"]]},
]
RECORDED = {"mains": "Yes", "role": "Reservoir", "lead_style": "bent", "headroom_mm": "12", "temperature_c": "40 °C"}
MODEL = """
window.sent = [];
const heard = [];
window.model = {
    get: (name) => state[name],
    set: (name, value) => { state[name] = value; },
    save_changes: () => window.sent.push({ ...state.values }),
    on: (what, act) => { if (what === "change:values") heard.push(act); },
};
window.set = (values) => { state.values = { ...state.values, ...values }; heard.forEach((act) => act()); };
widget.render({ model: window.model, el: document.getElementById("form") });
"""


@pytest.fixture
def page(chromium: Browser) -> Iterator[Page]:
    state = {"groups": [{"title": "g", "open": True, "controls": CONTROLS}], "values": RECORDED, "faults": {}}
    page = chromium.new_page()
    widget = beside("shared.js", "form.js").replace("export default", "const widget =")
    page.set_content(
        f'<div class="jp-OutputArea-output"><div id="form"></div></div><script>{widget}\n'
        f"const state = {json.dumps(state)};{MODEL}</script>"
    )
    yield page
    page.close()


def test_only_what_was_changed_is_sent_and_what_is_recorded_is_seen_however_it_is_spelt(page: Page) -> None:
    assert page.get_by_label("On the mains").is_checked()
    assert page.get_by_label("Role").input_value() == "reservoir"
    assert page.get_by_label("Lead style").input_value() == "bent"
    page.get_by_label("Headroom").fill("11 mm")
    page.wait_for_function("sent.length === 1")
    assert page.evaluate("sent[0]") == RECORDED | {"headroom_mm": "11 mm"}


def test_nothing_is_set_over_what_is_being_typed(page: Page) -> None:
    typed = page.get_by_label("Temperature")
    typed.fill("")
    page.wait_for_function("sent.length === 1")
    page.evaluate("set({ temperature_c: '40 °C', headroom_mm: '9' })")
    assert (typed.input_value(), page.get_by_label("Headroom").input_value()) == ("", "9")
    typed.press_sequentially("55")
    page.wait_for_function("sent.length === 2")
    assert page.evaluate("sent[1].temperature_c") == "55"
    page.evaluate("set({ temperature_c: '41 °C' })")
    page.get_by_label("On the mains").focus()  # what holds is shown once the control is left
    assert typed.input_value() == "41 °C"
