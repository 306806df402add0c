"""Pictures of displays as a phone takes them, made from a seed: no instrument is imitated.

A display here is a few rows or tiles of labels, numbers and units in fonts that come with
matplotlib and Pillow, or in segments drawn below; held at a tilt, seen from the side, blurred,
noisy, with glare and moiré. What it shows is invented, and known.
"""

from __future__ import annotations

import io
import math
import random
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import matplotlib
import numpy as np
from PIL import Image, ImageDraw, ImageFilter, ImageFont

from evenkelvin.colorimetry.temperature import cct_to_xy

#: The seed of a display with x y, CCT, Duv and lux that is easily read.
CLEAR = 4
_FONTS = ("DejaVuSans", "DejaVuSans-Bold", "DejaVuSansMono", "DejaVuSansMono-Bold", "DejaVuSerif")
_LABELS = {
    "cct_K": ("CCT", "Tcp", "Farbtemperatur", "Temp. couleur"),
    "x": ("x", "CIE x"),
    "y": ("y", "CIE y"),
    "duv": ("Duv", "Δuv"),
    "illuminance_lx": ("Lux", "E", "Beleuchtungsstärke", "Éclairement", "Iluminancia"),
    "ra": ("Ra", "CRI Ra", "CRI"),
    "r9": ("R9",),
    "u_prime": ("u'",),
    "v_prime": ("v'",),
    "peak": ("λp", "Peak"),
    "integration": ("Time", "Zeit"),
    "tlci": ("TLCI",),
    "rf": ("Rf",),
    "rg": ("Rg",),
}
_SEGMENTS = {
    "0": "abcdef", "1": "bc", "2": "abged", "3": "abgcd", "4": "fgbc", "5": "afgcd",
    "6": "afgedc", "7": "abc", "8": "abcdefg", "9": "abcdfg", "-": "g", " ": "", "+": "",
}  # fmt: skip


@dataclass(frozen=True)
class Display:
    """A picture and what stands on it."""

    picture: bytes
    #: By field, as digits.
    shows: dict[str, str]
    segmented: bool
    size: tuple[int, int]

    @property
    def has_xy_and_cct(self) -> bool:
        return {"x", "y", "cct_K"} <= set(self.shows)


@cache
def _font(name: str, size: int) -> ImageFont.FreeTypeFont:
    if name == "plain":
        return ImageFont.load_default(size)  # type: ignore[return-value]
    folder = Path(matplotlib.get_data_path()) / "fonts" / "ttf"
    return ImageFont.truetype(str(folder / f"{name}.ttf"), size)


def _figures(chance: random.Random) -> dict[str, str]:
    """What a display could show of one light; x y, CCT and Duv belong together."""
    kelvin = round(math.exp(chance.uniform(math.log(2300), math.log(9000))))
    duv = chance.uniform(-0.008, 0.008)
    x, y = cct_to_xy(kelvin, duv)
    lux = 10 ** chance.uniform(0.7, 4.5)
    return {
        "cct_K": str(kelvin),
        "x": f"{x:.4f}",
        "y": f"{y:.4f}",
        "duv": f"{duv:+.4f}",
        "illuminance_lx": f"{lux:.0f}" if lux >= 100 else f"{lux:.1f}",
        "ra": f"{chance.uniform(60, 99):.1f}",
        "r9": f"{chance.uniform(-20, 98):.0f}",
        "u_prime": f"{4 * x / (-2 * x + 12 * y + 3):.4f}",
        "v_prime": f"{9 * y / (-2 * x + 12 * y + 3):.4f}",
        "peak": f"{chance.uniform(430, 640):.0f}",
        "integration": f"{chance.choice([5, 12, 40, 100, 250]):d}",
        "tlci": f"{chance.uniform(40, 99):.0f}",
        "rf": f"{chance.uniform(60, 97):.0f}",
        "rg": f"{chance.uniform(85, 110):.0f}",
    }


_UNITS = {"cct_K": "K", "illuminance_lx": "lx", "peak": "nm", "integration": "ms"}
_SHOWN = (
    ("x", "y", "cct_K"),
    ("cct_K", "x", "y", "duv"),
    ("cct_K", "duv", "x", "y", "illuminance_lx"),
    ("illuminance_lx", "cct_K", "x", "y", "duv", "ra"),
    ("cct_K", "duv", "illuminance_lx", "ra", "r9", "x", "y", "u_prime", "v_prime", "peak"),
    ("x", "y", "illuminance_lx"),
    ("cct_K", "duv", "illuminance_lx"),
    ("cct_K",),
)


def _shown(chance: random.Random) -> dict[str, str]:
    """Draw which figures a display shows, in their order."""
    figures = _figures(chance)
    fields = list(chance.choices(_SHOWN, weights=(3, 4, 5, 4, 3, 1, 1, 1))[0])
    if len(fields) >= 10 and chance.random() < 0.4:
        fields += ["integration", "tlci", "rf", "rg"]
    if chance.random() < 0.3:
        chance.shuffle(fields)
        if "x" in fields and "y" in fields:
            fields.remove("y")
            fields.insert(fields.index("x") + 1, "y")
    return {name: figures[name] for name in fields}


def first_showing(fields: set[str], seeds: Iterable[int]) -> Display:
    """Return the first of some displays that shows these figures and no other."""
    return display(next(seed for seed in seeds if set(_shown(random.Random(seed))) == fields))


@cache
def display(seed: int, *, segmented: bool | None = None) -> Display:
    """Return the picture of a seed; the same seed gives the same picture."""
    chance = random.Random(seed)
    shown = _shown(chance)
    if segmented is None:
        segmented = len(shown) <= 6 and chance.random() < 0.12
    screen = _screen(chance, shown, segmented)
    photo = _photographed(chance, screen)
    data = io.BytesIO()
    photo.save(data, "JPEG", quality=chance.choice([75, 88, 93]))
    return Display(data.getvalue(), shown, segmented, photo.size)


def _screen(chance: random.Random, shown: dict[str, str], segmented: bool) -> Image.Image:
    """Draw the display itself, straight on."""
    em = 64
    font = chance.choice((*_FONTS, "plain"))
    dark = chance.random() < 0.5
    back = chance.randint(0, 40) if dark else chance.randint(200, 255)
    ink = chance.randint(190, 255) if dark else chance.randint(0, 60)
    tiles = chance.random() < 0.4 and not segmented
    language = chance.randint(0, 4)
    columns = 2 if len(shown) > 6 or (tiles and len(shown) > 2) else 1
    width = 1260 if columns == 2 else 680
    high = em * 2.3 if tiles else em * 1.6
    rows = math.ceil(len(shown) / columns)
    picture = Image.new("L", (width, int(high * rows + em)), back)
    draw = ImageDraw.Draw(picture)
    for index, (name, figure) in enumerate(shown.items()):
        options = _LABELS[name]
        label = options[language % len(options)]
        left = 40 + (index % columns) * width // columns
        top = int(em * 0.5 + (index // columns) * high)
        unit = _UNITS.get(name, "")
        if tiles:
            draw.text((left, top), label, ink, _font(font, int(em * 0.55)))
            top += int(em * 0.65)
            at = left
        else:
            room = 300 if columns == 1 else 220
            small = em if len(label) < 5 else int(em * 0.55)
            while draw.textlength(label, _font(font, small)) > room - 14:
                small -= 2
            draw.text((left, top + em - small), label, ink, _font(font, small))
            at = left + room
        if segmented:
            at = _draw_segments(draw, figure, at, top, em, ink)
        else:
            draw.text((at, top), figure, ink, _font(font, em))
            at += int(draw.textlength(figure, _font(font, em)))
        if unit:
            draw.text((at + 14, top + em - int(em * 0.6)), unit, ink, _font(font, int(em * 0.6)))
    return picture


def _draw_segments(
    draw: ImageDraw.ImageDraw, figure: str, left: int, top: int, em: int, ink: int
) -> int:
    """Draw digits of seven slanted bars, and return where they end."""
    wide, thick, gap = int(em * 0.5), max(5, em // 8), 2
    for sign in figure:
        if sign == ".":
            draw.ellipse((left - 4, top + em - thick, left + thick - 4, top + em), fill=ink)
            left += thick + 4
            continue
        half = em // 2
        bars = {
            "a": (gap, 0, wide - gap, thick),
            "g": (gap, half - thick // 2, wide - gap, half + thick // 2),
            "d": (gap, em - thick, wide - gap, em),
            "f": (0, gap, thick, half - gap),
            "b": (wide - thick, gap, wide, half - gap),
            "e": (0, half + gap, thick, em - gap),
            "c": (wide - thick, half + gap, wide, em - gap),
        }
        lit = _SEGMENTS[sign]
        for name, (x0, y0, x1, y1) in bars.items():
            if name in lit:
                corners = [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
                draw.polygon([(left + x + (em - y) // 10, top + y) for x, y in corners], fill=ink)
        if sign == "+":
            draw.rectangle((left + 4, top + half - 3, left + wide - 4, top + half + 3), fill=ink)
            middle = left + wide // 2
            draw.rectangle((middle - 3, top + half - 16, middle + 3, top + half + 16), fill=ink)
        left += wide + em // 5
    return left


def _photographed(chance: random.Random, screen: Image.Image) -> Image.Image:
    """Take the picture of a display: tilt, perspective, blur, glare, moiré, noise."""
    short = chance.choice([480, 600, 720, 960, 1080, 1440, 3000])
    wide, high = (short, short * 4 // 3) if chance.random() < 0.5 else (short * 4 // 3, short)
    # The display fills most of the frame that the person puts it into.
    scale = chance.uniform(0.66, 0.86) * min(wide / screen.width, high / screen.height)
    tilt = math.radians(chance.triangular(-15, 15, 0))
    half_w, half_h = screen.width * scale / 2, screen.height * scale / 2
    room = min(
        1.0,
        0.96 * wide / 2 / (half_w * abs(math.cos(tilt)) + half_h * abs(math.sin(tilt))),
        0.96 * high / 2 / (half_w * abs(math.sin(tilt)) + half_h * abs(math.cos(tilt))),
    )
    half_w, half_h = half_w * room, half_h * room
    corners = []
    for cx, cy in ((-1, -1), (1, -1), (1, 1), (-1, 1)):
        x = cx * half_w * (1 + chance.uniform(-0.05, 0.05))
        y = cy * half_h * (1 + chance.uniform(-0.05, 0.05))
        corners.append(
            (
                wide / 2 + x * math.cos(tilt) - y * math.sin(tilt),
                high / 2 + x * math.sin(tilt) + y * math.cos(tilt),
            )
        )
    around = chance.randint(20, 200)
    size = (wide, high)
    warp = _perspective(corners, screen.size)
    small = screen
    if scale * room < 0.5:
        # As a lens does: what is far smaller is averaged, not picked.
        small = screen.filter(ImageFilter.GaussianBlur(0.35 / (scale * room)))
    photo = Image.new("L", size, around)
    mask = Image.new("L", screen.size, 255).transform(
        size, Image.Transform.PERSPECTIVE, warp, Image.Resampling.BILINEAR
    )
    seen = small.transform(size, Image.Transform.PERSPECTIVE, warp, Image.Resampling.BICUBIC)
    photo.paste(seen, (0, 0), mask)
    digit = 64 * scale * room
    blur = chance.triangular(0.0, 0.06, 0.01) * digit
    photo = photo.filter(ImageFilter.GaussianBlur(blur))
    values = np.asarray(photo, dtype=np.float32)
    rows, cols = np.mgrid[0:high, 0:wide].astype(np.float32)
    # Light falls unevenly, and a lamp shows in the glass.
    values = values * (1 + chance.uniform(-0.25, 0.25) * (cols / wide - 0.5) * 2)
    if chance.random() < 0.35:
        gx, gy = chance.uniform(0, wide), chance.uniform(0, high)
        reach = chance.uniform(0.1, 0.3) * wide
        spot = np.exp(-(((cols - gx) / reach) ** 2 + ((rows - gy) / reach) ** 2))
        values = values + chance.uniform(20, 90) * spot
    if chance.random() < 0.3:
        pitch, lean = chance.uniform(2.5, 9.0), chance.uniform(-0.5, 0.5)
        stripes = np.sin(2 * np.pi * (rows + lean * cols) / pitch)
        values = values + chance.uniform(3, 12) * stripes
    noise = np.random.default_rng(chance.randint(0, 2**31)).normal(
        0, chance.uniform(1, 9), values.shape
    )
    values = np.clip(values * chance.uniform(0.6, 1.05) + noise, 0, 255)
    return Image.fromarray(values.astype(np.uint8))


def _perspective(corners: list[tuple[float, float]], size: tuple[int, int]) -> list[float]:
    """Return Pillow's eight coefficients, from the picture's corners to the screen's."""
    wide, high = size
    targets = ((0, 0), (wide, 0), (wide, high), (0, high))
    equations, right = [], []
    for (x, y), (u, v) in zip(corners, targets, strict=True):
        equations += [[x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]]
        right += [u, v]
    return list(np.linalg.solve(np.array(equations), np.array(right)))
