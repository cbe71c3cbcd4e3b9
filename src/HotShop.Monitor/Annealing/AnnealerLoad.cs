using HotShop.Physics.Annealing;
using NodaTime;

namespace HotShop.Monitor.Annealing;

/// <summary>What lies in an annealer together, from closing to opening, and the curve it is to follow.</summary>
public sealed record AnnealerLoad(string Id, string Appliance, string Name, AnnealingCurve Curve, IReadOnlyList<StageText> Stages);

/// <summary>A stage as people type it: a ramp has the first two, a hold the last.</summary>
/// <param name="ToCelsius">Temperature to go to, °C.</param>
/// <param name="KelvinPerHour">How fast, K/h; the direction follows from the temperature.</param>
/// <param name="HoldMinutes">How long to stay, min.</param>
public sealed record StageText(double? ToCelsius = null, double? KelvinPerHour = null, double? HoldMinutes = null)
{
    public Stage Stage() => HoldMinutes is { } minutes
        ? new Stage.Hold(Duration.FromMinutes(minutes))
        : new Stage.Ramp(ToCelsius!.Value, KelvinPerHour!.Value);
}

/// <summary>The curves that annealers are on, as people typed them.</summary>
public interface IAnnealingCurves
{
    /// <returns>The curve under way at that moment; null where none is. The same object as long as it is the same load.</returns>
    AnnealingCurve? For(string appliance, Instant at);
}
