// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/stroke_spectra.hpp"

#include "analysis/partials.hpp"
#include "analysis/units.hpp"
#include "sim/stroke_batch.hpp"

#include <algorithm>

namespace sim::match {
namespace {

constexpr double least_amplitude = 1e-9;  // N, so that every level is a number

StrokeSpectrum spectrum_of(const analysis::Signal& force, const StrokeResult& result) {
    StrokeSpectrum spectrum{.motion = result.verdict.motion, .pitch = result.tone.pitch.value_or(0.0), .levels = {}};
    if (!result.tone.pitch) return spectrum;
    for (const analysis::Partial& partial :
         analysis::measure_partials(force.samples, force.sample_rate, {*result.tone.pitch, compared_limit}))
        spectrum.levels.push_back(analysis::db_from_ratio(std::max(partial.amplitude, least_amplitude)));
    return spectrum;
}

}  // namespace

StrokeSpectra stroke_spectra(const Note& note, const Player& player, const SpectraGrid& grid, const Workers& workers) {
    StrokeSpectra spectra{.note = note, .speed = grid.speed, .rise = player.rise};
    spectra.contact_points = even_in_ratio({note.floor, farthest_contact(note)}, grid.contact_points);
    spectra.forces = even_in_ratio({player.force_low, player.force_high}, grid.forces);
    Player at_speed = player;
    at_speed.speed = grid.speed;
    std::vector<Stroke> strokes;
    for (const double contact_point : spectra.contact_points)
        for (const double force : spectra.forces)
            strokes.push_back(started_stroke(note, at_speed, {contact_point, force}));
    spectra.strokes.resize(strokes.size());
    play_all_heard(note, strokes, workers,
                   [&](std::size_t i, const analysis::Signal& force, const StrokeResult& result) {
                       spectra.strokes[i] = spectrum_of(force, result);
                   });
    return spectra;
}

}  // namespace sim::match
