namespace HotShop.Physics.Uncertainty;

/// <summary>Largest error that the class of a meter allows, in per cent of what it counted.</summary>
public static class MeterClass
{
    /// <summary>A gas meter.</summary>
    /// <param name="classPercent">The class on its plate: 0.5, 1 or 1.5.</param>
    /// <param name="cubicMetresPerHour">Flow at the meter, m³/h.</param>
    /// <param name="minimumCubicMetresPerHour">Qmin on its plate, m³/h.</param>
    /// <param name="maximumCubicMetresPerHour">Qmax on its plate, m³/h.</param>
    /// <param name="isInService">Twice the limit of a new meter, which is all that the law asks of an old one.</param>
    /// <returns><see langword="null"/> below Qmin and above Qmax, where no class promises anything.</returns>
    /// <remarks>Source: OIML R 137; the same limits for classes 1 and 1.5 in Directive 2014/32/EU, annex IV. The lower flows, where twice the class is allowed,
    /// end at a tenth of Qmax. In service: French order of 21 October 2010, article 18.</remarks>
    public static double? GasLimitPercent(
        double classPercent, double cubicMetresPerHour, double minimumCubicMetresPerHour, double maximumCubicMetresPerHour, bool isInService = false)
    {
        if (!(cubicMetresPerHour >= minimumCubicMetresPerHour && cubicMetresPerHour <= maximumCubicMetresPerHour)) return null;
        var isLow = cubicMetresPerHour < 0.1 * Require.Positive(maximumCubicMetresPerHour);
        return Require.Positive(classPercent) * (isLow ? 2 : 1) * (isInService ? 2 : 1);
    }

    /// <summary>An electricity meter at 5 to 30 °C and the currents it is made for.</summary>
    /// <param name="index">A, B or C.</param>
    /// <returns><see langword="null"/> for another letter.</returns>
    /// <remarks>Source: Directive 2014/32/EU, annex V, table 2, balanced load from Itr to Imax.</remarks>
    public static double? ElectricityLimitPercent(char index) => index switch { 'A' => 3.5, 'B' => 2, 'C' => 0.7, _ => null };

    /// <summary>A shop scale (class III), in kg.</summary>
    /// <param name="kilograms">Load, 0 or above.</param>
    /// <param name="stepKilograms">The verification step e, as a rule what the display steps by.</param>
    /// <returns><see langword="null"/> above 10,000 steps.</returns>
    /// <remarks>Source: OIML R 76-1; the Non-automatic Weighing Instruments Regulations 1995 (United Kingdom), schedule 2, table 3. In service the law
    /// allows twice as much.</remarks>
    public static double? ScaleLimitKilograms(double kilograms, double stepKilograms) => (Require.NotNegative(kilograms) / Require.Positive(stepKilograms)) switch
    {
        <= 500 => 0.5 * stepKilograms,
        <= 2000 => stepKilograms,
        <= 10_000 => 1.5 * stepKilograms,
        _ => null,
    };
}
