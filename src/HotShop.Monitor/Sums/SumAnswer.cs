using HotShop.Physics.Uncertainty;

namespace HotShop.Monitor.Sums;

/// <summary>A result of a sum.</summary>
/// <param name="Name">In the interface, without its unit.</param>
/// <param name="Words">As people read it.</param>
/// <param name="Value">In the measure's canonical unit.</param>
/// <param name="Low95">Lower end of the 95 % interval; null with the upper: a number beside the sum, not its result.</param>
public sealed record SumFigure(string Name, string Words, Measure Measure, double Value, double? Low95, double? High95)
{
    /// <summary>An amount of money in the studio's currency.</summary>
    public bool IsMoney { get; init; }

    public string Key => Name + Measure.Suffix;

    /// <param name="isSigned">May be below nothing, as a temperature.</param>
    public static SumFigure Of(string name, string words, Measure measure, Budget result, bool isSigned = false) =>
        new(name, words, measure, result.Value, isSigned ? result.Low95 : Math.Max(Math.Min(0, result.Value), result.Low95), result.High95);

    public static SumFigure Beside(string name, string words, Measure measure, double value) => new(name, words, measure, value, null, null);
}

/// <summary>What a sum comes to: its results, the asked one first; or why it cannot be worked.</summary>
public sealed record SumAnswer(IReadOnlyList<SumFigure> Figures, SumRefusal? Refusal = null)
{
    /// <summary>What the numbers mean here, in sentences.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    public static SumAnswer Of(params IReadOnlyList<SumFigure> figures) => new(figures);

    public static SumAnswer Refused(string field, string problem) => new([], new SumRefusal(field, problem));
}
