// SHA-256 against published examples: NIST, "Examples with Intermediate Values" for FIPS 180-4 (SHA256.pdf: "abc", and the
// 448-bit message), and the NIST CAVP short-message vectors (empty message). The values are from memory of these documents;
// coreutils' sha256sum gives the same.
#include "base/digest.h"

#include <gtest/gtest.h>

namespace retort {
namespace {

TEST(Digest, PublishedExamples) {
  struct Row {
    const char* name;
    std::string bytes;
    const char* hex;
  };
  const Row rows[] = {
      {"empty", "", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"},
      {"abc", "abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"},
      {"two blocks", "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq", "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"},
      {"a million a", std::string(1000000, 'a'), "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"},
  };
  for (const Row& row : rows) EXPECT_EQ(hex(sha256(row.bytes)), row.hex) << row.name;
}

TEST(Digest, Base64OfTheEmptyMessage) {
  EXPECT_EQ(base64(sha256("")), "47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=");
}

}  // namespace
}  // namespace retort
