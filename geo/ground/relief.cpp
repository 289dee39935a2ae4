#include "geo/ground/relief.h"

#include "geo/gate/gdal_library.h"
#include "geo/gate/open_dataset.h"
#include "geo/gate/quiet_gdal.h"

#include <fmt/format.h>
#include <gdal_frmts.h>
#include <gdal_priv.h>
#include <gdal_utils.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <memory>
#include <mutex>
#include <stdexcept>

namespace tumpline::geo {

namespace {

/// Formats that only this file uses; none of them is ever opened from a name.
GDALDriver& driver(const char* name) {
    static std::once_flag registered;
    std::call_once(registered, [] {
        (void)prepare_gdal();
        GDALRegister_MEM();
        GDALRegister_PNG();
    });
    GDALDriver* found = GetGDALDriverManager()->GetDriverByName(name);
    if (found == nullptr)
        throw std::runtime_error(fmt::format("GDAL has no {} driver", name));
    return *found;
}

Dataset in_memory(const GridFrame& frame, GDALDataType type) {
    Dataset dataset(driver("MEM").Create("", frame.columns, frame.rows, 1, type, nullptr));
    if (!dataset)
        throw std::runtime_error("no memory for a relief");
    std::array<double, 6> place{
        frame.north_west.east_m, frame.cell_m, 0.0, frame.north_west.north_m, 0.0, -frame.cell_m};
    dataset->SetGeoTransform(place.data());
    return dataset;
}

template <class Cell>
bool transfer(GDALDataset& dataset, GDALRWFlag way, std::vector<Cell>& cells, GDALDataType type) {
    const int columns = dataset.GetRasterXSize();
    const int rows = dataset.GetRasterYSize();
    return dataset.GetRasterBand(1)->RasterIO(
               way, 0, 0, columns, rows, cells.data(), columns, rows, type, 0, 0) == CE_None;
}

/// Gives back GDAL's options of its hillshade.
struct FreeOptions {
    void operator()(GDALDEMProcessingOptions* options) const {
        GDALDEMProcessingOptionsFree(options);
    }
};

} // namespace

std::vector<std::uint8_t> hillshade(const HeightGrid& grid, const Light& light) {
    const GridFrame& frame = grid.frame;
    std::vector<std::uint8_t> shades(grid.heights_m.size(), 0);
    if (frame.columns < 3 || frame.rows < 3)
        return shades;
    std::vector<float> heights = grid.heights_m;
    std::ranges::replace_if(
        heights,
        [](float height) { return std::isnan(height); },
        static_cast<float>(void_height_m));
    const Dataset source = in_memory(frame, GDT_Float32);
    const QuietGdal quiet;
    source->GetRasterBand(1)->SetNoDataValue(void_height_m);
    transfer(*source, GF_Write, heights, GDT_Float32);
    const std::string azimuth = fmt::format("{}", light.azimuth);
    std::vector<const char*> words{"-of", "MEM", "-compute_edges"};
    if (light.many)
        words.push_back("-multidirectional");
    else
        words.insert(words.end(), {"-az", azimuth.c_str()});
    words.push_back(nullptr);
    const std::unique_ptr<GDALDEMProcessingOptions, FreeOptions> options(
        GDALDEMProcessingOptionsNew(const_cast<char**>(words.data()), nullptr));
    int wrong = 0;
    const Dataset shaded(GDALDataset::FromHandle(GDALDEMProcessing(
        "", GDALDataset::ToHandle(source.get()), "hillshade", nullptr, options.get(), &wrong)));
    if (!shaded || wrong != 0 || !transfer(*shaded, GF_Read, shades, GDT_Byte))
        throw std::runtime_error(fmt::format("the relief cannot be shaded: {}", quiet.fault()));
    return shades;
}

std::string relief_png(const HeightGrid& grid) {
    if (grid.empty())
        return {};
    std::vector<std::uint8_t> tones = hillshade(grid, {});
    // What the library gives level ground in its four lights.
    const HeightGrid plane{{{0.0, 0.0}, 1.0, 3, 3}, std::vector<float>(9, 100.0F)};
    const double level = hillshade(plane, {})[4];
    constexpr double most_ink = 0.55;
    for (std::uint8_t& tone : tones) {
        const double shade = tone == 0 ? level : std::min(level, static_cast<double>(tone));
        const double ink = most_ink * (1.0 - shade / level);
        tone = static_cast<std::uint8_t>(std::lround(15.0 * (1.0 - ink)));
    }
    if (std::ranges::all_of(tones, [](std::uint8_t tone) { return tone == 15; }))
        return {};
    Dataset picture = in_memory(grid.frame, GDT_Byte);
    const QuietGdal quiet;
    transfer(*picture, GF_Write, tones, GDT_Byte);
    const std::array<double, 6> unplaced{0.0, 1.0, 0.0, 0.0, 0.0, 1.0};
    picture->SetGeoTransform(const_cast<double*>(unplaced.data()));
    const std::array<const char*, 3> options{"NBITS=4", "ZLEVEL=9", nullptr};
    const std::string name = fmt::format("/vsimem/tumpline_relief_{}.png", fmt::ptr(&tones));
    Dataset written(driver("PNG").CreateCopy(
        name.c_str(), picture.get(), FALSE, const_cast<char**>(options.data()), nullptr, nullptr));
    written.reset();
    vsi_l_offset size = 0;
    const std::unique_ptr<GByte, decltype(&VSIFree)> bytes(
        VSIGetMemFileBuffer(name.c_str(), &size, TRUE), VSIFree);
    if (!bytes)
        throw std::runtime_error(fmt::format("the relief cannot be written: {}", quiet.fault()));
    return {reinterpret_cast<const char*>(bytes.get()), static_cast<std::size_t>(size)};
}

} // namespace tumpline::geo
