# SPDX-License-Identifier: GPL-3.0-or-later
# Sourced by play and check.

# build FOLDER CACHE [cmake options...]: configures .build/FOLDER unless that is done already, and builds it; only
# $build_target, where that is set.
build() {
    local folder=.build/$1 cache=.cmake/$2.cmake
    shift 2
    mkdir -p .build
    # where there is ccache, builds that differ in little share what they compile
    local launcher=()
    if command -v ccache >/dev/null; then
        export CCACHE_BASEDIR=$PWD CCACHE_NOHASHDIR=1 CCACHE_DIR=$PWD/.build/ccache
        launcher=(-DCMAKE_CXX_COMPILER_LAUNCHER=ccache)
    fi
    # ninja itself notices changed CMakeLists.txt files, but not a changed initial cache
    if [[ ! -e $folder/build.ninja || $cache -nt $folder/build.ninja ]]; then
        rm -rf "$folder"
        cmake -C "$cache" "${launcher[@]}" "$@" -S . -B "$folder" >"$folder.log" 2>&1 || { cat "$folder.log" >&2; return 1; }
    fi
    local quiet=()
    [[ -t 1 ]] || quiet=(-- --quiet)  # progress is for people; in a log only what goes wrong
    cmake --build "$folder" -j "$(nproc)" ${build_target:+--target "$build_target"} "${quiet[@]}"
}

# What drawing without a screen wants, and one language whatever the machine speaks.
offscreen() {
    export LC_ALL=C.UTF-8 QT_QPA_PLATFORM=offscreen
    if [[ -z ${XDG_RUNTIME_DIR:-} ]]; then
        export XDG_RUNTIME_DIR=$PWD/.build/runtime
        mkdir -p "$XDG_RUNTIME_DIR"
        chmod 700 "$XDG_RUNTIME_DIR"
    fi
}
