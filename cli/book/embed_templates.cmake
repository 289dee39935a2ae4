cmake_minimum_required(VERSION 3.25)
# Writes OUTPUT, a source with the text of every file of FOLDER, which FUNCTION, declared in HEADER,
# gives by its name; called by the build.
file(GLOB files LIST_DIRECTORIES false ${FOLDER}/*)
set(rows "")
foreach(file ${files})
  get_filename_component(name ${file} NAME)
  file(READ ${file} text)
  if(text MATCHES "\\)tumpline\"")
    message(FATAL_ERROR "${name} holds the mark that ends a text in the generated source")
  endif()
  string(APPEND rows "    {\"${name}\", R\"tumpline(${text})tumpline\"},\n")
endforeach()
file(CONFIGURE OUTPUT ${OUTPUT} @ONLY
     CONTENT "// Made by cli/book/embed_templates.cmake.
#include \"@HEADER@\"

#include <map>

namespace tumpline::cli {

std::string_view @FUNCTION@(std::string_view name) {
    static const std::map<std::string_view, std::string_view> texts{
@rows@    };
    return texts.at(name);
}

} // namespace tumpline::cli
")
