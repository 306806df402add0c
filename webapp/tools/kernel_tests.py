"""Run inside Pyodide, booted from dist/: the kernel's own tests on the files the browser gets.

First every module of the kernel is imported on the stripped build as it is. Then pytest runs
tests/kernel; it needs modules that were stripped, so Python's whole library is put at the end of
the path, but hidden from the kernel and from what the kernel uses.
"""

import importlib
import os
import pkgutil
import sys
from importlib.machinery import PathFinder

import evenkelvin

WHOLE_LIBRARY = "/work/pyodide/python_stdlib.zip"
PACKAGES = os.path.dirname(os.path.dirname(evenkelvin.__file__))

names = [m.name for m in pkgutil.walk_packages(evenkelvin.__path__, "evenkelvin.")]
for name in names:
    if not name.endswith(".__main__"):
        importlib.import_module(name)
print(f"imported {len(names)} modules of the kernel on the stripped library")


class OnlyForTests:
    """Finds what was stripped, unless code of the browser's packages asks for it."""

    @staticmethod
    def find_spec(name, path=None, target=None):
        frame = sys._getframe(1)
        while "importlib" in frame.f_code.co_filename:
            frame = frame.f_back
        if frame.f_code.co_filename.startswith(PACKAGES):
            return None
        folder = name.rpartition(".")[0].replace(".", "/")
        return PathFinder.find_spec(name, [f"{WHOLE_LIBRARY}/{folder}".rstrip("/")])


sys.meta_path.append(OnlyForTests)
sys.path += ["/work/tests", "/work/tools"]
os.chdir("/work/tests")

import pytest  # noqa: E402

options = "-q -rs --capture=sys -p no:cacheprovider --rootdir=/work/tests --import-mode=importlib"
int(pytest.main(["kernel", *options.split(), "-o", "xfail_strict=true"]))
