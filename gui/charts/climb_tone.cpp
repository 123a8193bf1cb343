// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/answers.hpp"

#include "analysis/units.hpp"
#include "gui/charts/scale.hpp"

namespace gui::charts {
namespace {

/// One of the four quantities of a tone against the stop, for both bows.
struct ToneQuantity {
    const char* title;
    std::optional<sim::Spread> sim::ToneSpread::*spread;
    double (*shown)(double);
};

StackPoint tone_point(double stop, const std::optional<sim::ToneSpread>& spread, const ToneQuantity& what) {
    StackPoint point{.x = stop, .y = {}, .low = {}, .high = {}};
    if (!spread || !((*spread).*what.spread)) return point;
    const sim::Spread& values = *((*spread).*what.spread);
    point.y = what.shown(values.middle);
    point.low = what.shown(values.low);
    point.high = what.shown(values.high);
    return point;
}

StackPanel tone_panel(const sim::Climb& climb, const ToneQuantity& what) {
    StackPanel panel{.title = {}, .y = {.title = what.title}, .lines = {{}, {}}};
    for (const sim::ClimbStop& stop : climb.stops) {
        const double x = stop.note.stop;
        panel.lines[0].push_back(tone_point(x, stop.follows ? stop.follows->spread : std::nullopt, what));
        panel.lines[1].push_back(tone_point(x, stop.left_behind.spread, what));
    }
    return panel;
}

}  // namespace

StackChart climb_tone_chart(const sim::report::AskedClimb& asked, const sim::Climb& climb) {
    const auto as_it_is = [](double value) { return value; };
    const sim::ClimbStop& first = climb.stops.front();
    const double behind = analysis::mm_from_metres(first.left_behind.contact_point);
    StackChart chart;
    chart.title = asked.run.preset.name + ", string " + first.note.string.name + ": the tone as the stop climbs";
    chart.subtitle = sim::report::player_line(climb.player);
    chart.x = {.title = "stop, semitones above the open string"};
    chart.least_x_step = 1.0;
    chart.names = {"bow follows: best contact point", "bow left behind at " + number_text(behind) + " mm"};
    chart.panels = {tone_panel(climb, {"pitch, cents from the note", &sim::ToneSpread::pitch, as_it_is}),
                    tone_panel(climb, {"brightness, fundamentals", &sim::ToneSpread::brightness, as_it_is}),
                    tone_panel(climb, {"level, dB re 1 N", &sim::ToneSpread::level, analysis::db_from_ratio}),
                    tone_panel(climb, {"clarity of pitch, dB", &sim::ToneSpread::clarity, as_it_is})};
    chart.bar_name = "least to greatest over the player's forces";
    chart.missing_name = "no bow can stand there, or no pitch";
    chart.notes = {
        "Marks stand at the median over the player's forces. Strokes that do not speak are counted: they are "
        "heard.",
        "Clarity: what repeats with the note's period against all else; at 0 dB they are equally strong."};
    return chart;
}

}  // namespace gui::charts
