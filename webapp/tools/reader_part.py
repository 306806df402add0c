"""The reader of displays: an open reader of print, in files that only those fetch who want it.

Of the reader's data only the network and its signs are kept: its lists of English words are two
thirds of it, and help nobody to read numbers.
"""

from __future__ import annotations

import base64
import gzip
import hashlib
import shutil
import struct
from pathlib import Path

from steps import WEBAPP, BuildError

CORE = WEBAPP / "node_modules/tesseract.js-core"
DATA = WEBAPP / "node_modules/@tesseract.js-data/eng/4.0.0_best_int/eng.traineddata.gz"

#: Of the parts of a file of data: the network, its signs, how they are coded, and the version.
NETWORK_AND_SIGNS = {17, 21, 22, 23}


def put_reader(folder: Path) -> dict[str, dict[str, int | str]]:
    """Write the reader's files; return the size and the hash of each, by its name."""
    folder.mkdir(parents=True)
    shutil.copy(CORE / "tesseract-core-simd-lstm.js", folder / "core.js")
    packed(folder / "core.part", (CORE / "tesseract-core-simd-lstm.wasm").read_bytes())
    packed(folder / "letters.part", network_alone(gzip.decompress(DATA.read_bytes())))
    return {path.name: about(path) for path in sorted(folder.iterdir())}


def packed(path: Path, data: bytes) -> None:
    # No name and no time in it: the same bytes give the same file.
    path.write_bytes(gzip.compress(data, 9, mtime=0))


def about(path: Path) -> dict[str, int | str]:
    data = path.read_bytes()
    digest = base64.b64encode(hashlib.sha256(data).digest()).decode()
    return {"bytes": len(data), "hash": f"sha256-{digest}"}


def network_alone(data: bytes) -> bytes:
    """Return a file of data with only what is kept: a table of offsets, -1 for none, then parts."""
    (count,) = struct.unpack_from("<i", data)
    offsets = struct.unpack_from(f"<{count}q", data, 4)
    ends = [*sorted(offset for offset in offsets if offset >= 0), len(data)]
    parts = [
        data[offset : next(end for end in ends if end > offset)]
        if offset >= 0 and index in NETWORK_AND_SIGNS
        else None
        for index, offset in enumerate(offsets)
    ]
    if sum(part is not None for part in parts) != len(NETWORK_AND_SIGNS):
        raise BuildError("The reader's data are not as they were: see reader_part.py.")
    at = 4 + 8 * count
    table = []
    for part in parts:
        table.append(-1 if part is None else at)
        at += len(part or b"")
    head = struct.pack(f"<i{count}q", count, *table)
    return head + b"".join(part for part in parts if part is not None)
