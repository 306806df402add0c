"""Read damaged files by the thousand: nothing may crash, hang or answer nonsense.

As a script:  python tests/kernel/fuzz_interchange.py [files] [seed]
A bounded part of it runs with the other tests.
"""

from __future__ import annotations

import base64
import json
import math
import random
import sys
import time
from collections import Counter
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

#: No file may take longer, in seconds. A garbage collection or a busy machine may: then it is
#: read again, and only the second time counts.
LONGEST = 1.0

NM = list(range(400, 721, 10))
VALUES = [round(0.05 + 0.9 * math.exp(-(((nm - 560) / 90.0) ** 2)), 4) for nm in NM]


def _columns(delimiter: str, mark: str, head: str, scale: float = 1.0) -> str:
    rows = (
        delimiter.join(str(cell).replace(".", mark) for cell in (nm * scale, value, 1 - value))
        for nm, value in zip(NM, VALUES, strict=True)
    )
    return "\n".join([head, *rows]) + "\n"


def seeds() -> list[bytes]:
    """Return one small sound file of every kind that is read."""
    numbers = " ".join(map(str, VALUES))
    samples = "\n".join(
        f'<SpectralData wavelength="{nm}">{value}</SpectralData>'
        for nm, value in zip(NM, VALUES, strict=True)
    )
    fields = " ".join(f"SPECTRAL_{nm}" for nm in NM)
    texts = [
        _columns(",", ".", "wavelength (nm),Key,Fill"),
        _columns(";", ",", "Gerät;7\nWellenlänge [nm];Führung [W/m²/nm];Füllung"),
        _columns("\t", ".", "nm\tTransmittance %\tReflectance"),
        _columns("  ", ",", "# λ (Å)  Key  Fill", 10.0),
        _columns("|", ".", "micron|Key|Fill", 0.001),
        _columns(",", ".", "wavelength (nm),PPFD [umol/m2/s/nm],Photons"),
        "Name;" + ";".join(f"{nm}nm" for nm in NM) + "\nKey;"
        + ";".join(str(v).replace(".", ",") for v in VALUES) + "\n",
        'nm,v\n' + "\n".join(f'"{n},0","{str(v).replace(".", ",")}"'
                             for n, v in zip(NM, VALUES, strict=True)),
        "name;x;y;CCT;lux\nKey;0,4215;0,4022;3262;1200\nFill;0,38;0,37;4000;\n",
        '<?xml version="1.0"?>\n<IESTM2714 xmlns="iestm2714" version="1.0"><Header>'
        "<Description>Key</Description><Comments>Lux: 640; Time: 17:10\nDate: 05/06/2026"
        "</Comments></Header><SpectralDistribution>"
        f"<SpectralQuantity>relative</SpectralQuantity>\n{samples}\n"
        "</SpectralDistribution></IESTM2714>",
        '<?xml version="1.0"?>\n<cc:CxF xmlns:cc="http://colorexchangeformat.com/CxF3-core">'
        '<cc:Object Name="Key"><cc:CreationDate>2026-11-25T17:10:05Z</cc:CreationDate>'
        '<cc:Tag Name="Lux" Value="640"/><cc:ColorValues><cc:EmissiveSpectrum StartWL="400" '
        f'ColorSpecification="s">{numbers}</cc:EmissiveSpectrum><cc:ColorEmissiveCIExyY>'
        "<cc:x>0.4</cc:x><cc:y>0.4</cc:y></cc:ColorEmissiveCIExyY></cc:ColorValues></cc:Object>"
        '<cc:ColorSpecification Id="s"><cc:WavelengthRange StartWL="400" Increment="10"/>'
        "</cc:ColorSpecification></cc:CxF>",
        f'CGATS.17\nDESCRIPTOR "gels"\nBEGIN_DATA_FORMAT\nSAMPLE_NAME {fields}\n'
        f'END_DATA_FORMAT\nBEGIN_DATA\n"one" {numbers}\n"two" {numbers}\nEND_DATA\n',
        "CGATS.17\nLUX 640\n# Place: deck\nBEGIN_DATA_FORMAT\nSAMPLE_ID SPECTRAL_NM "
        "SPECTRAL_PCT\nEND_DATA_FORMAT\n"
        "BEGIN_DATA\n" + "\n".join(f"1 {n} {v}" for n, v in zip(NM, VALUES, strict=True))
        + "\nEND_DATA\n",
    ]  # fmt: skip
    raw = [text.encode("utf-8") for text in texts]
    raw += [texts[1].encode("latin-1"), texts[1].encode("utf-16"), texts[2].encode("utf-16-be")]
    return raw


_TOKENS = [
    b";", b",", b"\t", b" ", b"\n", b"\r\n", b'"', b".", b"-", b"1e400", b"-1e308", b"1e308",
    b"nan", b"inf", b"0", b"0,5", b"99999999999999999999", b"380", b"5000", b"%", b"#", b"nm",
    b"<", b">", b"</", b"<a>", b"&amp;", b"&x;", b"<!DOCTYPE a>", b"<!--", b"<![CDATA[", b"\x00",
    b"\xff", b"\xfe\xff", b"\xc3", b"BEGIN_DATA", b"END_DATA\n", b"BEGIN_DATA_FORMAT\n", b"1/cm",
    b"\xe2\x88\x92", b"e", b"E+", b"x", b"CCT", b"()", b"[" * 60, b"1 " * 40, b"1;" * 60,
]  # fmt: skip
_CHOICES = [
    {}, {}, {}, {}, {"layout": "down"}, {"layout": "across"}, {"decimal": "comma"},
    {"delimiter": "semicolon"}, {"wavelength_unit": "angstrom"}, {"quantity": "transmittance"},
    {"quantity": "reflectance", "values": "percent"}, {"step": "20"},
]  # fmt: skip


def mutated(raw: bytes, others: list[bytes], chance: random.Random) -> bytes:
    """Return a file after one to six mishaps."""
    data = bytearray(raw)
    for _ in range(chance.choice((1, 1, 1, 1, 2, 2, 3, 6))):
        at = chance.randrange(len(data) + 1)
        end = min(len(data), at + chance.choice((1, 2, 8, 40, 200)))
        mishap = chance.randrange(9)
        if mishap == 0 and data:
            data[chance.randrange(len(data))] = chance.randrange(256)
        elif mishap == 1:
            del data[at:end]
        elif mishap == 2:
            data[at:at] = data[at:end] * chance.choice((1, 2, 12))
        elif mishap == 3:
            data[at:at] = chance.choice(_TOKENS)
        elif mishap == 4:
            data[at:end] = chance.choice(_TOKENS)
        elif mishap == 5:
            lines = bytes(data).split(b"\n")
            chance.shuffle(lines)
            data = bytearray(b"\n".join(lines))
        elif mishap == 6:
            data = bytearray(bytes(data).replace(*chance.sample(_TOKENS[:8], 2)))
        elif mishap == 7:
            other = chance.choice(others)
            data[at:] = other[chance.randrange(len(other)) :]
        else:
            del data[at:]
    return bytes(data)


def cases(count: int, seed: int) -> Iterator[tuple[bytes, dict[str, str]]]:
    """Yield damaged files and choices, the same for the same seed."""
    chance = random.Random(seed)
    sound = seeds()
    for _ in range(count):
        yield mutated(chance.choice(sound), sound, chance), chance.choice(_CHOICES)


def check(raw: bytes, choices: dict[str, str]) -> tuple[str, float]:
    """Read one file, fail on anything but a sound answer; return its format and the seconds."""
    from evenkelvin import desk

    request = {
        "ask": "import",
        "file_name": "fuzz",
        "bytes_base64": base64.b64encode(raw).decode(),
        "choices": choices,
    }
    start = time.perf_counter()
    answer = desk.answer(request)
    taken = time.perf_counter() - start
    if taken > LONGEST:
        start = time.perf_counter()
        desk.answer(request)
        taken = time.perf_counter() - start
    assert taken <= LONGEST, f"{taken:.2f} s for {raw[:200]!r}"
    if not raw:
        assert "empty" in answer["problems"][0]["message"]
        return "empty", taken
    json.dumps(answer, allow_nan=False)
    assert answer["spectra"] or answer.get("readings") or answer["problems"], raw
    for found in answer["spectra"]:
        nm, values = found["wavelengths_nm"], found["values"]
        assert len(nm) == len(values) >= 8, raw
        assert all(a < b for a, b in pairwise(nm)), raw
        assert found["name"], raw
    for problem in answer["problems"]:
        assert problem["message"].endswith((".", "?")), problem
        assert problem.get("line", 1) >= 0, problem
    return answer["format"], taken


def main() -> None:
    """Run as many files as asked and tell what came of them."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 200_000
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 2026
    formats: Counter[str] = Counter()
    longest, start = 0.0, time.perf_counter()
    for number, (raw, choices) in enumerate(cases(count, seed)):
        try:
            kind, taken = check(raw, choices)
        except BaseException:
            print(f"file {number}: {raw!r} with {choices}", file=sys.stderr)
            raise
        formats[kind] += 1
        longest = max(longest, taken)
    print(f"{count} files in {time.perf_counter() - start:.0f} s, the slowest {longest:.3f} s")
    for kind, times in formats.most_common():
        print(f"{times:8d} {kind}")


if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).parents[2] / "kernel"))
    main()
