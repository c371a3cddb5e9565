"""`python -m rackboard` and the `rackboard` command."""

from __future__ import annotations

import sys


def main() -> int:
    """Run the program; return its exit code."""
    from rackboard.app import main as run

    return run(sys.argv[1:])


if __name__ == "__main__":
    sys.exit(main())
