"""A plan as SVG, with the symbols that electrical plans use.

Source: ANSI Y32.9 (graphic symbols for electrical wiring and layout diagrams used in architecture
and building construction), from memory: a circle with two lines is a duplex receptacle, S a switch,
S with 3 a three-way switch, a circle with rays a luminaire, J a junction box, a filled bar a panel,
an arrow a home run.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.reports.page.elements import Element, Node, el

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from linter.reports.drawing.plan_places import Drawn, Run, Symbol

COLOURS, DASHES = 8, 4
_LETTERS = {
    "switch": "S", "switch three-way": "S3", "switch four-way": "S4", "switch double pole": "S2",
    "junction": "J", "fan": "F", "alarm": "SD",
}  # fmt: skip
NAMES = {
    "receptacle": "duplex receptacle", "single receptacle": "single receptacle",
    "split receptacle": "duplex receptacle, split", "special outlet": "outlet of an appliance",
    "luminaire": "luminaire", "switch": "switch", "switch three-way": "three-way switch",
    "switch four-way": "four-way switch", "switch double pole": "double-pole switch",
    "junction": "junction box", "fan": "fan", "alarm": "alarm", "panel": "panel",
    "other": "other outlet",
}  # fmt: skip


def plan_svg(drawing: Drawn, title: str, links: Mapping[str, str]) -> Element:
    """The plan; `links` has the id of the card that each spot's symbols lead to."""
    return el(
        "svg",
        el("title", title),
        *(
            el("rect", x=r.x, y=r.y, width=r.width, height=r.height, class_="walls")
            for r in drawing.rooms
        ),
        *(node for run in drawing.runs for node in run_svg(run)),
        *(_linked(each, links.get(each.spot)) for each in drawing.symbols),
        *(
            el(
                "text", w.text, x=w.x, y=w.y, font_size=w.size, paint_order="stroke",
                class_=f"words {w.style}",
            )
            for w in drawing.words
        ),
        class_="plan",
        view_box=f"0 0 {drawing.width:.0f} {drawing.height:.0f}",
        role="group",  # its symbols are links, which an image would hide
    )  # fmt: skip


def run_svg(run: Run) -> Iterator[Node]:
    """A cable in the colour and dashes of its circuit; the arrow of a home run at its end."""
    (x0, y0), (x1, y1), (x2, y2) = run.points
    path = f"M{x0:.1f} {y0:.1f}Q{x1:.1f} {y1:.1f} {x2:.1f} {y2:.1f}"
    names = circuit_class(run.circuit)
    yield el("path", d=path, class_=f"run {names}")
    if run.is_home:
        length = ((x2 - x0) ** 2 + (y2 - y0) ** 2) ** 0.5 or 1.0
        along = ((x2 - x0) / length, (y2 - y0) / length)
        ends = [
            (x2 - 6 * along[0] + side * 4 * along[1], y2 - 6 * along[1] - side * 4 * along[0])
            for side in (1, -1)
        ]
        (ax, ay), (bx, by) = ends
        arrow = f"M{ax:.1f} {ay:.1f}L{x2:.1f} {y2:.1f}L{bx:.1f} {by:.1f}"
        yield el("path", d=arrow, class_=f"run c{run.circuit % COLOURS}")


def circuit_class(number: int) -> str:
    """The classes of a circuit: eight colours, and with each four ways of dashing.

    >>> circuit_class(0), circuit_class(9)
    ('c0 d0', 'c1 d1')
    """
    return f"c{number % COLOURS} d{number // COLOURS % DASHES}"


def symbol_svg(what: str, x: float, y: float) -> Iterator[Node]:
    """A symbol about its middle."""
    if what == "panel":
        yield el("rect", x=x - 9, y=y - 4, width=18.0, height=8.0, class_="solid")
        return
    if what.startswith("switch"):
        yield _letter(_LETTERS[what], x, y + 4.5, 13.0)
        return
    yield el("circle", cx=x, cy=y, r=6.0, class_="ring")
    letter = _LETTERS.get(what)
    if letter:
        yield _letter(letter, x, y + 3.2, 8.5)
    yield from _within(what, x, y)


def _letter(text: str, x: float, y: float, size: float) -> Element:
    return el("text", text, x=x, y=y, font_size=size, class_="letter", paint_order="stroke")


def _within(what: str, x: float, y: float) -> Iterator[Node]:
    if "split" in what:
        yield el("path", d=f"M{x:.1f} {y - 6:.1f}A6 6 0 0 1 {x:.1f} {y + 6:.1f}Z", class_="solid")
    if what.endswith("receptacle"):
        for off in (0.0,) if "single" in what else (-2.0, 2.0):
            yield _line(x + off, y - 9, x + off, y + 9)
    if what == "special outlet":
        foot = f"L{x + 4.5:.1f} {y + 3:.1f}L{x - 4.5:.1f} {y + 3:.1f}Z"
        yield el("path", d=f"M{x:.1f} {y - 5:.1f}{foot}", class_="solid")
    if what == "luminaire":
        for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1)):
            yield _line(x + 6 * dx, y + 6 * dy, x + 9 * dx, y + 9 * dy)


def _line(x0: float, y0: float, x1: float, y1: float) -> Element:
    return el("path", d=f"M{x0:.1f} {y0:.1f}L{x1:.1f} {y1:.1f}", class_="stroke")


def _linked(symbol: Symbol, link: str | None) -> Element:
    nodes = symbol_svg(symbol.what, symbol.x, symbol.y)
    title = el("title", f"{NAMES.get(symbol.what, symbol.what)} {symbol.spot}")
    if link is None:
        return el("g", title, *nodes)
    return el("a", title, *nodes, href=f"#{link}", aria_label=f"card of {symbol.spot}")
