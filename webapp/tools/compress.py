"""Compress one file into another as one zstd stream:  python compress.py SOURCE TARGET

At the highest level, because the build does it once and every first visit gains.
"""

import sys
from pathlib import Path

import zstandard

source, target = map(Path, sys.argv[1:])
target.write_bytes(zstandard.ZstdCompressor(level=22).compress(source.read_bytes()))
