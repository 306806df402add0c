"""Make kernel/evenkelvin/data from colour-science.

The ``tlci2012_*.csv`` tables are not in its release: they are committed as they are, and left
alone.

Run by ``python3 build.py data``. Nothing here ships with the kernel; a test proves that the
committed tables equal what this makes.
"""

from __future__ import annotations

import sys
from pathlib import Path

import colour
import numpy as np
from colour.colorimetry import SDS_BASIS_FUNCTIONS_CIE_ILLUMINANT_D_SERIES
from colour.quality.cfi2017 import load_TCS_CIE2017
from colour.quality.datasets import SDS_TCS

GRID = colour.SpectralShape(380, 780, 5)

#: Illuminants of CIE 15:2018 and CIE 015 annexes kept as stand-ins, in the order of the table.
ILLUMINANTS = [
    "A", "C", "D50", "D55", "D65", "D75", "E",
    *(f"FL{i}" for i in range(1, 13)),
    *(f"FL3.{i}" for i in range(1, 16)),
    *(f"HP{i}" for i in range(1, 6)),
    "LED-B1", "LED-B2", "LED-B3", "LED-B4", "LED-B5", "LED-BH1", "LED-RGB1", "LED-V1", "LED-V2",
]  # fmt: skip


def _write(path: Path, comment: str, header: list[str], columns: list[np.ndarray]) -> None:
    lines = [f"# {comment}", ",".join(header)]
    for row in zip(*columns, strict=True):
        lines.append(",".join(f"{value:.10g}" for value in row))
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")


def main(out_dir: Path) -> None:
    """Write every table into ``out_dir``."""
    out_dir.mkdir(parents=True, exist_ok=True)
    made = f"made by 'build.py data' from colour-science {colour.__version__}"

    observer = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy()
    observer = observer.align(colour.SpectralShape(360, 830, 1))
    _write(
        out_dir / "cie1931_2deg.csv",
        f"CIE 1931 2-degree standard colorimetric observer (ISO/CIE 11664-1), 1 nm; {made}",
        ["wavelength_nm", "x_bar", "y_bar", "z_bar"],
        [observer.wavelengths, *observer.values.T],
    )

    daylight = SDS_BASIS_FUNCTIONS_CIE_ILLUMINANT_D_SERIES
    shape = colour.SpectralShape(300, 830, 5)
    components = [daylight[name].copy().align(shape) for name in daylight]
    _write(
        out_dir / "cie_daylight.csv",
        f"CIE daylight components S0, S1, S2 (CIE 15:2018, table 6), 5 nm; {made}",
        ["wavelength_nm", *(name.lower() for name in daylight)],
        [components[0].wavelengths, *(component.values for component in components)],
    )

    spectra = [colour.SDS_ILLUMINANTS[name].copy().align(GRID) for name in ILLUMINANTS]
    _write(
        out_dir / "cie_illuminants.csv",
        f"CIE illuminants (CIE 15:2018, tables 5 to 12), relative power, 5 nm; {made}",
        ["wavelength_nm", *ILLUMINANTS],
        [GRID.wavelengths, *(spectrum.values for spectrum in spectra)],
    )

    observer = colour.MSDS_CMFS["CIE 1964 10 Degree Standard Observer"].copy()
    observer = observer.align(colour.SpectralShape(380, 780, 1))
    _write(
        out_dir / "cie1964_10deg.csv",
        f"CIE 1964 10-degree standard colorimetric observer (ISO/CIE 11664-1), 1 nm; {made}",
        ["wavelength_nm", "x10_bar", "y10_bar", "z10_bar"],
        [observer.wavelengths, *observer.values.T],
    )

    # From 360 nm, where the published samples begin; sample 15 begins at 380 nm and is held there.
    shape = colour.SpectralShape(360, 780, 5)
    samples = [sample.copy().align(shape).values for sample in SDS_TCS["CIE 2024"].values()]
    _write(
        out_dir / "cie_test_colours.csv",
        "Radiance factors of the CIE test colours 1 to 14 (CIE 13.3-1995) and 15, Japanese "
        f"skin (CIE data set 10.25039/CIE.DS.7chm7z5h; the same as JIS Z 8726), 5 nm; {made}",
        ["wavelength_nm", *(f"r{number}" for number in range(1, 16))],
        [shape.wavelengths, *(sample.round(6) for sample in samples)],
    )

    evaluation = load_TCS_CIE2017(GRID).values.T
    _write(
        out_dir / "ces.csv",
        "Spectral reflectance of the 99 colour evaluation samples (CIE 224:2017; ANSI/IES "
        f"TM-30-20), 5 nm; {made}",
        ["wavelength_nm", *(f"ces{number}" for number in range(1, 100))],
        [GRID.wavelengths, *evaluation],
    )


if __name__ == "__main__":
    main(Path(sys.argv[1]))
