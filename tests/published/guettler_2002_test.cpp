// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/start_wedge.hpp"
#include "tests/published/cello_d.hpp"
#include "tests/validity.hpp"

#include <gtest/gtest.h>

namespace {

using namespace sim;
using namespace tests;

/// The cello's D at a contact ratio of 0.09, thermal friction: 5 accelerations from 0.1 to 0.7 m/s^2 (the bow's full
/// speed of 5 m/s is never reached: constant acceleration throughout), 12 forces from 0.03 to 3 N.  From about 1 m/s^2
/// up the model's wedge is closed on this note: no force settles within the limit.
class Guettler2002 : public testing::Test {
protected:
    static void SetUpTestSuite() {
        const Note note = note_of(cello_d({}), resistive_bridge(100.0), {});
        StartPlan plan;
        plan.start = {.contact_point = cello_d_ratio * note.string.length, .speed = 5.0, .lenient = {0.090, 18.0}};
        plan.forces = {0.03, 3.0};
        plan.force_count = 12;
        plan.paces = {0.1, 0.7};
        plan.pace_count = 5;
        map_ = new StartMap(start_map(note, plan, {.threads = 2}));
        wedge_ = find_wedge(*map_, StartLimit::lenient, 0.3);
    }
    static void TearDownTestSuite() {
        delete map_;
        map_ = nullptr;
    }

    static inline StartMap* map_ = nullptr;
    static inline Wedge wedge_;
};

}  // namespace

/// source   [Guettler2002], from memory
/// expects  at each acceleration forces that begin cleanly, with others under and over them
TEST_F(Guettler2002, CleanBeginningsLieBetweenTwoForces) {
    for (const WedgeColumn& column : wedge_.columns) {
        ASSERT_NE(column.forces.chosen(), nullptr) << column.pace;
        EXPECT_FALSE(column.forces.chosen()->low_open) << column.pace;
        EXPECT_FALSE(column.forces.chosen()->high_open) << column.pace;
    }
    tests::record(
        {"accelerations with clean beginnings between two forces, cello D", "[Guettler2002]", tests::Flag::from_memory},
        {"every one", "-", std::to_string(wedge_.columns.size())});
}

/// source   [Guettler2002], from memory: too little force for the acceleration gives several slips in the first
///          periods, too much prolonged ones
/// expects  the weakest force of each column to slip too often, the firmest too seldom
TEST_F(Guettler2002, TooLittleForceSlipsTooOftenAndTooMuchTooSeldom) {
    for (std::size_t i = 0; i < map_->paces.size(); ++i) {
        EXPECT_EQ(map_->at(i, 0).run.lenient, StartOutcome::slipping) << map_->paces[i];
        EXPECT_EQ(map_->at(i, map_->forces.size() - 1).run.lenient, StartOutcome::choked) << map_->paces[i];
    }
    tests::record(
        {"under the wedge several slips a period, over it prolonged ones", "[Guettler2002]", tests::Flag::from_memory},
        {"signs", "-", "both at all accelerations"});
}

/// source   [Guettler2002], from memory
/// expects  both edges to rise with the acceleration; how steeply depends on friction and losses, and is not asked here
TEST_F(Guettler2002, BothEdgesRiseWithTheAcceleration) {
    ASSERT_TRUE(wedge_.low_edge && wedge_.high_edge);
    tests::check(
        {"power of acceleration with which the wedge's lower edge rises", "[Guettler2002]", tests::Flag::from_memory},
        tests::AtLeast{.got = wedge_.low_edge->power, .least = 0.0});
    tests::check({"power with which its upper edge rises", "[Guettler2002]", tests::Flag::from_memory},
                 tests::AtLeast{.got = wedge_.high_edge->power, .least = 0.0});
}
