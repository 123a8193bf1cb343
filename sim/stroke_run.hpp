// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/stroke.hpp"

namespace sim {

/// A stroke as a kernel wants it.
struct StrokeRun {
    double sample_rate = 0.0;  ///< Hz
    kernel::Drive drive;
    kernel::Start start;
    kernel::Wanted wanted;  ///< the bridge force of the end, to be heard
};
StrokeRun run_of(const Note& note, const Stroke& stroke, int times);

/// What a record of that run says.
StrokeResult result_of(const Note& note, const Stroke& stroke, const StrokeRun& run, const kernel::Record& record);

/// The same where the tone was measured already.
struct HeardRun {
    const kernel::Record& record;
    const Tone& tone;
};
StrokeResult result_of(const Note& note, const Stroke& stroke, const StrokeRun& run, const HeardRun& heard);

/// What the judge is to know of a run whose tone is known.
Hearing hearing_of(const Note& note, const Tone& tone, const BowAtEnd& bow);
/// The judge's word on it.
Verdict verdict_of(const Note& note, const kernel::Record& record, const Tone& tone, const BowAtEnd& bow);

}  // namespace sim
