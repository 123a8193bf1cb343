// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/lesson_maker.hpp"

#include "analysis/output_file.hpp"
#include "analysis/units.hpp"
#include "gui/model/screen_text.hpp"
#include "gui/model/selection.hpp"
#include "sim/preset_reader.hpp"

#include <algorithm>

namespace gui {
namespace {

/// As the option writes it.
std::string listed_stops(const std::vector<double>& stops) {
    std::string text;
    for (const double stop : stops) text += (text.empty() ? "" : ",") + sim::number_text(stop);
    return text;
}

}  // namespace

LessonAnswer lesson_answer(const LessonWish& wish, const sim::Workers& workers) {
    sim::LessonPlan plan;
    for (int stop = wish.lowest; stop <= wish.highest; ++stop) plan.climb.stops.push_back(stop);
    plan.heard = wish.heard.empty() ? sim::usual_heard(plan.climb.stops) : wish.heard;
    plan.seconds = wish.seconds;
    plan.climb.grid = wish.grid;
    QuestionRun run = run_of(wish.question, "lesson", plan.climb.grid);
    sim::report::Settings& settings = run.record.settings;
    settings["stop_semitones"] = sim::report::Span{static_cast<double>(wish.lowest), static_cast<double>(wish.highest)};
    settings["seconds"] = plan.seconds;
    if (plan.heard.size() > 1) settings["hear_stops_semitones"] = listed_stops(plan.heard);
    const sim::PresetString& string = string_of(run, wish.question);
    return {.asked = {.run = run.record, .preset = run.preset, .string = string},
            .lesson = sim::make_lesson(run.preset, string, plan, workers)};
}

std::vector<LessonStop> lesson_stops(const Selection& selection, int lowest, int highest) {
    std::vector<double> all;
    for (int stop = lowest; stop <= highest; ++stop) all.push_back(stop);
    std::vector<LessonStop> stops;
    if (all.empty()) return stops;
    const std::vector<double> usual = sim::usual_heard(all);
    const double reference = selection.preset()->reference_pitch;
    const double open = sim::pitch_frequency(selection.string().pitch, reference);
    for (const double stop : all) {
        const std::string name = sim::pitch_name(open * analysis::ratio_from_semitones(stop), reference);
        stops.push_back({.stop = static_cast<int>(stop),
                         .label = ScreenText().stop(stop) + " · " + QString::fromStdString(name),
                         .usual = std::ranges::binary_search(usual, stop)});
    }
    return stops;
}

LessonMaker::LessonMaker(Draw draw, int threads, QObject* parent)
    : QObject(parent), draw_(std::move(draw)), runner_(threads) {
    connect(&runner_, &JobRunner::progress, this, &LessonMaker::progress);
    connect(&runner_, &JobRunner::busy_changed, this, &LessonMaker::busy_changed);
    connect(&runner_, &JobRunner::failed, this, &LessonMaker::failed);
}

void LessonMaker::make(const LessonWish& wish, const std::filesystem::path& place) {
    runner_.ask([this, wish, place](const sim::Workers& workers) -> JobRunner::Delivery {
        const analysis::OutputFile probe(place);  // complains before the work
        auto answer = std::make_shared<const LessonAnswer>(lesson_answer(wish, workers));
        return [this, answer, place] { write(answer, place); };
    });
}

void LessonMaker::write(const std::shared_ptr<const LessonAnswer>& answer, const std::filesystem::path& place) {
    runner_.ask([this, answer, place, charts = draw_(*answer)](const sim::Workers&) -> JobRunner::Delivery {
        analysis::write_text_file(place, lesson_html(answer->asked, answer->lesson, charts));
        return [this, place] { emit made(QString::fromStdString(place.string())); };
    });
}

}  // namespace gui
