// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/shades.hpp"

#include "gui/charts/scale.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

namespace gui::charts {
namespace {

constexpr std::size_t shade_count = 6;
constexpr double left_out = 0.05;  // of the values, at either end

/// One hue, evenly darker: brightness alone tells the steps.
const std::array<QColor, shade_count>& shades() {
    static const std::array<QColor, shade_count> colours{QColor(0xf2, 0xf6, 0xfb), QColor(0xd2, 0xe2, 0xf1),
                                                         QColor(0xa8, 0xc8, 0xe4), QColor(0x78, 0xa7, 0xd0),
                                                         QColor(0x46, 0x80, 0xb5), QColor(0x1c, 0x53, 0x8a)};
    return colours;
}

std::string edge_text(double value) {
    const std::string text = number_text(value);
    return text.starts_with("-") ? "\u2212" + text.substr(1) : text;
}

}  // namespace

Shades::Shades(std::vector<double> edges, bool darkest_first)
    : edges_(std::move(edges)), darkest_first_(darkest_first) {
    assert(edges_.size() < shade_count && std::ranges::is_sorted(edges_));
}

std::size_t Shades::step_of(double value) const {
    return static_cast<std::size_t>(std::ranges::upper_bound(edges_, value) - edges_.begin());
}

QColor Shades::colour(std::size_t step) const {
    const std::size_t place = darkest_first_ ? count() - 1 - step : step;
    return shades()[count() == 1 ? 1 : place * (shade_count - 1) / (count() - 1)];
}

std::string Shades::label(std::size_t step) const {
    if (edges_.empty()) return "all";
    if (step == 0) return "under " + edge_text(edges_.front());
    if (step == edges_.size()) return edge_text(edges_.back()) + " and more";
    return edge_text(edges_[step - 1]) + " to " + edge_text(edges_[step]);
}

std::vector<double> round_edges(std::vector<double> values) {
    std::erase_if(values, [](double value) { return !std::isfinite(value); });
    if (values.empty()) return {};
    std::ranges::sort(values);
    const auto skipped = static_cast<std::size_t>(left_out * static_cast<double>(values.size()));
    const Scale scale{.low = values[skipped], .high = values[values.size() - 1 - skipped]};
    if (!(scale.high - scale.low > 1e-6 * std::max(1.0, std::abs(scale.high)))) return {};
    std::vector<double> edges;
    const TickRoom room{.pixels = static_cast<double>(shade_count), .least_apart = 1.0};
    for (const Tick& tick : ticks(scale, room)) edges.push_back(tick.value);
    while (edges.size() >= shade_count) edges.pop_back();
    return edges;
}

}  // namespace gui::charts
