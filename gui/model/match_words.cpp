// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/match_words.hpp"

#include "gui/model/selection.hpp"
#include "sim/match/region_place.hpp"

#include <algorithm>
#include <map>

namespace gui {
namespace {

using sim::match::BandPlace;
using sim::match::NoteMatch;

/// The reason that most notes abstain for.
QString commonest_doubt(const sim::match::Match& match) {
    std::map<std::string, int> doubts;
    for (const NoteMatch& note : match.notes) ++doubts[note.abstains];
    const auto most = std::ranges::max_element(doubts, {}, [](const auto& doubt) { return doubt.second; });
    return QString::fromStdString(most->first);
}

QString file_name(const sim::report::AskedMatch& asked) {
    return QString::fromStdString(std::filesystem::path(asked.file).filename().string());
}

}  // namespace

QString looked_for_words(const Selection& selection, LookedFor where) {
    const QString string = QString::fromStdString(selection.string().name);
    switch (where) {
        case LookedFor::any_string:
            return MatchWords::tr("on any string");
        case LookedFor::this_string:
            return MatchWords::tr("on string %1").arg(string);
        case LookedFor::this_stop:
            break;
    }
    return selection.stop() > 0.0 ? MatchWords::tr("on string %1, stop %2 (%3)")
                                        .arg(string, ScreenText().stop(selection.stop()), selection.note_name())
                                  : MatchWords::tr("on string %1, open (%2)").arg(string, selection.note_name());
}

QString band_place_word(const NoteMatch& note) {
    if (const auto place = place_in_stretch(note)) {
        if (*place == BandPlace::inside) return MatchWords::tr("no band; in the stretch");
        return *place == BandPlace::partly ? MatchWords::tr("no band; partly in the stretch")
                                           : MatchWords::tr("no band; outside the stretch");
    }
    switch (note.in_band) {
        case BandPlace::inside:
            return MatchWords::tr("inside");
        case BandPlace::partly:
            return MatchWords::tr("partly");
        case BandPlace::outside:
            return MatchWords::tr("outside");
        case BandPlace::no_band:
            return MatchWords::tr("no band");
        case BandPlace::unknown:
            break;
    }
    return {};
}

QString MatchWords::title(std::size_t note) const {
    const analysis::RecordedNote& heard = answer_->match.recording.notes[note];
    const NoteMatch& found = answer_->match.notes[note];
    const QString number = text_.number(static_cast<double>(note + 1), 0);
    if (!heard.tone) return tr("%1: no pitch").arg(number);
    const QString pitch = QString::fromStdString(nearest_pitch(heard.tone->hz, tuning_of(answer_->asked)).name);
    if (found.strings.empty()) return tr("%1: %2").arg(number, pitch);
    const sim::match::StopCandidate& place = found.strings.front().place;
    const QString string = QString::fromStdString(place.string);
    if (place.stop <= 0.0) return tr("%1: %2 on string %3, open").arg(number, pitch, string);
    return tr("%1: %2 on string %3, stop %4").arg(number, pitch, string, text_.stop(place.stop));
}

QString MatchWords::summary() const {
    const sim::match::Match& match = answer_->match;
    const QString file = file_name(answer_->asked);
    QString words;
    if (match.notes.empty())
        words = tr("No note was found in %1.").arg(file);
    else if (sim::report::says_something(match))
        words = tr("%1 against %2. %3").arg(file, QString::fromStdString(answer_->asked.run.preset.name), counts());
    else
        words = nothing_said();
    for (const std::string& warning : match.warnings) words += " " + QString::fromStdString(warning);
    return words;
}

QString MatchWords::nothing_said() const {
    return tr("%1: of none of its notes can it be told where the bow was; %2. Was it played on this instrument (%3), "
              "where it was looked for?")
        .arg(file_name(answer_->asked), commonest_doubt(answer_->match),
             QString::fromStdString(answer_->asked.run.preset.name));
}

QString MatchWords::counts() const {
    std::map<BandPlace, int> places;
    std::map<BandPlace, int> stretches;
    int untold = 0;
    for (const NoteMatch& note : answer_->match.notes) {
        ++(note.abstains.empty() ? places[note.in_band] : untold);
        if (const auto place = note.abstains.empty() ? place_in_stretch(note) : std::nullopt) ++stretches[*place];
    }
    const auto number = [&](int count) { return text_.number(count, 0); };
    const auto three = [&](const QString& words, std::map<BandPlace, int>& of) {
        return words.arg(number(of[BandPlace::inside]), number(of[BandPlace::partly]), number(of[BandPlace::outside]));
    };
    QString words = tr("Notes bowed");
    if (places[BandPlace::inside] + places[BandPlace::partly] + places[BandPlace::outside] > 0)
        words += three(tr(" inside the contact band: %1, partly inside: %2, outside: %3;"), places);
    if (const int none = places[BandPlace::no_band]; none > 0)
        words += tr(" without a secure band: %1").arg(number(none)) +
                 three(tr(" (inside the most secure stretch: %1, partly inside: %2, outside: %3);"), stretches);
    if (untold > 0) words += tr(" that can't be told: %1;").arg(number(untold));
    words.chop(1);
    return words + ".";
}

/// Inside, partly inside, too near or too far: of a region beside a band or a stretch.
QString MatchWords::beside(BandPlace place, const sim::match::Region& region, const sim::Band& band,
                           const QString& what) const {
    const QString edges = tr("%1, which is %2 to %3").arg(what, text_.mm_number(band.near), text_.mm(band.far));
    if (place == BandPlace::inside) return tr("inside %1").arg(edges);
    if (place == BandPlace::partly) return tr("partly inside %1").arg(edges);
    return region.high < band.near ? tr("too near the bridge, outside %1").arg(edges)
                                   : tr("too far from the bridge, outside %1").arg(edges);
}

QString MatchWords::band(const NoteMatch& note) const {
    const sim::match::Region& region = note.strings.front().region->contact;
    if (const auto place = place_in_stretch(note))
        return tr("no place is secure enough for a band, %1")
            .arg(beside(*place, region, *note.band->stretch, tr("the most secure stretch")));
    if (note.in_band == BandPlace::no_band) return tr("this note has no contact band");
    if (note.in_band == BandPlace::unknown) return tr("its contact band is not known");
    return beside(note.in_band, region, *note.band->band, tr("the contact band"));
}

QString MatchWords::of_note(std::size_t note) const {
    const NoteMatch& found = answer_->match.notes[note];
    if (!found.abstains.empty())
        return tr("Note %1: nothing can be said; %2.").arg(title(note), QString::fromStdString(found.abstains));
    const sim::match::StrokeRegion& region = *found.strings.front().region;
    const QString words = tr("Note %1: bowed %2 to %3 from the bridge, most likely at %4; %5.")
                              .arg(title(note), text_.mm_number(region.contact.low), text_.mm(region.contact.high),
                                   text_.mm(region.best_contact), band(found));
    if (found.string_told) return words;
    return words + " " +
           tr("The sound does not tell the string: this one has %1 of the likelihood.")
               .arg(text_.percent(found.strings.front().share));
}

QString MatchWords::cautions() const {
    const sim::match::Match& match = answer_->match;
    if (!sim::report::says_something(match)) return {};
    QString words =
        tr("From … to holds %1 of the likelihood, among strokes of %2 to %3 at %4. Trust it less where your "
           "strings, rosin or bow speed are unlike the instrument's; a stroke that does not speak may be "
           "taken for one that speaks elsewhere.")
            .arg(text_.percent(answer_->asked.region_share), text_.newtons(match.player.force_low),
                 text_.newtons(match.player.force_high), text_.speed(match.player.speed));
    const bool unsure = std::ranges::any_of(
        match.notes, [](const NoteMatch& note) { return note.abstains.empty() && !note.string_told; });
    if (unsure) words += " " + tr("Where the sound does not tell the string, choose it above and ask again.");
    return words;
}

}  // namespace gui
