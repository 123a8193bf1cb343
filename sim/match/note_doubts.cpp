// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/note_doubts.hpp"

#include "analysis/recording_warnings.hpp"
#include "sim/match/stroke_posterior.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <cmath>

namespace sim::match {
namespace {

constexpr double least_time = 0.1;  // s
constexpr double least_periods = 10.0;
constexpr double least_clarity = 6.0;  // dB
constexpr double sure_motion = 0.8;
constexpr double widest_share = 0.7;  // of the possible, in ratio

bool is_surely_other(const analysis::MotionGuess& guess) {
    const bool other =
        guess.motion == analysis::HeardMotion::raucous || guess.motion == analysis::HeardMotion::anomalous_low;
    return other && guess.confidence >= sure_motion;
}

}  // namespace

std::string doubt_of_sound(const analysis::RecordedNote& note) {
    if (!note.tone) return "no steady pitch is heard";
    if (note.measured < std::max(least_time, least_periods / note.tone->hz))
        return "its steady part is too short (" + fixed_number(note.measured, 2) + " s)";
    if (analysis::is_polyphonic(note)) return "two notes or a foreign tone sound together";
    if (note.clipped > 0) return "it is clipped: record at a lower level";
    if (note.tone->clarity_db < least_clarity) return "it is too rough or noisy to compare";
    if (is_surely_other(note.motion)) return "it sounds raucous or below its pitch: no stroke that speaks";
    return {};
}

std::string doubt_of_partials(std::span<const HeardLevel> heard) {
    const auto usable = std::ranges::count_if(heard, [](const HeardLevel& level) { return level.usable; });
    if (usable >= least_partials) return {};
    return "only " + std::to_string(usable) + " partials stand out of the noise; " + std::to_string(least_partials) +
           " are needed";
}

std::string doubt_of_finding(const Finding& finding) {
    if (finding.misfit > misfit_limit) return "no stroke of this instrument that speaks sounds like it";
    const double told = std::log(finding.contact.high / finding.contact.low);
    const double possible = std::log(finding.possible.high / finding.possible.low);
    if (told > widest_share * possible) return "the sound does not tell: nearly every place that speaks would do";
    return {};
}

}  // namespace sim::match
