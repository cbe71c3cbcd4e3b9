using HotShop.Monitor.Alarms;
using HotShop.Monitor.Alarms.Late;
using HotShop.Monitor.Annealing;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Notifications;
using HotShop.Monitor.Notifications.Mail;
using HotShop.Monitor.Pot;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Handover;

/// <summary>Gathers what there is to hand over in the morning, now or for a morning of the past. Log and alarms are told as they are known today.</summary>
sealed class HandoverBook(
    StudioPlan plan, NightCalendar calendar, ApplianceNights appliances, NightTroubles troubles, FoundLater late, OpeningBook openings, PotBook pots, NightGasBook gas,
    WornParts worn, Takeover takeover, LogbookBook logbook, CallOrder order, LetterPost post)
{
    /// <summary>Nothing heard for so long at the end of the night: the page says so first.</summary>
    static readonly Duration staleAfter = Duration.FromMinutes(15);

    public Morning Of(Instant at)
    {
        var night = calendar.Of(at);
        var courses = appliances.All(night);
        var heard = courses.Select(c => c.Last?.At).OfType<Instant>().ToList();
        return new(night, at, courses, troubles.Of(night), Late(night), openings.All(at),
            [.. pots.Pots.Select(p => pots.At(p.Appliance, at) is { } report ? new PotMorning(p.Appliance, plan.Appliance(p.Appliance)!.Name, report) : null).OfType<PotMorning>()],
            gas.Of(night, at), Tonight(), worn.At(night.To), takeover.Of(night.Morning), takeover.Of(night.Morning.PlusDays(-1)),
            [.. Corrections.Apply(logbook.Entries(null, night.From, night.To)).Where(e => e.Who != "timetable")],
            heard.Count > 0 ? heard.Max() : null, heard.Count > 0 && night.To - heard.Max() > staleAfter, MailNote(night.Morning));
    }

    /// <summary>What came late, the broken limits first.</summary>
    List<LateNews> Late(Night night) => [.. late.Between(night.From, night.To).Select(f =>
    {
        var channel = plan.Channels.Find(f.Stretch.Channel);
        return new LateNews(f.Stretch, f.Alarm, plan.Appliance(channel?.Appliance ?? "")?.Name ?? f.Stretch.Channel, channel?.Name.Replace('-', ' ') ?? "", channel?.Quantity is Quantity.Temperature or Quantity.Setpoint);
    }).OrderBy(n => n.Alarm is null)];

    Tonight Tonight() => new(order.InOrder.ElementAtOrDefault(0), order.InOrder.ElementAtOrDefault(1), order.Settings.NextAfter);

    string? MailNote(LocalDate morning)
    {
        if (plan.Configuration.Handover.MailTo.Count == 0) return null;
        var unsent = post.History(HandoverPost.KeyOf(morning)).Where(l => l.State != "sent").ToList();
        if (unsent.Count == 0) return null;
        var names = string.Join(" and ", unsent.Select(l => order.Find(l.Person)?.Name ?? l.Person));
        return unsent[^1].State switch
        {
            "skipped" => $"This morning's mail to {names} was not sent: {unsent[^1].Note}.",
            "refused" => $"This morning's mail to {names} was refused: {unsent[^1].Note}.",
            _ => $"This morning's mail to {names} waits: {unsent[^1].Note}.",
        };
    }
}
