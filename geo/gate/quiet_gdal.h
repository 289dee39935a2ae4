#pragma once

#include <string>

namespace tumpline::geo {

/// While one of these lives, GDAL prints nothing in this thread; what it had to say is kept.
class QuietGdal {
  public:
    QuietGdal();
    ~QuietGdal();
    QuietGdal(const QuietGdal&) = delete;
    QuietGdal& operator=(const QuietGdal&) = delete;
    QuietGdal(QuietGdal&&) = delete;
    QuietGdal& operator=(QuietGdal&&) = delete;

    /// The first fault that GDAL reported, on one line; empty if there was none.
    [[nodiscard]] const std::string& fault() const noexcept { return fault_; }

  private:
    std::string fault_;
};

} // namespace tumpline::geo
