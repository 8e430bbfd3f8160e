"""Node in the folder of the page's script."""

import subprocess
from pathlib import Path

SCRIPT = Path(__file__).parents[2] / "tapmodel" / "report" / "page" / "script"


class Run:
    """Runs node and keeps what it says."""

    def __init__(self, node: str) -> None:
        """With this node."""
        self._node = node

    def __call__(self, *arguments: str) -> str:
        """What it says; a failure fails the test with all of it."""
        command = [self._node, *arguments]
        done = subprocess.run(
            command, cwd=SCRIPT, capture_output=True, text=True, timeout=300, check=False
        )
        assert done.returncode == 0, done.stdout + done.stderr
        return done.stdout
