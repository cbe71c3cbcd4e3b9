using System.ComponentModel;

namespace HotShop.Monitor.Configuration;

public sealed record AccuracyOptions
{
    [Description("Class of a thermocouple's wire as delivered: iec-1, iec-2, iec-3, astm-special or astm-standard. The type stands in 'thermocouple'.")]
    public string? Tolerance { get; init; }

    [Description("What the maker states for the whole sensor, either way, as a difference: e.g. '2 K' or '4 °F'.")]
    public string? Stated { get; init; }

    [Description("Error of the input that measures the couple's voltage, in µV either way.")]
    public double? InputMicrovolts { get; init; }

    [Description("Error of the temperature of the couple's terminals, either way, as a difference: e.g. '1 K'.")]
    public string? Terminals { get; init; }

    [Description("What the sensor may have drifted since it was new or was calibrated, either way, as a difference: e.g. '3 K'.")]
    public string? Drift { get; init; }
}

public sealed record CalibrationOptions
{
    [Description("Day from which it holds, in the studio's zone: YYYY-MM-DD. It holds until the next begins.")]
    public required string From { get; init; }

    [Description("Who made it, and against what.")]
    public string? By { get; init; }

    [Description("Corrections by reading: straight lines between them, and that of the nearest outside. A single one holds everywhere. Where an earlier correction is to end, write a correction of '0 K'.")]
    public required IReadOnlyList<CalibrationPointOptions> Points { get; init; }

    [Description("Half of the 95 % interval of the corrections, as certificates print it (k = 2), as a difference: e.g. '1.2 K'.")]
    public string? Uncertainty { get; init; }

    [Description("Half of the 95 % interval of the better sensor, as its certificate prints it (k = 2), as a difference. Three or more points are then comparisons that scatter: the line through them corrects, and its interval is computed.")]
    public string? ReferenceUncertainty { get; init; }
}

public sealed record CalibrationPointOptions
{
    [Description("What the sensor itself read, before any correction, e.g. '1100 °C'.")]
    public required string Reading { get; init; }

    [Description("What a better sensor beside it read, e.g. '1097.5 °C'. One of reference and correction.")]
    public string? Reference { get; init; }

    [Description("What is added to the reading, as a difference, e.g. '-2.5 K'. One of reference and correction.")]
    public string? Correction { get; init; }

    /// <summary>In °C; null where the text is no temperature.</summary>
    internal double? ReadingCelsius => Limit.Parse(Reading)?.Celsius;

    /// <summary>Added to the reading, in K; null where neither text tells it.</summary>
    internal double? CorrectionKelvins => Correction is { } typed ? Limit.Parse(typed)?.Kelvins : Reference is { } reference ? Limit.Parse(reference)?.Celsius - ReadingCelsius : null;
}
