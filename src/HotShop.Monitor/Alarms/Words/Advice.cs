using HotShop.Monitor.Configuration;

namespace HotShop.Monitor.Alarms.Words;

/// <summary>What an alarm may lead to, what to do first and what not to do. Common practice; the studio's own procedures go before it.</summary>
internal static class Advice
{
    const string Decide = "Local codes and licensed people decide; this service only watches and is no safety device.";

    const string Gas = "If you smell gas: touch no switch, get everybody out, call from outside. Only trained people relight. " + Decide;

    const string Heat = "Keep your distance and wear your protection; never reach into a hot appliance. If you smell gas: touch no switch, get everybody out, call from outside. " + Decide;

    const string Air = "Do not go back in to look for the cause. The certified detector and the emergency services go before this message. " + Decide;

    public static (string Consequence, string FirstStep, string Caution) Of(string kind, ApplianceKind? appliance, string? part) => kind switch
    {
        AlarmKinds.Overheat when appliance is ApplianceKind.Annealer or ApplianceKind.PickUpOven =>
            ("Ware sags and sticks within minutes; elements and shelves suffer.", "Check the reading at its controller; if it climbs, switch it off at its isolator.", Heat),
        AlarmKinds.Overheat =>
            ("Crucible, crown and couple are damaged; molten glass may get out.", "Look from a distance; if it still climbs, follow the shop's shutdown procedure.", Heat),
        AlarmKinds.FlameFailure =>
            ("Unburnt gas may collect; the glass stiffens within hours.", "Stay out if you smell gas. Otherwise follow the shop's shutdown and purge procedure.", Gas),
        AlarmKinds.FallingWithGas =>
            ("Unburnt gas may collect; the glass stiffens within hours. It may also be a cold charge or an open door.", "Stay out if you smell gas. Otherwise look for the flame from outside.", Gas),
        AlarmKinds.LockOut =>
            ("No fire until somebody sees to it; the glass stiffens within hours.", "Read the burner control's message and call whoever services it.", "Do not reset it again and again. " + Gas),
        AlarmKinds.AnnealerDrift =>
            ("Lasting stress: the ware may crack later, in hands or on a shelf.", "Keep the door shut; look at its controller, door and elements' fuses.", "Mains voltage inside: only qualified people open it. " + Decide),
        AlarmKinds.Silent =>
            ("Nobody sees what happens there: other alarms on this sensor cannot ring.", "Look at the appliance itself, then at the sensor's power and network.", "If you smell gas: touch no switch, get everybody out, call from outside. " + Decide),
        AlarmKinds.MainsLost =>
            ("Burner fans stop, annealers cool, ware may crack; safety equipment may be without power.", "Find out whether the street is dark; keep annealers and doors shut.", "When power returns let only trained people restart burners. " + Gas),
        AlarmKinds.CarbonMonoxide =>
            ("It poisons within minutes to hours, without smell or warning.", "Get everybody out into fresh air and call the emergency number.", Air),
        AlarmKinds.CarbonMonoxideWarning =>
            ("It makes people ill over hours; more may follow.", "Get people out into fresh air; have burners and flues checked.", Air),
        AlarmKinds.CombustibleGas =>
            ("It can explode.", "Touch no switch, get everybody out, call the gas emergency line from outside.", Air),
        AlarmKinds.CombustibleGasWarning =>
            ("Gas leaks somewhere; it can come to an explosion.", "Touch no switch, get people out, call the gas emergency line from outside.", Air),
        AlarmKinds.ServiceTrouble =>
            ("The watch over the studio has gaps: alarms may come late or not at all.", $"Look after the fires yourself, then at the health page under {part}.", "If you smell gas: touch no switch, get everybody out, call from outside. " + Decide),
        _ => throw new ArgumentException($"no advice for {kind}", nameof(kind)),
    };
}
