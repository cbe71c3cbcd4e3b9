using System.Globalization;
using HotShop.Physics.FuelGases;

namespace HotShop.Monitor.Configuration;

static class GasCheck
{
    /// <summary>How far the bill's heating value may be from that of the gas it is said to be: more is another gas, or another unit.</summary>
    const double Disagreement = 0.1;

    public static void Run(ProblemList found, GasOptions gas)
    {
        // Methane is 10.5, propane 26.6, hydrogen 3.4 kWh/m³ (ISO 6976, 15/15 °C): outside is a slip of unit, e.g. MJ/m³ or Btu/ft³.
        if (gas.GrossKilowattHoursPerCubicMetre is { } gross) found.Range("gas.grossKilowattHoursPerCubicMetre", gross, 3, 36);
        found.Range("gas.grossHeatingValueUncertaintyPercent", gas.GrossHeatingValueUncertaintyPercent, 0, 20);
        found.Range("gas.lineGaugeMillibar", gas.LineGaugeMillibar, 0, 4000);
        found.Range("gas.lineUncertaintyMillibar", gas.LineUncertaintyMillibar, 0, 200);
        found.Range("gas.lineUncertaintyKelvin", gas.LineUncertaintyKelvin, 0, 40);
        if (gas.LineCelsius is { } celsius) found.Range("gas.lineCelsius", celsius, -40, 60);
        if (gas.BillFactor is { } factor) found.Range("gas.billFactor", factor, 0.3, 6);
        found.Range("gas.altitudeMetres", gas.AltitudeMetres, -430, 5000);
        if (gas.CarbonDioxideKilogramsPerKilowattHour is { } carbonDioxide) found.Range("gas.carbonDioxideKilogramsPerKilowattHour", carbonDioxide, 0, 0.5);
        if (gas.Base is not ("iso13443" or "us" or "normal"))
            found.Add("gas.base", $"'{gas.Base}' is unknown", "write iso13443, us or normal");
        else Composition(found, gas);
    }

    static void Composition(ProblemList found, GasOptions gas)
    {
        if (gas.Profile is { } profile && GasProfile.Find(profile) is null)
            found.Add("gas.profile", $"'{profile}' is unknown", $"write one of {string.Join(", ", GasProfile.All.Select(p => p.Id))}");
        else if (gas is { Profile: not null, Composition: not null })
            found.Add("gas.composition", "profile and composition both say what the gas is", "leave one of them out");
        else if (gas.Composition is { } composition && GasComposition.Read(composition) is { Problem: { } problem, Advice: { } advice })
            found.Add("gas.composition", problem, advice);
        else if (gas is { GrossKilowattHoursPerCubicMetre: { } gross } && (gas.Profile ?? (object?)gas.Composition) is not null
            && gas.WorkedOutKilowattHoursPerCubicMetre() is var own && !(Math.Abs(gross / own - 1) <= Disagreement))
            found.Add("gas.grossKilowattHoursPerCubicMetre", string.Create(CultureInfo.InvariantCulture, $"{gross} is far from the {own:0.##} of the gas that is written"), "check the unit and the base of the bill's value, and which gas it is");
    }
}
