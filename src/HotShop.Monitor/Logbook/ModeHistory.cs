using HotShop.Monitor.Configuration;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Store;
using NodaTime;

namespace HotShop.Monitor.Logbook;

/// <summary>A mode that was in force from a moment until the next one.</summary>
public sealed record ModeStretch(Instant From, Instant To, Mode Mode);

/// <summary>Modes that were in force, from the logbook after corrections; the configuration's mode before the first entry.</summary>
public sealed class ModeHistory(StudioPlan plan, IStoreReader store)
{
    /// <summary>Stretches that cover [from, to) without a gap, in order.</summary>
    public IReadOnlyList<ModeStretch> Of(string appliance, Instant from, Instant to)
    {
        var mode = ModeNames.Parse(plan.Appliance(appliance)?.Options.Mode) ?? Mode.Holding;
        using var connection = store.Open();
        var stretches = new List<ModeStretch>();
        var since = from;
        foreach (var entry in Corrections.Apply(LogRows.ModesUntil(connection, appliance, from, to)))
        {
            if (ModeNames.Parse(entry.Fields["mode"]?.GetValue<string>()) is not { } next) continue;
            if (entry.At > since) stretches.Add(new ModeStretch(since, entry.At, mode));
            (mode, since) = (next, Instant.Max(from, entry.At));
        }
        if (to > since) stretches.Add(new ModeStretch(since, to, mode));
        return stretches;
    }
}
