// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <atomic>
#include <bit>
#include <cstddef>
#include <vector>

namespace sim::sound {

/// A queue from one thread to one other.
///
/// promise  after the constructor: no heap, no locks; neither side ever waits for the other
template <class Value>
class OneWay {
public:
    explicit OneWay(std::size_t at_least) : values_(std::bit_ceil(at_least)) {}

    /// False where the queue is full: the value is then not in it.
    bool push(const Value& value) noexcept {
        const std::size_t end = end_.load(std::memory_order_relaxed);
        if (end - begin_.load(std::memory_order_acquire) == values_.size()) return false;
        values_[end & (values_.size() - 1)] = value;
        end_.store(end + 1, std::memory_order_release);
        return true;
    }

    /// False where the queue is empty.
    bool pop(Value& value) noexcept {
        const std::size_t begin = begin_.load(std::memory_order_relaxed);
        if (begin == end_.load(std::memory_order_acquire)) return false;
        value = values_[begin & (values_.size() - 1)];
        begin_.store(begin + 1, std::memory_order_release);
        return true;
    }

private:
    std::vector<Value> values_;
    std::atomic<std::size_t> begin_ = 0;  // both only grow
    std::atomic<std::size_t> end_ = 0;
};

}  // namespace sim::sound
