"""`python -m evenkelvin`: the one place of the kernel that touches files and streams."""

from __future__ import annotations

import os
import sys
from pathlib import Path

from evenkelvin.cli import complaint, run
from evenkelvin.problem import Problem


def _read(name: str) -> bytes:
    return sys.stdin.buffer.read() if name == "-" else Path(name).read_bytes()


def main() -> int:
    """Run the command that the arguments name and return the exit code."""
    for stream in (sys.stdout, sys.stderr):
        # The words hold ′ and –, which a terminal of another encoding must not choke on.
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="replace", newline="")
    try:
        outcome = run(sys.argv[1:], _read)
        for name, text in outcome.files.items():
            Path(name).write_bytes(text.encode("utf-8"))
        for note in outcome.notes:
            print(note, file=sys.stderr)
        sys.stdout.write(outcome.text)
        sys.stdout.flush()
        return outcome.code
    except Problem as problem:
        print(complaint(problem), file=sys.stderr)
    except BrokenPipeError:
        # Whoever read the output, such as `head`, has seen enough.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    except OSError as error:
        print(f"{error.filename or 'file'}: {error.strerror}", file=sys.stderr)
    return 1


if __name__ == "__main__":
    sys.exit(main())
