// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/fourier_sums.hpp"

#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "analysis/fourier_sums.cpp"
#include <hwy/foreach_target.h>
//
#include <hwy/highway.h>

#include <cmath>

#ifndef BOWBAND_PHASORS
#define BOWBAND_PHASORS
namespace analysis {

/// One of each frequency.
struct Phasors {
    alignas(64) double step_re[fourier_lanes];
    alignas(64) double step_im[fourier_lanes];
    alignas(64) double sum_re[fourier_lanes];
    alignas(64) double sum_im[fourier_lanes];
};

}  // namespace analysis
#endif

HWY_BEFORE_NAMESPACE();
namespace analysis::HWY_NAMESPACE {

namespace hn = hwy::HWY_NAMESPACE;

using Tag = hn::CappedTag<double, fourier_lanes>;
using Vector = hn::Vec<Tag>;
constexpr std::size_t width = hn::MaxLanes(Tag());
constexpr std::size_t vectors = fourier_lanes / width;

/// Only operations that round once, the same everywhere.
void turn(const double* x, std::size_t count, Phasors& phasors) {
    const Tag tag;
    Vector step_re[vectors], step_im[vectors], re[vectors], im[vectors], sum_re[vectors], sum_im[vectors];
    for (std::size_t v = 0; v < vectors; ++v) {
        step_re[v] = hn::Load(tag, phasors.step_re + v * width);
        step_im[v] = hn::Load(tag, phasors.step_im + v * width);
        re[v] = hn::Set(tag, 1.0);
        im[v] = sum_re[v] = sum_im[v] = hn::Zero(tag);
    }
    for (std::size_t j = 0; j < count; ++j) {
        const Vector sample = hn::Set(tag, x[j]);
        for (std::size_t v = 0; v < vectors; ++v) {
            sum_re[v] = hn::Add(sum_re[v], hn::Mul(sample, re[v]));
            sum_im[v] = hn::Add(sum_im[v], hn::Mul(sample, im[v]));
            const Vector next = hn::Sub(hn::Mul(re[v], step_re[v]), hn::Mul(im[v], step_im[v]));
            im[v] = hn::Add(hn::Mul(re[v], step_im[v]), hn::Mul(im[v], step_re[v]));
            re[v] = next;
        }
    }
    for (std::size_t v = 0; v < vectors; ++v) {
        hn::Store(sum_re[v], tag, phasors.sum_re + v * width);
        hn::Store(sum_im[v], tag, phasors.sum_im + v * width);
    }
}

}  // namespace analysis::HWY_NAMESPACE
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace analysis {

HWY_EXPORT(turn);

std::array<std::complex<double>, fourier_lanes> fourier_sums(std::span<const double> x,
                                                             const std::array<double, fourier_lanes>& omega) {
    Phasors phasors;
    for (std::size_t l = 0; l < fourier_lanes; ++l) {
        phasors.step_re[l] = std::cos(omega[l]);
        phasors.step_im[l] = -std::sin(omega[l]);
    }
    HWY_DYNAMIC_DISPATCH(turn)(x.data(), x.size(), phasors);
    std::array<std::complex<double>, fourier_lanes> sums{};
    for (std::size_t l = 0; l < fourier_lanes; ++l) sums[l] = {phasors.sum_re[l], phasors.sum_im[l]};
    return sums;
}

}  // namespace analysis
#endif
