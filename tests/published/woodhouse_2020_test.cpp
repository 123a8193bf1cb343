// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/published/cello_d.hpp"
#include "tests/validity.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace {

using namespace sim;
using namespace tests;

/// Number of the harmonic of the friction force that stands out above the general fall of the low ones.
int ripples_a_period(const Note& note, double ratio, double force) {
    constexpr std::size_t first = 4;  // harmonic 5: past the slip's own, which fall from the first on
    const auto last = static_cast<std::size_t>(1.5 / ratio);  // short of twice the ripples
    const Played played = play_recorded(note, held_stroke(note, {.ratio = ratio, .force = force, .speed = 0.05}));
    EXPECT_EQ(played.result.verdict.motion, Motion::helmholtz) << ratio << ", " << force << " N";
    const Spectrum spectrum = spectrum_of(played.record.friction, played.result.sample_rate, cello_d_hz);
    EXPECT_GE(spectrum.partials.size(), last);
    if (spectrum.partials.size() < last) return 0;
    const auto strongest = std::max_element(spectrum.partials.begin() + first, spectrum.partials.begin() + last,
                                            [](const auto& a, const auto& b) { return a.amplitude < b.amplitude; });
    return 1 + static_cast<int>(strongest - spectrum.partials.begin());
}

}  // namespace

/// source   [Woodhouse2020], 9.5.4: ripples between bow and bridge, about 11 a period at a contact ratio of 0.0899
/// (seen) expects  the friction under the bow ripples so, whichever law; all losses and twist margin   1
TEST(Woodhouse2020, ElevenRipplesAPeriodAtTheContactRatioShown) {
    for (const Friction& friction : {Friction{}, fitted_law()}) {
        const Note note = note_of(cello_d({}), resistive_bridge(100.0), friction);
        for (double force : {0.2, 0.3})
            tests::check(
                {"ripples a period, " + std::string(friction_law_name(friction.law)) + ", " + tests::digits(force, "N"),
                 "[Woodhouse2020]", tests::Flag::seen},
                tests::Near{.got = static_cast<double>(ripples_a_period(note, cello_d_ratio, force)),
                            .expected = 11,
                            .within = 1});
    }
}

/// source   as above; a ripple is a trip from the bow to the bridge and back, 1 / ratio of them a period (derived)
/// expects  nearer the bridge more, farther fewer; law of slip speed (under the warming contact 11 or 12 stand out at a
///          ratio of 0.08, where 12.5 are due)
/// margin   1
TEST(Woodhouse2020, RipplesFollowTheContactPoint) {
    const Note note = note_of(cello_d({}), resistive_bridge(100.0), fitted_law());
    for (double ratio : {0.072, 0.08, 0.105})
        tests::check(
            {"ripples a period at contact ratio " + tests::digits(ratio), "[Woodhouse2020]", tests::Flag::derived},
            tests::Near{
                .got = static_cast<double>(ripples_a_period(note, ratio, 0.3)), .expected = 1.0 / ratio, .within = 1});
}
