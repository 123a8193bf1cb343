// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/external/judges.hpp"

#include "analysis/audio_file.hpp"
#include "tests/analysis/temporary_folder.hpp"

#include <gtest/gtest.h>

#include <cstdio>
#include <sstream>

namespace tests {
namespace {

/// Praat is given the floor and the ceiling of each note: with its usual ones it takes low notes for their octaves.
constexpr const char* praat_script = R"(form Tone
    sentence Sound
    positive Floor
    positive Ceiling
    positive Bands
endform
sound = Read from file: sound$
selectObject: sound
pitch = To Pitch (ac): 0, floor, 15, "no", 0.03, 0.45, 0.01, 0.35, 0.14, ceiling
hz = Get quantile: 0, 0, 0.5, "Hertz"
selectObject: sound
harmonicity = To Harmonicity (cc): 0.01, floor, 0.1, 1.0
hnr = Get mean: 0, 0
selectObject: sound
spectrum = To Spectrum: "no"
writeInfoLine: fixed$ (hz, 6), " ", fixed$ (hnr, 6)
for n to 10
    energy = Get band energy: (n - 0.5) * bands, (n + 0.5) * bands
    appendInfoLine: energy
endfor
Formula: "if x > 10000 then 0 else self fi"
centroid = Get centre of gravity: 2
appendInfoLine: fixed$ (centroid, 6)
)";

std::string quoted(const std::filesystem::path& place) { return "'" + place.string() + "'"; }

}  // namespace

bool has_program(const std::string& name) {
    return std::system(("command -v " + name + " >/dev/null 2>&1").c_str()) == 0;
}

std::string output_of(const std::string& command) {
    std::string text;
    FILE* pipe = ::popen(command.c_str(), "r");
    if (pipe == nullptr) return text;
    char part[512];
    while (std::fgets(part, sizeof part, pipe) != nullptr) text += part;
    EXPECT_EQ(::pclose(pipe), 0) << command << "\n" << text;
    return text;
}

PraatTone praat_tone(const analysis::Signal& sound, const PraatSearch& search) {
    const TemporaryFolder folder;
    analysis::write_audio(folder / "tone.wav", sound);
    put(folder / "tone.praat", praat_script);
    std::istringstream said(output_of("praat --run " + quoted(folder / "tone.praat") + " " +
                                      quoted(folder / "tone.wav") + " " + std::to_string(0.6 * search.near_hz) + " " +
                                      std::to_string(1.8 * search.near_hz) + " " + std::to_string(search.bands_hz)));
    PraatTone tone;
    said >> tone.hz >> tone.hnr_db;
    for (int n = 0; n < 10; ++n) said >> tone.bands.emplace_back();
    said >> tone.centroid_hz;
    EXPECT_TRUE(said) << said.str();
    return tone;
}

double sox_rms(const analysis::Signal& sound) {
    const TemporaryFolder folder;
    analysis::write_audio(folder / "tone.wav", sound);
    std::istringstream said(output_of("sox " + quoted(folder / "tone.wav") + " -n stat 2>&1"));
    for (std::string line; std::getline(said, line);)
        if (line.starts_with("RMS     amplitude:")) return std::stod(line.substr(18));
    ADD_FAILURE() << said.str();
    return 0.0;
}

std::vector<double> aubio_onsets(const analysis::Signal& sound) {
    const TemporaryFolder folder;
    analysis::write_audio(folder / "tone.wav", sound);
    std::istringstream said(output_of("aubioonset -i " + quoted(folder / "tone.wav") + " -B 1024 -H 256 2>/dev/null"));
    std::vector<double> times;
    for (double time = 0.0; said >> time;) times.push_back(time);
    return times;
}

}  // namespace tests
