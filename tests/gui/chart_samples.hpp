// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/save.hpp"

#include <string>
#include <vector>

/// Invented data, from plain to awkward.
namespace tests {

struct WindowExtent {
    double floor_mm;
    double far_mm;
    gui::charts::ForceRange force;
    int contact_points;
    int forces;
};
gui::charts::WindowChart window_sample(const WindowExtent& extent);
gui::charts::WindowChart bass_window();
/// The same without a band.
gui::charts::WindowChart bandless_window();

/// Stops 0 to `stops` - 1 in semitones; those named have no band, and at the first of them nothing speaks at all.
gui::charts::ClimbChart climb_sample(int stops, double left_behind_mm, const std::vector<int>& bandless);
gui::charts::SweepChart sweep_sample();
/// Three panels; the first row has no value one way, the last none at all.
gui::charts::TornadoChart tornado_sample(int rows);
/// Nut, fret and three fingers; one contact point where the softest finger holds nothing.
gui::charts::EndsChart ends_sample();
/// A wedge whose edges rise with the acceleration.
gui::charts::StartChart start_sample(int paces, int forces);
/// So many measured points, noise in the valleys.
gui::charts::BridgeChart bridge_sample(int points);
/// So many notes a second apart; the third has no pitch.
gui::charts::RecordingChart recording_sample(int notes);
gui::charts::MatchChart match_sample();
/// As window_sample, with an invented tone: every step of every map occurs, and cells without a pitch.
gui::charts::ToneMapChart tone_map_sample(const WindowExtent& extent);
gui::charts::ToneMapChart bass_tone_map();
/// Panels of three lines with firm and weak bars; the second line misses a value.
gui::charts::StackChart stack_sample(int panels);

/// Four series at four places; one thick interval and one whole pair are missing.
gui::charts::IntervalChart interval_sample();

struct NamedChart {
    std::string name;
    gui::charts::Chart chart;
};
std::vector<NamedChart> all_samples();

}  // namespace tests
