#!/bin/bash
# SPDX-License-Identifier: GPL-3.0-or-later
# bare_root.sh LOGS [COMMAND...]: runs ./play and then ./check (or the given commands) in a Debian 12 that has nothing
# but what debootstrap puts there, times them, and keeps what they print in LOGS, with play's out/.  As root; about
# 4 GB of disk and 20 minutes.  Not one of ctest's tests.  Wants debootstrap.
set -euo pipefail
source_tree=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
if (( $# < 1 || EUID != 0 )); then
    echo "usage, as root: bare_root.sh LOGS [COMMAND...]" >&2
    exit 2
fi
mkdir -p "$1"
logs=$(cd "$1" && pwd)
shift
(( $# )) || set -- ./play ./check
root=$(mktemp -d "${TMPDIR:-/tmp}/bare_root.XXXXXX")

clean_up() {
    umount "$root/proc" 2>/dev/null || true
    # never through something still mounted
    if grep -qF " $root/" /proc/mounts; then
        echo "$root: still mounted, left as it is" >&2
    else
        rm -rf "$root"
    fi
}
trap clean_up EXIT

# The archive that this machine takes bookworm from.
mirror() {
    apt-get indextargets --format '$(SITE) $(CODENAME)' 2>/dev/null |
        awk '$2 == "bookworm" && !/security/ { print $1; exit }'
}

# apt in the root reaches its archives as apt does here: addresses, proxy, clock checks, certificates.
copy_network() {
    cp -L /etc/resolv.conf "$root/etc/resolv.conf"
    cp -L /etc/hosts "$root/etc/hosts"
    rm -f "$root/etc/apt/sources.list"
    local file
    for file in /etc/apt/sources.list /etc/apt/sources.list.d/debian.sources; do
        [[ ! -e $file ]] || cp "$file" "$root${file}"
    done
    apt-config dump | grep -E '^Acquire::(https?::|Check-)' >"$root/etc/apt/apt.conf.d/99mirror" || true
    mkdir -p "$root/etc/ssl/certs"
    [[ ! -e /etc/ssl/certs/ca-certificates.crt ]] || cp -L /etc/ssl/certs/ca-certificates.crt "$root/etc/ssl/certs/"
}

# in_root COMMAND: with nothing of this machine's environment but the way to the network.
in_root() {
    local passed=() name
    for name in http_proxy https_proxy no_proxy; do
        [[ -z ${!name:-} ]] || passed+=("$name=${!name}")
    done
    chroot "$root" /usr/bin/env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin HOME=/root TERM=dumb "${passed[@]}" \
        /bin/bash -c "cd /root/project && $1"
}

echo "making the root"
debootstrap --variant=minbase bookworm "$root" "$(mirror)" >"$logs/debootstrap.log"
mount -t proc proc "$root/proc"
copy_network
mkdir "$root/root/project"
(cd "$source_tree" && tests/structure/files.sh | tar -cf - --no-recursion -T -) | tar -xf - -C "$root/root/project"

status=0
number=0
for command in "$@"; do
    number=$((number + 1))
    name=${command##*/}
    name=${number}_${name// /_}
    start=$SECONDS
    result=0
    in_root "$command" >"$logs/$name.log" 2>&1 </dev/null || result=$?
    echo "$command: exit $result, $((SECONDS - start)) s, $logs/$name.log" | tee -a "$logs/times.log"
    (( result == 0 )) || status=1
done
[[ ! -d $root/root/project/out ]] || cp -r "$root/root/project/out" "$logs/"
cp "$root"/root/project/.build/*.log "$logs/" 2>/dev/null || true
exit "$status"
