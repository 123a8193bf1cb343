#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# tour.sh PROGRAM FOLDER [PART...]: desktop_tour under a virtual display, with a sound server of its own that plays into
# nothing.  Parts: drags, sound, pictures, exports; all without one.  What it measures is printed as Markdown.
set -euo pipefail
program=$(realpath "$1")
mkdir -p "$2"
folder=$(realpath "$2")
shift 2

runtime=$(mktemp -d)
chmod 700 "$runtime"
export XDG_RUNTIME_DIR=$runtime PULSE_RUNTIME_PATH=$runtime/pulse HOME=$runtime
unset QT_QPA_PLATFORM
clean_up() {
    [[ -z ${server:-} ]] || kill "$server" 2>/dev/null || true
    wait 2>/dev/null || true
    rm -rf "$runtime"
}
trap clean_up EXIT

pulseaudio --daemonize=no --exit-idle-time=-1 -n -L "module-null-sink sink_name=null rate=48000" \
    -L module-native-protocol-unix >"$folder/pulseaudio.log" 2>&1 &
server=$!
for _ in {1..50}; do
    pactl info >/dev/null 2>&1 && break
    sleep 0.1
done
xvfb-run -a -s "-screen 0 1920x1080x24" "$program" "$folder" "$@"
