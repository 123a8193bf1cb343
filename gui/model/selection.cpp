// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/selection.hpp"

#include "analysis/units.hpp"
#include "sim/note.hpp"

#include <algorithm>
#include <cmath>

namespace gui {
namespace {

constexpr double force_room = 2.0;     // times past either end of the player's range
constexpr double stop_steps = 20.0;    // of a semitone, where no fret decides
constexpr double first_contact = 0.1;  // of the sounding length, before a band is known

}  // namespace

Selection::Selection(std::shared_ptr<const sim::Preset> preset, QObject* parent)
    : QObject(parent), preset_(std::move(preset)) {
    take_string();
    speed_ = preset_->player.speed;
    force_ = sim::middle_force(preset_->player);
    put_bow(first_contact * sounding_length());
}

const sim::PresetString& Selection::string() const { return preset_->strings[static_cast<std::size_t>(string_index_)]; }

void Selection::take_string() {
    string_index_ = std::clamp(string_index_, 0, static_cast<int>(preset_->strings.size()) - 1);
    open_ = sim::open_string(*preset_, string());
    take_stop(stop_);
}

void Selection::take_stop(double semitones) {
    const double wanted = std::clamp(std::isfinite(semitones) ? semitones : 0.0, 0.0, last_stop());
    const double frets = preset_->frets;
    const double steps = wanted < frets + 0.5 ? 1.0 : stop_steps;
    stop_ = std::min(std::round(wanted * steps) / steps, last_stop());
    stopped_ = sim::stopped(open_, stop_);
}

double Selection::last_stop() const { return sim::last_stop(*preset_); }
double Selection::floor() const { return sim::contact_floor(*preset_); }

double Selection::farthest() const {
    sim::Note note;
    note.string = stopped_;
    return std::max(sim::farthest_contact(note), floor());
}

double Selection::lightest() const { return preset_->player.force_low / force_room; }
double Selection::firmest() const { return preset_->player.force_high * force_room; }
double Selection::pitch_hz() const { return sim::fundamental(stopped_); }

QString Selection::note_name() const {
    return QString::fromStdString(sim::pitch_name(pitch_hz(), preset_->reference_pitch));
}

sim::Player Selection::player() const {
    sim::Player player = preset_->player;
    player.speed = speed_;
    return player;
}

double Selection::length_at(double stop) const { return sim::stopped(open_, stop).length; }

double Selection::stop_at(double from_bridge) const {
    if (!(from_bridge > 0.0)) return last_stop();
    const double semitones = analysis::cents_between(open_.length, from_bridge) / 100.0;
    // a finger stands behind the fret that it stops
    return semitones > 0.0 && semitones <= preset_->frets ? std::ceil(semitones) : semitones;
}

void Selection::set_preset(std::shared_ptr<const sim::Preset> preset) {
    preset_ = std::move(preset);
    take_string();
    force_ = std::clamp(force_, lightest(), firmest());
    keep_bow_on_string();
    emit instrument_changed();
    emit stop_changed();
    emit stroke_changed();
    emit note_changed();
}

void Selection::set_string_index(int index) {
    const int wanted = std::clamp(index, 0, static_cast<int>(preset_->strings.size()) - 1);
    if (wanted == string_index_) return;
    string_index_ = wanted;
    take_string();
    keep_bow_on_string();
    emit instrument_changed();
    emit stop_changed();
    emit stroke_changed();
    emit note_changed();
}

void Selection::set_stop(double semitones) {
    const double before = stop_;
    take_stop(semitones);
    if (stop_ == before) return;
    const double place = contact_;
    keep_bow_on_string();
    emit stop_changed();
    if (contact_ != place) emit stroke_changed();
    emit note_changed();
}

/// A finger that climbs past the bow pushes it along; coming down it leaves the bow where it was put.
void Selection::keep_bow_on_string() { contact_ = std::clamp(put_contact_, floor(), farthest()); }

void Selection::put_bow(double metres) {
    put_contact_ = metres;
    keep_bow_on_string();
}

void Selection::set_contact(double metres) {
    const double before = contact_;
    put_bow(std::clamp(std::isfinite(metres) ? metres : floor(), floor(), farthest()));
    if (contact_ != before) emit stroke_changed();
}

void Selection::set_force(double newtons) {
    const double wanted = std::clamp(std::isfinite(newtons) ? newtons : lightest(), lightest(), firmest());
    if (wanted == force_) return;
    force_ = wanted;
    emit stroke_changed();
}

void Selection::set_speed(double metres_per_second) {
    const double wanted =
        std::clamp(std::isfinite(metres_per_second) ? metres_per_second : slowest_bow, slowest_bow, fastest_bow);
    if (wanted == speed_) return;
    speed_ = wanted;
    emit stroke_changed();
    emit note_changed();
}

void Selection::set_bow_way(BowWay way) {
    if (way == bow_way_) return;
    bow_way_ = way;
    emit bow_way_changed(way);
}

}  // namespace gui
