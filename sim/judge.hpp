// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/note.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace sim {

/// What the string does under the bow.
enum class Motion { helmholtz, multiple_slip, raucous, anomalous_low, s_motion, silent };
std::string_view motion_name(Motion motion);

/// What the judge knows of a run.
struct Hearing {
    double period = 0.0;               ///< s, of the note
    double contact_ratio = 0.0;        ///< contact point / sounding length
    double duration = 0.0;             ///< s, of the run
    double fundamental_share = 0.0;    ///< bridge force's first harmonic at the end, of the ideal 2 Z0 v / (pi beta)
    double least_slip_fraction = 0.0;  ///< of a period; 0.6 beta for speed laws, 0 for thermal
};

/// The judge's word on a run.
///
/// A main slip is one that SlipWatch notes, over a tenth of v P or more of string.  Helmholtz motion is one main slip a
/// period, 0.88–1.14 P apart, over 0.35–1.6 v P of string, for 18 periods or more up to the end, with at least half the
/// ideal's first harmonic.  What is none, by the pattern in which the main slips come:
///   multiple_slip  once a period otherwise, or in step with the period; or too small for main slips to go the whole
///   way anomalous_low  a pattern of one or several slips that takes longer than 1.14 P raucous        no pattern
///   s_motion       one slip a period with less than half the ideal's first harmonic, contact ratio over 0.12.  Found
///                  at light forces, a round wave; what [Lawergren1983] describes lies above a least force: firm
///                  strokes so far from the bridge pass here for Helmholtz motion with strong ripples.
///   silent         stuck, or sliding all the time
struct Verdict {
    Motion motion = Motion::silent;
    std::optional<double> first_slip;      ///< s, start of the first main slip
    std::optional<double> helmholtz_from;  ///< s, since when the motion is Helmholtz's up to the end
    double slip_fraction = 0.0;            ///< share of time in main slips, over the last 18 periods
    double slips_per_period = 0.0;         ///< main slips, over the last 36 periods or half of the run
    bool never_sticks = false;             ///< silent because the hair slides all the time

    bool operator==(const Verdict&) const = default;
};

/// Those slips of a record that are main ones, in order.
std::vector<kernel::Slip> main_slips(const kernel::Record& record, const Profile& bow_speed, double period);

Verdict judge(const kernel::Record& record, const Profile& bow_speed, const Hearing& hearing);

}  // namespace sim
