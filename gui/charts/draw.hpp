// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/bridge_chart.hpp"
#include "gui/charts/climb_chart.hpp"
#include "gui/charts/ends_chart.hpp"
#include "gui/charts/interval_chart.hpp"
#include "gui/charts/passage_chart.hpp"
#include "gui/charts/recording_chart.hpp"
#include "gui/charts/stack_chart.hpp"
#include "gui/charts/start_chart.hpp"
#include "gui/charts/sweep_chart.hpp"
#include "gui/charts/tone_map_chart.hpp"
#include "gui/charts/tornado_chart.hpp"
#include "gui/charts/window_chart.hpp"

#include <QGraphicsScene>

#include <memory>

namespace gui::charts {

std::unique_ptr<QGraphicsScene> draw(const WindowChart& chart);
std::unique_ptr<QGraphicsScene> draw(const ClimbChart& chart);
std::unique_ptr<QGraphicsScene> draw(const SweepChart& chart);
std::unique_ptr<QGraphicsScene> draw(const IntervalChart& chart);
std::unique_ptr<QGraphicsScene> draw(const TornadoChart& chart);
std::unique_ptr<QGraphicsScene> draw(const EndsChart& chart);
std::unique_ptr<QGraphicsScene> draw(const StartChart& chart);
std::unique_ptr<QGraphicsScene> draw(const BridgeChart& chart);
std::unique_ptr<QGraphicsScene> draw(const StackChart& chart);
std::unique_ptr<QGraphicsScene> draw(const ToneMapChart& chart);
std::unique_ptr<QGraphicsScene> draw(const RecordingChart& chart);
std::unique_ptr<QGraphicsScene> draw(const PassageChart& chart);

}  // namespace gui::charts
