// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/set_up_wizard.hpp"

#include "gui/sound/take_player.hpp"
#include "tests/gui/model/model_tools.hpp"

#include <gtest/gtest.h>
#include <QCheckBox>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QLabel>

namespace {

struct SetUpWizardTest : testing::Test {
    SetUpWizardTest() { wizard.show(); }

    template <class Control>
    Control* control(const char* name) {
        for (Control* one : wizard.findChildren<Control*>())
            if (one->accessibleName() == name) return one;
        return nullptr;
    }
    bool says(const QString& words) {
        for (const QLabel* label : wizard.findChildren<QLabel*>())
            if (label->isVisible() && label->text().contains(words)) return true;
        return false;
    }

    gui::Instrument instrument{sim::find_preset("division_bass_viol")};
    gui::TakePlayer player;
    gui::SetUpWizard wizard{instrument, 0, player};
};

/// expects  page by page from a preset to an instrument with what was measured, as one step that can be taken back; the
///          cautions stand where strings are tuned and where sound starts
TEST_F(SetUpWizardTest, GoesFromAPresetToOnesOwnInstrument) {
    auto* nearest = control<QComboBox>("Nearest instrument");
    nearest->setCurrentIndex(nearest->findText("treble viol"));
    wizard.next();
    EXPECT_TRUE(says("Strings break"));
    control<QDoubleSpinBox>("Length of the string")->setValue(365.5);
    control<QDoubleSpinBox>("Pitch of A4")->setValue(440.0);
    wizard.next();
    control<QDoubleSpinBox>("Width of a finger")->setValue(14.5);
    wizard.next();
    EXPECT_TRUE(says("Start low"));
    ASSERT_TRUE(tests::wait_until([&] { return wizard.findChildren<QCheckBox*>().size() == 6; }));
    const QList<QCheckBox*> likes = wizard.findChildren<QCheckBox*>();
    likes[1]->setChecked(true);
    likes[3]->setChecked(true);
    wizard.accept();
    const sim::Preset& mine = *instrument.preset();
    EXPECT_EQ(mine.name, "my treble viol");
    EXPECT_DOUBLE_EQ(mine.strings.front().length, 0.3655);
    EXPECT_DOUBLE_EQ(mine.reference_pitch, 440.0);
    EXPECT_DOUBLE_EQ(mine.player.finger_width, 0.0145);
    EXPECT_LT(mine.player.force_low, mine.player.force_high);
    EXPECT_NE(mine.player.force_high, sim::find_preset("treble_viol").player.force_high);
    EXPECT_EQ(wizard.result(), QDialog::Accepted);
    EXPECT_TRUE(instrument.unsaved());
    instrument.undo().undo();
    EXPECT_EQ(instrument.preset()->name, "division bass viol");
}

TEST_F(SetUpWizardTest, GivenUpItChangesNothing) {
    control<QDoubleSpinBox>("Pitch of A4")->setValue(440.0);
    wizard.reject();
    EXPECT_FALSE(instrument.unsaved());
}

}  // namespace
