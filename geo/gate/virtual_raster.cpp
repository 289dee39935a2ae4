#include "geo/gate/virtual_raster.h"

#include "geo/gate/gdal_formats.h"
#include "geo/gate/regular_file.h"
#include "geo/input_error.h"
#include "geo/one_line.h"

#include <cpl_minixml.h>
#include <cpl_string.h>
#include <fmt/format.h>
#include <gdal.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <system_error>
#include <utility>
#include <vector>

namespace tumpline::geo {

namespace {

constexpr std::size_t largest_vrt = std::size_t{64} << 20U; ///< bytes; a tile takes some 500
constexpr std::size_t most_sources = 100'000;               ///< each as often as it is named
constexpr int deepest_vrt = 8;                              ///< VRTs in VRTs

/// What one VRT says that it is made of.
struct VrtContent {
    std::vector<std::filesystem::path> sources;
    std::optional<std::string> other; ///< the first kind of dataset or band that is not of rasters
};

bool is_named(const CPLXMLNode& node, const char* name) {
    return EQUAL(node.pszValue, name);
}

/// Text of an attribute, or of an element of text, as GDAL takes it: the first one counts.
const char* text_of(const CPLXMLNode& node) {
    for (const CPLXMLNode* child = node.psChild; child != nullptr; child = child->psNext)
        if (child->eType == CXT_Text)
            return child->pszValue;
    return "";
}

/// Kinds of datasets and bands that take their cells from other rasters by GDAL's own means.
bool is_of_rasters(const char* kind) {
    constexpr std::array<const char*, 3> known{
        "VRTWarpedDataset", "VRTSourcedRasterBand", "VRTWarpedRasterBand"};
    return std::ranges::any_of(known, [&](const char* name) { return EQUAL(name, kind); });
}

// GDAL does not mind upper and lower case, nor whether a value is an element or an attribute. Depth
// is bounded by GDAL's reader of XML.
void collect(const CPLXMLNode* node, const std::filesystem::path& folder, VrtContent& content) {
    for (; node != nullptr; node = node->psNext) {
        if (node->eType != CXT_Element && node->eType != CXT_Attribute)
            continue;
        if (is_named(*node, "SourceFilename") || is_named(*node, "SourceDataset")) {
            const std::filesystem::path source = text_of(*node);
            const bool relative = CPLTestBool(CPLGetXMLValue(node, "relativeToVRT", "0"));
            content.sources.push_back(relative ? folder / source : source);
        } else if (is_named(*node, "subClass")) {
            if (const char* kind = text_of(*node); !is_of_rasters(kind) && !content.other)
                content.other = kind;
        } else if (is_named(*node, "Group") || is_named(*node, "PixelFunctionType")) {
            if (!content.other)
                content.other = node->pszValue;
        }
        if (node->eType == CXT_Element)
            collect(node->psChild, folder, content);
    }
}

std::optional<std::string> whole_text(const std::filesystem::path& file) {
    const std::unique_ptr<std::FILE, decltype(&std::fclose)> in(open_regular_file(file),
                                                                std::fclose);
    std::error_code error;
    const auto size = std::filesystem::file_size(file, error);
    if (!in || error || size > largest_vrt)
        return std::nullopt;
    std::string text(size, '\0');
    text.resize(std::fread(text.data(), 1, text.size(), in.get()));
    return text;
}

/// Walks through a VRT and the VRTs that it is made of.
class SourceWalk {
  public:
    SourceWalk(const std::filesystem::path& file, const Folders& folders)
        : file_(file), folders_(folders) {}

    void start() { static_cast<void>(sources_of(std::filesystem::canonical(file_), file_)); }

  private:
    [[noreturn]] void
    refuse(const std::filesystem::path& at, std::string found, std::string advice) const {
        throw InputError(
            {{.file = file_.string(),
              .place = at == file_ ? std::string() : "source " + one_line(at.string()),
              .found = std::move(found),
              .expected = "a VRT of rasters that are files beside it, or in or below the trip's "
                          "folder",
              .advice = std::move(advice)}});
    }

    /// How many files are named below `canonical`, which is named `name`.
    std::size_t sources_of(const std::filesystem::path& canonical,
                           const std::filesystem::path& name);
    std::size_t check_source(const std::filesystem::path& source);

    const std::filesystem::path& file_;
    const Folders& folders_;
    std::map<std::filesystem::path, std::size_t> counts_; ///< of what was looked through
    std::set<std::filesystem::path> open_;                ///< VRTs on the way down
};

std::size_t SourceWalk::sources_of(const std::filesystem::path& canonical,
                                   const std::filesystem::path& name) {
    if (const auto known = counts_.find(canonical); known != counts_.end())
        return known->second;
    if (!open_.insert(canonical).second)
        refuse(name, "a VRT that is made of itself", "make it anew (gdalbuildvrt)");
    if (static_cast<int>(open_.size()) > deepest_vrt)
        refuse(name,
               fmt::format("VRTs more than {} deep in one another", deepest_vrt),
               "write the heights into one raster (gdal_translate)");
    const std::optional<std::string> text = whole_text(canonical);
    const CPLXMLTreeCloser tree(text ? CPLParseXMLString(text->c_str()) : nullptr);
    if (!tree)
        refuse(name,
               text ? "broken XML" : "a VRT that cannot be read or is larger than 64 MB",
               "make it anew (gdalbuildvrt)");
    VrtContent content;
    collect(tree.get(), canonical.parent_path(), content);
    if (content.other)
        refuse(name,
               "the kind " + one_line(*content.other),
               "write the heights into a raster of their own (gdal_translate)");
    std::size_t count = 1;
    for (const std::filesystem::path& source : content.sources) {
        count += check_source(source);
        if (count > most_sources)
            refuse(name,
                   fmt::format("more than {} sources", most_sources),
                   "leave out what lies off the route");
    }
    open_.erase(canonical);
    counts_.emplace(canonical, count);
    return count;
}

std::size_t SourceWalk::check_source(const std::filesystem::path& source) {
    std::error_code error;
    const std::filesystem::path canonical = std::filesystem::canonical(source, error);
    if (error)
        refuse(source, "no such file", "copy it there, or make the VRT anew (gdalbuildvrt)");
    if (const auto known = counts_.find(canonical); known != counts_.end())
        return known->second;
    if (!std::filesystem::is_regular_file(canonical, error))
        refuse(source, "a folder, device or pipe", "make the VRT anew (gdalbuildvrt)");
    if (!is_plain_file_within(canonical, folders_))
        refuse(source,
               "a file in another folder",
               "copy it there and make the VRT anew, or list the raster itself");
    const std::vector<const char*> formats = raster_formats();
    GDALDriverH format =
        GDALIdentifyDriverEx(canonical.c_str(), GDAL_OF_RASTER, formats.data(), nullptr);
    if (format == nullptr)
        refuse(source,
               "a file of an unknown kind",
               "turn it into GeoTIFF (gdal_translate) and make the VRT anew");
    const bool is_vrt = std::string_view(GDALGetDescription(format)) == "VRT";
    const std::size_t count = is_vrt ? sources_of(canonical, source) : 1;
    counts_.emplace(canonical, count);
    return count;
}

} // namespace

bool is_virtual_raster(std::string_view first_bytes) {
    return first_bytes.find("<VRTDataset") != std::string_view::npos;
}

void require_plain_sources(const std::filesystem::path& file, const Folders& folders) {
    SourceWalk(file, folders).start();
}

} // namespace tumpline::geo
