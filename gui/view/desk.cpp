// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/view/desk.hpp"

namespace gui {

Desk::Desk(sim::Preset preset, QSettings& kept, QObject* parent)
    : QObject(parent),
      settings(kept),
      instrument(std::move(preset)),
      selection(instrument.preset()),
      bands(selection, usual_threads()),
      guide(selection, bands),
      climb(selection, usual_threads()),
      window(selection, usual_threads()),
      passage(selection, usual_threads()),
      recent(kept) {
    connect(&instrument, &Instrument::changed, this, [this] { selection.set_preset(instrument.preset()); });
    connect(&instrument, &Instrument::opened, &recent, &RecentFiles::add);
    connect(&instrument, &Instrument::saved, &recent, &RecentFiles::add);
    connect(&instrument, &Instrument::refused, this,
            [this](const QString& message) { emit wrong(tr("My instrument"), message); });
    const auto tell = [this](const QString& message) { emit wrong(tr("The simulation stopped"), message); };
    connect(&bands, &BandFinder::failed, this, tell);
    connect(&climb, &Study::failed, this, tell);
    connect(&window, &Study::failed, this, tell);
    connect(&passage, &Study::failed, this, tell);
    wire_sound();
    bands.ask();
}

void Desk::wire_sound() {
    const auto give_note = [this] { live.set_note(*selection.preset(), selection.string_index(), selection.stop()); };
    const auto give_stroke = [this] { live.set_stroke({selection.contact(), selection.force(), selection.speed()}); };
    connect(&selection, &Selection::instrument_changed, this, give_note);
    connect(&selection, &Selection::stop_changed, this, give_note);
    connect(&selection, &Selection::stroke_changed, this, give_stroke);
    const auto tell = [this](const QString& message) { emit wrong(tr("Sound"), message); };
    connect(&live, &LiveBow::failed, this, tell);
    connect(&takes, &TakePlayer::failed, this, tell);
    give_note();
    give_stroke();
}

void Desk::play_live(bool sounding) {
    if (sounding == live.sounding()) return;
    if (!sounding) {
        live.stop();
        return;
    }
    takes.stop();
    live.start();
}

}  // namespace gui
