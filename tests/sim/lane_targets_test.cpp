// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/sim/lane_runs.hpp"

#include <gtest/gtest.h>
#include <hwy/highway.h>
#include <hwy/targets.h>

namespace {

using namespace sim;
using namespace tests;

/// Every law, ribbon, skew, twist and a moving bow in one short set of runs.
std::vector<kernel::Record> varied_records() {
    struct Case {
        Friction friction;
        Bow bow;
        kernel::Drive drive;
    };
    const kernel::Drive still{.speed = {}, .force = {}, .contact_point = constant_profile(bowed_place)};
    kernel::Drive askew = still;
    askew.lengthwise = 0.03;
    kernel::Drive moving = still;
    moving.contact_point = {{{0.0, 0.030}, {0.01, 0.040}}};
    const Bow ribbon{.hair_points = 3, .stiffness = 2.5e5, .resistance = 10.0, .mass = 1.7e-3};
    const Bow upright{.upright_resistance = 1.3, .bridge_lean = 0.4};
    std::vector<kernel::Record> records;
    for (const Case& c :
         {Case{{}, {}, still}, Case{{.law = FrictionLaw::coulomb}, {}, still},
          Case{{.law = FrictionLaw::double_exponential}, {}, still}, Case{{.law = FrictionLaw::hyperbola}, {}, still},
          Case{{}, ribbon, still}, Case{{}, upright, still}, Case{{}, {}, askew},
          Case{{.law = FrictionLaw::coulomb}, {}, askew}, Case{{}, {}, moving}}) {
        const Note note = octave_of("division_bass_viol", c.friction, c.bow);
        const kernel::Note wanted = kernel_note(note, sample_rate(note, smallest_value(c.drive.contact_point)));
        for (kernel::Record& record : kernel::run_lanes(wanted, c.drive, lane_strokes(5, 6000)))
            records.push_back(std::move(record));
    }
    return records;
}

class LaneTargetsTest : public ::testing::TestWithParam<std::int64_t> {
protected:
    ~LaneTargetsTest() override { choose(0); }
    /// 0 = as usual.
    static void choose(std::int64_t target) {
        hwy::SetSupportedTargetsForTest(target);
        hwy::GetChosenTarget().Update(hwy::SupportedTargets());
    }
};

constexpr const char* pinned = "0bbadbd85043cf30";

}  // namespace

/// expects  the same bits on every instruction set, in every build: those of the day they were pinned
/// margin   none
TEST_P(LaneTargetsTest, RecordsAreTheSameBits) {
    if ((hwy::SupportedTargets() & HWY_TARGETS & GetParam()) == 0)
        GTEST_SKIP() << hwy::TargetName(GetParam()) << " is not here";
    choose(GetParam());
    EXPECT_EQ(hash_of(varied_records()), pinned) << hwy::TargetName(GetParam());
}

INSTANTIATE_TEST_SUITE_P(All, LaneTargetsTest, ::testing::Values(HWY_SSSE3, HWY_SSE4, HWY_AVX2, HWY_AVX3, HWY_AVX3_DL),
                         [](const auto& tested) { return std::string(hwy::TargetName(tested.param)); });
