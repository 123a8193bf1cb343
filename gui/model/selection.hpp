// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/preset.hpp"

#include <QObject>
#include <QString>

#include <memory>

namespace gui {

/// Whether the bow stays where it is while the finger climbs, or moves with the best contact point.
enum class BowWay { left_behind, follows };

/// The one note that the whole window speaks of, and the bow on it.  Every page shares it.
///
/// Values given from outside are brought into their ranges; a signal comes only where something has changed.
class Selection : public QObject {
    Q_OBJECT

public:
    explicit Selection(std::shared_ptr<const sim::Preset> preset, QObject* parent = nullptr);

    const std::shared_ptr<const sim::Preset>& preset() const { return preset_; }
    int string_index() const { return string_index_; }
    const sim::PresetString& string() const;
    double stop() const { return stop_; }        ///< semitones above the open string
    double contact() const { return contact_; }  ///< m from the bridge
    double force() const { return force_; }      ///< N
    double speed() const { return speed_; }      ///< m/s
    BowWay bow_way() const { return bow_way_; }

    double open_length() const { return open_.length; }         ///< m
    double sounding_length() const { return stopped_.length; }  ///< m, finger to bridge
    double last_stop() const;                                   ///< semitones, end of the board
    double floor() const;                                       ///< m, no contact point lies nearer the bridge
    double farthest() const;                                    ///< m, no bow stands farther out
    double lightest() const;                                    ///< N, of what the bow can be set to
    double firmest() const;                                     ///< N
    double pitch_hz() const;
    QString note_name() const;
    /// The preset's player at the speed that is set.
    sim::Player player() const;
    /// Sounding length were the finger at that stop, m.
    double length_at(double stop) const;
    /// The stop whose place lies that far from the bridge, as a finger would find it: on a fret while there are frets.
    double stop_at(double from_bridge) const;

public slots:
    /// Another instrument, or this one changed; string, stop and bow stay as far as they can.
    void set_preset(std::shared_ptr<const sim::Preset> preset);
    void set_string_index(int index);
    void set_stop(double semitones);
    void set_contact(double metres);
    void set_force(double newtons);
    void set_speed(double metres_per_second);
    void set_bow_way(gui::BowWay way);

signals:
    void instrument_changed();  ///< preset or string
    void note_changed();        ///< anything that the note's band depends on: instrument, stop, speed
    void stop_changed();
    void stroke_changed();  ///< contact point, force or speed
    void bow_way_changed(gui::BowWay way);

private:
    void take_string();
    void take_stop(double semitones);
    void keep_bow_on_string();
    void put_bow(double metres);

    std::shared_ptr<const sim::Preset> preset_;
    int string_index_ = 0;
    double stop_ = 0.0;
    double contact_ = 0.0;
    double put_contact_ = 0.0;  ///< m, where the player put the bow; a finger may stand there by now
    double force_ = 0.0;
    double speed_ = 0.0;
    BowWay bow_way_ = BowWay::left_behind;
    sim::String open_;
    sim::String stopped_;
};

inline constexpr double slowest_bow = 0.02;  ///< m/s, of the speed control
inline constexpr double fastest_bow = 1.0;   ///< m/s

}  // namespace gui
