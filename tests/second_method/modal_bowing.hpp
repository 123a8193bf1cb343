// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/force_window.hpp"
#include "tests/second_method/modal_string.hpp"

namespace tests {

/// How finely the modal string is cut.  Usual: modes to 40 kHz, and three times past the ripples between bow and
/// bridge; four samples a period of the highest, and no fewer than the travelling waves want for the rosin's sake.
struct ModalFineness {
    double sample_rate = 0.0;  ///< Hz
    double highest_hz = 0.0;   ///< of the modes
    bool of_loop = false;      ///< partials of the travelling waves' loop filter rather than of the formulas
};
ModalFineness usual_fineness(const sim::Note& note, double contact_point);
/// `times` as many modes and samples.
ModalFineness finer_by(const ModalFineness& fineness, double times);

/// Plays a held stroke (bow at one place, steady speed and force, from the ideal Helmholtz motion) on the modal string
/// of a note without twist, over a rigid or a resistive bridge, and judges it as sim::play does: the same rosin, the
/// same watch over the slips, the same judge.
sim::StrokeResult play_modal(const sim::Note& note, const sim::Stroke& stroke, const ModalFineness& fineness);

/// Forces at which the ideal motion persists, as sim::held_window finds them.
sim::ForceWindow modal_held_window(const sim::Note& note, const sim::Player& player, double contact_point,
                                   const sim::ForceScan& scan, const ModalFineness& fineness);

}  // namespace tests
