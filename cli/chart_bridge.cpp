// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/chart_calls.hpp"

#include "analysis/units.hpp"
#include "gui/charts/save.hpp"
#include "gui/charts/session.hpp"

#include <algorithm>
#include <cmath>
#include <complex>

namespace cli {
namespace {

using analysis::mm_from_metres;
namespace charts = gui::charts;

charts::AdmittanceValue chart_value(double hz, std::complex<double> y) {
    return {hz, analysis::db_from_ratio(std::abs(y)), analysis::degrees_from_radians(std::arg(y))};
}

/// The modes' sum, evenly over log frequency and at every mode, so that no peak falls between.
std::vector<charts::AdmittanceValue> fitted_values(const sim::BridgeFit& fit) {
    constexpr int count = 1200;
    std::vector<double> places;
    for (int i = 0; i <= count; ++i)
        places.push_back(fit.range.low * std::pow(fit.range.high / fit.range.low, static_cast<double>(i) / count));
    for (const sim::BridgeMode& mode : fit.modes)
        if (mode.frequency > fit.range.low && mode.frequency < fit.range.high) places.push_back(mode.frequency);
    std::ranges::sort(places);
    std::vector<charts::AdmittanceValue> values;
    for (const double hz : places) values.push_back(chart_value(hz, sim::admittance(bridge_of(fit), hz)));
    return values;
}

}  // namespace

void draw_bridge_chart(const analysis::OutputFile& file, const sim::report::AskedBridge& asked,
                       const sim::MeasuredBridge& measured, const sim::BridgeFit& fit) {
    charts::BridgeChart chart;
    chart.title = "Admittance of a bridge: " + std::filesystem::path(asked.file).filename().string();
    chart.subtitle = sim::report::bridge_line(fit);
    for (std::size_t i = 0; i < measured.hz.size(); ++i)
        if (measured.hz[i] >= fit.range.low && measured.hz[i] <= fit.range.high)
            chart.measured.push_back(chart_value(measured.hz[i], measured.admittance[i]));
    chart.fitted = fitted_values(fit);
    for (const sim::BridgeMode& mode : fit.modes) {
        if (mode.frequency < fit.range.low || mode.frequency > fit.range.high) continue;
        const std::complex<double> y = sim::admittance(bridge_of(fit), mode.frequency);
        chart.modes.push_back({mode.frequency, chart_value(mode.frequency, y).level_db});
    }
    chart.notes = fit.remarks;
    const charts::ChartSession session;
    charts::fill_chart(file, chart);
}

}  // namespace cli
