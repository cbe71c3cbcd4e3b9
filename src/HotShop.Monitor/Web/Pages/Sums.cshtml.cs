using HotShop.Monitor.Money;
using HotShop.Monitor.Sums;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using NodaTime.Extensions;

namespace HotShop.Monitor.Web.Pages;

/// <summary>The everyday sums: the list, or one of them with its numbers from the address. Whole without scripts; changes nothing.</summary>
internal sealed class SumsModel(SumBook book, AccountBook account, TimeProvider clock) : PageModel
{
    public WorkedSum? Worked { get; private set; }

    public SumText Text { get; } = new(account.Format);

    public IReadOnlyList<SumGroup> Groups => [.. book.All.GroupBy(s => s.Group).Select((g, i) => new SumGroup($"{i}", g.Key, [.. g]))];

    public IActionResult OnGet(string? id)
    {
        if (string.IsNullOrEmpty(id)) return Page();
        if (book.Find(id) is not { } sum) return NotFound();
        Worked = SumBook.Work(sum, SumEndpoints.Typed(Request.Query), Text.DecimalMark, Text.IsUs, new SumAsker(User.IsInRole(AccountEndpoints.OwnerOnly), clock.GetUtcNow().ToInstant()));
        if (Worked.Answer is null) Response.StatusCode = StatusCodes.Status400BadRequest;
        return Page();
    }

    /// <summary>What a field is for; where it counts for some choices only, which.</summary>
    public static string? HintOf(Sum sum, SumField field)
    {
        if (field.When is not { } when || sum.Fields.OfType<ChoiceField>().FirstOrDefault(c => c.Name == when.Field) is not { } choice) return field.Hint;
        var words = string.Join(", ", choice.Choices.Where(c => when.Values.Contains(c.Value)).Select(c => c.Words));
        return $"Counts for {choice.Label.ToLowerInvariant()} \u201c{words}\u201d only.{(field.Hint is { } hint ? " " + hint : "")}";
    }

    public static string Sentence(string problem) => char.ToUpperInvariant(problem[0]) + problem[1..] + ".";

    public static string Wrong(WorkedSum worked) =>
        worked.Input.Entries.Count(e => e.Problem is not null) is 1 && worked.Input.Entries.First(e => e.Problem is not null) is var one
            ? $"{one.Field.Label}: {one.Problem}." : "Several numbers are wrong; each says what beside it.";
}

internal sealed record SumGroup(string Id, string Name, IReadOnlyList<Sum> Sums);
