// A 64-bit content hash, stable on every machine: thought ids are made from it.
// FNV-1a over eight bytes at a time with a final mix; not for security.
#pragma once

#include <cstdint>
#include <cstring>
#include <string_view>

namespace say {

class Hash {
public:
    constexpr Hash() = default;

    Hash& add(std::string_view bytes) {
        while (bytes.size() >= 8) {
            std::uint64_t chunk = 0;
            std::memcpy(&chunk, bytes.data(), 8);
            mix(chunk);
            bytes.remove_prefix(8);
        }
        std::uint64_t rest = 0;
        if (!bytes.empty()) std::memcpy(&rest, bytes.data(), bytes.size());
        mix(rest ^ (static_cast<std::uint64_t>(bytes.size()) << 56U));
        return *this;
    }

    Hash& add(std::uint64_t number) {
        mix(number);
        return *this;
    }

    std::uint64_t value() const {
        std::uint64_t result = state_;
        result ^= result >> 32U;
        result *= 0xd6e8feb86659fd93ULL;
        result ^= result >> 32U;
        return result;
    }

private:
    void mix(std::uint64_t chunk) {
        state_ ^= chunk;
        state_ *= 0x9e3779b97f4a7c15ULL;
        state_ ^= state_ >> 29U;
    }

    std::uint64_t state_ = 0xcbf29ce484222325ULL;
};

} // namespace say
