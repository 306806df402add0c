"""Run inside Pyodide: compile every .py below a folder to a sourceless .pyc in its place.

Arguments: the folder; the path under which the browser will hold it (for tracebacks); the
optimisation level. Compiled here, not by the build's Python, so that the magic number is right.
"""

import importlib._bootstrap_external as external
import os
from importlib.util import source_hash

root, home, optimize = argv  # noqa: F821
for folder, _, names in os.walk(root):
    for name in names:
        if not name.endswith(".py"):
            continue
        path = os.path.join(folder, name)
        with open(path, "rb") as file:
            source = file.read()
        shown = home + path[len(root) :]
        code = compile(source, shown, "exec", dont_inherit=True, optimize=int(optimize))
        with open(path + "c", "wb") as file:
            file.write(external._code_to_hash_pyc(code, source_hash(source), checked=False))
        os.unlink(path)
