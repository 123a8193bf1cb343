# SPDX-License-Identifier: GPL-3.0-or-later
# Optimised with assertions kept: cmake -C .cmake/dev.cmake -S . -B .build/dev
set(CMAKE_GENERATOR Ninja CACHE STRING "")
set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELWITHDEBINFO "-O2 -g" CACHE STRING "no NDEBUG: assertions stay")
