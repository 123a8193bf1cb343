// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/clip.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

namespace gui::charts {
namespace {

struct Segment {
    Place from;
    Place to;
};

/// Each side of the box bounds the share of the way on which the segment is within.
std::optional<Segment> within(const Segment& s, const Box& box) {
    const double dx = s.to.x - s.from.x;
    const double dy = s.to.y - s.from.y;
    double enters = 0.0;
    double leaves = 1.0;
    const std::array<std::pair<double, double>, 4> sides{
        {{-dx, s.from.x - box.left}, {dx, box.right - s.from.x}, {-dy, s.from.y - box.low}, {dy, box.high - s.from.y}}};
    for (const auto& [outward, room] : sides) {
        if (outward == 0.0) {
            if (room < 0.0) return std::nullopt;
        } else if (outward < 0.0) {
            enters = std::max(enters, room / outward);
        } else {
            leaves = std::min(leaves, room / outward);
        }
    }
    if (enters > leaves) return std::nullopt;
    const auto at = [&](double share) { return Place{s.from.x + share * dx, s.from.y + share * dy}; };
    return Segment{enters > 0.0 ? at(enters) : s.from, leaves < 1.0 ? at(leaves) : s.to};
}

}  // namespace

std::vector<Polyline> clipped(const Polyline& line, const Box& box) {
    std::vector<Polyline> pieces;
    for (std::size_t i = 1; i < line.size(); ++i) {
        const auto part = within({line[i - 1], line[i]}, box);
        if (!part || part->from == part->to) continue;
        if (pieces.empty() || pieces.back().back() != part->from) pieces.push_back({part->from});
        pieces.back().push_back(part->to);
    }
    return pieces;
}

}  // namespace gui::charts
