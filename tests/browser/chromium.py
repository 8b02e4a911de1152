"""A headless Chromium driven by its own protocol over a pair of pipes; no driver, no network.

The protocol is JSON: a command with a number, an answer with the same number, and events between.
One process serves a whole module of tests: starting it is what takes time.
Source: Chrome DevTools Protocol, https://chromedevtools.github.io/devtools-protocol/.
"""

import base64
import json
import os
import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path
from types import TracebackType
from typing import Any, Self

Data = dict[str, Any]

_FLAGS = (
    "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--hide-scrollbars",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
    "--disable-dev-shm-usage", "--remote-debugging-pipe",
)  # fmt: skip
HOW_TO_INSTALL = "Chromium is not installed: apt-get update && apt-get install -y chromium"
_NAMES = ("chromium", "chromium-browser", "google-chrome")
_SHELL = "/bin/bash"  # the plain shell knows no file descriptor above 9
_END = b"\0"


def chromium() -> str | None:
    """Where Chromium is, if it is installed."""
    return next((found for name in _NAMES if (found := shutil.which(name))), None)


class Browser:
    """A running Chromium with one page, to be used in a `with`."""

    def __init__(self, program: str, profile: Path) -> None:
        ours, its = os.pipe(), os.pipe()
        # The protocol is read at file descriptor 3 and written at 4.
        wanted = f'exec "$0" "$@" 3<&{ours[0]} 4>&{its[1]}'
        flags = (*_FLAGS, f"--user-data-dir={profile}", "about:blank")
        self._process = subprocess.Popen(  # noqa: S603  the browser found on this machine
            [_SHELL, "-c", wanted, program, *flags],
            pass_fds=(ours[0], its[1]),
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        os.close(ours[0])
        os.close(its[1])
        self._write, self._read = os.fdopen(ours[1], "wb"), os.fdopen(its[0], "rb")
        self._number, self._rest, self._session = 0, b"", ""
        self.events: list[Data] = []

    def __enter__(self) -> Self:
        targets = self.ask("Target.getTargets")["targetInfos"]
        page = next(each["targetId"] for each in targets if each["type"] == "page")
        attached = self.ask("Target.attachToTarget", targetId=page, flatten=True)
        self._session = attached["sessionId"]
        for domain in ("Page", "Runtime", "Log", "Network"):
            self.ask(f"{domain}.enable")
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._write.close()
        self._process.terminate()
        self._process.wait(timeout=20)
        self._read.close()

    def ask(self, method: str, **parameters: object) -> Data:
        """What Chromium answers to a command; raises `RuntimeError` where it refuses."""
        self._number += 1
        message: Data = {"id": self._number, "method": method, "params": parameters}
        if self._session:
            message["sessionId"] = self._session
        self._write.write(json.dumps(message).encode() + _END)
        self._write.flush()
        for answer in self._messages():
            if answer.get("id") == self._number:
                if "error" in answer:
                    raise RuntimeError(f"{method}: {answer['error']['message']}")
                return dict(answer["result"])
            self.events.append(answer)
        raise RuntimeError(f"{method}: Chromium has ended")

    def open(self, file: Path, width: int, height: int, *, dark: bool = False) -> None:
        """Shows a file on a screen of that size, and waits until it is drawn."""
        scheme = "dark" if dark else "light"
        self.ask("Emulation.setDeviceMetricsOverride", width=width, height=height,
                 deviceScaleFactor=1, mobile=width < 600)  # fmt: skip
        features = [{"name": "prefers-color-scheme", "value": scheme}]
        self.ask("Emulation.setEmulatedMedia", media="", features=features)
        self.events.clear()
        self.ask("Page.navigate", url=file.as_uri())
        self._wait_for("Page.loadEventFired")

    def tell(self, script: str) -> Any:
        """What an expression of JavaScript comes to, once it has settled."""
        answer = self.ask(
            "Runtime.evaluate", expression=script, returnByValue=True, awaitPromise=True
        )
        if "exceptionDetails" in answer:
            raise RuntimeError(str(answer["exceptionDetails"]))
        return answer["result"].get("value")

    def printed(self, width: float, height: float) -> bytes:
        """The page as a PDF, on paper of that size in inches."""
        answer = self.ask(
            "Page.printToPDF", paperWidth=width, paperHeight=height, preferCSSPageSize=False,
            generateTaggedPDF=True, generateDocumentOutline=True,
        )  # fmt: skip
        return base64.b64decode(answer["data"])

    def picture(self, *, whole: bool = True) -> bytes:
        """The page as a PNG."""
        answer = self.ask("Page.captureScreenshot", format="png", captureBeyondViewport=whole)
        return base64.b64decode(answer["data"])

    def complaints(self) -> list[str]:
        """What was written to the console, logged, or asked of a network since it was opened."""
        self.tell("0")
        return [
            f"{each['method']}: {json.dumps(each['params'])[:300]}"
            for each in self.events
            if each["method"] in ("Runtime.consoleAPICalled", "Runtime.exceptionThrown")
            or each["method"] in ("Log.entryAdded", "Network.loadingFailed")
        ]

    def _wait_for(self, method: str) -> None:
        if any(each["method"] == method for each in self.events):
            return
        for event in self._messages():
            self.events.append(event)
            if event.get("method") == method:
                return
        raise RuntimeError(f"{method} never came")

    def _messages(self) -> Iterator[Data]:
        while True:
            while _END in self._rest:
                whole, _, self._rest = self._rest.partition(_END)
                yield json.loads(whole)
            read = os.read(self._read.fileno(), 1 << 16)
            if not read:
                return
            self._rest += read
