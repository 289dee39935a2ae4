#include "cli/drawing/map_letters.h"

#include "cli/drawing/load_band_graticule.h"
#include "cli/drawing/map_foot.h"
#include "cli/drawing/map_labels.h"
#include "cli/drawing/utm_grid.h"
#include "cli/words/text_width.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>

namespace tumpline::cli {

namespace {

/// Nearer to each other two figures of heights say nothing new, pixels.
constexpr double heights_apart = 90.0;

/// Names of the ground as they stand on one drawing of it.
class GroundLetters {
  public:
    GroundLetters(const LetteredMap& map, Labels& labels, double text)
        : map_(map), labels_(labels), text_(text) {}

    [[nodiscard]] std::string of(const GroundPicture& picture);

  private:
    [[nodiscard]] Run here(Run run) const;
    [[nodiscard]] std::string written(const GroundName& name, const Run& run);

    const LetteredMap& map_;
    Labels& labels_;
    double text_;
    std::vector<DrawnPoint> heights_; ///< where figures of them stand
};

/// From the pixels of the ground's own drawing.
Run GroundLetters::here(Run run) const {
    const double scale = map_.frame.pixels_per_m / map_.ground.pixels_per_m;
    run.middle.x = map_.frame.width / 2.0 + (run.middle.x - map_.ground.width / 2.0) * scale;
    run.middle.y = map_.frame.height / 2.0 + (run.middle.y - map_.ground.height / 2.0) * scale;
    return run;
}

std::string GroundLetters::written(const GroundName& name, const Run& run) {
    const std::string words = fitted(one_line(name.text), 24);
    return name.beside ? labels_.once_beside(run.middle, words, text_, name.kind)
                       : labels_.upon(run, words, text_, name.kind);
}

std::string GroundLetters::of(const GroundPicture& picture) {
    std::string names;
    for (const GroundName& name : picture.names) {
        const bool height = std::string_view(name.kind) == "height";
        for (const Run& given : name.tries) {
            const Run run = here(given);
            const bool crowded =
                height && std::ranges::any_of(heights_, [&](const DrawnPoint& other) {
                    return std::hypot(other.x - run.middle.x, other.y - run.middle.y) <
                           heights_apart;
                });
            if (crowded)
                continue;
            const std::string text = written(name, run);
            names += text;
            if (text.empty() && !name.beside)
                continue;
            if (height)
                heights_.push_back(run.middle);
            break;
        }
    }
    return names;
}

} // namespace

MapLetters map_letters(LetteredMap map, const Drawing& drawing, const Figures& shown) {
    map.marks = one_per_place(std::move(map.marks), drawing.text);
    Labels labels(map.frame, map.line);
    take_symbols(map.marks, labels, drawing.text);
    MapLetters letters{graticule(map.projection, map.frame, drawing.text, labels), {}};
    if (map.day != nullptr)
        letters.names = utm_grid(map.projection, map.frame, drawing.text, labels);
    letters.names += places_markup(map.marks, labels, drawing);
    if (map.day != nullptr)
        letters.names +=
            kilometre_marks(map.line, {map.day->from_m, map.day->to_m}, labels, drawing, shown);
    GroundLetters ground(map, labels, drawing.text);
    std::string names;
    for (const GroundPicture* picture : map.pictures)
        names += ground.of(*picture);
    if (!names.empty())
        letters.names += R"(<g class="names ground-names">)" + names + "</g>";
    return letters;
}

} // namespace tumpline::cli
