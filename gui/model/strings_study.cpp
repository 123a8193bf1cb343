// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/strings_study.hpp"

#include "analysis/units.hpp"
#include "gui/model/selection.hpp"

#include <array>

namespace gui {
namespace {

constexpr int coarse_points = 12;
constexpr int coarse_forces = 6;
constexpr std::array<const char*, 4> plain_materials{"gut", "nylon", "fluorocarbon", "steel"};

sim::GaugePlan plan_of(const sim::Preset& preset, const StringsWish& wish, Fineness fineness) {
    sim::GaugePlan plan;
    for (const double stop : {0.0, 12.0, 19.0})
        if (stop <= sim::last_stop(preset)) plan.stops.push_back(stop);
    plan.aim = wish.aim;
    if (fineness == Fineness::coarse) {
        plan.grid.contact_points = coarse_points;
        plan.grid.player_forces = coarse_forces;
    }
    return plan;
}

/// Comma between.
template <class List, class Text>
std::string joined(const List& list, const Text& text) {
    std::string all;
    for (const auto& item : list) all += (all.empty() ? "" : ",") + text(item);
    return all;
}

sim::report::Settings settings_of(const sim::Preset& now, const sim::GaugePlan& plan, const StringsWish& wish,
                                  const sim::GaugeAsk& ask) {
    sim::report::Settings settings = sim::report::settings_of(now);
    settings["stop_end"] = "usual";
    settings["contact_points"] = static_cast<double>(plan.grid.contact_points);
    settings["forces"] = static_cast<double>(plan.grid.player_forces);
    settings["stop_semitones"] = joined(plan.stops, [](double stop) { return std::to_string(static_cast<int>(stop)); });
    settings["aim"] = std::string(sim::gauge_aim_name(wish.aim));
    settings["whole_set"] = wish.whole_set ? "yes" : "no";
    settings["raise_semitones"] = wish.raise;
    if (!ask.materials.empty() && !wish.whole_set)
        settings["materials"] = joined(ask.materials, [](const std::string& name) { return name; });
    return settings;
}

}  // namespace

sim::GaugeAsk gauges_wished(const sim::PresetString& string, const StringsWish& wish) {
    sim::GaugeAsk ask;
    if (!wish.other_materials) return ask;
    for (const char* name : plain_materials)
        if (string.gauge.material != name) ask.materials.emplace_back(name);
    return ask;
}

StringsAnswer strings_answer(const NoteQuestion& question, const StringsWish& wish, Fineness fineness,
                             const sim::Workers& workers) {
    const sim::Preset& set_up = *question.preset;
    sim::Preset now = set_up;
    now.player.speed = question.speed;
    const sim::GaugePlan plan = plan_of(now, wish, fineness);
    const sim::PresetString& string = now.strings[static_cast<std::size_t>(question.string_index)];
    const sim::GaugeAsk ask = gauges_wished(string, wish);
    StringsAnswer answer{.asked = {}, .study = {}, .fine = fineness == Fineness::fine};
    answer.asked.run = {.version = BOWBAND_VERSION,
                        .command = "gauges",
                        .preset = set_up,
                        .settings = settings_of(now, plan, wish, ask)};
    now.reference_pitch *= analysis::ratio_from_semitones(wish.raise);
    answer.asked.run.settings["string"] = string.name;
    answer.asked.preset = now;
    if (wish.whole_set) {
        answer.study = sim::find_set(set_up, now, plan, workers);
        return answer;
    }
    answer.study = sim::find_gauges(set_up, now, sim::gauge_candidates(now, string, ask), plan, workers);
    return answer;
}

StringsStudy::StringsStudy(const Selection& selection, int threads, QObject* parent)
    : Study(selection, threads, parent) {
    connect(&selection, &Selection::instrument_changed, this, &Study::outdate);
    connect(&selection, &Selection::stroke_changed, this, [this, &selection] {
        if (answer_ && answer_->study.player.speed != selection.speed()) outdate();
    });
}

void StringsStudy::set_wish(const StringsWish& wish) {
    if (wish == wish_) return;
    wish_ = wish;
    outdate();
}

JobRunner::Work StringsStudy::work(NoteQuestion question, Fineness fineness) {
    return [this, question = std::move(question), wish = wish_,
            fineness](const sim::Workers& workers) -> JobRunner::Delivery {
        auto answer = std::make_shared<const StringsAnswer>(strings_answer(question, wish, fineness, workers));
        return [this, answer] { answer_ = answer; };
    };
}

}  // namespace gui
