// Dimensions as exponents of the seven SI base quantities (SI Brochure, 9th edition, table 2), with
// the plane angle kept apart so that an angle is not taken for a bare number.
#pragma once
#include <cstdint>

namespace retort {

struct Dimension {
  std::int8_t length = 0, mass = 0, time = 0, current = 0, temperature = 0, amount = 0, luminous = 0, angle = 0;

  friend constexpr bool operator==(const Dimension&, const Dimension&) = default;
  friend constexpr Dimension operator*(Dimension a, Dimension b) { return combine(a, b, 1); }
  friend constexpr Dimension operator/(Dimension a, Dimension b) { return combine(a, b, -1); }
  [[nodiscard]] constexpr Dimension power(int n) const {
    Dimension out;
    for (int i = 0; i < (n < 0 ? -n : n); ++i) out = combine(out, *this, n < 0 ? -1 : 1);
    return out;
  }
  [[nodiscard]] constexpr bool none() const { return *this == Dimension{}; }

 private:
  static constexpr Dimension combine(Dimension a, Dimension b, int sign) {
    auto sum = [sign](int x, int y) { return static_cast<std::int8_t>(x + sign * y); };
    return {sum(a.length, b.length), sum(a.mass, b.mass), sum(a.time, b.time), sum(a.current, b.current),
            sum(a.temperature, b.temperature), sum(a.amount, b.amount), sum(a.luminous, b.luminous), sum(a.angle, b.angle)};
  }
};

namespace dimension {
inline constexpr Dimension kNumber{};
inline constexpr Dimension kLength{1};
inline constexpr Dimension kMass{0, 1};
inline constexpr Dimension kTime{0, 0, 1};
inline constexpr Dimension kCurrent{0, 0, 0, 1};
inline constexpr Dimension kTemperature{0, 0, 0, 0, 1};
inline constexpr Dimension kAmount{0, 0, 0, 0, 0, 1};
inline constexpr Dimension kAngle{0, 0, 0, 0, 0, 0, 0, 1};
inline constexpr Dimension kArea = kLength * kLength;
inline constexpr Dimension kVolume = kArea * kLength;
inline constexpr Dimension kFrequency = kNumber / kTime;
inline constexpr Dimension kSpeed = kLength / kTime;
inline constexpr Dimension kAcceleration = kSpeed / kTime;
inline constexpr Dimension kForce = kMass * kAcceleration;
inline constexpr Dimension kEnergy = kForce * kLength;
inline constexpr Dimension kPower = kEnergy / kTime;
inline constexpr Dimension kPressure = kForce / kArea;
inline constexpr Dimension kDensity = kMass / kVolume;
inline constexpr Dimension kVoltage = kPower / kCurrent;
inline constexpr Dimension kResistance = kVoltage / kCurrent;
}  // namespace dimension

}  // namespace retort
