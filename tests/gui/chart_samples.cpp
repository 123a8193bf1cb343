// SPDX-License-Identifier: GPL-3.0-or-later
// long: every kind of chart, one after the other
#include "tests/gui/chart_samples.hpp"

#include <algorithm>
#include <array>
#include <cmath>

using namespace gui::charts;

namespace tests {
namespace {

/// Scattered over 0 … 1, the same on every run.
double scatter(int i) {
    const double x = 43758.5453 * std::sin(12.9898 * i);
    return x - std::floor(x);
}

WindowCell cell(double contact_mm, double force, const WindowExtent& extent, int index) {
    const double beta = contact_mm / extent.far_mm;
    const double most = 0.35 * extent.force.max_newtons / beta;
    const double least = 0.08 * extent.force.min_newtons / (beta * beta);
    const double patchy = force * std::exp(0.5 * (scatter(index) - 0.5));
    WindowCell result{.contact_mm = contact_mm, .force_newtons = force, .motion = CellMotion::helmholtz};
    if (patchy > most) result.motion = scatter(index + 1) > 0.3 ? CellMotion::raucous : CellMotion::anomalous_low;
    if (patchy < least) result.motion = patchy < 0.3 * least ? CellMotion::silent : CellMotion::multiple_slip;
    if (result.motion == CellMotion::helmholtz && scatter(index + 2) < 0.05) result.motion = CellMotion::s_motion;
    result.speaks = result.motion == CellMotion::helmholtz && scatter(index + 3) > 0.15;
    result.keeps_tone = result.speaks && beta < 0.6;
    return result;
}

LimitCurve power_law(const std::string& name, double far_mm, double at_far, double power) {
    LimitCurve curve{name, {}};
    // far beyond the axes on either side
    for (double mm = far_mm / 1000.0; mm < 10.0 * far_mm; mm *= 1.1)
        curve.points.push_back({mm, at_far * std::pow(mm / far_mm, power)});
    return curve;
}

}  // namespace

WindowChart window_sample(const WindowExtent& extent) {
    WindowChart chart{.title = "bass viol, string 1, stop 12 (D5)", .subtitle = "0.2 m/s, invented"};
    const auto [least, most] = extent.force;
    for (int i = 0; i < extent.contact_points; ++i) {
        for (int j = 0; j < extent.forces; ++j) {
            const double mm =
                extent.floor_mm * std::pow(extent.far_mm / extent.floor_mm, i / (extent.contact_points - 1.0));
            const double force = least / 3.0 * std::pow(9.0 * most / least, j / (extent.forces - 1.0));
            chart.cells.push_back(cell(mm, force, extent, extent.forces * i + j));
        }
    }
    chart.limits = {
        power_law("greatest force, closed form", extent.far_mm, 0.35 * most, -1.0),
        power_law("least force from the bridge's admittance, closed form", extent.far_mm, 0.08 * least, -2.0)};
    chart.player_force = extent.force;
    chart.floor_mm = extent.floor_mm;
    const double best = extent.floor_mm * std::pow(extent.far_mm / extent.floor_mm, 0.35);
    chart.best_mm = best;
    for (const double db : {3.0, 6.0, 9.0, 12.0}) chart.level_loss.push_back({db, best * std::pow(10.0, db / 20.0)});
    chart.band = BandStrip{0.75 * best, 1.5 * best, "slow to speak", "tone weak"};
    chart.other_bands = {{2.0 * best, 2.3 * best, "", ""}};
    return chart;
}

WindowChart bass_window() {
    return window_sample({.floor_mm = 7.0, .far_mm = 300.0, .force = {0.1, 0.4}, .contact_points = 32, .forces = 16});
}

WindowChart bandless_window() {
    WindowChart chart = bass_window();
    chart.stretch = chart.band;
    chart.band.reset();
    chart.other_bands.clear();
    chart.reason = "nowhere do four strokes of five speak and keep their tone";
    return chart;
}

ClimbChart climb_sample(int stops, double left_behind_mm, const std::vector<int>& bandless) {
    static const std::array<const char*, 12> names{"D4",  "Eb4", "E4",  "F4", "F#4", "G4",
                                                   "G#4", "A4",  "Bb4", "B4", "C5",  "C#5"};
    ClimbChart chart{.title = "bass viol, string 1: the climb", .subtitle = "0.1 to 0.4 N, 0.2 m/s, invented"};
    chart.left_behind_mm = left_behind_mm;
    chart.band_share = 0.8;
    for (int i = 0; i < stops; ++i) {
        ClimbChartStop stop{.stop_semitones = static_cast<double>(i), .note_name = names[i % 12]};
        const double best = left_behind_mm * std::pow(2.0, -i / 14.0);
        const double half_width = 0.5 * std::exp(-i / 15.0);
        stop.best_mm = best;
        stop.best_ratio = 0.08 + 0.001 * i;
        stop.security_follows = 0.8 + 0.2 * scatter(i);
        stop.security_left_behind = std::max(0.0, 1.0 - 0.06 * i);
        const auto place = std::find(bandless.begin(), bandless.end(), i);
        if (place == bandless.end()) {
            stop.band = ClimbBand{best / (1.0 + half_width), best * (1.0 + half_width)};
        } else if (place == bandless.begin()) {
            stop.best_mm.reset();
            stop.best_ratio.reset();
            stop.reason = "nothing speaks";
        } else {
            stop.stretch = ClimbBand{0.9 * best, 1.2 * best};
            stop.security_follows = 0.6;
            stop.reason = "no place is secure enough";
        }
        chart.stops.push_back(stop);
    }
    return chart;
}

SweepChart sweep_sample() {
    SweepChart chart{.title = "best contact point against wander"};
    chart.x = {.title = "wander, mm"};
    chart.y = {.title = "best contact point, mm", .logarithmic = true};
    chart.missing_name = "no band";
    for (int k = 0; k < 7; ++k) {
        SweepSeries series{.name = "tone limit " + std::to_string(3 * k + 3) + " dB", .points = {}};
        for (int i = 0; i < 7; ++i) series.points.push_back({static_cast<double>(i), 30.0 + 8.0 * k - 0.6 * i * k});
        if (k == 2) series.points[5].y.reset();
        chart.series.push_back(series);
    }
    return chart;
}

TornadoChart tornado_sample(int rows) {
    TornadoChart chart{.title = "bass viol, string 1: what the best place rests on", .subtitle = "invented"};
    chart.up_name = "constant times 1.5";
    chart.down_name = "constant divided by 1.5";
    chart.noise_name = "noise";
    chart.missing_name = "nothing plays";
    chart.panels = {{"best contact point", TornadoBar{1.04, 0.97}},
                    {"least force that speaks, at the same place", TornadoBar{0.95, 0.9}},
                    {"greatest force", {}}};
    for (int i = 0; i < rows; ++i) {
        const double size = 0.6 * (rows - i) / rows;
        TornadoRow row{.name = "constant number " + std::to_string(i), .bars = {}};
        for (int k = 0; k < 3; ++k)
            row.bars.push_back({std::exp((scatter(3 * i + k) > 0.5 ? 1.0 : -1.0) * (k + 1) * size), std::exp(-size)});
        chart.rows.push_back(row);
    }
    if (rows > 0) {
        chart.rows.front().bars.front().down.reset();
        chart.rows.back().bars = std::vector<TornadoBar>(3);
    }
    return chart;
}

EndsChart ends_sample() {
    EndsChart chart{.title = "division bass viol, string 1, open: D4", .subtitle = "what ends the string"};
    chart.contact_mm = 60.0;
    const std::vector<std::string> names{"nut", "fret", "finger Q 50", "finger Q 100", "finger Q 200"};
    const std::vector<double> losses{0.0, 0.0, 4.0, 2.0, 1.0};
    for (std::size_t k = 0; k < names.size(); ++k) {
        EndsSeries series{.name = names[k], .soft = k > 1, .forces = {}, .ringing = {}};
        for (double place = 30.0; place < 125.0; place *= 1.4) {
            series.forces.push_back({place, (1.0 + losses[k]) * 40.0 / (place * place), 30.0 / place});
        }
        for (int n = 1; n <= 20; ++n) series.ringing.push_back({n, 3.0 / (n + losses[k])});
        chart.series.push_back(series);
    }
    chart.series[2].forces[0].min_newtons.reset();
    chart.series[2].forces[0].max_newtons.reset();
    chart.notes = {"Nut and fret are the same hard end here."};
    return chart;
}

StartChart start_sample(int paces, int forces) {
    StartChart chart{.title = "bass viol, string 1, stop 5 (G4)", .subtitle = "40 mm from the bridge, invented"};
    chart.pace_title = "acceleration of the bow, m/s²";
    for (int i = 0; i < paces; ++i) chart.paces.push_back(0.4 * std::pow(64.0, i / (paces - 1.0)));
    for (int j = 0; j < forces; ++j) chart.forces.push_back(0.025 * std::pow(64.0, j / (forces - 1.0)));
    for (const double pace : chart.paces) {
        for (const double force : chart.forces) {
            const double place = force / pace;  // a wedge from 0.06 to 0.3
            StartChartCell cell{.step = place < 0.06 ? StartStep::slipping : StartStep::choked};
            cell.lenient = place >= 0.06 && place < 0.3;
            cell.strict = place >= 0.06 && place < 0.15;
            if (cell.lenient) cell.step = cell.strict ? StartStep::strict : StartStep::lenient;
            if (place >= 0.08 && place < 0.11) cell.step = StartStep::quick;
            if (place >= 0.3 && place < 0.4) cell.step = StartStep::late;
            cell.unsure = std::abs(place - 0.3) < 0.05;
            chart.cells.push_back(cell);
        }
    }
    chart.strict_ms = 50.0;
    chart.lenient_ms = 90.0;
    chart.player_force = ForceRange{0.1, 0.4};
    chart.player_pace = 3.3;
    chart.middle_force = 0.2;
    chart.best_pace = 2.0;
    chart.notes = {"At 0.2 N let the bow gather speed by 1.3 to 3.3 m/s a second."};
    return chart;
}

BridgeChart bridge_sample(int points) {
    BridgeChart chart{.title = "Admittance of a bridge: invented.csv", .subtitle = "50 to 5000 Hz, 3 modes in it"};
    const auto value = [](double hz, double noise) {
        const double level = -40.0 + 12.0 * std::cos(6.0 * std::log(hz));
        return AdmittanceValue{hz, level + noise * 3.0, -80.0 * std::sin(6.0 * std::log(hz)) + noise * 20.0};
    };
    for (int i = 0; i < points; ++i) {
        const double hz = 50.0 * std::pow(100.0, i / std::max(points - 1.0, 1.0));
        chart.measured.push_back(value(hz, scatter(i) - 0.5));
        chart.fitted.push_back(value(hz, 0.0));
    }
    for (const int n : {4, 5, 6, 7, 8}) {
        const double hz = std::exp(n * 2.0 * std::acos(-1.0) / 6.0);
        chart.modes.push_back({hz, -28.0});
    }
    chart.notes = {"Re Y is below 0 by noise at 2 % of the points; the fitted modes are passive everywhere."};
    return chart;
}

RecordingChart recording_sample(int notes) {
    RecordingChart chart{.title = "Recording: invented.flac", .subtitle = "4 s, one channel, 48 kHz: some notes"};
    for (int i = 0; i < notes; ++i) {
        const double hz = 196.0 * std::exp2(i % 24 / 12.0);
        HeardNote note{.from = i + 0.1, .to = i + 0.9, .hz = hz};
        if (i == 2) note.hz.reset();  // no pitch
        for (int k = 0; k < 4; ++k) {
            note.brightness.push_back({i + 0.2 + 0.2 * k, hz * (4.0 + 0.3 * k)});
            chart.pitch.push_back({i + 0.2 + 0.2 * k, hz * (1.0 + 0.002 * k)});
        }
        HeardPartials partials{.name = "N" + std::to_string(i), .levels = {}};
        for (int n = 1; n <= 20; ++n) partials.levels.push_back({n * hz, -20.0 * std::log10(n) - i});
        chart.notes.push_back(note);
        chart.partials.push_back(partials);
    }
    chart.remarks = {"Clipped: 12 samples at the limit."};
    return chart;
}

MatchChart match_sample() {
    MatchChart chart{.title = "invented.flac against division bass viol",
                     .subtitle = "note 3, D5 on string 1, stop 12",
                     .region = MatchRegion{28.0, 41.0},
                     .region_name = "region with 80 % of the likelihood",
                     .band = MatchRegion{26.0, 38.0},
                     .best_mm = 34.0};
    for (int x = 0; x < 60; ++x) {
        chart.contact_mm.push_back(7.0 * std::pow(20.0, x / 59.0));
        const double away = std::log(chart.contact_mm.back() / 34.0) / 0.15;
        chart.likelihood.push_back(std::exp(-0.5 * away * away));
    }
    for (int n = 1; n <= 20; ++n)
        chart.partials.push_back({.hz = 550.0 * n,
                                  .heard_db = -20.0 * std::log10(n) - 20.0 + 3.0 * std::sin(2.0 * n),
                                  .simulated_db = -20.0 * std::log10(n) - 20.0 + 2.0 * std::sin(2.0 * n + 0.3),
                                  .body_db = 6.0 * std::sin(0.7 * n),
                                  .body_error_db = 3.0});
    for (int j = 0; j < 100; ++j) {
        chart.period_heard.push_back(j / 50.0 - 1.0);
        chart.period_simulated.push_back(j / 50.0 - 0.9 + 0.2 * std::sin(0.6 * j));
    }
    chart.remarks = {"Contact point 28 to 41 mm, of 12 to 70 mm where strokes speak. Force 0.11 to 0.30 N.",
                     "The region lies partly in the contact band."};
    return chart;
}

ToneMapChart tone_map_sample(const WindowExtent& extent) {
    const WindowChart window = window_sample(extent);
    ToneMapChart chart{.title = window.title, .subtitle = window.subtitle};
    int i = 0;
    for (const WindowCell& cell : window.cells) {
        const double out = std::log(cell.contact_mm / extent.floor_mm) / std::log(extent.far_mm / extent.floor_mm);
        ToneCell tone{.contact_mm = cell.contact_mm, .force_newtons = cell.force_newtons, .speaks = cell.speaks};
        tone.clarity_db = 50.0 - 60.0 * out * scatter(i);
        if (scatter(i + 1) > 0.1) {
            tone.pitch_cents = 8.0 - 80.0 * out * out;
            tone.brightness_f0 = 3.0 + 12.0 * (1.0 - out);
        }
        tone.level_db = -10.0 - 30.0 * out;
        chart.cells.push_back(tone);
        ++i;
    }
    chart.player_force = window.player_force;
    chart.band = window.band;
    chart.best_mm = window.best_mm;
    return chart;
}

ToneMapChart bass_tone_map() {
    return tone_map_sample({.floor_mm = 7.0, .far_mm = 300.0, .force = {0.1, 0.4}, .contact_points = 24, .forces = 18});
}

StackChart stack_sample(int panels) {
    StackChart chart{.title = "best contact point against speed", .subtitle = "invented"};
    chart.x = {.title = "bow speed, m/s", .logarithmic = true};
    chart.names = {"stop 0 (D4)", "stop 12 (D5)", "stop 19 (A5)"};
    chart.bar_name = "contact band, near to far";
    chart.weak_bar_name = "no band: the most secure stretch";
    chart.missing_name = "nothing speaks";
    for (int p = 0; p < panels; ++p) {
        StackPanel panel{.title = p == 1 ? "" : "panel " + std::to_string(p),
                         .y = {.title = "contact point, mm from the bridge", .logarithmic = p % 2 == 0},
                         .lines = {{}, {}, {}}};
        for (int line = 0; line < 3; ++line) {
            for (int i = 0; i < 7; ++i) {
                const double mm = 80.0 / (1.0 + line) * std::pow(1.1, i);
                StackPoint point{.x = 0.05 * std::pow(1.5, i), .y = mm, .low = 0.8 * mm, .high = 1.4 * mm};
                point.weak = i < 3;
                if (line == 1 && i == 4) point = {.x = point.x, .y = {}, .low = {}, .high = {}};
                panel.lines[static_cast<std::size_t>(line)].push_back(point);
            }
        }
        chart.panels.push_back(panel);
    }
    return chart;
}

IntervalChart interval_sample() {
    IntervalChart chart{.title = "bass viol, string 1: forces under each law", .subtitle = "invented"};
    chart.x_title = "stop, semitones above the open string";
    chart.y_title = "bow force, N";
    chart.thin_name = "forces that hold the motion";
    chart.thick_name = "forces that speak from rest";
    for (const char* name : {"thermal", "thermal, fixed area", "double_exponential", "hyperbola"}) {
        IntervalSeries series{name, {}};
        for (const double stop : {0.0, 7.0, 12.0, 19.0}) {
            const double low = 0.02 * (1.0 + static_cast<double>(chart.series.size()));
            series.pairs.push_back({stop, Interval{low, 20.0 * low}, Interval{5.0 * low, 12.0 * low}});
        }
        chart.series.push_back(series);
    }
    chart.series[1].pairs[2].thick.reset();
    chart.series[3].pairs[0] = {0.0, {}, {}};
    chart.notes = {"stop 0: bow at 69 mm"};
    return chart;
}

std::vector<NamedChart> all_samples() {
    std::string words;
    for (int i = 0; i < 40; ++i) words += "a title of many words ";
    WindowChart treble =
        window_sample({.floor_mm = 5.5, .far_mm = 20.0, .force = {0.05, 0.2}, .contact_points = 40, .forces = 48});
    treble.title = words;
    treble.subtitle = words;
    treble.band->near_bound = words;
    treble.notes = {words, words, words};
    WindowChart wordy = bandless_window();
    wordy.reason = words + std::string(200, 'x');
    ClimbChart many = climb_sample(40, 120.0, {9, 4, 10, 12, 17});
    for (ClimbChartStop& stop : many.stops) stop.reason += " " + std::to_string(stop.stop_semitones) + words;
    TornadoChart wordy_tornado = tornado_sample(45);
    wordy_tornado.title = words;
    for (TornadoPanel& panel : wordy_tornado.panels) panel.title = words;
    for (TornadoRow& row : wordy_tornado.rows) row.name += words;
    StartChart wordy_start = start_sample(2, 3);
    wordy_start.title = wordy_start.warning = words;
    wordy_start.notes = {words, words};
    ToneMapChart wordy_tone =
        tone_map_sample({.floor_mm = 5.5, .far_mm = 20.0, .force = {0.05, 0.2}, .contact_points = 12, .forces = 9});
    wordy_tone.title = wordy_tone.subtitle = wordy_tone.reason = words;
    wordy_tone.stretch = wordy_tone.band;
    wordy_tone.band.reset();
    ToneMapChart one_tone{.cells = {bass_tone_map().cells.front()}};
    StackChart wordy_stack = stack_sample(4);
    wordy_stack.title = wordy_stack.subtitle = wordy_stack.panels[0].title = wordy_stack.panels[2].y.title = words;
    wordy_stack.names[1] = wordy_stack.bar_name = words;
    wordy_stack.notes = {words, words};
    return {{"bass window", bass_window()},
            {"window without a band", bandless_window()},
            {"treble window, too many words", treble},
            {"window with a long reason", wordy},
            {"violone window",
             window_sample({.floor_mm = 9.0, .far_mm = 400.0, .force = {0.2, 0.8}, .contact_points = 24, .forces = 8})},
            {"empty window", WindowChart{}},
            {"bass climb", climb_sample(23, 60.0, {})},
            {"violone climb with gaps", many},
            {"one stop", climb_sample(1, 20.0, {})},
            {"one stop without a band", climb_sample(1, 20.0, {0})},
            {"climb without bands", climb_sample(4, 25.0, {0, 1, 2, 3})},
            {"empty climb", ClimbChart{}},
            {"sweep", sweep_sample()},
            {"empty sweep", SweepChart{}},
            {"tornado", tornado_sample(21)},
            {"small tornado", tornado_sample(2)},
            {"crowded tornado", wordy_tornado},
            {"tornado without rows", tornado_sample(0)},
            {"ends", ends_sample()},
            {"empty ends", EndsChart{}},
            {"intervals", interval_sample()},
            {"empty intervals", IntervalChart{}},
            {"beginnings", start_sample(24, 24)},
            {"few beginnings, many words", wordy_start},
            {"no beginnings", StartChart{}},
            {"bridge", bridge_sample(600)},
            {"bridge of very many points", bridge_sample(100000)},
            {"bridge of one point", bridge_sample(1)},
            {"empty bridge", BridgeChart{}},
            {"recording", recording_sample(4)},
            {"recording of very many notes", recording_sample(300)},
            {"empty recording", RecordingChart{}},
            {"match", match_sample()},
            {"empty match", MatchChart{}},
            {"bass tone", bass_tone_map()},
            {"tone without a band, too many words", wordy_tone},
            {"one stroke's tone", one_tone},
            {"empty tone", ToneMapChart{}},
            {"stack of three", stack_sample(3)},
            {"stack of four", stack_sample(4)},
            {"wordy stack", wordy_stack},
            {"empty stack", StackChart{}}};
}

}  // namespace tests
