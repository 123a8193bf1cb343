// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/signal.hpp"

#include <QBuffer>
#include <QObject>
#include <QString>

#include <memory>

class QAudioSink;

namespace gui {

/// Plays a finished sound, one at a time.
class TakePlayer : public QObject {
    Q_OBJECT

public:
    explicit TakePlayer(QObject* parent = nullptr);
    ~TakePlayer() override;

    /// From its beginning; what played before ends.
    void play(const analysis::Signal& sound);
    void stop();
    bool playing() const { return sink_ != nullptr; }
    /// 0 … 1 of the sound as it is.
    void set_volume(double share);

signals:
    void playing_changed(bool playing);
    void failed(const QString& message);

private:
    void take_state();

    double volume_ = 0.2;
    QByteArray bytes_;
    QBuffer buffer_;
    std::unique_ptr<QAudioSink> sink_;
};

}  // namespace gui
