// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/recording.hpp"
#include "sim/sound/render.hpp"
#include "tests/motion/confusion.hpp"
#include "tests/motion/examples.hpp"
#include "tests/motion/vibrato.hpp"
#include "tests/reports/report_file.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdio>

namespace {

using analysis::HeardMotion;
using analysis::motion_count;
using tests::BowedStroke;
using tests::Region;

constexpr int wanted = 62;     // clear strokes of each motion
constexpr double lead = 0.15;  // s of noise before and after
constexpr double fade = 0.03;  // s

/// Silence with the same noise at either end, the stroke's own end faded.
analysis::Signal whole_recording(const BowedStroke& stroke, const std::optional<tests::Room>& room, tests::Dice& dice) {
    BowedStroke longer = stroke;
    sim::sound::fade_ends(longer.force, {.in = 0.002, .out = fade});
    auto& samples = longer.force.samples;
    samples.insert(samples.begin(), static_cast<std::size_t>(lead * longer.force.sample_rate), samples.front());
    samples.insert(samples.end(), static_cast<std::size_t>(lead * longer.force.sample_rate), samples.back());
    return recorded(longer, {.body = stroke.body, .noise_db = 40.0, .room = room}, dice).sound;
}

/// What is heard over the last third of a second of the stroke: silence where there is no note.
HeardMotion heard(const analysis::Signal& sound, double intended_hz) {
    constexpr double late = 0.3;    // s
    constexpr double least = 0.02;  // s
    const auto recording = analysis::analyse_sound(sound.samples, sound.sample_rate, {.intended_hz = intended_hz});
    const double end = static_cast<double>(sound.samples.size()) / sound.sample_rate - lead;
    HeardMotion said = HeardMotion::silent;
    double most = least;
    for (const analysis::RecordedNote& note : recording.notes) {
        const double together = std::min(note.span.end, end - fade) - std::max(note.span.start, end - late);
        if (together <= most) continue;
        most = together;
        said = note.motion.motion;
    }
    return said;
}

/// How a stroke is heard.
enum Way : std::size_t { known, unknown, at_home, ways };
constexpr std::array<std::string_view, ways> way_names{
    "The note is known (--note)", "The note is not known",
    "The note is known, with vibrato of 20 cents either way, in a room"};

/// The answers for one stroke.
struct Answer {
    HeardMotion is = HeardMotion::silent;
    bool clear = false;
    std::array<HeardMotion, ways> said{};
};

Answer answer_of(const BowedStroke& stroke, std::uint32_t seed) {
    tests::Dice dice(seed, static_cast<std::uint32_t>(stroke.scene));
    const analysis::Signal sound = whole_recording(stroke, {}, dice);
    BowedStroke rolled = stroke;
    rolled.force =
        tests::swayed(stroke.force, {.cents = 20.0, .hz = dice.between(4.5, 7.0), .turn = dice.between(0.0, 1.0)});
    const double hz = stroke.string_hz;
    return {.is = static_cast<HeardMotion>(stroke.motion),
            .clear = stroke.clear,
            .said = {heard(sound, hz), heard(sound, 0.0), heard(whole_recording(rolled, drawn_room(dice), dice), hz)}};
}

/// Which strokes are still wanted, by motion.
class Quota {
public:
    std::array<bool, motion_count> open() const {
        std::array<bool, motion_count> result{};
        for (std::size_t m = 0; m < result.size(); ++m) result[m] = had_[m] < wanted;
        return result;
    }
    bool takes(const BowedStroke& stroke) {
        int& had = had_[static_cast<std::size_t>(stroke.motion)];
        if (had >= wanted) return false;
        had += stroke.clear ? 1 : 0;
        return true;
    }

private:
    std::array<int, motion_count> had_{};
};

/// Strokes of the test's presets: scenes half of them anywhere, half far from the bridge, until there are enough of
/// each motion but S-motion; then such where that may be.
std::vector<BowedStroke> batch_of_strokes(const std::vector<sim::Preset>& presets, int first, Quota& quota) {
    constexpr int batch = 16;
    std::array<bool, motion_count> open = quota.open();
    constexpr auto s_motion = static_cast<std::size_t>(sim::Motion::s_motion);
    const bool mixed = std::ranges::count(open, true) > (open[s_motion] ? 1 : 0);
    std::vector<std::vector<BowedStroke>> strokes(batch);
    sim::for_each_job(batch, {.threads = 2}, [&](int job) {
        const int scene = first + job;
        const Region region = !mixed ? Region::light : scene % 2 == 0 ? Region::player : Region::far;
        strokes[static_cast<std::size_t>(job)] = tests::scene_strokes(
            {.presets = presets, .seed = 2, .region = region, .most = mixed ? 1U : 2U, .wanted = open}, scene);
    });
    std::vector<BowedStroke> chosen;
    for (auto& some : strokes)
        for (BowedStroke& stroke : some)
            if (quota.takes(stroke)) chosen.push_back(std::move(stroke));
    return chosen;
}

std::vector<Answer> answers(int most_scenes) {
    const std::vector<sim::Preset> presets = tests::presets_named(tests::test_presets());
    Quota quota;
    std::vector<Answer> all;
    for (int first = 0; first < most_scenes && std::ranges::count(quota.open(), true) > 0; first += 16) {
        const std::vector<BowedStroke> chosen = batch_of_strokes(presets, first, quota);
        std::vector<Answer> fresh(chosen.size());
        sim::for_each_job(static_cast<int>(chosen.size()), {.threads = 2}, [&](int job) {
            fresh[static_cast<std::size_t>(job)] = answer_of(chosen[static_cast<std::size_t>(job)], 3);
        });
        all.insert(all.end(), fresh.begin(), fresh.end());
    }
    return all;
}

tests::Confusion confusion(const std::vector<Answer>& answers, Way way, bool clear_alone) {
    tests::Confusion result;
    for (const Answer& answer : answers)
        if (answer.clear || !clear_alone) result.add(answer.is, answer.said[way]);
    return result;
}

std::string introduction() {
    return R"(# Motions by ear

Made by motion_test. Strokes of five presets that the fit has not seen, each on a body of its own whose modes are moved by up to a quarter, their Q and radiation (sign too) drawn anew; open strings to two octaves up, half of them at contact ratios from 0.025 to 0.4, half from 0.12 on, forces from a fiftieth to twelve times the player's middle one, half to twice the usual speed; white noise 40 dB under a usual stroke; where a room is told, its decay (0.12 to 0.9 s), its tail (to the level of the direct sound) and the response of the microphone are drawn anew each time. Up to one stroke of each motion a scene. S-motion is so rare that most of its strokes were looked for at light forces far from the bridge.

*Clear* strokes: the judge of the simulation, who sees the string, says the same at 0.6 and 0.8 of the stroke and at its end, for a bow a thousandth faster, were the first harmonic a tenth weaker or stronger than it is (where it is half the ideal, Helmholtz motion and S-motion meet), and were the slips longer or shorter by a factor of 1.4 (a second slip a period counts from a tenth of the whole way on: there Helmholtz motion and multiple slip meet). The first )" +
           std::to_string(wanted) +
           R"( of each motion. *All*: every stroke that was drawn until then. Precision is as if all motions were equally frequent; unclear is a miss. The aim was 90 % for each.

)";
}

/// source   the judge of the simulation, on strokes, instruments and bodies that the fit has not seen
/// expects  60 or more clear strokes of each motion; each motion's recall and precision, the note known, at least what
///          was reached less some 5 %.  The aim is 90 % for each: raucous, anomalous low and silence reach it in both,
///          S-motion in recall; Helmholtz motion and multiple slip fall short (tests/reports/motions.md).  With vibrato
///          and in a room a mean recall of 0.78, again 5 % less than was reached
/// margin   bounds chosen after seeing the figures
TEST(MotionTest, NamesMotionsOfUnseenInstruments) {
    const std::vector<Answer> all = answers(3000);
    std::string report = introduction();
    for (const Way way : {known, unknown, at_home})
        for (const bool clear : {true, false})
            report += "## " + std::string(way_names[way]) + (clear ? ", clear strokes" : ", all strokes") + "\n\n" +
                      confusion(all, way, clear).table() + "\n";
    std::printf("%s", report.c_str());
    write_report("motions.md", report);
    struct Bound {
        HeardMotion motion;
        double recall;
        double precision;
    };
    const tests::Confusion clear = confusion(all, known, true);
    for (const Bound& bound : {Bound{HeardMotion::helmholtz, 0.60, 0.73}, Bound{HeardMotion::multiple_slip, 0.64, 0.81},
                               Bound{HeardMotion::raucous, 0.87, 0.90}, Bound{HeardMotion::anomalous_low, 0.95, 0.89},
                               Bound{HeardMotion::s_motion, 0.85, 0.68}, Bound{HeardMotion::silent, 0.89, 0.95}}) {
        SCOPED_TRACE(heard_motion_name(bound.motion));
        EXPECT_GE(clear.count(bound.motion), 60);
        EXPECT_GE(clear.recall(bound.motion), bound.recall);
        EXPECT_GE(clear.precision(bound.motion), bound.precision);
    }
    const tests::Confusion home = confusion(all, at_home, true);
    double recall = 0.0;
    for (std::size_t m = 0; m < motion_count; ++m) recall += home.recall(static_cast<HeardMotion>(m)) / motion_count;
    EXPECT_GE(recall, 0.78);
}

}  // namespace
