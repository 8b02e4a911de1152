"""The models of a job, frozen: what a job file says, with the place where it says so.

In come the values of a job file, already merged with the usual ones (`linter.jobfile` does that);
out come models whose quantities are read and whose yes/no are true, false or None.

>>> from linter.job.dwelling import Room
>>> from linter.text import Place
>>> Room(place=Place("kiln.yaml", 4, 3), name="loft", use="bedroom", area="9 m2").area.value
9.0
"""
