// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/tone_map_chart.hpp"

#include "gui/charts/draw.hpp"
#include "gui/charts/panel.hpp"
#include "gui/charts/shades.hpp"
#include "gui/charts/sheet.hpp"

#include <QGraphicsPathItem>
#include <QGraphicsScene>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <set>

namespace gui::charts {
namespace {

using ValueOf = std::optional<double> ToneCell::*;

constexpr double slot_width = (style::sheet_width - 2 * style::margin) / 2.0;  ///< px, of a map with all that is its
constexpr double axis_width = 70.0;
constexpr double steps_width = 128.0;
constexpr double title_height = 24.0;
constexpr double axis_height = 50.0;
constexpr double key_height = 52.0;  ///< of the legend that all maps share
constexpr double sharp_cents = 5.0;
constexpr double unclear_db = 0.0;

const Hatch silent_hatch{.pen = style::pen(style::ink, 0.9), .apart = 6.0};
const Hatch silent_rim{.pen = style::pen(Qt::white, 2.2), .apart = 6.0};
const QPen band_edge = style::pen(style::ink, 2.0);
const QPen stretch_edge = style::pen(style::ink, 2.0, {4, 2});
const QPen best_pen = style::pen(style::red, 2.6);
const QPen force_pen = style::pen(style::ink, 1.6, {7, 4});
const MarkStyle best_mark{
    .shape = MarkShape::triangle_down, .colour = style::red, .size = 14.0, .layer = style::top_mark_layer};

/// One of the four maps.
struct ToneMap {
    const char* title;
    ValueOf value;
    Shades shades;
};

/// Of the strokes that speak, if any does: a string that only rings would take most of the steps.
std::vector<double> values_of(const ToneMapChart& chart, ValueOf value) {
    const bool any = std::ranges::any_of(chart.cells, &ToneCell::speaks);
    std::vector<double> values;
    for (const ToneCell& cell : chart.cells)
        if (cell.*value && (cell.speaks || !any)) values.push_back(*(cell.*value));
    return values;
}

/// A pitch weaker than the rest of the sound is none to the ear, and there is no brightness above it.
void hide_unclear(ToneMapChart& chart) {
    for (ToneCell& cell : chart.cells) {
        if (cell.clarity_db.value_or(0.0) >= unclear_db) continue;
        cell.pitch_cents.reset();
        cell.brightness_f0.reset();
    }
}

std::array<ToneMap, 4> maps_of(const ToneMapChart& chart) {
    return {{{"flattening: pitch, cents from the note", &ToneCell::pitch_cents, Shades({-50, -20, -10, -5, 5}, true)},
             {"brightness: centroid, fundamentals",
              &ToneCell::brightness_f0,
              {round_edges(values_of(chart, &ToneCell::brightness_f0)), false}},
             {"level, dB re 1 N", &ToneCell::level_db, {round_edges(values_of(chart, &ToneCell::level_db)), false}},
             {"clarity of pitch, dB", &ToneCell::clarity_db, Shades({0, 10, 20, 30, 40}, false)}}};
}

/// Where cells meet: half way, by logarithm, between neighbouring values; the outermost are as wide as the next.
class Steps {
public:
    explicit Steps(const std::set<double>& values) : values_(values.begin(), values.end()) {
        if (values_.empty()) return;
        const double ends = values_.size() > 1 ? std::sqrt(values_[1] / values_[0]) : 1.5;
        edges_.push_back(values_.front() / ends);
        for (std::size_t i = 1; i < values_.size(); ++i) edges_.push_back(std::sqrt(values_[i - 1] * values_[i]));
        edges_.push_back(values_.back() * ends);
    }
    Scale scale() const {
        if (values_.empty()) return Extent(true).scale(0.0);
        return {.low = edges_.front(), .high = edges_.back(), .logarithmic = true};
    }
    std::pair<double, double> round(double value) const {
        const auto i =
            static_cast<std::size_t>(std::lower_bound(values_.begin(), values_.end(), value) - values_.begin());
        return {edges_[i], edges_[i + 1]};
    }

private:
    std::vector<double> values_;
    std::vector<double> edges_;
};

struct Grid {
    Steps contacts;
    Steps forces;
};

Grid grid_of(const ToneMapChart& chart) {
    std::set<double> contacts;
    std::set<double> forces;
    for (const ToneCell& cell : chart.cells) {
        contacts.insert(cell.contact_mm);
        forces.insert(cell.force_newtons);
    }
    return {Steps(contacts), Steps(forces)};
}

/// On whole pixels, so that no paper shows between neighbours.
QRectF box_of(const ToneCell& cell, const Grid& grid, const Panel& panel) {
    const auto [left, right] = grid.contacts.round(cell.contact_mm);
    const auto [low, high] = grid.forces.round(cell.force_newtons);
    const QRectF exact(panel.at(left, high), panel.at(right, low));
    const QRectF whole(QPointF(std::round(exact.left()), std::round(exact.top())),
                       QPointF(std::round(exact.right()), std::round(exact.bottom())));
    return whole.intersected(panel.plot());
}

void draw_shades(const ToneMapChart& chart, const ToneMap& map, const Grid& grid, Panel& panel, QGraphicsScene& scene) {
    std::vector<QPainterPath> steps(map.shades.count());
    for (const ToneCell& cell : chart.cells) {
        const auto& value = cell.*map.value;
        if (value && std::isfinite(*value)) steps[map.shades.step_of(*value)].addRect(box_of(cell, grid, panel));
    }
    for (std::size_t i = 0; i < steps.size(); ++i) {
        steps[i].setFillRule(Qt::WindingFill);
        scene.addPath(steps[i], Qt::NoPen, map.shades.colour(i))->setZValue(style::tint_layer);
    }
}

/// Neighbours up and down a column are hatched in one.
void hatch_unspoken(const ToneMapChart& chart, const Grid& grid, Panel& panel, QGraphicsScene& scene) {
    std::vector<ToneCell> cells = chart.cells;
    std::erase_if(cells, [](const ToneCell& cell) { return cell.speaks; });
    std::ranges::sort(cells, {}, [](const ToneCell& cell) { return std::pair(cell.contact_mm, cell.force_newtons); });
    QRectF run;
    const auto finish = [&] {
        if (run.isEmpty()) return;
        add_hatch(scene, run, silent_rim, style::hatch_layer);
        add_hatch(scene, run, silent_hatch, style::hatch_layer + 1.0);
    };
    for (const ToneCell& cell : cells) {
        const QRectF box = box_of(cell, grid, panel);
        const bool joins = !run.isEmpty() && run.left() == box.left() && std::abs(run.top() - box.bottom()) < 0.5;
        if (!joins) finish();
        run = joins ? run.united(box) : box;
    }
    finish();
}

/// Signs in cells: no pitch was found, or it is sharp.
void draw_signs(const ToneMapChart& chart, const ToneMap& map, Panel& panel) {
    Polyline pitchless;
    Polyline sharp;
    for (const ToneCell& cell : chart.cells) {
        const auto& value = cell.*map.value;
        if (!value) pitchless.push_back({cell.contact_mm, cell.force_newtons});
        if (value && map.value == &ToneCell::pitch_cents && *value >= sharp_cents)
            sharp.push_back({cell.contact_mm, cell.force_newtons});
    }
    panel.add_marks(pitchless,
                    {.shape = MarkShape::cross, .colour = style::ink, .size = 6.0, .layer = style::mark_layer});
    panel.add_marks(sharp,
                    {.shape = MarkShape::triangle, .colour = style::ink, .size = 6.0, .layer = style::mark_layer});
}

std::optional<BandStrip> shown_strip(const ToneMapChart& chart) { return chart.band ? chart.band : chart.stretch; }

void draw_lines(const ToneMapChart& chart, Panel& panel) {
    const auto upright = [&](double x, const QPen& pen) {
        panel.add_line({{x, panel.y().low}, {x, panel.y().high}}, {.pen = pen, .halo = true});
    };
    const auto level = [&](double y) {
        panel.add_line({{panel.x().low, y}, {panel.x().high, y}}, {.pen = force_pen, .halo = true});
    };
    if (chart.player_force) {
        level(chart.player_force->min_newtons);
        level(chart.player_force->max_newtons);
    }
    if (const auto strip = shown_strip(chart)) {
        upright(strip->near_mm, chart.band ? band_edge : stretch_edge);
        upright(strip->far_mm, chart.band ? band_edge : stretch_edge);
    }
    if (!chart.best_mm) return;
    upright(*chart.best_mm, best_pen);
    panel.add_marks({{*chart.best_mm, panel.y().low * std::pow(panel.y().high / panel.y().low, 0.97)}}, best_mark);
}

/// The steps of one map beside it, the greatest on top.
void add_steps(const ToneMap& map, const QRectF& plot, QGraphicsScene& scene) {
    const TextStyle words{.pixels = style::small_px};
    const double height = 22.0;
    double y = plot.top() + 2.0;
    for (std::size_t i = map.shades.count(); i-- > 0; y += height) {
        const QRectF box(plot.right() + 14.0, y, 26.0, height - 4.0);
        scene.addRect(box, style::pen(style::grey, 0.8), map.shades.colour(i));
        if (map.value == &ToneCell::pitch_cents && i + 1 == map.shades.count())
            add_marks(scene, {box.center()}, {.shape = MarkShape::triangle, .colour = style::ink, .size = 7.0});
        add_text(scene, QString::fromStdString(map.shades.label(i)), {box.right() + 6.0, box.center().y()},
                 Hold::left_middle, words);
    }
}

void draw_map(const ToneMapChart& chart, const ToneMap& map, const QRectF& slot, QGraphicsScene& scene) {
    const QRectF plot(slot.left() + axis_width, slot.top() + title_height, slot.width() - axis_width - steps_width,
                      slot.height() - title_height - axis_height);
    const Grid grid = grid_of(chart);
    Panel panel(scene, plot, grid.contacts.scale(), grid.forces.scale());
    add_text(scene, map.title, {plot.left(), plot.top() - 4.0 - line_height({}) / 2.0}, Hold::left_middle,
             {.bold = true});
    panel.add_x_axis("contact point, mm from the bridge");
    panel.add_y_axis("bow force, N", slot.left() + 10.0);
    draw_shades(chart, map, grid, panel, scene);
    hatch_unspoken(chart, grid, panel, scene);
    draw_signs(chart, map, panel);
    draw_lines(chart, panel);
    add_steps(map, plot, scene);
}

/// The legend that all maps share, in lines across the sheet.
class Key {
public:
    Key(QGraphicsScene& scene, double top) : scene_(&scene), y_(top) {}
    void add(const QString& text, const std::function<void(const QRectF&)>& sample) {
        const TextStyle words{.pixels = 13};
        const double width = sample_width + 6.0 + text_width(text, words);
        if (x_ > style::margin && x_ + width > style::sheet_width - style::margin) {
            x_ = style::margin;
            y_ += line_height(words) + 5.0;
        }
        sample(QRectF(x_, y_, sample_width, 16.0));
        add_text(*scene_, text, {x_ + sample_width + 6.0, y_ + 8.0}, Hold::left_middle, words);
        x_ += width + 22.0;
    }
    void add_line(const QString& text, const QPen& pen) {
        add(text, [&](const QRectF& box) {
            scene_->addLine(box.left(), box.center().y(), box.right(), box.center().y(), pen);
        });
    }
    void add_mark(const QString& text, const MarkStyle& mark, const QPen& pen = Qt::NoPen) {
        add(text, [&](const QRectF& box) {
            if (pen.style() != Qt::NoPen)
                scene_->addLine(box.left(), box.center().y(), box.right(), box.center().y(), pen);
            add_marks(*scene_, {box.center()}, mark);
        });
    }

private:
    static constexpr double sample_width = 30.0;
    QGraphicsScene* scene_;
    double x_ = style::margin;
    double y_;
};

void add_key(const ToneMapChart& chart, double top, QGraphicsScene& scene) {
    Key key(scene, top);
    key.add("does not speak in time", [&](const QRectF& box) { add_hatched_box(scene, box, Qt::white, silent_hatch); });
    key.add_mark("no pitch, or clarity under 0 dB", {.shape = MarkShape::cross, .colour = style::ink, .size = 8.0});
    key.add_mark("sharp", {.shape = MarkShape::triangle, .colour = style::ink, .size = 8.0});
    if (chart.player_force) key.add_line("player's range of force", force_pen);
    if (chart.band) key.add_line("edges of the contact band", band_edge);
    if (!chart.band && chart.stretch) key.add_line("edges of the most secure stretch, no band", stretch_edge);
    if (chart.best_mm) key.add_mark("best contact point", best_mark, best_pen);
}

bool can_be_drawn(const ToneCell& cell) {
    const Scale logarithmic{.low = 0.1, .logarithmic = true};
    return logarithmic.shows(cell.contact_mm) && logarithmic.shows(cell.force_newtons);
}

}  // namespace

std::unique_ptr<QGraphicsScene> draw(const ToneMapChart& chart) {
    ToneMapChart usable = chart;
    std::erase_if(usable.cells, [](const ToneCell& cell) { return !can_be_drawn(cell); });
    hide_unclear(usable);
    std::string warning;
    if (!usable.band) warning = usable.reason.empty() ? "No contact band." : "No contact band: " + usable.reason;
    Sheet sheet = make_sheet({.title = usable.title, .subtitle = usable.subtitle, .warning = warning});
    const double top = sheet.content_top + 6.0;
    const double height = (style::sheet_height - key_height - top) / 2.0;
    const std::array<ToneMap, 4> maps = maps_of(usable);
    for (std::size_t i = 0; i < maps.size(); ++i) {
        const QPointF corner(style::margin + slot_width * static_cast<double>(i % 2),
                             top + height * static_cast<double>(i / 2));
        draw_map(usable, maps[i], QRectF(corner, QSizeF(slot_width, height)), *sheet.scene);
    }
    add_key(usable, style::sheet_height - key_height + 6.0, *sheet.scene);
    return std::move(sheet.scene);
}

}  // namespace gui::charts
