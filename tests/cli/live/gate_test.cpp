#include "cli/live/gate.h"

#include <gtest/gtest.h>

#include <set>
#include <string>

namespace tumpline::cli {

namespace {

const Gate open_gate{.key = "00112233445566778899aabbccddeeff", .port = 4321};

/// A request that may pass.
Asked fair() {
    return {.method = "POST",
            .path = "/api/plan",
            .host = "127.0.0.1:4321",
            .origin = "http://127.0.0.1:4321",
            .authorization = "Bearer " + open_gate.key,
            .content_encoding = {},
            .transfer_encoding = {},
            .content_length = "1048576"};
}

int status_of(const Asked& asked) {
    const std::optional<Refusal> refusal = refused(asked, open_gate);
    return refusal ? refusal->status : 200;
}

TEST(LiveGate, LetsThePageItselfIn) {
    EXPECT_EQ(status_of(fair()), 200);
    Asked named = fair();
    named.host = "localhost:4321";
    named.origin = "http://localhost:4321";
    EXPECT_EQ(status_of(named), 200);
    Asked without_origin = fair();
    without_origin.origin.clear();
    EXPECT_EQ(status_of(without_origin), 200);
}

TEST(LiveGate, AnswersUnderItsOwnAddressOnly) {
    for (const char* host :
         {"", "127.0.0.1", "127.0.0.1:80", "rebound.example:4321", "[::1]:4321"}) {
        Asked asked = fair();
        asked.host = host;
        EXPECT_EQ(status_of(asked), 403) << host;
    }
}

TEST(LiveGate, RefusesOtherPages) {
    for (const char* origin : {"null",
                               "http://page.example",
                               "https://127.0.0.1:4321",
                               "http://127.0.0.1:4322",
                               "http://localhost:4321"}) {
        Asked asked = fair();
        asked.origin = origin;
        EXPECT_EQ(status_of(asked), 403) << origin;
    }
}

TEST(LiveGate, WantsTheWholeKeyForTheTripAndNoneForThePage) {
    for (const std::string& given : {std::string(),
                                     std::string("Bearer "),
                                     open_gate.key,
                                     "Bearer " + open_gate.key.substr(1),
                                     "Bearer " + open_gate.key + "0"}) {
        Asked asked = fair();
        asked.authorization = given;
        EXPECT_EQ(status_of(asked), 401) << given;
        asked.path = "/live.js";
        EXPECT_EQ(status_of(asked), 200);
    }
}

TEST(LiveGate, RefusesBodiesThatAreTooLongPackedOrWithoutALength) {
    Asked longer = fair();
    longer.content_length = "1048577";
    EXPECT_EQ(status_of(longer), 413);
    longer.content_length = "-1";
    EXPECT_EQ(status_of(longer), 413);
    Asked chunked = fair();
    chunked.transfer_encoding = "chunked";
    EXPECT_EQ(status_of(chunked), 411);
    Asked packed = fair();
    packed.content_encoding = "gzip";
    EXPECT_EQ(status_of(packed), 415);
}

TEST(LiveGate, KeysAreOf128BitsAndNeverTheSame) {
    std::set<std::string> keys;
    for (int i = 0; i < 200; ++i)
        keys.insert(new_key());
    EXPECT_EQ(keys.size(), 200U);
    EXPECT_EQ(keys.begin()->size(), 32U);
}

TEST(LiveGate, ReadsNoBodyOfUnknownLengthOrOfAnotherMethod) {
    Asked endless = fair();
    endless.content_length.clear();
    EXPECT_EQ(status_of(endless), 411);
    Asked question = endless;
    question.method = "GET";
    EXPECT_EQ(status_of(question), 200);
    for (const char* method : {"PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "BREW", ""}) {
        Asked asked = fair();
        asked.method = method;
        EXPECT_EQ(status_of(asked), 405) << method;
    }
}

} // namespace

} // namespace tumpline::cli
