#pragma once

#include <memory>

struct pj_ctx; // PROJ's PJ_CONTEXT

namespace tumpline::geo {

struct DestroyProjContext {
    void operator()(pj_ctx* context) const;
};

using ProjContext = std::unique_ptr<pj_ctx, DestroyProjContext>;

/// A context of PROJ that reads regular files in PROJ's own folders and nothing else, fetches
/// nothing and prints nothing. The name of a coordinate system may well be the path of a file.
[[nodiscard]] ProjContext make_proj_context();

/// Holds GDAL's own contexts of PROJ, one for each thread, to the same; to be called in every
/// thread before GDAL is handed a file. Answers whether PROJ finds its database, without which no
/// coordinate system has a meaning.
bool close_gdals_proj();

} // namespace tumpline::geo
