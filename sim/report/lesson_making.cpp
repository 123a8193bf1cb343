// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/lesson_parts.hpp"

#include "sim/passage/bow_words.hpp"
#include "sim/report/cautions_part.hpp"
#include "sim/report/climb_part.hpp"
#include "sim/report/html.hpp"
#include "sim/report/lesson_words.hpp"
#include "sim/report/run_part.hpp"
#include "sim/report/table.hpp"
#include "sim/report/window_report.hpp"
#include "sim/text.hpp"

#include <algorithm>

namespace sim::report {
namespace {

AskedClimb climb_asked(const AskedLesson& asked) {
    return {.run = asked.run, .bridge = asked.preset.bridge, .reference_pitch = asked.preset.reference_pitch};
}

Json heard_part(const AskedLesson& asked, const Lesson& lesson) {
    Json part = Json::array();
    for (const HeardStop& heard : lesson.heard) {
        const ClimbStop& stop = lesson.climb.stops[heard.index];
        part.push_back({{"stop_semitones", rounded(stop.note.stop)},
                        {"pitch_name", note_name(stop, asked)},
                        {"left_behind_sounds", !heard.left_behind.samples.empty()},
                        {"follows_sounds", !heard.follows.samples.empty()},
                        {"listen_for", listen_for(stop)}});
    }
    return part;
}

Json tune_words_part(const LessonTune& tune) {
    return {{"title", tune.read.tune.title},
            {"notes", tune.read.tune.notes.size()},
            {"hand_places", tune.fingering.hand_places.size()},
            {"left_behind_mm", rounded_mm(tune.bow.left_behind)},
            {"in_words", played_in_words(tune.read.tune, tune.bow, tune.played)}};
}

std::string remark_of(const Preset& preset) {
    return preset.remark.empty() ? "" : " About the instrument's values: " + preset.remark + ".";
}

}  // namespace

std::string making_part(const AskedLesson& asked, const Lesson& lesson) {
    const std::string how =
        "Every number, drawing and sound here comes from a simulation of this string under this bow (bowband " +
        asked.run.version + "): " + player_line(lesson.climb.player) +
        ". A simulated string is a simplified one: trust your ear where the two disagree." + remark_of(asked.preset);
    const std::string again =
        "The settings below are all that is needed: bowband lesson --repeat THIS-PAGE.html --page NEW.html makes the "
        "same page again.";
    const std::string run = element("script", "\n" + script_json({{"run", run_part(asked.run)}}) + "\n",
                                    {{"type", "application/json"}, {"id", "run"}});
    Json settings = run_part(asked.run).at("settings");
    const std::string shown =
        element("details",
                text_element("summary", "Settings of this run") + "\n" +
                    text_element("pre", settings.dump(1, ' ', false, Json::error_handler_t::replace)),
                {{"class", "on-screen"}});
    return section("made", "How this was made",
                   text_element("p", how) + "\n" + text_element("p", again, {{"class", "on-screen"}}) + "\n" + shown +
                       "\n" + run + "\n");
}

std::string lesson_json(const AskedLesson& asked, const Lesson& lesson, const LessonTune* tune) {
    Json document;
    document["run"] = run_part(asked.run);
    document["rule"] = {{"verdict", rule_verdict_name(lesson.rule.verdict)},
                        {"correlation", rounded(lesson.rule.correlation)},
                        {"follows", rounded(lesson.rule.follows)}};
    document["stops"] = climb_stops_part(climb_asked(asked), lesson.climb);
    document["heard"] = heard_part(asked, lesson);
    if (tune != nullptr) document["tune"] = tune_words_part(*tune);
    document["cautions"] = cautions_part(lesson_cautions(asked));
    return json_text(document);
}

std::string lesson_csv(const AskedLesson& asked, const Lesson& lesson) {
    return climb_csv(climb_asked(asked), lesson.climb);
}

std::string lesson_table(const AskedLesson& asked, const Lesson& lesson) {
    Table table({{"stop", ""},
                 {"note", "", true},
                 {"finger", "nut mm"},
                 {"best", "mm"},
                 {"bow", "fingers"},
                 {"clean", "%"},
                 {"behind", "%"},
                 {"listen for", "", true}});
    const Player& player = asked.preset.player;
    for (const ClimbStop& stop : lesson.climb.stops) {
        const auto heard = std::ranges::any_of(
            lesson.heard, [&](const HeardStop& one) { return &lesson.climb.stops[one.index] == &stop; });
        const auto widths = stop.band.best ? std::optional(*stop.band.best / player.finger_width) : std::nullopt;
        table.add_row({short_number(stop.note.stop), note_name(stop, asked), mm_cell(stop.from_nut, 0),
                       mm_cell(stop.band.best, 0), fixed_cell(widths, 1), percent_cell(stop.band.at_best.security),
                       percent_cell(stop.left_behind.security.security), heard ? listen_for(stop) : ""});
    }
    return asked.preset.name + ", string " + asked.string.name + "; " + player_line(player) + "\n\n" + table.text();
}

std::string lesson_in_words(const AskedLesson& asked, const Lesson& lesson, const LessonTune* tune) {
    const std::string bandless = bandless_words(lesson.climb);
    return climb_in_words(lesson.climb) + "\n" + rule_words(lesson.rule) + "\n" +
           (bandless.empty() ? "" : bandless + "\n") +
           (tune != nullptr ? played_in_words(tune->read.tune, tune->bow, tune->played) + "\n" : "") +
           cautions_words(lesson_cautions(asked));
}

}  // namespace sim::report
