#include "geo/ground/raster.h"

#include "geo/gate/gdal_fault.h"
#include "geo/gate/quiet_gdal.h"
#include "geo/ground/geoid.h"
#include "geo/input_error.h"
#include "geo/lines/geodesic.h"

#include <fmt/format.h>
#include <gdal_priv.h>
#include <ogr_spatialref.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <limits>
#include <string>
#include <string_view>
#include <utility>

namespace tumpline::geo {

namespace {

constexpr float void_cell = std::numeric_limits<float>::quiet_NaN();

/// Marks that stand in rasters which do not say so, and what no place on Earth has.
bool is_void(double height_m) {
    constexpr double deepest_m = -12'000.0;
    constexpr double highest_m = 9'000.0;
    return !(height_m >= deepest_m && height_m <= highest_m);
}

[[noreturn]] void refuse(Problem problem) {
    throw InputError({std::move(problem)});
}

double metres_per(std::string_view unit) {
    std::string name(unit);
    std::transform(name.begin(), name.end(), name.begin(), [](unsigned char letter) {
        return static_cast<char>(std::tolower(letter));
    });
    if (name == "us-ft" || name.find("us survey") != std::string::npos)
        return 1200.0 / 3937.0;
    if (name == "ft" || name == "feet" || name.find("foot") != std::string::npos)
        return 0.3048;
    return 1.0;
}

} // namespace

void Raster::Free::operator()(OGRCoordinateTransformation* transformation) const {
    OGRCoordinateTransformation::DestroyCT(transformation);
}

void Raster::Free::operator()(OGRSpatialReference* crs) const {
    crs->Release();
}

Raster::Raster(Raster&&) noexcept = default;
Raster& Raster::operator=(Raster&&) noexcept = default;
Raster::~Raster() = default;

Raster::Raster(const std::filesystem::path& file, const RasterFolder& among)
    : file_(file), number_(among.number), folders_(folders_around(file, among.trip_folder)),
      dataset_(open_raster(file, folders_)) {
    const Passage passage(folders_);
    const QuietGdal quiet;
    columns_ = dataset_->GetRasterXSize();
    rows_ = dataset_->GetRasterYSize();
    find_heights();
    find_crs();
    find_cell_size();
}

void Raster::find_heights() {
    if (dataset_->GetRasterCount() < 1 || columns_ < 1 || rows_ < 1)
        refuse({.file = file_.string(),
                .place = "band 1",
                .found = "none",
                .expected = "heights",
                .advice = {}});
    band_ = dataset_->GetRasterBand(1);
    if (GDALDataTypeIsComplex(band_->GetRasterDataType()) != 0 ||
        band_->GetColorInterpretation() == GCI_PaletteIndex)
        refuse({.file = file_.string(),
                .place = "band 1",
                .found = band_->GetColorInterpretation() == GCI_PaletteIndex ? "colours of a map"
                                                                             : "complex numbers",
                .expected = "heights",
                .advice = "give an elevation raster, not a picture of one"});
    int block_columns = 0;
    int block_rows = 0;
    band_->GetBlockSize(&block_columns, &block_rows);
    const double block_mb =
        1e-6 * block_columns * block_rows * GDALGetDataTypeSizeBytes(band_->GetRasterDataType());
    constexpr double largest_mb = 256.0;
    if (block_mb > largest_mb)
        refuse({.file = file_.string(),
                .place = "band 1",
                .found = fmt::format("blocks of {:.0f} MB", block_mb),
                .expected = fmt::format("blocks of {:.0f} MB at most", largest_mb),
                .advice = "write it anew in tiles (gdal_translate -co TILED=YES)"});
    has_mask_ = (band_->GetMaskFlags() & GMF_ALL_VALID) == 0;
    scale_ = band_->GetScale();
    offset_ = band_->GetOffset();
}

void Raster::find_crs() {
    const OGRSpatialReference* given = dataset_->GetSpatialRef();
    if (given == nullptr || given->IsEmpty() || given->IsLocal())
        refuse({.file = file_.string(),
                .place = "CRS",
                .found = "none that is tied to the Earth",
                .expected = "a coordinate reference system",
                .advice = "write it into the raster (gdal_translate -a_srs EPSG:... IN OUT.tif)"});
    if (dataset_->GetGeoTransform(from_cells_.data()) != CE_None ||
        GDALInvGeoTransform(from_cells_.data(), to_cells_.data()) == 0)
        refuse({.file = file_.string(),
                .place = "georeference",
                .found = "none",
                .expected = "corner and cell size (a geotransform)",
                .advice = "warp the raster to a grid (gdalwarp)"});
    find_vertical(*given);
    crs_.reset(given->Clone());
    crs_->StripVertical();
    if (crs_->GetAxesCount() == 3)
        crs_->DemoteTo2D(nullptr);
    crs_->SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
    if (crs_->IsGeographic() != 0)
        turn_columns_ = std::abs(to_cells_[1]) * 2.0 * M_PI / crs_->GetAngularUnits(nullptr);
    OGRSpatialReference wgs84;
    wgs84.importFromEPSG(4326);
    wgs84.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
    if (crs_->IsSame(&wgs84) != 0)
        return;
    to_crs_.reset(OGRCreateCoordinateTransformation(&wgs84, crs_.get()));
    from_crs_.reset(OGRCreateCoordinateTransformation(crs_.get(), &wgs84));
    if (!to_crs_ || !from_crs_)
        refuse({.file = file_.string(),
                .place = "CRS",
                .found = crs_->GetName() == nullptr ? "one without a name" : crs_->GetName(),
                .expected = "one that PROJ can transform from WGS 84",
                .advice = "bring the raster to WGS 84 (gdalwarp -t_srs EPSG:4326)"});
    to_crs_->SetEmitErrors(false);
    from_crs_->SetEmitErrors(false);
    find_bounds();
}

/// What heights count from, and their unit: the band's own word goes before the CRS's.
void Raster::find_vertical(const OGRSpatialReference& given) {
    const char* datum_kind = given.GetAttrValue("VERT_DATUM", 1);
    const char* datum_name = given.GetAttrValue("VERT_DATUM", 0);
    const bool compound = given.IsCompound() != 0;
    constexpr std::string_view ellipsoidal = "2002"; // the kind's number in WKT 1
    above_ellipsoid_ =
        (given.IsGeographic() != 0 && given.GetAxesCount() == 3 && !compound) ||
        (compound && ((datum_kind != nullptr && datum_kind == ellipsoidal) ||
                      (datum_name != nullptr &&
                       std::string_view(datum_name).find("llipsoid") != std::string_view::npos)));
    const std::string_view band_unit = band_->GetUnitType();
    const char* vertical_unit = compound ? given.GetAttrValue("VERT_CS|UNIT", 0) : nullptr;
    if (!band_unit.empty())
        metres_per_unit_ = metres_per(band_unit);
    else if (vertical_unit != nullptr)
        metres_per_unit_ = metres_per(vertical_unit);
}

/// The raster's extent in degrees, where its CRS is another.
void Raster::find_bounds() {
    const auto corner = [&](double column, double row) {
        return std::pair{from_cells_[0] + column * from_cells_[1] + row * from_cells_[2],
                         from_cells_[3] + column * from_cells_[4] + row * from_cells_[5]};
    };
    double low_x = std::numeric_limits<double>::max(), low_y = low_x;
    double high_x = std::numeric_limits<double>::lowest(), high_y = high_x;
    for (const auto& [x, y] :
         {corner(0, 0), corner(columns_, 0), corner(0, rows_), corner(columns_, rows_)}) {
        low_x = std::min(low_x, x), high_x = std::max(high_x, x);
        low_y = std::min(low_y, y), high_y = std::max(high_y, y);
    }
    constexpr int points_per_edge = 21;
    Bounds bounds{};
    if (from_crs_->TransformBounds(low_x,
                                   low_y,
                                   high_x,
                                   high_y,
                                   &bounds.west_deg,
                                   &bounds.south_deg,
                                   &bounds.east_deg,
                                   &bounds.north_deg,
                                   points_per_edge) != 0)
        bounds_ = bounds;
}

void Raster::find_cell_size() {
    const Place middle{.column = 0.5 * columns_, .row = 0.5 * rows_};
    const Position here = position_of(middle);
    const Position east = position_of({.column = middle.column + 1.0, .row = middle.row});
    const Position south = position_of({.column = middle.column, .row = middle.row + 1.0});
    if (!is_valid(here))
        refuse({.file = file_.string(),
                .place = "georeference",
                .found = "a raster beyond the Earth",
                .expected = "coordinates that agree with its CRS",
                .advice = {}});
    cell_m_ = is_valid(east) && is_valid(south)
                  ? std::sqrt(distance_m(here, east) * distance_m(here, south))
                  : 0.0;
}

Position Raster::position_of(const Place& place) const {
    double x = from_cells_[0] + place.column * from_cells_[1] + place.row * from_cells_[2];
    double y = from_cells_[3] + place.column * from_cells_[4] + place.row * from_cells_[5];
    if (from_crs_ && from_crs_->Transform(1, &x, &y) == 0)
        return {.lat_deg = HUGE_VAL, .lon_deg = HUGE_VAL};
    return {.lat_deg = y, .lon_deg = std::remainder(x, 360.0)};
}

std::optional<Raster::Place> Raster::place_of(const Position& position) const {
    if (bounds_) {
        const bool east_of_west = position.lon_deg >= bounds_->west_deg;
        const bool west_of_east = position.lon_deg <= bounds_->east_deg;
        const bool crosses = bounds_->west_deg > bounds_->east_deg;
        if (position.lat_deg < bounds_->south_deg || position.lat_deg > bounds_->north_deg ||
            (crosses ? !east_of_west && !west_of_east : !east_of_west || !west_of_east))
            return std::nullopt;
    }
    double x = position.lon_deg;
    double y = position.lat_deg;
    if (to_crs_ && (to_crs_->Transform(1, &x, &y) == 0 || !std::isfinite(x) || !std::isfinite(y)))
        return std::nullopt;
    Place place{.column = to_cells_[0] + x * to_cells_[1] + y * to_cells_[2],
                .row = to_cells_[3] + x * to_cells_[4] + y * to_cells_[5]};
    if (turn_columns_ > 0.0) { // rasters from 0 to 360 degrees, or across the antimeridian
        if (place.column < 0.0)
            place.column += turn_columns_;
        else if (place.column > columns_)
            place.column -= turn_columns_;
    }
    if (!(place.column >= 0.0 && place.column <= columns_ && place.row >= 0.0 &&
          place.row <= rows_))
        return std::nullopt;
    return place;
}

std::optional<double> Raster::at(const Position& position, TileCache& cache) {
    const std::optional<Place> place = place_of(position);
    if (!place)
        return std::nullopt;
    // From here on cell centres stand at whole numbers. Beyond the outer centres the slope between
    // the last two goes on for half a cell, so that rasters side by side meet.
    const double column = place->column - 0.5;
    const double row = place->row - 0.5;
    const bool around_the_world = turn_columns_ > 0.0 && std::abs(turn_columns_ - columns_) < 0.5;
    int west = static_cast<int>(std::floor(column));
    if (!around_the_world)
        west = std::clamp(west, 0, std::max(columns_ - 2, 0));
    const int north = std::clamp(static_cast<int>(std::floor(row)), 0, std::max(rows_ - 2, 0));
    const double x = columns_ > 1 ? column - west : 0.0;
    const double y = rows_ > 1 ? row - north : 0.0;

    std::array<float, 4> z{}; // north-west, north-east, south-west, south-east
    if (west >= 0 && west + 1 < columns_) {
        const TileCache::Cells& cells = tile({.column = west, .row = north}, cache);
        const auto first = static_cast<std::size_t>(north % TileCache::side) * TileCache::stride +
                           static_cast<std::size_t>(west % TileCache::side);
        const std::size_t below = rows_ > 1 ? first + TileCache::stride : first;
        z = {cells[first], cells[first + 1], cells[below], cells[below + 1]};
    } else {
        const int left = (west + columns_) % columns_;
        const int right = (west + 1) % columns_;
        const int south = std::min(north + 1, rows_ - 1);
        z = {cell({.column = left, .row = north}, cache),
             cell({.column = right, .row = north}, cache),
             cell({.column = left, .row = south}, cache),
             cell({.column = right, .row = south}, cache)};
    }

    double sum_m = 0.0;
    double weights = 0.0;
    const std::array<double, 4> bilinear{
        (1.0 - x) * (1.0 - y), x * (1.0 - y), (1.0 - x) * y, x * y};
    const bool whole = std::none_of(z.begin(), z.end(), [](float h) { return std::isnan(h); });
    for (std::size_t i = 0; i < z.size(); ++i) {
        if (std::isnan(z[i]))
            continue;
        const double away = std::hypot(x - (i % 2 == 0 ? 0.0 : 1.0), y - (i < 2 ? 0.0 : 1.0));
        constexpr double touching = 1e-6; // cells: a place on a centre takes that cell's height
        const double weight = whole ? bilinear[i] : 1.0 / std::max(away, touching);
        sum_m += weight * static_cast<double>(z[i]);
        weights += weight;
    }
    if (!whole && weights <= 0.0)
        return std::nullopt;
    const double height_m = sum_m / weights;
    if (!above_ellipsoid_)
        return height_m;
    return height_m - geoid_height_m(position).value_or(0.0);
}

float Raster::cell(const Cell& cell, TileCache& cache) {
    return tile(cell,
                cache)[static_cast<std::size_t>(cell.row % TileCache::side) * TileCache::stride +
                       static_cast<std::size_t>(cell.column % TileCache::side)];
}

const TileCache::Cells& Raster::tile(const Cell& first, TileCache& cache) {
    const TileCache::Key key{.raster = number_,
                             .column = first.column / TileCache::side,
                             .row = first.row / TileCache::side};
    if (const TileCache::Cells* cells = cache.find(key))
        return *cells;
    return *cache.put(
        key, read_tile({.column = key.column * TileCache::side, .row = key.row * TileCache::side}));
}

TileCache::Cells Raster::read_tile(const Cell& first) {
    constexpr int side = TileCache::side + 1;
    const int columns = std::min(side, columns_ - first.column);
    const int rows = std::min(side, rows_ - first.row);
    const auto count = static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows);
    std::vector<double> heights(count);
    std::vector<std::uint8_t> mask(has_mask_ ? count : 0);
    const Passage passage(folders_);
    const QuietGdal quiet;
    const auto read = [&](GDALRasterBand* band, void* into, GDALDataType type) {
        return band->RasterIO(GF_Read,
                              first.column,
                              first.row,
                              columns,
                              rows,
                              into,
                              columns,
                              rows,
                              type,
                              0,
                              0,
                              nullptr) == CE_None;
    };
    if (!read(band_, heights.data(), GDT_Float64) ||
        (has_mask_ && !read(band_->GetMaskBand(), mask.data(), GDT_Byte)))
        refuse({.file = file_.string(),
                .place = fmt::format("band 1, rows {} to {}, columns {} to {}",
                                     first.row + 1,
                                     first.row + rows,
                                     first.column + 1,
                                     first.column + columns),
                .found = quiet.fault().empty() ? "nothing that can be read"
                                               : fault_in_words(quiet.fault(), file_),
                .expected = "heights",
                .advice = "the file may be cut short; copy it anew"});

    constexpr double undeclared_void = -9999.0;
    TileCache::Cells cells(static_cast<std::size_t>(side) * static_cast<std::size_t>(side),
                           void_cell);
    for (std::size_t i = 0; i < count; ++i) {
        const std::size_t row = i / static_cast<std::size_t>(columns);
        const std::size_t column = i % static_cast<std::size_t>(columns);
        const double height_m = metres_per_unit_ * (offset_ + scale_ * heights[i]);
        if ((has_mask_ && mask[i] == 0) || heights[i] == undeclared_void || is_void(height_m))
            continue;
        cells[row * static_cast<std::size_t>(side) + column] = static_cast<float>(height_m);
    }
    return cells;
}

std::string Raster::describe() const {
    const bool corrected =
        above_ellipsoid_ && geoid_height_m({.lat_deg = 0.0, .lon_deg = 0.0}).has_value();
    const char* datum = "heights above the geoid";
    if (above_ellipsoid_)
        datum = corrected ? "heights above the ellipsoid, corrected to the geoid (EGM96)"
                          : "heights above the ellipsoid, not corrected: no geoid grid at hand";
    return fmt::format("{}: {} x {} cells of {:.3g} m, {}, {}",
                       file_.filename().string(),
                       columns_,
                       rows_,
                       cell_m_,
                       crs_->GetName() == nullptr ? "CRS without a name" : crs_->GetName(),
                       datum);
}

} // namespace tumpline::geo
