using HotShop.Monitor.Configuration;
using NodaTime;

namespace HotShop.Monitor.Notifications;

/// <summary>One way to one person's phone.</summary>
/// <param name="Outlet">push or mail; a second one of a kind is push-2 and so on.</param>
public sealed record OutletAddress(PersonOptions Person, string Outlet, OutletOptions Options);

/// <summary>Who is called, in which order, and by which ways.</summary>
public sealed class CallOrder
{
    readonly Dictionary<string, PersonOptions> people;

    public CallOrder(StudioConfiguration configuration)
    {
        people = configuration.People.ToDictionary(p => p.Id, StringComparer.Ordinal);
        var notifications = configuration.Notifications;
        InOrder = [.. notifications.Order.Where(people.ContainsKey).Select(id => people[id])];
        // Nobody named for tonight must not mean nobody called.
        if (InOrder.Count == 0 && configuration.People.Count > 0) InOrder = [configuration.People[0]];
        Outlets = [.. configuration.People.SelectMany(OutletsOf)];
        Settings = new(
            Duration.FromMinutes(notifications.RepeatMinutes), Duration.FromMinutes(notifications.NextToCallMinutes), notifications.CallUpToPriority, InOrder.Count);
    }

    public IReadOnlyList<PersonOptions> InOrder { get; }

    public IReadOnlyList<OutletAddress> Outlets { get; }

    public CallSettings Settings { get; }

    public PersonOptions? Find(string id) => people.GetValueOrDefault(id);

    public OutletAddress? Find(string person, string outlet) => Outlets.FirstOrDefault(o => o.Person.Id == person && o.Outlet == outlet);

    public static IEnumerable<OutletAddress> OutletsOf(PersonOptions person)
    {
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var outlet in person.Outlets)
        {
            var number = seen[outlet.Kind] = seen.GetValueOrDefault(outlet.Kind) + 1;
            yield return new(person, number == 1 ? outlet.Kind : $"{outlet.Kind}-{number}", outlet);
        }
    }
}
