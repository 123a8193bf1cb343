// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/limits.hpp"
#include "tests/published/cello_d.hpp"
#include "tests/validity.hpp"

#include <gtest/gtest.h>

namespace {

using namespace sim;

const LimitCase cello_case{
    .wave_impedance = 0.55, .speed = 0.05, .contact_ratio = tests::cello_d_ratio, .friction_drop = 0.5};

}  // namespace

/// source   [Woodhouse1993], least bow force from the bridge's admittance: prefactor seen, bracket derived
/// expects  Y = 1/R, R 100: 0.018714 N, the same as the resistive closed form
/// margin   0.1 %, 1000 terms and more
TEST(Woodhouse1993, LeastForceOverAResistanceIsTheClosedForm) {
    const double force = admittance_min(cello_case, tests::resistive_bridge(100.0), tests::cello_d_hz, 4000);
    check({"least force from the admittance of a resistance", "[Woodhouse1993]", tests::Flag::derived, "N"},
          tests::NearShare{force, 0.018714, 1e-3});
    check({"the same against the resistive closed form", "[Schelleng1973]", tests::Flag::derived, "N"},
          tests::NearShare{force, schelleng_min(cello_case, 100.0), 1e-3});
}

/// source   as above
/// expects  with one body mode the least force is greatest for the note on the mode
/// margin   none, the greatest of a row of notes a quarter tone apart
TEST(Woodhouse1993, LeastForceIsGreatestForTheNoteOnABodyMode) {
    const Bridge body{.kind = BridgeKind::modes, .resistance = 0.0, .modes = {{180.0, 30.0, 0.15, 1.0}}};
    double greatest = 0.0;
    int where = 99;
    for (int step = -8; step <= 8; ++step) {
        const double force = admittance_min(cello_case, body, 180.0 * std::exp2(step / 24.0), 400);
        if (force > greatest) greatest = force, where = step;
    }
    EXPECT_EQ(where, 0);
    tests::record({"least force over notes a quarter tone apart is greatest", "[Woodhouse1993]", tests::Flag::derived},
                  {"on the body mode", "none", std::to_string(where) + " quarter tones from it"});
}
