// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/sound/card.hpp"

#include "gui/sound/card_samples.hpp"

#include <QAudioDevice>
#include <QMediaDevices>

#include <algorithm>

namespace gui {

namespace {

constexpr int buffer_us = 25000;
constexpr int feed_ms = 3;
constexpr int patience_ms = 3000;  // an output that takes nothing for so long is lost
constexpr std::size_t block_frames = 240;

bool broken(QAudio::Error error) { return error != QAudio::NoError && error != QAudio::UnderrunError; }

}  // namespace

Card::Card() : timer_(new QTimer(this)), block_(block_frames) {
    timer_->setTimerType(Qt::PreciseTimer);
    timer_->setInterval(feed_ms);
    connect(timer_, &QTimer::timeout, this, &Card::feed);
}

void Card::open() {
    close();
    underruns_ = 0;
    const QAudioDevice output = QMediaDevices::defaultAudioOutput();
    if (output.isNull()) {
        emit lost(tr("There is no sound output: connect loudspeakers or headphones, then start again."));
        return;
    }
    format_ = output.preferredFormat();
    voice_ = std::make_shared<sim::sound::LiveVoice>(format_.sampleRate());
    bytes_.reserve(block_frames * static_cast<std::size_t>(format_.bytesPerFrame()));
    bytes_.clear();
    written_ = 0;
    sink_ = std::make_unique<QAudioSink>(output, format_);
    sink_->setBufferSize(format_.bytesForDuration(buffer_us));
    connect(sink_.get(), &QAudioSink::stateChanged, this, &Card::follow_state);
    device_ = sink_->start();
    if (device_ == nullptr || sink_->error() == QAudio::OpenError) {
        lose(tr("The sound output could not be opened: another program may hold it, or it is switched off."));
        return;
    }
    since_taken_.start();
    timer_->start();
    emit opened(voice_);
}

void Card::close() {
    timer_->stop();
    device_ = nullptr;
    if (sink_) {
        sink_->disconnect(this);
        sink_->stop();
    }
    sink_.reset();
    voice_.reset();
}

/// As much as the output takes now, a block at a time.
void Card::feed() {
    while (device_ != nullptr && fill_block()) {
        const qint64 taken = device_->write(bytes_.data() + written_, static_cast<qint64>(bytes_.size() - written_));
        if (taken < 0) lose(lost_message());
        if (taken <= 0) break;
        written_ += static_cast<std::size_t>(taken);
        since_taken_.start();
    }
    if (device_ != nullptr && since_taken_.elapsed() > patience_ms)
        lose(tr("The sound output no longer takes any sound: check it, then start again."));
}

/// Something to write; false where the output takes nothing now.
bool Card::fill_block() {
    // Qt's output for pulseaudio never gives its lock back after a write to a stream that has ended.
    const qint64 free = sink_->bytesFree();
    if (free < 0 || broken(sink_->error())) {
        lose(lost_message());
        return false;
    }
    if (written_ < bytes_.size()) return free > 0;
    const auto frame = static_cast<std::size_t>(format_.bytesPerFrame());
    const std::span<float> block =
        std::span(block_).first(std::min(block_frames, static_cast<std::size_t>(free) / frame));
    voice_->render(block);
    bytes_.resize(block.size() * frame);
    write_frames(block, format_, bytes_.data());
    written_ = 0;
    return !block.empty();
}

QString Card::lost_message() { return tr("The sound output was lost: connect it again, then start."); }

void Card::follow_state(QAudio::State state) {
    const QAudio::Error error = sink_->error();
    if (error == QAudio::UnderrunError) ++underruns_;
    if (state == QAudio::StoppedState && broken(error)) lose(lost_message());
}

void Card::lose(const QString& message) {
    device_ = nullptr;
    // not at once: the sink may be in the middle of its own signal
    QMetaObject::invokeMethod(
        this,
        [this, message] {
            if (!sink_) return;
            close();
            emit lost(message);
        },
        Qt::QueuedConnection);
}

}  // namespace gui
