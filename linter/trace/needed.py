"""What a conductor that ends in a box on nothing is needed for elsewhere."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from linter.trace.trace import Trace
    from linter.wiring.model import Wiring


def needed_by(trace: Trace, wiring: Wiring, wire_end: str) -> tuple[str, ...]:
    """The devices that hang on a conductor which nothing reaches, in the order of the job.

    Such a conductor is not one to cap: what it is to carry does not come to this box. Empty where
    something does reach it, or no terminal is on it.
    """
    if trace.sources_at(wire_end):
        return ()
    piece = trace.piece_of(wire_end)
    found = (
        terminal.device
        for terminal in wiring.terminals.values()
        if terminal.device
        and terminal.id in wiring.landings
        and trace.piece_of(terminal.id) == piece
    )
    return tuple(dict.fromkeys(found))
