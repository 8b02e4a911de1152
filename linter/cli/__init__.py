"""The commands of precover: the only place that reads files, asks the machine, prints and exits.

Words of a command line come in; a report goes to standard output, remarks and refusals to standard
error, and a status out.
"""


def main() -> int:
    """Runs the command that the command line names, and gives the status to exit with."""
    # Importing a name of this package must not load the commands.
    import gc  # noqa: PLC0415
    import sys  # noqa: PLC0415

    # Nearly everything a run makes lives until its end: looking for garbage takes a tenth of a cold
    # audit, and most of one of 10,000 boxes, and finds none. Who audits many files sweeps between
    # them (linter/cli/sweeping.py); what is frozen at the end is not gone through once more.
    gc.disable()

    from linter.cli.run import run  # noqa: PLC0415

    status = run(sys.argv[1:])
    gc.freeze()
    return status
