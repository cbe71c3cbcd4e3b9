using NodaTime;

namespace HotShop.Monitor.Wire;

/// <summary>Collects what the rows of one payload became.</summary>
sealed class RowCollector
{
    readonly List<WireReading> readings = [];
    readonly List<Refusal> refusals = [];

    public WireContent Content => new(readings, null, refusals);

    public int Readings => readings.Count;

    /// <summary>Adds the value as a reading, or its problem (or its unit's) as a refusal.</summary>
    public void Add(ChannelPlan channel, WireValue value, string? unit, Instant? at, int? index = null)
    {
        if (value.Problem is not null)
        {
            Refuse(channel, value.Problem, index);
            return;
        }
        var converted = Ucum.ToStored(value.Number, unit, channel);
        if (converted.Problem is not null) Refuse(channel, converted.Problem, index);
        else readings.Add(new WireReading(channel, converted.Value, converted.Unit, at));
    }

    public void Refuse(ChannelPlan channel, string problem, int? index = null) =>
        refusals.Add(new Refusal(index is { } row ? $"{channel.Id}, row {row}: {problem}" : $"{channel.Id}: {problem}", index));
}
