// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/match/coverage.hpp"

#include "analysis/statistics.hpp"
#include "sim/preset_reader.hpp"

#include <algorithm>
#include <cstdarg>
#include <cstdio>

namespace tests {
namespace {

constexpr double low_note = 300.0;  // Hz

std::string printed(const char* format, ...) {
    char text[400];
    va_list values;
    va_start(values, format);
    std::vsnprintf(text, sizeof text, format, values);
    va_end(values);
    return text;
}

/// The answer for the recorded note that shares most time with a true one.
const sim::match::NoteMatch* answer_for(const sim::match::Match& match, const BowedNote& truth) {
    constexpr double least = 0.05;  // s
    const sim::match::NoteMatch* best = nullptr;
    double most = least;
    for (std::size_t i = 0; i < match.notes.size(); ++i) {
        const analysis::NoteSpan& span = match.recording.notes[i].span;
        const double together = std::min(span.steady_to, truth.to) - std::max(span.steady_from, truth.from);
        if (together <= most) continue;
        most = together;
        best = &match.notes[i];
    }
    return best;
}

CoveredNote covered_note(const sim::match::Match& match, const BowedRecording& recording, const BowedNote& truth) {
    CoveredNote note{.preset = recording.preset, .truth = truth, .abstains = {}, .said_string = {}};
    const sim::match::NoteMatch* answer = answer_for(match, truth);
    note.abstains = answer != nullptr ? answer->abstains : "not found";
    if (answer == nullptr || answer->strings.empty()) return note;
    const sim::match::StringMatch& likeliest = answer->strings.front();
    note.said_string = likeliest.place.string;
    note.string_told = answer->string_told;
    note.low = answer->ratio.low;
    note.high = answer->ratio.high;
    note.force_low = likeliest.region->force.low;
    note.force_high = likeliest.region->force.high;
    note.possible = likeliest.region->contact_all.high / likeliest.region->contact_all.low;
    note.misfit = answer->misfit;
    return note;
}

}  // namespace

std::vector<std::string> design_presets() {
    return {"division_bass_viol", "treble_viol", "cello", "gut_violin", "tenor_viol", "violone_in_g"};
}

std::vector<std::string> test_presets() {
    return {"consort_bass_viol", "violin", "lyra_bass_viol", "descant_viol", "seven_string_bass_viol", "alto_viol"};
}

Coverage covered(const CoveragePlan& plan, const sim::Workers& workers) {
    Coverage coverage;
    for (const BowedRecording& recording : bowed_recordings(plan.bowed, workers)) {
        sim::match::MatchPlan asked = plan.match;
        if (plan.string_known) asked.known.string = recording.notes.front().string;
        const sim::match::Match match =
            sim::match::match_recording(analysis::blocks_of(recording.sound.samples, recording.sound.sample_rate),
                                        sim::find_preset(recording.preset), asked, workers);
        for (const BowedNote& truth : recording.notes) coverage.notes.push_back(covered_note(match, recording, truth));
    }
    return coverage;
}

double CoverageFigures::covered_share() const {
    const double forgiven = std::min(0.2 * notes, static_cast<double>(abstained));
    return covering / (notes - forgiven);
}

CoverageFigures figures_of(const Coverage& coverage) {
    CoverageFigures figures;
    std::vector<double> widths;
    std::vector<double> low_widths;
    std::vector<double> possible;
    for (const CoveredNote& note : coverage.notes) {
        ++figures.notes;
        figures.abstained += note.said() ? 0 : 1;
        figures.covering += note.covers() ? 1 : 0;
        figures.covering_force += note.covers_force() ? 1 : 0;
        figures.right_string += note.said() && note.said_string == note.truth.string ? 1 : 0;
        if (!note.said()) continue;
        widths.push_back(note.high / note.low);
        possible.push_back(note.possible);
        if (note.truth.hz < low_note) low_widths.push_back(widths.back());
    }
    figures.median_width = analysis::quantile(widths, 0.5);
    figures.median_width_low = analysis::quantile(low_widths, 0.5);
    figures.median_possible = analysis::quantile(possible, 0.5);
    return figures;
}

std::string coverage_lines(const Coverage& coverage) {
    std::string text;
    for (const CoveredNote& note : coverage.notes) {
        text += printed("%-22s %s/%-2g %6.1f Hz true %.4f %.3f N ", note.preset.c_str(), note.truth.string.c_str(),
                        note.truth.stop, note.truth.hz, note.truth.contact_ratio, note.truth.force);
        text +=
            printed("said %s%s %.4f-%.4f x%.2f of x%.1f, %.3f-%.3f N misfit %.2f %s %s\n", note.said_string.c_str(),
                    note.string_told ? "" : "?", note.low, note.high, note.high / note.low, note.possible,
                    note.force_low, note.force_high, note.misfit, note.covers() ? "" : "MISS", note.abstains.c_str());
    }
    return text;
}

std::string coverage_table(const std::vector<NamedCoverage>& sets) {
    std::string text =
        "| recordings | notes | abstain | true contact ratio in the region | median width | below 300 Hz | of all "
        "possible | right string | true force in its region |\n|---|---|---|---|---|---|---|---|---|\n";
    for (const NamedCoverage& set : sets) {
        const CoverageFigures figures = figures_of(set.coverage);
        const int said = figures.notes - figures.abstained;
        text += printed("| %s | %d | %d | %.0f %% | x %.2f | x %.2f | x %.1f | %d of %d | %.0f %% |\n",
                        set.name.c_str(), figures.notes, figures.abstained, 100.0 * figures.covered_share(),
                        figures.median_width, figures.median_width_low, figures.median_possible, figures.right_string,
                        said, said > 0 ? 100.0 * figures.covering_force / said : 0.0);
    }
    return text;
}

std::string coverage_report(const std::string& table) {
    return "# Where the bow was, by ear\n\nMade by match_coverage_test: `match` on simulated recordings whose contact "
           "point is known. Strokes from rest at the player's speed, forces and places even in ratio (from the floor "
           "to "
           "0.45 of the string) among those that speak within 40 cents of the note; any string, stops 0 to 19, of six "
           "presets that the method was not designed on; bodies thrown anew; white noise 40 dB under the sound. The "
           "stop "
           "is never told, the string where it says so. A region holds 80 % of the likelihood, over all strings where "
           "none is told; abstentions past a fifth count as misses. Strings unlike the preset's: losses, twist and "
           "stiffness each off by a factor of up to 1.35.\n\n" +
           table;
}

}  // namespace tests
