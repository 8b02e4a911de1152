"""What one report is about: a job, its wiring traced, and what the rules of its pack say of it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.audit.audit import Examined
    from linter.audit.findings import Audit
    from linter.job.jobs import Job
    from linter.signoff.standing import SignedOff
    from linter.trace import Trace
    from linter.wiring import Wiring


@dataclass(frozen=True)  # no slots: the numbers are kept once they are known
class Subject:
    """A job as a report needs it; `file` is the name of its file without the folders."""

    file: str
    job: Job
    wiring: Wiring
    trace: Trace
    examined: Examined
    signed: SignedOff

    @property
    def audit(self) -> Audit:
        """What the rules of the pack say of the job."""
        return self.examined.audit

    @property
    def words(self) -> Mapping[str, str]:
        """The trade's words for words of ours, as the pack has them."""
        return self.examined.pack.words

    @cached_property
    def numbers(self) -> Mapping[str, int]:
        """The boxes as one walks through the rooms, those without a room last, with their numbers.

        The number of a box is that of its card.
        """
        rooms = {str(name): number for number, name in enumerate(self.job.rooms)}
        walk = sorted(self.job.boxes.values(), key=lambda box: rooms.get(str(box.room), len(rooms)))
        return {str(box.name): number for number, box in enumerate(walk, 1)}

    def anchor(self, box: str) -> str:
        """The id of the card of a box; its name may hold what no id does."""
        return f"box-{self.numbers[box]}"
