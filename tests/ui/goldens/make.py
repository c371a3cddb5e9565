"""Make the golden pictures anew: python tests/ui/goldens/make.py [TESTS...].

Runs the tests of the window, or those named, with RACKBOARD_GOLDENS=make: each picture that a
test checks is written here if it differs. Look at what changed before committing it.
"""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path

FOLDER = Path(__file__).resolve().parent
TESTS = FOLDER.parent


def main() -> int:
    """Run the tests and say what was written."""
    named = sys.argv[1:] or [
        str(path) for path in sorted(TESTS.glob("test_*.py"))
        if "golden" in path.read_text(encoding="utf-8")
    ]  # fmt: skip
    begin = time.time()
    done = subprocess.run(
        [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", *named],
        env={**os.environ, "RACKBOARD_GOLDENS": "make"}, cwd=TESTS.parents[1], check=False,
    )  # fmt: skip
    written = [p.name for p in sorted(FOLDER.glob("*.png")) if p.stat().st_mtime >= begin]
    print(f"{len(written)} written", *written, sep="\n  ")
    return done.returncode


if __name__ == "__main__":
    sys.exit(main())
