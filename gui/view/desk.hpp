// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/bow_guide.hpp"
#include "gui/model/instrument.hpp"
#include "gui/model/note_band.hpp"
#include "gui/model/passage_study.hpp"
#include "gui/model/recent_files.hpp"
#include "gui/model/selection.hpp"
#include "gui/model/study.hpp"
#include "gui/sound/live_bow.hpp"
#include "gui/sound/take_player.hpp"

#include <QObject>
#include <QSettings>

namespace gui {

/// Everything that pages share: the instrument, the selection, what has been worked out of it, and the sound.
class Desk : public QObject {
    Q_OBJECT

public:
    /// Keeps `settings`, which must live longer.
    Desk(sim::Preset preset, QSettings& settings, QObject* parent = nullptr);

    QSettings& settings;
    Instrument instrument;
    Selection selection;
    BandFinder bands;
    BowGuide guide;
    ClimbStudy climb;
    WindowStudy window;
    PassageStudy passage;
    RecentFiles recent;
    LiveBow live;
    TakePlayer takes;

public slots:
    void play_live(bool sounding);

signals:
    /// Something went wrong that somebody must hear of.
    void wrong(const QString& title, const QString& message);
    /// What has just been done, for the foot of the window.
    void done(const QString& what);

private:
    void wire_sound();
};

}  // namespace gui
