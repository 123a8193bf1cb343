// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/motion.hpp"
#include "analysis/signal.hpp"

#include <QObject>
#include <QString>

#include <memory>
#include <span>

namespace gui {

/// What the microphone hears, about 10 times a second.
struct HeardSound {
    double pitch_hz = 0.0;         ///< 0 = no clear pitch
    double level_db = 0.0;         ///< RMS re full scale, at least -120
    double brightness_f0 = 0.0;    ///< centroid of the partials in multiples of the pitch; 0 without a pitch
    double clarity_db = 0.0;       ///< harmonic-to-noise ratio, -60 … 60
    bool clipped = false;          ///< too loud for the input: what is heard of it is wrong
    analysis::MotionGuess motion;  ///< how the string seems to move; unclear without 0.3 s of sound

    bool operator==(const HeardSound&) const = default;
};

/// What is heard of a stretch of sound (full scale = 1), by the measures that recordings are judged with.  Pitches from
/// 35 to 2500 Hz; none that is less than 0 dB clear or under -70 dB.  All but the motion, which wants 0.3 s, is
/// measured in the last 0.15 s.
HeardSound heard_sound(std::span<const double> samples, double sample_rate);

/// Listens to the system's sound input.  Nothing is stored: 0.3 s are kept to be measured, then forgotten; more only
/// between keep() and take_kept(), in memory.
///
/// threads  call and connect from one thread with an event loop; input and measures run on a thread of their own
class Listening : public QObject {
    Q_OBJECT
public:
    explicit Listening(QObject* parent = nullptr);
    ~Listening() override;

    void start();
    void stop();
    bool listening() const;

    /// From now on what comes in is kept, ten minutes at the most; false: no longer, and what was kept stays to be
    /// taken.
    void keep(bool kept);
    bool keeping() const;
    double kept_seconds() const;
    /// What was kept, which is then forgotten here.
    analysis::Signal take_kept();

signals:
    void heard(gui::HeardSound sound);
    /// No input, or it was lost: a sentence for a player.  Nobody listens any more then.
    void failed(QString message);
    void listening_changed(bool listening);

private:
    class Parts;
    std::unique_ptr<Parts> parts_;
};

}  // namespace gui
