// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/recording.hpp"
#include "sim/sound/render.hpp"
#include "tests/motion/confusion.hpp"
#include "tests/motion/examples.hpp"
#include "tests/reports/report_file.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <optional>

namespace {

using analysis::HeardMotion;
using analysis::motion_count;
using tests::BowedStroke;
using tests::Region;

constexpr int wanted = 62;     // clear strokes of each motion
constexpr double lead = 0.15;  // s of noise before and after
constexpr double fade = 0.03;  // s

/// Silence with the same noise at either end, the stroke's own end faded.
analysis::Signal whole_recording(const BowedStroke& stroke, tests::Dice& dice) {
    BowedStroke longer = stroke;
    sim::sound::fade_ends(longer.force, {.in = 0.002, .out = fade});
    auto& samples = longer.force.samples;
    samples.insert(samples.begin(), static_cast<std::size_t>(lead * longer.force.sample_rate), samples.front());
    samples.insert(samples.end(), static_cast<std::size_t>(lead * longer.force.sample_rate), samples.back());
    return recorded(longer, {.body = stroke.body, .noise_db = 40.0}, dice).sound;
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

/// The answers for one stroke.
struct Answer {
    HeardMotion is = HeardMotion::silent;
    bool clear = false;
    std::array<HeardMotion, 2> said{};  // the note not known, and known
};

Answer answer_of(const BowedStroke& stroke, std::uint32_t seed) {
    tests::Dice dice(seed, static_cast<std::uint32_t>(stroke.scene));
    const analysis::Signal sound = whole_recording(stroke, dice);
    return {.is = static_cast<HeardMotion>(stroke.motion),
            .clear = stroke.clear,
            .said = {heard(sound, 0.0), heard(sound, stroke.string_hz)}};
}

/// Which strokes are still wanted, by motion.
class Quota {
public:
    bool full() const { return std::ranges::min(had_) >= wanted; }
    bool wants(sim::Motion motion) const { return had_[static_cast<std::size_t>(motion)] < wanted; }
    void count(sim::Motion motion) { ++had_[static_cast<std::size_t>(motion)]; }

private:
    std::array<int, motion_count> had_{};
};

/// Answers for strokes of the test's presets: scenes half of them anywhere, half far from the bridge; then such where
/// S-motion may be, of which that alone counts, until there are enough.
std::vector<Answer> answers(int most_scenes) {
    constexpr int batch = 32;
    constexpr int mixed_scenes = 256;
    const std::vector<sim::Preset> presets = tests::presets_named(tests::test_presets());
    Quota quota;
    std::vector<Answer> all;
    for (int first = 0; first < most_scenes && !quota.full(); first += batch) {
        const bool mixed = first < mixed_scenes;
        std::vector<std::vector<BowedStroke>> strokes(batch);
        sim::for_each_job(batch, {.threads = 2}, [&](int job) {
            const int scene = first + job;
            const Region region = !mixed ? Region::light : scene % 2 == 0 ? Region::player : Region::far;
            strokes[static_cast<std::size_t>(job)] =
                tests::scene_strokes({.presets = presets,
                                      .seed = 2,
                                      .region = region,
                                      .only = mixed ? std::nullopt : std::optional(sim::Motion::s_motion)},
                                     scene);
        });
        std::vector<BowedStroke> chosen;
        for (auto& some : strokes)
            for (BowedStroke& stroke : some) {
                if (!quota.wants(stroke.motion)) continue;
                if (stroke.clear) quota.count(stroke.motion);
                chosen.push_back(std::move(stroke));
            }
        std::vector<Answer> fresh(chosen.size());
        sim::for_each_job(static_cast<int>(chosen.size()), {.threads = 2}, [&](int job) {
            fresh[static_cast<std::size_t>(job)] = answer_of(chosen[static_cast<std::size_t>(job)], 3);
        });
        all.insert(all.end(), fresh.begin(), fresh.end());
    }
    return all;
}

tests::Confusion confusion(const std::vector<Answer>& answers, bool known, bool clear_alone) {
    tests::Confusion result;
    for (const Answer& answer : answers)
        if (answer.clear || !clear_alone) result.add(answer.is, answer.said[known ? 1 : 0]);
    return result;
}

TEST(MotionTest, NamesMotionsOfUnseenInstruments) {
    const std::vector<Answer> all = answers(3000);
    std::string report = "# Motions by ear\n\n";
    for (const bool known : {true, false})
        for (const bool clear : {true, false})
            report += std::string("## The note is ") + (known ? "known (--note)" : "not known") +
                      (clear ? ", clear strokes\n\n" : ", all strokes\n\n") + confusion(all, known, clear).table() +
                      "\n";
    std::printf("%s", report.c_str());
    write_report("motions.md", report);
}

}  // namespace
