"""The page as it is served by a process of its own."""

import http.client
import json
import os
import subprocess
import sys
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

SERVE = [sys.executable, "-m", "tapmodel", "serve"]
COMMAND = [*SERVE, "--no-browser"]


@dataclass
class Running:
    """A server in a process of its own."""

    process: subprocess.Popen[str]
    link: str
    folder: Path

    def ask(self, method: str, path: str, body: object = None, **headers: str) -> tuple[int, bytes]:
        """By a path just as it is; behind the token unless it begins with a stroke."""
        _, _, host, token = self.link.rstrip("/").split("/")
        text = None if body is None else json.dumps(body)
        kind = {} if body is None else {"content-type": "application/json"}
        whole = path if path.startswith("/") else f"/{token}/{path}"
        with closing(http.client.HTTPConnection(host, timeout=30)) as connection:
            connection.request(method, whole, text, kind | headers)
            answer = connection.getresponse()
            return answer.status, answer.read()

    def ended_by(self, ending: int) -> tuple[int, str]:
        """Exit code, and what was told on stderr."""
        self.process.send_signal(ending)
        _, told = self.process.communicate(timeout=20)
        return self.process.returncode, told


def start(folder: Path, *words: str, browser: Path | None = None) -> Running:
    process = subprocess.Popen(
        [*(SERVE if browser else COMMAND), *words],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env=os.environ | {"TMPDIR": str(folder), "BROWSER": str(browser)},
        start_new_session=True,
    )
    assert process.stdout
    return Running(process, process.stdout.readline().strip(), folder)
