namespace HotShop.Physics.Thermometry;

/// <summary>A class of thermocouple wire: how far a new couple may stray from the reference function. A figure of delivery, no bound in
/// service: wire drifts.</summary>
/// <remarks>Source: IEC 60584-1:2013 and ASTM E230/E230M-12; see <c>tolerance-classes.json</c>.</remarks>
public sealed class ToleranceClass
{
    static readonly Lazy<IReadOnlyList<ToleranceClass>> Known = new(() =>
        [.. EmbeddedJson.Read<ToleranceTable>("Thermometry.tolerance-classes.json").Classes.Select(c => new ToleranceClass(c))]);

    readonly string? beyond;
    readonly ToleranceStretch[] stretches;

    ToleranceClass(StoredToleranceClass stored) => (Name, Title, beyond, stretches) = (stored.Name, stored.Title, stored.Beyond, stored.Stretches);

    public static IReadOnlyList<ToleranceClass> All => Known.Value;

    /// <summary>Short name: iec-1, iec-2, iec-3, astm-special or astm-standard.</summary>
    public string Name { get; }

    /// <summary>Standard and class in words.</summary>
    public string Title { get; }

    /// <returns><see langword="null"/> where no class has this name.</returns>
    public static ToleranceClass? Find(string name)
    {
        foreach (var one in All) if (one.Name == name) return one;
        return null;
    }

    /// <summary>Whether the class is defined for a type at any temperature.</summary>
    public bool Covers(ThermocoupleType type) => Array.Exists(stretches, s => s.Types.Contains(type));

    /// <summary>Largest departure from the reference function that the class allows, in °C either way.</summary>
    /// <returns>°C; <see langword="null"/> where the class does not cover the type at this temperature.</returns>
    public double? LimitCelsius(ThermocoupleType type, double celsius)
    {
        foreach (var stretch in stretches)
            if (celsius >= stretch.FromCelsius && celsius <= stretch.ToCelsius && stretch.Types.Contains(type)) return stretch.Limit(celsius);
        return null;
    }

    /// <summary>The same, and beyond the class's own range the limit of the class that wire of it still meets there: class 1 of types K and N
    /// ends at 1000 °C, and above it no more than class 2 can be claimed.</summary>
    /// <returns>°C; <see langword="null"/> where that does not cover the type either.</returns>
    public double? ClaimableCelsius(ThermocoupleType type, double celsius) =>
        LimitCelsius(type, celsius) ?? (beyond is { } name && Covers(type) ? Find(name)?.LimitCelsius(type, celsius) : null);
}

/// <summary>A class's limit for some types between two temperatures.</summary>
internal sealed record ToleranceStretch(
    ThermocoupleType[] Types, double FromCelsius, double ToCelsius, double Celsius, double Fraction, double FractionAbove, double AboveCelsius)
{
    public double Limit(double celsius) =>
        Math.Max(Math.Max(Celsius, Fraction * Math.Abs(celsius)), Celsius + FractionAbove * (celsius - AboveCelsius));
}

/// <summary>A class as stored.</summary>
internal sealed record StoredToleranceClass(string Name, string Title, string? Beyond, ToleranceStretch[] Stretches);

/// <summary>The stored table of all classes.</summary>
internal sealed record ToleranceTable(string Source, string Licence, StoredToleranceClass[] Classes);
