using HotShop.Physics.Pot;
using NodaTime;

namespace HotShop.Physics.Tests.Pot;

/// <summary>
/// A studio whose people gather heavier or lighter than they say, forget to log, and dip with an unsteady hand. Its hidden numbers are drawn from
/// flat distributions that are not the estimator's beliefs. The log is what the estimator sees; the truth is kept beside it.
/// </summary>
internal sealed class ForgetfulStudio
{
    public static readonly Instant FirstDay = Instant.FromUtc(2026, 3, 2, 0, 0);

    readonly Random random;
    readonly double commonBias, forgotten, chargeBias, trueDensity;
    readonly Dictionary<string, double> sizeBias = [];
    readonly List<(Instant At, double Kilograms)> truth = [];
    double mass;
    int forgetting;

    public ForgetfulStudio(int seed, int days)
    {
        random = new(seed);
        var full = Between(60, 120);
        const double height = 0.42;
        Pot = new(new CylinderPot(Math.Sqrt(full / (Math.PI * height * GlassMass.SodaLimeMelt)), height));
        trueDensity = GlassMass.SodaLimeMelt * (1 + Between(-0.015, 0.015));
        (commonBias, forgotten, chargeBias) = (Between(-0.15, 0.15), Between(0, 0.15), Between(-0.03, 0.03));
        foreach (var size in GatherSizes.NominalKilograms.Keys) sizeBias[size] = Between(-0.08, 0.08);
        mass = full * Between(0.5, 0.95);
        Remember(FirstDay);
        for (var day = 0; day < days; day++) Work(FirstDay + Duration.FromDays(day));
    }

    public GlassMass Pot { get; }

    public List<PotEvent> Log { get; } = [];

    /// <summary>True mass at a moment, kg.</summary>
    public double TrueKilograms(Instant at) => truth.FindLast(t => t.At <= at).Kilograms;

    /// <summary>True mass that left and came in, kg, whether logged or not.</summary>
    public double TakenKilograms { get; private set; }

    public double ChargedKilograms { get; private set; }

    void Work(Instant midnight)
    {
        Dip(midnight + Duration.FromHours(8.5));
        var secondDip = random.NextDouble() < 0.5;
        var appetite = Between(15, 40);
        var at = midnight + Duration.FromHours(9);
        while (appetite > 0 && at < midnight + Duration.FromHours(18) && mass > 0.2 * Pot.FullKilograms)
        {
            appetite -= Gather(at);
            at += Duration.FromMinutes(Between(2, 12));
            if (secondDip && at > midnight + Duration.FromHours(13)) { Dip(at); secondDip = false; }
        }
        Charge(midnight + Duration.FromHours(19), Between(15, 40));
    }

    double Gather(Instant at)
    {
        var (size, nominal) = GatherSizes.NominalKilograms.ElementAt(random.Next(3));
        var taken = Math.Min(mass, nominal * (1 + commonBias) * (1 + sizeBias[size]) * Math.Max(0.2, 1 + 0.15 * Gauss()));
        mass -= taken;
        TakenKilograms += taken;
        Remember(at);
        if (!Forgets()) Log.Add(new PotEvent.Gather(at, nominal, 1, size));
        return taken;
    }

    /// <summary>A whole piece is forgotten, not a gather: about three gathers in a row.</summary>
    bool Forgets()
    {
        if (forgetting > 0) return forgetting-- > 0;
        if (random.NextDouble() >= forgotten / (3 - 2 * forgotten)) return false;
        forgetting = 2;
        return true;
    }

    void Charge(Instant at, double weighed)
    {
        weighed = Math.Min(weighed, Math.Max(0, Pot.FullKilograms * 0.97 - mass));
        var added = weighed * (1 + chargeBias) * (1 + 0.02 * Gauss());
        mass += added;
        ChargedKilograms += added;
        Remember(at);
        Log.Add(new PotEvent.Charge(at, weighed));
    }

    void Dip(Instant at)
    {
        var depth = new GlassMass(Pot.Geometry, trueDensity).DepthMetres(mass);
        Log.Add(new PotEvent.Dip(at, Math.Max(0, depth + 0.005 * Gauss())));
    }

    void Remember(Instant at) => truth.Add((at, mass));

    double Between(double low, double high) => low + (high - low) * random.NextDouble();

    double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
