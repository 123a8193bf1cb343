// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/batch.hpp"
#include "sim/force_window.hpp"
#include "sim/text.hpp"
#include "tests/reports/report_file.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

namespace {

using namespace sim;

constexpr double cell = 1.02;           // neighbouring forces
constexpr double greatest_move = 0.05;  // of an edge

struct Case {
    const char* preset;
    double stop;
    double contact_mm;
    Beginning beginning;
    bool held_to_it = true;  // the margin is asked for; else the row is only told
};

struct Edges {
    double low = 0.0;
    double high = 0.0;
};

/// The interval that holds the middle force, on a ladder of forces 2 % apart; a rung counts as most of the five around
/// it.
class Ladder {
public:
    Ladder(const Note& note, const Player& player, const Case& c, int times)
        : note_(note),
          player_(player),
          case_(c),
          times_(times),
          middle_(std::sqrt(player.force_low * player.force_high)) {}

    Edges edges() {
        if (!holds(0)) return {};
        return {force(walk(-1)), force(walk(1))};
    }

private:
    double force(int rung) const { return middle_ * std::pow(cell, rung); }
    bool plays(int rung) {
        const auto known = known_.find(rung);
        if (known != known_.end()) return known->second;
        const bool held = case_.beginning == Beginning::held;
        const StrokeResult result = play(note_,
                                         {.contact_point = case_.contact_mm * 1e-3,
                                          .force = force(rung),
                                          .speed = player_.speed,
                                          .rise = player_.rise,
                                          .duration = held ? held_duration(note_) : started_duration(note_, player_),
                                          .beginning = case_.beginning},
                                         times_);
        return known_[rung] = held ? result.verdict.motion == Motion::helmholtz : speaks(result, note_, player_);
    }
    bool holds(int rung) {
        int playing = 0;
        for (int k = -2; k <= 2; ++k) playing += plays(rung + k) ? 1 : 0;
        return playing >= 3;
    }
    int walk(int way) {
        int rung = 0;
        while (std::abs(rung) < 160 && holds(rung + 4 * way)) rung += 4 * way;
        while (std::abs(rung) < 170 && holds(rung + way)) rung += way;
        return rung;
    }

    const Note& note_;
    const Player& player_;
    const Case& case_;
    int times_;
    double middle_;
    std::map<int, bool> known_;
};

std::string percent(double ratio) { return fixed_number(100.0 * (ratio - 1.0), 1) + " %"; }

}  // namespace

/// source   own check, no outside value
/// expects  each edge of the force interval that holds the middle force moves by under 5 % from the usual sample rate
/// to
///          twice and four times it, thermal law; four notes, one two octaves up on the treble (a fifth is only
///          reported)
/// margin   the ladder's rungs are 2 % apart
TEST(ConvergenceTest, EdgesStayWhereTheyAreAtTwiceAndFourTimesTheSampleRate) {
    const Case cases[] = {{"division_bass_viol", 7.0, 45.0, Beginning::started},
                          {"division_bass_viol", 12.0, 33.0, Beginning::started},
                          {"treble_viol", 7.0, 28.0, Beginning::started},
                          {"treble_viol", 24.0, 12.0, Beginning::held},
                          {"division_bass_viol", 0.0, 75.0, Beginning::held, false}};
    constexpr int count = 5;
    Edges edges[count][3];
    for_each_job(3 * count, {.threads = 2, .progress = {}}, [&](int job) {
        const Case& c = cases[job / 3];
        Preset preset = find_preset(c.preset);
        preset.board_end_ratio = 0.76;  // two octaves up lies just past the treble's own board
        const Note note = make_note(preset, preset.strings[0], c.stop);
        edges[job / 3][job % 3] = Ladder(note, preset.player, c, 1 << (job % 3)).edges();
    });
    std::string report =
        "Edges of the force interval that holds the middle force, against the sample rate (thermal law)\n\n"
        "| note | contact point mm | window | least N | x2 | x4 | greatest N | x2 | x4 |\n"
        "|---|---|---|---|---|---|---|---|---|\n";
    for (int i = 0; i < count; ++i) {
        const Edges& once = edges[i][0];
        ASSERT_GT(once.low, 0.0) << cases[i].preset << " " << cases[i].stop << ": the middle force does not play";
        report += std::string("| ") + cases[i].preset + ", stop " + short_number(cases[i].stop) + " | " +
                  short_number(cases[i].contact_mm) +
                  (cases[i].beginning == Beginning::held ? " | held | " : " | started | ");
        report += short_number(once.low) + " | " + percent(edges[i][1].low / once.low) + " | " +
                  percent(edges[i][2].low / once.low) + " | " + short_number(once.high) + " | " +
                  percent(edges[i][1].high / once.high) + " | " + percent(edges[i][2].high / once.high) + " |\n";
        for (int k = 1; k < 3 && cases[i].held_to_it; ++k) {
            EXPECT_NEAR(edges[i][k].low / once.low, 1.0, greatest_move) << cases[i].preset << " " << cases[i].stop;
            EXPECT_NEAR(edges[i][k].high / once.high, 1.0, greatest_move) << cases[i].preset << " " << cases[i].stop;
        }
    }
    report +=
        "\nThe last row is told, not held to the margin: on the open string at this place islands of playing forces "
        "lie round the\n"
        "greatest one, and which of them join is a matter of chance at any sample rate.\n";
    write_report("convergence.md", report);
}
