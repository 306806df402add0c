"""The engines beside Chromium: Firefox and WebKitGTK, as Debian has them, behind the same hands.

Each is driven through its own maintained client, without a driver program that no registry
carries: Firefox by Marionette, the protocol it serves itself; WebKitGTK's small browser by its
WebDriver, on a screen in memory. Neither client sees every request, so each engine is told that
the way to all other hosts is a proxy of ours, which writes down what it is asked and refuses it.
"""

from __future__ import annotations

import gc
import http.server
import os
import shutil
import socket
import subprocess
import threading
import time
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any, Protocol, TypeVar

T = TypeVar("T")

#: Set to "required" where every engine has to be there: then a missing one is a failure.
DEMAND = "EVENKELVIN_ENGINES"

PHONE = {"width": 390, "height": 844}

#: After so many seconds without an answer a browser is taken for lost.
LONGEST_ANSWER = 90


class Elsewhere:
    """All other hosts: a proxy that writes down what is asked of it, and refuses."""

    def __init__(self) -> None:
        asked: list[str] = []

        class Refuse(http.server.BaseHTTPRequestHandler):
            def refuse(self) -> None:
                asked.append(f"{self.command} {self.path}")
                self.send_error(502)

            do_GET = do_HEAD = do_POST = do_PUT = do_OPTIONS = do_CONNECT = refuse  # noqa: N815

            def log_message(self, format: str, *args: object) -> None:
                """The list is the log."""

        self.asked = asked
        self.server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Refuse)
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

    def capability(self) -> dict[str, Any]:
        """As W3C WebDriver's capability `proxy` has it; localhost is never asked of a proxy."""
        host = f"127.0.0.1:{self.server.server_address[1]}"
        return {
            "proxyType": "manual",
            "httpProxy": host,
            "sslProxy": host,
            "noProxy": ["localhost"],
        }

    def close(self) -> None:
        self.server.shutdown()
        self.server.server_close()


class Element(Protocol):
    """What both clients let one do with a part of the page."""

    @property
    def text(self) -> str: ...

    def click(self) -> None: ...

    def send_keys(self, text: str) -> None: ...


class Engine:
    """One running browser with a fresh profile."""

    #: As the trade calls it; also what tests and rows of the bench are named after.
    name: str
    #: The Debian packages that bring it.
    packages: str

    @classmethod
    def missing(cls) -> str:
        """What this machine lacks for it, or nothing."""
        raise NotImplementedError

    def __init__(self, elsewhere: Elsewhere, folder: Path) -> None:
        raise NotImplementedError

    @property
    def version(self) -> str:
        raise NotImplementedError

    def open(self, address: str) -> None:
        raise NotImplementedError

    def run(self, script: str) -> Any:
        """What the body of a function returns when run in the page."""
        raise NotImplementedError

    def elements(self, path: str) -> Sequence[Element]:
        """Every part of the page that an XPath finds."""
        raise NotImplementedError

    def close(self) -> None:
        raise NotImplementedError

    def lives(self) -> bool:
        """Whether it still answers."""
        try:
            return bool(self.run("return true"))
        except Exception:
            return False

    def reload(self) -> None:
        """As a person does; a driver's own command may go past the service worker."""
        self.run("window.left = true; location.reload()")
        until(lambda: self.run("return !window.left && document.readyState === 'complete'"))

    def find(self, path: str) -> Element:
        """The one part that an XPath finds, once it is there."""
        return until(lambda: self.elements(path))[0]

    def labelled(self, label: str) -> Element:
        """The field that a label in the page is for."""
        return self.find(f"//*[@id = //label[normalize-space() = '{label}']/@for]")

    def button(self, words: str) -> Element:
        return self.find(f"//button[normalize-space() = '{words}']")

    def state(self, name: str) -> str | None:
        """How far the app says that it has come: `kernel` or `offline`."""
        value: str | None = self.run(f"return document.documentElement.dataset.{name}")
        return value

    def wait_for_kernel(self) -> None:
        until(lambda: self.state("kernel") in ("ready", "failed"))
        assert self.state("kernel") == "ready"

    def wait_until_kept(self) -> None:
        until(lambda: self.state("offline") == "ready")


class Firefox(Engine):
    name = "Firefox"
    packages = "firefox-esr"

    @classmethod
    def missing(cls) -> str:
        return "" if cls.program() else "no firefox-esr"

    @staticmethod
    def program() -> str | None:
        # Not just any firefox: one that is packed in a sandbox cannot be handed a profile.
        return shutil.which("firefox-esr")

    def __init__(self, elsewhere: Elsewhere, folder: Path) -> None:
        from marionette_driver.marionette import Marionette

        # Firefox's own services are silenced, and it falls rather than reach another machine.
        os.environ["MOZ_DISABLE_NONLOCAL_CONNECTIONS"] = "1"
        self.client = Marionette(
            app="fxdesktop",
            bin=self.program(),
            port=0,
            headless=True,
            workspace=str(folder),
            gecko_log=str(folder / "firefox.log"),
        )
        self.client.start_session({"proxy": elsewhere.capability()})
        self.client.set_window_rect(**PHONE)

    @property
    def version(self) -> str:
        return str(self.client.session_capabilities["browserVersion"])

    def open(self, address: str) -> None:
        self.client.navigate(address)

    def run(self, script: str) -> Any:
        return self.client.execute_script(script, sandbox=None)

    def elements(self, path: str) -> Sequence[Element]:
        found: Sequence[Element] = self.client.find_elements("xpath", path)
        return found

    def close(self) -> None:
        self.client.cleanup()
        del self.client
        gc.collect()  # it tidies up once more when forgotten, which fails when Python is ending


class WebKit(Engine):
    name = "WebKitGTK"
    packages = "webkit2gtk-driver xvfb"

    @classmethod
    def missing(cls) -> str:
        lacking = [name for name in ("WebKitWebDriver", "Xvfb") if not shutil.which(name)]
        if not cls.program():
            lacking.append("MiniBrowser")
        return f"no {' and no '.join(lacking)}" if lacking else ""

    @staticmethod
    def program() -> str | None:
        """WebKitGTK's own small browser; it lies beside the library, not among the programs."""
        found = sorted(Path("/usr/lib").glob("*/webkit2gtk-4.*/MiniBrowser"))
        return str(found[-1]) if found else None

    def __init__(self, elsewhere: Elsewhere, folder: Path) -> None:
        from selenium import webdriver
        from selenium.webdriver.common.proxy import Proxy

        self.screen, display = screen_in_memory()
        options = webdriver.WebKitGTKOptions()
        options.binary_location = self.program() or ""
        options.add_argument("--automation")
        options.proxy = Proxy(elsewhere.capability())
        environment = {**os.environ, "DISPLAY": display, "GDK_BACKEND": "x11"}
        service = webdriver.WebKitGTKService(env=environment)
        # A browser that fell is not waited for: the client takes its patience from the default.
        before = socket.getdefaulttimeout()
        socket.setdefaulttimeout(LONGEST_ANSWER)
        try:
            self.client = webdriver.WebKitGTK(options=options, service=service)
        except BaseException:
            self.screen.terminate()
            raise
        finally:
            socket.setdefaulttimeout(before)
        self.client.set_window_rect(**PHONE)

    @property
    def version(self) -> str:
        return str(self.client.capabilities["browserVersion"])

    def open(self, address: str) -> None:
        self.client.get(address)

    def run(self, script: str) -> Any:
        return self.client.execute_script(script)

    def elements(self, path: str) -> Sequence[Element]:
        found: Sequence[Element] = self.client.find_elements("xpath", path)
        return found

    def close(self) -> None:
        try:
            self.client.quit()
        finally:
            self.screen.terminate()
            self.screen.wait()


ENGINES: list[type[Engine]] = [WebKit, Firefox]


def not_run(engine: type[Engine]) -> str:
    """Why nothing can be run in this engine here, as a sentence; nothing where it can."""
    lacking = engine.missing()
    return lacking and (
        f"{engine.name} not run: {lacking} on this machine "
        f"(Debian: apt-get install {engine.packages})."
    )


def engines_not_run() -> list[str]:
    """Why, for every engine that this machine lacks."""
    return [why for engine in ENGINES if (why := not_run(engine))]


def screen_in_memory() -> tuple[subprocess.Popen[bytes], str]:
    """Start an X server that draws nowhere; returns it and the display's name."""
    read, write = os.pipe()
    command = ["Xvfb", "-displayfd", str(write), "-screen", "0", "800x1000x24", "-nolisten", "tcp"]
    server = subprocess.Popen(command, pass_fds=[write], stderr=subprocess.DEVNULL)
    os.close(write)
    with os.fdopen(read) as told:
        return server, f":{told.readline().strip()}"


def until(check: Callable[[], T], seconds: float = 240) -> T:
    """What a check gives, once that is something."""
    give_up = time.monotonic() + seconds
    while not (found := check()):
        assert time.monotonic() < give_up, "It did not come to pass."
        time.sleep(0.05)
    return found
