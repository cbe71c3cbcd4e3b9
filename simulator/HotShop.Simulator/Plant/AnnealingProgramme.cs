namespace HotShop.Simulator.Plant;

/// <summary>One stage: go to a temperature at a rate, or hold it.</summary>
/// <param name="KelvinPerHour">Rate towards the temperature, above 0; <see langword="null"/> for a hold.</param>
/// <param name="HoldHours">How long to hold; 0 for a ramp.</param>
public sealed record ProgrammeStage(double TargetCelsius, double? KelvinPerHour, double HoldHours);

/// <summary>
/// The setpoint over time that an annealer's controller follows from the evening on. After the last stage the heat is off.
/// </summary>
public sealed record AnnealingProgramme(string Name, double StartCelsius, IReadOnlyList<ProgrammeStage> Stages)
{
    /// <summary>
    /// Ware up to about 12 mm, overnight: hold at 495 °C, 60 K/h through the annealing range, then no faster than the oven loses heat
    /// by itself,
    /// so that it can be followed down to 80 °C; 11.3 h.
    /// </summary>
    public static AnnealingProgramme Overnight { get; } = new("overnight", Quillmere.AnnealingCelsius,
        [new(495, null, 1), new(449, 60, 0), new(300, 80, 0), new(150, 40, 0), new(80, 18, 0)]);

    /// <summary>Ware up to about 38 mm, from Saturday evening to Sunday afternoon: hold 2.5 h, 12 K/h through the annealing range; 21.4 h.</summary>
    public static AnnealingProgramme OverTheWeekend { get; } = new("weekend", Quillmere.AnnealingCelsius,
        [new(495, null, 2.5), new(449, 12, 0), new(399, 24, 0), new(150, 30, 0), new(80, 15, 0)]);

    public double Hours => StageHours().Sum();

    /// <summary>Setpoint in °C; <see langword="null"/> before the start and after the end.</summary>
    public double? SetpointAfter(double hours)
    {
        if (hours < 0) return null;
        var from = StartCelsius;
        foreach (var (stage, length) in Stages.Zip(StageHours()))
        {
            if (hours < length) return stage.KelvinPerHour is null ? stage.TargetCelsius : from + (stage.TargetCelsius - from) * hours / length;
            hours -= length;
            from = stage.TargetCelsius;
        }

        return null;
    }

    IEnumerable<double> StageHours()
    {
        var from = StartCelsius;
        foreach (var stage in Stages)
        {
            yield return stage.KelvinPerHour is { } rate ? Math.Abs(stage.TargetCelsius - from) / rate : stage.HoldHours;
            from = stage.TargetCelsius;
        }
    }
}
