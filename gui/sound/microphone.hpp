// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/sound/listening.hpp"

#include <QAudioFormat>
#include <QAudioSource>
#include <QObject>
#include <QTimer>

#include <memory>
#include <vector>

namespace gui {

/// The system's sound input, and what is heard of it, on a thread of its own.
class Microphone : public QObject {
    Q_OBJECT
public:
    Microphone();

public slots:
    void open();
    void close();

signals:
    void heard(gui::HeardSound sound);
    void came(std::vector<float> samples, double sample_rate);  ///< all sound, as it comes in
    void lost(QString message);

private:
    void hear();
    void follow_state(QAudio::State state);
    void lose(const QString& message);

    QTimer* timer_;
    QAudioFormat format_;
    std::unique_ptr<QAudioSource> source_;
    QIODevice* device_ = nullptr;  // the source's
    std::vector<float> samples_;   // the last 0.3 s
};

}  // namespace gui
