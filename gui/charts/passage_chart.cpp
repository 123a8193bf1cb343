// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/passage_chart.hpp"

#include "gui/charts/climb_look.hpp"
#include "gui/charts/draw.hpp"
#include "gui/charts/panel.hpp"
#include "gui/charts/sheet.hpp"

#include <QGraphicsRectItem>
#include <QGraphicsScene>
#include <QPainterPath>

#include <algorithm>

namespace gui::charts {
namespace {

namespace look = climb_look;

constexpr std::size_t most_notes = 60;
constexpr double name_row = 15.0;        // px, a row of names or the brackets' numbers
constexpr double bracket_height = 22.0;  // px
constexpr double board_share = 0.3;      // of the height, for the stops
constexpr double gap = 18.0;             // px between the plots
constexpr double between_names = 4.0;    // px
constexpr double box_gap = 1.0;          // px, between the boxes of neighbouring notes

const QPen stop_pen = style::pen(style::green, 4.0);
const QPen bracket_pen = style::pen(style::purple, 1.6);
const QPen path_pen = style::pen(style::blue, 2.6);
const TextStyle small_text{.pixels = style::small_px, .colour = style::ink};
const TextStyle bracket_text{.pixels = style::small_px, .bold = true, .colour = style::purple};
const MarkStyle best_mark{.shape = MarkShape::disc, .colour = style::blue, .size = 6.0, .layer = style::top_mark_layer};
const MarkStyle follows_fails{
    .shape = MarkShape::cross, .colour = style::ink, .size = 13.0, .layer = style::top_mark_layer};

std::vector<PassageNote> shown_notes(const PassageChart& chart) {
    return {chart.notes.begin(),
            chart.notes.begin() + static_cast<std::ptrdiff_t>(std::min(most_notes, chart.notes.size()))};
}

Scale time_scale(const std::vector<PassageNote>& notes) {
    if (notes.empty()) return {};
    const double length = notes.back().to_s - notes.front().from_s;
    return {.low = notes.front().from_s - 0.01 * length, .high = notes.back().to_s + 0.01 * length};
}

Scale from_zero(Extent& extent) {
    extent.add(0.0);
    Scale scale = extent.scale(0.08);
    scale.low = 0.0;
    return scale;
}

Scale contact_scale(const PassageChart& chart, const std::vector<PassageNote>& notes) {
    Extent extent(false);
    if (chart.left_behind_mm) extent.add(*chart.left_behind_mm);
    for (const PassageNote& note : notes) {
        if (note.best_mm) extent.add(*note.best_mm);
        for (const auto& area : {note.band, note.band ? std::nullopt : note.stretch})
            if (area) extent.add(area->far_mm);
    }
    return from_zero(extent);
}

Scale stop_scale(const std::vector<PassageNote>& notes) {
    Extent extent(false);
    extent.add(50.0);
    for (const PassageNote& note : notes) extent.add(note.stop_mm);
    Scale scale = from_zero(extent);
    scale.low = -0.08 * scale.high;
    return scale;
}

struct Name {
    QString text;
    double x;  // px, its middle
};

/// In so many rows, one name after the other, none touches the next of its row.
bool fit(const std::vector<Name>& names, std::size_t rows) {
    for (std::size_t i = rows; i < names.size(); ++i) {
        const double room = names[i].x - names[i - rows].x - between_names;
        if (room < (text_width(names[i].text, small_text) + text_width(names[i - rows].text, small_text)) / 2.0)
            return false;
    }
    return true;
}

std::vector<Name> names_of(const std::vector<PassageNote>& notes, const Scale& time) {
    const double width = style::plot_right - style::plot_left;
    std::vector<Name> names;
    for (const PassageNote& note : notes)
        names.push_back({QString::fromStdString(note.name),
                         style::plot_left + width * time.share((note.from_s + note.to_s) / 2.0)});
    return names;
}

std::size_t rows_for(const std::vector<Name>& names) {
    std::size_t rows = 1;
    while (rows < 4 && !fit(names, rows)) ++rows;
    return rows;
}

/// Where there is no room even in four rows, every second or third … name of a row is written.
void add_names(const std::vector<Name>& names, std::size_t rows, double top, QGraphicsScene& scene) {
    std::vector<double> free_from(rows, 0.0);
    for (std::size_t i = 0; i < names.size(); ++i) {
        const double half = text_width(names[i].text, small_text) / 2.0;
        double& from = free_from[i % rows];
        if (names[i].x - half < from) continue;
        from = names[i].x + half + between_names;
        add_text(scene, names[i].text, {names[i].x, top + name_row * static_cast<double>(i % rows)}, Hold::centre_top,
                 small_text);
    }
}

void add_brackets(const PassageChart& chart, const Panel& panel, double top, QGraphicsScene& scene) {
    for (std::size_t i = 0; i < chart.hand_places.size(); ++i) {
        const PassageHandPlace& place = chart.hand_places[i];
        if (place.from_s >= panel.x().high) break;
        const double left = panel.x_at(place.from_s) + 2.0;
        const double right = panel.x_at(std::min(place.to_s, panel.x().high)) - 2.0;
        const double bar = top + bracket_height - 6.0;
        const QString number = QString::number(i + 1);
        QPainterPath path({left, bar + 5.0});
        path.lineTo(left, bar);
        path.lineTo(right, bar);
        path.lineTo(right, bar + 5.0);
        scene.addPath(path, bracket_pen);
        add_text(scene, number, {(left + right) / 2.0, bar - 1.0}, Hold::centre_bottom, bracket_text);
    }
}

void draw_stops(const std::vector<PassageNote>& notes, Panel& panel, QGraphicsScene& scene) {
    for (const PassageNote& note : notes) {
        panel.add_line({{note.from_s, note.stop_mm}, {note.to_s, note.stop_mm}}, {.pen = stop_pen});
        const double middle = (note.from_s + note.to_s) / 2.0;
        add_text(scene, QString::number(note.finger), {panel.x_at(middle), panel.y_at(note.stop_mm) - 3.0},
                 Hold::centre_bottom, small_text);
    }
}

QRectF box_of(const PassageNote& note, const ClimbBand& band, const Panel& panel) {
    const double top = std::max(panel.y_at(band.far_mm), panel.plot().top());
    return QRectF(QPointF(panel.x_at(note.from_s) + box_gap, top),
                  QPointF(panel.x_at(note.to_s) - box_gap, panel.y_at(band.near_mm)));
}

void add_band_box(QGraphicsScene& scene, const QRectF& box) {
    add_hatched_box(scene, box, style::pale_blue, {.pen = look::band_stroke, .apart = 6.0});
    scene.addRect(box, look::edge)->setZValue(style::hatch_layer + 1.0);
}

void add_stretch_box(QGraphicsScene& scene, const QRectF& box) {
    scene.addRect(box, look::stretch_edge, style::faint_grey)->setZValue(style::tint_layer);
}

void draw_bow(const PassageChart& chart, const std::vector<PassageNote>& notes, Panel& panel, QGraphicsScene& scene) {
    Polyline best;
    Polyline behind_fails;
    Polyline fails;
    for (const PassageNote& note : notes) {
        const double middle = (note.from_s + note.to_s) / 2.0;
        if (note.band)
            add_band_box(scene, box_of(note, *note.band, panel));
        else if (note.stretch)
            add_stretch_box(scene, box_of(note, *note.stretch, panel));
        if (note.best_mm) best.push_back({middle, *note.best_mm});
        if (note.behind_fails && chart.left_behind_mm) behind_fails.push_back({middle, *chart.left_behind_mm});
        if (note.follows_fails) fails.push_back({middle, 0.035 * panel.y().high});
    }
    Polyline path;
    for (const PassagePathPoint& point : chart.path) path.push_back({point.time_s, point.contact_mm});
    if (chart.left_behind_mm) panel.add_level_line(*chart.left_behind_mm, look::behind);
    panel.add_line(path, {.pen = path_pen, .halo = true});
    panel.add_marks(best, best_mark);
    panel.add_marks(behind_fails, look::failing);
    panel.add_marks(fails, follows_fails);
}

void add_legend(const PassageChart& chart, const std::vector<PassageNote>& notes, SideColumn& side) {
    const auto any = [&](auto test) { return std::ranges::any_of(notes, test); };
    side.add_heading("the hand");
    side.add_line("stop; the number is the finger, 0 the open string", stop_pen);
    for (std::size_t i = 0; i < chart.hand_places.size(); ++i)
        side.add_line("hand place " + QString::number(i + 1) + ": " + QString::fromStdString(chart.hand_places[i].name),
                      bracket_pen);
    side.add_space(6.0);
    side.add_heading("the bow");
    side.add_line("following: its path", path_pen);
    side.add_mark("a note's best contact point", best_mark);
    if (any([](const PassageNote& note) { return note.band.has_value(); }))
        side.add_sample("contact band", [](auto& scene, const QRectF& place) { add_band_box(scene, place); });
    if (any([](const PassageNote& note) { return !note.band && note.stretch; }))
        side.add_sample("most secure stretch, no band",
                        [](auto& scene, const QRectF& place) { add_stretch_box(scene, place); });
    if (chart.left_behind_mm) side.add_line("left behind", look::behind);
    if (any([](const PassageNote& note) { return note.behind_fails; }))
        side.add_mark("left behind, not Helmholtz motion", look::failing);
    if (any([](const PassageNote& note) { return note.follows_fails; }))
        side.add_mark("following, not Helmholtz motion", follows_fails);
    side.add_space(6.0);
    if (notes.size() < chart.notes.size())
        side.add_note("Only the first " + std::to_string(notes.size()) + " of " + std::to_string(chart.notes.size()) +
                      " notes are drawn.");
    for (const std::string& remark : chart.remarks) side.add_note(remark);
}

}  // namespace

std::unique_ptr<QGraphicsScene> draw(const PassageChart& chart) {
    Sheet sheet = make_sheet({.title = chart.title, .subtitle = chart.subtitle, .warning = ""});
    const std::vector<PassageNote> notes = shown_notes(chart);
    const Scale time = time_scale(notes);
    const std::vector<Name> names = names_of(notes, time);
    const std::size_t rows = rows_for(names);
    const double names_top = sheet.content_top + 8.0;
    const double brackets_top = names_top + name_row * static_cast<double>(rows);
    const double top = brackets_top + bracket_height;
    const double height = style::sheet_height - 58.0 - top - gap;
    const double width = style::plot_right - style::plot_left;
    const QRectF above(style::plot_left, top, width, height * board_share);
    Panel board(*sheet.scene, above, time, stop_scale(notes));
    Panel bow(*sheet.scene, {style::plot_left, above.bottom() + gap, width, height * (1.0 - board_share)}, time,
              contact_scale(chart, notes));
    board.add_x_axis("", false);
    board.add_y_axis("stop, mm from the nut");
    bow.add_x_axis("time, s");
    bow.add_y_axis("contact point, mm from the bridge");
    add_names(names, rows, names_top, *sheet.scene);
    add_brackets(chart, board, brackets_top, *sheet.scene);
    draw_stops(notes, board, *sheet.scene);
    draw_bow(chart, notes, bow, *sheet.scene);
    SideColumn side(*sheet.scene, names_top);
    add_legend(chart, notes, side);
    return std::move(sheet.scene);
}

}  // namespace gui::charts
