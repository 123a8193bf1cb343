// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/sound/live_bow.hpp"

#include "gui/sound/card.hpp"
#include "gui/sound/thinker.hpp"

#include <QThread>
#include <QTimer>

#include <algorithm>
#include <utility>

namespace gui {

namespace {

constexpr int lift_ms = 60;   // the string rings on
constexpr int close_ms = 40;  // after that: the fade

}  // namespace

class LiveBow::Parts {
public:
    explicit Parts(LiveBow* bow);
    ~Parts();

    void tell_voice();

    QThread card_thread, thinker_thread;
    Card* card = new Card;  // these two end with their threads, on them
    Thinker* thinker = new Thinker;
    QTimer lifted, closing;
    SharedVoice voice;
    LiveStroke stroke;
    double volume = 0.7;
    bool sounding = false;
};

LiveBow::Parts::Parts(LiveBow* bow) {
    card->moveToThread(&card_thread);
    thinker->moveToThread(&thinker_thread);
    QObject::connect(&card_thread, &QThread::finished, card, &QObject::deleteLater);
    QObject::connect(&thinker_thread, &QThread::finished, thinker, &QObject::deleteLater);
    for (QTimer* timer : {&lifted, &closing}) timer->setSingleShot(true);
    lifted.setInterval(lift_ms);
    closing.setInterval(close_ms);
    QObject::connect(card, &Card::opened, thinker, &Thinker::serve);
    QObject::connect(card, &Card::opened, bow, [this](const SharedVoice& opened) {
        if (!sounding) return;  // stopped meanwhile: it is about to be closed
        voice = opened;
        tell_voice();
    });
    QObject::connect(card, &Card::lost, bow, [this, bow](const QString& message) {
        voice.reset();
        if (!std::exchange(sounding, false)) return;
        emit bow->sounding_changed(false);
        emit bow->failed(message);
    });
    QObject::connect(thinker, &Thinker::failed, bow, &LiveBow::failed);
    QObject::connect(thinker, &Thinker::heard, bow, [this, bow](LiveHearing hearing) {
        hearing.underruns = card->underruns();
        if (sounding) emit bow->heard(hearing);
    });
    QObject::connect(&lifted, &QTimer::timeout, bow, [this] {
        if (voice) voice->set_volume(0.0);
        closing.start();
    });
    QObject::connect(&closing, &QTimer::timeout, bow, [this] {
        voice.reset();
        QMetaObject::invokeMethod(thinker, [worker = thinker] { worker->serve({}); });
        QMetaObject::invokeMethod(card, &Card::close);
    });
    card_thread.start(QThread::TimeCriticalPriority);
    thinker_thread.start();
}

LiveBow::Parts::~Parts() {
    QMetaObject::invokeMethod(card, &Card::close, Qt::BlockingQueuedConnection);
    for (QThread* thread : {&card_thread, &thinker_thread}) {
        thread->quit();
        thread->wait();
    }
}

void LiveBow::Parts::tell_voice() {
    if (!voice) return;
    voice->set_volume(volume);
    voice->set_stroke(stroke);
}

LiveBow::LiveBow(QObject* parent) : QObject(parent), parts_(std::make_unique<Parts>(this)) {}
LiveBow::~LiveBow() = default;

void LiveBow::set_note(const sim::Preset& preset, int string, double stop) {
    parts_->thinker->want({.preset = preset, .string = string, .stop = stop});
}

void LiveBow::set_stroke(LiveStroke stroke) {
    parts_->stroke = stroke;
    if (parts_->voice && parts_->sounding) parts_->voice->set_stroke(stroke);
}

void LiveBow::set_volume(double share) {
    parts_->volume = std::clamp(share, 0.0, 1.0);
    if (parts_->voice && parts_->sounding) parts_->voice->set_volume(parts_->volume);
}

void LiveBow::start() {
    if (parts_->sounding) return;
    parts_->sounding = true;
    parts_->lifted.stop();
    parts_->closing.stop();
    if (parts_->voice)
        parts_->tell_voice();
    else
        QMetaObject::invokeMethod(parts_->card, &Card::open);
    emit sounding_changed(true);
}

void LiveBow::stop() {
    if (!parts_->sounding) return;
    parts_->sounding = false;
    if (parts_->voice) parts_->voice->set_stroke({.contact = parts_->stroke.contact, .force = 0.0, .speed = 0.0});
    parts_->lifted.start();
    emit sounding_changed(false);
}

bool LiveBow::sounding() const { return parts_->sounding; }

}  // namespace gui
