using System.Security.Claims;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Web.Access;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Fuel;

public sealed class MoneyTests
{
    static readonly FuelUse Hour = new(Instant.FromUtc(2026, 3, 2, 8, 0), Instant.FromUtc(2026, 3, 2, 9, 0), 25.5, 0, 2.33, 2.81m, 4.6, 1, 0);

    static FuelAnswer For(params string[] roles) =>
        FuelEndpoints.Answer(Hour, "EUR", new ClaimsPrincipal(new ClaimsIdentity(roles.Select(r => new Claim(ClaimTypes.Role, r)), "test")));

    [Fact] public void The_owner_sees_what_it_cost() => Assert.Equal(2.81m, For(AccessPolicies.Owner).CostAmount);

    [Fact] public void A_paired_screen_sees_the_energy_but_no_money() => Assert.Equal((25.5, null), (For(AccessPolicies.Screen).EnergyKwh, For(AccessPolicies.Screen).CostAmount));
}
