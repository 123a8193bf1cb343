// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/sound/card.hpp"
#include "gui/sound/live_bow.hpp"
#include "sim/sound/live_ear.hpp"

#include <QObject>
#include <QTimer>

#include <mutex>
#include <optional>

namespace gui {

/// A note to be bowed.
struct WantedNote {
    sim::Preset preset;
    int string = 0;
    double stop = 0.0;
};

/// Designs notes for a voice and listens to it, on a thread of its own.
class Thinker : public QObject {
    Q_OBJECT
public:
    Thinker();

    /// From any thread; one that has not been designed yet is forgotten.
    void want(WantedNote note);

public slots:
    /// Works for this voice from now on; none ends the work.
    void serve(gui::SharedVoice voice);

signals:
    void heard(gui::LiveHearing hearing);
    void failed(QString message);

private:
    void design();
    void hear();

    std::mutex mutex_;  // of wanted_ only
    std::optional<WantedNote> wanted_;
    std::optional<WantedNote> note_;  // the last one designed, for another voice
    SharedVoice voice_;
    std::optional<sim::sound::LiveEar> ear_;
    sim::Motion motion_ = sim::Motion::silent;
    QTimer* timer_;
};

}  // namespace gui
