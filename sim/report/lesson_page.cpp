// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/lesson_page.hpp"

#include "sim/report/html.hpp"
#include "sim/report/lesson_parts.hpp"
#include "sim/report/lesson_words.hpp"
#include "sim/report/run_part.hpp"
#include "sim/text.hpp"

namespace sim::report {
namespace {

// Nothing may be fetched, run or sent; what the page needs it carries.
constexpr const char* policy =
    "default-src 'none'; img-src data:; media-src data:; style-src 'unsafe-inline'; base-uri 'none'; form-action "
    "'none'";

std::string paragraph(const std::string& text) { return text_element("p", text) + "\n"; }

std::string list(std::string_view kind, const std::vector<std::string>& items) {
    std::string inside = "\n";
    for (const std::string& item : items) inside += text_element("li", item) + "\n";
    return element(kind, inside) + "\n";
}

std::string title_of(const AskedLesson& asked) {
    return "The bow in high positions: " + asked.preset.name + ", string " + asked.string.name;
}

std::string head(const AskedLesson& asked) {
    return element(
               "head",
               "\n" + empty_element("meta", {{"charset", "utf-8"}}) + "\n" +
                   empty_element("meta", {{"http-equiv", "Content-Security-Policy"}, {"content", policy}}) + "\n" +
                   empty_element("meta", {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}}) +
                   "\n" + empty_element("meta", {{"name", "generator"}, {"content", "bowband " + asked.run.version}}) +
                   "\n" + text_element("title", title_of(asked)) + "\n" +
                   element("style", std::string(lesson_style())) + "\n") +
           "\n";
}

std::string contents(bool with_tune) {
    std::vector<std::pair<std::string, std::string>> parts{
        {"rule", "The rule"},        {"string", "The string and the bow"}, {"hear", "Hear it"},
        {"numbers", "Your numbers"}, {"practise", "How to practise"},      {"cautions", "Take care"},
        {"charts", "Charts"},        {"made", "How this was made"}};
    if (with_tune) parts.insert(parts.begin() + 3, {"tune", "The tune"});
    std::string items;
    for (const auto& [id, name] : parts) items += element("li", text_element("a", name, {{"href", "#" + id}})) + "\n";
    return element("nav", element("ul", "\n" + items), {{"aria-label", "On this page"}}) + "\n";
}

std::string heading(const AskedLesson& asked, bool with_tune) {
    const PresetString& string = asked.string;
    const std::string about = asked.preset.name + " (" + asked.preset.kind + "), string " + string.name + ": " +
                              string.pitch + " of " + string.gauge.material +
                              ", A4 = " + short_number(asked.preset.reference_pitch) + " Hz";
    return element("header", "\n" + text_element("h1", "The bow in high positions") + "\n" + paragraph(about) +
                                 contents(with_tune)) +
           "\n";
}

std::string rule_part(const Lesson& lesson) {
    return section("rule", "The rule",
                   text_element("p", climb_in_words(lesson.climb), {{"class", "rule"}}) + "\n" +
                       paragraph(rule_words(lesson.rule)));
}

std::string practice_part(const Lesson& lesson) {
    return section("practise", "How to practise",
                   list("ol", practice_steps(lesson)) +
                       text_element("p",
                                    "Common practice of players and teachers, not measured here; your teacher knows "
                                    "you better than any page.",
                                    {{"class", "quiet"}}) +
                       "\n");
}

std::string cautions_list(const AskedLesson& asked) {
    std::vector<std::string> texts;
    for (const Caution& caution : lesson_cautions(asked)) texts.push_back(caution.text);
    return section("cautions", "Take care",
                   list("ul", texts) + paragraph("A luthier knows what an instrument bears, a teacher how you play, a "
                                                 "doctor what hurts: ask them, not this page."));
}

std::string charts_part(const std::vector<PageChart>& charts) {
    if (charts.empty())
        return section("charts", "Charts",
                       paragraph("This page was made without charts: the program was built without them."));
    std::string inside;
    for (const PageChart& chart : charts) {
        const Attributes box{{"class", "chart"}, {"role", "img"}, {"tabindex", "0"}, {"aria-label", chart.description}};
        inside += element("figure", "\n" + element("div", chart.svg, box) + "\n" +
                                        text_element("figcaption", chart.caption) + "\n") +
                  "\n";
    }
    return section("charts", "Charts", inside);
}

}  // namespace

std::string section(std::string_view id, std::string_view heading, const std::string& inside) {
    const std::string name = std::string(id) + "-heading";
    return element("section", "\n" + text_element("h2", heading, {{"id", name}}) + "\n" + inside,
                   {{"id", std::string(id)}, {"aria-labelledby", name}}) +
           "\n";
}

std::string note_name(const ClimbStop& stop, const AskedLesson& asked) {
    return pitch_name(fundamental(stop.note.string), asked.preset.reference_pitch);
}

std::vector<Caution> lesson_cautions(const AskedLesson& asked) {
    std::vector<Caution> cautions = stringing_cautions(asked.run.preset, asked.preset);
    cautions.push_back(strain_caution());
    cautions.push_back(listening_caution());
    return cautions;
}

std::string lesson_html(const AskedLesson& asked, const Lesson& lesson, const std::vector<PageChart>& charts,
                        const LessonTune* tune) {
    const std::string main = rule_part(lesson) + drawing_part(asked, lesson) + hearing_part(asked, lesson) +
                             (tune != nullptr ? tune_part(asked, *tune) : "") + numbers_part(asked, lesson) +
                             practice_part(lesson) + cautions_list(asked) + charts_part(charts) +
                             making_part(asked, lesson);
    const std::string body =
        element("body", "\n" + heading(asked, tune != nullptr) + element("main", "\n" + main) + "\n");
    return "<!DOCTYPE html>\n" +
           element("html", "\n" + head(asked) + body + "\n",
                   {{"xmlns", "http://www.w3.org/1999/xhtml"}, {"lang", "en"}}) +
           "\n";
}

}  // namespace sim::report
