// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/sound/thinker.hpp"

#include "analysis/units.hpp"

#include <algorithm>
#include <exception>

namespace gui {

namespace {

constexpr int hearing_ms = 66;
constexpr double least_level_db = -120.0;
constexpr double least_clarity_db = 0.0;  // more tone than noise

}  // namespace

Thinker::Thinker() : timer_(new QTimer(this)) {
    timer_->setInterval(hearing_ms);
    connect(timer_, &QTimer::timeout, this, &Thinker::hear);
}

void Thinker::want(WantedNote note) {
    {
        const std::lock_guard lock(mutex_);
        wanted_ = std::move(note);
    }
    QMetaObject::invokeMethod(this, &Thinker::design, Qt::QueuedConnection);
}

void Thinker::serve(SharedVoice voice) {
    voice_ = std::move(voice);
    ear_.reset();
    motion_ = sim::Motion::silent;
    if (!voice_) {
        timer_->stop();
        return;
    }
    ear_.emplace(voice_->card_rate());
    timer_->start();
    {
        const std::lock_guard lock(mutex_);
        if (!wanted_) wanted_ = note_;
    }
    design();
}

void Thinker::design() {
    if (!voice_) return;
    {
        const std::lock_guard lock(mutex_);
        if (!wanted_) return;
        note_ = std::exchange(wanted_, std::nullopt);
    }
    try {
        auto ready =
            std::make_unique<sim::sound::LiveNote>(note_->preset, note_->string, note_->stop, voice_->card_rate());
        sim::Note note = ready->note;
        ear_->expect({.serial = voice_->set_note(std::move(ready)), .note = std::move(note)});
    } catch (const std::exception& fault) {
        emit failed(QString::fromUtf8(fault.what()));
    }
}

void Thinker::hear() {
    voice_->tidy();
    LiveHearing hearing{.motion = motion_, .level_db = least_level_db, .peak = voice_->peak()};
    if (const auto heard = ear_->hear(*voice_)) {
        if (heard->long_enough) motion_ = heard->verdict.motion;
        hearing.motion = motion_;
        if (heard->tone.pitch && heard->tone.clarity >= least_clarity_db) hearing.pitch_hz = *heard->tone.pitch;
        if (heard->tone.level > 0.0)
            hearing.level_db = std::max(least_level_db, analysis::db_from_ratio(heard->tone.level));
    }
    if (voice_->lost()) {
        hearing.motion = motion_ = sim::Motion::raucous;
        {
            const std::lock_guard lock(mutex_);
            if (!wanted_) wanted_ = note_;
        }
        design();
    }
    emit heard(hearing);
}

}  // namespace gui
