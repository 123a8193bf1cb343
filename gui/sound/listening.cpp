// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/sound/listening.hpp"

#include "analysis/level.hpp"
#include "analysis/partials.hpp"
#include "analysis/pitch.hpp"
#include "analysis/units.hpp"
#include "gui/sound/microphone.hpp"

#include <QThread>

#include <algorithm>
#include <cmath>
#include <utility>

namespace gui {

namespace {

constexpr analysis::PitchRange pitches{.lowest = 35.0, .highest = 2500.0};
constexpr double heard_time = 0.15;     // s
constexpr double motion_time = 0.3;     // s
constexpr double longest_kept = 600.0;  // s
constexpr double least_level_db = -120.0;
constexpr double least_tone_db = -70.0;
constexpr double least_clarity_db = 0.0;  // more tone than noise
constexpr double full_scale = 0.999;

/// Two samples on end at full scale: the input cut a peak off.
bool clipped(std::span<const double> samples) {
    return std::ranges::adjacent_find(samples, [](double a, double b) {
               return std::abs(a) >= full_scale && std::abs(b) >= full_scale;
           }) != samples.end();
}

}  // namespace

HeardSound heard_sound(std::span<const double> all, double sample_rate) {
    const auto samples = all.last(std::min(all.size(), static_cast<std::size_t>(heard_time * sample_rate)));
    HeardSound sound{.level_db = least_level_db, .clarity_db = -analysis::most_clarity_db, .clipped = clipped(samples)};
    const double level = analysis::rms(samples);
    if (level > 0.0) sound.level_db = std::max(least_level_db, analysis::db_from_ratio(level));
    if (static_cast<double>(all.size()) >= motion_time * sample_rate)
        sound.motion = analysis::guess_motion(analysis::motion_features(all, sample_rate, {}));
    const auto pitch = analysis::measure_pitch(samples, sample_rate, pitches);
    if (!pitch) return sound;
    sound.clarity_db = pitch->clarity_db;
    if (pitch->clarity_db < least_clarity_db || sound.level_db < least_tone_db) return sound;
    sound.pitch_hz = pitch->hz;
    const auto partials = analysis::measure_partials(samples, sample_rate, {pitch->hz, analysis::brightness_limit_hz});
    if (const auto bright = analysis::brightness(partials, pitch->hz)) sound.brightness_f0 = bright->brightness_f0;
    return sound;
}

class Listening::Parts {
public:
    explicit Parts(Listening* listening) {
        microphone->moveToThread(&thread);
        QObject::connect(&thread, &QThread::finished, microphone, &QObject::deleteLater);
        QObject::connect(microphone, &Microphone::heard, listening, [this, listening](HeardSound sound) {
            if (listens) emit listening->heard(sound);
        });
        QObject::connect(microphone, &Microphone::came, listening,
                         [this](const std::vector<float>& samples, double sample_rate) { add(samples, sample_rate); });
        QObject::connect(microphone, &Microphone::lost, listening, [this, listening](const QString& message) {
            if (!std::exchange(listens, false)) return;
            emit listening->listening_changed(false);
            emit listening->failed(message);
        });
        thread.start();
    }
    ~Parts() {
        QMetaObject::invokeMethod(microphone, &Microphone::close, Qt::BlockingQueuedConnection);
        thread.quit();
        thread.wait();
    }

    void add(const std::vector<float>& samples, double sample_rate) {
        if (!keeps) return;
        const auto most = static_cast<std::size_t>(longest_kept * sample_rate);
        kept.sample_rate = sample_rate;
        kept.samples.insert(kept.samples.end(), samples.begin(), samples.end());
        if (kept.samples.size() < most) return;
        kept.samples.resize(most);
        keeps = false;
    }

    QThread thread;
    analysis::Signal kept;
    bool keeps = false;
    Microphone* microphone = new Microphone;  // ends with the thread, on it
    bool listens = false;
};

Listening::Listening(QObject* parent) : QObject(parent), parts_(std::make_unique<Parts>(this)) {}
Listening::~Listening() = default;

void Listening::start() {
    if (std::exchange(parts_->listens, true)) return;
    QMetaObject::invokeMethod(parts_->microphone, &Microphone::open);
    emit listening_changed(true);
}

void Listening::stop() {
    if (!std::exchange(parts_->listens, false)) return;
    QMetaObject::invokeMethod(parts_->microphone, &Microphone::close);
    emit listening_changed(false);
}

bool Listening::listening() const { return parts_->listens; }

void Listening::keep(bool kept) {
    if (kept && !parts_->keeps) parts_->kept = {};
    parts_->keeps = kept;
}

bool Listening::keeping() const { return parts_->keeps; }

double Listening::kept_seconds() const {
    const analysis::Signal& kept = parts_->kept;
    return kept.samples.empty() ? 0.0 : static_cast<double>(kept.samples.size()) / kept.sample_rate;
}

analysis::Signal Listening::take_kept() { return std::exchange(parts_->kept, {}); }

}  // namespace gui
