// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/path_drawing.hpp"

#include "analysis/units.hpp"
#include "sim/report/html.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <cmath>

namespace sim::report {
namespace {

constexpr double left_margin = 44.0;  // px, as all below
constexpr double right_margin = 10.0;
constexpr double head_height = 34.0;
constexpr double plot_height = 130.0;
constexpr double foot_height = 26.0;
constexpr double row_height = head_height + plot_height + foot_height;
constexpr double letter_width = 9.0;
constexpr double least_scale_gap = 24.0;

std::string px(double value) { return fixed_number(value, 1); }

double end_of(const PathNote& note) { return note.start + note.duration; }

/// Where things of one row lie.
class Row {
public:
    Row(const PathDrawing& drawing, int number, double reach)
        : from_(drawing.seconds_a_row * number),
          seconds_(drawing.seconds_a_row),
          top_(row_height * number + head_height),
          width_(drawing.width - left_margin - right_margin),
          reach_(reach) {}

    bool shows(const PathNote& note) const { return note.start < from_ + seconds_ && end_of(note) > from_; }
    double x(double seconds) const { return left_margin + width_ * std::clamp((seconds - from_) / seconds_, 0.0, 1.0); }
    /// The bridge lies at the foot.
    double y(double place) const { return top_ + plot_height * (1.0 - std::clamp(place / reach_, 0.0, 1.0)); }
    double top() const { return top_; }
    double bottom() const { return top_ + plot_height; }
    double from() const { return from_; }
    double to() const { return from_ + seconds_; }

private:
    double from_;
    double seconds_;
    double top_;
    double width_;
    double reach_;
};

std::string line(const char* look, double x1, double y1, double x2, double y2) {
    return empty_element("line", {{"class", look}, {"x1", px(x1)}, {"y1", px(y1)}, {"x2", px(x2)}, {"y2", px(y2)}}) +
           "\n";
}

std::string words(const std::string& text, double x, double y, const char* anchor, const char* look) {
    return text_element("text", text, {{"class", look}, {"x", px(x)}, {"y", px(y)}, {"text-anchor", anchor}}) + "\n";
}

double reach_of(const PathDrawing& drawing) {
    double farthest = drawing.left_behind;
    for (const PathNote& note : drawing.notes) farthest = std::max(farthest, note.far.value_or(0.0));
    for (const auto& [seconds, place] : drawing.path) farthest = std::max(farthest, place);
    return std::ceil(100.0 * farthest) / 100.0;
}

std::string scale_of(const PathDrawing& drawing, const Row& row, double reach) {
    const double px_a_mm = plot_height / analysis::mm_from_metres(reach);
    const double step_mm = 10.0 * px_a_mm >= least_scale_gap ? 10.0 : 20.0 * px_a_mm >= least_scale_gap ? 20.0 : 50.0;
    std::string text;
    for (double mm = 0.0; mm <= analysis::mm_from_metres(reach) + 0.5; mm += step_mm) {
        const double y = row.y(analysis::metres_from_mm(mm));
        text += line("grid", left_margin, y, drawing.width - right_margin, y);
        text += words(fixed_number(mm, 0), left_margin - 6.0, y + 4.0, "end", "small");
    }
    for (double s = row.from(); s <= row.to() + 0.01; s += 2.0) {
        text += line("tick", row.x(s), row.bottom(), row.x(s), row.bottom() + 4.0);
        text += words(fixed_number(s, 0) + " s", row.x(s), row.bottom() + 16.0,
                      s > row.from() ? (s < row.to() ? "middle" : "end") : "start", "small");
    }
    return text;
}

/// Bands as boxes, names over them as far as there is room, a cross under those that fail with the bow left behind.
std::string notes_of(const PathDrawing& drawing, const Row& row) {
    std::string text;
    double last = -1e9;
    for (const PathNote& note : drawing.notes) {
        if (!row.shows(note)) continue;
        const double left = row.x(note.start);
        const double right = row.x(end_of(note));
        if (note.near && note.far)
            text += empty_element("rect", {{"class", note.is_band ? "band" : "stretch"},
                                           {"x", px(left + 0.7)},
                                           {"y", px(row.y(*note.far))},
                                           {"width", px(std::max(0.5, right - left - 1.4))},
                                           {"height", px(row.y(*note.near) - row.y(*note.far))}}) +
                    "\n";
        const double middle = 0.5 * (left + right);
        if (note.failed_behind) {
            const double y = row.y(drawing.left_behind);
            text += line("behind", middle - 4.0, y - 4.0, middle + 4.0, y + 4.0) +
                    line("behind", middle - 4.0, y + 4.0, middle + 4.0, y - 4.0);
        }
        const double half = 0.5 * letter_width * static_cast<double>(note.label.size());
        if (middle - half < last + 3.0 || middle - half < left_margin - 10.0) continue;
        if (middle + half > drawing.width) continue;
        text += words(note.label, middle, row.top() - 6.0, "middle", "");
        last = middle + half;
    }
    return text;
}

/// The piece of the path that lies in the row, its ends between the points.
std::string path_of(const PathDrawing& drawing, const Row& row) {
    std::string points;
    const auto add = [&](double seconds, double place) {
        points += (points.empty() ? "" : " ") + px(row.x(seconds)) + "," + px(row.y(place));
    };
    for (std::size_t i = 0; i + 1 < drawing.path.size(); ++i) {
        const auto& [a, from] = drawing.path[i];
        const auto& [b, to] = drawing.path[i + 1];
        if (b <= row.from() || a >= row.to() || b <= a) continue;
        const auto at = [&](double s) { return from + (to - from) * (std::clamp(s, a, b) - a) / (b - a); };
        if (points.empty()) add(std::max(a, row.from()), at(row.from()));
        add(std::min(b, row.to()), at(row.to()));
    }
    return points.empty() ? "" : empty_element("polyline", {{"class", "path"}, {"points", points}}) + "\n";
}

}  // namespace

std::string path_svg(const PathDrawing& drawing) {
    const double seconds = end_of(drawing.notes.back());
    const int rows = std::max(1, static_cast<int>(std::ceil(seconds / drawing.seconds_a_row - 1e-9)));
    const double reach = reach_of(drawing);
    std::string inside = "\n" + text_element("title", drawing.title, {{"id", drawing.id + "-title"}}) + "\n" +
                         text_element("desc", drawing.description, {{"id", drawing.id + "-desc"}}) + "\n";
    for (int number = 0; number < rows; ++number) {
        const Row row(drawing, number, reach);
        const double end = row.x(seconds);
        const double behind = row.y(drawing.left_behind);
        inside += scale_of(drawing, row, reach) + line("left-behind", left_margin, behind, end, behind) +
                  notes_of(drawing, row) + path_of(drawing, row);
    }
    return element("svg", inside,
                   {{"xmlns", "http://www.w3.org/2000/svg"},
                    {"class", "string-drawing"},
                    {"viewBox", "0 0 " + px(drawing.width) + " " + px(row_height * rows)},
                    {"role", "img"},
                    {"aria-labelledby", drawing.id + "-title " + drawing.id + "-desc"}}) +
           "\n";
}

}  // namespace sim::report
