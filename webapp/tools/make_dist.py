"""dist/: the whole app as static files, for any host and any folder."""

from __future__ import annotations

import base64
import hashlib
import json
import os
import shutil
from pathlib import Path

from api_page import page
from reader_part import put_reader
from runtime import put_runtime
from static_server import CSP
from steps import DIST, ROOT, TOOLS, WEBAPP, files_below, key_of, run, say, scratch

#: What the app is made of: `build.py serve` builds again when one of these changes.
SOURCES = [
    ROOT / "kernel" / "evenkelvin",
    ROOT / "pyproject.toml",
    ROOT / "demo_readings",
    WEBAPP / "index.html",
    WEBAPP / "src",
    WEBAPP / "static",
    WEBAPP / "tools",
]


def put_service_worker(dist: Path) -> None:
    """Give the service worker the policy and the list of all files with their hashes."""
    files = {}
    for path in files_below(dist):
        name = path.relative_to(dist).as_posix()
        # The pictures are for the browser's own dialogue before the app is installed.
        # The reader of displays is got by those who want it.
        if name != "sw.js" and not name.startswith(("screens/", "reader/")):
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
        put_runtime(made / "pyodide", wheels_folder)
        say("Bundling the web app")
        size = sum(path.stat().st_size for path in made.glob("pyodide/*.pack"))
        code = {path.name.removesuffix(".wasm.pack") for path in made.glob("pyodide/*.wasm.pack")}
        extensions = json.dumps(sorted(code - {"runtime"}))
        reader = json.dumps(put_reader(made / "reader"))
        run(["node", TOOLS / "bundle.mjs", made, str(size), extensions, reader], cwd=WEBAPP)
        shutil.copytree(WEBAPP / "static", made, dirs_exist_ok=True)
        without = shutil.ignore_patterns("*.py", "__pycache__")
        shutil.copytree(ROOT / "demo_readings", made / "demo_readings", ignore=without)
        (made / "api.html").write_text(page(), encoding="utf-8")
        put_service_worker(made)
        if target.exists():
            os.replace(target, folder / "old")
        os.replace(made, target)
    total = sum(path.stat().st_size for path in files_below(target))
    say(f"{target.name}/ is ready: {len(files_below(target))} files, {total / 1e6:.1f} MB")
