cmake_minimum_required(VERSION 3.25)
# Packs BUILD for Debian into FOLDER and looks at the package.
find_program(shlibdeps dpkg-shlibdeps)
find_program(dpkg_deb dpkg-deb)
find_program(file_type file)
if(NOT shlibdeps OR NOT dpkg_deb OR NOT file_type)
  message(STATUS "skipped: this machine has no dpkg-shlibdeps or no file (Debian: dpkg-dev, file)")
  return()
endif()
file(REMOVE_RECURSE ${FOLDER})

function(run)
  execute_process(COMMAND ${ARGN} RESULT_VARIABLE result OUTPUT_VARIABLE output ERROR_VARIABLE error)
  if(NOT result EQUAL 0)
    message(FATAL_ERROR "answered ${result}: ${ARGN}\n${output}${error}")
  endif()
  set(output "${output}" PARENT_SCOPE)
endfunction()

run(${CPACK} -G DEB -B ${FOLDER} --config ${BUILD}/CPackConfig.cmake)
file(GLOB packages ${FOLDER}/*.deb)
list(LENGTH packages count)
if(NOT count EQUAL 1)
  message(FATAL_ERROR "one package was expected, not: ${packages}")
endif()

run(${dpkg_deb} -f ${packages})
foreach(
  field
  "Package: tumpline\n"
  "Version: [0-9.]+\n"
  "Section: science\n"
  "Priority: optional\n"
  "Maintainer: [^<]+ <[^@ ]+@[^> ]+>\n"
  "Description: planner for trips on foot and afloat\n Plans trips"
  "Depends: [^\n]*libc6"
  "Depends: [^\n]*libexpat1"
  "Depends: [^\n]*libfmt9"
  "Depends: [^\n]*libgdal32"
  "Depends: [^\n]*libproj25"
  "Depends: [^\n]*proj-data"
  "Depends: [^\n]*tzdata")
  if(NOT output MATCHES "${field}")
    message(SEND_ERROR "the package does not say: ${field}\n${output}")
  endif()
endforeach()

# Everything belongs to root, nobody else may write, no program runs as somebody else.
run(${dpkg_deb} -c ${packages})
string(REGEX MATCHALL "[^\n]+" lines "${output}")
foreach(line ${lines})
  if(NOT line MATCHES "^(drwxr-xr-x|-rw-r--r--|-rwxr-xr-x|lrwxrwxrwx) root/root ")
    message(SEND_ERROR "in the package: ${line}")
  endif()
  if(line MATCHES "^-rwx" AND NOT line MATCHES " \\./usr/bin/tumpline$")
    message(SEND_ERROR "in the package a program: ${line}")
  endif()
endforeach()
if(NOT output MATCHES " \\./usr/bin/tumpline\n")
  message(SEND_ERROR "the package has no program")
endif()

# What Debian's hardening flags leave in a program: loaded anywhere, tables of addresses read-only
# from the start, calls that check the room they are given, a guard on the stack.
if(HARDENING)
  run(${dpkg_deb} -x ${packages} ${FOLDER}/unpacked)
  find_program(read_elf readelf REQUIRED)
  run(${read_elf} --wide --file-header --program-headers --dynamic --dyn-syms
      ${FOLDER}/unpacked/usr/bin/tumpline)
  foreach(
    mark
    "Type: +DYN \\(Position-Independent Executable file\\)"
    "GNU_RELRO"
    "FLAGS[^\n]* BIND_NOW"
    "FLAGS_1[^\n]* NOW"
    " __stack_chk_fail"
    " __(sn?printf|vsn?printf|mem[a-z]+|str[a-z]+|read|fd_elt|fread|longjmp)_chk")
    if(NOT output MATCHES "${mark}")
      message(SEND_ERROR "the program was built without: ${mark}")
    endif()
  endforeach()
endif()

# Debian's own look at a package, where it is installed.
find_program(lintian lintian)
if(lintian)
  run(${lintian} --allow-root --fail-on error,warning ${packages})
  if(HARDENING)
    run(${lintian} --allow-root --display-info ${packages})
    if(output MATCHES "hardening-no")
      message(SEND_ERROR "lintian says:\n${output}")
    endif()
  endif()
endif()
file(REMOVE_RECURSE ${FOLDER})
