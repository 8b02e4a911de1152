"""What one report is about: a job, its wiring traced, and what the rules of its pack say of it."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.audit.audit import Examined
    from linter.audit.findings import Audit
    from linter.job.jobs import Job
    from linter.signoff.standing import SignedOff
    from linter.trace import Trace
    from linter.wiring import Wiring


class Subject(NamedTuple):
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

    def walk(self) -> list[str]:
        """The boxes as one walks through the rooms, those without a room last."""
        rooms = {str(name): number for number, name in enumerate(self.job.rooms)}
        boxes = self.job.boxes
        return sorted(boxes, key=lambda box: rooms.get(str(boxes[box].room), len(rooms)))  # type: ignore[index]  # plain names

    def anchor(self, box: str) -> str:
        """The id of the card of a box; its name may hold what no id does."""
        return f"box-{list(self.job.boxes).index(box) + 1}"  # type: ignore[arg-type]  # plain names
