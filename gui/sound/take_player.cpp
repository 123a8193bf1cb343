// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/sound/take_player.hpp"

#include <QAudioDevice>
#include <QAudioSink>
#include <QMediaDevices>

#include <algorithm>
#include <cmath>

namespace gui {
namespace {

/// 16 bits, the one format that every device takes.
QByteArray sample_bytes(const analysis::Signal& sound) {
    constexpr double full_scale = 32767.0;
    QByteArray bytes(static_cast<qsizetype>(sound.samples.size() * sizeof(qint16)), '\0');
    auto* samples = reinterpret_cast<qint16*>(bytes.data());
    for (const double sample : sound.samples)
        *samples++ = static_cast<qint16>(std::lround(std::clamp(sample, -1.0, 1.0) * full_scale));
    return bytes;
}

}  // namespace

TakePlayer::TakePlayer(QObject* parent) : QObject(parent) {}
TakePlayer::~TakePlayer() = default;

void TakePlayer::play(const analysis::Signal& sound) {
    stop();
    const QAudioDevice device = QMediaDevices::defaultAudioOutput();
    QAudioFormat format;
    format.setSampleRate(static_cast<int>(std::lround(sound.sample_rate)));
    format.setChannelCount(1);
    format.setSampleFormat(QAudioFormat::Int16);
    if (device.isNull() || !device.isFormatSupported(format)) {
        emit failed(
            tr("No sound can be played: this computer shows no sound device that takes it. Everything else "
               "works, and sounds can be saved as files."));
        return;
    }
    bytes_ = sample_bytes(sound);
    buffer_.setData(bytes_);
    buffer_.open(QIODevice::ReadOnly);
    sink_ = std::make_unique<QAudioSink>(device, format);
    sink_->setVolume(volume_);
    connect(sink_.get(), &QAudioSink::stateChanged, this, &TakePlayer::take_state, Qt::QueuedConnection);
    sink_->start(&buffer_);
    emit playing_changed(true);
}

void TakePlayer::take_state() {
    if (!sink_) return;
    if (sink_->error() != QAudio::NoError && sink_->error() != QAudio::UnderrunError) {
        stop();
        emit failed(tr("The sound device gave up. Look whether it is plugged in, and try again."));
    } else if (sink_->state() == QAudio::IdleState) {
        stop();
    }
}

void TakePlayer::stop() {
    if (!sink_) return;
    sink_->disconnect(this);
    sink_->stop();
    sink_.release()->deleteLater();  // it may be the one that tells
    buffer_.close();
    emit playing_changed(false);
}

void TakePlayer::set_volume(double share) {
    volume_ = share;
    if (sink_) sink_->setVolume(volume_);
}

}  // namespace gui
