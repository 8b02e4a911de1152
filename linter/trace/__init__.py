"""What reaches what: from the panel outward through conductors, joints and devices; topology only.

In come a job and its wiring; out goes a `Trace` that tells for every wire end and terminal which
breaker poles, which neutrals and whether the bond reach it, what protects it, and what hangs on it.

    found = trace(job, derive(job))
    found.hots_at("sink.hot")
"""

from linter.trace.trace import Trace, trace

__all__ = ["Trace", "trace"]
