// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/job.hpp"
#include "sim/security.hpp"

#include <QMetaType>
#include <QObject>

#include <memory>
#include <optional>
#include <vector>

namespace gui {

class Selection;

/// One stroke of a band's map: where, how firmly, and what was wrong with it.
struct BandCell {
    double contact = 0.0;  ///< m
    double force = 0.0;    ///< N
    sim::Fault fault = sim::Fault::none;

    bool operator==(const BandCell&) const = default;
};

/// The band of one note, and the strokes it was found from.
struct NoteBand {
    double stop = 0.0;             ///< semitones
    double sounding_length = 0.0;  ///< m
    sim::BandResult band;
    std::vector<double> contacts;  ///< m, rising
    std::vector<double> forces;    ///< N, rising
    std::vector<BandCell> cells;   ///< [contact][force], force fastest
    double best_brightness = 0.0;  ///< in multiples of f0: of the best at each force, their median; 0 = nothing speaks
    bool fine = false;             ///< false: from few contact points, to be had quickly
};
using NoteBandPointer = std::shared_ptr<const NoteBand>;

/// What a band is asked of.
struct BandQuestion {
    std::shared_ptr<const sim::Preset> preset;
    int string_index = 0;
    double stop = 0.0;
    sim::Player player;
};
BandQuestion band_question(const Selection& selection);

/// The band from few strokes, to be had quickly, or from as many as the commands play.  Throws Stopped when asked to.
///
/// A stroke costs the more the nearer to the bridge it is, and the nearest places are hardly ever the best: the coarse
/// band has no contact point under 0.06 of the sounding length.
enum class BandFineness { coarse, fine };
NoteBand find_note_band(const BandQuestion& question, BandFineness fineness, const sim::Workers& workers);

/// Follows the selection: the band from few strokes at once, then, where the note stays, from many.
///
/// A coarse search goes on to its end even if the finger has moved on meanwhile: otherwise nothing would be shown as
/// long as it moves.  A fine one is given up for a newer note.
class BandFinder : public QObject {
    Q_OBJECT

public:
    explicit BandFinder(const Selection& selection, int threads, QObject* parent = nullptr);

    /// The newest; empty before the first.
    const NoteBandPointer& band() const { return band_; }
    const JobRunner& runner() const { return runner_; }

public slots:
    void ask();

signals:
    void found(const gui::NoteBandPointer& band);
    void failed(const QString& message);

private:
    void refine();

    const Selection* selection_;
    JobRunner runner_;
    NoteBandPointer band_;
};

}  // namespace gui

Q_DECLARE_METATYPE(gui::NoteBandPointer)
