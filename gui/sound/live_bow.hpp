// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/judge.hpp"
#include "sim/preset.hpp"
#include "sim/sound/live_voice.hpp"

#include <QObject>
#include <QString>

#include <memory>

namespace gui {

/// The bow in the hand: m from the bridge, N, m/s.
using LiveStroke = sim::sound::LiveStroke;

/// What is heard of it, about 15 times a second.
struct LiveHearing {
    sim::Motion motion = sim::Motion::silent;  ///< over the last 20 periods or more
    double pitch_hz = 0.0;                     ///< over the last 0.1 s; 0 = no pitch
    double level_db = 0.0;                     ///< re 1 N through the body's radiation weights; at least -120
    double peak = 0.0;                         ///< of what went to the card since the last time, full scale = 1
    int underruns = 0;                         ///< since start()
};

/// Bows a note for as long as it sounds, on the system's sound output: what the hand does is heard within some 30 ms
/// where the device allows.
///
/// threads  call and connect from one thread with an event loop; design, sound and hearing run on threads of their own
class LiveBow : public QObject {
    Q_OBJECT
public:
    explicit LiveBow(QObject* parent = nullptr);
    ~LiveBow() override;

    /// Designs the note elsewhere and changes over to it; the old one sounds meanwhile.  On one string of one
    /// instrument the motion goes on (a slur); otherwise the old note fades out and the new one starts from rest.  The
    /// last of several quick calls counts.  A stop off the board comes back through failed().
    void set_note(const sim::Preset& preset, int string, double stop);
    /// Where the bow is now.  Cheap at any rate.  Held between the note's floor and 0.45 of its length, and to
    /// sim::sound::greatest_force; force 0 lifts it.
    void set_stroke(gui::LiveStroke stroke);
    void set_volume(double share);  ///< 0 … 1

    /// The sound begins once there is a note, the bow rising to its speed as the preset's player lets it.
    void start();
    /// Lifts the bow and fades.
    void stop();
    bool sounding() const;

signals:
    void heard(gui::LiveHearing hearing);
    /// No output, or it was lost while sounding: a sentence for a player.  The bow no longer sounds then.
    void failed(QString message);
    void sounding_changed(bool sounding);

private:
    class Parts;
    std::unique_ptr<Parts> parts_;
};

}  // namespace gui
