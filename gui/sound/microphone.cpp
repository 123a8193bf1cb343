// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/sound/microphone.hpp"

#include "gui/sound/card_samples.hpp"

#include <QAudioDevice>
#include <QMediaDevices>

namespace gui {

namespace {

constexpr double listened = 0.3;  // s
constexpr double least = 0.15;    // s
constexpr int hearing_ms = 100;
constexpr int buffer_us = 50000;

}  // namespace

Microphone::Microphone() : timer_(new QTimer(this)) {
    timer_->setInterval(hearing_ms);
    connect(timer_, &QTimer::timeout, this, &Microphone::hear);
}

void Microphone::open() {
    close();
    const QAudioDevice input = QMediaDevices::defaultAudioInput();
    if (input.isNull()) {
        emit lost(tr("There is no sound input: connect a microphone, then listen again."));
        return;
    }
    format_ = input.preferredFormat();
    samples_.clear();
    source_ = std::make_unique<QAudioSource>(input, format_);
    source_->setBufferSize(format_.bytesForDuration(buffer_us));
    connect(source_.get(), &QAudioSource::stateChanged, this, &Microphone::follow_state);
    device_ = source_->start();
    if (device_ == nullptr || source_->error() == QAudio::OpenError) {
        lose(tr("The sound input could not be opened: another program may hold it, or it is switched off."));
        return;
    }
    timer_->start();
}

void Microphone::close() {
    timer_->stop();
    device_ = nullptr;
    if (source_) {
        source_->disconnect(this);
        source_->stop();
    }
    source_.reset();
}

void Microphone::hear() {
    if (device_ == nullptr) return;
    const QByteArray bytes = device_->readAll();
    if (bytes.isEmpty()) return;
    std::vector<float> fresh;
    read_frames({bytes.constData(), static_cast<std::size_t>(bytes.size())}, format_, fresh);
    samples_.insert(samples_.end(), fresh.begin(), fresh.end());
    emit came(std::move(fresh), format_.sampleRate());
    const auto wanted = static_cast<std::size_t>(listened * format_.sampleRate());
    if (samples_.size() > wanted)
        samples_.erase(samples_.begin(), samples_.end() - static_cast<std::ptrdiff_t>(wanted));
    if (static_cast<double>(samples_.size()) < least * format_.sampleRate()) return;
    const std::vector<double> sound(samples_.begin(), samples_.end());
    emit heard(heard_sound(sound, format_.sampleRate()));
}

void Microphone::follow_state(QAudio::State state) {
    const QAudio::Error error = source_->error();
    if (state == QAudio::StoppedState && error != QAudio::NoError && error != QAudio::UnderrunError)
        lose(tr("The sound input was lost: connect it again, then listen."));
}

void Microphone::lose(const QString& message) {
    device_ = nullptr;
    // not at once: the source may be in the middle of its own signal
    QMetaObject::invokeMethod(
        this,
        [this, message] {
            if (!source_) return;
            close();
            emit lost(message);
        },
        Qt::QueuedConnection);
}

}  // namespace gui
