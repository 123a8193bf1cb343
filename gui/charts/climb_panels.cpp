// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/climb_panels.hpp"

#include "gui/charts/climb_look.hpp"

#include <QGraphicsPathItem>
#include <QGraphicsPolygonItem>
#include <QGraphicsScene>

#include <algorithm>
#include <cmath>

namespace gui::charts {
namespace {

namespace look = climb_look;

constexpr double foot_height = 20.0;  ///< px, of the mark for a stop without a band

/// What is drawn against the stop: one value a stop, or none.
using ValueOf = std::optional<double> (*)(const ClimbChartStop&);

bool is_shown(const std::optional<double>& value) { return value && std::isfinite(*value); }

/// The line is broken where a stop has no value.
void add_stop_line(Panel& panel, const ClimbChart& chart, ValueOf value_of, const QPen& pen) {
    Polyline run;
    for (const ClimbChartStop& stop : chart.stops) {
        const auto value = value_of(stop);
        if (is_shown(value)) {
            run.push_back({stop.stop_semitones, *value});
            continue;
        }
        panel.add_line(run, {.pen = pen, .halo = true});
        run.clear();
    }
    panel.add_line(run, {.pen = pen, .halo = true});
}

template <class Choice>
Polyline chosen_places(const ClimbChart& chart, ValueOf value_of, Choice choice) {
    Polyline places;
    for (const ClimbChartStop& stop : chart.stops) {
        const auto value = value_of(stop);
        if (is_shown(value) && choice(stop)) places.push_back({stop.stop_semitones, *value});
    }
    return places;
}

bool has_band(const ClimbChartStop& stop) { return stop.band.has_value(); }
bool has_no_band(const ClimbChartStop& stop) { return !stop.band.has_value(); }
bool fails_behind(const ClimbChartStop& stop) { return stop.security_left_behind.value_or(1.0) < look::least_security; }
bool holds_behind(const ClimbChartStop& stop) { return !fails_behind(stop); }

std::optional<double> best_mm(const ClimbChartStop& stop) { return stop.best_mm; }
std::optional<double> best_ratio(const ClimbChartStop& stop) { return stop.best_ratio; }
std::optional<double> security_follows(const ClimbChartStop& stop) { return stop.security_follows; }
std::optional<double> security_behind(const ClimbChartStop& stop) { return stop.security_left_behind; }

/// From the bridge (0) up.
Scale from_zero(const Extent& values) {
    Scale scale = values.scale(0.08);
    scale.low = 0.0;
    return scale;
}

/// Half of the way to the neighbouring stops, at most `most` to either side.
std::pair<double, double> round_stop(const ClimbChart& chart, std::size_t i, double most) {
    const double here = chart.stops[i].stop_semitones;
    const double before = i > 0 ? (here - chart.stops[i - 1].stop_semitones) / 2.0 : most;
    const double after = i + 1 < chart.stops.size() ? (chart.stops[i + 1].stop_semitones - here) / 2.0 : most;
    return {here - std::min(before, most), here + std::min(after, most)};
}

/// A stop without a band can't be overlooked in any panel.
void mark_bandless(const ClimbChart& chart, Panel& panel) {
    for (std::size_t i = 0; i < chart.stops.size(); ++i) {
        if (has_band(chart.stops[i])) continue;
        const auto [from, to] = round_stop(chart, i, 0.5);
        panel.add_strip(from, to, style::faint_grey, {.pen = Qt::NoPen});
    }
}

/// Upright strokes from the near edge to the far one, `apart` pixels from each other.
QPainterPath area_strokes(const QList<QPointF>& near_edge, const QList<QPointF>& far_edge, double apart) {
    QPainterPath path;
    for (qsizetype i = 1; i < near_edge.size(); ++i) {
        const double left = near_edge[i - 1].x();
        const double right = near_edge[i].x();
        for (double x = std::ceil(left / apart) * apart; x < right; x += apart) {
            const double share = (x - left) / (right - left);
            path.moveTo(x, near_edge[i - 1].y() + share * (near_edge[i].y() - near_edge[i - 1].y()));
            path.lineTo(x, far_edge[i - 1].y() + share * (far_edge[i].y() - far_edge[i - 1].y()));
        }
    }
    return path;
}

/// An area against the stop: its edges at each stop, or none there.
struct Area {
    std::optional<ClimbBand> (*edges)(const ClimbChartStop&);
    QColor tint;
    QPen edge;
    QPen stroke;
    double apart;
};

std::optional<ClimbBand> band_edges(const ClimbChartStop& stop) { return stop.band; }
std::optional<ClimbBand> stretch_edges(const ClimbChartStop& stop) { return stop.band ? std::nullopt : stop.stretch; }

struct Edges {
    Polyline near_edge;
    Polyline far_edge;
};

/// Stops that follow each other; one alone becomes a short piece about itself.
Edges edges_of(const ClimbChart& chart, const std::vector<std::size_t>& run, const Area& area) {
    Edges edges;
    const auto put = [&](double x, const ClimbBand& band) {
        edges.near_edge.push_back({x, band.near_mm});
        edges.far_edge.push_back({x, band.far_mm});
    };
    if (run.size() == 1) {
        const auto [from, to] = round_stop(chart, run.front(), 0.25);
        put(from, *area.edges(chart.stops[run.front()]));
        put(to, *area.edges(chart.stops[run.front()]));
    } else {
        for (const std::size_t i : run) put(chart.stops[i].stop_semitones, *area.edges(chart.stops[i]));
    }
    return edges;
}

void add_area_piece(const Edges& edges, const Area& area, Panel& panel, QGraphicsScene& scene) {
    QList<QPointF> near_places;
    QList<QPointF> far_places;
    for (const Place& value : edges.near_edge) near_places.append(panel.at(value.x, value.y));
    for (const Place& value : edges.far_edge) far_places.append(panel.at(value.x, value.y));
    QPolygonF outline(near_places);
    for (auto place = far_places.crbegin(); place != far_places.crend(); ++place) outline.append(*place);
    scene.addPolygon(outline, Qt::NoPen, area.tint)->setZValue(style::tint_layer + 1.0);
    scene.addPath(area_strokes(near_places, far_places, area.apart), area.stroke)->setZValue(style::hatch_layer + 1.0);
    for (const Polyline& edge : {edges.near_edge, edges.far_edge}) panel.add_line(edge, {.pen = area.edge});
}

void draw_area(const ClimbChart& chart, const Area& area, Panel& panel, QGraphicsScene& scene) {
    std::vector<std::size_t> run;
    const auto finish = [&] {
        if (!run.empty()) add_area_piece(edges_of(chart, run, area), area, panel, scene);
        run.clear();
    };
    for (std::size_t i = 0; i < chart.stops.size(); ++i) {
        const double stop = chart.stops[i].stop_semitones;
        const auto edges = area.edges(chart.stops[i]);
        if (edges && panel.holds(stop, edges->near_mm) && panel.holds(stop, edges->far_mm)) {
            run.push_back(i);
        } else {
            finish();
        }
    }
    finish();
}

/// At the foot of the panel, on the axis.
void add_bandless_feet(const ClimbChart& chart, Panel& panel, QGraphicsScene& scene) {
    QList<QPointF> crosses;
    for (std::size_t i = 0; i < chart.stops.size(); ++i) {
        if (has_band(chart.stops[i]) || !panel.x().shows(chart.stops[i].stop_semitones)) continue;
        const auto [from, to] = round_stop(chart, i, 0.5);
        const double foot = panel.plot().bottom();
        add_hatched_box(scene, QRectF(QPointF(panel.x_at(from), foot - foot_height), QPointF(panel.x_at(to), foot)),
                        style::pale_grey, look::none_hatch);
        crosses.append(QPointF(panel.x_at(chart.stops[i].stop_semitones), foot - foot_height / 2.0));
    }
    add_marks(scene, crosses, look::none);
}

/// "3, 5 to 8": stops that follow each other are drawn together.
std::string stops_text(const ClimbChart& chart, const std::vector<std::size_t>& indices) {
    std::string text;
    for (std::size_t i = 0; i < indices.size(); ++i) {
        const std::size_t first = indices[i];
        while (i + 1 < indices.size() && indices[i + 1] == indices[i] + 1) ++i;
        if (!text.empty()) text += ", ";
        text += number_text(chart.stops[first].stop_semitones, 4);
        if (indices[i] != first)
            text += (indices[i] == first + 1 ? ", " : " to ") + number_text(chart.stops[indices[i]].stop_semitones, 4);
    }
    return (indices.size() == 1 ? "stop " : "stops ") + text;
}

}  // namespace

Scale climb_stop_scale(const ClimbChart& chart) {
    Extent extent(false);
    for (const ClimbChartStop& stop : chart.stops) extent.add(stop.stop_semitones);
    Scale scale = extent.scale(0.0);
    if (chart.stops.size() > 1) {
        scale.low -= 0.6;
        scale.high += 0.6;
    }
    return scale;
}

Scale climb_contact_scale(const ClimbChart& chart) {
    Extent extent(false);
    extent.add(0.0);
    if (chart.left_behind_mm) extent.add(*chart.left_behind_mm);
    for (const ClimbChartStop& stop : chart.stops) {
        if (stop.best_mm) extent.add(*stop.best_mm);
        for (const auto& area : {band_edges(stop), stretch_edges(stop)})
            if (area) extent.add(area->far_mm);
    }
    return from_zero(extent);
}

Scale climb_ratio_scale(const ClimbChart& chart) {
    Extent extent(false);
    extent.add(0.0);
    for (const ClimbChartStop& stop : chart.stops)
        if (stop.best_ratio) extent.add(*stop.best_ratio);
    return from_zero(extent);
}

void draw_climb_contact(const ClimbChart& chart, Panel& panel, QGraphicsScene& scene) {
    mark_bandless(chart, panel);
    draw_area(chart, {band_edges, style::pale_blue, look::edge, look::band_stroke, look::strokes_apart}, panel, scene);
    draw_area(chart, {stretch_edges, Qt::white, look::stretch_edge, look::stretch_stroke, look::stretch_strokes_apart},
              panel, scene);
    add_bandless_feet(chart, panel, scene);
    if (chart.left_behind_mm) {
        panel.add_level_line(*chart.left_behind_mm, look::behind);
        Polyline failing;
        for (const ClimbChartStop& stop : chart.stops)
            if (fails_behind(stop)) failing.push_back({stop.stop_semitones, *chart.left_behind_mm});
        panel.add_marks(failing, look::failing);
    }
    add_stop_line(panel, chart, best_mm, look::follows);
    panel.add_marks(chosen_places(chart, best_mm, has_band), look::best);
    panel.add_marks(chosen_places(chart, best_mm, has_no_band), look::bandless);
}

void draw_climb_ratio(const ClimbChart& chart, Panel& panel) {
    mark_bandless(chart, panel);
    add_stop_line(panel, chart, best_ratio, look::follows);
    panel.add_marks(chosen_places(chart, best_ratio, has_band), look::best);
    panel.add_marks(chosen_places(chart, best_ratio, has_no_band), look::bandless);
}

void draw_climb_security(const ClimbChart& chart, Panel& panel) {
    mark_bandless(chart, panel);
    panel.add_level_line(look::least_security, look::half);
    if (chart.band_share) panel.add_level_line(*chart.band_share, look::share);
    add_stop_line(panel, chart, security_behind, look::behind);
    add_stop_line(panel, chart, security_follows, look::follows);
    panel.add_marks(chosen_places(chart, security_behind, holds_behind), look::held);
    panel.add_marks(chosen_places(chart, security_behind, fails_behind), look::failing);
    panel.add_marks(chosen_places(chart, security_follows, has_band), look::best);
    panel.add_marks(chosen_places(chart, security_follows, has_no_band), look::bandless);
}

std::vector<std::string> bandless_sentences(const ClimbChart& chart) {
    std::vector<std::pair<std::string, std::vector<std::size_t>>> groups;
    for (std::size_t i = 0; i < chart.stops.size(); ++i) {
        if (has_band(chart.stops[i])) continue;
        const std::string& reason = chart.stops[i].reason;
        auto group = std::find_if(groups.begin(), groups.end(), [&](const auto& g) { return g.first == reason; });
        if (group == groups.end()) group = groups.insert(group, {reason, {}});
        group->second.push_back(i);
    }
    std::vector<std::string> sentences;
    for (const auto& [reason, indices] : groups)
        sentences.push_back("No band at " + stops_text(chart, indices) + (reason.empty() ? "." : ": " + reason));
    return sentences;
}

}  // namespace gui::charts
