// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QProcess>
#include <QString>
#include <QTemporaryDir>

#include <memory>
#include <string>
#include <vector>

namespace tests {

/// A sound server of the test's own that plays to nobody, at 48 kHz.  What it plays is recorded from a monitor, and
/// comes back as its only microphone.  The process's environment points to it for as long as the process lives.
class SoundServer {
public:
    SoundServer();
    ~SoundServer();

    /// Why it could not be started; empty = it runs.
    const std::string& trouble() const { return trouble_; }
    void end();

    /// The monitor's sound from now on, mono, full scale = 1.
    class Recording {
    public:
        Recording();
        ~Recording();
        /// All samples so far, or since the last forget().
        std::vector<double> samples();
        void forget();

    private:
        QProcess process_;
        QByteArray bytes_;
    };

    /// Plays these samples at 48 kHz to the output for as long as it lives.
    class Playing {
    public:
        explicit Playing(const std::vector<double>& samples);
        ~Playing();

    private:
        QTemporaryDir folder_;
        QProcess process_;
    };

private:
    bool runs_within(int milliseconds);

    QTemporaryDir folder_;
    QProcess process_;
    std::string trouble_;
};

/// Runs the event loop for so long.
void wait_for(int milliseconds);

}  // namespace tests
