// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace gui::charts {

struct Place {
    double x = 0.0;
    double y = 0.0;

    bool operator==(const Place&) const = default;
};
using Polyline = std::vector<Place>;

struct Box {
    double left = 0.0;
    double right = 1.0;
    double low = 0.0;
    double high = 1.0;

    bool operator==(const Box&) const = default;
};

/// What of a polyline lies in the box, ends included, in as many pieces as that takes.  SVG files are drawn without
/// clipping, so whatever is drawn must be cut first.
std::vector<Polyline> clipped(const Polyline& line, const Box& box);

}  // namespace gui::charts
