"""Whether what stands in the panel can be told from what it stands on: its contrast."""

from playwright.sync_api import Page

WORDS = 4.5  # contrast of small text
STROKES = 3.0  # of lines that mean something
TOLD = """() => {
    const rgb = (text) => (text.match(/[\\d.]+/g) ?? [0, 0, 0, 0]).map(Number);
    const over = (top, below) => [0, 1, 2].map((i) => top[i] * (top[3] ?? 1) + below[i] * (1 - (top[3] ?? 1)));
    const light = (c) => {
        const linear = (one) => (one < 0.04 ? one / 12.92 : ((one + 0.055) / 1.055) ** 2.4);
        const [r, g, b] = c.map((one) => linear(one / 255));
        return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const contrast = (a, b) => (Math.max(light(a), light(b)) + 0.05) / (Math.min(light(a), light(b)) + 0.05);
    const ground = (one) => {
        const stack = [];
        for (let at = one; at; at = at.parentElement) stack.push(rgb(getComputedStyle(at).backgroundColor));
        return stack.reverse().reduce((below, top) => over(top, below), [255, 255, 255]);
    };
    const seen = (one) => one.checkVisibility() && one.getBoundingClientRect().width > 1;
    const told = { words: [], strokes: [] };
    for (const one of document.querySelectorAll('.subs-panel *')) {
        if (!seen(one)) continue;
        const own = [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim());
        const style = getComputedStyle(one), below = ground(one);
        const what = `${one.tagName} ${one.textContent.trim().slice(0, 40)}`;
        const say = (list, colour) => list.push([what, contrast(over(rgb(colour), below), below)]);
        if (own && !one.closest('[disabled]')) say(told.words, one.closest('svg') ? style.fill : style.color);
        const drawn = one.closest('.subs-drawing svg') && style.stroke !== 'none' && Number(style.strokeOpacity);
        if (drawn) say(told.strokes, style.stroke);
    }
    return told;
}"""


def faint(page: Page) -> list[str]:
    """Words and lines of drawings in the panel that are too faint, each with its contrast."""
    told = page.evaluate(TOLD)
    assert len(told["words"]) > 100 and len(told["strokes"]) > 10, {name: len(its) for name, its in told.items()}
    return [
        f"{what}: {contrast:.1f}"
        for its, least in ((told["words"], WORDS), (told["strokes"], STROKES))
        for what, contrast in its
        if contrast < least
    ]
