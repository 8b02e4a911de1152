"""Values of the vocabulary for one job, worked out from the job, its wiring and its trace.

In: a job, its wiring, its trace. Out: `Facts`, the things of each kind in file order, every fact of
every thing filled, an unknown with the facts that the job leaves open.

    facts = facts_of(job, wiring, trace)
    facts.thing("box", "sink-left").marked_volume
"""

from linter.facts.gather import Facts, facts_of

__all__ = ["Facts", "facts_of"]
