cmake_minimum_required(VERSION 3.25)
# Installs BUILD below FOLDER as a package of Debian would be, and looks: everything is where Debian
# expects it, nothing else is there, the papers' links lead somewhere, and the installed program
# plans an installed sample and writes its book.
set(root ${FOLDER}/root)
file(REMOVE_RECURSE ${FOLDER})
file(MAKE_DIRECTORY ${FOLDER})

function(run)
  execute_process(COMMAND ${ARGN} RESULT_VARIABLE result OUTPUT_VARIABLE output ERROR_VARIABLE output)
  if(NOT result EQUAL 0)
    message(FATAL_ERROR "answered ${result}: ${ARGN}\n${output}")
  endif()
  set(output "${output}" PARENT_SCOPE)
endfunction()

run(${CMAKE_COMMAND} -E env DESTDIR=${root} ${CMAKE_COMMAND} --install ${BUILD} --prefix /usr)

foreach(
  file
  bin/tumpline
  share/man/man1/tumpline.1.gz
  share/bash-completion/completions/tumpline
  share/zsh/vendor-completions/_tumpline
  share/fish/vendor_completions.d/tumpline.fish
  share/doc/tumpline/README.md
  share/doc/tumpline/CHANGELOG.md
  share/doc/tumpline/changelog.gz
  share/doc/tumpline/copyright
  share/doc/tumpline/docs/tutorial.md
  share/doc/tumpline/examples/saddle/trip.json
  share/tumpline/trip.schema.json
  share/tumpline/sample-routes/saddle/trip.json
  share/tumpline/sample-routes/saddle/saddle-dem.tif)
  if(NOT EXISTS ${root}/usr/${file})
    message(SEND_ERROR "/usr/${file} is not there")
  endif()
endforeach()

file(GLOB_RECURSE files RELATIVE ${root} LIST_DIRECTORIES false ${root}/*)
foreach(file ${files})
  if(NOT file MATCHES "^usr/(bin/tumpline|share/(man/man1|doc/tumpline|tumpline|bash-completion/completions|zsh/vendor-completions|fish/vendor_completions\\.d)/.+)$"
     OR file MATCHES "\\.(cpp|h|a|cmake)$|CMakeLists\\.txt$")
    message(SEND_ERROR "/${file} does not belong there")
  endif()
endforeach()

# What is for contributors is not installed; every other link of the papers leads somewhere.
set(followed 0)
file(GLOB_RECURSE papers ${root}/usr/share/doc/*.md ${root}/usr/share/tumpline/*.md)
foreach(paper ${papers})
  file(READ ${paper} text)
  string(REPLACE "](" "<link " text "${text}") # brackets would hold a list together
  string(REGEX MATCHALL "<link [^)# ]+" links "${text}")
  get_filename_component(folder ${paper} DIRECTORY)
  foreach(link ${links})
    string(SUBSTRING "${link}" 6 -1 link)
    if(NOT link MATCHES "://|DEVELOPERS\\.md|/make/|\\.\\./(planner|geo|cli|tests|\\.ci)")
      math(EXPR followed "${followed} + 1")
      if(NOT EXISTS ${folder}/${link})
        message(SEND_ERROR "${paper}: ${link} leads nowhere")
      endif()
    endif()
  endforeach()
endforeach()
if(followed LESS 50)
  message(SEND_ERROR "only ${followed} links were found")
endif()

set(tumpline ${root}/usr/bin/tumpline)
set(trip ${root}/usr/share/tumpline/sample-routes/saddle/trip.json)
run(${tumpline} plan ${trip})
if(NOT output MATCHES "Over the saddle and down the river")
  message(SEND_ERROR "the installed program planned something else:\n${output}")
endif()
run(${tumpline} book ${trip} -o ${FOLDER}/saddle.html)
file(READ ${FOLDER}/saddle.html book)
if(NOT book MATCHES "</html>\n$")
  message(SEND_ERROR "the installed program wrote no whole book")
endif()
run(gzip -dc ${root}/usr/share/man/man1/tumpline.1.gz)
file(READ ${ROOT}/docs/tumpline.1 manual)
if(NOT output STREQUAL manual)
  message(SEND_ERROR "the installed manual is another")
endif()

# Below /usr/local zsh looks elsewhere.
run(${CMAKE_COMMAND} -E env DESTDIR=${FOLDER}/local ${CMAKE_COMMAND} --install ${BUILD} --prefix /usr/local)
if(NOT EXISTS ${FOLDER}/local/usr/local/share/zsh/site-functions/_tumpline)
  message(SEND_ERROR "/usr/local has no completions for zsh")
endif()
file(REMOVE_RECURSE ${FOLDER})
