namespace HotShop.Physics.Thermometry;

/// <summary>Letter designation of a thermocouple after IEC 60584-1 and NIST Monograph 175.</summary>
public enum ThermocoupleType { B, E, J, K, N, R, S, T }
