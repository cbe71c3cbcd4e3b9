using HotShop.Monitor.Money;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Money.AccountTests;

namespace HotShop.Monitor.Tests.Money;

public sealed class SessionTests
{
    // The glory hole burns 5 kWh an hour at 0.10.
    static async Task<UnitCosts> Costs(params string[] entries)
    {
        await using var studio = await Filled(Steady(prices: Plain), Instant.FromUtc(2026, 3, 1, 22, 0), Instant.FromUtc(2026, 3, 2, 23, 0));
        foreach (var entry in entries) await studio.Send("glory-hole-1/log", entry);
        Assert.Empty(studio.Refused.Select(r => r.Reason));
        return studio.The<AccountBook>().Of(Day("2026-03-02"), Day("2026-03-02"), studio.Now).PerUnit;
    }

    [Fact]
    public async Task A_renter_pays_the_energy_of_the_hours_on_the_appliance()
    {
        var session = Assert.Single((await Costs("""{"entry":"session","who":"Renter","from":"2026-03-02T17:00:00Z","to":"2026-03-02T20:30:00Z"}""")).Sessions);
        Assert.Equal(("Renter", 3.5, 17.5, 1.75m), (session.Who, session.Hours.Value, Math.Round(session.EnergyKwh.Value, 6), session.Amount!.Value));
        Assert.Equal("2 Mar 2026, 18:00 to 2 Mar 2026, 21:30", session.WhenText);
    }

    [Fact]
    public async Task Two_at_one_glory_hole_share_the_time_they_have_it_together()
    {
        var costs = await Costs("""{"entry":"session","who":"Ada","from":"2026-03-02T10:00:00Z","to":"2026-03-02T14:00:00Z"}""", """{"entry":"session","who":"Bo","from":"2026-03-02T12:00:00Z","to":"2026-03-02T16:00:00Z"}""");
        // Two hours alone and two shared, for each: 3 of 6 hours of fire.
        Assert.Equal([1.50m, 1.50m], costs.Sessions.Select(s => s.Amount!.Value));
        Assert.Equal(30, costs.Sessions.Sum(s => s.EnergyKwh.Value), 6);
    }

    [Fact]
    public async Task A_person_s_sessions_are_added_up_and_only_their_part_inside_the_days_counts()
    {
        var costs = await Costs("""{"entry":"session","who":"Ada","from":"2026-03-02T10:00:00Z","to":"2026-03-02T11:00:00Z"}""", """{"entry":"session","who":"ada","from":"2026-03-02T22:00:00Z","to":"2026-03-03T02:00:00Z"}""");
        var person = Assert.Single(costs.Persons);
        Assert.Equal((2, 2.0, 1.00m), (person.Sessions, person.Hours.Value, person.Amount!.Value));
    }

    [Fact]
    public async Task A_session_that_was_struck_out_costs_nobody()
    {
        var costs = await Costs("""{"id":"s-1","entry":"session","who":"Ada","from":"2026-03-02T10:00:00Z","to":"2026-03-02T11:00:00Z"}""", """{"entry":"correction","of":"s-1"}""");
        Assert.Empty(costs.Sessions);
    }

    [Theory]
    [InlineData("""{"entry":"session","from":"2026-03-02T10:00:00Z","to":"2026-03-02T11:00:00Z"}""", "needs a name")]
    [InlineData("""{"entry":"session","who":"Ada","from":"2026-03-02T10:00:00Z"}""", "needs its times")]
    [InlineData("""{"entry":"session","who":"Ada","from":"2026-03-02T10:00:00Z","to":"2026-03-02T09:00:00Z"}""", "ends before it begins")]
    public async Task A_session_without_sense_is_refused_with_what_to_send(string entry, string says)
    {
        await using var studio = OpenStudio.Open(Steady(prices: Plain));
        await studio.Send("glory-hole-1/log", entry);
        Assert.Contains(says, Assert.Single(studio.Refused).Reason, StringComparison.Ordinal);
    }
}
