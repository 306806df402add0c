"""Run inside Pyodide, booted from dist/: the kernel's own tests on the files the browser gets.

First every module of the kernel is imported, and every golden question asked, on the stripped
build as it is. Then pytest runs tests/kernel. The tests need modules that were stripped, so these
are put at hand, but hidden from the kernel and from what the kernel calls.
"""

import importlib
import json
import os
import pkgutil
import sys
from importlib.machinery import PathFinder
from pathlib import Path

import evenkelvin
import evenkelvin.replies
from evenkelvin.desk import answer_json

WHOLE_LIBRARY = "/work/pyodide/python_stdlib.zip"
WHOLE_NUMPY = "/work/numpy"
PACKAGES = os.path.dirname(os.path.dirname(evenkelvin.__file__))

names = [m.name for m in pkgutil.walk_packages(evenkelvin.__path__, "evenkelvin.")]
for name in names:
    if not name.endswith(".__main__"):
        importlib.import_module(name)
cases = [
    case
    for file in sorted(Path("/work/tests/kernel/golden").glob("*.json"))
    for case in json.loads(file.read_text())
]
for case in cases:
    answer_json(json.dumps(case["request"]))
print(f"On the stripped build {len(names)} modules are imported, {len(cases)} questions answered.")


class OnlyForTests:
    """Finds what was stripped, unless it is the kernel that asks, itself or through numpy."""

    @staticmethod
    def find_spec(name, path=None, target=None):
        frame = sys._getframe(1)
        while frame.f_code.co_filename.startswith(("<frozen importlib", f"{PACKAGES}/numpy/")):
            frame = frame.f_back
        if frame.f_code.co_filename.startswith(PACKAGES):
            return None
        whole = WHOLE_NUMPY if name.startswith("numpy.") else WHOLE_LIBRARY
        folder = name.rpartition(".")[0].replace(".", "/")
        return PathFinder.find_spec(name, [f"{whole}/{folder}".rstrip("/")])


sys.meta_path.append(OnlyForTests)
# The types of answers, which nobody asks for in the browser.
evenkelvin.replies.__path__.append("/work/replies")
sys.path += ["/work/tests", "/work/tools"]
os.chdir("/work/tests")

# What the browser gets of asyncio is the name alone; the tests want it whole.
os.unlink(sys.modules.pop("asyncio").__file__)
importlib.invalidate_caches()

import pytest  # noqa: E402

options = "-q -rs --capture=sys -p no:cacheprovider --rootdir=/work/tests --import-mode=importlib"
# What an assertion compared, a run of the same test outside tells; to have it told costs seconds.
int(pytest.main(["kernel", *options.split(), "--assert=plain", "-o", "xfail_strict=true"]))
