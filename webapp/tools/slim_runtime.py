"""Make Pyodide's runtime smaller and quicker to start: without what only other packages call.

Its machine code exports every function of Python's C interface, of the C library and of much
else (9837 names), so that any package may call them, and its script wraps a third of them. Each
name costs bytes and time at every start. Here only the names stay that the script itself, the
worker or the extension modules we ship ask for. What of the script is left then is decided by
unused_script.mjs.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

_IMPORTS, _EXPORTS = 2, 7
#: How names of functions begin that machine code only holds a table of.
GRAPHICS = "emscripten_gl"

#: How the script makes a function of an export:
#: var _f=Module["_f"]=a0=>(_f=Module["_f"]=wasmExports["f"])(a0);
_WRAPPER = re.compile(
    r'var (_[\w$]+)=(?:Module\["\1"\]=)?(?:\([\w,]*\)|a0)=>'
    r'\(\1=(?:Module\["\1"\]=)?wasmExports\["([^"]+)"\]\)\([\w,]*\);'
)
#: What is written otherwise in the script.
_EDITS = {
    # An extension module that Python wants to load: the worker may hand it one that was compiled
    # while Python was starting.
    "function loadLibData(){": (
        'function loadLibData(){var compiled=Module["extensions"]&&Module["extensions"][libName];'
        "if(compiled)return flags.loadAsync?Promise.resolve(compiled):compiled;"
    ),
    # The table of graphics, 155 functions that would each be wrapped by a module of its own.
    "if(!value&&!entry.required){continue}": (
        f'if(!value&&(!entry.required||symName.startsWith("{GRAPHICS}"))){{continue}}'
    ),
    # Names of time zones, which nobody asks for: to have the browser form one takes 20 ms.
    'var extractZone=date=>date.toLocaleTimeString(undefined,{hour12:false,timeZoneName:"short"})'
    '.split(" ")[1];': 'var extractZone=()=>"local";',
}

_NAME = re.compile(r"[A-Za-z_$][\w$]*")


@dataclass
class _Reader:
    """Reads a WebAssembly module (WebAssembly Core Specification, 5 Binary Format)."""

    data: bytes
    at: int = 0

    def byte(self) -> int:
        self.at += 1
        return self.data[self.at - 1]

    def number(self) -> int:
        """Read an unsigned LEB128 (5.2.2)."""
        value = shift = 0
        while True:
            part = self.byte()
            value |= (part & 127) << shift
            shift += 7
            if part < 128:
                return value

    def name(self) -> str:
        length = self.number()
        self.at += length
        return self.data[self.at - length : self.at].decode()

    def limits(self) -> None:
        if self.byte() & 1:
            self.number()
        self.number()


def _leb128(value: int) -> bytes:
    coded = bytearray()
    while value > 127:
        coded.append(value & 127 | 128)
        value >>= 7
    return bytes([*coded, value])


def _sections(module: bytes) -> Iterator[tuple[int, bytes]]:
    if module[:8] != b"\0asm\1\0\0\0":
        raise ValueError("this is no WebAssembly module of version 1")
    reader = _Reader(module, 8)
    while reader.at < len(module):
        kind, size = reader.byte(), reader.number()
        yield kind, module[reader.at : reader.at + size]
        reader.at += size


def imported(module: bytes) -> set[str]:
    """Return the names that a WebAssembly module asks of others (5.5.5)."""
    names = set()
    for kind, body in _sections(module):
        if kind != _IMPORTS:
            continue
        reader = _Reader(body)
        for _ in range(reader.number()):
            reader.name()
            names.add(reader.name())
            what = reader.byte()
            if what == 0:  # a function's type
                reader.number()
            elif what == 1:  # a table
                reader.byte()
                reader.limits()
            elif what == 2:  # a memory
                reader.limits()
            elif what == 3:  # a global
                reader.at += 2
            else:  # a tag
                reader.byte()
                reader.number()
    return names


def _exports(body: bytes) -> list[tuple[str, bytes]]:
    reader = _Reader(body)
    found = []
    for _ in range(reader.number()):
        name = reader.name()
        start = reader.at
        reader.byte()
        reader.number()
        found.append((name, body[start : reader.at]))
    return found


def with_exports(module: bytes, wanted: set[str]) -> bytes:
    """Return a WebAssembly module with only those of its exports that are wanted."""
    made = bytearray(module[:8])
    for kind, body in _sections(module):
        if kind == _EXPORTS:
            kept = [(name, what) for name, what in _exports(body) if name in wanted]
            coded = [_leb128(len(n.encode())) + n.encode() + what for n, what in kept]
            body = _leb128(len(kept)) + b"".join(coded)
        made += bytes([kind]) + _leb128(len(body)) + body
    return bytes(made)


def edited(script: str) -> str:
    """Return Pyodide's script with what is written otherwise here."""
    for place, words in _EDITS.items():
        if script.count(place) != 1:
            raise ValueError(
                f"Pyodide's script has no single {place!r}, which slim_runtime.py edits"
            )
        script = script.replace(place, words)
    return script


def asked_of_script(modules: Iterable[bytes]) -> set[str]:
    """Return the names that WebAssembly modules ask of the script."""
    return {
        name for module in modules for name in imported(module) if not name.startswith(GRAPHICS)
    }


def with_wanted_exports(
    machine_code: bytes, script: str, callers: Iterable[str], extensions: Iterable[bytes]
) -> tuple[bytes, str]:
    """Return Pyodide's machine code and script without the exports that nobody asks for.

    Parameters
    ----------
    machine_code, script
        pyodide.asm.wasm and pyodide.asm.js.
    callers
        Other scripts that may call an export, by ``_name`` or ``name``.
    extensions
        The extension modules of packages.
    """
    wrapped = dict(_WRAPPER.findall(script))
    if len(wrapped) < 1000:
        raise ValueError("Pyodide's script has another form than slim_runtime.py knows")
    bare = _WRAPPER.sub("", script)
    said = {name for text in (bare, *callers) for name in _NAME.findall(text)}
    wanted = said | {wrapped[name] for name in wrapped if name in said} | imported(machine_code)
    for extension in extensions:
        wanted |= imported(extension)
    slim = _WRAPPER.sub(lambda m: m[0] if m[1] in said or m[2] in said else "", script)
    return with_exports(machine_code, wanted), slim
