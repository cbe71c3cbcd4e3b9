using System.Security.Claims;
using System.Text.Json.Nodes;
using NodaTime.Extensions;

namespace HotShop.Monitor.Sums;

/// <summary>What a sum takes: a number with its limits, or one of several words.</summary>
public sealed record SumFieldAnswer(string Name, string Label, string? Unit, IReadOnlyList<string>? Units, double? Least, double? Most, double? Example, IReadOnlyList<string>? Choices);

public sealed record SumListAnswer(string Id, string Title, IReadOnlyList<SumFieldAnswer> Fields, string Method, string Source, string Range, string Caution);

static class SumEndpoints
{
    public static void MapSums(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/sums", (SumBook book) => book.All.Select(s => new SumListAnswer(s.Id, s.Title, [.. s.Fields.Select(Field)], s.Method, s.Source, s.Range, s.Caution)))
            .WithName("sums").WithSummary("The everyday sums, and what each takes");
        app.MapGet("/api/sums/{name}", (string name, SumBook book, HttpRequest request, TimeProvider clock, ClaimsPrincipal visitor) =>
        {
            var sum = book.Find(name) ?? throw new BadHttpRequestException($"there is no sum '{Wire.Shown.Short(name)}': ask for one of {string.Join(", ", book.All.Select(s => s.Id))}", StatusCodes.Status404NotFound);
            var worked = SumBook.Work(sum, Typed(request.Query), ".", isUs: false, new SumAsker(visitor.IsInRole("Owner"), clock.GetUtcNow().ToInstant()));
            if (worked.Unknown.Count > 0) throw new BadHttpRequestException($"'{Wire.Shown.Short(worked.Unknown[0])}' is unknown: this sum takes {string.Join(", ", sum.Fields.Select(f => f.Name))}");
            return worked.Answer is { } answer ? Results.Ok(Json(worked, answer))
                : Results.ValidationProblem(worked.Input.Entries.Where(e => e.Problem is not null).ToDictionary(e => e.Field.Name, e => new[] { e.Problem! }), title: "The sum cannot be worked");
        }).WithName("sum").WithSummary("One everyday sum, worked: its numbers in the address as /api/sums lists them, each with a unit as NAMEUnit where it is not the listed one");
    }

    /// <summary>Names and values of an address; a name given twice counts as last given.</summary>
    public static IReadOnlyDictionary<string, string> Typed(IQueryCollection query) => query.ToDictionary(q => q.Key, q => q.Value.LastOrDefault() ?? "");

    static JsonObject Json(WorkedSum worked, SumAnswer answer)
    {
        var (asked, results) = (new JsonObject(), new JsonObject());
        foreach (var entry in worked.Input.Entries.Where(e => e.IsAsked))
            if (entry.Field is ChoiceField) asked[entry.Field.Name] = entry.Text;
            else if (entry.Number is { } number) asked[entry.Field.Name + ((NumberField)entry.Field).Measure.Suffix] = number.Value;
        foreach (var figure in answer.Figures)
        {
            results[figure.Key] = figure.Value;
            if (figure.Low95 is { } low) results[figure.Key + "Low95"] = low;
            if (figure.High95 is { } high) results[figure.Key + "High95"] = high;
        }
        return new JsonObject
        {
            ["sum"] = worked.Sum.Id, ["title"] = worked.Sum.Title, ["asked"] = asked, ["results"] = results, ["notes"] = new JsonArray([.. answer.Notes.Select(n => JsonValue.Create(n))]),
            ["method"] = worked.Sum.Method, ["source"] = worked.Sum.Source, ["range"] = worked.Sum.Range, ["caution"] = worked.Sum.Caution,
        };
    }

    static SumFieldAnswer Field(SumField field) => field switch
    {
        NumberField n => new(n.Name, n.Label, n.Measure.Canonical.Code, [.. n.Measure.Units.Select(u => u.Code)], n.Least, n.Most, n.Example, null),
        ChoiceField c => new(c.Name, c.Label, null, null, null, null, null, [.. c.Choices.Select(o => o.Value)]),
        _ => throw new InvalidOperationException($"field {field.Name}"),
    };
}
