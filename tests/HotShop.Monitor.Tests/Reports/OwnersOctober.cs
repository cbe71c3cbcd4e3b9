using HotShop.Monitor.Money;
using HotShop.Monitor.Reports;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Reports;

/// <summary>One running service with two months behind it, for all tests that only look.</summary>
public sealed class OwnersOctober : IAsyncLifetime
{
    internal OwnersService Service { get; private set; } = null!;

    internal HttpClient Http { get; } = new();

    public async ValueTask InitializeAsync()
    {
        Service = await OwnersService.Start(new LocalDate(2026, 8, 20));
        Http.BaseAddress = new Uri(Service.Address);
    }

    internal StudioFormat Format => Service.The<AccountBook>().Format;

    internal Account Account(int month = 10) => Service.The<AccountBook>().Of(new LocalDate(2026, month, 1), new LocalDate(2026, month, 1).PlusMonths(1).PlusDays(-1), Service.Now);

    internal AccountStory Story(int month = 10) => new(Account(month), Format);

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        await Service.DisposeAsync();
    }
}

[CollectionDefinition("owner")]
public sealed class SharedOctober : ICollectionFixture<OwnersOctober>;
