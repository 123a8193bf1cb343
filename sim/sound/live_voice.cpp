// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/sound/live_voice.hpp"

#include "analysis/decimate.hpp"
#include "sim/kernel/lane_arithmetic.hpp"

#include <algorithm>
#include <cmath>

namespace sim::sound {

namespace {

constexpr double hand_time = 0.003;    // s, of each of two smoothing steps
constexpr double fade_time = 0.008;    // s
constexpr double unhurt = 0.5;         // full scale, up to which the limiter leaves a sound alone
constexpr double still = 1e-4;         // m/s, bow speed under which no slip is looked for
constexpr double trace_seconds = 0.5;  // kept for an ear that does not listen

}  // namespace

double limited(double x) {
    const double size = std::abs(x);
    if (size <= unhurt) return x;
    return std::copysign(unhurt + (1.0 - unhurt) * std::tanh((size - unhurt) / (1.0 - unhurt)), x);
}

struct LiveVoice::Sounding {
    explicit Sounding(std::unique_ptr<LiveNote> ready, double card_rate)
        : note(std::move(ready)), decimator(note->factor), body(note->modes, card_rate) {}

    std::unique_ptr<LiveNote> note;
    analysis::Decimator decimator;
    BodySound body;
    double contact = 0.0;  // m, where the bow was put last
    long begun = 0;        // sample of the voice at which the string was at rest
    long step = 0;         // of the simulation since then
};

double LiveVoice::Smooth::follow(double target, double share) {
    first += share * (target - first);
    second += share * (first - second);
    return second;
}

LiveVoice::LiveVoice(double card_rate)
    : card_rate_(card_rate),
      traces_(static_cast<std::size_t>(trace_seconds * card_rate)),
      share_(1.0 - std::exp(-1.0 / (hand_time * card_rate))),
      fade_step_(1.0 / (fade_time * card_rate)) {}

LiveVoice::~LiveVoice() {
    for (Sounding* sounding : {coming_.load(), retired_.load(), now_, next_}) delete sounding;
}

void LiveVoice::set_stroke(const LiveStroke& stroke) noexcept {
    contact_.store(stroke.contact, std::memory_order_relaxed);
    force_.store(stroke.force, std::memory_order_relaxed);
    speed_.store(stroke.speed, std::memory_order_relaxed);
}

long LiveVoice::set_note(std::unique_ptr<LiveNote> note) {
    tidy();
    note->serial = ++serial_;
    delete coming_.exchange(new Sounding(std::move(note), card_rate_));
    return serial_;
}

void LiveVoice::tidy() { delete retired_.exchange(nullptr); }

/// Takes the designer's note, and changes over to it as soon as that can be done without a click and without freeing
/// anything here.
void LiveVoice::take_note() noexcept {
    if (next_ == nullptr) {
        next_ = coming_.exchange(nullptr);
        goes_on_ = next_ != nullptr && now_ != nullptr && !now_->note->run.diverged() &&
                   kernel::same_string(now_->note->kernel, next_->note->kernel);
    }
    if (next_ == nullptr || retired_.load() != nullptr) return;
    if (now_ == nullptr || goes_on_ || gain_ == 0.0) change_over();
}

void LiveVoice::change_over() noexcept {
    Sounding* before = now_;
    now_ = next_;
    next_ = nullptr;
    if (goes_on_) {
        now_->note->run.take_up(before->note->run);
        std::swap(now_->decimator, before->decimator);
        std::swap(now_->body, before->body);
        now_->begun = before->begun;
        now_->step = before->step;
    } else {
        now_->begun = samples_;
        slips_.emplace(now_->note->kernel.sample_rate);
        hand_.speed = 0.0;
        contact_smooth_ = {};
        force_smooth_ = {};
        lost_.store(false, std::memory_order_relaxed);
    }
    if (before != nullptr) retired_.store(before);
}

void LiveVoice::move_hand(const LiveStroke& wanted) noexcept {
    const LiveNote& note = *now_->note;
    const double place = std::clamp(wanted.contact, note.nearest, note.farthest);
    if (contact_smooth_.second == 0.0) contact_smooth_ = {place, place};
    hand_.contact = std::clamp(contact_smooth_.follow(place, share_), note.nearest, note.farthest);
    hand_.force = force_smooth_.follow(std::clamp(wanted.force, 0.0, note.greatest_force), share_);
    const double most = note.acceleration / card_rate_;
    hand_.speed += std::clamp(std::max(0.0, wanted.speed) - hand_.speed, -most, most);
    if (hand_.contact == now_->contact) return;
    now_->contact = hand_.contact;
    now_->note->run.place_bow(hand_.contact);
}

void LiveVoice::watch(int step, LiveTrace& trace) noexcept {
    const LiveNote& note = *now_->note;
    const kernel::BowContact& bow = note.run.bow();
    if (bow.slips()) trace.slipped += 1.0F / static_cast<float>(note.factor);
    const double full = hand_.speed * note.note.string.length / hand_.contact;
    const bool ended = hand_.speed > still && slips_->see(now_->step + step, -bow.slip(), full);
    if (ended) trace.slip_distance = static_cast<float>(slips_->slip().distance);
    trace.slip_lasts = slips_->slips();
    if (ended || trace.slip_lasts)
        trace.slip_start = static_cast<double>(now_->begun) + slips_->slip().start * card_rate_;
}

double LiveVoice::sample() noexcept {
    kernel::ReferenceRun& run = now_->note->run;
    if (run.diverged()) return 0.0;
    LiveTrace trace{.sample = samples_,
                    .begun = now_->begun,
                    .note = now_->note->serial,
                    .speed = static_cast<float>(hand_.speed),
                    .contact = static_cast<float>(hand_.contact)};
    for (int step = 0; step < now_->note->factor; ++step) {
        now_->decimator.push(run.advance({.speed = hand_.speed, .force = hand_.force, .lengthwise = 0.0}));
        watch(step, trace);
        if (run.diverged()) {
            lost_.store(true, std::memory_order_relaxed);
            return 0.0;
        }
        run.step();
    }
    now_->step += now_->note->factor;
    const double force = now_->decimator.output();
    trace.force = static_cast<float>(force);
    traces_.push(trace);
    return now_->note->scale * now_->body.sound(force);
}

void LiveVoice::render(std::span<float> sound) noexcept {
    const kernel::LaneArithmetic no_tiny_numbers;
    take_note();
    const LiveStroke wanted{.contact = contact_.load(std::memory_order_relaxed),
                            .force = force_.load(std::memory_order_relaxed),
                            .speed = speed_.load(std::memory_order_relaxed)};
    const double volume = volume_.load(std::memory_order_relaxed);
    float peak = peak_.load();
    for (float& out : sound) {
        const bool fades = next_ != nullptr && !goes_on_;
        gain_ = std::clamp(gain_ + (fades ? -fade_step_ : fade_step_), 0.0, 1.0);
        if (fades && gain_ == 0.0) take_note();
        double now = 0.0;
        if (now_ != nullptr) {
            move_hand(wanted);
            now = gain_ * sample();
        }
        ++samples_;
        out = static_cast<float>(volume_smooth_.follow(volume, share_) * limited(now));
        peak = std::max(peak, std::abs(out));
    }
    peak_.store(peak);
}

}  // namespace sim::sound
