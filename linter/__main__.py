"""`python -m linter` is the same as the command `precover`."""

import sys

from linter.cli import main

if __name__ == "__main__":
    sys.exit(main())
