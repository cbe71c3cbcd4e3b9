using HotShop.Physics.Energy;
using HotShop.Physics.Pot;
using HotShop.Physics.Thermometry;
using HotShop.Physics.Uncertainty;
using MathNet.Numerics.Random;
using Xunit;

namespace HotShop.Physics.Tests.Uncertainty;

/// <summary>A truth is hidden, measured with errors drawn from the stated distributions, and budgeted from what was measured: the 95 % interval holds it 95 times
/// in 100.</summary>
public class CoverageTests
{
    const int Draws = 20_000;

    delegate (double Truth, Budget Measured) Trial(Random random);

    static readonly GlassMass Pot = new(new CylinderPot(0.25, 0.5));

    static readonly Dictionary<string, Trial> Trials = new()
    {
        ["gas energy"] = random => Gas(random),
        ["gas energy by a bill's heating value"] = random => Gas(random, new GasDoubts()),
        ["electricity"] = random => Electricity(random),
        ["energy by a nameplate"] = random =>
        {
            var plate = Between(random, 10, 400);
            return (plate * Percent(random, 15), EnergyBudgets.Nameplate(plate));
        },
        ["cost of gas at a price not yet known"] = random =>
        {
            var (energy, measured) = Gas(random);
            var price = Between(random, 0.05, 0.15);
            return (energy * (price + 0.002 * Error(random)), EnergyBudgets.Cost(measured, price, 0.002));
        },
        ["weighed mass"] = random => Weighed(random),
        ["glass of a charge"] = random => Charged(random),
        ["glass of a day's five charges on one scale"] = random =>
        {
            // One scale, one yield; the rounding is each charge's own.
            double truth = 0, scale = 0.025 * Error(random), yield = Percent(random, 2);
            var charges = new List<Budget>();
            for (var i = 0; i < 5; i++)
            {
                var batch = Between(random, 15, 30);
                truth += batch * ChargeMaterial.Batch.GlassYield * yield;
                charges.Add(GlassBudgets.Charged(GlassBudgets.Weighed(Math.Round((batch + scale) / 0.05) * 0.05, 0.05, 0.025), ChargeMaterial.Batch, 2));
            }
            return (truth, Budget.Sum(charges));
        },
        ["mass of glass by a dip"] = random =>
        {
            var depth = Between(random, 0.1, 0.4);
            var truth = new GlassMass(Pot.Geometry, GlassMass.SodaLimeMelt * Percent(random, GlassBudgets.DensityPercent)).KilogramsAtDepth(depth) * Percent(random, 2);
            return (truth, GlassBudgets.Dipped(Pot, depth + 0.005 * Error(random), 0.005, 2));
        },
        ["gas per kilogram"] = random =>
        {
            var ((energy, gas), (glass, charged)) = (Gas(random), Charged(random));
            return (energy / glass, gas.Per(charged));
        },
        ["heat content"] = random =>
        {
            var heat = Between(random, 800, 1600);
            return (heat * Percent(random, 3), GlassBudgets.Heat(heat));
        },
        ["efficiency"] = random =>
        {
            var ((energy, gas), (glass, charged)) = (Gas(random), Charged(random));
            var heat = Between(random, 800, 1600);
            return (glass * heat * Percent(random, 3) / 3600 / energy, GlassBudgets.Efficiency(charged, GlassBudgets.Heat(heat), gas));
        },
        ["gas of this month less last month's, one meter"] = random =>
        {
            // What the meter and the line get wrong, they get wrong twice: the difference knows it once.
            var meter = Percent(random, 1.5);
            var (first, second) = (Between(random, 900, 1100), Between(random, 600, 800));
            Budget Metered(double energy) => EnergyBudgets.Gas(energy / meter, 103_425, 20, new GasDoubts(LineKelvin: 0, LinePascals: 0, CompressibilityPercent: 0, HeatingValuePercent: 0))
                .With(new Contribution("noise", 4));
            return (first - second, Metered(first + 4 * Normal(random)).Less(Metered(second + 4 * Normal(random))));
        },
        ["temperature of a type S couple of class 2"] = random =>
        {
            var truth = Between(random, 1000, 1250);
            var couple = Thermocouple.OfType(ThermocoupleType.S);
            var sensors = new TemperatureUncertainty
            {
                Couple = ThermocoupleType.S, Class = ToleranceClass.Find("iec-2"), InputMicrovolts = 10, TerminalsCelsius = 1, DriftCelsius = 3,
            };
            // The wire and its drift give the voltage of another temperature; the input and the terminals' sensor add their own errors.
            var wire = truth + sensors.Class!.LimitCelsius(ThermocoupleType.S, truth)!.Value * Error(random) + 3 * Error(random);
            var measured = couple.Millivolts(wire)!.Value - couple.Millivolts(30)!.Value + 0.010 * Error(random);
            var shown = couple.JunctionCelsius(measured, 30 + Error(random))!.Value;
            return (truth, sensors.At(shown, 30)!);
        },
        ["mean of four readings"] = random =>
        {
            double[] readings = [.. Enumerable.Range(0, 4).Select(_ => 1150 + 2 * Normal(random))];
            return (1150, new Budget(readings.Average(), Contribution.Mean("readings", readings)));
        },
        ["one rectangle ruling a normal"] = random =>
            (50 + Error(random) + 0.1 * Normal(random), new Budget(50, Contribution.Rectangular("tolerance", 1), new Contribution("noise", 0.1))),
    };

    public static TheoryData<string> Names => [.. Trials.Keys];

    [Theory, MemberData(nameof(Names))]
    public void The_95_percent_interval_holds_the_hidden_truth_95_times_in_100(string name)
    {
        var random = new MersenneTwister(20260301);
        var held = 0;
        for (var i = 0; i < Draws; i++)
        {
            var (truth, measured) = Trials[name](random);
            if (truth >= measured.Low95 && truth <= measured.High95) held++;
        }
        Assert.InRange((double)held / Draws, 0.93, 0.97);
    }

    static (double Truth, Budget Measured) Gas(Random random, GasDoubts? how = null)
    {
        var doubts = how ?? new GasDoubts(HeatingValuePercent: 1);
        var (volume, celsius, pascals, heatingValue) = (Between(random, 5, 200), Between(random, 5, 35), Between(random, 1500, 3000), Between(random, 38, 41));
        var truth = GasVolume.ToBase(volume, pascals, 101_325, celsius, BaseConditions.Iso13443) * heatingValue / EnergyUnits.MegajoulesPerKilowattHour
            * Percent(random, doubts.CompressibilityPercent);
        var (counted, assumedCelsius, assumedPascals) = (volume * Percent(random, doubts.MeterPercent), celsius + doubts.LineKelvin * Error(random), pascals + doubts.LinePascals * Error(random));
        var measured = GasVolume.ToBase(counted, assumedPascals, 101_325, assumedCelsius, BaseConditions.Iso13443)
            * heatingValue * Percent(random, doubts.HeatingValuePercent) / EnergyUnits.MegajoulesPerKilowattHour;
        return (truth, EnergyBudgets.Gas(measured, 101_325 + assumedPascals, assumedCelsius, doubts));
    }

    static (double Truth, Budget Measured) Electricity(Random random)
    {
        var truth = Between(random, 10, 400);
        return (truth, EnergyBudgets.Electricity(truth * Percent(random, 2), 2));
    }

    static (double Truth, Budget Measured) Weighed(Random random)
    {
        var truth = Between(random, 10, 30);
        return (truth, GlassBudgets.Weighed(Math.Round((truth + 0.025 * Error(random)) / 0.05) * 0.05, 0.05, 0.025));
    }

    static (double Truth, Budget Measured) Charged(Random random)
    {
        var (batch, weighed) = Weighed(random);
        return (batch * ChargeMaterial.Batch.GlassYield * Percent(random, 2), GlassBudgets.Charged(weighed, ChargeMaterial.Batch, 2));
    }

    static double Between(Random random, double low, double high) => low + (high - low) * random.NextDouble();

    static double Error(Random random) => Between(random, -1, 1);

    static double Percent(Random random, double percent) => 1 + percent / 100 * Error(random);

    static double Normal(Random random) => MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1);
}
