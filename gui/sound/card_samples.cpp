// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/sound/card_samples.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstring>

namespace gui {

namespace {

/// Full scale of a signed whole number, and what stands for silence.
template <class Number>
constexpr double full_scale = std::is_same_v<Number, float>          ? 1.0
                              : std::is_same_v<Number, std::uint8_t> ? 127.0
                              : std::is_same_v<Number, std::int16_t> ? 32767.0
                                                                     : 2147483647.0;
template <class Number>
constexpr double silence = std::is_same_v<Number, std::uint8_t> ? 128.0 : 0.0;

template <class Number>
void write(std::span<const float> samples, int channels, char* bytes) {
    for (const float sample : samples) {
        const double value = std::clamp(static_cast<double>(sample), -1.0, 1.0) * full_scale<Number> + silence<Number>;
        const auto number =
            static_cast<Number>(std::is_same_v<Number, float> ? value : static_cast<double>(std::lround(value)));
        for (int channel = 0; channel < channels; ++channel, bytes += sizeof number)
            std::memcpy(bytes, &number, sizeof number);
    }
}

template <class Number>
void read(std::span<const char> bytes, int channels, std::vector<float>& samples) {
    const std::size_t frame = sizeof(Number) * static_cast<std::size_t>(channels);
    for (std::size_t at = 0; at + frame <= bytes.size(); at += frame) {
        double sum = 0.0;
        for (int channel = 0; channel < channels; ++channel) {
            Number number{};
            std::memcpy(&number, bytes.data() + at + static_cast<std::size_t>(channel) * sizeof number, sizeof number);
            sum += (static_cast<double>(number) - silence<Number>) / full_scale<Number>;
        }
        samples.push_back(static_cast<float>(sum / channels));
    }
}

}  // namespace

void write_frames(std::span<const float> samples, const QAudioFormat& format, char* bytes) {
    const int channels = format.channelCount();
    switch (format.sampleFormat()) {
        case QAudioFormat::UInt8:
            return write<std::uint8_t>(samples, channels, bytes);
        case QAudioFormat::Int16:
            return write<std::int16_t>(samples, channels, bytes);
        case QAudioFormat::Int32:
            return write<std::int32_t>(samples, channels, bytes);
        case QAudioFormat::Float:
            return write<float>(samples, channels, bytes);
        default:
            return;
    }
}

void read_frames(std::span<const char> bytes, const QAudioFormat& format, std::vector<float>& samples) {
    const int channels = format.channelCount();
    if (channels < 1) return;
    switch (format.sampleFormat()) {
        case QAudioFormat::UInt8:
            return read<std::uint8_t>(bytes, channels, samples);
        case QAudioFormat::Int16:
            return read<std::int16_t>(bytes, channels, samples);
        case QAudioFormat::Int32:
            return read<std::int32_t>(bytes, channels, samples);
        case QAudioFormat::Float:
            return read<float>(bytes, channels, samples);
        default:
            return;
    }
}

}  // namespace gui
