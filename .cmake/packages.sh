# SPDX-License-Identifier: GPL-3.0-or-later
# Debian 12 packages, sourced by play and check.

# shellcheck disable=SC2034
build_packages=(
    g++ cmake ninja-build pkg-config
    libeigen3-dev libhwy-dev libfftw3-dev libsndfile1-dev libsamplerate0-dev nlohmann-json3-dev libcli11-dev
    libpugixml-dev libzip-dev  # tunes: MusicXML, plain and compressed
    qt6-base-dev qt6-charts-dev qt6-svg-dev libqt6opengl6-dev  # Qt6Charts is not found without the last
    qt6-multimedia-dev qt6-tools-dev qt6-l10n-tools
    fonts-dejavu-core                                          # without a font letters are boxes
)
test_packages=(
    libgtest-dev libgmock-dev libbenchmark-dev
    pulseaudio pulseaudio-utils  # a sound server that plays to nobody
    xvfb xauth                   # a display that nobody sees
    appstream desktop-file-utils
    harminv  # harmonic inversion, run by tests as a process of its own
)
all_packages=(  # for ./check all
    ccache clang-format
    praat sox aubio-tools  # judges of the analysis, each run by tests as a process of its own
    fluid-soundfont-gm     # real recordings of single bowed notes
    chromium poppler-utils # the lesson page as a browser shows and prints it
)

# Installs those of the named packages that are not there.  The chatter of apt goes to .build/install.log.
install_missing() {
    local missing=() package
    for package in "$@"; do
        # what dpkg-query says of a package it has never heard of is not an error here
        [[ $(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null) == installed ]] || missing+=("$package")
    done
    (( ${#missing[@]} )) || return 0
    local root=()
    (( EUID == 0 )) || root=(sudo)
    echo "installing ${#missing[@]} packages: ${missing[*]}"
    mkdir -p .build
    if ! { "${root[@]}" apt-get update &&
           "${root[@]}" env DEBIAN_FRONTEND=noninteractive \
               apt-get install -y --no-install-recommends "${missing[@]}"; } >.build/install.log 2>&1 </dev/null
    then
        tail -n 20 .build/install.log >&2
        echo "installation failed; all of it is in .build/install.log" >&2
        return 1
    fi
}
