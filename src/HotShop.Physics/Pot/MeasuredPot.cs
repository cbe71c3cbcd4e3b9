using MathNet.Numerics.Interpolation;

namespace HotShop.Physics.Pot;

/// <summary>A pot known by measuring: so much poured in stood so deep. Between the marks a curve that never falls (Fritsch and Carlson 1980).</summary>
public sealed record MeasuredPot : CrucibleGeometry
{
    readonly CubicSpline curve;

    /// <param name="marks">Depth, m, and volume below it, m³, both rising from mark to mark and above 0; the empty pot need not be among them. The last is the
    /// rim.</param>
    public MeasuredPot(params IReadOnlyList<(double DepthMetres, double CubicMetres)> marks) : base(Checked(marks)[^1].DepthMetres)
    {
        Marks = [(0, 0), .. marks];
        curve = CubicSpline.InterpolatePchipSorted([.. Marks.Select(m => m.DepthMetres)], [.. Marks.Select(m => m.CubicMetres)]);
    }

    /// <summary>The marks, from the empty pot.</summary>
    public IReadOnlyList<(double DepthMetres, double CubicMetres)> Marks { get; }

    private protected override double Volume(double depth) => curve.Interpolate(depth);

    private protected override double Depth(double volume) => Halving.Root(0, HeightMetres, depth => Volume(depth) < volume);

    private protected override double Surface(double depth) => curve.Differentiate(depth);

    static IReadOnlyList<(double DepthMetres, double CubicMetres)> Checked(IReadOnlyList<(double DepthMetres, double CubicMetres)> marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        if (marks.Count < 2) throw new ArgumentException("expected two marks at least", nameof(marks));
        var before = (DepthMetres: 0.0, CubicMetres: 0.0);
        foreach (var mark in marks)
        {
            if (Require.Positive(mark.DepthMetres) <= before.DepthMetres || Require.Positive(mark.CubicMetres) <= before.CubicMetres)
                throw new ArgumentException($"expected depths and volumes that rise from mark to mark, and after {before} came {mark}", nameof(marks));
            before = mark;
        }
        return marks;
    }
}
