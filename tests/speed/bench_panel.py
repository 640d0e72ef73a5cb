"""S10: python -m speed.bench_panel [OFFERS ...]: from a moved slider to the new table and drawing, in a browser.

Beside it the panel's search alone and the one written by hand, in this process, on the same questions.
"""

import sys
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from statistics import median, quantiles
from tempfile import TemporaryDirectory

import duckdb
from browser.conftest import CHROMIUM, FLAGS, Notebook
from browser.lab_server import LabServer
from playwright.sync_api import Page, sync_playwright

from speed.asked import TYPICAL
from speed.bench_find import ways
from speed.catalogs import catalogs
from speed.rounds import measured, ratio, tell_machine
from subsearch.catalog.store import open_to_read

GOAL_MS = 150
TYPING_MS = 50
HEIGHTS = [20 + 0.5 * step for step in range(40)]  # each has another answer: the room that is left differs
TURN = 10  # moves, then as many searches, and so on
PANEL = "panel"
AT_REST = """() => [...document.querySelectorAll('.subs-sentences')].some((one) =>
    /^Near misses/.test(one.textContent) && /Concede|No single concession/.test(one.textContent))"""
CODE = """from pathlib import Path
from subsearch.display.panel import Panel
Panel(Path({catalog!r}), {folder!r}, reference="C1", role="rail decoupling", capacitance="47 µF", rated_voltage="25 V",
    pieces="10", hole_spacing_mm="5 mm", headroom_mm="30 mm", temperature_c="55 °C", hours_a_day="24",
    years_wanted="10")"""
# From the event of the slider to the frame after the one in which table, drawing and counts are all there.
MOVED = """async (height) => {
    const panel = document.querySelector('.subs-panel'), status = panel.querySelector('.subs-status');
    const slider = panel.querySelector('input[aria-label="Headroom, slider"]');
    const told = () => panel.querySelector('.subs-drawing').textContent;
    const room = () => panel.querySelector('.subs-answer tbody').textContent;
    const before = room(), frame = () => new Promise(requestAnimationFrame);
    const start = performance.now();
    slider.value = height;
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    while (!(told().includes(`headroom ${height},`) && room() !== before && / fit,/.test(status.textContent))) {
        await frame();
        if (performance.now() - start > 60000) throw new Error(`no answer for ${height}`);
    }
    await frame();
    return performance.now() - start;
}"""
# From the key to the next frame, letter by letter into a text, while the searches that it causes go on.
TYPED = """async (letters) => {
    const text = document.querySelector('.subs-panel input[type=text]'), taken = [];
    for (const letter of letters) {
        const start = performance.now();
        text.value += letter;
        text.dispatchEvent(new Event('input', { bubbles: true }));
        await new Promise(requestAnimationFrame);
        taken.push(performance.now() - start);
        await new Promise((done) => setTimeout(done, 60));
    }
    return taken;
}"""


def opened(page: Page, server: LabServer, catalog: Path) -> None:
    """Open a notebook with the panel over a catalog, and wait until it has answered."""
    folder = server.root / catalog.stem
    folder.mkdir()
    Notebook(page, server, folder).run_written(CODE.format(catalog=str(catalog.resolve()), folder="."))
    page.wait_for_function("() => / fit,/.test(document.querySelector('.subs-status').textContent)")
    page.evaluate(MOVED, 19)


def times_of(page: Page, con: duckdb.DuckDBPyConnection) -> dict[str, list[float]]:
    """Give the milliseconds of each move in the browser, of the search alone and of the one by hand, turn by turn."""
    times: dict[str, list[float]] = {PANEL: []}
    for start in range(0, len(HEIGHTS), TURN):
        heights = HEIGHTS[start : start + TURN]
        times[PANEL] += [float(page.evaluate(MOVED, height)) for height in heights]
        page.wait_for_function(AT_REST)  # what the panel does afterwards must not slow the others
        for height in heights:
            for name, (seconds,) in measured(ways(con, {}, replace(TYPICAL, headroom_mm=height)), rounds=1).items():
                times.setdefault(name, []).append(seconds * 1000)
    return times


def in_the_browser(catalog: Path) -> tuple[dict[str, list[float]], list[float]]:
    """Give the milliseconds of moves and their rivals, and those of each key while searches go on."""
    with TemporaryDirectory() as made, sync_playwright() as playwright, open_to_read(catalog) as con:
        server = LabServer(Path(made) / "notebooks", Path(made) / "state")
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        try:
            page = browser.new_context(viewport={"width": 1280, "height": 900}).new_page()
            page.set_default_timeout(60_000)
            opened(page, server, catalog)
            times = times_of(page, con)
            return times, [float(one) for one in page.evaluate(TYPED, "a name typed while it searches")]
        finally:
            browser.close()
            server.stop()


def say(what: str, times: Sequence[float], more: str = "") -> None:
    """Print the median, the 90th percentile and the longest of these times."""
    ninth = quantiles(times, n=10)[-1]
    print(f"{what:<44} median {median(times):>7.1f} ms, 90 % {ninth:>7.1f}, longest {max(times):>7.1f}   {more}")


def main(sizes: Sequence[int]) -> None:
    """Measure each size and print the table."""
    tell_machine(len(HEIGHTS))
    for offers, path in catalogs(sizes or (100_000,)):
        times, keys = in_the_browser(path)
        moves = times.pop(PANEL)
        met = "met" if median(moves) <= GOAL_MS else "NOT met"
        say(f"S10 slider to table and drawing, {offers:,}", moves, f"goal ≤ {GOAL_MS} ms at 100 k: {met}")
        for name, its in times.items():
            say(f"    {name} alone", its, f"the panel is {ratio(moves, its):.2f} ×")
        free = "met" if max(keys) < TYPING_MS else "NOT met"
        say("    a key to the next frame, searching", keys, f"goal < {TYPING_MS} ms, the longest: {free}")


if __name__ == "__main__":
    main([int(size) for size in sys.argv[1:]])
