// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/sound/live_voice.hpp"

#include <QAudioDevice>
#include <QAudioFormat>
#include <QAudioSink>
#include <QIODevice>
#include <QObject>

#include <atomic>
#include <memory>
#include <vector>

namespace gui {

/// What the sound output reads from: a voice that never ends.
class VoiceStream : public QIODevice {
public:
    VoiceStream(std::shared_ptr<sim::sound::LiveVoice> voice, const QAudioFormat& format);

    bool isSequential() const override { return true; }
    qint64 bytesAvailable() const override;

protected:
    qint64 readData(char* data, qint64 most) override;
    qint64 writeData(const char*, qint64) override { return -1; }

private:
    std::shared_ptr<sim::sound::LiveVoice> voice_;
    QAudioFormat format_;
    std::vector<float> block_;
};

using SharedVoice = std::shared_ptr<sim::sound::LiveVoice>;

/// The system's sound output, on a thread of its own: its clock must not wait for the window.
class Card : public QObject {
    Q_OBJECT
public:
    int underruns() const { return underruns_.load(); }

public slots:
    void open();
    void close();

signals:
    void opened(gui::SharedVoice voice);
    void lost(QString message);

private:
    void follow_state(QAudio::State state);

    std::unique_ptr<VoiceStream> stream_;
    std::unique_ptr<QAudioSink> sink_;
    std::atomic<int> underruns_ = 0;
};

}  // namespace gui
