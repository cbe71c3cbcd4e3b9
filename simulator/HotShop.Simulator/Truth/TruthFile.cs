using System.Text.Json;
using NodaTime.Text;

namespace HotShop.Simulator.Truth;

/// <summary>The hidden truth as JSON lines: first what the seed chose, then one line for every full hour.</summary>
public sealed class TruthFile(TextWriter writer)
{
    static readonly JsonSerializerOptions Names = new(JsonSerializerDefaults.Web);

    int hoursWritten = -1;

    /// <summary>Writes the lines that are new since the last call.</summary>
    public void Write(HiddenTruth truth)
    {
        if (hoursWritten == truth.Hours.Count) return;
        if (hoursWritten < 0)
        {
            writer.WriteLine(JsonSerializer.Serialize(new { hidden = truth.Parameters }, Names));
            hoursWritten = 0;
        }

        for (; hoursWritten < truth.Hours.Count; hoursWritten++)
        {
            var hour = truth.Hours[hoursWritten];
            writer.WriteLine(JsonSerializer.Serialize(
                new
                {
                    from = InstantPattern.ExtendedIso.Format(hour.From),
                    furnaceKilowatthours = hour.Furnace.Kilowatthours,
                    furnaceBaseCubicMetres = hour.Furnace.BaseCubicMetres,
                    gloryHoleKilowatthours = hour.GloryHole.Kilowatthours,
                    gloryHoleBaseCubicMetres = hour.GloryHole.BaseCubicMetres,
                    hour.FirstAnnealerKilowatthours,
                    hour.SecondAnnealerKilowatthours,
                    hour.MeltedKilograms,
                    hour.TakenKilograms,
                    hour.GlassKilograms,
                },
                Names));
        }

        writer.Flush();
    }
}
