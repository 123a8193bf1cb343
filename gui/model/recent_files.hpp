// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QStringList>

class QSettings;

namespace gui {

/// Presets opened or saved lately, newest first; kept in the settings that are handed in.
class RecentFiles : public QObject {
    Q_OBJECT

public:
    static constexpr int most = 8;

    explicit RecentFiles(QSettings& settings, QObject* parent = nullptr);

    /// Those that are still there.
    QStringList files() const;
    void add(const QString& file);
    void clear();

signals:
    void changed();

private:
    QSettings* settings_;
};

}  // namespace gui
