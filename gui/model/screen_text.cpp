// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/screen_text.hpp"

#include "analysis/units.hpp"
#include "gui/model/note_band.hpp"

#include <cmath>

namespace gui {

QString ScreenText::number(double value, int decimals) const {
    const double unit = std::pow(10.0, -decimals);
    return locale_.toString(std::abs(value) < unit / 2.0 ? 0.0 : value, 'f', decimals);
}

QString ScreenText::signed_number(double value, int decimals) const {
    const bool nothing = std::abs(value) < std::pow(10.0, -decimals) / 2.0;
    return (value > 0.0 && !nothing ? QString(locale_.positiveSign()) : QString()) + number(value, decimals);
}

QString ScreenText::mm(double metres, int decimals) const { return tr("%1 mm").arg(mm_number(metres, decimals)); }

QString ScreenText::mm_number(double metres, int decimals) const {
    return number(analysis::mm_from_metres(metres), decimals);
}

QString ScreenText::newtons(double newtons) const { return tr("%1 N").arg(number(newtons, newtons < 1.0 ? 3 : 2)); }
QString ScreenText::speed(double metres_per_second) const { return tr("%1 m/s").arg(number(metres_per_second, 2)); }
QString ScreenText::hertz(double hz) const { return tr("%1 Hz").arg(number(hz, 1)); }
QString ScreenText::percent(double share) const { return tr("%1 %").arg(number(100.0 * share, 0)); }

QString ScreenText::finger_widths(double metres, double finger_width) const {
    return tr("%1 finger-widths").arg(number(metres / finger_width, 1));
}

QString ScreenText::stop(double semitones) const {
    if (semitones <= 0.0) return tr("open");
    return number(semitones, semitones == std::round(semitones) ? 0 : 2);
}

QString ScreenText::motion(sim::Motion motion) const {
    switch (motion) {
        case sim::Motion::helmholtz:
            return tr("sings (Helmholtz motion)");
        case sim::Motion::multiple_slip:
            return tr("whispers (several slips a period)");
        case sim::Motion::raucous:
            return tr("growls (raucous)");
        case sim::Motion::anomalous_low:
            return tr("croaks below its pitch (anomalous low)");
        case sim::Motion::s_motion:
            return tr("hollow (S-motion)");
        case sim::Motion::silent:
            break;
    }
    return tr("silent");
}

QString ScreenText::heard_motion(const analysis::MotionGuess& guess) const {
    using analysis::HeardMotion;
    const auto name = [&]() -> QString {
        switch (guess.motion) {
            case HeardMotion::helmholtz:
                return motion(sim::Motion::helmholtz);
            case HeardMotion::multiple_slip:
                return motion(sim::Motion::multiple_slip);
            case HeardMotion::raucous:
                return motion(sim::Motion::raucous);
            case HeardMotion::anomalous_low:
                return motion(sim::Motion::anomalous_low);
            case HeardMotion::s_motion:
                return motion(sim::Motion::s_motion);
            case HeardMotion::silent:
                return motion(sim::Motion::silent);
            case HeardMotion::unclear:
                break;
        }
        return {};
    }();
    return name.isEmpty() ? tr("not clear from the sound") : tr("%1, %2 sure").arg(name, percent(guess.confidence));
}

QString ScreenText::fault(sim::Fault fault) const {
    switch (fault) {
        case sim::Fault::none:
            return tr("nothing");
        case sim::Fault::slow_to_speak:
            return tr("slow to speak");
        case sim::Fault::never_slips:
            return tr("never slips");
        case sim::Fault::force_too_small:
            return tr("force too small");
        case sim::Fault::force_too_great:
            return tr("force too great");
        case sim::Fault::wrong_motion:
            return tr("wrong motion");
        case sim::Fault::tone_weak:
            return tr("tone weak");
        case sim::Fault::tone_dull:
            return tr("tone dull");
        case sim::Fault::flat:
            return tr("flat");
        case sim::Fault::sharp:
            return tr("sharp");
        case sim::Fault::under_floor:
            return tr("no room before the bridge");
        case sim::Fault::past_finger:
            return tr("no room before the finger");
    }
    return {};
}

QString ScreenText::band_sentence(const NoteBand& band, const sim::Player& player) const {
    const sim::BandResult& result = band.band;
    if (!result.best) return tr("No stroke of this range speaks anywhere on this note.");
    const sim::Band* shown = result.band ? &*result.band : result.stretch ? &*result.stretch : nullptr;
    const QString best =
        tr("Best at %1 from the bridge (%2); %3 of strokes good.")
            .arg(mm(*result.best), finger_widths(*result.best, player.finger_width), percent(result.at_best.security));
    if (shown == nullptr) return best;
    const QString what = result.band ? tr("Contact band") : tr("No secure band; most secure stretch");
    return tr("%1: %2 to %3, %4 wide (%5).")
               .arg(what, mm_number(shown->near), mm(shown->far), mm(shown->far - shown->near),
                    finger_widths(shown->far - shown->near, player.finger_width)) +
           " " + best;
}

double shown_mm(double metres) { return analysis::mm_from_metres(metres); }
double metres_typed(double mm) { return analysis::metres_from_mm(mm); }

}  // namespace gui
