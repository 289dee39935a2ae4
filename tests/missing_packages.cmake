cmake_minimum_required(VERSION 3.25)
# Without what the program is made from, configuring stops at once and names the Debian packages.
execute_process(
  COMMAND
    ${CMAKE_COMMAND} -S ${ROOT} -B ${FOLDER} -DCMAKE_DISABLE_FIND_PACKAGE_fmt=ON
    -DCMAKE_DISABLE_FIND_PACKAGE_CLI11=ON -Dfound_kainjow_mustache_hpp=OFF
    -DCMAKE_DISABLE_FIND_PACKAGE_rapidcheck=ON
  OUTPUT_QUIET
  ERROR_VARIABLE said
  RESULT_VARIABLE result)
file(REMOVE_RECURSE ${FOLDER})
if(result EQUAL 0)
  message(FATAL_ERROR "configured although packages are missing")
endif()
string(REGEX REPLACE "[ \n]+" " " said "${said}")
set(wanted
    "apt-get install --no-install-recommends libfmt-dev libcli11-dev libkainjow-mustache-dev librapidcheck-dev"
)
string(FIND "${said}" "${wanted}" at)
if(at EQUAL -1)
  message(FATAL_ERROR "does not name exactly the packages that are missing, but: ${said}")
endif()
