// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/lesson_words.hpp"

#include "analysis/units.hpp"
#include "sim/report/table.hpp"
#include "sim/report/tone_values.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace sim::report {
namespace {

// From where on a difference is worth a word.  Common practice, no source: 10 cents are heard by most, 3 dB by all.
constexpr double heard_cents = 10.0;
constexpr double heard_level = 3.0;             // dB
constexpr double heard_brightness_ratio = 0.8;  // of the other

/// Nothing where the pitch is near the note's or there is none.
std::string pitch_words(const StrokeResult& stroke, const Note& note) {
    const std::optional<double> cents = pitch_cents(stroke, note);
    if (!cents || std::abs(*cents) < heard_cents) return "";
    return fixed_number(std::abs(*cents), 0) + " cents " + (*cents < 0.0 ? "flat" : "sharp");
}

/// Nothing where the two do not differ enough, or either has no value.
std::string level_words(const StrokeResult& left, const StrokeResult& follows) {
    const auto a = level_db(left);
    const auto b = level_db(follows);
    if (!a || !b || std::abs(*a - *b) < heard_level) return "";
    return fixed_number(std::abs(*a - *b), 0) + " dB " + (*a < *b ? "weaker" : "stronger");
}

std::string brightness_words(const StrokeResult& left, const StrokeResult& follows) {
    const auto a = brightness_f0(left);
    const auto b = brightness_f0(follows);
    if (!a || !b) return "";
    if (*a < heard_brightness_ratio * *b) return "duller";
    return *b < heard_brightness_ratio * *a ? "brighter" : "";
}

/// "a", "a and b", "a, b and c"
std::string joined(const std::vector<std::string>& parts) {
    std::string text;
    for (std::size_t i = 0; i < parts.size(); ++i)
        text += (i == 0 ? "" : i + 1 == parts.size() ? " and " : ", ") + parts[i];
    return text;
}

/// "growls, has no clear pitch and is 12 dB weaker and duller"; empty where nothing differs.
std::string differences(const ClimbStop& stop) {
    const StrokeResult& left = *stop.left_behind.stroke;
    const StrokeResult& follows = *stop.follows->stroke;
    const Motion motion = left.verdict.motion;
    if (motion == Motion::silent) return motion == follows.verdict.motion ? "" : motion_words(motion);
    std::vector<std::string> is;
    for (const std::string& difference :
         {pitch_words(left, stop.note), level_words(left, follows), brightness_words(left, follows)})
        if (!difference.empty()) is.push_back(difference);
    std::vector<std::string> heard;
    if (motion != follows.verdict.motion) heard.push_back(motion_words(motion));
    if (!pitch_cents(left, stop.note)) heard.emplace_back("has no clear pitch");
    if (!is.empty()) heard.push_back("is " + joined(is));
    return joined(heard);
}

std::string place_step(const Lesson& lesson) {
    std::vector<std::string> places;
    for (const HeardStop& heard : lesson.heard) {
        const ClimbStop& stop = lesson.climb.stops[heard.index];
        if (!stop.band.best) continue;
        places.push_back(the_stop(stop.note.stop) + " " + mm_words(*stop.band.best) + " (" +
                         fixed_cell(*stop.band.best / lesson.climb.player.finger_width, 1) + " finger-widths)");
    }
    if (places.empty()) return "Find the bow's place for each note by ear, slowly: the simulation found none here.";
    return "Learn the bow's places by the eye and the hand, measured from the bridge: " + joined(places) +
           ". Lay fingers side by side against the bridge to measure them.";
}

}  // namespace

std::string stop_words(double stop) {
    constexpr std::array<std::pair<double, const char*>, 5> names{
        {{5.0, "fourth"}, {7.0, "fifth"}, {12.0, "octave"}, {19.0, "octave and a fifth"}, {24.0, "two octaves"}}};
    if (stop == 0.0) return "open string";
    const auto* named = std::ranges::find(names, stop, [](const auto& name) { return name.first; });
    return "stop " + short_number(stop) + (named != names.end() ? std::string(" (") + named->second + ")" : "");
}

std::string the_stop(double stop) { return (stop == 0.0 ? "the " : "") + stop_words(stop); }

std::string stop_heading(double stop) {
    const std::string words = stop_words(stop);
    return (stop == 0.0 ? "O" : "S") + words.substr(1);
}

std::string motion_words(Motion motion) {
    switch (motion) {
        case Motion::helmholtz:
            return "sings";
        case Motion::multiple_slip:
            return "whispers (the string slips several times a period)";
        case Motion::raucous:
            return "growls (no regular motion)";
        case Motion::anomalous_low:
            return "croaks below its pitch";
        case Motion::s_motion:
            return "sounds hollow (S-motion)";
        case Motion::silent:
            break;
    }
    return "is silent";
}

std::string strokes_of_100(double share) { return fixed_number(100.0 * share, 0) + " of 100 strokes"; }

std::string rule_words(const RuleAnswer& rule) {
    const std::string practice =
        "The higher the finger, the shorter the string that sounds, and the nearer to the bridge the bow belongs. ";
    switch (rule.verdict) {
        case RuleVerdict::holds:
            return practice + "So players say, and the simulation of this string agrees.";
        case RuleVerdict::weakens:
            return practice + "So players say; the simulation of this string agrees only roughly.";
        case RuleVerdict::reverses:
            return practice + "So players say; the simulation of this string, over these stops, does not show it.";
        case RuleVerdict::undecided:
            break;
    }
    return practice + "So players say; these are too few stops for the simulation to tell.";
}

std::string listen_for(const ClimbStop& stop) {
    if (!stop.follows || !stop.follows->stroke) return "No stroke of this range speaks anywhere on this note.";
    if (!stop.left_behind.stroke)
        return "No bow can stand at " + mm_words(stop.left_behind.contact_point) +
               " here: that place lies too near the finger or beyond it.";
    const double apart = std::abs(stop.left_behind.contact_point - stop.follows->contact_point);
    if (apart < 0.5 * analysis::metres_from_mm(1.0)) return "The same place: here the bow is where it suits the note.";
    const std::string heard = differences(stop);
    if (heard.empty()) return "Hardly a difference: the old place still does for this note.";
    return "With the bow left behind the note " + heard + ".";
}

std::string bandless_words(const Climb& climb) {
    const auto bandless = std::ranges::count_if(
        climb.stops, [](const ClimbStop& stop) { return stop.band.best.has_value() && !stop.band.band; });
    if (bandless == 0) return "";
    const std::string asked = strokes_of_100(climb.player.band_share);
    const bool all = bandless == static_cast<std::ptrdiff_t>(climb.stops.size());
    const std::string which = all             ? "None of these stops has a"
                              : bandless == 1 ? "One of these stops has no"
                                              : std::to_string(bandless) + " of these stops have no";
    return which + " band in which " + asked +
           " come out clean; there the dashed frame shows where the bow does nearly as well as it can. That does not "
           "mean "
           "that the note can't be played. The simulated player begins each stroke from rest, with forces from the "
           "lightest to the firmest of the range and the place up to " +
           short_number(analysis::mm_from_metres(climb.player.wander)) +
           " mm off, and mends nothing by ear as you do. Where the frame is long, all of it does nearly as well as the "
           "best "
           "place; let the ear choose.";
}

// Common practice, no source.
std::vector<std::string> practice_steps(const Lesson& lesson) {
    const ClimbStop& first = lesson.climb.stops.front();
    const ClimbStop& top = lesson.climb.stops[lesson.heard.back().index];
    return {
        place_step(lesson),
        "Hear the difference first. Play " + the_stop(top.note.stop) + " with the bow where it suited " +
            the_stop(first.note.stop) + ", then let the bow come in between two strokes until the note sings.",
        "Then climb slowly, one stop a stroke. Move the bow while it changes direction, later within the stroke. The "
        "finger leads, the bow goes along.",
        "Near the bridge slow and firm, near the board faster and lighter. The bow stays parallel to the bridge.",
        "Fix the fingering above the frets beforehand. Begin each hand place from a landmark (a fret, the guide fret, "
        "an "
        "open string that checks the pitch) and leave fingers down as a guide.",
        "Bring elbow and thumb round early enough for the hand to clear the instrument's shoulder. Passages that jump "
        "between the frets and the bare board need the slowest practice.",
    };
}

}  // namespace sim::report
