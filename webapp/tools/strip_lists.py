"""What of Python, numpy and the kernel the browser gets in another form, or not at all.

The kernel's whole test suite runs on what remains (`kernel_tests.py`).
"""

from __future__ import annotations

import re

#: Left out of Python's library: what asks for a terminal, a process, a server or a network that
#: a browser's worker does not have, developers' tools, and obsolete formats; on the last two lines,
#: what is frozen into Python's machine code anyway. Whole names of modules or packages at the
#: library's top, or paths below it.
STRIPPED_LIBRARY = """
    __hello__ __phello__ _aix_support _markupbase _osx_support _py_abc _pydatetime _pydecimal
    _pyio aifc antigravity argparse asynchat asyncio asyncore bdb cProfile cgi cgitb chunk cmd
    code codeop colorsys compileall concurrent configparser crypt ctypes/_aix ctypes/macholib
    ctypes/util ctypes/wintypes curses dbm difflib distutils doctest email ensurepip filecmp
    fileinput fractions ftplib getopt getpass gettext graphlib gzip hmac html http idlelib imaplib
    imghdr importlib/metadata lib2to3 logging/config logging/handlers mailbox mailcap mimetypes
    modulefinder msilib multiprocessing netrc nntplib nturl2path optparse pdb pickletools pipes
    plistlib poplib pprint profile pstats pty py_compile pyclbr pydoc pydoc_data pyodide/console
    pyodide/http queue quopri rlcompleter runpy sched secrets shelve shlex smtpd smtplib sndhdr
    socketserver sqlite3 sre_compile sre_constants sre_parse statistics stringprep sunau symtable
    tabnanny tarfile telnetlib test this timeit tkinter tomllib trace tracemalloc tty turtle
    turtledemo unittest urllib/error urllib/request urllib/response urllib/robotparser uu uuid
    venv wave webbrowser wsgiref xdrlib xml/dom xml/etree xml/sax xmlrpc zipapp
    _collections_abc _sitebuiltins abc codecs genericpath importlib/_bootstrap
    importlib/_bootstrap_external io ntpath posixpath site stat zipimport
"""

#: Of the text encodings only these are kept (and the Windows and ISO 8859 families).
KEPT_ENCODINGS = re.compile(
    r"__init__|aliases|ascii|latin_1|utf_\w+|cp125\d|cp437|iso8859_\d+|mac_roman|idna|punycode"
    r"|raw_unicode_escape|unicode_escape"
)

#: Left out of packages. numpy.random and numpy.fft are half of numpy's bytes, and the kernel,
#: which is to give the same answer twice and has no signal to transform, uses neither.
STRIPPED_PACKAGES = re.compile(
    r".*\.(pyi|pxd|c|h|a|typed|cpp|pyx)|.*/tests/.*|[^/]*\.dist-info/.*"
    r"|numpy/(random|fft|f2py|distutils|testing|doc|_pyinstaller|compat|core)/.*"
    r"|numpy/(conftest|_configtool|ctypeslib|matlib)\.py|numpy/(char|strings|rec)/.*"
    r"|numpy/ma/(mrecords|timer_comparison|testutils)\.py|numpy/ma/(README|API|LICENSE).*"
    r"|numpy/lib/(recfunctions|_user_array_impl|user_array)\.py"
    r"|numpy/_?typing/.*|numpy/_core/_multiarray_tests\..*\.so|numpy/linalg/lapack_lite\..*\.so"
    r"|astral/(geocoder|location|moon|sidereal|table4|__main__)\.py"
    r"|evenkelvin/(cli/.*|(asking|__main__|replies/answers)\.py)"
    r"|numpy/_core/(_(rational|struct_ufunc|operand_flag|umath)_tests|_simd)\..*\.so|numpy/_core/(lib|include)/.*"
)

#: Modules of numpy that do nothing but attach docstrings, which bytecode here has none of.
EMPTIED = ["numpy/_core/_add_newdocs.py", "numpy/_core/_add_newdocs_scalars.py"]

#: Modules of Python's library and of packages that are shipped in another form, from this folder.
REPLACED = {
    "library/asyncio.py": "browser_asyncio.py",
    "library/pyodide/_package_loader.py": "browser_package_loader.py",
    "library/pyodide/webloop.py": "browser_webloop.py",
    "packages/numpy/_typing.py": "browser_numpy_typing.py",
}

#: What is added to the end of modules of Python's library and of packages, from this folder.
ADDED = {
    "library/dataclasses.py": "browser_dataclasses.py",
    "packages/numpy/_core/getlimits.py": "browser_getlimits.py",
    "packages/numpy/_core/overrides.py": "browser_overrides.py",
}

#: Modules that the start imports by name but does not use: what stands in for each at first
#: (see browser_later.py), with the constants that others ask for while they are imported.
LATER = {
    "ctypes/__init__.py": "",
    "importlib/resources/__init__.py": "from . import abc\n",
    "importlib/resources/abc.py": "__all__ = []\n",
    "ipaddress.py": "",
    "pickle.py": "",
    "platform.py": "",
}


def stripped_from_library(path: str) -> bool:
    module = re.sub(r"(/__init__)?\.py$", "", path)
    if module.startswith("encodings/"):
        return not KEPT_ENCODINGS.fullmatch(module.removeprefix("encodings/"))
    parts = module.split("/")
    stripped = STRIPPED_LIBRARY.split()
    return any("/".join(parts[:n]) in stripped for n in range(1, len(parts) + 1))
