using System.Text.Json;
using HotShop.Monitor.Commands;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Money;
using HotShop.Monitor.Reports;
using HotShop.Monitor.Reports.Pdf;
using HotShop.Monitor.Tests.Money;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Commands;

/// <summary>The report while a service has the store: it looks from beside.</summary>
[Collection("console")]
public sealed class ReportCommandTests
{
    [Fact]
    public async Task A_month_is_written_while_the_service_runs_with_the_digits_of_the_account()
    {
        await using var studio = await AccountTests.Filled(AccountTests.Steady(prices: AccountTests.Plain), Instant.FromUtc(2026, 3, 1, 12, 0), Instant.FromUtc(2026, 3, 9, 12, 0));
        var config = Path.Combine(studio.Plan.DataDirectory, "hotshop.json");
        File.WriteAllText(config, JsonSerializer.Serialize(studio.Plan.Configuration, ConfigurationFile.Json).Replace("\"schema\"", "\"$schema\"", StringComparison.Ordinal));
        var book = studio.The<AccountBook>();
        var account = book.Of(AccountTests.Day("2026-03-01"), AccountTests.Day("2026-03-31"), studio.Now);
        foreach (var (ending, expected) in new[] { ("csv", AccountCsv.Of(account, book.Format)), ("json", AccountJson.Of(account)), ("pdf", new ReportPdf(account, book.Format).Write(studio.Now)) })
        {
            var file = Path.Combine(studio.Plan.DataDirectory, $"march.{ending}");
            var (status, said, error) = await CommandTests.Run(studio.Clock, "report", "--month", "2026-03", "--out", file, "--config", config);
            Assert.Equal((0, ""), (status, error));
            Assert.Contains($"March 2026, {account.Cost!.Text}", said, StringComparison.Ordinal);
            Assert.Equal(expected, File.ReadAllBytes(file));
        }
    }

    [Theory]
    [InlineData("--month: 'March' is no month", "report", "--month", "March")]
    [InlineData("ends in none of .csv", "report", "--month", "2026-03", "--out", "march.doc")]
    [InlineData("--month", "report")]
    public async Task A_wrong_question_is_said_and_ends_with_2(string says, params string[] arguments)
    {
        var (status, _, error) = await CommandTests.Run(arguments);
        Assert.Equal(2, status);
        Assert.Contains(says, error, StringComparison.Ordinal);
    }
}
