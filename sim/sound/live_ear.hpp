// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/sound/live_voice.hpp"
#include "sim/tone_meter.hpp"

#include <deque>
#include <optional>

namespace sim::sound {

/// A note to be heard: a copy, since the voice may free its own at any time.
struct LiveScore {
    long serial = 0;
    Note note;
};

/// What a live voice says of itself: the same measures and the same judge as for strokes that are over.
///
/// Time is counted in periods of the note as it was at each moment, so that the judge's eyes follow a gliding stop.
/// The motion is judged over the last 20 periods or 0.25 s, whichever is longer; what is heard over the last 0.1 s.
/// threads  one: the voice's ear
class LiveEar {
public:
    explicit LiveEar(double card_rate);

    /// A note that the voice was given.
    void expect(const LiveScore& score);
    /// Takes all that the voice has left since the last time.  Nothing while it has played less than two periods.
    struct Heard {
        Tone tone;
        Verdict verdict;
        bool long_enough = false;  ///< the judge had its 20 periods; before, Helmholtz motion can't be named
        double fundamental_hz = 0.0;
    };
    std::optional<Heard> hear(LiveVoice& voice);

private:
    struct Moment {
        LiveTrace trace;
        double periods;  // since the ear began, at the sample's end
        double period;   // s
    };
    bool knows(long note);
    void take(const LiveTrace& trace);
    void forget_old();
    double periods_at(double sample) const;
    Tone tone();
    kernel::Record record() const;
    Profile way_a_period() const;
    Verdict verdict(const Tone& tone) const;

    double card_rate_;
    std::deque<LiveScore> expected_;
    std::optional<LiveScore> score_;
    std::optional<ToneMeter> meter_;
    std::deque<Moment> past_;
};

}  // namespace sim::sound
