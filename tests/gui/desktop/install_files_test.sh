#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# install_files_test.sh FOLDER: the desktop entry and the AppStream metadata are what their own checkers accept.
set -euo pipefail
cd "$1"
desktop-file-validate bowband.desktop
appstreamcli validate --no-net bowband.metainfo.xml
