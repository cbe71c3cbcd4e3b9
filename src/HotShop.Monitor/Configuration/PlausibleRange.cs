using HotShop.Monitor.Wire;

namespace HotShop.Monitor.Configuration;

/// <summary>
/// What a sensor of a kind of appliance can honestly report. Wide on purpose: it catches a wrong unit or a broken wire, not a hot day.
/// Common practice; a furnace is fired up to 1,260 °C, an annealer starts near 480 °C.
/// </summary>
public static class PlausibleRange
{
    public static (double Low, double High) Of(ApplianceKind kind, Quantity quantity) => quantity switch
    {
        Quantity.Temperature or Quantity.Setpoint => kind switch
        {
            ApplianceKind.Furnace => (-40, 1450),
            ApplianceKind.GloryHole => (-40, 1500),
            ApplianceKind.Annealer or ApplianceKind.PickUpOven => (-40, 800),
            _ => (-40, 120),
        },
        Quantity.GasFlow => (-0.05, 500),
        Quantity.Power => (-0.05, 1000),
        Quantity.Oxygen => (0, 25),
        Quantity.CarbonMonoxide => (-20, 10_000),
        Quantity.CombustibleGas => (-5, 100),
        Quantity.Mass => (-1, 2000),
        _ => (double.NegativeInfinity, double.PositiveInfinity),
    };

    /// <summary>A typed value in the quantity's canonical unit; null where it is none, or its unit belongs to something else.</summary>
    public static double? Typed(string? text, Quantity quantity) =>
        text is not null && Limit.Parse(text) is { } limit ? Typed(limit.Value, limit.Unit, quantity) : null;

    public static double? Typed(double value, string unit, Quantity quantity) =>
        Ucum.ToStored(value, unit, new ChannelPlan { Appliance = "", Name = "", Topic = "", Quantity = quantity }) is { Problem: null } stored ? stored.Value : null;

    /// <summary>Where an overheat limit may lie, in °C: above the work of the appliance, below what its lining stands.</summary>
    public static (double Low, double High) OfOverheatLimit(ApplianceKind kind) => kind switch
    {
        ApplianceKind.Furnace => (900, 1400),
        ApplianceKind.GloryHole => (900, 1450),
        ApplianceKind.Annealer or ApplianceKind.PickUpOven => (300, 750),
        _ => (30, 90),
    };
}
