# SPDX-License-Identifier: GPL-3.0-or-later
# What people use, without tests: cmake -C .cmake/release.cmake -S . -B .build/release
set(CMAKE_GENERATOR Ninja CACHE STRING "")
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELEASE "-O3 -DNDEBUG" CACHE STRING "")
set(BUILD_TESTING OFF CACHE BOOL "")
