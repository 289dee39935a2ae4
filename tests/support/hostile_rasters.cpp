#include "tests/support/hostile_rasters.h"

#include <fmt/format.h>
#include <sys/stat.h>

#include <stdexcept>

namespace tumpline::test {

std::string vrt_of(const std::string& source) {
    return fmt::format(R"(<VRTDataset rasterXSize="50" rasterYSize="40"><SRS>EPSG:4326</SRS>
<GeoTransform>12.0, 0.001, 0.0, 61.0, 0.0, -0.001</GeoTransform>
<VRTRasterBand dataType="Float64" band="1"><NoDataValue>-32768</NoDataValue><SimpleSource>
<SourceFilename relativeToVRT="{}">{}</SourceFilename><SourceBand>1</SourceBand>
<SrcRect xOff="0" yOff="0" xSize="50" ySize="40"/><DstRect xOff="0" yOff="0" xSize="50" ySize="40"/>
</SimpleSource></VRTRasterBand></VRTDataset>)",
                       source.find(':') == std::string::npos && !source.starts_with('/') ? 1 : 0,
                       source);
}

std::string raw_vrt_of(const std::string& source) {
    return fmt::format(R"(<VRTDataset rasterXSize="50" rasterYSize="40"><SRS>EPSG:4326</SRS>
<GeoTransform>12.0, 0.001, 0.0, 61.0, 0.0, -0.001</GeoTransform>
<VRTRasterBand dataType="Byte" band="1" subClass="VRTRawRasterBand">
<SourceFilename relativetoVRT="0">{}</SourceFilename><ImageOffset>0</ImageOffset>
<PixelOffset>1</PixelOffset><LineOffset>50</LineOffset></VRTRasterBand></VRTDataset>)",
                       source);
}

std::string kml_with_link(const std::string& address) {
    constexpr const char* box = "<Region><LatLonAltBox><north>61</north><south>60</south>"
                                "<east>13</east><west>12</west></LatLonAltBox></Region>";
    return fmt::format(R"(<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2">
<Document><name>tiles</name>{}<NetworkLink><name>0</name>{}<Link><href>{}</href>
<viewRefreshMode>onRegion</viewRefreshMode></Link></NetworkLink></Document></kml>)",
                       box,
                       box,
                       address);
}

std::string mrf_with_files(const std::string& data, const std::string& index) {
    return fmt::format(R"(<MRF_META><Raster><Size x="512" y="512" c="1"/>
<Compression>NONE</Compression><DataType>Int16</DataType><PageSize x="512" y="512" c="1"/>
<DataFile>{}</DataFile><IndexFile>{}</IndexFile></Raster>
<CachedSource><Source>good.tif</Source></CachedSource>
<GeoTags><BoundingBox minx="12" miny="60.96" maxx="12.05" maxy="61"/>
<Projection>EPSG:4326</Projection></GeoTags></MRF_META>)",
                       data,
                       index);
}

std::string geojson_in(const std::string& crs) {
    return fmt::format(R"({{"type": "FeatureCollection",
"crs": {{"type": "name", "properties": {{"name": "{}"}}}}, "features": [{{"type": "Feature",
"properties": {{}}, "geometry": {{"type": "LineString",
"coordinates": [[12.01, 60.99], [12.02, 60.99]]}}}}]}})",
                       crs);
}

std::filesystem::path make_pipe(const std::filesystem::path& path) {
    if (::mkfifo(path.c_str(), S_IRUSR | S_IWUSR) != 0)
        throw std::runtime_error("cannot make the pipe " + path.string());
    return path;
}

} // namespace tumpline::test
