// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passage/bow_words.hpp"

#include "sim/passage/place_words.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <cmath>

namespace sim::passage {

namespace {

constexpr double far_loss = 1.0 / 12.0;  // of security: twice what chance gives
constexpr double same_place = 3e-3;      // m
constexpr std::size_t most_named = 6;

using Numbers = std::vector<std::size_t>;

template <class Test>
Numbers notes_that(const Passage& passage, Test test) {
    Numbers found;
    for (std::size_t i = 0; i < passage.notes.size(); ++i)
        if (test(passage.notes[i])) found.push_back(i);
    return found;
}

/// "bar 3, note 2 (E5), bar 4, note 1 (F5) and 5 more"
std::string named(const score::Tune& tune, const Numbers& notes) {
    std::string words;
    for (std::size_t k = 0; k < std::min(notes.size(), most_named); ++k)
        words += (k == 0 ? "" : "; ") + note_words(tune, notes[k]);
    if (notes.size() > most_named) words += "; and " + std::to_string(notes.size() - most_named) + " more";
    return words;
}

std::string counted(const Numbers& notes, const Passage& passage) {
    return std::to_string(notes.size()) + " of " + std::to_string(passage.notes.size()) + " notes";
}

void add_far_notes(const score::Tune& tune, const Passage& passage, std::vector<Warning>& warnings) {
    for (std::size_t i = 0; i < passage.notes.size(); ++i) {
        const BowedNote& note = passage.notes[i];
        const BandResult& band = kind_of(passage, note).band;
        if (!band.best || note.security.security > band.at_best.security - far_loss) continue;
        warnings.push_back({i, "bow_too_far",
                            note_words(tune, i) + ": the bow is at " + mm_words(note.contact) + ", its best place at " +
                                mm_words(*band.best) + "; there and back is a long way for the time, at " +
                                mm_words(passage.plan.travel) + " a second. Here " +
                                percent_words(note.security.security) + " of strokes are good, there " +
                                percent_words(band.at_best.security)});
    }
}

/// Low strings seldom have a band: said once, and so that nobody gives up.
void add_bandless(const Passage& passage, std::vector<Warning>& warnings) {
    const auto bandless = [&](const BowedNote& note) {
        const BandResult& band = kind_of(passage, note).band;
        return band.best && !band.band;
    };
    const Numbers notes = notes_that(passage, bandless);
    if (notes.empty()) return;
    double low = 1.0;
    double high = 0.0;
    for (const std::size_t i : notes) {
        const double best = kind_of(passage, passage.notes[i]).band.at_best.security;
        low = std::min(low, best);
        high = std::max(high, best);
    }
    const double asked = kind_of(passage, passage.notes.front()).player.band_share;
    warnings.push_back({notes.front(), "no_band",
                        counted(notes, passage) + " have a best place but no band: even there " + percent_words(low) +
                            " to " + percent_words(high) + " of all strokes of the force range are good, a band asks " +
                            percent_words(asked) +
                            ". Bow there all the same: a force chosen with care does better than the "
                            "whole range"});
}

void add_silent(const score::Tune& tune, const Passage& passage, std::vector<Warning>& warnings) {
    const Numbers notes = notes_that(passage, [&](const auto& note) { return !kind_of(passage, note).band.best; });
    if (!notes.empty())
        warnings.push_back({notes.front(), "nothing_speaks",
                            "No stroke of the range speaks anywhere on the string: " + named(tune, notes)});
}

void add_short(const score::Tune& tune, const Passage& passage, std::vector<Warning>& warnings) {
    const Numbers notes = notes_that(passage, [](const BowedNote& note) { return note.short_note; });
    if (notes.empty()) return;
    const BowedNote& first = passage.notes[notes.front()];
    const NoteKind& kind = kind_of(passage, first);
    const double speaking = longest_speaking(kind.player, 1.0 / fundamental(kind.note.string));
    warnings.push_back(
        {notes.front(), "short_note",
         counted(notes, passage) + " may be over before the string speaks in full: " + named(tune, notes) +
             ". The first lasts " + fixed_number(first.duration, 2) + " s, and a stroke there may take " +
             fixed_number(speaking, 2) + " s to speak; slower, or slurred, they have time"});
}

void add_long(const score::Tune& tune, const Passage& passage, std::vector<Warning>& warnings) {
    const Numbers notes = notes_that(passage, [](const BowedNote& note) { return note.stroke.hair_limited; });
    if (notes.empty()) return;
    const BowedNote& first = passage.notes[notes.front()];
    warnings.push_back(
        {notes.front(), "long_note",
         counted(notes, passage) + " would take more than " + mm_words(usable_hair) +
             " of hair: " + named(tune, notes) + ". They are bowed slower and as much lighter, the first at " +
             fixed_number(kind_of(passage, first).player.speed, 2) + " m/s; a change of bow would do as well"});
}

void add_forceless(const score::Tune& tune, const Passage& passage, std::vector<Warning>& warnings) {
    const Numbers notes = notes_that(
        passage, [&](const BowedNote& note) { return kind_of(passage, note).band.best && !note.force_speaks; });
    if (!notes.empty())
        warnings.push_back({notes.front(), "no_force",
                            "No force of the player's range speaks where the bow is: " + named(tune, notes)});
}

std::string plain_motion(Motion motion) {
    std::string words(motion_name(motion));
    std::ranges::replace(words, '_', ' ');
    return words;
}

std::string is_or_are(const Numbers& notes) { return notes.size() == 1 ? " is " : " are "; }

struct Played {
    Numbers failing;
    Numbers off;  // Helmholtz motion, but out of the player's tolerance of pitch
};

Played sorted(const Passage& passage, const std::vector<PlayedNote>& played) {
    Played result;
    for (std::size_t i = 0; i < played.size(); ++i) {
        const double tolerance = kind_of(passage, passage.notes[i]).player.pitch_tolerance;
        if (!sounds(played[i]))
            result.failing.push_back(i);
        else if (played[i].cents && std::abs(*played[i].cents) > tolerance)
            result.off.push_back(i);
    }
    return result;
}

std::string result_words(const score::Tune& tune, const Passage& passage, const std::vector<PlayedNote>& played,
                         BowWay way) {
    const Played result = sorted(passage, played);
    std::string words = result.failing.empty()
                            ? "all notes are Helmholtz motion"
                            : counted(result.failing, passage) + is_or_are(result.failing) + "not Helmholtz motion";
    if (!result.off.empty()) {
        const double tolerance = kind_of(passage, passage.notes.front()).player.pitch_tolerance;
        words += std::string(result.failing.empty() ? "; of them " : "; of the others ") +
                 std::to_string(result.off.size()) + (result.off.size() == 1 ? " lies" : " lie") + " more than " +
                 fixed_number(tolerance, 0) + " cents off";
    }
    words += result.failing.empty() ? "." : ":";
    for (const std::size_t i : result.failing)
        words += "\n  " + note_words(tune, i) + ": " + why_not(passage, i, way, played[i]);
    return words;
}

}  // namespace

std::vector<Warning> bow_warnings(const score::Tune& tune, const Passage& passage) {
    std::vector<Warning> warnings;
    add_bandless(passage, warnings);
    add_silent(tune, passage, warnings);
    add_far_notes(tune, passage, warnings);
    add_short(tune, passage, warnings);
    add_long(tune, passage, warnings);
    add_forceless(tune, passage, warnings);
    return warnings;
}

std::string why_not(const Passage& passage, std::size_t note, BowWay way, const PlayedNote& played) {
    const BowedNote& bowed = passage.notes[note];
    if (sounds(played)) return "";
    if (!played.bowed) return "no bow can stand there, the place is past the middle of what sounds or under the floor";
    const std::string motion = plain_motion(played.verdict.motion);
    if (played.too_short) return motion + "; the note is too short to tell more";
    const Security& here = way == BowWay::follows ? bowed.security : bowed.left_behind;
    std::string words =
        motion + "; at this place " + percent_words(here.speaks_share) + " of strokes of the range speak";
    if (here.fails_by != Fault::none) words += ", the others fail most by: " + std::string(fault_name(here.fails_by));
    return words;
}

std::string played_in_words(const score::Tune& tune, const Passage& passage, const SimulatedPassage& simulated) {
    return "Played with the bow left behind, " + mm_words(passage.left_behind) + " from the bridge where it suited " +
           note_words(tune, passage.lowest) + ", " +
           result_words(tune, passage, simulated.left_behind, BowWay::left_behind) +
           "\nPlayed with the bow following, " + result_words(tune, passage, simulated.follows, BowWay::follows);
}

std::string failing_in_words(const SimulatedPassage& simulated) {
    const auto failing = [](const std::vector<PlayedNote>& played) {
        return std::to_string(std::ranges::count_if(played, [](const PlayedNote& note) { return !sounds(note); }));
    };
    return "As simulated, " + failing(simulated.left_behind) + " of " + std::to_string(simulated.follows.size()) +
           " notes are not Helmholtz motion with the bow left behind, " + failing(simulated.follows) +
           " with the bow following.";
}

std::vector<std::string> contact_words(const Passage& passage) {
    std::vector<std::string> words;
    double written = -1.0;
    for (const BowedNote& note : passage.notes) {
        words.emplace_back();
        if (written >= 0.0 && std::abs(note.contact - written) < same_place) continue;
        words.back() = "bow " + mm_words(note.contact) + (written < 0.0 ? " from the bridge" : "");
        written = note.contact;
    }
    return words;
}

}  // namespace sim::passage
