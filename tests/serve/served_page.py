"""The page as it is served without a socket, and a browser for it."""

import asyncio
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import httpx
from starlette.types import ASGIApp

from tapmodel.serve.app import application
from tapmodel.serve.asked import Opening
from tapmodel.serve.building.builds import Builds

HOST, TOKEN = "127.0.0.1:8123", "the-token"
JSON = "application/json"


@dataclass(frozen=True)
class Served:
    """A page that is served, and a browser for it."""

    app: ASGIApp
    builds: Builds

    def client(self) -> httpx.AsyncClient:
        """To ask several things at once."""
        transport = httpx.ASGITransport(self.app, raise_app_exceptions=False)
        return httpx.AsyncClient(transport=transport, base_url=f"http://{HOST}")

    def ask(self, method: str, path: str, **request: Any) -> httpx.Response:  # noqa: ANN401  (as the client's)
        """Ask by a whole path."""

        async def once() -> httpx.Response:
            async with self.client() as client:
                return await client.request(method, path, **request)

        return asyncio.run(once())

    def get(self, path: str, **headers: str) -> httpx.Response:
        """Ask by a path behind the token."""
        return self.ask("GET", f"/{TOKEN}/{path}", headers=headers)

    def post(self, path: str, body: object, **headers: str) -> httpx.Response:
        """Post JSON."""
        return self.ask("POST", f"/{TOKEN}/{path}", json=body, headers=headers)

    def send(self, path: str, content: Any) -> httpx.Response:  # noqa: ANN401  (as the client's)
        """Post bytes, or pieces of them."""
        headers = {"content-type": JSON}
        return self.ask("POST", f"/{TOKEN}/{path}", content=content, headers=headers)

    def delete(self, path: str) -> httpx.Response:
        """Have done with what stands there."""
        return self.ask("DELETE", f"/{TOKEN}/{path}")

    def folders(self) -> list[Path]:
        """Of builds, as they lie on the disk."""
        return [*self.builds._root.iterdir()]


M10 = Opening(job={"designation": "M10"})


def serving(builds: Builds, first: Opening = M10) -> Served:
    return Served(application(TOKEN, {HOST}, first, builds), builds)
