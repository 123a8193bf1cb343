// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/note_band.hpp"

#include "analysis/statistics.hpp"
#include "gui/model/selection.hpp"

#include <algorithm>

namespace gui {
namespace {

// 16 forces fill the lanes of the vector kernel
constexpr sim::MapGrid coarse_grid{.contact_points = 8, .player_forces = 12, .more_forces = 2};
constexpr sim::MapGrid fine_grid{.contact_points = 40, .player_forces = 12, .more_forces = 2};
constexpr double coarse_nearest = 0.06;  // of the sounding length

double best_brightness(const sim::Assessment& assessment) {
    std::vector<double> values;
    for (const sim::ToneReference& reference : assessment.references())
        if (reference.brightness > 0.0) values.push_back(reference.brightness);
    return analysis::quantile(values, 0.5);
}

}  // namespace

BandQuestion band_question(const Selection& selection) {
    return {.preset = selection.preset(),
            .string_index = selection.string_index(),
            .stop = selection.stop(),
            .player = selection.player()};
}

NoteBand find_note_band(const BandQuestion& question, BandFineness fineness, const sim::Workers& workers) {
    const bool fine = fineness == BandFineness::fine;
    const sim::Preset& preset = *question.preset;
    sim::Note note =
        sim::make_note(preset, preset.strings[static_cast<std::size_t>(question.string_index)], question.stop);
    if (!fine) note.floor = std::max(note.floor, coarse_nearest * note.string.length);
    const sim::MapGrid grid = fine ? fine_grid : coarse_grid;
    const sim::StrokeMap map = sim::started_map(note, question.player, grid, workers);
    const sim::Assessment assessment(map, question.player);
    NoteBand result{.stop = question.stop,
                    .sounding_length = note.string.length,
                    .band = sim::find_band(assessment, map, question.player),
                    .contacts = map.contact_points,
                    .forces = map.forces,
                    .cells = {},
                    .best_brightness = best_brightness(assessment),
                    .fine = fine};
    for (std::size_t x = 0; x < map.contact_points.size(); ++x)
        for (std::size_t j = 0; j < map.forces.size(); ++j)
            result.cells.push_back({map.contact_points[x], map.forces[j], assessment.fault(x, j)});
    return result;
}

BandFinder::BandFinder(const Selection& selection, int threads, QObject* parent)
    : QObject(parent), selection_(&selection), runner_(threads) {
    connect(&selection, &Selection::note_changed, this, &BandFinder::ask);
    connect(&runner_, &JobRunner::failed, this, &BandFinder::failed);
}

void BandFinder::ask() {
    runner_.ask(
        [this, question = band_question(*selection_)](const sim::Workers& workers) -> JobRunner::Delivery {
            auto band = std::make_shared<const NoteBand>(find_note_band(question, BandFineness::coarse, workers));
            return [this, band] {
                band_ = band;
                emit found(band_);
                if (!runner_.waiting()) refine();
            };
        },
        JobRunner::Superseded::finishes);
}

void BandFinder::refine() {
    runner_.ask([this, question = band_question(*selection_)](const sim::Workers& workers) -> JobRunner::Delivery {
        auto band = std::make_shared<const NoteBand>(find_note_band(question, BandFineness::fine, workers));
        return [this, band] {
            band_ = band;
            emit found(band_);
        };
    });
}

}  // namespace gui
