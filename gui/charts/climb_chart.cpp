// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/climb_chart.hpp"

#include "gui/charts/climb_look.hpp"
#include "gui/charts/climb_panels.hpp"
#include "gui/charts/draw.hpp"
#include "gui/charts/sheet.hpp"

#include <algorithm>

namespace gui::charts {
namespace {

namespace look = climb_look;

constexpr double gap_between = 20.0;   ///< px between the panels
constexpr double contact_share = 0.5;  ///< of the height, the rest shared by the two others

/// Rectangles of the three panels, from the top down.
struct Layout {
    QRectF contact;
    QRectF ratio;
    QRectF security;
};

Layout layout_below(double top) {
    const double height = style::sheet_height - 58.0 - top - 2 * gap_between;
    const double width = style::plot_right - style::plot_left;
    const double small = height * (1.0 - contact_share) / 2.0;
    const QRectF contact(style::plot_left, top, width, height * contact_share);
    const QRectF ratio(style::plot_left, contact.bottom() + gap_between, width, small);
    return {contact, ratio, QRectF(style::plot_left, ratio.bottom() + gap_between, width, small)};
}

struct NoteName {
    QString text;
    double x;     ///< px, its middle
    double half;  ///< px, half its width
};

bool fit(const std::vector<NoteName>& names, std::size_t every) {
    for (std::size_t i = every; i < names.size(); i += every)
        if (names[i].x - names[i].half < names[i - every].x + names[i - every].half + 5.0) return false;
    return true;
}

/// Above the frame; where there is no room for all, every second or third … is written.
void add_note_names(const ClimbChart& chart, const Panel& panel, QGraphicsScene& scene) {
    const TextStyle style{.pixels = style::small_px, .colour = style::soft_ink};
    std::vector<NoteName> names;
    for (const ClimbChartStop& stop : chart.stops) {
        const QString text = QString::fromStdString(stop.note_name);
        if (!panel.x().shows(stop.stop_semitones)) continue;
        names.push_back({text, panel.x_at(stop.stop_semitones), text_width(text, style) / 2.0});
    }
    std::size_t every = 1;
    while (!fit(names, every)) ++every;
    for (std::size_t i = 0; i < names.size(); i += every)
        add_text(scene, names[i].text, {names[i].x, panel.plot().top() - 3.0}, Hold::centre_bottom, style);
}

void add_area_sample(SideColumn& side, const QString& text, const QColor& tint, const QPen& stroke, double apart) {
    side.add_sample(text, [&](QGraphicsScene& scene, const QRectF& place) {
        add_hatched_box(scene, place, tint, {.pen = Qt::NoPen});
        for (double x = place.left() + 3.0; x < place.right(); x += apart)
            scene.addLine(x, place.top(), x, place.bottom(), stroke);
    });
}

bool fails_behind(const ClimbChartStop& stop) { return stop.security_left_behind.value_or(1.0) < look::least_security; }
bool holds_behind(const ClimbChartStop& stop) {
    return stop.security_left_behind.value_or(0.0) >= look::least_security;
}
bool has_band(const ClimbChartStop& stop) { return stop.band.has_value(); }
bool has_only_stretch(const ClimbChartStop& stop) { return !stop.band && stop.stretch; }
bool has_only_best(const ClimbChartStop& stop) { return !stop.band && stop.best_mm; }

void add_legend(const ClimbChart& chart, SideColumn& side) {
    const auto any = [&](auto test) { return std::any_of(chart.stops.begin(), chart.stops.end(), test); };
    side.add_heading("lines and areas");
    side.add_line("bow follows: best contact point", look::follows, {look::best});
    if (any(has_only_best)) side.add_mark("best contact point, no band", look::bandless);
    if (any(has_band)) add_area_sample(side, "contact band", style::pale_blue, look::band_stroke, look::strokes_apart);
    if (any(has_only_stretch)) {
        add_area_sample(side, "most secure stretch, no band", Qt::white, look::stretch_stroke,
                        look::stretch_strokes_apart);
    }
    if (chart.left_behind_mm) {
        side.add_line("bow left behind", look::behind, {});
        if (any(holds_behind)) side.add_mark("left behind, security one half or more", look::held);
        if (any(fails_behind)) side.add_mark("left behind, security under one half", look::failing);
    }
    if (!std::all_of(chart.stops.begin(), chart.stops.end(), has_band)) {
        side.add_sample("no band at this stop", [](QGraphicsScene& scene, const QRectF& place) {
            add_hatched_box(scene, place, style::pale_grey, look::none_hatch);
            add_marks(scene, {place.center()}, look::none);
        });
    }
    side.add_line("security one half", look::half);
    if (chart.band_share) {
        side.add_line(QString::fromStdString("security asked of a band: " + number_text(*chart.band_share)),
                      look::share);
    }
    side.add_space(8.0);
}

void add_words(const ClimbChart& chart, SideColumn& side) {
    for (const std::string& note : chart.notes) side.add_note(note, {.pixels = 13});
    for (const std::string& sentence : bandless_sentences(chart)) side.add_note(sentence);
}

}  // namespace

std::unique_ptr<QGraphicsScene> draw(const ClimbChart& chart) {
    const bool none = std::none_of(chart.stops.begin(), chart.stops.end(), has_band);
    Sheet sheet = make_sheet(
        {.title = chart.title, .subtitle = chart.subtitle, .warning = none ? "No contact band at any stop." : ""});
    const double top = sheet.content_top + 26.0;
    const Layout layout = layout_below(top);
    const Scale stops = climb_stop_scale(chart);
    Panel contact(*sheet.scene, layout.contact, stops, climb_contact_scale(chart));
    Panel ratio(*sheet.scene, layout.ratio, stops, climb_ratio_scale(chart));
    Panel security(*sheet.scene, layout.security, stops, {.low = -0.04, .high = 1.04});
    contact.add_x_axis("", false, 1.0);
    ratio.add_x_axis("", false, 1.0);
    security.add_x_axis("stop, semitones above the open string", true, 1.0);
    contact.add_y_axis("contact point, mm from the bridge");
    ratio.add_y_axis("contact point / sounding length");
    security.add_y_axis("security, share");
    add_note_names(chart, contact, *sheet.scene);
    draw_climb_contact(chart, contact, *sheet.scene);
    draw_climb_ratio(chart, ratio);
    draw_climb_security(chart, security);
    SideColumn side(*sheet.scene, top);
    add_legend(chart, side);
    add_words(chart, side);
    return std::move(sheet.scene);
}

}  // namespace gui::charts
