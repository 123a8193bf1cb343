// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/charts/match_answer.hpp"

#include "analysis/units.hpp"
#include "sim/match/region_place.hpp"
#include "sim/text.hpp"

#include <filesystem>
#include <numeric>

namespace gui::charts {
namespace {

using analysis::mm_from_metres;

void add_places(MatchChart& chart, const sim::match::NoteMatch& note, double share) {
    const sim::match::StrokeRegion& region = *note.strings.front().region;
    for (std::size_t i = 0; i < region.contact_points.size(); ++i) {
        chart.contact_mm.push_back(mm_from_metres(region.contact_points[i]));
        chart.likelihood.push_back(region.density[i]);
    }
    chart.region = {mm_from_metres(region.contact.low), mm_from_metres(region.contact.high)};
    chart.region_name = "region with " + sim::fixed_number(100.0 * share, 0) + " % of the likelihood";
    chart.best_mm = mm_from_metres(region.best_contact);
    if (note.band && note.band->band)
        chart.band = {mm_from_metres(note.band->band->near), mm_from_metres(note.band->band->far)};
}

void add_partials(MatchChart& chart, const sim::match::NoteMatch& note) {
    const double mean =
        std::accumulate(note.body.begin(), note.body.end(), 0.0) / static_cast<double>(note.body.size());
    std::size_t k = 0;
    for (const sim::match::HeardLevel& level : note.heard) {
        if (k == note.numbers.size() || level.number != note.numbers[k]) continue;
        // the recording's own scale means nothing: both are drawn as if body and gain added 0 on the average
        chart.partials.push_back({.hz = level.hz,
                                  .heard_db = level.level - mean,
                                  .simulated_db = note.simulated[k] + note.body[k] - mean,
                                  .body_db = note.body[k] - mean,
                                  .body_error_db = note.body_deviation[k]});
        ++k;
    }
}

std::string region_sentence(const sim::match::NoteMatch& note) {
    const sim::match::StringMatch& string = note.strings.front();
    const auto mm = [](double metres) { return sim::fixed_number(mm_from_metres(metres), 0); };
    const sim::match::StrokeRegion& region = *string.region;
    return "Contact point " + mm(region.contact.low) + " to " + mm(region.contact.high) + " mm, of " +
           mm(region.contact_all.low) + " to " + mm(region.contact_all.high) + " mm where strokes speak. Force " +
           sim::fixed_number(region.force.low, 2) + " to " + sim::fixed_number(region.force.high, 2) + " N.";
}

std::string stretch_sentence(const sim::match::NoteMatch& note) {
    const auto place = place_in_stretch(note);
    if (!place) return "";
    const std::string_view how = *place == sim::match::BandPlace::inside   ? "inside"
                                 : *place == sim::match::BandPlace::partly ? "partly in"
                                                                           : "outside";
    return " The region lies " + std::string(how) + " its most secure stretch, " +
           sim::fixed_number(mm_from_metres(note.band->stretch->near), 0) + " to " +
           sim::mm_words(note.band->stretch->far) + ".";
}

std::string band_sentence(const sim::match::NoteMatch& note) {
    switch (note.in_band) {
        case sim::match::BandPlace::inside:
            return "The region lies inside the contact band.";
        case sim::match::BandPlace::partly:
            return "The region lies partly in the contact band.";
        case sim::match::BandPlace::outside:
            return "The region lies outside the contact band.";
        case sim::match::BandPlace::no_band:
            return "This note has no contact band: " + note.band->reason + "." + stretch_sentence(note);
        case sim::match::BandPlace::unknown:
            break;
    }
    return "";
}

void add_remarks(MatchChart& chart, const sim::match::NoteMatch& note) {
    chart.remarks.push_back(region_sentence(note));
    if (const std::string sentence = band_sentence(note); !sentence.empty()) chart.remarks.push_back(sentence);
    if (!note.string_told)
        chart.remarks.push_back("The sound does not tell the string: this one has " +
                                sim::fixed_number(100.0 * note.strings.front().share, 0) + " % of the likelihood.");
    chart.remarks.push_back("The body's phase is not known; the period is drawn with that of the least delay.");
}

}  // namespace

MatchChart match_chart(const sim::report::AskedMatch& asked, const sim::match::Match& match, std::size_t note) {
    MatchChart chart;
    chart.title = std::filesystem::path(asked.file).filename().string() + " against " + asked.run.preset.name;
    chart.subtitle = match.notes.empty() ? "no note was found" : match_note_name(asked, match, note);
    if (note >= match.notes.size()) return chart;
    const sim::match::NoteMatch& shown = match.notes[note];
    if (shown.abstains.empty()) {
        add_places(chart, shown, asked.region_share);
        add_remarks(chart, shown);
    } else {
        chart.remarks.push_back("Nothing is said of this note: " + shown.abstains + ".");
    }
    add_partials(chart, shown);
    if (shown.period) {
        chart.period_heard = shown.period->heard;
        chart.period_simulated = shown.period->simulated;
    }
    return chart;
}

}  // namespace gui::charts
