# SPDX-License-Identifier: GPL-3.0-or-later
# What holds for every target of the tree.

add_library(bowband_warnings INTERFACE)
target_compile_options(bowband_warnings INTERFACE
    -Wall -Wextra -Wpedantic -Wshadow -Wconversion
    # int against size_t at every index of a vector: noise that hides the narrowings worth seeing
    -Wno-sign-conversion
    # {.stroke = s} names what it sets; the other fields keep the defaults written in their type
    -Wno-missing-field-initializers
    # GCC 12 sees overlaps that are not there in "x" + std::string (its bug 105651)
    -Wno-restrict
    $<$<BOOL:${BOWBAND_WERROR}>:-Werror>
)

add_library(bowband_arithmetic INTERFACE)
target_compile_options(bowband_arithmetic INTERFACE
    # The same note gives the same bits on every machine: a*b+c must round twice everywhere, also where the
    # processor has a fused multiply-add.  For the same reason never -ffast-math.
    -ffp-contract=off
)
target_compile_features(bowband_arithmetic INTERFACE cxx_std_20)

# Adds a folder of the tree, if it is there.
function(bowband_add_folder folder)
    if(EXISTS ${CMAKE_CURRENT_SOURCE_DIR}/${folder}/CMakeLists.txt)
        add_subdirectory(${folder})
    endif()
endfunction()

# Gives every compiled target under `folder` the warnings, the arithmetic and the include root, so that none forgets.
function(bowband_apply_rules folder)
    get_property(targets DIRECTORY ${folder} PROPERTY BUILDSYSTEM_TARGETS)
    foreach(target IN LISTS targets)
        get_target_property(type ${target} TYPE)
        if(type MATCHES "^(STATIC_LIBRARY|OBJECT_LIBRARY|EXECUTABLE)$")
            target_link_libraries(${target} PRIVATE bowband_warnings bowband_arithmetic)
            target_include_directories(${target} PRIVATE ${PROJECT_SOURCE_DIR})
        endif()
    endforeach()
    get_property(folders DIRECTORY ${folder} PROPERTY SUBDIRECTORIES)
    foreach(below IN LISTS folders)
        bowband_apply_rules(${below})
    endforeach()
endfunction()
