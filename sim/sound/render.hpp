// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"
#include "sim/bridge.hpp"

#include <complex>
#include <span>
#include <vector>

/// From the force on the bridge to something to listen to.
namespace sim::sound {

/// One body mode as a source of sound.
struct RadiatingMode {
    double hz = 0.0;         ///< > 0
    double q = 0.0;          ///< > 0
    double radiation = 0.0;  ///< weight, dimensionless, may be negative

    bool operator==(const RadiatingMode&) const = default;
};

/// The modes of a bridge that sound at all; none for a rigid bridge or a resistance.
std::vector<RadiatingMode> radiating_modes(const Bridge& bridge);

/// Sound over bridge force: sum of radiation (w/Q) s / (s² + (w/Q) s + w²), s = 2 pi i hz; 1 for no modes.
/// Each mode alone gives `radiation` at its own frequency.  |response| serves analysis::weighted_rms.
std::complex<double> response(std::span<const RadiatingMode> modes, double hz);

/// The body between bridge force and sound, sample by sample: the modes' band-passes added up (trapezoidal
/// state-variable filters, exact at each mode's own frequency; modes above 0.45 of the sample rate left out).
///
/// promise  no heap, no locks, no throw but in the constructor; starts at rest
class BodySound {
public:
    BodySound(std::span<const RadiatingMode> modes, double sample_rate);

    /// N in, N out.
    double sound(double force);

private:
    struct Filter {
        double g, k, a1, radiation;
        double band_state = 0.0;
        double low_state = 0.0;
    };
    std::vector<Filter> filters_;
};

inline constexpr double sound_rate = 48000.0;  ///< Hz

/// 48 kHz sound of a bridge force: resampled, then through the body.  No modes: the bridge force less its mean.
///
/// units    N in, N out; scaled later by share_gain
/// promise  filters start at rest, as the force does when a stroke starts from rest
analysis::Signal render(const analysis::Signal& bridge_force, std::span<const RadiatingMode> modes);

/// How long the ends take, s.
struct Fades {
    double in = 0.005;
    double out = 0.030;

    bool operator==(const Fades&) const = default;
};

/// Ends raised and lowered by half a cosine; both are shortened in proportion where the sound is shorter than the two.
void fade_ends(analysis::Signal& sound, const Fades& fades = {});

inline constexpr double peak_level_db = -6.0;  ///< of the joint peak, re full scale

/// Scales sounds that belong together by one gain, their relative levels kept, so that the greatest peak among them
/// lies at peak_level_db.  Silence stays silence.  Returns the gain (1 for silence).
double share_gain(std::span<analysis::Signal> takes);

/// One after another with `gap` seconds of silence between; all of one sample rate, at least one.
analysis::Signal concatenate(std::span<const analysis::Signal> takes, double gap);

}  // namespace sim::sound
