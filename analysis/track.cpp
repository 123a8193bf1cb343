// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/track.hpp"

#include "analysis/decimate.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace analysis {
namespace {

constexpr double pitch_rate = 16000.0;  // Hz at least
constexpr double pitch_window = 0.06;   // s
constexpr double level_window = 0.010;  // s
constexpr std::size_t pitch_every = 2;  // points
constexpr double rumble_hz = 20.0;
constexpr double audible_share = 0.001;  // of the loudest level so far

/// The middle of a window of samples around a moment, as far as they are there.
std::span<const double> around(const std::vector<double>& samples, double first, double middle, double length) {
    const double from = std::clamp(middle - 0.5 * length - first, 0.0, static_cast<double>(samples.size()));
    const double to = std::clamp(middle + 0.5 * length - first, from, static_cast<double>(samples.size()));
    return std::span(samples).subspan(static_cast<std::size_t>(from), static_cast<std::size_t>(to - from));
}

}  // namespace

struct Tracker::State {
    double rate = 0.0;
    PitchRange range;
    int factor = 1;
    double pole = 0.0;
    double before = 0.0;
    double passed = 0.0;
    std::vector<double> full;     // samples not yet done with
    double full_first = 0.0;      // index of the first of them
    std::vector<double> thin;     // the same at the lower rate
    double thin_first = 0.0;      // index at the lower rate
    std::vector<double> waiting;  // samples that the decimation filter still needs
    double loudest = 0.0;
    std::vector<TrackPoint> points;

    void take(std::span<const double> samples);
    void thin_out();
    void advance(bool last);
    void add_point(double time);
    void forget(double time);
};

/// High-pass, then both rates.
void Tracker::State::take(std::span<const double> samples) {
    for (const double sample : samples) {
        passed = sample - before + pole * passed;
        before = sample;
        full.push_back(passed);
        waiting.push_back(passed);
    }
    thin_out();
}

void Tracker::State::thin_out() {
    const Signal fresh = decimate(waiting, rate, factor);
    thin.insert(thin.end(), fresh.samples.begin(), fresh.samples.end());
    const std::size_t done = fresh.samples.size() * static_cast<std::size_t>(factor);
    waiting.erase(waiting.begin(), waiting.begin() + static_cast<std::ptrdiff_t>(done));
}

void Tracker::State::add_point(double time) {
    TrackPoint point{.time = time, .level = 0.0, .hz = 0.0, .clarity_db = -most_clarity_db};
    double sum = 0.0;
    const auto loud = around(full, full_first, time * rate, level_window * rate);
    for (const double sample : loud) sum += sample * sample;
    point.level = loud.empty() ? 0.0 : std::sqrt(sum / static_cast<double>(loud.size()));
    loudest = std::max(loudest, point.level);
    if (points.size() % pitch_every != 0) {
        point.hz = points.back().hz;
        point.clarity_db = points.back().clarity_db;
    } else if (point.level > audible_share * loudest) {
        const double thin_rate = rate / factor;
        const auto frame = around(thin, thin_first, time * thin_rate, pitch_window * thin_rate);
        if (const auto pitch = measure_pitch(frame, thin_rate, range)) {
            point.hz = pitch->hz;
            point.clarity_db = pitch->clarity_db;
        }
    }
    points.push_back(point);
}

/// Points whose windows are whole, or all that are left.
void Tracker::State::advance(bool last) {
    const double whole = std::min((full_first + static_cast<double>(full.size())) / rate,
                                  (thin_first + static_cast<double>(thin.size())) * factor / rate);
    const double end = (full_first + static_cast<double>(full.size())) / rate;
    while (true) {
        const double time = static_cast<double>(points.size()) * track_step;
        if (last ? time >= end : time + pitch_window >= whole) break;
        add_point(time);
    }
    forget(static_cast<double>(points.size()) * track_step - pitch_window);
}

void Tracker::State::forget(double time) {
    const auto drop = [&](std::vector<double>& samples, double& first, double sample_rate) {
        const double count =
            std::clamp(std::floor(time * sample_rate - first), 0.0, static_cast<double>(samples.size()));
        samples.erase(samples.begin(), samples.begin() + static_cast<std::ptrdiff_t>(count));
        first += count;
    };
    drop(full, full_first, rate);
    drop(thin, thin_first, rate / factor);
}

Tracker::Tracker(double sample_rate, const PitchRange& range) : state_(std::make_unique<State>()) {
    state_->rate = sample_rate;
    state_->range = {range.lowest, std::min(range.highest, 0.3 * sample_rate)};
    state_->factor = decimation_factor(sample_rate, pitch_rate);
    state_->pole = std::exp(-2.0 * std::numbers::pi * rumble_hz / sample_rate);
    // decimate's first output lies 16 factors after its first input, so that many zeros go before.
    if (state_->factor > 1) state_->waiting.assign(16 * static_cast<std::size_t>(state_->factor), 0.0);
}

Tracker::~Tracker() = default;

void Tracker::add(std::span<const double> samples) {
    state_->take(samples);
    state_->advance(false);
}

std::vector<TrackPoint> Tracker::finish() {
    state_->advance(true);
    return std::move(state_->points);
}

std::vector<TrackPoint> track(std::span<const double> samples, double sample_rate, const PitchRange& range) {
    constexpr std::size_t block = 16384;
    Tracker tracker(sample_rate, range);
    for (std::size_t at = 0; at < samples.size(); at += block)
        tracker.add(samples.subspan(at, std::min(block, samples.size() - at)));
    return tracker.finish();
}

}  // namespace analysis
