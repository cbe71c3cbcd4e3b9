namespace HotShop.Physics.Thermometry;

/// <summary>Letter-designated thermocouple types of IEC 60584-1:2013 and NIST Monograph 175.</summary>
public enum ThermocoupleType
{
    /// <summary>Pt-30%Rh / Pt-6%Rh; blind below 250 °C.</summary>
    B,

    /// <summary>Ni-Cr / Cu-Ni.</summary>
    E,

    /// <summary>Fe / Cu-Ni.</summary>
    J,

    /// <summary>Ni-Cr / Ni-Al.</summary>
    K,

    /// <summary>Ni-Cr-Si / Ni-Si.</summary>
    N,

    /// <summary>Pt-13%Rh / Pt.</summary>
    R,

    /// <summary>Pt-10%Rh / Pt.</summary>
    S,

    /// <summary>Cu / Cu-Ni.</summary>
    T,
}
