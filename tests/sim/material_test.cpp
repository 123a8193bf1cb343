// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/material.hpp"

#include "analysis/errors.hpp"

#include <gtest/gtest.h>

#include <set>
#include <string>

TEST(MaterialTest, EveryMaterialIsWholeAndSaysWhereItIsFrom) {
    std::set<std::string_view> names;
    for (const sim::Material& material : sim::materials()) {
        EXPECT_TRUE(names.insert(material.name).second) << material.name;
        for (const std::string_view source :
             {material.density_source, material.moduli_source, material.losses_source, material.torsion_q_source})
            EXPECT_TRUE(source.find("from memory") != source.npos || source.find('[') != source.npos) << material.name;
        EXPECT_GT(material.density, 900.0) << material.name;  // the lightest plastic floats, just
        EXPECT_LT(material.density, 20000.0) << material.name;
        // a solid that keeps its volume or loses some has G between E/3 and E/2; drawn fibres twist more easily
        EXPECT_LT(material.shear_modulus, material.youngs_modulus / 2.0) << material.name;
        EXPECT_GT(material.shear_modulus, material.youngs_modulus / 10.0) << material.name;
        EXPECT_GT(material.torsion_q, 1.0) << material.name;
        EXPECT_GT(material.bending_loss, material.friction_loss) << material.name;
    }
    for (const char* needed :
         {"gut", "overspun gut", "nylon", "overspun nylon", "fluorocarbon", "steel", "overspun steel"}) {
        EXPECT_TRUE(names.contains(needed)) << needed;
    }
}

TEST(MaterialTest, IsFoundByItsName) {
    EXPECT_EQ(sim::material("gut", "here").density, 1300.0);
    EXPECT_FALSE(sim::material("gut", "here").overspun);
    EXPECT_TRUE(sim::material("overspun gut", "here").overspun);
}

TEST(MaterialTest, ThatIsUnknownListsTheKnownOnesAndThePlace) {
    try {
        sim::material("brass", "string \"1\"");
        ADD_FAILURE() << "brass was found";
    } catch (const analysis::InputError& error) {
        const std::string what = error.what();
        EXPECT_TRUE(what.starts_with("string \"1\": ")) << what;
        EXPECT_NE(what.find("overspun gut"), std::string::npos) << what;
        EXPECT_NE(what.find("brass"), std::string::npos) << what;
        EXPECT_EQ(what.find('\n'), std::string::npos) << what;
    }
}
