// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/rosin.hpp"
#include "tests/published/cello_d.hpp"
#include "tests/validity.hpp"

#include <gtest/gtest.h>

namespace {

using namespace sim;

const double yield_alone = 1.0 / (2.0 * 0.55);                 // m/s per N, Z0 0.55
const double yield_twisting = 0.5 * (1.0 / 0.55 + 1.0 / 1.8);  // with Zt 1.8

/// Does the contact jump as it lets go, rather than begin to slide slowly?
bool jumps(const kernel::Contact& contact, double force, double yield) {
    kernel::Rosin rosin(contact, 1e5);
    rosin.rub(steady_sliding_fit(0.0) * force * yield * (1.0 + 1e-9), yield, force);
    return std::abs(rosin.slip()) > 2e-5;
}

double onset(const kernel::Contact& contact, double yield) {
    double low = 1e-3;
    double high = 0.2;
    while (high / low > 1.0005) {
        const double middle = std::sqrt(low * high);
        (jumps(contact, middle, yield) ? high : low) = middle;
    }
    return high;
}

}  // namespace

/// source   [Smith2000], fit of steady sliding, seen second-hand
/// expects  0.35 + 0.45 exp(-u/0.1) + 0.4 exp(-u/0.01): 1.2 at rest, 0.5156 at 0.1 m/s, 0.3500 at 1 m/s
/// margin   1e-4
TEST(Smith2000, FitOfSteadySlidingHasItsValues) {
    const auto at = [](const std::string& speed) {
        return tests::Claim{"fit of steady sliding at " + speed, "[Smith2000]", tests::Flag::second_hand};
    };
    check(at("rest"), tests::Near{steady_sliding_fit(0.0), 1.2, 1e-4});
    check(at("0.1 m/s"), tests::Near{steady_sliding_fit(0.1), 0.5156, 1e-4});
    check(at("1 m/s"), tests::Near{steady_sliding_fit(1.0), 0.3500, 1e-4});
}

/// source   load line against the fit of [Smith2000] (derived)
/// expects  at 1 N on 0.55 kg/s, no twist: lets go at w = 1.0909 and jumps to u = 0.7725, is caught again at w = 0.5591
/// margin   0.5 %
TEST(Smith2000, ContactLetsGoAndIsCaughtWhereTheLoadLineSays) {
    const kernel::Contact contact = kernel_contact(tests::fitted_law());
    kernel::Rosin rosin(contact, 1e5);
    const double step = 1e-5;
    double w = 0.0;
    while (!rosin.slips() && w < 3.0) rosin.rub(w += step, yield_alone, 1.0);
    const auto of = [](const char* what) { return tests::Claim{what, "[Smith2000]", tests::Flag::derived, "m/s"}; };
    check(of("load line at 1 N: lets go at"), tests::NearShare{w, 1.0909, 0.005});
    check(of("load line at 1 N: jumps to a slip of"), tests::NearShare{rosin.slip(), 0.7725, 0.005});
    while (rosin.slips() && w > 0.0) rosin.rub(w -= step, yield_alone, 1.0);
    check(of("load line at 1 N: is caught again at"), tests::NearShare{w, 0.5591, 0.005});
}

/// source   as above: a jump needs F max|dmu/du| / (2 Z) > 1 (derived)
/// expects  from 0.0247 N on, 0.0189 N with the twist
/// margin   1 %
TEST(Smith2000, ContactJumpsOnlyFromACertainForceOn) {
    const kernel::Contact contact = kernel_contact(tests::fitted_law());
    const auto of = [](const char* what) { return tests::Claim{what, "[Smith2000]", tests::Flag::derived, "N"}; };
    check(of("contact jumps from"), tests::NearShare{onset(contact, yield_alone), 0.0247, 0.01});
    check(of("contact jumps from, with twist"), tests::NearShare{onset(contact, yield_twisting), 0.0189, 0.01});
}

/// source   [Smith2000], as above; the thermal law's table is made from it
/// expects  a contact that slides steadily at a speed comes to rest at the fit's coefficient
/// margin   1 %: the table is straight between points 1/2000 of the range apart
TEST(Smith2000, WarmContactReturnsTheFitInSteadySliding) {
    const kernel::Contact contact = kernel_contact({});
    for (double speed : {0.005, 0.02, 0.1, 0.3, 1.0}) {
        kernel::Rosin rosin(contact, 2e5);
        const double stiff = 1e-9;  // yields hardly, so that the slip is the speed asked for
        double force = 0.0;
        for (int i = 0; i < 40000; ++i) force = rosin.rub(speed, stiff, 1.0);
        check({"warm contact sliding steadily at " + tests::digits(speed, "m/s"), "[Smith2000]",
               tests::Flag::second_hand},
              tests::NearShare{-force, steady_sliding_fit(speed), 0.01});
    }
}
