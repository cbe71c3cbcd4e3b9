using HotShop.Simulator.Plant;
using NodaTime;

namespace HotShop.Simulator.People;

internal enum GatherSize { Small, Medium, Large }

/// <summary>Something the crew, or a timer the crew has set, does at a time.</summary>
internal abstract record CrewAct(Instant At)
{
    /// <summary>
    /// Changes what stays set: done silently for the time before the simulation starts, so that it starts in the middle of a day.
    /// </summary>
    public virtual bool IsStanding => false;
}

/// <param name="IsForCharge">To cook or squeeze a charge, not to hold the glass.</param>
internal sealed record SetFurnace(Instant At, double Celsius, double KelvinPerHour, bool IsForCharge = false) : CrewAct(At)
{
    public override bool IsStanding => true;
}

internal sealed record SetMode(Instant At, string Appliance, string Mode) : CrewAct(At)
{
    public override bool IsStanding => true;
}

internal sealed record LightGloryHole(Instant At, bool IsLit) : CrewAct(At)
{
    public override bool IsStanding => true;
}

internal sealed record HeatAnnealer(Instant At, string Appliance) : CrewAct(At)
{
    public override bool IsStanding => true;
}

internal sealed record StartProgramme(Instant At, string Appliance, AnnealingProgramme Programme) : CrewAct(At)
{
    public override bool IsStanding => true;
}

internal sealed record EmptyAnnealer(Instant At, string Appliance) : CrewAct(At);

internal sealed record PutWareIn(Instant At, string Appliance, double Kilograms) : CrewAct(At);

internal sealed record OpenGloryHole(Instant At, double Seconds) : CrewAct(At);

/// <param name="Kilograms">What really goes.</param>
/// <param name="LoggedSize"><see langword="null"/> when nobody logs it.</param>
internal sealed record Gather(Instant At, GatherSize Size, double Kilograms, string Who, GatherSize? LoggedSize, Duration LoggedAfter) : CrewAct(At);

internal sealed record LadleOut(Instant At, double Kilograms, double LoggedKilograms) : CrewAct(At);

/// <param name="ErrorMetres">Read minus true depth.</param>
/// <param name="PlansCharge">The evening dip, from which the crew works out how much to charge.</param>
internal sealed record Dip(Instant At, double ErrorMetres, bool PlansCharge) : CrewAct(At);

/// <summary>One of the evening's loads.</summary>
internal sealed record ChargeLoad(Instant At, bool IsBatch, bool IsFirst, bool IsLast) : CrewAct(At);

/// <summary>An ordered charge of cold cullet, whatever the pot needs.</summary>
internal sealed record ColdCharge(Instant At, double Kilograms) : CrewAct(At);
