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
import hashlib
import json
import os
import re
import shutil
import subprocess
import sys
import time
import webbrowser
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent / "webapp" / "tools"))
sys.path.insert(1, str(Path(__file__).resolve().parent / "tests"))

import browser_python
from static_server import CSP, make_server
from steps import (
    CACHE,
    DIST,
    LOCK,
    PYODIDE,
    ROOT,
    TOOLS,
    VENV,
    VENV_PYTHON,
    WEBAPP,
    BuildError,
    cached,
    files_below,
    key_of,
    project,
    run,
    say,
    scratch,
    sha256,
)

from engines import engines_not_run

#: What runs the kernel's tests inside Pyodide: the last releases in plain Python.
TEST_TOOLS_IN_PYODIDE = ["pytest==9.2.0", "hypothesis==6.155.7"]

# ---------------------------------------------------------------------------- setting up


def check_tools() -> None:
    if not shutil.which("npm"):
        raise BuildError("Node.js 20 or newer with npm is needed to build the web app: install it.")
    version = subprocess.run(
        ["node", "--version"], capture_output=True, text=True, check=False
    ).stdout
    if int(re.sub(r"v?(\d+).*", r"\1", version.strip()) or 0) < 20:
        raise BuildError(f"Node.js 20 or newer is needed; this is {version.strip() or 'missing'}.")


def ensure_venv() -> None:
    """Python packages for building and testing, exactly as in the lock."""
    options = ["--require-hashes", "--requirement"]
    make_venv(VENV, [*options, str(LOCK.relative_to(ROOT))], LOCK.read_text())


def make_venv(folder: Path, pins: list[str], lock: str = "") -> Path:
    """A virtual environment that holds what pip is asked for; returns its Python."""
    python = folder / VENV_PYTHON.relative_to(VENV)
    stamp = folder / "evenkelvin-pins"
    wanted = key_of(sys.version, *pins, lock)
    if stamp.exists() and stamp.read_text() == wanted:
        return python
    if not python.exists():
        say(f"Making the virtual environment {folder.name}")
        run([sys.executable, "-m", "venv", folder])
    say(f"Installing Python packages into {folder.name} (the first time takes minutes)")
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


# ---------------------------------------------------------------------------- dist


def put_service_worker(dist: Path) -> None:
    """Give the service worker the policy and the list of all files with their hashes."""
    files = {}
    for path in files_below(dist):
        name = path.relative_to(dist).as_posix()
        if name != "sw.js":
            digest = base64.b64encode(hashlib.sha256(path.read_bytes()).digest()).decode()
            # A folder's address, because some hosts redirect …/index.html to it.
            files["" if name == "index.html" else name] = f"sha256-{digest}"
    script = (dist / "sw.js").read_text()
    version = key_of(script, CSP, json.dumps(files))
    build = json.dumps({"version": version, "policy": CSP, "files": files})
    (dist / "sw.js").write_text(f"self.EVENKELVIN_BUILD={build};\n{script}")


def build_dist(wheels_folder: Path | None = None, target: Path = DIST) -> None:
    """Build the whole app into a folder, which is replaced only when all went well."""
    with scratch() as folder:
        made = folder / "dist"
        browser_python.put_runtime(made / "pyodide", wheels_folder)
        say("Bundling the web app")
        size = sum(path.stat().st_size for path in made.glob("pyodide/*.pack"))
        code = {path.name.removesuffix(".wasm.pack") for path in made.glob("pyodide/*.wasm.pack")}
        extensions = json.dumps(sorted(code - {"runtime"}))
        run(["node", TOOLS / "bundle.mjs", made, str(size), extensions], cwd=WEBAPP)
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
    module = [VENV_PYTHON, "-m"]
    checks: list[tuple[str, Callable[[], None]]] = [
        ("ruff", lambda: run([*module, "ruff", "check"])),
        ("ruff format", lambda: run([*module, "ruff", "format", "--check"])),
        ("mypy --strict", lambda: run([*module, "mypy"])),
        ("biome", lambda: run(["npx", "--no-install", "biome", "ci", "."], cwd=WEBAPP)),
        ("TypeScript", lambda: run(["npx", "--no-install", "tsc"], cwd=WEBAPP)),
        ("golden answers on Pyodide's numpy", lambda: golden_answers_on("2.0.2")),
        ("golden answers on the newest numpy", lambda: golden_answers_on("2.4.6")),
        ("the kernel's tests inside Pyodide", kernel_tests_in_pyodide),
    ]
    say("pytest starts beside the other checks; its words follow theirs")
    pytest = subprocess.Popen(
        [*module, "pytest"],
        cwd=ROOT,
        env={**os.environ, "EVENKELVIN_CHROMIUM": chromium},
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    checks.append(("pytest", lambda: follow(pytest)))
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
    for why in engines_not_run():
        say(why)
    if failed:
        raise BuildError(f"Failed: {', '.join(failed)}.")


def follow(program: subprocess.Popen[str]) -> None:
    """Print what a running program says, until it ends."""
    assert program.stdout
    for line in program.stdout:
        print(line, end="", flush=True)
    if program.wait():
        raise BuildError("It failed; its message is above.")


def golden_answers_on(numpy_version: str) -> None:
    """The golden answers, natively, with nothing but the kernel's needs and this numpy."""
    needs = [pin for pin in project()["project"]["dependencies"] if "==" in pin]
    pins = [f"numpy=={numpy_version}", "pytest==9.2.0", *needs]
    python = make_venv(CACHE / f"venv-numpy-{numpy_version}", pins)
    run([python, "-m", "pytest", "-q", "--noconftest", ROOT / "tests/kernel/test_golden.py"])


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
    browser_python.in_pyodide(TOOLS / "kernel_tests.py", options=options)


def test_tools_in_pyodide() -> Path:
    def make(target: Path) -> None:
        pip = [VENV_PYTHON, "-m", "pip", "--quiet", "--disable-pip-version-check"]
        run([*pip, "install", "--target", target, *TEST_TOOLS_IN_PYODIDE])

    return cached(f"pytest-{key_of(*TEST_TOOLS_IN_PYODIDE)}", make)


def whole_numpy() -> Path:
    """What the browser's numpy leaves out and tests may use."""
    entry = browser_python.pyodide_lock()["packages"]["numpy"]

    def make(target: Path) -> None:
        browser_python.unpack(
            browser_python.verified_wheel(CACHE / "wheels", entry), target, lambda name: False
        )

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
