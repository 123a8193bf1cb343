// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCoreApplication>
#include <QString>

namespace gui {

/// Sentences that stand in several places.
struct Words {
    Q_DECLARE_TR_FUNCTIONS(gui::Words)

public:
    static QString listening_caution() {
        return tr("Start low: turn the volume up slowly, headphones above all. Loud playback harms hearing.");
    }
    static QString strings_caution() {
        return tr(
            "Strings break: keep your face away, wear glasses, raise the pitch slowly and never past what the "
            "string bears. Ask a maker before you raise the pull on an old instrument.");
    }
};

}  // namespace gui
