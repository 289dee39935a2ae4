cmake_minimum_required(VERSION 3.25)
# Includes point one way. ROOT is the tree to look at.
#  - cli may include planner, planner may include geo; none the other way.
#  - A folder of a wing may include those that stand before it in the list below, never a later one.
#  - Headers and sources of one name count as one file; no circle of such files may be.
#  - Models include nothing of ours but models. Heavy library headers stay out of our headers.
# A file that stands in the wing itself is named in the list too.
set(geo_order utf8 one_line input_error position light gate lines ground layers tracks profiles)
set(planner_order
    models
    quantities
    caution
    trip
    route
    conditions
    defaults
    journey
    loads
    solution
    plan
    results
    cautions
    make_plan
    recordings
    decisions)
set(cli_order
    console
    words
    files
    text
    json
    drawing
    export
    book
    live
    commands
    app
    main)
set(order "")
foreach(wing geo planner cli)
  foreach(folder ${${wing}_order})
    list(APPEND order ${wing}/${folder})
  endforeach()
endforeach()

# "planner/loads" of "planner/loads/ledger.h", "planner/plan" of "planner/plan.h".
function(folder_of file result)
  string(REGEX REPLACE "^([^/]*/[^/.]*).*$" "\\1" folder "${file}")
  set(${result} "${folder}" PARENT_SCOPE)
endfunction()

set(faults "")
set(nodes "")
foreach(wing geo planner cli)
  file(GLOB_RECURSE files RELATIVE ${ROOT} ${ROOT}/${wing}/*.h ${ROOT}/${wing}/*.cpp)
  foreach(file ${files})
    folder_of(${file} here)
    list(FIND order ${here} here_at)
    if(here_at EQUAL -1)
      string(APPEND faults "${file}: ${here} has no place in the order of folders\n")
    endif()
    string(REGEX REPLACE "\\.[^.]*$" "" node ${file})
    if(NOT node IN_LIST nodes)
      list(APPEND nodes ${node})
    endif()
    file(STRINGS ${ROOT}/${file} lines REGEX "^[ \t]*#[ \t]*include[ \t]*\"")
    foreach(line ${lines})
      string(REGEX REPLACE ".*\"(.*)\".*" "\\1" target "${line}")
      folder_of(${target} there)
      list(FIND order ${there} there_at)
      if(there_at EQUAL -1)
        string(APPEND faults "${file}: ${target} has no place in the order of folders\n")
      elseif(there_at GREATER here_at)
        string(APPEND faults "${file}: ${there} comes after ${here}, found ${target}\n")
      elseif(here STREQUAL "planner/models" AND NOT there STREQUAL "planner/models")
        string(APPEND faults "${file}: a model includes nothing of ours, found ${target}\n")
      endif()
      string(REGEX REPLACE "\\.[^.]*$" "" next ${target})
      if(NOT next STREQUAL node)
        list(APPEND includes_${node} ${next})
      endif()
    endforeach()
    # The one exception is there to bring JSON to those who write it; json_fwd.hpp only declares.
    if(file MATCHES "\\.h$" AND NOT file STREQUAL "cli/words/json_values.h")
      file(STRINGS ${ROOT}/${file} heavy
           REGEX "#[ \t]*include[ \t]*<(gdal|ogr|cpl_|proj|nlohmann|CLI/|expat|GeographicLib|date/)")
      list(FILTER heavy EXCLUDE REGEX "<nlohmann/json_fwd.hpp>")
      if(heavy)
        string(APPEND faults "${file}: library header in a header: ${heavy}\n")
      endif()
    endif()
  endforeach()
endforeach()

# Circles: files are taken away once all that they include are gone, then those that nothing left
# includes; what stays lies on a circle or between two.
set(left ${nodes})
set(moved TRUE)
while(moved)
  set(moved FALSE)
  foreach(node ${left})
    set(free TRUE)
    foreach(next ${includes_${node}})
      if(next IN_LIST left)
        set(free FALSE)
        break()
      endif()
    endforeach()
    if(free)
      list(REMOVE_ITEM left ${node})
      set(moved TRUE)
    endif()
  endforeach()
endwhile()
set(moved TRUE)
while(moved)
  set(moved FALSE)
  set(wanted "")
  foreach(node ${left})
    list(APPEND wanted ${includes_${node}})
  endforeach()
  foreach(node ${left})
    if(NOT node IN_LIST wanted)
      list(REMOVE_ITEM left ${node})
      set(moved TRUE)
    endif()
  endforeach()
endwhile()
foreach(node ${left})
  foreach(next ${includes_${node}})
    if(next IN_LIST left)
      string(APPEND faults "circle of files: ${node} includes ${next}\n")
    endif()
  endforeach()
endforeach()

if(faults)
  message(FATAL_ERROR "includes that point the wrong way:\n${faults}")
endif()
