# SPDX-License-Identifier: GPL-3.0-or-later
# Address and undefined-behaviour sanitizers, assertions kept: cmake -C .cmake/asan.cmake -S . -B .build/asan
set(CMAKE_GENERATOR Ninja CACHE STRING "")
set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELWITHDEBINFO "-O1 -g1 -fno-omit-frame-pointer" CACHE STRING "no NDEBUG: assertions stay")
set(CMAKE_CXX_FLAGS "-fsanitize=address,undefined -fno-sanitize-recover=all" CACHE STRING "")
