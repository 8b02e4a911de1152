"""The wiring of a job, conductor by conductor: wire ends, joints, pigtails, terminals, links.

In comes a `Job`; out goes a `Wiring`, derived like to like by the patterns of the trade, except
where the job states a box joint by joint. Nothing here knows a code or whether a wiring is right.

    wiring = derive(read_job(text, "kiln-room.yaml"))
    wiring.boxes["bench"].joints
"""

from linter.wiring.derive import derive
from linter.wiring.model import Wiring

__all__ = ["Wiring", "derive"]
