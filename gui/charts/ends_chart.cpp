// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/ends_chart.hpp"

#include "gui/charts/draw.hpp"
#include "gui/charts/panel.hpp"
#include "gui/charts/sheet.hpp"

#include <array>

namespace gui::charts {
namespace {

constexpr double between_panels = 74.0;  // px
constexpr double forces_share = 0.58;    // of the height, the upper panel
const QPen place_pen = style::pen(style::soft_ink, 1.4, {2, 3});

struct Look {
    QPen least;
    QPen greatest;
    MarkStyle mark;
};

/// Dashes, colour and shape all change.  The first hard end has a wide open mark: the second lies on top of it.
Look look_of(const EndsChart& chart, std::size_t index) {
    static const std::array<QColor, 2> hard_colours{style::ink, style::blue};
    static const std::array<QColor, 4> soft_colours{style::red, style::green, style::purple, style::orange};
    static const std::array<MarkShape, 2> hard_shapes{MarkShape::open_square, MarkShape::disc};
    static const std::array<MarkShape, 4> soft_shapes{MarkShape::open_triangle_down, MarkShape::open_diamond,
                                                      MarkShape::open_square, MarkShape::ring};
    static const std::array<QList<qreal>, 6> dashes{{{}, {10, 3}, {2, 2}, {6, 3}, {8, 2, 2, 2}, {4, 4}}};
    std::size_t place = 0;  // among its own kind
    for (std::size_t i = 0; i < index; ++i)
        if (chart.series[i].soft == chart.series[index].soft) ++place;
    const bool soft = chart.series[index].soft;
    const QColor colour = soft ? soft_colours[place % soft_colours.size()] : hard_colours[place % hard_colours.size()];
    const QList<qreal>& dash = dashes[(soft ? 2 + place : place) % dashes.size()];
    return {.least = style::pen(colour, 2.4, dash),
            .greatest = style::pen(colour, 1.2, dash),
            .mark = {.shape = soft ? soft_shapes[place % soft_shapes.size()] : hard_shapes[place % hard_shapes.size()],
                     .colour = colour,
                     .size = soft ? 12.0 : (place == 0 ? 17.0 : 9.0),
                     .layer = style::top_mark_layer}};
}

struct Scales {
    Scale contact;
    Scale force;
    Scale partial;
    Scale ringing;
};

Scales scales_of(const EndsChart& chart) {
    Extent contact(true);
    Extent force(true);
    Extent partial(false);
    Extent ringing(true);
    if (chart.contact_mm) contact.add(*chart.contact_mm);
    for (const EndsSeries& series : chart.series) {
        for (const EndsForce& place : series.forces) {
            contact.add(place.contact_mm);
            for (const auto& value : {place.min_newtons, place.max_newtons})
                if (value) force.add(*value);
        }
        for (const EndsRinging& one : series.ringing) {
            partial.add(one.partial);
            ringing.add(one.seconds);
        }
    }
    return {contact.scale(0.05), force.scale(0.06), partial.scale(0.03), ringing.scale(0.06)};
}

void add_edge(Panel& panel, const EndsSeries& series, std::optional<double> EndsForce::*edge, const QPen& pen,
              const MarkStyle& mark) {
    Polyline run;
    Polyline all;
    for (const EndsForce& place : series.forces) {
        if (place.*edge) {
            run.push_back({place.contact_mm, *(place.*edge)});
            all.push_back(run.back());
            continue;
        }
        panel.add_line(run, {.pen = pen, .halo = true});
        run.clear();
    }
    panel.add_line(run, {.pen = pen, .halo = true});
    panel.add_marks(all, mark);
}

void draw_forces(const EndsChart& chart, Panel& panel) {
    if (chart.contact_mm) panel.add_upright_line(*chart.contact_mm, place_pen);
    for (std::size_t i = 0; i < chart.series.size(); ++i) {
        const Look look = look_of(chart, i);
        MarkStyle small = look.mark;
        small.size *= 0.7;
        add_edge(panel, chart.series[i], &EndsForce::max_newtons, look.greatest, small);
        add_edge(panel, chart.series[i], &EndsForce::min_newtons, look.least, look.mark);
    }
}

void draw_ringing(const EndsChart& chart, Panel& panel) {
    for (std::size_t i = 0; i < chart.series.size(); ++i) {
        const Look look = look_of(chart, i);
        Polyline line;
        for (const EndsRinging& one : chart.series[i].ringing)
            line.push_back({static_cast<double>(one.partial), one.seconds});
        panel.add_line(line, {.pen = look.least, .halo = true});
        panel.add_marks(line, look.mark);
    }
}

void add_legend(const EndsChart& chart, SideColumn& side) {
    if (!chart.series.empty()) side.add_heading("the string ends at");
    for (std::size_t i = 0; i < chart.series.size(); ++i) {
        const Look look = look_of(chart, i);
        side.add_line(QString::fromStdString(chart.series[i].name), look.least, {look.mark});
    }
    side.add_space(8.0);
    side.add_line("least force that holds", style::pen(style::soft_ink, 2.4));
    side.add_line("greatest force that holds", style::pen(style::soft_ink, 1.2));
    if (chart.contact_mm) side.add_line("place of the stroke", place_pen);
    side.add_space(8.0);
    for (const std::string& note : chart.notes) side.add_note(note);
}

}  // namespace

std::unique_ptr<QGraphicsScene> draw(const EndsChart& chart) {
    Sheet sheet = make_sheet({.title = chart.title, .subtitle = chart.subtitle, .warning = ""});
    const double top = sheet.content_top + 12.0;
    const double bottom = style::sheet_height - 58.0;
    const double split = top + forces_share * (bottom - top - between_panels);
    const Scales scales = scales_of(chart);
    Panel forces(*sheet.scene, QRectF(QPointF(style::plot_left, top), QPointF(style::plot_right, split)),
                 scales.contact, scales.force);
    forces.add_x_axis("contact point, mm from the bridge");
    forces.add_y_axis("force that holds, N");
    draw_forces(chart, forces);
    Panel ringing(*sheet.scene,
                  QRectF(QPointF(style::plot_left, split + between_panels), QPointF(style::plot_right, bottom)),
                  scales.partial, scales.ringing);
    ringing.add_x_axis("partial", true, 1.0);
    ringing.add_y_axis("rings for, s (60 dB)");
    draw_ringing(chart, ringing);
    SideColumn side(*sheet.scene, top);
    add_legend(chart, side);
    return std::move(sheet.scene);
}

}  // namespace gui::charts
