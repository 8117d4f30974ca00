// The rows of worked_test.cpp.
#pragma once

namespace retort {

struct Worked {
  const char* name;
  const char* source;
  double handbook;  // in the unit of the result; 0 if it is not in a handbook
  const char* right;
  const char* wrong;
  const char* slip;  // of `wrong`. Values left in minutes, grams or milliamps count as powers of ten.
};

inline constexpr const char* kKayeLaby = "Kaye and Laby, from memory";
inline constexpr const char* kCrc = "CRC Handbook, from memory";
inline constexpr const char* kTrade = "common practice, no source";

inline constexpr Worked kWorked[] = {
    {"crown glass", kKayeLaby, 1.52, "The angle of incidence was 40.0° and the angle of refraction was 25.0°, so n = sin 40.0 / sin 25.0 = 1.52.", "The angle of incidence was 40.0° and the angle of refraction was 25.0°, so n = sin 25.0 / sin 40.0 = 0.657.", "upside-down"},
    {"water in a dish", kKayeLaby, 1.333, "I got i = 30° and r = 22.0°. refractive index = sin30 / sin22 = 1.33", "I got i = 30° and r = 22.0°. refractive index = sin30 / sin22 = 111.6", "angle-mode"},
    {"diamond", kKayeLaby, 2.417, "The critical angle was 24.4° so n = 1 / sin 24.4 = 2.42", "The critical angle was 24.4° so n = 1 / sin 24.4 = 2.24", "arithmetic"},
    {"acrylic block", kKayeLaby, 1.49, "When i was 50.0° r was 30.9°. n = sin 50.0 ÷ sin 30.9 = 1.49", "When i was 50.0° r was 30.9°. refractive index = 50.0 ÷ 30.9 = 1.62", "operation"},
    {"critical angle of water", kKayeLaby, 48.6, "critical angle = sin⁻¹(1 / 1.33) = 48.8°", "critical angle = sin⁻¹(1 / 1.33) = 0.851°", "angle-mode"},
    {"aluminium block", kKayeLaby, 2.70, "The block had a mass of 67.5 g and a volume of 25.0 cm3. density = 67.5 / 25.0 = 2.70 g/cm3", "The block had a mass of 67.5 g and a volume of 25.0 cm3. density = 25.0 / 67.5 = 0.370 g/cm3", "upside-down"},
    {"copper cube", kCrc, 8.96, "The volume of the cube is 2.0 x 2.0 x 2.0 = 8.0 cm3. The density = 71.7 g / 8.0 cm3 = 8.96 g/cm3.", "The volume of the cube is 2.0 x 2.0 x 2.0 = 8.0 cm3. The density = 71.7 g / 8.0 cm3 = 89.6 g/cm3.", "power-of-ten"},
    {"iron in kilograms", kCrc, 7870, "density = 0.315 kg / 4.00 × 10^-5 m3 = 7880 kg/m3", "density = 0.315 kg / 4.00 × 10^-5 m3 = 788 kg/m3", "power-of-ten"},
    {"mercury", kKayeLaby, 13.55, "20.0 cm3 of mercury has a mass of 271 g. 271 g ÷ 20.0 cm3 = 13.6 g/cm3", "20.0 cm3 of mercury has a mass of 271 g. 271 g ÷ 20.0 cm3 = 13.5 g/cm3", "rounding"},
    {"water in a cylinder", kKayeLaby, 0.998, "mass = 149.9 - 100.0 = 49.9 g. density = 49.9 g / 50.0 ml = 0.998 g/ml", "mass = 149.9 - 100.0 = 49.9 g. density = 49.9 g / 50.0 ml = 0.99 g/ml", "rounding"},
    {"aluminium converted", kKayeLaby, 2700, "2.70 g/cm3 = 2700 kg/m3", "2.70 g/cm3 = 0.00270 kg/m3", "power-of-ten"},
    {"ethanol by difference", kKayeLaby, 0.789, "density = (98.7 g - 59.2 g) / 50.0 cm3 = 0.79 g/cm3", "density = (98.7 g - 59.2 g) / 50.0 cm3 = 3.16 g/cm3", "operation"},
    {"lead shot", kCrc, 11.34, "The water went up from 20.0 cm3 to 25.0 cm3 so the volume is 25.0 - 20.0 = 5.0 cm3. The mass of the shot was 56.5 g. density = 56.5 ÷ 5.0 = 11.3 g/cm3", "The water went up from 20.0 cm3 to 25.0 cm3 so the volume is 25.0 - 20.0 = 5.0 cm3. The mass of the shot was 56.5 g. density = 56.5 x 5.0 = 282.5 g/cm3", "operation"},
    {"specific heat capacity of water", kKayeLaby, 4182, "The heater gave 8400 J. c = 8400 J / (0.25 kg × 8.0 °C) = 4200 J/kg°C", "The heater gave 8400 J. c = 8400 J / (0.25 kg × 8.0 °C) = 268800 J/kg°C", "operation"},
    {"specific heat capacity of aluminium", kKayeLaby, 897, "energy = 12.0 V × 4.00 A × 300 s = 14400 J. shc = 14400 J / (1.00 kg × 15.9 °C) = 906 J/kg°C", "energy = 12.0 V × 4.00 A × 300 s = 14400 J. The mass was 1000 g. shc = 14400 / (1000 × 15.9) = 0.906 J/kg°C", "power-of-ten"},
    {"specific heat capacity of copper", kKayeLaby, 385, "c = 9700 J / (1.00 kg × 25.0 °C) = 388 J/kg°C", "c = 9700 J / (1.00 kg × 25.0 °C) = 0.00258 J/kg°C", "upside-down"},
    {"specific heat capacity of iron", kCrc, 449, "c = E / (m × temperature change) = 13500 / (2.0 × 15) = 450 J/kg°C", "c = E / (m × temperature change) = 13500 / (2.0 × 15) = 101250 J/kg°C", "operation"},
    {"warming water", kTrade, 0, "The mass of water was 0.40 kg and it warmed up by 35 °C. E = 0.40 x 4200 x 35 = 58800 J", "The mass of water was 400 g and it warmed up by 35 °C. E = 400 x 4200 x 35 = 58800000 J", "power-of-ten"},
    {"melting ice", kCrc, 0, "energy = 0.025 kg × 334000 J/kg = 8350 J", "energy = 0.025 kg × 334000 J/kg = 13360000 J", "operation"},
    {"boiling water", kCrc, 2257000, "20 g of water boiled away. latent heat = 45200 J / 0.020 kg = 2260000 J/kg", "20 g of water boiled away. latent heat = 45200 J / 0.020 kg = 226000 J/kg", "power-of-ten"},
    {"speed of sound", kKayeLaby, 343, "The sound took 0.29 s to go 100 m, speed = 100 / 0.29 = 345 m/s", "The sound took 0.29 s to go 100 m, speed = 0.29 / 100 = 0.0029 m/s", "upside-down"},
    {"echo", kKayeLaby, 343, "We clapped 85 m from the wall and heard the echo after 0.50 s. speed = 2 × 85 m / 0.50 s = 340 m/s", "We clapped 85 m from the wall and heard the echo after 0.50 s. speed = 85 m / 0.50 s = 170 m/s", "operation"},
    {"speed of light", kKayeLaby, 2.998e8, "speed = frequency x wavelength = 6.0 × 10^14 Hz × 5.0 × 10^-7 m = 3.0 × 10^8 m/s", "speed = frequency x wavelength = 6.0 × 10^14 Hz × 5.0 × 10^-7 m = 3.0 × 10^7 m/s", "power-of-ten"},
    {"pendulum", kKayeLaby, 9.81, "The string was 1.00 m and the period 2.01 s. g = 4 × π² × 1.00 / 2.01² = 9.77 m/s2", "The string was 1.00 m and the period 2.01 s. g = 4 × π² × 1.00 / 2.01² = 19.6 m/s2", "square"},
    {"falling ball", kKayeLaby, 9.81, "g = 2 × 1.20 m / (0.495 s)² = 9.79 m/s2", "g = 2 × 1.20 m / (0.495 s)² = 4.85 m/s2", "square"},
    {"ripple tank", kTrade, 0, "wave speed = 5.0 Hz × 3.0 cm = 15 cm/s", "wave speed = 5.0 Hz × 3.0 cm = 15 m/s", "power-of-ten"},
    {"spring constant", kTrade, 0, "k = F / e = 2.0 N / 0.080 m = 25 N/m", "k = F / e = 2.0 N / 8.0 cm = 0.25 N/m", "power-of-ten"},
    {"weight of a mass", kTrade, 0, "weight = 0.350 kg × 9.8 N/kg = 3.43 N", "The mass was 350 g. weight = 350 × 9.8 = 3430 N", "power-of-ten"},
    {"energy of a lifted mass", kTrade, 0, "GPE = m g h = 0.060 kg × 9.8 N/kg × 1.50 m = 0.882 J", "GPE = m g h = 0.060 kg × 9.8 N/kg × 1.50 m = 0.828 J", "arithmetic"},
    {"energy of a trolley", kTrade, 0, "KE = 0.5 × 0.80 kg × (1.5 m/s)² = 0.90 J", "KE = 0.5 × 0.80 kg × (1.5 m/s)² = 0.60 J", "square"},
    {"acceleration of a trolley", kTrade, 0, "a = (0.84 m/s - 0.36 m/s) / 1.2 s = 0.40 m/s2", "a = (0.84 m/s - 0.36 m/s) / 1.2 s = 0.576 m/s2", "operation"},
    {"mean of three titres", kTrade, 0, "mean = (25.3 + 25.1 + 25.5) / 3 = 25.3 cm3", "mean = (25.3 + 25.1 + 25.5) / 2 = 37.95 cm3", "count"},
    {"sum that runs on", kTrade, 0, "3.1 + 3.3 + 3.2 = 9.6 and then 9.6 / 3 = 3.2", "3.1 + 3.3 + 3.2 = 9.6 / 3 = 3.2", "chain"},
    {"one swing of ten", kTrade, 0, "10 swings took 20.1 s. period = 20.1 s / 10 = 2.01 s", "10 swings took 20.1 s. period = 10 / 20.1 = 0.498 s", "upside-down"},
    {"resistance", kTrade, 0, "R = V / I = 6.0 V / 0.25 A = 24 Ω", "R = V / I = 6.0 V / 250 mA = 0.024 Ω", "power-of-ten"},
    {"power of a heater", kTrade, 0, "power = 12.0 V × 2.1 A = 25.2 W", "power = 12.0 V × 2.1 A = 25.2 J", "unit-wrong"},
    {"concentration", kTrade, 0, "concentration = 0.0025 mol / 0.025 dm3 = 0.10 mol/dm3", "concentration = 0.0025 mol / 25 cm3 = 0.00010 mol/dm3", "power-of-ten"},
    {"moles of salt", kTrade, 0, "The mass was 2.34 g and the Mr is 58.5. moles = 2.34 / 58.5 = 0.0400 mol", "The mass was 2.34 g and the Mr is 58.5. moles = 58.5 / 2.34 = 25.0 mol", "upside-down"},
    {"potato in water", kTrade, 0, "The potato was 12.0 g before and 13.8 g after. percentage change = (13.8 - 12.0) / 12.0 × 100 = 15 %", "The potato was 12.0 g before and 13.8 g after. percentage change = (13.8 - 12.0) / 13.8 × 100 = 13 %", "operation"},
    {"efficiency", kTrade, 0, "efficiency = useful energy / total energy = 3.6 J / 4.8 J = 0.75", "efficiency = 4.8 J / 3.6 J = 1.33", "upside-down"},
    {"pressure", kTrade, 0, "pressure = 600 N / 0.030 m2 = 20000 Pa", "pressure = 600 N / 300 cm2 = 2.0 Pa", "power-of-ten"},
    {"charge in minutes", kTrade, 0, "charge = 0.50 A × 120 s = 60 C", "The current was 0.50 A for 2.0 min. charge = 0.50 × 2.0 = 1.0 C", "power-of-ten"},
    {"magnification", kTrade, 0, "magnification = 40 mm / 0.05 mm = 800", "magnification = 40 mm / 0.05 mm = 8000", "power-of-ten"},
    {"chromatography", kTrade, 0, "Rf = 4.5 cm / 7.5 cm = 0.60", "Rf = 7.5 cm / 4.5 cm = 1.67", "upside-down"},
};

// Whose slip is not found yet, or not by its name.
inline constexpr Worked kSlipsOfCare[] = {
    // the text counts 8 waves, the sum divides by 7
    {"one wave of eight", kTrade, 0, "8 waves were 24.0 cm long so the wavelength = 24.0 / 8 = 3.0 cm", "8 waves were 24.0 cm long so the wavelength = 24.0 / 7 = 3.43 cm", "count"},
    // the lengths are named by "at first" and "with the load", and added
    {"extension", kTrade, 0, "The spring was 4.2 cm at first and 12.2 cm with the load. extension = 12.2 - 4.2 = 8.0 cm", "The spring was 4.2 cm at first and 12.2 cm with the load. extension = 12.2 + 4.2 = 16.4 cm", "operation"},
    // brackets left out on the calculator: 1.42 + 1.38 + 1.46 / 3
    {"mean without brackets", kTrade, 0, "mean time = (1.42 + 1.38 + 1.46) / 3 = 1.42 s", "mean time = (1.42 + 1.38 + 1.46) / 3 = 3.29 s", "operation"},
};

// Right calculations that are not judged so yet, each with the reason.
struct SpacedNumber {
  const char* text;
  const char* reason;
};
inline constexpr SpacedNumber kSpacedNumbers[] = {
    {"mass of water = 149.9 - 100.0 = 49.9 g", "\"water\" is taken for the distance that the solvent of a chromatogram moved"},
    {"c = 13 500 / (2.0 × 15) = 450 J/kg°C", "thousands with a space (SI Brochure, 9th edition, 5.4.4) in an operand without a unit"},
    {"pressure = 1 200 N / 0.50 m2 = 2 400 Pa", "the same, with one figure before the space"},
    {"latent heat = 45 200 J / 0.020 kg = 2 260 000 J/kg", "the same, with two groups in the result"},
    {"E = 0.40 x 4 200 x 35 = 58 800 J", "the same, in the middle of a product"},
};

}  // namespace retort
