using HotShop.Monitor.Tests.Reports;
using NodaTime;
using Xunit;

namespace HotShop.EndToEnd.Tests.Pages;

/// <summary>A service with months behind it, in this process: the demo's first days have no month to show. Its clock stands on an October afternoon.</summary>
public sealed class OwnersDesk : IAsyncLifetime
{
    internal OwnersService Service { get; private set; } = null!;

    public string Address => Service.Address;

    public async ValueTask InitializeAsync() => Service = await OwnersService.Start(new LocalDate(2026, 7, 1));

    public ValueTask DisposeAsync() => Service.DisposeAsync();
}
