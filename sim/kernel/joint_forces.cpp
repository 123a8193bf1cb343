// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/joint_forces.hpp"

#include <Eigen/Cholesky>

#include <algorithm>
#include <array>
#include <cmath>

namespace sim::kernel {

namespace {

constexpr double regular = 1e-14;     // of the greatest yield: a smaller pivot is rounding
constexpr double standstill = 1e-10;  // of yield times what is borne: a smaller slip is none
constexpr std::size_t steps_per_point = 20;

constexpr int most = static_cast<int>(JointForces::most_points);
using Column = Eigen::Matrix<double, Eigen::Dynamic, 1, Eigen::ColMajor, most, 1>;
using Square = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::ColMajor, most, most>;

/// The search: forces, and which points stick under them.
class Search {
public:
    Search(const JointForces::Rubbing& rubbing, JointForces::Values& forces) : rubbing_(rubbing), forces_(forces) {
        for (std::size_t i = 0; i < rubbing.points; ++i) {
            sticks_[i] = std::abs(forces[i]) < rubbing.bears[i];
            if (!sticks_[i]) forces[i] = std::copysign(rubbing.bears[i], forces[i]);
            most_borne_ = std::max(most_borne_, rubbing.bears[i]);
        }
    }

    void go() {
        for (std::size_t step = 0; step < steps_per_point * rubbing_.points; ++step)
            if (stop_those_that_stick() && !let_one_stick()) break;
    }

private:
    /// Steps to where they have no slip, or to where the first of them slides (false).
    bool stop_those_that_stick() {
        std::array<std::size_t, JointForces::most_points> sticking;
        Eigen::Index count = 0;
        for (std::size_t i = 0; i < rubbing_.points; ++i)
            if (sticks_[i]) sticking[static_cast<std::size_t>(count++)] = i;
        if (count == 0) return true;
        const auto point = [&](Eigen::Index i) { return sticking[static_cast<std::size_t>(i)]; };
        const JointForces::Values slips = JointForces::slips(rubbing_, forces_);
        Square yield(count, count);
        Column move(count);
        for (Eigen::Index i = 0; i < count; ++i) {
            move[i] = -slips[point(i)];
            for (Eigen::Index j = 0; j < count; ++j) yield(i, j) = rubbing_.yield[point(i)][point(j)];
        }
        solve(yield, move);
        double share = 1.0;
        Eigen::Index first = -1;
        for (Eigen::Index i = 0; i < count; ++i) {
            const double room = std::copysign(rubbing_.bears[point(i)], move[i]) - forces_[point(i)];
            if (std::abs(move[i]) * share <= std::abs(room)) continue;
            share = room / move[i];
            first = i;
        }
        for (Eigen::Index i = 0; i < count; ++i) forces_[point(i)] += share * move[i];
        if (first < 0) return true;
        forces_[point(first)] = std::copysign(rubbing_.bears[point(first)], move[first]);
        sticks_[point(first)] = false;
        return false;
    }

    /// A point that adds nothing of its own to those before it is left as it is if they stop it too; else it is moved
    /// far, to slide.
    void solve(const Square& yield, Column& move) const {
        const Eigen::LDLT<Square> parts(yield);
        const auto pivots = parts.vectorD();
        const double least = regular * pivots[0];
        const double none = 0.1 * standstill * pivots[0] * most_borne_;
        move = parts.transpositionsP() * move;
        parts.matrixL().solveInPlace(move);
        for (Eigen::Index i = 0; i < move.size(); ++i)
            move[i] = pivots[i] < least && std::abs(move[i]) < none ? 0.0 : move[i] / std::max(pivots[i], least);
        parts.matrixU().solveInPlace(move);
        move = parts.transpositionsP().transpose() * move;
    }

    /// Of the points whose friction would push them on, the one that is pushed the fastest.
    bool let_one_stick() {
        const JointForces::Values slips = JointForces::slips(rubbing_, forces_);
        std::size_t worst = rubbing_.points;
        double fastest = standstill;
        for (std::size_t i = 0; i < rubbing_.points; ++i) {
            if (sticks_[i]) continue;
            const double pushed =
                std::copysign(slips[i], slips[i] * forces_[i]) / (rubbing_.yield[i][i] * rubbing_.bears[i]);
            if (pushed <= fastest) continue;
            fastest = pushed;
            worst = i;
        }
        if (worst == rubbing_.points) return false;
        return sticks_[worst] = true;
    }

    const JointForces::Rubbing& rubbing_;
    JointForces::Values& forces_;
    std::array<bool, JointForces::most_points> sticks_{};
    double most_borne_ = 0.0;
};

}  // namespace

JointForces::Values JointForces::slips(const Rubbing& rubbing, const Values& forces) {
    Values slips = rubbing.free_slip;
    for (std::size_t i = 0; i < rubbing.points; ++i)
        for (std::size_t j = 0; j < rubbing.points; ++j) slips[i] += rubbing.yield[i][j] * forces[j];
    return slips;
}

void JointForces::settle(const Rubbing& rubbing, Values& forces) { Search(rubbing, forces).go(); }

}  // namespace sim::kernel
