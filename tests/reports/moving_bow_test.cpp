// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/level.hpp"
#include "analysis/units.hpp"
#include "sim/judged_stroke.hpp"
#include "sim/text.hpp"
#include "tests/reports/report_file.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace {

using namespace sim;

constexpr double from_mm = 60.0;
constexpr double to_mm = 20.0;
constexpr double settle = 0.5;       // s at either end without moving
constexpr double sweep = 3.5;        // s
constexpr double listened = 0.1;     // s
constexpr double held_to_it = 0.16;  // N

/// Level of what lies over 15 kHz, dB re 1 N.
double high_level(std::span<const double> samples, double rate) {
    return analysis::db_from_ratio(
        analysis::weighted_rms(samples, rate, [](double hz) { return hz > 15000.0 ? 1.0 : 0.0; }));
}

int main_slips_between(const Note& note, const kernel::Record& record, double speed, TimeSpan span) {
    const auto slips = main_slips(record, constant_profile(speed), 1.0 / fundamental(note.string));
    return static_cast<int>(std::ranges::count_if(
        slips, [&](const kernel::Slip& slip) { return slip.start >= span.from && slip.start < span.to; }));
}

/// What a travelling bow sounds like as it passes a place, against a bow held there.
struct Passing {
    double place_mm = 0.0;
    double level = 0.0;  // dB, travelling less held
    double high = 0.0;   // dB, the same over 15 kHz
    double slips = 0.0;  // a period
    Motion held = Motion::silent;
};

Passing passing(const Note& note, const FreePlayed& travelling, double place_mm, const Stroke& held_stroke) {
    const double f0 = fundamental(note.string);
    const double middle = settle + (from_mm - place_mm) / (from_mm - to_mm) * sweep;
    const auto first = static_cast<std::size_t>((middle - listened / 2) * travelling.sample_rate);
    const auto count = static_cast<std::size_t>(listened * travelling.sample_rate);
    const auto heard = std::span<const double>(travelling.record.bridge_force).subspan(first, count);
    const Played held = play_recorded(note, held_stroke);
    const double held_rate = held.result.sample_rate;
    const auto held_heard =
        std::span<const double>(held.record.bridge_force).last(static_cast<std::size_t>(listened * held_rate));
    return {.place_mm = place_mm,
            .level = analysis::db_from_ratio(tone_of(heard, {travelling.sample_rate, f0}, note.bridge).level /
                                             tone_of(held_heard, {held_rate, f0}, note.bridge).level),
            .high = high_level(heard, travelling.sample_rate) - high_level(held_heard, held_rate),
            .slips = main_slips_between(note, travelling.record, held_stroke.speed,
                                        {.from = middle - listened / 2, .to = middle + listened / 2}) /
                     (listened * f0),
            .held = held.result.verdict.motion};
}

std::vector<Passing> passings(const Note& note, double speed, double force) {
    FreeStroke moving{
        .drive = {.speed = constant_profile(speed), .force = constant_profile(force), .contact_point = {}},
        .start = {.helmholtz = true, .speed = speed},
        .duration = sweep + 2.0 * settle};
    moving.drive.contact_point.points = {{settle, from_mm * 1e-3}, {settle + sweep, to_mm * 1e-3}};
    const FreePlayed travelling = play_freely(note, moving);
    std::vector<Passing> all;
    for (double place_mm : {58.0, 50.0, 40.0, 30.0, 22.0})
        all.push_back(passing(note, travelling, place_mm,
                              {.contact_point = place_mm * 1e-3,
                               .force = force,
                               .speed = speed,
                               .duration = 2.0,
                               .beginning = Beginning::held}));
    return all;
}

}  // namespace

/// source   own check, no outside value
/// expects  a bow that travels from 60 to 20 mm shows at each place the motion of a bow held there, its level within
///          0.5 dB, and over 15 kHz no more than 3 dB above it
/// margin   as said; octave of the division bass viol's top string, at 0.16 N.  Firmer strokes are told: there the note
///          has two Helmholtz motions at the far end, of long and of short slips, and the travelling bow keeps the one
///          it came with
TEST(MovingBowTest, TravellingBowSoundsAtEachPlaceLikeOneHeldThere) {
    const Preset preset = find_preset("division_bass_viol");
    const Note note = make_note(preset, preset.strings[0], 12.0);
    std::string report =
        "A bow travelling from 60 to 20 mm in 3.5 s against bows held at the same places (octave, 0.2 m/s)\n\n"
        "| force N | contact point mm | level, travelling less held dB | over 15 kHz dB | slips a period "
        "|\n|---|---|---|---|---|\n";
    for (double force : {held_to_it, 0.2, 0.25, 0.3}) {
        for (const Passing& p : passings(note, preset.player.speed, force)) {
            report += "| " + short_number(force) + " | " + short_number(p.place_mm) + " | " + fixed_number(p.level, 2) +
                      " | " + fixed_number(p.high, 1) + " | " + fixed_number(p.slips, 2) + " |\n";
            if (force != held_to_it) continue;
            EXPECT_EQ(p.held, Motion::helmholtz) << force << " N, " << p.place_mm << " mm";
            EXPECT_NEAR(p.slips, 1.0, 0.06) << force << " N, " << p.place_mm << " mm";  // a cut slip of 59 is 0.02
            EXPECT_NEAR(p.level, 0.0, 0.5) << force << " N, " << p.place_mm << " mm";
            EXPECT_LE(p.high, 3.0) << force << " N, " << p.place_mm << " mm";
        }
    }
    report +=
        "\nAt 0.2 N and more the string has two motions with one slip a period at the far places, a stronger one and "
        "one "
        "with longer\nslips that is some dB weaker.  Which of them a bow is in depends on how it came there: a bow "
        "that "
        "sets out at 60 mm keeps the\nweaker one on its way in; one held from the ideal motion falls into the "
        "stronger.  "
        "Some flybacks at 0.25 and 0.3 N fall into two.\nSo those rows are told and not held to 0.5 dB; started within "
        "a "
        "millimetre of a place, a travelling bow sounds there as one held\nwithin 0.2 dB at 0.2 N too.\n";
    write_report("moving_bow.md", report);
}
