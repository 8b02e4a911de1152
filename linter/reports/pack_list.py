"""Rule packs and their proofs as lines: what there is, what it stands on, what proofs come to."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.reports.layout import EMPTY, Line, line
from linter.reports.sayings import counted
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.packs.localities import Locality
    from linter.packs.model import Pack
    from linter.packs.prove import ProofReport


def pack_list(packs: Iterable[Pack]) -> Iterator[Line]:
    """Each pack with its title, its document and edition, what it stands on, what it holds."""
    for pack in packs:
        own = pack.layer(pack.id)
        stands = f"on {own.extends}" if own.extends else "stands by itself"
        holds = join_words(
            [
                counted(len(pack.rules), "rule", "rules"),
                *(
                    [counted(len(pack.items), "item to look at", "items to look at")]
                    if pack.items
                    else []
                ),
                counted(len(pack.measures), "measure", "measures"),
                counted(len(pack.tables), "table", "tables"),
                counted(len(pack.limits), "limit", "limits"),
            ]
        )
        yield line(pack.id, "box")
        yield line(own.title, indent=2, hang=2)
        document = f"{own.document}, edition {own.edition}; {own.jurisdiction}"
        yield line(f"{document}; version {own.version}", indent=2, hang=2)
        yield line(f"{stands}; {holds}", indent=2, hang=2)
        yield EMPTY


def place_list(places: Iterable[Locality]) -> Iterator[Line]:
    """Each place with the packs that hold there, and for permits of which days."""
    for place in places:
        yield line(place.name, "box")
        yield line(f"{place.title}, a place", indent=2, hang=2)
        for span in place.spans:
            until = f" until {span.last}" if span.last else " on"
            held = f"for permits from {span.first}{until}: {span.pack}, by {span.by}"
            yield line(held, indent=2, hang=4)
        yield EMPTY


def proof_lines(pack: Pack, report: ProofReport) -> Iterator[Line]:
    """What the proofs of a pack come to: each case that comes out otherwise, then a count."""
    for failing in report.failing:
        first, *more = failing.render().split("\n")
        yield line(first, "box", hang=4)
        for each in more:
            yield line(each.strip(), indent=4, hang=4)
        yield EMPTY
    ran = join_words(
        [
            counted(report.cases, "case", "cases"),
            counted(report.rules, "rule", "rules"),
            counted(report.measures, "measure", "measures"),
            *(
                [counted(report.items, "item that picks", "items that pick")]
                if report.items
                else []
            ),
        ]
    )
    if not report.failing:
        yield line(f"{pack.id}: {ran}; every case comes out as stated.")
        return
    fails = counted(len(report.failing), "case does", "cases do")
    are = "is" if len(report.failing) == 1 else "are"
    yield line(f"{pack.id}: {ran}; {fails} not come out as stated, or {are} missing.", "box")
