// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/string_drawing.hpp"

#include "analysis/units.hpp"
#include "sim/report/html.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace sim::report {
namespace {

constexpr double row_height = 21.0;  // px, as all below
constexpr double head_height = 44.0;
constexpr double foot_height = 44.0;
constexpr double right_margin = 26.0;
constexpr double label_width = 76.0;
constexpr double least_tick_gap = 46.0;
constexpr double least_fret_gap = 17.0;

std::string px(double value) { return fixed_number(value, 1); }

/// Where things lie, and what has been drawn so far.
class Sheet {
public:
    explicit Sheet(const StringDrawing& drawing)
        : drawing_(&drawing),
          reach_(std::min(drawing.reach, drawing.length)),
          scale_((drawing.width - label_width - right_margin) / reach_),
          height_(head_height + row_height * static_cast<double>(drawing.rows.size()) + foot_height) {}

    double x(double from_bridge) const {
        return drawing_->width - right_margin - scale_ * std::clamp(from_bridge, 0.0, reach_);
    }
    bool shows(double from_bridge) const { return from_bridge <= reach_ * (1.0 + 1e-9); }
    double row_y(std::size_t row) const { return head_height + row_height * (static_cast<double>(row) + 0.5); }
    double top() const { return head_height; }
    double bottom() const { return height_ - foot_height; }
    double height() const { return height_; }
    double reach() const { return reach_; }
    double scale() const { return scale_; }

    void line(const char* look, double x1, double y1, double x2, double y2) {
        text_ +=
            empty_element("line", {{"class", look}, {"x1", px(x1)}, {"y1", px(y1)}, {"x2", px(x2)}, {"y2", px(y2)}}) +
            "\n";
    }
    void box(const char* look, double left, double top, double right, double bottom) {
        text_ += empty_element("rect", {{"class", look},
                                        {"x", px(left)},
                                        {"y", px(top)},
                                        {"width", px(std::max(0.0, right - left))},
                                        {"height", px(bottom - top)}}) +
                 "\n";
    }
    void circle(const char* look, double cx, double cy, double radius) {
        text_ += empty_element("circle", {{"class", look}, {"cx", px(cx)}, {"cy", px(cy)}, {"r", px(radius)}}) + "\n";
    }
    void words(const std::string& words, double at, double y, const char* anchor, const char* look = "") {
        text_ +=
            text_element("text", words, {{"class", look}, {"x", px(at)}, {"y", px(y)}, {"text-anchor", anchor}}) + "\n";
    }
    const std::string& text() const { return text_; }

private:
    const StringDrawing* drawing_;
    double reach_;
    double scale_;  // px/m
    double height_;
    std::string text_;
};

void draw_board(const StringDrawing& drawing, Sheet& sheet) {
    if (!sheet.shows(drawing.board_end)) return;
    sheet.box("board", sheet.x(sheet.reach()), sheet.top(), sheet.x(drawing.board_end), sheet.bottom());
}

/// Lines at the frets, numbers over them as far as there is room.
void draw_frets(const StringDrawing& drawing, Sheet& sheet) {
    double last = -1e9;
    for (std::size_t i = 0; i < drawing.frets.size(); ++i) {
        if (!sheet.shows(drawing.frets[i])) continue;
        const double x = sheet.x(drawing.frets[i]);
        sheet.line("fret", x, sheet.top(), x, sheet.bottom());
        if (x - last < least_fret_gap) continue;
        sheet.words(std::to_string(i + 1), x, sheet.top() - 5.0, "middle", "small");
        last = x;
    }
    if (!drawing.guide_fret || !sheet.shows(*drawing.guide_fret)) return;
    const double x = sheet.x(*drawing.guide_fret);
    sheet.line("guide", x, sheet.top(), x, sheet.bottom());
    sheet.words("guide fret", x, sheet.top() - 5.0, "middle", "small");
}

void draw_ends(const StringDrawing& drawing, Sheet& sheet) {
    const double bridge = sheet.x(0.0);
    sheet.box("floor", sheet.x(drawing.floor), sheet.top(), bridge, sheet.bottom());
    sheet.line("bridge", bridge, sheet.top() - 4.0, bridge, sheet.bottom() + 4.0);
    sheet.words("bridge", drawing.width - 2.0, sheet.top() - 22.0, "end");
    if (!sheet.shows(drawing.length)) return;
    const double nut = sheet.x(drawing.length);
    sheet.line("bridge", nut, sheet.top() - 4.0, nut, sheet.bottom() + 4.0);
    sheet.words("nut", nut, sheet.top() - 22.0, "middle");
}

/// Millimetres from the bridge, at steps that leave room for their numbers.
void draw_scale(const StringDrawing& drawing, Sheet& sheet) {
    constexpr std::array<double, 6> steps_mm{5.0, 10.0, 20.0, 50.0, 100.0, 200.0};
    const double px_a_mm = sheet.scale() * analysis::metres_from_mm(1.0);
    const auto enough = std::ranges::find_if(steps_mm, [&](double step) { return step * px_a_mm >= least_tick_gap; });
    const double step = enough != steps_mm.end() ? *enough : steps_mm.back();
    for (double mm = 0.0; mm <= analysis::mm_from_metres(sheet.reach()); mm += step) {
        const double x = sheet.x(analysis::metres_from_mm(mm));
        sheet.line("tick", x, sheet.bottom(), x, sheet.bottom() + 5.0);
        sheet.words(fixed_number(mm, 0), x, sheet.bottom() + 18.0, "middle", "small");
    }
    sheet.line("tick", sheet.x(sheet.reach()), sheet.bottom(), sheet.x(0.0), sheet.bottom());
    sheet.words("mm from the bridge", drawing.width - 2.0, sheet.bottom() + 36.0, "end", "small");
}

void draw_string(const StringDrawing& drawing, const StopRow& row, double y, Sheet& sheet) {
    const double finger = sheet.x(row.sounding);
    if (!row.open && sheet.shows(row.sounding)) sheet.line("idle", sheet.x(drawing.length), y, finger, y);
    sheet.line("string", finger, y, sheet.x(0.0), y);
    if (!row.open && sheet.shows(row.sounding)) sheet.circle("finger", finger, y, 4.5);
}

void draw_places(const StringDrawing& drawing, const StopRow& row, double y, Sheet& sheet) {
    if (row.near && row.far)
        sheet.box(row.is_band ? "band" : "stretch", sheet.x(*row.far), y - 7.0, sheet.x(*row.near), y + 7.0);
    if (row.left_behind && sheet.shows(*row.left_behind)) {
        const double x = sheet.x(*row.left_behind);
        sheet.line("behind", x - 4.5, y - 4.5, x + 4.5, y + 4.5);
        sheet.line("behind", x - 4.5, y + 4.5, x + 4.5, y - 4.5);
    }
    if (!row.best || !sheet.shows(*row.best)) return;
    const double half = std::max(1.0, 0.5 * drawing.hair_width * sheet.scale());
    const double x = sheet.x(*row.best);
    sheet.box("hair", x - half, y - 4.0, x + half, y + 4.0);
    sheet.line("best", x, y - 8.0, x, y + 8.0);
}

}  // namespace

std::string string_svg(const StringDrawing& drawing) {
    Sheet sheet(drawing);
    draw_board(drawing, sheet);
    draw_frets(drawing, sheet);
    draw_ends(drawing, sheet);
    draw_scale(drawing, sheet);
    for (std::size_t i = 0; i < drawing.rows.size(); ++i) {
        const double y = sheet.row_y(i);
        sheet.words(drawing.rows[i].label, label_width - 10.0, y + 4.5, "end");
        draw_string(drawing, drawing.rows[i], y, sheet);
        draw_places(drawing, drawing.rows[i], y, sheet);
    }
    const std::string inside = "\n" + text_element("title", drawing.title, {{"id", drawing.id + "-title"}}) + "\n" +
                               text_element("desc", drawing.description, {{"id", drawing.id + "-desc"}}) + "\n" +
                               sheet.text();
    return element("svg", inside,
                   {{"xmlns", "http://www.w3.org/2000/svg"},
                    {"class", "string-drawing"},
                    {"viewBox", "0 0 " + px(drawing.width) + " " + px(sheet.height())},
                    {"role", "img"},
                    {"aria-labelledby", drawing.id + "-title " + drawing.id + "-desc"}}) +
           "\n";
}

}  // namespace sim::report
