// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/motion.hpp"
#include "sim/judge.hpp"
#include "sim/security.hpp"

#include <QCoreApplication>
#include <QLocale>
#include <QString>

#include <optional>

namespace gui {

struct NoteBand;

/// Numbers and words for the screen: in the user's locale, with their units.  Files keep plain numbers.
class ScreenText {
    Q_DECLARE_TR_FUNCTIONS(gui::ScreenText)

public:
    explicit ScreenText(const QLocale& locale = QLocale()) : locale_(locale) {}

    /// Never "-0".
    QString number(double value, int decimals) const;
    QString mm(double metres, int decimals = 0) const;
    QString mm_number(double metres, int decimals = 0) const;  ///< without the unit
    QString newtons(double newtons) const;
    QString speed(double metres_per_second) const;
    QString hertz(double hz) const;
    QString percent(double share) const;
    /// "2.4 finger-widths"
    QString finger_widths(double metres, double finger_width) const;
    /// With its sign; "0", not "+0", for what rounds to nothing.
    QString signed_number(double value, int decimals) const;
    /// Semitones above the open string: "open", "5", "12.35".
    QString stop(double semitones) const;

    /// What a player would say: "it sings: Helmholtz motion".
    QString motion(sim::Motion motion) const;
    /// The same of what is only heard, with how sure that is; "not clear" where it is not.
    QString heard_motion(const analysis::MotionGuess& guess) const;
    QString fault(sim::Fault fault) const;
    /// One sentence on the band: near, far, width in mm and finger-widths; or why there is none.
    QString band_sentence(const NoteBand& band, const sim::Player& player) const;

private:
    QLocale locale_;
};

// Places in boxes to type into.
double shown_mm(double metres);
double metres_typed(double mm);

}  // namespace gui
