// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/stroke_spectra.hpp"

#include "analysis/partials.hpp"
#include "analysis/units.hpp"
#include "sim/stroke_batch.hpp"

#include <algorithm>
#include <cmath>

namespace sim::match {
namespace {

constexpr double least_amplitude = 1e-9;  // N, so that every level is a number
constexpr std::size_t scan_step = 4;
constexpr double scan_share = 0.4;  // of the work, about

StrokeSpectrum spectrum_of(const analysis::Signal& force, const StrokeResult& result) {
    StrokeSpectrum spectrum{.motion = result.verdict.motion, .pitch = result.tone.pitch.value_or(0.0), .levels = {}};
    if (spectrum.motion != Motion::helmholtz || !result.tone.pitch) return spectrum;
    const double limit = std::min(compared_limit, (compared_partials + 0.5) * spectrum.pitch);
    for (const analysis::Partial& partial :
         analysis::measure_partials(force.samples, force.sample_rate, {spectrum.pitch, limit}))
        spectrum.levels.push_back(analysis::db_from_ratio(std::max(partial.amplitude, least_amplitude)));
    return spectrum;
}

/// Plays all forces at those contact points.
void play_at(const std::vector<std::size_t>& contacts, StrokeSpectra& spectra, const Workers& workers) {
    std::vector<Stroke> strokes;
    std::vector<std::size_t> cells;
    for (const std::size_t x : contacts)
        for (std::size_t j = 0; j < spectra.forces.size(); ++j) {
            strokes.push_back(
                started_stroke(spectra.note, spectra.player, {spectra.contact_points[x], spectra.forces[j]}));
            cells.push_back(x * spectra.forces.size() + j);
        }
    play_all_heard(spectra.note, strokes, workers,
                   [&](std::size_t i, const analysis::Signal& force, const StrokeResult& result) {
                       spectra.strokes[cells[i]] = spectrum_of(force, result);
                   });
}

bool speaks_at(const StrokeSpectra& spectra, std::size_t contact) {
    for (std::size_t j = 0; j < spectra.forces.size(); ++j)
        if (spectra.at(contact, j).motion == Motion::helmholtz) return true;
    return false;
}

}  // namespace

StrokeSpectra stroke_spectra(const Note& note, const Player& player, const SpectraGrid& grid, const Workers& workers) {
    StrokeSpectra spectra{.note = note, .player = player, .contact_points = {}, .forces = {}, .strokes = {}};
    spectra.contact_points = even_in_ratio({note.floor, farthest_contact(note)}, grid.contact_points);
    spectra.forces = even_in_ratio({player.force_low, player.force_high}, grid.forces);
    const std::size_t count = spectra.contact_points.size();
    spectra.strokes.resize(count * spectra.forces.size());
    std::vector<std::size_t> scanned;
    for (std::size_t x = 0; x < count; x += scan_step) scanned.push_back(x);
    play_at(scanned, spectra, part_of(workers, {0.0, scan_share}));
    std::vector<std::size_t> between;
    for (std::size_t x = 0; x < count; ++x) {
        if (x % scan_step == 0) continue;
        const std::size_t below = x - x % scan_step;
        const std::size_t above = below + scan_step;
        if (speaks_at(spectra, below) || (above < count && speaks_at(spectra, above))) between.push_back(x);
    }
    play_at(between, spectra, part_of(workers, {scan_share, 1.0}));
    return spectra;
}

}  // namespace sim::match
