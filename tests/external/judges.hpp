// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"

#include <string>
#include <vector>

/// Independent programs, each run as a process of its own on a file.
namespace tests {

/// What a command wrote to its standard output; a failed command fails the test.
std::string output_of(const std::string& command);
bool has_program(const std::string& name);

/// What Praat says of a whole sound.
struct PraatTone {
    double hz = 0.0;            ///< median of the frames of To Pitch (ac)
    double hnr_db = 0.0;        ///< mean of To Harmonicity (cc)
    double centroid_hz = 0.0;   ///< centre of gravity, power 2, of the spectrum to 10 kHz
    std::vector<double> bands;  ///< energy within half a fundamental of its multiples 1 … 10, Pa² s

    bool operator==(const PraatTone&) const = default;
};
/// Pitch is looked for from 0.6 to 1.8 times `near_hz`; the bands lie at the multiples of `bands_hz`.
struct PraatSearch {
    double near_hz;
    double bands_hz;
};
PraatTone praat_tone(const analysis::Signal& sound, const PraatSearch& search);

/// RMS amplitude of the samples as sox's stat has it.
double sox_rms(const analysis::Signal& sound);

/// Times of onsets by aubioonset, s.
std::vector<double> aubio_onsets(const analysis::Signal& sound);

}  // namespace tests
