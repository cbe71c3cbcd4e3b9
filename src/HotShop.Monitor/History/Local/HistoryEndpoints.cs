using HotShop.Monitor.Configuration;
using HotShop.Monitor.History.Csv;
using HotShop.Monitor.History.Import;
using HotShop.Monitor.History.Replay;
using HotShop.Monitor.Http;
using NodaTime.Extensions;

namespace HotShop.Monitor.History.Local;

static class HistoryEndpoints
{
    public static void MapHistory(this IEndpointRouteBuilder app)
    {
        var group = LocalDoor.Group(app);
        MapReplay(group);
        group.MapPost("/import", async (string kind, bool? dryRun, bool? replace, string? name, HttpRequest request, StudioPlan plan, FileImport import, CancellationToken stop) =>
        {
            // Set aside first: the file is read twice, and nothing is written before all of it is here.
            await using var aside = Aside(plan);
            await request.Body.CopyToAsync(aside, stop);
            await aside.FlushAsync(stop);
            try
            {
                return Results.Ok(await import.Run(kind, () => new FileStream(aside.Name, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete), name ?? "the file",
                    new ImportChoices(dryRun ?? false, replace ?? false), stop));
            }
            catch (CsvFileException wrong)
            {
                return TypedResults.Problem(wrong.Message, statusCode: StatusCodes.Status422UnprocessableEntity, title: "Nothing was imported");
            }
        });
    }

    static void MapReplay(RouteGroupBuilder group) =>
        group.MapPost("/replay", (string from, string to, StudioReplay replay, TimeProvider clock, CancellationToken stop) =>
        {
            var now = clock.GetUtcNow().ToInstant();
            return replay.Run(Ask.Time(from, "from", now), Ask.Time(to, "to", now), apply: true, stop);
        });

    /// <summary>A file of ours in the data folder, gone when it is closed.</summary>
    static FileStream Aside(StudioPlan plan) => new(Path.Combine(plan.DataDirectory, $"import-{Guid.NewGuid():N}.part"), new FileStreamOptions
    {
        Mode = FileMode.CreateNew, Access = FileAccess.ReadWrite, Share = FileShare.ReadWrite | FileShare.Delete, Options = FileOptions.DeleteOnClose | FileOptions.Asynchronous, BufferSize = 1 << 16,
    });
}
