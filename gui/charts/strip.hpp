// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace analysis {
class OutputFile;
}
class QImage;

/// Strips to print at their true size and lay on the instrument.
namespace gui::charts {

/// A line across the strip.
struct StripMark {
    enum class Kind { fret, landmark, finger };
    double at_mm = 0.0;  ///< from the zero edge
    Kind kind = Kind::fret;
    std::string name;   ///< "7", "guide"
    std::string label;  ///< written along the line

    bool operator==(const StripMark&) const = default;
};

/// A bar lengthwise, one a row.
struct StripBar {
    double from_mm = 0.0;
    double to_mm = 0.0;
    std::optional<double> best_mm;
    bool weak = false;  ///< drawn in outline only
    std::string name;   ///< in the row's beginning
    std::string label;  ///< behind the bar

    bool operator==(const StripBar&) const = default;
};

/// A ruler in mm with its marks across or its rows of bars, whichever it has.
struct Strip {
    std::string title;
    std::vector<std::string> lines;  ///< under the title, each short enough for a page
    std::string zero;                ///< where its zero edge is laid: "nut", "bridge"
    double length_mm = 0.0;          ///< from the zero edge, > 0
    std::vector<StripMark> marks;
    std::vector<StripBar> rows;

    bool operator==(const Strip&) const = default;
};

enum class Paper { a4, letter };
std::optional<Paper> paper_from_name(const std::string& name);
/// What the user's country prints on.
Paper usual_paper();

/// InputError, naming the endings that are accepted, unless the place ends in .svg or .pdf (any case).
void require_strip_ending(const std::filesystem::path& place);

/// The strip at its true size: .svg as one drawing, lengths in mm; .pdf on as many sheets of the paper, lying, as it
/// takes, with marks to cut and join them.  Every sheet has a line of exactly 100 mm to be measured after printing.
/// Needs a ChartSession or QApplication; its thread.
void fill_strip(const analysis::OutputFile& file, const Strip& strip, Paper paper);

/// The same whole or not at all, on the usual paper; OutputError if it can't be written.
void save_strip(const Strip& strip, const std::filesystem::path& place);

/// One <svg> element without XML heading, to stand in an HTML page.
std::string strip_svg(const Strip& strip);

/// The whole strip at so many pixels a mm, for a view on screen.
QImage strip_image(const Strip& strip, double pixels_a_mm);

}  // namespace gui::charts
