// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

/// The bow's way through a tune as SVG, for a page: its own drawing, without Qt.
namespace sim::report {

/// One note of the drawing.  Places are m from the bridge.
struct PathNote {
    std::string label;      ///< "D5"
    double start = 0.0;     ///< s
    double duration = 0.0;  ///< s
    std::optional<double> near;
    std::optional<double> far;  ///< of the band; of the most secure stretch where there is no band
    bool is_band = false;
    bool failed_behind = false;  ///< with the bow left behind it is not clean
};

struct PathDrawing {
    std::string id;
    std::string title;
    std::string description;
    std::vector<PathNote> notes;                  ///< in time, at least one
    std::vector<std::pair<double, double>> path;  ///< s and m: the bow that follows
    double left_behind = 0.0;                     ///< m
    double width = 760.0;                         ///< px
    double seconds_a_row = 12.0;                  ///< longer tunes go on in a row below
};

/// An <svg> element of the same look as string_svg.
std::string path_svg(const PathDrawing& drawing);

}  // namespace sim::report
