using HotShop.Physics.Thermometry;
using NodaTime.Text;

namespace HotShop.Monitor.Configuration;

/// <summary>Whether what is said of a sensor's accuracy and calibrations can be worked with.</summary>
static class AccuracyCheck
{
    /// <summary>A sensor that is further off than this is to be replaced, not corrected; more likely a unit was mistaken.</summary>
    const double LargestKelvins = 100;

    public static void Run(ProblemList found, string at, ChannelOptions channel)
    {
        if (channel.Accuracy is { } accuracy)
        {
            if (channel.Quantity != "temperature") found.Add($"{at}.accuracy", $"{channel.Quantity} has none", "leave it out: it belongs to temperatures");
            else Accuracy(found, $"{at}.accuracy", accuracy, channel);
        }
        if (channel.Calibrations.Count > 0 && channel.Quantity != "temperature")
            found.Add($"{at}.calibrations", $"{channel.Quantity} is not corrected", "leave them out: they belong to temperatures");
        var days = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < channel.Calibrations.Count; i++) Calibration(found, $"{at}.calibrations[{i}]", channel.Calibrations[i], days);
    }

    static void Accuracy(ProblemList found, string at, AccuracyOptions accuracy, ChannelOptions channel)
    {
        var type = Enum.GetNames<ThermocoupleType>().Contains(channel.Thermocouple) ? Enum.Parse<ThermocoupleType>(channel.Thermocouple!) : (ThermocoupleType?)null;
        if (accuracy.Tolerance is { } name)
        {
            if (ToleranceClass.Find(name) is not { } tolerance)
                found.Add($"{at}.tolerance", $"'{name}' is unknown", $"write one of {string.Join(", ", ToleranceClass.All.Select(c => c.Name))}");
            else if (type is not { } known)
                found.Add($"{at}.tolerance", "a class of wire needs the type of the couple", "write thermocouple: B, E, J, K, N, R, S or T");
            else if (!tolerance.Covers(known))
                found.Add($"{at}.tolerance", $"type {known} has no {tolerance.Title}", $"write one of {string.Join(", ", ToleranceClass.All.Where(c => c.Covers(known)).Select(c => c.Name))}");
        }
        if (accuracy.InputMicrovolts is { } microvolts)
        {
            found.Range($"{at}.inputMicrovolts", microvolts, 0, 10_000);
            if (type is null) found.Add($"{at}.inputMicrovolts", "what a microvolt is worth depends on the couple", "write thermocouple: B, E, J, K, N, R, S or T");
        }
        if (accuracy.Terminals is not null && type is null)
            found.Add($"{at}.terminals", "only a thermocouple has terminals", "write thermocouple: B, E, J, K, N, R, S or T, or leave it out");
        Difference(found, $"{at}.stated", accuracy.Stated);
        Difference(found, $"{at}.terminals", accuracy.Terminals);
        Difference(found, $"{at}.drift", accuracy.Drift);
    }

    static void Calibration(ProblemList found, string at, CalibrationOptions calibration, HashSet<string> days)
    {
        if (!LocalDatePattern.Iso.Parse(calibration.From).Success) found.Add($"{at}.from", $"'{calibration.From}' is no date", "write YYYY-MM-DD");
        if (!days.Add(calibration.From)) found.Add($"{at}.from", $"there are two calibrations from {calibration.From}", "keep one, or give the later its own day");
        Difference(found, $"{at}.uncertainty", calibration.Uncertainty);
        if (calibration.Points.Count == 0) found.Add($"{at}.points", "there is none", "write at least one reading with its reference or correction");
        for (var i = 0; i < calibration.Points.Count; i++) Point(found, $"{at}.points[{i}]", calibration.Points[i]);
        if (calibration.ReferenceUncertainty is null) Rising(found, at, calibration);
        else Scattering(found, at, calibration);
    }

    static void Scattering(ProblemList found, string at, CalibrationOptions calibration)
    {
        Difference(found, $"{at}.referenceUncertainty", calibration.ReferenceUncertainty);
        if (calibration.Uncertainty is not null) found.Add($"{at}.uncertainty", "beside referenceUncertainty", "write one of them: what the certificate of the corrections prints, or that of the better sensor");
        if (calibration.Points.Count < 3 || calibration.Points.Select(p => p.ReadingCelsius).Distinct().Count() < 2)
            found.Add($"{at}.points", "too few for a line that tells its scatter", "write three comparisons or more, at two temperatures or more, or leave referenceUncertainty out");
    }

    static void Point(ProblemList found, string at, CalibrationPointOptions point)
    {
        if (point.ReadingCelsius is not (>= -40 and <= 1820)) found.Add($"{at}.reading", $"'{point.Reading}' is no reading of a sensor here", "write e.g. 1100 °C or 2012 °F");
        if ((point.Reference is null) == (point.Correction is null))
            found.Add(at, point.Reference is null ? "neither reference nor correction" : "both reference and correction", "write one of them: what a better sensor read, or what is to be added");
        else if (point.CorrectionKelvins is not { } kelvins)
            found.Add($"{at}.{(point.Reference is null ? "correction" : "reference")}", $"'{point.Reference ?? point.Correction}' cannot be read", point.Reference is null ? "write a difference such as -2.5 K or -4.5 °F" : "write e.g. 1097.5 °C or 2007.5 °F");
        else if (Math.Abs(kelvins) > LargestKelvins)
            found.Add(at, FormattableString.Invariant($"a correction of {kelvins:0.#} K is more than {LargestKelvins} K"), "check the units; a sensor that far off is to be replaced");
    }

    /// <summary>Corrected, a higher reading must still be higher: else a heating furnace would seem to cool.</summary>
    static void Rising(ProblemList found, string at, CalibrationOptions calibration)
    {
        var points = calibration.Points.Select(p => (p.ReadingCelsius, Truth: p.ReadingCelsius + p.CorrectionKelvins)).Where(p => p.Truth is not null).OrderBy(p => p.ReadingCelsius).ToList();
        for (var i = 1; i < points.Count; i++)
            if (points[i].ReadingCelsius == points[i - 1].ReadingCelsius || points[i].Truth <= points[i - 1].Truth)
                found.Add($"{at}.points", FormattableString.Invariant($"from {points[i - 1].ReadingCelsius:0.#} to {points[i].ReadingCelsius:0.#} °C the corrected temperature does not rise"), "check readings and corrections; write each reading once");
    }

    static void Difference(ProblemList found, string where, string? text)
    {
        if (text is not null && Limit.Parse(text)?.Kelvins is not (>= 0 and <= LargestKelvins))
            found.Add(where, $"'{text}' is no difference of temperatures", "write e.g. 1.2 K or 2 °F, never below 0");
    }
}
