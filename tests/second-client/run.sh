#!/usr/bin/env bash
# The language server with a client that has nothing to do with this project: Neovim's own, from Debian.
# Needs a build (`npm run build`). Installs Neovim with apt-get where it is not there yet.
set -euo pipefail
cd "$(dirname "$0")/../.."

if ! command -v nvim >/dev/null; then
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends neovim >/dev/null
fi

home=$(mktemp -d)
trap 'rm -rf "$home"' EXIT
mkdir "$home/workspace"
cp client/demo/*.yaml "$home/workspace"

export HOME="$home" XDG_CONFIG_HOME="$home/config" XDG_DATA_HOME="$home/data" XDG_STATE_HOME="$home/state"
export TAILCONE_SERVER="$PWD/dist/server.js" TAILCONE_WORKSPACE="$home/workspace"
nvim --version | head -n 1
timeout 60 nvim --headless -u NONE -i NONE -n -c "luafile tests/second-client/neovim.lua"
