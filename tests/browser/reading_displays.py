"""Displays read one after the other on a page that has the reader, and how many were read right."""

from __future__ import annotations

import base64
import io
import tempfile
from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from PIL import Image
from playwright.sync_api import Page

from displays import Display, display

READ = """async text => {
    const element = document.querySelector("ek-read-display");
    const bytes = Uint8Array.from(atob(text), sign => sign.charCodeAt(0));
    const picture = await createImageBitmap(new Blob([bytes], {type: "image/jpeg"}));
    const start = performance.now();
    const {answer} = await element.readPicture(picture, picture.width, picture.height);
    return {ways: answer.ways, ms: performance.now() - start};
}"""
COLOURS = ("x", "y", "cct_K", "duv")


@dataclass
class Tally:
    """What became of displays."""

    #: Those with x y and CCT, and how many of them were read right at once.
    complete: int = 0
    right: int = 0
    #: Said to agree with a colour figure that is wrong by more than rounding.
    false: int = 0
    #: Taken with a wrong figure that nobody is asked to compare.
    silent: int = 0
    milliseconds: list[float] = field(default_factory=list)
    lines: list[str] = field(default_factory=list)

    @property
    def told(self) -> str:
        return f"{self.right} of {self.complete} right\n" + "\n".join(self.lines)

    def add(self, name: str, shown: Display, got: dict[str, Any]) -> None:
        self.milliseconds.append(got["ms"])
        nothing: dict[str, Any] = {"sure": "nothing", "numbers": [], "words": ""}
        way = got["ways"][0] if got["ways"] else nothing
        read = {number["field"]: number["text"] for number in way["numbers"]}
        wrong = [field for field, text in read.items() if differs(shown.shows.get(field), text)]
        colours = [field for field in wrong if field in COLOURS]
        sure = way["sure"] in ("agrees", "mended") and len(got["ways"]) == 1
        right = sure and not colours and {"x", "y"} <= set(read)
        if shown.has_xy_and_cct:
            self.complete += 1
            self.right += right
        self.false += way["sure"] == "agrees" and bool(colours)
        self.silent += bool(wrong) and "ompare" not in way["words"]
        if wrong or (shown.has_xy_and_cct and not right):
            self.lines.append(f"{name}: {way['sure']} {read} where it shows {shown.shows}")


def differs(shown: str | None, text: str) -> bool:
    """Tell whether a figure is another than that shown, rounding of its last place aside."""
    if shown is None:
        return True
    last = 10.0 ** -len(shown.partition(".")[2])
    return abs(float(text) - float(shown)) > 1.01 * last


def read_all(page: Page, seeds: Iterable[int]) -> Tally:
    tally = Tally()
    for seed in seeds:
        shown = display(seed)
        got = page.evaluate(READ, base64.b64encode(shown.picture).decode())
        tally.add(str(seed), shown, got)
    return tally


def film_of(shown: Display) -> Path:
    """A display as a camera's film, in the plainest format that Chromium takes for one."""
    photo = Image.open(io.BytesIO(shown.picture)).convert("L")
    photo.thumbnail((1280, 960))
    frame = Image.new("L", (1280, 960), 90)
    frame.paste(photo, ((1280 - photo.width) // 2, (960 - photo.height) // 2))
    grey = bytes([128]) * (1280 * 960 // 2)
    with tempfile.NamedTemporaryFile(suffix=".y4m", delete=False) as film:
        film.write(b"YUV4MPEG2 W1280 H960 F10:1 Ip A1:1 C420jpeg\n")
        film.write((b"FRAME\n" + frame.tobytes() + grey) * 2)
    return Path(film.name)


def camera_of(film: Path) -> list[str]:
    """The switches by which Chromium's camera shows a film, and nobody is asked for it."""
    return [
        "--use-fake-ui-for-media-stream",
        "--use-fake-device-for-media-stream",
        f"--use-file-for-fake-video-capture={film}",
    ]
