#!/usr/bin/env bash
# The language server with a client that has nothing to do with this project: Neovim's own, from Debian.
# Builds nothing: run `npm run build` first. Installs Neovim with apt-get where it is not there yet, which takes root.
# One line for each step. Exit code 0: all held; 1: something did not; 2: it could not be tried.
set -euo pipefail
cd "$(dirname "$0")/../.."

stop() {
  echo "second client: $1" >&2
  exit 2
}

[[ -f dist/server.js ]] || stop "dist/server.js is not built. Run: npm run build"
command -v node >/dev/null || stop "there is no node on the PATH"

if ! command -v nvim >/dev/null; then
  by_hand="apt-get install neovim"
  command -v apt-get >/dev/null || stop "Neovim is not there, nor apt-get to install it. On Debian: $by_hand"
  [[ $(id -u) == 0 ]] || stop "Neovim is not there, and installing it takes root: $by_hand"
  echo "second client: installing Neovim"
  export DEBIAN_FRONTEND=noninteractive
  # What they say is of interest only when they fail.
  said=$({ apt-get update -qq && apt-get install -y -qq --no-install-recommends neovim; } 2>&1) ||
    stop "Neovim could not be installed. $said"
fi

home=$(mktemp -d)
trap 'rm -rf "$home"' EXIT
mkdir "$home/workspace"
cp client/demo/*.yaml "$home/workspace"

export HOME="$home" XDG_CONFIG_HOME="$home/config" XDG_DATA_HOME="$home/data" XDG_STATE_HOME="$home/state"
export TAILCONE_SERVER="$PWD/dist/server.js" TAILCONE_WORKSPACE="$home/workspace"
echo "second client: $(nvim --version | head -n 1), $(node --version)"
began=$SECONDS
code=0
timeout 180 nvim --headless -u NONE -i NONE -n -c "luafile tests/second-client/neovim.lua" || code=$?
[[ $code != 124 ]] || stop "not done after 180 s"
echo "second client: $((SECONDS - began)) s"
exit "$((code == 0 ? 0 : 1))"
