// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/slip_watch.hpp"
#include "sim/sound/live_note.hpp"
#include "sim/sound/one_way.hpp"

#include <atomic>
#include <memory>
#include <optional>
#include <span>

namespace sim::sound {

/// The bow in the hand.
struct LiveStroke {
    double contact = 0.0;  ///< m from the bridge
    double force = 0.0;    ///< N, >= 0; 0 lifts the bow
    double speed = 0.0;    ///< m/s, >= 0

    bool operator==(const LiveStroke&) const = default;
};

/// What one sample of the card leaves for a LiveEar.
struct LiveTrace {
    long sample = 0;              ///< counted since the voice began
    long begun = 0;               ///< the sample at which the string was at rest
    long note = 0;                ///< the note's serial
    float force = 0.0F;           ///< N, on the bridge
    float speed = 0.0F;           ///< m/s, of the bow
    float contact = 0.0F;         ///< m
    float slipped = 0.0F;         ///< share of the sample in which the hair slipped at all
    double slip_start = 0.0;      ///< sample at which a slip began that ends here or lasts
    float slip_distance = -1.0F;  ///< m, of a slip that ends here; < 0 = none ends
    bool slip_lasts = false;
};

/// One bowed note that sounds on while the hand moves.
///
/// The hand's place and force follow it through two time constants of 3 ms, its speed no faster than
/// LiveNote::acceleration: thirty moves a second then make no steps.
/// threads  set_stroke, set_volume: the hand's; set_note, tidy: the designer's; render: the card's; take: the ear's.
/// One
///          thread each, any may be the same
/// promise  render, set_stroke and take: no heap, no locks, no throw
class LiveVoice {
public:
    explicit LiveVoice(double card_rate);
    ~LiveVoice();

    double card_rate() const { return card_rate_; }
    void set_stroke(const LiveStroke& stroke) noexcept;
    void set_volume(double share) noexcept { volume_.store(share, std::memory_order_relaxed); }

    /// Changes over to this note with the next block: on the same string its motion goes on (ReferenceRun::take_up),
    /// otherwise the old note fades in 8 ms and the new one starts from rest.  One that has not been taken up yet is
    /// dropped.  Returns the note's serial, > 0.
    long set_note(std::unique_ptr<LiveNote> note);
    /// Frees the note that sounded before; the designer's now and then, or a change may have to wait for its next note.
    void tidy();

    /// The next samples, full scale = 1, never past it.  Silence while there is no note, or after the run has left all
    /// sense (until the next note).
    void render(std::span<float> sound) noexcept;

    /// The next sample's trace, if there is one; some are lost where nobody takes any for half a second.
    bool take(LiveTrace& trace) noexcept { return traces_.pop(trace); }
    /// Greatest sample since this was last asked.
    double peak() noexcept { return peak_.exchange(0.0F); }
    /// Has the run left all sense?  The same note set again starts it anew.
    bool lost() const noexcept { return lost_.load(std::memory_order_relaxed); }

private:
    struct Sounding;  // a note, its decimator, its body
    struct Smooth {
        double first = 0.0, second = 0.0;
        double follow(double target, double share);
    };
    void take_note() noexcept;
    void change_over() noexcept;
    void move_hand(const LiveStroke& wanted) noexcept;
    double sample() noexcept;
    void watch(int step, LiveTrace& trace) noexcept;

    double card_rate_;
    static_assert(std::atomic<double>::is_always_lock_free);
    std::atomic<double> contact_ = 0.0, force_ = 0.0, speed_ = 0.0, volume_ = 1.0;
    std::atomic<Sounding*> coming_ = nullptr;   // from the designer
    std::atomic<Sounding*> retired_ = nullptr;  // back to it, to be freed
    Sounding* now_ = nullptr;
    Sounding* next_ = nullptr;  // taken, waiting for the fade or until the last retired one has been freed
    bool goes_on_ = false;      // the one taken is the same string
    std::atomic<float> peak_ = 0.0F;
    std::atomic<bool> lost_ = false;
    OneWay<LiveTrace> traces_;
    LiveStroke hand_;  // as the string feels it
    Smooth contact_smooth_, force_smooth_, volume_smooth_;
    double share_;  // of the way to its target that a smoothed control goes in a sample
    double gain_ = 0.0;
    double fade_step_;
    long samples_ = 0;
    long serial_ = 0;
    std::optional<kernel::SlipWatch> slips_;
};

/// |x| up to a half as it is, beyond that bent smoothly towards 1.
double limited(double x);

}  // namespace sim::sound
