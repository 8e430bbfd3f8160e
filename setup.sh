#!/bin/sh
# Makes .venv with the program and its tests in it; on Debian and Ubuntu first installs what a bare
# system lacks for that. It asks for a password only where something is lacking and you are not root.
set -eu
cd "$(dirname "$0")"

complete() {
  python3 -c 'import ctypes, ensurepip; [ctypes.CDLL(f"lib{n}.so.1") for n in ("GL", "EGL")]' 2>/dev/null
}

if [ "$(uname)" = Linux ] && ! complete; then
  if ! command -v apt-get >/dev/null; then
    echo "setup: install Python with venv, libGL.so.1 and libEGL.so.1 with your system's tools, then run this again" >&2
    exit 1
  fi
  [ "$(id -u)" = 0 ] && root= || root=sudo
  $root apt-get update -qq
  $root env DEBIAN_FRONTEND=noninteractive apt-get install -qq -y --no-install-recommends \
    ca-certificates libegl1 libgl1 python3 python3-venv >/dev/null
fi

python3 -c 'import sys; sys.exit(0 if (3, 11) <= sys.version_info[:2] <= (3, 13) else "setup: Python 3.11 to 3.13 is needed, here is " + sys.version.split()[0])'
python3 -m venv .venv
.venv/bin/pip install --quiet --disable-pip-version-check -e '.[dev]'
