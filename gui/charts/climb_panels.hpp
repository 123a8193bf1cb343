// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/climb_chart.hpp"
#include "gui/charts/panel.hpp"

#include <string>
#include <vector>

namespace gui::charts {

/// The axes of a climb.
Scale climb_stop_scale(const ClimbChart& chart);
Scale climb_contact_scale(const ClimbChart& chart);
Scale climb_ratio_scale(const ClimbChart& chart);

/// Contact points in mm: best, band, bow left behind.
void draw_climb_contact(const ClimbChart& chart, Panel& panel, QGraphicsScene& scene);
void draw_climb_ratio(const ClimbChart& chart, Panel& panel);
void draw_climb_security(const ClimbChart& chart, Panel& panel);

/// One sentence a reason: "No band at stops 14 to 17, 20: nowhere secure enough".  Stops that follow each other in the
/// chart are drawn together.
std::vector<std::string> bandless_sentences(const ClimbChart& chart);

}  // namespace gui::charts
