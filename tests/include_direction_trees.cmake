cmake_minimum_required(VERSION 3.25)
# Gives include_direction.cmake made-up trees, each with one fault or none, and looks at what it
# says. SCRIPT is the script, FOLDER where the trees are laid.
set(failed "")

# tree(NAME EXPECTED FILE "LINES" ...): EXPECTED is a part of the message, or "" for no fault.
function(tree name expected)
  set(root ${FOLDER}/${name})
  file(REMOVE_RECURSE ${root})
  set(files ${ARGN})
  while(files)
    list(POP_FRONT files file includes)
    set(text "#pragma once\n")
    string(REPLACE "|" ";" includes "${includes}") # several in one
    foreach(include ${includes})
      string(APPEND text "#include ${include}\n")
    endforeach()
    file(WRITE ${root}/${file} "${text}")
  endwhile()
  execute_process(
    COMMAND ${CMAKE_COMMAND} -DROOT=${root} -P ${SCRIPT}
    RESULT_VARIABLE result
    ERROR_VARIABLE message
    OUTPUT_QUIET)
  string(REGEX REPLACE "[ \n]+" " " message "${message}") # it is wrapped
  if(expected STREQUAL "" AND NOT result EQUAL 0)
    string(APPEND failed "${name}: refused, ${message}\n")
  elseif(NOT expected STREQUAL "")
    string(FIND "${message}" "${expected}" at)
    if(result EQUAL 0 OR at EQUAL -1)
      string(APPEND failed "${name}: expected \"${expected}\", found \"${message}\"\n")
    endif()
  endif()
  set(failed "${failed}" PARENT_SCOPE)
endfunction()

set(sound
    geo/position.h "<cmath>"
    geo/lines/geodesic.h "\"geo/position.h\""
    planner/models/wind.h "<cmath>"
    planner/trip/trip.h "\"geo/position.h\""
    planner/loads/ledger.h "\"planner/trip/trip.h\"|\"planner/models/wind.h\""
    planner/plan.h "\"planner/loads/ledger.h\""
    cli/text/page.h "\"planner/plan.h\"|\"geo/lines/geodesic.h\"")
tree(sound "" ${sound})
tree(other_wing "planner/trip comes after geo/lines" ${sound} geo/lines/cut.h "\"planner/trip/trip.h\"")
tree(later_folder "planner/plan comes after planner/loads" ${sound} planner/loads/limits.h "\"planner/plan.h\"")
tree(model "a model includes nothing of ours" ${sound} planner/models/drag.h "\"geo/position.h\"")
tree(unknown_folder "planner/utils has no place" ${sound} planner/utils/all.h "<map>")
tree(library "library header in a header" ${sound} geo/lines/cut.h "<gdal.h>")
tree(
  circle
  "circle of files: planner/loads/bag includes planner/loads/box"
  ${sound}
  planner/loads/bag.h
  "<map>"
  planner/loads/bag.cpp
  "\"planner/loads/bag.h\"|\"planner/loads/box.h\""
  planner/loads/box.h
  "\"planner/loads/bag.h\"")
# What leads to a circle, or hangs on one, is not itself named.
execute_process(
  COMMAND ${CMAKE_COMMAND} -DROOT=${FOLDER}/circle -P ${SCRIPT}
  ERROR_VARIABLE message
  OUTPUT_QUIET)
if(message MATCHES "circle of files: cli")
  string(APPEND failed "circle: names files that only lead to it\n")
endif()
if(failed)
  message(FATAL_ERROR "${failed}")
endif()
