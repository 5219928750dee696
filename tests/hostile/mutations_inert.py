"""What in a table or a page could act, or turn its writing round."""

import re
from html.parser import HTMLParser

_ACTS = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")
_TURNS = re.compile("[\u200e\u200f\u061c\u202a-\u202e\u2066-\u2069\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff]")


def acting_cells(row):
    """Give the texts of a row that a spreadsheet would obey, or that would turn the writing round."""
    for cell in row.values():
        if cell.lstrip().startswith(_ACTS) or _TURNS.search(cell):
            yield cell


_EMPTY = {"meta", "br", "wbr", "img", "input", "hr", "col", "link"}
_ALLOWED = {
    "code",
    "html", "head", "meta", "title", "style", "body", "main", "header", "footer", "section", "article",
    "nav", "div", "p", "span", "strong", "em", "h1", "h2", "h3", "h4", "ul", "ol", "li", "table", "thead",
    "tbody", "tr", "th", "td", "caption", "a", "br", "wbr", "figure", "figcaption", "svg", "g", "path",
    "defs", "use", "clippath", "rect", "text", "tspan", "line", "circle", "polygon", "polyline", "desc",
    "metadata", "symbol", "abbr", "small", "dl", "dt", "dd", "details", "summary", "colgroup", "col", "img",
    "rdf:rdf", "cc:work", "dc:type", "dc:date", "dc:format", "dc:creator", "dc:title", "cc:agent",
}  # fmt: skip


class _Page(HTMLParser):
    """Looks for what acts in a page: strange elements, handlers, addresses, and elements left open."""

    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.faults, self.open = [], []

    def handle_starttag(self, tag, attrs):
        """Look at one element."""
        if tag not in _ALLOWED:
            self.faults.append(f"holds an element {tag}")
        for name, value in attrs:
            address = name in ("href", "src", "action", "xlink:href", "srcdoc", "formaction")
            ours = (value or "").startswith("data:image/" if tag == "img" else "#")
            if name.startswith("on") or (address and not ours):
                self.faults.append(f"holds {name}={value!r:.80}")
        if tag not in _EMPTY:
            self.open.append(tag)

    def handle_endtag(self, tag):
        """Look whether it ends what was begun last."""
        if tag not in _EMPTY and (not self.open or self.open.pop() != tag):
            self.faults.append(f"ends {tag} that was not begun last")

    def handle_startendtag(self, tag, attrs):
        """Look at an element without content."""
        self.handle_starttag(tag, attrs)
        if tag not in _EMPTY:
            self.handle_endtag(tag)

    def handle_comment(self, data):
        """Take a comment for a fault: we write none."""
        self.faults.append(f"holds a comment {data[:40]!r}")


def html_faults(text):
    """Return what in a page could act or turn its writing round."""
    page = _Page()
    page.feed(text)
    page.close()
    turned = _TURNS.search(text.replace("\n", " "))
    return (
        page.faults
        + ([f"holds the letter {turned[0]!r}"] if turned else [])
        + (["is not whole"] if page.open else [])
    )
