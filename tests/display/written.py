"""What a written page says and asks for, and a text that would like to be more than text."""

import re
from html import unescape
from html.parser import HTMLParser

TRAP = '<b onclick="x">&amp;</b><script>\'"]]>'


def text_of(tagged: str) -> str:
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", tagged)).split())


class Tags(HTMLParser):
    """Every tag and every attribute of a page."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.names: set[str] = set()
        self.attributes: list[tuple[str, str | None]] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.names.add(tag)
        self.attributes += attrs


def outside(page: str) -> list[str]:
    """What in a page would run, or would ask for something outside it."""
    tags = Tags(page)
    found = sorted(tags.names & {"script", "link", "iframe", "object", "embed", "img", "image", "use", "base", "a"})
    for name, value in tags.attributes:
        if name.startswith("on") or name in ("src", "href", "xlink:href", "srcset", "action"):
            found.append(name)
        elif re.search(r"//|url\(|javascript:", value or ""):
            found.append(f"{name}={value}")
    return found + re.findall(r"@import|@font-face|url\(|https?://", page)
