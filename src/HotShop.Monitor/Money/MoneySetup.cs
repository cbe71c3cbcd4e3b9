using HotShop.Monitor.Logbook;

namespace HotShop.Monitor.Money;

static class MoneySetup
{
    public static IServiceCollection AddMoney(this IServiceCollection services) =>
        services.AddSingleton<SessionLog>().AddSingleton<UseBook>().AddSingleton<BillBook>().AddSingleton<AccountBook>();
}
