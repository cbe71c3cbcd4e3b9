using HotShop.Monitor.Reports.Pictures;
using HotShop.Physics.Glass;

namespace HotShop.Evaluation.Numbers;

/// <summary>How stiff the shipped glasses are, and the points that have names.</summary>
static class GlassPictures
{
    public static Drawing Viscosity()
    {
        var chart = new Chart("Viscosity of the shipped glasses", new("°C", 400, 1500, 100), new("log10 of dPa·s", 0, 16, 2));
        foreach (var (name, value) in new[] { ("strain", FixedPoints.Strain), ("annealing", FixedPoints.Annealing), ("softening", FixedPoints.Softening), ("working", FixedPoints.Working), ("melting", FixedPoints.Melting) })
            chart.Curve([(400, value), (1500, value)], Tone.Hair, 1.5, dashed: true).Words(value == FixedPoints.Melting ? 900 : 1500, value, name, Anchor.End, right: -0.2, up: 0.25, tone: Tone.Faint);
        var dashed = false;
        var at = 9.6;
        foreach (var profile in GlassProfile.All.Values.OrderBy(p => p.AnnealingPointCelsius))
        {
            chart.Curve(Curve.Of(Math.Ceiling(profile.StrainPointCelsius) - 5, 1500, 5, t => profile.Viscosity.Log10DecipascalSeconds(t)), dashed: dashed);
            chart.Dots(new[] { FixedPoints.Strain, FixedPoints.Annealing, FixedPoints.Softening, FixedPoints.Working, FixedPoints.Melting }.Select(v => (profile.Viscosity.CelsiusAt(v), v)));
            var (x, y) = (profile.Viscosity.CelsiusAt(at), at);
            chart.Curve([(x, y), (760, y)], Tone.Hair, 1).Words(760, y, profile.Name, up: -0.3, bold: true);
            (dashed, at) = (!dashed, at + 0.95);
        }
        return chart.Drawing;
    }
}
