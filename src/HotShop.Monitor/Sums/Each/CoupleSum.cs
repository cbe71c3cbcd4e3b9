using HotShop.Physics.Thermometry;

namespace HotShop.Monitor.Sums.Each;

sealed class CoupleSum : Sum
{
    const string Type = "type", Emf = "emf", Terminals = "terminals", Class = "class", NoClass = "none", UsualClass = "iec-2";

    public override string Id => "couple";
    public override string Title => "Millivolts of a thermocouple to degrees";
    public override string Group => SumGroups.Heat;

    public override IReadOnlyList<SumField> Fields { get; } =
    [
        new ChoiceField(Type, "Type", [.. TypesByUse.Select(t => new SumChoice(t.ToString(), $"{t}: {Thermocouple.OfType(t).Composition}"))]),
        new NumberField(Emf, "Voltage at the terminals", Measure.Voltage, -12, 80, 46.25),
        new NumberField(Terminals, "Temperature of the terminals", Measure.Temperature, -20, 120, 25) { Hint = "Where the couple or its compensating lead ends, not the air of the room." },
        new ChoiceField(Class, "Tolerance of the couple", [.. ToleranceClass.All.OrderByDescending(c => c.Name == UsualClass).Select(c => new SumChoice(c.Name, c.Title)), new(NoClass, "left out of the interval")]),
    ];

    /// <summary>As often as they are met in a hot shop: common practice.</summary>
    static IEnumerable<ThermocoupleType> TypesByUse => [ThermocoupleType.K, ThermocoupleType.S, ThermocoupleType.R, ThermocoupleType.N, ThermocoupleType.B, ThermocoupleType.J, ThermocoupleType.E, ThermocoupleType.T];

    public override string Method => "The voltage that the terminals' own temperature would give is added, and the sum is looked up in the type's reference function.";
    public override string Source => "NIST Monograph 175 (1993), the same functions as IEC 60584-1:2013; tolerances of IEC 60584-1:2013 and ASTM E230.";
    public override string Range => "Each type over its own range; type B from 250 °C. The interval holds what was typed and the tolerance of a new couple of the class chosen; its ageing and where it sits come on top.";
    public override string Caution => "A wrong type set reads a wrong furnace. Work on a controller's wiring is for those licensed for it, with the equipment off; limits and flame safeguards stay with certified equipment.";

    public override SumAnswer Work(SumInput input, SumAsker asker)
    {
        var type = Enum.Parse<ThermocoupleType>(input.Choice(Type));
        var couple = Thermocouple.OfType(type);
        switch (couple.Junction(input[Emf], input[Terminals]))
        {
            case JunctionResult.OutOfRange(var reason): return SumAnswer.Refused(Emf, reason);
            case JunctionResult.OpenCircuit(var reason): return SumAnswer.Refused(Emf, reason);
            case JunctionResult.Celsius(var celsius):
                var (limit, refusal) = Limit(input.Choice(Class), type, celsius);
                if (refusal is not null) return SumAnswer.Refused(Class, refusal);
                var result = Doubt.Of(v => (couple.JunctionCelsius(v[0], v[1]) ?? celsius) + v[2], input[Emf], input[Terminals], new Doubt("tolerance of the couple", 0, limit));
                return SumAnswer.Of(
                    [SumFigure.Of("junction", "Measuring junction", Measure.Temperature, result, isSigned: true), .. AsOther(type, input)]) with
                {
                    Notes = [$"The terminals are worth {Text(couple.Millivolts(input[Terminals]) ?? 0)} mV. Below: what the same voltage reads with another type set."],
                };
            default: throw new InvalidOperationException("a result of a junction that is not known");
        }
    }

    static (double Celsius, string? Refusal) Limit(string name, ThermocoupleType type, double celsius) =>
        ToleranceClass.Find(name) is not { } tolerance ? (0, null)
        : tolerance.ClaimableCelsius(type, celsius) is { } limit ? (limit, null)
        : (0, $"{tolerance.Title} promises nothing for type {type} at {celsius.ToString("0", System.Globalization.CultureInfo.InvariantCulture)} °C: choose another, or none");

    static IEnumerable<SumFigure> AsOther(ThermocoupleType type, SumInput input) => TypesByUse.Where(t => t != type)
        .Select(t => (Type: t, Celsius: Thermocouple.OfType(t).JunctionCelsius(input[Emf], input[Terminals])))
        .Where(o => o.Celsius is not null).Select(o => SumFigure.Beside($"asType{o.Type}", $"Read as type {o.Type}", Measure.Temperature, o.Celsius!.Value));

    static string Text(double millivolts) => millivolts.ToString("0.000", System.Globalization.CultureInfo.InvariantCulture);
}
