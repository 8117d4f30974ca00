// Numbers of about 31 decimal digits: the unevaluated sum of two doubles.
// With them a reading such as 0.1 is kept as it was written, sums of readings are exact, and a fit loses
// nothing that the readings had.
//
// Sums and products after T. J. Dekker, "A floating-point technique for extending the available precision",
// Numerische Mathematik 18 (1971) 224-242; their error bounds: M. Joldes, J.-M. Muller, V. Popescu, "Tight and
// rigorous error bounds for basic building blocks of double-word arithmetic", ACM TOMS 44 (2017) 15.
// Meant for sizes from 1e-120 to 1e120: beyond, the parts may underflow or overflow. A value; no errors.
#pragma once
#include <cmath>

namespace retort::results {

struct Twofold {
  double high = 0.0;
  double low = 0.0;  // |low| is at most half a unit in the last place of high

  constexpr Twofold() = default;
  constexpr Twofold(double value) : high(value) {}  // NOLINT: implicit, every double is one
  constexpr Twofold(double h, double l) : high(h), low(l) {}

  [[nodiscard]] double value() const { return high + low; }
};

namespace twofold {

// Requires |a| >= |b| or a == 0.
inline Twofold quick_sum(double a, double b) {
  double sum = a + b;
  double rest = sum - a;
  return {sum, b - rest};
}

inline Twofold sum(double a, double b) {
  double s = a + b;
  double part = s - a;
  double left = s - part;
  double a_rest = a - left;
  double b_rest = b - part;
  return {s, a_rest + b_rest};
}

inline Twofold product(double a, double b) {
  double p = a * b;
  return {p, std::fma(a, b, -p)};
}

}  // namespace twofold

inline Twofold operator-(Twofold a) { return {-a.high, -a.low}; }

inline Twofold operator+(Twofold a, Twofold b) {
  Twofold high = twofold::sum(a.high, b.high);
  Twofold low = twofold::sum(a.low, b.low);
  double carried = high.low + low.high;
  Twofold first = twofold::quick_sum(high.high, carried);
  double rest = low.low + first.low;
  return twofold::quick_sum(first.high, rest);
}

inline Twofold operator-(Twofold a, Twofold b) { return a + -b; }

inline Twofold operator*(Twofold a, Twofold b) {
  Twofold p = twofold::product(a.high, b.high);
  double cross = std::fma(a.high, b.low, a.low * b.high);
  return twofold::quick_sum(p.high, p.low + cross);
}

// Requires b != 0.
inline Twofold operator/(Twofold a, Twofold b) {
  double first = a.high / b.high;
  Twofold rest = a - b * first;
  double second = rest.high / b.high;
  rest = rest - b * second;
  double third = rest.high / b.high;
  return twofold::quick_sum(first, second) + Twofold(third);
}

inline Twofold& operator+=(Twofold& a, Twofold b) { return a = a + b; }
inline Twofold& operator-=(Twofold& a, Twofold b) { return a = a - b; }

inline bool operator<(Twofold a, Twofold b) { return a.high < b.high || (a.high == b.high && a.low < b.low); }
inline bool operator>(Twofold a, Twofold b) { return b < a; }
inline bool operator<=(Twofold a, Twofold b) { return !(b < a); }
inline bool operator>=(Twofold a, Twofold b) { return !(a < b); }
inline bool operator==(Twofold a, Twofold b) { return a.high == b.high && a.low == b.low; }

inline Twofold abs(Twofold a) { return a.high < 0 ? -a : a; }

// Requires a >= 0. One step of Newton's method from the double's root.
inline Twofold sqrt(Twofold a) {
  if (a.high <= 0) return {};
  double root = std::sqrt(a.high);
  Twofold rest = a - twofold::product(root, root);
  return twofold::quick_sum(root, rest.high / (2 * root));
}

}  // namespace retort::results
