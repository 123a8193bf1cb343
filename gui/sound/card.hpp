// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/sound/live_voice.hpp"

#include <QAudioFormat>
#include <QAudioSink>
#include <QElapsedTimer>
#include <QObject>
#include <QTimer>

#include <atomic>
#include <memory>
#include <vector>

namespace gui {

using SharedVoice = std::shared_ptr<sim::sound::LiveVoice>;

/// The system's sound output, on a thread of its own: its clock must not wait for the window.
///
/// The samples are pushed every few milliseconds as the output takes them.  Qt's pull mode asks for 20 ms at a time
/// and with less than twice that in its buffer it does not run at all, which would be too slow for a hand.
class Card : public QObject {
    Q_OBJECT
public:
    Card();

    int underruns() const { return underruns_.load(); }

public slots:
    void open();
    void close();

signals:
    void opened(gui::SharedVoice voice);
    void lost(QString message);

private:
    void feed();
    bool fill_block();
    static QString lost_message();
    void follow_state(QAudio::State state);
    void lose(const QString& message);

    QTimer* timer_;
    QAudioFormat format_;
    SharedVoice voice_;
    std::unique_ptr<QAudioSink> sink_;
    QIODevice* device_ = nullptr;  // the sink's
    QElapsedTimer since_taken_;
    std::vector<float> block_;
    std::vector<char> bytes_;
    std::size_t written_ = 0;  // of bytes_
    std::atomic<int> underruns_ = 0;
};

}  // namespace gui
