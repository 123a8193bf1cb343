// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/stage_scale.hpp"

#include "analysis/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace gui {
namespace {

constexpr double octave = 12.0;
constexpr double least_pad = 0.06;  // m

}  // namespace

double ForceScale::y(double force) const {
    return bottom - (bottom - top) * std::log(force / lightest) / std::log(firmest / lightest);
}

double ForceScale::force(double y) const {
    const double share = std::clamp((bottom - y) / (bottom - top), 0.0, 1.0);
    return lightest * std::pow(firmest / lightest, share);
}

std::vector<StageMark> stage_marks(const Selection& selection) {
    const sim::Preset& preset = *selection.preset();
    std::vector<StageMark> marks{{StageMark::Kind::nut, 0, selection.open_length()}};
    for (int fret = 1; fret <= preset.frets; ++fret)
        marks.push_back({StageMark::Kind::fret, fret, selection.length_at(fret)});
    if (preset.guide_fret) marks.push_back({StageMark::Kind::guide_fret, 0, selection.length_at(octave)});
    marks.push_back({StageMark::Kind::board_end, 0, board_end(selection)});
    marks.push_back({StageMark::Kind::bridge, 0, 0.0});
    return marks;
}

double board_end(const Selection& selection) {
    return selection.open_length() * (1.0 - selection.preset()->board_end_ratio);
}

double pad_length(const Selection& selection) { return std::max(selection.farthest() * 1.05, least_pad); }

std::vector<double> ruler_steps(const StageScale& scale, double least_apart) {
    constexpr std::array<double, 8> round{1, 2, 5, 10, 20, 50, 100, 200};
    double step = round.back();
    for (const double mm : round) {
        step = mm;
        if (analysis::metres_from_mm(mm) * scale.pixels_per_metre() >= least_apart) break;
    }
    std::vector<double> steps;
    const double metres = analysis::metres_from_mm(step);
    for (int i = 0; i * metres <= scale.length * (1.0 + 1e-9); ++i) steps.push_back(i * metres);
    return steps;
}

std::vector<double> cell_edges(const std::vector<double>& values) {
    if (values.size() < 2) return {};
    std::vector<double> edges{values[0] * std::sqrt(values[0] / values[1])};
    for (std::size_t i = 1; i < values.size(); ++i) edges.push_back(std::sqrt(values[i - 1] * values[i]));
    edges.push_back(values.back() * std::sqrt(values.back() / values[values.size() - 2]));
    return edges;
}

double force_share(const Selection& selection) {
    return std::log(selection.force() / selection.lightest()) / std::log(selection.firmest() / selection.lightest());
}

}  // namespace gui
