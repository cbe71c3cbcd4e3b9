using System.Globalization;
using HotShop.Monitor.Reports.Pictures;
using HotShop.Physics.Uncertainty;

namespace HotShop.Evaluation.Numbers;

/// <summary>Where the doubt of a kilowatt-hour of metered gas comes from.</summary>
static class DoubtPicture
{
    public static Drawing Draw()
    {
        var budget = EnergyBudgets.Gas(1000, 103_000, 15, new GasDoubts());
        var marks = new List<Mark>
        {
            new Mark.Box(0, 0, 1000, 430, Tone.Ground),
            new Mark.Words(20, 38, "Where the doubt of 1,000 kWh of metered gas comes from", 27.6, Tone.Ink, IsBold: true),
            new Mark.Words(20, 70, "share of the variance; a class 1.5 meter, the heating value of a bill", 21.6, Tone.Dim),
        };
        var y = 110.0;
        foreach (var (of, share) in budget.Shares)
        {
            marks.Add(new Mark.Words(270, y + 26, of.Name, 23, Tone.Ink, Anchor.End));
            marks.Add(new Mark.Box(285, y, Math.Max(2, share * 560), 36, Tone.Melting));
            marks.Add(new Mark.Words(300 + share * 560, y + 26, Text($"{share * 100:0.0} %, alone ±{of.StandardUncertainty * Math.Abs(of.Sensitivity) * Math.Sqrt(3) / 10:0.00} %"), 22, Tone.Dim));
            y += 52;
        }
        marks.Add(new Mark.Words(285, y + 36, Text($"all together: 1,000 kWh ± {budget.HalfWidth95:0} kWh with 95 %"), 25, Tone.Ink, IsBold: true));
        return new Drawing(1000, 430, "Where the doubt of metered gas comes from", marks);
    }

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
