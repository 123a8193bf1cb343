// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/model/preset_fields.hpp"

#include <QObject>
#include <QUndoStack>

#include <memory>

namespace gui {

/// The instrument in hand: a preset, its file, and what has been changed in it since.
///
/// A change that the preset's reader would refuse is not made; `refused` says why.  Nothing is lost where a file can't
/// be written: the preset stays as it is and counts as unsaved.
class Instrument : public QObject {
    Q_OBJECT

public:
    explicit Instrument(sim::Preset preset, QObject* parent = nullptr);

    const std::shared_ptr<const sim::Preset>& preset() const { return preset_; }
    /// Where it was opened from or saved to; empty for a shipped preset and a new one.
    const QString& file() const { return file_; }
    bool unsaved() const { return !undo_.isClean(); }
    QUndoStack& undo() { return undo_; }
    /// For the title of the window: its name, and its file if it has one.
    QString title() const;

    /// False, and `refused`, where it can't be read; what was there before stays.
    bool open(const QString& file);
    /// A shipped preset by name, as a start for an own one.
    bool start_from(const QString& name);
    /// False, and `refused`, where it can't be written.
    bool save(const QString& file);

    /// False, and `refused`, where the reader would not take it.  `what` names the change for undoing.
    bool change(const std::vector<FieldChange>& changes, const QString& what);
    void change(sim::Preset preset, const QString& what);
    /// It is another instrument now; saving asks where to.
    void forget_file();

signals:
    void changed();        ///< the preset is another
    void title_changed();  ///< name, file, or whether it is saved
    void opened(const QString& file);
    void saved(const QString& file);
    void refused(const QString& message);

private:
    class Change;
    void set(std::shared_ptr<const sim::Preset> preset);
    void take(sim::Preset preset, const QString& file);

    std::shared_ptr<const sim::Preset> preset_;
    QString file_;
    QUndoStack undo_;
};

/// Short and full names of the shipped presets, by full name.
struct ShippedPreset {
    QString short_name;
    QString name;
};
std::vector<ShippedPreset> shipped();

}  // namespace gui
