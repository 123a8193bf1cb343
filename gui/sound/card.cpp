// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/sound/card.hpp"

#include "gui/sound/card_samples.hpp"

#include <QMediaDevices>

#include <algorithm>

namespace gui {

namespace {

constexpr int buffer_us = 20000;
constexpr std::size_t block_frames = 256;

}  // namespace

VoiceStream::VoiceStream(SharedVoice voice, const QAudioFormat& format)
    : voice_(std::move(voice)), format_(format), block_(block_frames) {
    open(QIODevice::ReadOnly | QIODevice::Unbuffered);
}

qint64 VoiceStream::bytesAvailable() const { return format_.bytesForDuration(1000000); }

qint64 VoiceStream::readData(char* data, qint64 most) {
    const int frame = format_.bytesPerFrame();
    const auto wanted = static_cast<std::size_t>(most / frame);
    for (std::size_t done = 0; done < wanted;) {
        const std::span<float> block = std::span(block_).first(std::min(block_frames, wanted - done));
        voice_->render(block);
        write_frames(block, format_, data + static_cast<qint64>(done) * frame);
        done += block.size();
    }
    return static_cast<qint64>(wanted) * frame;
}

void Card::open() {
    close();
    underruns_ = 0;
    const QAudioDevice device = QMediaDevices::defaultAudioOutput();
    if (device.isNull()) {
        emit lost(tr("There is no sound output: connect loudspeakers or headphones, then start again."));
        return;
    }
    const QAudioFormat format = device.preferredFormat();
    auto voice = std::make_shared<sim::sound::LiveVoice>(format.sampleRate());
    stream_ = std::make_unique<VoiceStream>(voice, format);
    sink_ = std::make_unique<QAudioSink>(device, format);
    sink_->setBufferSize(format.bytesForDuration(buffer_us));
    connect(sink_.get(), &QAudioSink::stateChanged, this, &Card::follow_state);
    emit opened(voice);
    sink_->start(stream_.get());
}

void Card::close() {
    if (sink_) {
        sink_->disconnect(this);
        sink_->stop();
    }
    sink_.reset();
    stream_.reset();
}

void Card::follow_state(QAudio::State state) {
    const QAudio::Error error = sink_->error();
    if (error == QAudio::UnderrunError) ++underruns_;
    if (state != QAudio::StoppedState || error == QAudio::NoError) return;
    const QString message = error == QAudio::OpenError
                                ? tr("The sound output could not be opened: another program may hold it, or it is "
                                     "switched off.")
                                : tr("The sound output was lost while the note sounded: connect it again, then start.");
    // not from within the sink's own signal, which still uses it
    QMetaObject::invokeMethod(
        this,
        [this, message] {
            close();
            emit lost(message);
        },
        Qt::QueuedConnection);
}

}  // namespace gui
