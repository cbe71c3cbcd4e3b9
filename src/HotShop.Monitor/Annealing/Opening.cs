using NodaTime;

namespace HotShop.Monitor.Annealing;

/// <summary>Where an annealer stands on its way to being opened.</summary>
public enum CoolingPhase
{
    /// <summary>Its couple says nothing fresh.</summary>
    NotKnown,

    /// <summary>Hot, and not on its way down.</summary>
    Hot,

    /// <summary>On its curve or programme, which is still under way.</summary>
    OnCurve,

    /// <summary>The heat is off; it cools by itself.</summary>
    Cooling,

    /// <summary>Down to the temperature at which the studio opens.</summary>
    Down,
}

/// <summary>A moment that is to come, with its 95 % interval.</summary>
public sealed record ExpectedMoment(Instant At, Instant Earliest95, Instant Latest95);

/// <summary>When an annealer can be opened. Whether the ware may come out is for whoever knows it: thick glass stays hotter than the air around it.</summary>
/// <param name="Celsius">The newest fresh reading of its chamber.</param>
/// <param name="TargetCelsius">Down to this the studio opens.</param>
/// <param name="DownSince">When it came down to it, within the last two days.</param>
/// <param name="CurveEndsAt">End of the typed curve that is under way.</param>
/// <param name="CurveEndCelsius">What it is then meant to be, °C.</param>
/// <param name="Expected">When it will be down; null where nothing tells.</param>
/// <param name="EarlierCoolings">How many earlier coolings of the last weeks taught how it cools.</param>
public sealed record Opening(
    string Appliance, string Name, CoolingPhase Phase, double? Celsius, double TargetCelsius, Instant? DownSince, Instant? CurveEndsAt, double? CurveEndCelsius,
    ExpectedMoment? Expected, int EarlierCoolings);
