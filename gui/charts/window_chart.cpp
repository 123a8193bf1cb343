// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/window_chart.hpp"

#include "gui/charts/draw.hpp"
#include "gui/charts/panel.hpp"
#include "gui/charts/sheet.hpp"

#include <QGraphicsRectItem>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

namespace gui::charts {
namespace {

/// What one kind of cell looks like, and its words in the legend.
struct CellLook {
    const char* name = "";
    MarkShape shape = MarkShape::disc;
    QColor colour;
};

const std::array<CellLook, 8>& cell_looks() {
    static const std::array<CellLook, 8> looks{{
        {"speaks and keeps its tone", MarkShape::disc, style::blue},
        {"speaks, loses its tone", MarkShape::half_disc, style::blue},
        {"Helmholtz motion, speaks too late", MarkShape::ring, style::blue},
        {"multiple slip (surface sound)", MarkShape::triangle, style::orange},
        {"raucous", MarkShape::cross, style::red},
        {"anomalous low", MarkShape::open_triangle_down, style::purple},
        {"S-motion", MarkShape::open_diamond, style::green},
        {"silent", MarkShape::dot, style::soft_ink},
    }};
    return looks;
}

std::size_t look_of(const WindowCell& cell) {
    if (cell.motion == CellMotion::helmholtz) {
        if (!cell.speaks) return 2;
        return cell.keeps_tone ? 0 : 1;
    }
    return 2 + static_cast<std::size_t>(cell.motion);
}

const QPen band_edge = style::pen(style::blue, 1.5);
const Hatch band_hatch{.pen = style::pen(style::mid_blue, 1.2), .apart = 7.0};
const Hatch other_hatch{.pen = style::pen(style::mid_grey, 1.0), .apart = 11.0, .rising = false};
const QPen stretch_edge = style::pen(style::soft_ink, 1.2, {4, 3});
const Hatch stretch_hatch{.pen = style::pen(style::mid_grey, 1.0), .apart = 11.0};
const Hatch floor_hatch{.pen = style::pen(style::mid_grey, 1.0), .apart = 5.0, .rising = false};
const QPen best_pen = style::pen(style::ink, 2.2);
const QPen force_pen = style::pen(style::ink, 1.4, {7, 4});
const QPen loss_pen = style::pen(style::soft_ink, 1.2, {2, 3});
constexpr double bracket_width = 7.0;

/// Limits differ by dashes as well.
LineStyle limit_style(std::size_t index) {
    static const std::array<QPen, 4> pens{style::pen(style::red, 2.4), style::pen(style::green, 2.4, {6, 2.5}),
                                          style::pen(style::purple, 2.4, {2, 1.5}),
                                          style::pen(style::ink, 2.4, {8, 2, 2, 2})};
    return {.pen = pens[index % pens.size()], .halo = true};
}

std::string mm_text(double mm) { return number_text(mm) + " mm"; }

std::optional<BandStrip> shown_stretch(const WindowChart& chart) { return chart.band ? std::nullopt : chart.stretch; }

bool can_be_drawn(const WindowCell& cell) {
    const Scale logarithmic{.low = 0.1, .logarithmic = true};
    return logarithmic.shows(cell.contact_mm) && logarithmic.shows(cell.force_newtons);
}

Scale contact_scale(const WindowChart& chart) {
    Extent extent(true);
    for (const WindowCell& cell : chart.cells) extent.add(cell.contact_mm);
    for (const auto& place : {chart.best_mm, chart.floor_mm})
        if (place) extent.add(*place);
    for (const auto& strip : {chart.band, shown_stretch(chart)}) {
        if (!strip) continue;
        extent.add(strip->near_mm);
        extent.add(strip->far_mm);
    }
    if (chart.cells.empty())
        for (const LimitCurve& curve : chart.limits)
            for (const WindowPointOfCurve& point : curve.points) extent.add(point.contact_mm);
    return extent.scale(0.03);
}

Scale force_scale(const WindowChart& chart) {
    Extent extent(true);
    for (const WindowCell& cell : chart.cells) extent.add(cell.force_newtons);
    if (chart.player_force) {
        extent.add(chart.player_force->min_newtons);
        extent.add(chart.player_force->max_newtons);
    }
    if (chart.cells.empty())
        for (const LimitCurve& curve : chart.limits)
            for (const WindowPointOfCurve& point : curve.points) extent.add(point.force_newtons);
    return extent.scale(0.05);
}

/// Small enough that neighbours don't touch.
double cell_size(const WindowChart& chart, const Panel& panel) {
    std::set<double> contacts;
    std::set<double> forces;
    for (const WindowCell& cell : chart.cells) {
        contacts.insert(std::round(panel.x_at(cell.contact_mm)));
        forces.insert(std::round(panel.y_at(cell.force_newtons)));
    }
    const double columns = static_cast<double>(std::max<std::size_t>(contacts.size(), 1));
    const double rows = static_cast<double>(std::max<std::size_t>(forces.size(), 1));
    return std::clamp(0.62 * std::min(panel.plot().width() / columns, panel.plot().height() / rows), 3.5, 13.0);
}

void draw_cells(const WindowChart& chart, Panel& panel) {
    std::array<Polyline, 8> places;
    for (const WindowCell& cell : chart.cells) places[look_of(cell)].push_back({cell.contact_mm, cell.force_newtons});
    const double size = cell_size(chart, panel);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const CellLook& look = cell_looks()[i];
        panel.add_marks(places[i],
                        {.shape = look.shape, .colour = look.colour, .size = size, .layer = style::mark_layer});
    }
}

void draw_strips(const WindowChart& chart, Panel& panel) {
    if (chart.floor_mm) panel.add_strip(panel.x().low, *chart.floor_mm, style::pale_grey, floor_hatch);
    for (const BandStrip& band : chart.other_bands)
        panel.add_strip(band.near_mm, band.far_mm, style::pale_blue, other_hatch);
    const auto draw_edged = [&](const std::optional<BandStrip>& strip, const Hatch& hatch, const QPen& edge) {
        if (!strip) return;
        panel.add_strip(strip->near_mm, strip->far_mm, hatch == band_hatch ? style::pale_blue : QColor(Qt::white),
                        hatch);
        panel.add_upright_line(strip->near_mm, edge);
        panel.add_upright_line(strip->far_mm, edge);
    };
    draw_edged(chart.band, band_hatch, band_edge);
    draw_edged(shown_stretch(chart), stretch_hatch, stretch_edge);
}

/// The range's two ends, and a bar beside the plot from one to the other.
void draw_player_force(const ForceRange& range, Panel& panel, QGraphicsScene& scene) {
    panel.add_level_line(range.min_newtons, force_pen);
    panel.add_level_line(range.max_newtons, force_pen);
    if (!panel.y().shows(range.min_newtons) || !panel.y().shows(range.max_newtons)) return;
    const QRectF bar(QPointF(panel.plot().right() + 4, panel.y_at(range.max_newtons)),
                     QPointF(panel.plot().right() + 4 + bracket_width, panel.y_at(range.min_newtons)));
    scene.addRect(bar, Qt::NoPen, style::ink);
}

/// Labels stand above the frame; one that would touch the last is left out, its line stays.
void draw_level_loss(const WindowChart& chart, Panel& panel, QGraphicsScene& scene) {
    const TextStyle text{.pixels = style::small_px, .colour = style::soft_ink};
    std::vector<LevelLossLine> lines = chart.level_loss;
    std::sort(lines.begin(), lines.end(), [](const auto& a, const auto& b) { return a.contact_mm < b.contact_mm; });
    double taken = panel.plot().left();
    for (const LevelLossLine& line : lines) {
        if (!panel.holds(line.contact_mm, panel.y().low)) continue;
        panel.add_upright_line(line.contact_mm, loss_pen);
        const QString label = QStringLiteral("−%1 dB").arg(QString::fromStdString(number_text(line.loss_db)));
        const double half = text_width(label, text) / 2.0 + 2.0;
        const double x = std::min(panel.x_at(line.contact_mm), panel.plot().right() - half);
        if (x - half < taken) continue;
        add_text(scene, label, {x, panel.plot().top() - 3.0}, Hold::centre_bottom, text);
        taken = x + half + 4.0;
    }
}

void draw_best(double best_mm, Panel& panel) {
    panel.add_upright_line(best_mm, best_pen);
    const double top = panel.y().low * std::pow(panel.y().high / panel.y().low, 0.985);
    panel.add_marks(
        {{best_mm, top}},
        {.shape = MarkShape::triangle_down, .colour = style::ink, .size = 15.0, .layer = style::top_mark_layer});
}

void add_cell_legend(const WindowChart& chart, SideColumn& side) {
    std::set<std::size_t> present;
    for (const WindowCell& cell : chart.cells) present.insert(look_of(cell));
    if (present.empty()) return;
    side.add_heading("one stroke each");
    for (const std::size_t i : present) {
        const CellLook& look = cell_looks()[i];
        side.add_mark(look.name, {.shape = look.shape, .colour = look.colour, .size = 13.0});
    }
    side.add_space(6.0);
}

void add_box_sample(SideColumn& side, const QString& text, const QColor& tint, const Hatch& hatch) {
    side.add_sample(text,
                    [&](QGraphicsScene& scene, const QRectF& place) { add_hatched_box(scene, place, tint, hatch); });
}

void add_line_legend(const WindowChart& chart, SideColumn& side) {
    const bool any = chart.band || chart.stretch || !chart.other_bands.empty() || chart.best_mm || chart.player_force ||
                     !chart.limits.empty() || !chart.level_loss.empty() || chart.floor_mm;
    if (any) side.add_heading("lines and areas");
    if (chart.band) add_box_sample(side, "contact band", style::pale_blue, band_hatch);
    if (shown_stretch(chart)) add_box_sample(side, "most secure stretch, no band", Qt::white, stretch_hatch);
    if (!chart.other_bands.empty()) add_box_sample(side, "further bands", style::pale_blue, other_hatch);
    if (chart.best_mm) {
        side.add_line(chart.band ? "best contact point" : "best contact point, no band", best_pen,
                      {{.shape = MarkShape::triangle_down, .colour = style::ink, .size = 13.0}});
    }
    if (chart.player_force) side.add_line("player's range of force", force_pen);
    for (std::size_t i = 0; i < chart.limits.size(); ++i)
        side.add_line(QString::fromStdString(chart.limits[i].name), limit_style(i).pen);
    if (!chart.level_loss.empty()) side.add_line("level lost to the contact point", loss_pen);
    if (chart.floor_mm) add_box_sample(side, "under the floor: no room for the hair", style::pale_grey, floor_hatch);
    side.add_space(6.0);
}

void add_band_words(const WindowChart& chart, SideColumn& side) {
    const TextStyle strong{.pixels = 13, .bold = true};
    const TextStyle plain{.pixels = 13};
    const auto strip = chart.band ? chart.band : chart.stretch;
    if (!chart.band) side.add_note("no contact band", strong);
    if (strip) {
        const std::string name = chart.band ? "band " : "most secure stretch ";
        side.add_note(name + number_text(strip->near_mm) + " to " + mm_text(strip->far_mm),
                      chart.band ? strong : plain);
        if (!strip->near_bound.empty()) side.add_note("nearer the bridge: " + strip->near_bound, plain);
        if (!strip->far_bound.empty()) side.add_note("farther from it: " + strip->far_bound, plain);
    }
    if (chart.best_mm) side.add_note("best contact point " + mm_text(*chart.best_mm), plain);
    for (const std::string& note : chart.notes) side.add_note(note);
}

}  // namespace

std::unique_ptr<QGraphicsScene> draw(const WindowChart& chart) {
    WindowChart usable = chart;
    std::erase_if(usable.cells, [](const WindowCell& cell) { return !can_be_drawn(cell); });
    std::string warning;
    if (!usable.band) warning = usable.reason.empty() ? "No contact band." : "No contact band: " + usable.reason;
    Sheet sheet = make_sheet({.title = usable.title, .subtitle = usable.subtitle, .warning = warning});
    const double top = sheet.content_top + (usable.level_loss.empty() ? 12.0 : 26.0);
    const QRectF plot(QPointF(style::plot_left, top), QPointF(style::plot_right, style::sheet_height - 58.0));
    Panel panel(*sheet.scene, plot, contact_scale(usable), force_scale(usable));
    panel.add_x_axis("contact point, mm from the bridge");
    panel.add_y_axis("bow force, N");
    draw_strips(usable, panel);
    draw_cells(usable, panel);
    draw_level_loss(usable, panel, *sheet.scene);
    if (usable.player_force) draw_player_force(*usable.player_force, panel, *sheet.scene);
    for (std::size_t i = 0; i < usable.limits.size(); ++i) {
        Polyline line;
        for (const WindowPointOfCurve& point : usable.limits[i].points)
            line.push_back({point.contact_mm, point.force_newtons});
        panel.add_line(line, limit_style(i));
    }
    if (usable.best_mm) draw_best(*usable.best_mm, panel);
    SideColumn side(*sheet.scene, top);
    add_cell_legend(usable, side);
    add_line_legend(usable, side);
    add_band_words(usable, side);
    return std::move(sheet.scene);
}

}  // namespace gui::charts
