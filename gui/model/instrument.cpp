// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/instrument.hpp"

#include "analysis/output_file.hpp"

#include <QFileInfo>
#include <QUndoCommand>

#include <algorithm>
#include <exception>
#include <utility>

namespace gui {

class Instrument::Change : public QUndoCommand {
public:
    Change(Instrument& instrument, std::shared_ptr<const sim::Preset> next, const QString& what)
        : QUndoCommand(what), instrument_(&instrument), before_(instrument.preset_), next_(std::move(next)) {}

    void undo() override { instrument_->set(before_); }
    void redo() override { instrument_->set(next_); }

private:
    Instrument* instrument_;
    std::shared_ptr<const sim::Preset> before_;
    std::shared_ptr<const sim::Preset> next_;
};

Instrument::Instrument(sim::Preset preset, QObject* parent)
    : QObject(parent), preset_(std::make_shared<const sim::Preset>(std::move(preset))) {
    connect(&undo_, &QUndoStack::cleanChanged, this, &Instrument::title_changed);
}

QString Instrument::title() const {
    const QString name = QString::fromStdString(preset_->name);
    return file_.isEmpty() ? name : tr("%1 – %2").arg(name, QFileInfo(file_).fileName());
}

void Instrument::set(std::shared_ptr<const sim::Preset> preset) {
    preset_ = std::move(preset);
    emit changed();
    emit title_changed();
}

void Instrument::take(sim::Preset preset, const QString& file) {
    file_ = file;
    undo_.clear();
    set(std::make_shared<const sim::Preset>(std::move(preset)));
}

bool Instrument::open(const QString& file) {
    try {
        take(sim::read_preset(file.toStdString()), file);
    } catch (const std::exception& wrong) {
        emit refused(
            tr("This preset can't be opened; the instrument at hand stays.\n%1").arg(QString::fromUtf8(wrong.what())));
        return false;
    }
    emit opened(file);
    return true;
}

bool Instrument::start_from(const QString& name) {
    try {
        take(sim::find_preset(name.toStdString()), {});
    } catch (const std::exception& wrong) {
        emit refused(QString::fromUtf8(wrong.what()));
        return false;
    }
    return true;
}

bool Instrument::save(const QString& file) {
    try {
        analysis::write_text_file(file.toStdString(), sim::preset_text(*preset_));
    } catch (const std::exception& wrong) {
        emit refused(tr("The instrument could not be saved; it stays open and unsaved. Save it elsewhere.\n%1")
                         .arg(QString::fromUtf8(wrong.what())));
        return false;
    }
    file_ = file;
    undo_.setClean();
    emit title_changed();
    emit saved(file);
    return true;
}

bool Instrument::change(const std::vector<FieldChange>& changes, const QString& what) {
    try {
        change(with_changes(*preset_, changes), what);
    } catch (const std::exception& wrong) {
        emit refused(QString::fromUtf8(wrong.what()));
        return false;
    }
    return true;
}

void Instrument::change(sim::Preset preset, const QString& what) {
    if (preset == *preset_) return;
    undo_.push(new Change(*this, std::make_shared<const sim::Preset>(std::move(preset)), what));
}

void Instrument::forget_file() {
    file_.clear();
    emit title_changed();
}

std::vector<ShippedPreset> shipped() {
    std::vector<ShippedPreset> presets;
    for (const std::filesystem::path& file : sim::shipped_presets()) {
        try {
            const sim::Preset preset = sim::read_preset(file);
            presets.push_back({QString::fromStdString(preset.short_name), QString::fromStdString(preset.name)});
        } catch (const std::exception&) {
            continue;  // a broken neighbour must not stand in the way; the command `presets` names what is wrong
        }
    }
    std::ranges::sort(presets, {}, &ShippedPreset::name);
    return presets;
}

}  // namespace gui
