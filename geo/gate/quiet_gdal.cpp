#include "geo/gate/quiet_gdal.h"

#include <cpl_error.h>

#include <algorithm>
#include <cstddef>

namespace tumpline::geo {

namespace {

void keep_first_fault(CPLErr severity, CPLErrorNum /*number*/, const char* message) {
    constexpr std::size_t longest = 300; // hostile files choose what stands here
    auto* fault = static_cast<std::string*>(CPLGetErrorHandlerUserData());
    if (severity < CE_Failure || fault == nullptr || !fault->empty())
        return;
    fault->assign(message);
    if (fault->size() > longest)
        fault->resize(longest);
    std::replace_if(
        fault->begin(), fault->end(), [](char c) { return c == '\n' || c == '\r'; }, ' ');
}

} // namespace

QuietGdal::QuietGdal() {
    CPLPushErrorHandlerEx(keep_first_fault, &fault_);
}

QuietGdal::~QuietGdal() {
    CPLPopErrorHandler();
    CPLErrorReset();
}

} // namespace tumpline::geo
