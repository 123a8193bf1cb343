// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/recording_warnings.hpp"

#include "analysis/units.hpp"

#include <array>
#include <charconv>
#include <cmath>

namespace analysis {
namespace {

constexpr double silent_level = 1e-4;  // of full scale: -80 dB
constexpr double noisy_db = 25.0;
constexpr double cancelled_share = 0.1;  // of the power

std::string number(double value, int decimals) {
    std::array<char, 32> text{};
    const auto end =
        std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, decimals).ptr;
    return {text.data(), end};
}

/// "at 1.2, 3.4 and 5.6 s", three of them at the most.
std::string times_of(const std::vector<double>& times) {
    std::string text = "at ";
    for (std::size_t i = 0; i < std::min<std::size_t>(3, times.size()); ++i)
        text += (i > 0 ? ", " : "") + number(times[i], 1);
    text += " s";
    if (times.size() > 3) text += " and " + std::to_string(times.size() - 3) + " more";
    return text;
}

void add_noise(const Recording& recording, std::vector<std::string>& warnings) {
    double loud = 0.0;
    bool pitched = false;
    for (const RecordedNote& note : recording.notes) {
        loud = std::max(loud, note.level);
        pitched = pitched || note.tone.has_value();
    }
    if (!recording.notes.empty() && !pitched)
        warnings.push_back("No note with a pitch was found: what sounds is noise, or far too rough to have one.");
    if (recording.noise <= 0.0 || loud <= 0.0) return;
    const double db = db_from_ratio(loud / recording.noise);
    if (db < noisy_db)
        warnings.push_back(
            "Noisy: the loudest note stands only " + number(db, 0) +
            " dB over the noise between the notes; brightness, harmonic-to-noise ratio and motion suffer.");
}

}  // namespace

bool is_polyphonic(const RecordedNote& note) { return note.pure_interval || note.foreign_share > 0.0; }

std::vector<std::string> warnings_of(const Recording& recording, const RecordingFacts& facts) {
    std::vector<std::string> warnings;
    if (facts.length_unknown)
        warnings.push_back(
            "The file's header announces about 2 GB that are not there: it came through a pipe or was not "
            "closed; what is there was read.");
    if (recording.loudness.peak < silent_level) {
        warnings.push_back("Silence: nothing in the recording exceeds -80 dB of full scale.");
        return warnings;
    }
    if (recording.clipped > 0)
        warnings.push_back(
            "Clipped: " + std::to_string(recording.clipped) + " samples at the limit, the first at " +
            number(facts.first_clip, 2) +
            " s; partials and brightness of those notes are not to be trusted. Record at a lower level.");
    std::vector<double> two;
    for (const RecordedNote& note : recording.notes)
        if (is_polyphonic(note)) two.push_back(note.span.start);
    if (!two.empty())
        warnings.push_back("Two notes or more at once, or a strong foreign tone, " + times_of(two) +
                           ": their pitch, brightness and motion are not to be trusted.");
    if (facts.mix_share < cancelled_share)
        warnings.push_back("The two channels nearly cancel each other when mixed; use one of them alone.");
    add_noise(recording, warnings);
    return warnings;
}

}  // namespace analysis
