// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/scale.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>

namespace gui::charts {
namespace {

/// Leading digits of ticks in a decade, from few to many.
const std::vector<std::vector<double>>& decade_sets() {
    static const std::vector<std::vector<double>> sets{
        {1.0},
        {1.0, 3.0},
        {1.0, 2.0, 5.0},
        {1.0, 2.0, 3.0, 5.0, 7.0},
        {1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0},
        {1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 4.5, 5.0, 6.0, 7.0, 8.0, 9.0},
    };
    return sets;
}

constexpr double rounding = 1e-9;

bool inside(const Scale& scale, double value) {
    return scale.shows(value) && scale.share(value) >= -rounding && scale.share(value) <= 1.0 + rounding;
}

std::vector<double> decade_values(const Scale& scale, const std::vector<double>& leading) {
    std::vector<double> values;
    const int last = static_cast<int>(std::floor(std::log10(scale.high)));
    for (int decade = static_cast<int>(std::floor(std::log10(scale.low))); decade <= last; ++decade) {
        for (const double digit : leading) {
            const double value = digit * std::pow(10.0, decade);
            if (inside(scale, value)) values.push_back(value);
        }
    }
    return values;
}

std::vector<double> even_values(const Scale& scale, double step) {
    std::vector<double> values;
    const double first = std::ceil(scale.low / step - rounding);
    for (double n = first; n * step <= scale.high + rounding * step; n += 1.0) values.push_back(n * step);
    return values;
}

bool fits(const Scale& scale, const std::vector<double>& values, const TickRoom& room) {
    for (std::size_t i = 1; i < values.size(); ++i)
        if ((scale.share(values[i]) - scale.share(values[i - 1])) * room.pixels < room.least_apart) return false;
    return true;
}

/// The finest of the steps 1, 2, 5, 10, … that leaves room.
std::vector<double> linear_values(const Scale& scale, const TickRoom& room) {
    const double most = std::max(2.0, room.pixels / room.least_apart);
    const double finest = (scale.high - scale.low) / most / 10.0;
    for (int decade = static_cast<int>(std::floor(std::log10(finest)));; ++decade) {
        for (const double digit : {1.0, 2.0, 5.0}) {
            const double step = digit * std::pow(10.0, decade);
            if (step < room.least_step) continue;
            std::vector<double> values = even_values(scale, step);
            if (values.size() < 2 || fits(scale, values, room)) return values;
        }
    }
}

std::vector<double> logarithmic_values(const Scale& scale, const TickRoom& room) {
    std::vector<double> best;
    for (const auto& leading : decade_sets()) {
        std::vector<double> values = decade_values(scale, leading);
        if (values.size() >= best.size() && fits(scale, values, room)) best = std::move(values);
    }
    if (best.size() >= 3) return best;
    // over less than an octave or so decades have too few round numbers
    std::vector<double> even = linear_values(scale, room);
    return even.size() > best.size() ? even : best;
}

}  // namespace

bool Scale::shows(double value) const { return std::isfinite(value) && (!logarithmic || value > 0.0); }

double Scale::along(double value) const { return logarithmic ? std::log10(value) : value; }

double Scale::share(double value) const { return (along(value) - along(low)) / (along(high) - along(low)); }

void Extent::add(double value) {
    if (!Scale{.logarithmic = logarithmic_}.shows(value)) return;
    low_ = empty_ ? value : std::min(low_, value);
    high_ = empty_ ? value : std::max(high_, value);
    empty_ = false;
}

Scale Extent::scale(double margin) const {
    if (empty_) return {.low = logarithmic_ ? 0.1 : 0.0, .high = 1.0, .logarithmic = logarithmic_};
    if (logarithmic_) {
        const double ratio = high_ / low_ > 1.02 ? std::pow(high_ / low_, margin) : 1.3;
        return {.low = low_ / ratio, .high = high_ * ratio, .logarithmic = true};
    }
    const double least = 1e-6 * std::max(std::abs(low_), std::abs(high_));
    const double more = high_ - low_ > least ? margin * (high_ - low_) : std::max(0.1 * std::abs(high_), 0.5);
    return {.low = low_ - more, .high = high_ + more, .logarithmic = false};
}

std::vector<Tick> ticks(const Scale& scale, const TickRoom& room) {
    std::vector<Tick> result;
    for (double value : scale.logarithmic ? logarithmic_values(scale, room) : linear_values(scale, room)) {
        const double step_less = std::abs(value) < rounding * (scale.high - scale.low) ? 0.0 : value;
        result.push_back({.value = step_less, .label = number_text(step_less, 6)});
    }
    return result;
}

std::string number_text(double value, int digits) {
    std::array<char, 64> text{};
    const double scale = value == 0.0 ? 1.0 : std::pow(10.0, digits - 1 - std::floor(std::log10(std::abs(value))));
    // whole numbers stay whole, so that 123456 never turns into 1.23e+05
    const double rounded = scale < 1.0 ? std::round(value) : std::round(value * scale) / scale;
    const auto end = std::to_chars(text.data(), text.data() + text.size(), rounded, std::chars_format::general,
                                   std::numeric_limits<double>::digits10);
    return {text.data(), end.ptr};
}

}  // namespace gui::charts
