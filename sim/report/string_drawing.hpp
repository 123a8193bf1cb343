// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

/// A string drawn to scale as SVG, for a page: its own drawing, without Qt.
namespace sim::report {

/// One stop: a row of the drawing.  Places are m from the bridge.
struct StopRow {
    std::string label;      ///< "12 D5"
    double sounding = 0.0;  ///< m, from bridge to finger or nut
    bool open = false;      ///< the nut ends it, no finger
    std::optional<double> near;
    std::optional<double> far;  ///< of the band; of the most secure stretch where there is no band
    bool is_band = false;
    std::optional<double> best;
    std::optional<double> left_behind;  ///< only where a bow can stand
};

struct StringDrawing {
    std::string id;             ///< of the drawing in its page, unique there
    std::string title;          ///< what it shows, for who can't see it
    std::string description;    ///< the same at length
    double length = 0.0;        ///< m, nut to bridge
    double reach = 0.0;         ///< m from the bridge that are drawn; length or more = all of the string
    double board_end = 0.0;     ///< m from the bridge
    double hair_width = 0.0;    ///< m
    double floor = 0.0;         ///< m, under which the hair has no room
    std::vector<double> frets;  ///< m from the bridge
    std::optional<double> guide_fret;
    std::vector<StopRow> rows;  ///< from the top down
    double width = 760.0;       ///< px of the drawing's own scale, which letters keep
};

/// An <svg> element whose colours are CSS variables of the page: --ink, --soft, --paper, --board, --band, --pale,
/// --behind.  Well-formed; nothing lies outside its frame.
std::string string_svg(const StringDrawing& drawing);

}  // namespace sim::report
