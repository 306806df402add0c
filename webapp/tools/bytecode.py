"""Run inside Pyodide: compile every .py below a folder to a sourceless .pyc in its place.

Arguments: the folder; the path under which the browser will hold it (for tracebacks). Compiled
here, not by the build's Python, so that the magic number is right. Assertions go, and docstrings
become empty: they are a third of the bytes. (Not None, as optimisation level 2 makes them: numpy
insists on text. A class keeps a blank: dataclasses would work out its signature to fill the gap.)
"""

import ast
import importlib._bootstrap_external as external
import os
from importlib.util import source_hash

DOCUMENTED = (ast.Module, ast.ClassDef, ast.FunctionDef, ast.AsyncFunctionDef)


def bytecode(source, shown_path):
    tree = ast.parse(source)
    for node in ast.walk(tree):
        if isinstance(node, DOCUMENTED) and ast.get_docstring(node, clean=False):
            node.body[0].value.value = " " * isinstance(node, ast.ClassDef)
    code = compile(tree, shown_path, "exec", dont_inherit=True, optimize=1)
    return external._code_to_hash_pyc(code, source_hash(source), checked=False)


root, home = argv  # noqa: F821
for folder, _, names in os.walk(root):
    for name in names:
        if name.endswith(".py"):
            path = os.path.join(folder, name)
            with open(path, "rb") as file:
                source = file.read()
            with open(path + "c", "wb") as file:
                file.write(bytecode(source, home + path[len(root) :]))
            os.unlink(path)
