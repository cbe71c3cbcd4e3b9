using System.CommandLine;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.History.Csv;
using HotShop.Monitor.Money;
using HotShop.Monitor.Reports;
using HotShop.Monitor.Store;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Extensions;
using NodaTime.Text;

namespace HotShop.Monitor.Commands;

/// <summary>Writes the owner's report of a month. Looks at the store from beside: a running service does not notice.</summary>
static class ReportCommand
{
    public static Command Make(TimeProvider clock)
    {
        var month = new Option<string>("--month") { Description = "Month as YYYY-MM", Required = true };
        var file = new Option<string?>("--out") { Description = $"File to write: its ending says how ({ReportForm.Endings}); left out: the CSV table to standard output" };
        var config = CommandLine.ConfigurationOption();
        var command = new Command("report", "Writes the owner's report of a month: what it cost, and where it went") { month, file, config };
        month.Validators.Add(r => { if (r.Tokens.Count == 1 && !YearMonthPattern.Iso.Parse(r.Tokens[0].Value).Success) r.AddError($"--month: '{r.Tokens[0].Value}' is no month; write one like 2026-10."); });
        file.Validators.Add(r => { if (r.Tokens.Count == 1 && ReportForm.Of(r.Tokens[0].Value) is null) r.AddError($"--out: '{r.Tokens[0].Value}' ends in none of {ReportForm.Endings}."); });
        command.SetAction(parsed =>
        {
            var plan = CommandLine.Plan(parsed.GetValue(config)!);
            return Write(plan, YearMonthPattern.Iso.Parse(parsed.GetValue(month)!).Value.OnDayOfMonth(1), parsed.GetValue(file), clock);
        });
        return command;
    }

    static int Write(StudioPlan plan, LocalDate first, string? name, TimeProvider clock)
    {
        var now = clock.GetUtcNow().ToInstant();
        if (plan.Zone.AtStartOfDay(first).ToInstant() > now)
        {
            Console.Error.WriteLine($"--month: {first:uuuu-MM} is still to come; write a month that has begun");
            return CommandLine.WrongInput;
        }
        using var studio = Beside(plan, clock);
        var book = studio.GetRequiredService<AccountBook>();
        var account = book.Of(first, first.With(DateAdjusters.EndOfMonth), now);
        var form = name is null ? ReportForm.All[0] : ReportForm.Of(name)!;
        var bytes = form.Write(account, book.Format, now);
        if (name is null)
        {
            using var output = Console.OpenStandardOutput();
            output.Write(bytes);
            return CommandLine.Done;
        }
        NewFile.Write(name, target => { target.Write(bytes); return bytes.Length; });
        Console.WriteLine($"{name}: {account.Span.Title}, {account.Cost?.Text ?? "no price known"}, {account.EnergyKwh.Text}.");
        foreach (var missing in account.MissingPrices) Console.WriteLine($"  {missing.Text}");
        return CommandLine.Done;
    }

    /// <summary>What reads and computes, over a store that is only looked at.</summary>
    internal static ServiceProvider Beside(StudioPlan plan, TimeProvider clock)
    {
        var services = new ServiceCollection();
        services.AddLogging().AddSingleton(plan).AddSingleton(clock).AddSingleton(plan.Channels).AddSingleton<IStoreReader>(StoreView.Open(plan.DataDirectory));
        MonitorHost.AddData(services);
        services.AddSingleton<IStoreWriter, NothingWritten>();
        return services.BuildServiceProvider();
    }

    /// <summary>A report changes nothing.</summary>
    sealed class NothingWritten : IStoreWriter
    {
        public Task<T> Write<T>(Func<WriteScope, T> work, CancellationToken stop = default) => throw new NotSupportedException("the store is only looked at");
    }
}
