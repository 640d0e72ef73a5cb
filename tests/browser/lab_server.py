"""`subsearch lab` as a builder starts it, on a port of its own choice, with all its state in a temporary folder."""

import contextlib
import json
import os
import secrets
import signal
import subprocess
import sys
import time
import urllib.request
from pathlib import Path

SETTINGS = {
    "@jupyterlab/notebook-extension:tracker": {"windowingMode": "none"},  # every cell is in the page
    "@jupyterlab/docmanager-extension:plugin": {"autosave": False},
}
FOLDERS = {
    "JUPYTER_CONFIG_DIR": "config",
    "JUPYTER_DATA_DIR": "data",
    "JUPYTER_RUNTIME_DIR": "runtime",
    "JUPYTERLAB_SETTINGS_DIR": "settings",
    "JUPYTERLAB_WORKSPACES_DIR": "workspaces",
    "IPYTHONDIR": "ipython",
}
START_S = 90


class LabServer:
    """The server, started; `root` is the folder that the notebooks were copied into."""

    def __init__(self, root: Path, state: Path) -> None:
        self.root, self.state, self.token, self.url = root, state, secrets.token_hex(16), ""
        self.log = state / "server.log"
        folders = {name: state / folder for name, folder in FOLDERS.items()}
        for folder in folders.values():
            folder.mkdir(parents=True)
        self._configure(folders["JUPYTER_CONFIG_DIR"])
        env = {**os.environ, **{name: str(folder) for name, folder in folders.items()}, "JUPYTER_PREFER_ENV_PATH": "1"}
        command = [sys.executable, "-c", "from subsearch.cli import run; run()", "lab", str(root), "--no-browser"]
        with self.log.open("wb") as log:
            self.process = subprocess.Popen(
                command, cwd=state, env=env, stdin=subprocess.DEVNULL, stdout=log, stderr=log, start_new_session=True
            )
        self._wait(folders["JUPYTER_RUNTIME_DIR"] / f"jpserver-{self.process.pid}.json")

    def _configure(self, folder: Path) -> None:
        server = {
            "IdentityProvider": {"token": self.token},
            "ServerApp": {"port": 0, "ip": "127.0.0.1", "allow_root": True, "terminals_enabled": False},
            "LabApp": {"expose_app_in_browser": True},
        }
        (folder / "jupyter_server_config.json").write_text(json.dumps(server))
        (folder / "labconfig").mkdir()
        (folder / "labconfig" / "default_setting_overrides.json").write_text(json.dumps(SETTINGS))

    def _wait(self, info: Path) -> None:
        """Wait until the server has written the port that it bound, and answers there."""
        end = time.monotonic() + START_S
        while time.monotonic() < end:
            if self.process.poll() is not None:
                raise RuntimeError(f"the server ended with {self.process.returncode}:\n{self.tail()}")
            with contextlib.suppress(OSError, ValueError, KeyError):
                self.url = f"http://127.0.0.1:{json.loads(info.read_text())['port']}"
                urllib.request.urlopen(f"{self.url}/api/status?token={self.token}", timeout=2).read()
                return
            time.sleep(0.1)
        self.stop()
        raise TimeoutError(self.tail())

    def tail(self) -> str:
        """The last words of the server's log."""
        return self.log.read_text(errors="replace")[-3000:]

    def stop(self) -> None:
        """Ask the server to end; if it does not, end the group of processes that it started."""
        with contextlib.suppress(OSError):
            ask = urllib.request.Request(f"{self.url}/api/shutdown?token={self.token}", method="POST")
            urllib.request.urlopen(ask, timeout=5).read()
        for signal_sent in (None, signal.SIGTERM, signal.SIGKILL):
            if signal_sent is not None:
                with contextlib.suppress(ProcessLookupError):
                    os.killpg(self.process.pid, signal_sent)
            with contextlib.suppress(subprocess.TimeoutExpired):
                self.process.wait(8)
                return
