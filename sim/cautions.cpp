// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/cautions.hpp"

#include "analysis/units.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <cmath>

namespace sim {
namespace {

constexpr double near_limit_from = 220.0;  // Hz m, common practice
constexpr double likely_from = 240.0;      // Hz m, common practice
constexpr double pull_tolerance = 0.01;    // of the set-up's: gauges are not made truer than that

std::string semitones_below(double product) {
    const double semitones = 12.0 * std::log2(likely_from / product);
    return fixed_number(std::abs(semitones), 1) + (std::abs(semitones) < 1.05 ? " semitone" : " semitones");
}

std::optional<Caution> breaking_caution(const PresetString& string, double reference_pitch) {
    const BreakingRisk risk = breaking_risk(string, reference_pitch);
    if (risk == BreakingRisk::none) return std::nullopt;
    const double product = breaking_product(string, reference_pitch);
    const bool likely = risk == BreakingRisk::likely;
    const std::string tuned = "String " + string.name + ", gut, tuned to " + string.pitch + " (" +
                              fixed_number(pitch_frequency(string.pitch, reference_pitch), 0) + " Hz) on " +
                              fixed_number(analysis::mm_from_metres(string.length), 0) + " mm: ";
    const std::string found = "pitch times length is " + fixed_number(product, 0) + " Hz m. ";
    const std::string said =
        likely ? "it is likely to break; " + found +
                     "Plain gut of any thickness breaks at about 240 to 280. Tune it lower, or take a string that "
                     "bears more."
               : "it is near the limit; " + found + "From 240 on, " + semitones_below(product) +
                     " higher, plain gut of any thickness is likely to break.";
    return Caution{.key = likely ? "string_likely_to_break" : "string_near_breaking",
                   .about = string.name,
                   .text = tuned + said,
                   .value = product,
                   .limit = breaking_limit(risk),
                   .unit = "Hz m"};
}

std::optional<Caution> pull_caution(const Preset& set_up, const Preset& now) {
    const double before = total_pull(set_up);
    const double after = total_pull(now);
    if (after <= before * (1.0 + pull_tolerance)) return std::nullopt;
    return Caution{.key = "pull_above_set_up",
                   .about = "",
                   .text = "All strings together pull " + fixed_number(after, 0) + " N, " +
                           fixed_number(100.0 * (after / before - 1.0), 0) + " % above this instrument's set-up (" +
                           fixed_number(before, 0) + " N). On an old instrument do not go above it: ask a maker.",
                   .value = after,
                   .limit = before,
                   .unit = "N"};
}

}  // namespace

std::string_view breaking_risk_words(BreakingRisk risk) {
    switch (risk) {
        case BreakingRisk::near_limit:
            return "near the limit";
        case BreakingRisk::likely:
            return "likely to break";
        case BreakingRisk::none:
            break;
    }
    return "";
}

double breaking_product(const PresetString& string, double reference_pitch) {
    return pitch_frequency(string.pitch, reference_pitch) * string.length;
}

double breaking_limit(BreakingRisk risk) { return risk == BreakingRisk::likely ? likely_from : near_limit_from; }

BreakingRisk breaking_risk(const PresetString& string, double reference_pitch) {
    if (string.gauge.material != "gut") return BreakingRisk::none;
    const double product = breaking_product(string, reference_pitch);
    if (product >= likely_from) return BreakingRisk::likely;
    return product >= near_limit_from ? BreakingRisk::near_limit : BreakingRisk::none;
}

double total_pull(const Preset& preset) {
    double sum = 0.0;
    for (const PresetString& string : preset.strings) sum += open_string(preset, string).tension;
    return sum;
}

std::vector<Caution> stringing_cautions(const Preset& set_up, const Preset& now) {
    std::vector<Caution> cautions;
    for (const PresetString& string : now.strings)
        if (const auto caution = breaking_caution(string, now.reference_pitch)) cautions.push_back(*caution);
    if (const auto caution = pull_caution(set_up, now)) cautions.push_back(*caution);
    const bool pulls_more = !cautions.empty() && cautions.back().key == "pull_above_set_up";
    const bool changed = now.strings != set_up.strings || now.reference_pitch != set_up.reference_pitch;
    if (cautions.empty() && !changed) return cautions;
    cautions.push_back({.key = "breaking_strings",
                        .about = "",
                        .text = "A string that breaks can hit the eyes: turn the face away, wear glasses, raise the "
                                "pitch slowly, and never past the breaking point.",
                        .value = {},
                        .limit = {},
                        .unit = ""});
    if (changed && !pulls_more)
        cautions.push_back({.key = "ask_a_maker",
                            .about = "",
                            .text = "Before an old instrument is strung or tuned otherwise than it was set up for, ask "
                                    "a maker.",
                            .value = {},
                            .limit = {},
                            .unit = ""});
    return cautions;
}

Caution listening_caution() {
    return {.key = "loud_playback",
            .about = "",
            .text =
                "Start low: loud playback harms hearing. 85 dB(A) is bearable for 8 hours, and every 3 dB more "
                "halves that time.",
            .value = {},
            .limit = {},
            .unit = ""};
}

Caution strain_caution() {
    return {.key = "strain",
            .about = "",
            .text = "High positions strain hand and shoulder: rest often, and stop on pain. This is no medical advice.",
            .value = {},
            .limit = {},
            .unit = ""};
}

}  // namespace sim
