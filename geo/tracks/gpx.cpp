#include "geo/tracks/gpx.h"

#include "geo/input_error.h"
#include "geo/one_line.h"
#include "geo/tracks/gpx_element.h"
#include "geo/tracks/track_repair.h"
#include "geo/tracks/track_text.h"

#include <expat.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <exception>
#include <fstream>
#include <memory>
#include <new>
#include <optional>
#include <utility>

namespace tumpline::geo {

namespace {

constexpr std::size_t deepest = 64;        // GPX itself needs 5; extensions some more
constexpr std::size_t longest_text = 4096; // of one value; the rest is passed over
constexpr std::size_t longest_shown = 40;  // of a value in a message
constexpr std::int64_t longest_tag = 1 << 20;
constexpr int chunk_size = 1 << 16;

/// Latitude and longitude as they stand in a tag.
struct Coordinates {
    std::string_view lat;
    std::string_view lon;
};

Coordinates coordinates(const char** attributes) {
    Coordinates found;
    for (; *attributes != nullptr; attributes += 2) {
        const std::string_view name = attributes[0];
        if (name == "lat")
            found.lat = attributes[1];
        else if (name == "lon")
            found.lon = attributes[1];
    }
    return found;
}

std::optional<Position> position(const Coordinates& text) {
    const std::optional<double> lat_deg = to_number(text.lat);
    const std::optional<double> lon_deg = to_number(text.lon);
    if (!lat_deg || !lon_deg)
        return std::nullopt;
    const Position at{.lat_deg = *lat_deg, .lon_deg = *lon_deg};
    return is_valid(at) ? std::optional(at) : std::nullopt;
}

/// Collects a TrackFile from the parser's events. The parser is written in C: what goes wrong
/// inside an event is kept and the parser stopped; `feed` throws it.
class GpxReader {
  public:
    explicit GpxReader(std::string name) : parser_(XML_ParserCreate(nullptr)) {
        if (!parser_)
            throw std::bad_alloc();
        result_.file = std::move(name);
        XML_SetUserData(parser_.get(), this);
        XML_SetElementHandler(parser_.get(), on_start, on_end);
        XML_SetCharacterDataHandler(parser_.get(), on_text);
        XML_SetEntityDeclHandler(parser_.get(), on_entity);
    }

    /// Room for up to chunk_size bytes, to be filled and then fed.
    [[nodiscard]] char* room() {
        void* buffer = XML_GetBuffer(parser_.get(), chunk_size);
        if (buffer == nullptr)
            throw std::bad_alloc();
        return static_cast<char*>(buffer);
    }

    void feed(int size, bool last) {
        const XML_Status status = XML_ParseBuffer(parser_.get(), size, last ? 1 : 0);
        if (failure_)
            std::rethrow_exception(failure_);
        if (status != XML_STATUS_OK)
            throw InputError({syntax_problem()});
        fed_ += size;
        if (fed_ - XML_GetCurrentByteIndex(parser_.get()) > longest_tag + 2LL * chunk_size)
            fail({.found = "a tag of more than a megabyte",
                  .expected = "GPX",
                  .advice = "export the track again"});
    }

    [[nodiscard]] TrackFile take() {
        finish(result_, first_invalid_);
        return std::move(result_);
    }

  private:
    struct Free {
        void operator()(XML_Parser parser) const { XML_ParserFree(parser); }
    };

    /// What is wrong; file and line are added.
    struct Fault {
        std::string found;
        std::string expected;
        std::string advice;
    };

    [[nodiscard]] Problem problem(Fault fault) const {
        return {.file = result_.file.string(),
                .place = fmt::format("line {}", XML_GetCurrentLineNumber(parser_.get())),
                .found = std::move(fault.found),
                .expected = std::move(fault.expected),
                .advice = std::move(fault.advice)};
    }

    [[noreturn]] void fail(Fault fault) const { throw InputError({problem(std::move(fault))}); }

    [[nodiscard]] Problem syntax_problem() const;

    /// Runs `event` and keeps what it throws.
    template <class Event> static void guarded(void* self, const Event& event) noexcept {
        auto& reader = *static_cast<GpxReader*>(self);
        if (reader.failure_)
            return;
        try {
            event(reader);
        } catch (...) {
            reader.failure_ = std::current_exception();
            XML_StopParser(reader.parser_.get(), XML_FALSE);
        }
    }

    static void on_start(void* self, const char* name, const char** attributes) {
        guarded(self, [&](GpxReader& reader) { reader.start(name, attributes); });
    }

    static void on_end(void* self, const char* /*name*/) {
        guarded(self, [](GpxReader& reader) { reader.end(); });
    }

    static void on_text(void* self, const char* text, int size) {
        guarded(self, [&](GpxReader& reader) {
            if (reader.depth_ > 0 && has_text(reader.open_[reader.depth_ - 1]) &&
                reader.text_.size() < longest_text)
                reader.text_.append(text, static_cast<std::size_t>(size));
        });
    }

    static void on_entity(void* self,
                          const char* name,
                          int /*is_parameter*/,
                          const char* /*value*/,
                          int /*size*/,
                          const char* /*base*/,
                          const char* /*system*/,
                          const char* /*public_name*/,
                          const char* /*notation*/) {
        guarded(self, [&](const GpxReader& reader) {
            reader.fail({.found = fmt::format("a declaration of the entity {}", one_line(name)),
                         .expected = "GPX without entities of its own",
                         .advice = "export the track again, or remove the declaration"});
        });
    }

    void start(std::string_view name, const char** attributes);
    void start_root(const GpxTag& tag);
    void open(GpxNode node, const char** attributes);
    void open_point(const Coordinates& text);
    void open_track(TrackKind kind);
    void end();
    void end_text(GpxNode node);
    void end_point();
    void end_waypoint();
    void count_named();

    std::unique_ptr<XML_ParserStruct, Free> parser_;
    TrackFile result_;
    std::array<GpxNode, deepest> open_{};
    std::size_t depth_ = 0;
    std::string prefix_; ///< that of the root: elements with another one are foreign
    std::string text_;
    TrackPoint point_{};    ///< being read
    bool point_ok_ = false; ///< whether it has a usable place
    Waypoint waypoint_;
    std::size_t points_ = 0;
    std::optional<Problem> first_invalid_;
    std::exception_ptr failure_;
    std::int64_t fed_ = 0;
};

Problem GpxReader::syntax_problem() const {
    const XML_Error error = XML_GetErrorCode(parser_.get());
    switch (error) {
    case XML_ERROR_NO_MEMORY:
        throw std::bad_alloc();
    case XML_ERROR_NO_ELEMENTS:
    case XML_ERROR_UNCLOSED_TOKEN:
    case XML_ERROR_PARTIAL_CHAR:
    case XML_ERROR_UNCLOSED_CDATA_SECTION:
        return problem({.found = "the end of the file before the end of the track",
                        .expected = "closing tags up to </gpx>",
                        .advice = "the file was cut short: export or copy it again"});
    case XML_ERROR_UNKNOWN_ENCODING:
    case XML_ERROR_INCORRECT_ENCODING:
        return problem({.found = "an encoding that cannot be read",
                        .expected = "UTF-8, UTF-16, ISO-8859-1 or US-ASCII",
                        .advice = "save the file as UTF-8"});
    case XML_ERROR_SYNTAX:
    case XML_ERROR_INVALID_TOKEN:
        return problem({.found = depth_ == 0 ? "something that is no XML"
                                             : "characters that may not stand there",
                        .expected = "GPX in the encoding that its first line declares",
                        .advice = "if names hold accented letters, save the file as UTF-8"});
    case XML_ERROR_TAG_MISMATCH:
        return problem({.found = "a closing tag that does not match the open one",
                        .expected = "tags closed in the order in which they were opened",
                        .advice = "export the track again"});
    case XML_ERROR_JUNK_AFTER_DOC_ELEMENT:
        return problem({.found = "more text after the end of the document",
                        .expected = "the end of the file after </gpx>",
                        .advice = "if several files were joined, give them one by one"});
    default:
        return problem({.found = fmt::format("broken XML ({})", XML_ErrorString(error)),
                        .expected = "GPX",
                        .advice = "export the track again"});
    }
}

void GpxReader::start(std::string_view name, const char** attributes) {
    if (depth_ == deepest)
        fail({.found = fmt::format("elements nested more than {} deep", deepest),
              .expected = "GPX",
              .advice = "export the track again"});
    const GpxTag tag = gpx_tag(name);
    if (depth_ == 0)
        return start_root(tag);
    const GpxNode parent = open_[depth_ - 1];
    const GpxNode node = tag.prefix == prefix_ ? gpx_child(parent, tag.local) : GpxNode::ignored;
    open_[depth_++] = node;
    if (node != GpxNode::ignored)
        open(node, attributes);
}

void GpxReader::start_root(const GpxTag& tag) {
    if (tag.local != "gpx") {
        const bool page = tag.local == "html" || tag.local == "HTML";
        fail({.found = page ? std::string("a web page")
                            : fmt::format("a document <{}>", one_line(tag.local)),
              .expected = "GPX, whose first element is <gpx>",
              .advice = page ? "download the track itself, not the page that shows it" : ""});
    }
    prefix_ = tag.prefix;
    open_[depth_++] = GpxNode::document;
}

void GpxReader::open(GpxNode node, const char** attributes) {
    switch (node) {
    case GpxNode::track:
        return open_track(TrackKind::track);
    case GpxNode::route:
        open_track(TrackKind::route);
        result_.tracks.back().parts.emplace_back();
        return;
    case GpxNode::segment:
        // empty segments leave nothing behind
        if (auto& parts = result_.tracks.back().parts; parts.empty() || !parts.back().empty())
            parts.emplace_back();
        return;
    case GpxNode::point:
    case GpxNode::waypoint:
        waypoint_ = {};
        return open_point(coordinates(attributes));
    case GpxNode::name:
    case GpxNode::type:
    case GpxNode::height:
    case GpxNode::time:
        text_.clear();
        return;
    case GpxNode::ignored:
    case GpxNode::document:
        return;
    }
}

void GpxReader::count_named() {
    if (result_.tracks.size() + result_.waypoints.size() >= most_named)
        fail({.found = fmt::format("more than {} tracks and waypoints", most_named),
              .expected = "fewer",
              .advice = "keep those of the trip"});
}

void GpxReader::open_track(TrackKind kind) {
    count_named();
    result_.tracks.emplace_back();
    result_.tracks.back().kind = kind;
}

void GpxReader::open_point(const Coordinates& text) {
    const std::optional<Position> at = position(text);
    point_ok_ = at.has_value();
    point_ = {.at = at.value_or(Position{}), .height_m = {}, .time = {}};
    if (!point_ok_ && !first_invalid_) {
        const bool comma = text.lat.find(',') != std::string_view::npos;
        first_invalid_ = problem(
            {.found = fmt::format("lat \"{}\" lon \"{}\"",
                                  one_line(text.lat.substr(0, longest_shown)),
                                  one_line(text.lon.substr(0, longest_shown))),
             .expected = "decimal degrees, lat within -90 and 90, lon within -180 and 180",
             .advice = comma ? "write a decimal point" : "check how the file was exported"});
    }
}

void GpxReader::end() {
    const GpxNode node = open_[--depth_];
    if (has_text(node))
        end_text(node);
    else if (node == GpxNode::point)
        end_point();
    else if (node == GpxNode::waypoint)
        end_waypoint();
}

void GpxReader::end_text(GpxNode node) {
    const GpxNode parent = open_[depth_ - 1];
    if (node == GpxNode::height) {
        point_.height_m = to_number(text_);
    } else if (node == GpxNode::time) {
        point_.time = to_instant(text_);
        if (!point_.time)
            ++result_.tracks.back().repairs.invalid_times;
    } else {
        std::string& name =
            parent == GpxNode::waypoint
                ? (node == GpxNode::name ? waypoint_.name : waypoint_.type)
                : (node == GpxNode::name ? result_.tracks.back().name : result_.tracks.back().type);
        name = one_line(text_);
    }
}

void GpxReader::end_point() {
    Track& track = result_.tracks.back();
    if (!point_ok_) {
        ++track.repairs.invalid_points;
        return;
    }
    if (++points_ > most_points)
        fail({.found = fmt::format("more than {} points", most_points),
              .expected = "fewer",
              .advice = "split the file, or thin it out"});
    if (point_.height_m)
        result_.heights = HeightDatum::geoid;
    track.parts.back().push_back(point_);
}

void GpxReader::end_waypoint() {
    if (!point_ok_) {
        if (result_.left_out.size() < 100)
            result_.left_out.push_back(
                fmt::format("waypoint {} without a usable place", waypoint_.name));
        return;
    }
    count_named();
    waypoint_.at = point_.at;
    waypoint_.height_m = point_.height_m;
    result_.waypoints.push_back(std::move(waypoint_));
}

} // namespace

TrackFile read_gpx(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    GpxReader reader(file.string());
    bool last = false;
    while (!last) {
        in.read(reader.room(), chunk_size);
        if (in.bad())
            throw InputError({{.file = file.string(),
                               .place = "",
                               .found = "an error while reading",
                               .expected = "a file that can be read to its end",
                               .advice = ""}});
        last = !in;
        reader.feed(static_cast<int>(in.gcount()), last);
    }
    return reader.take();
}

TrackFile read_gpx_text(std::string_view text, const std::string& name) {
    GpxReader reader(name);
    bool last = false;
    while (!last) {
        const std::size_t size = std::min<std::size_t>(text.size(), chunk_size);
        std::copy_n(text.data(), size, reader.room());
        text.remove_prefix(size);
        last = text.empty();
        reader.feed(static_cast<int>(size), last);
    }
    return reader.take();
}

} // namespace tumpline::geo
