// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/recent_files.hpp"

#include <QFileInfo>
#include <QSettings>

namespace gui {
namespace {

const char* const key = "recent_files";

}  // namespace

RecentFiles::RecentFiles(QSettings& settings, QObject* parent) : QObject(parent), settings_(&settings) {}

QStringList RecentFiles::files() const {
    QStringList there;
    for (const QString& file : settings_->value(key).toStringList())
        if (QFileInfo::exists(file)) there.append(file);
    return there;
}

void RecentFiles::add(const QString& file) {
    QStringList all = settings_->value(key).toStringList();
    const QString place = QFileInfo(file).absoluteFilePath();
    all.removeAll(place);
    all.prepend(place);
    settings_->setValue(key, all.mid(0, most));
    emit changed();
}

void RecentFiles::clear() {
    settings_->remove(key);
    emit changed();
}

}  // namespace gui
