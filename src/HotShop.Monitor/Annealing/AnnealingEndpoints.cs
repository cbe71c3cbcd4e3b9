using HotShop.Monitor.Configuration;
using HotShop.Monitor.Http;
using NodaTime.Extensions;

namespace HotShop.Monitor.Annealing;

static class AnnealingEndpoints
{
    /// <summary>Needs in the container: plan, store reader and writer, latest readings and reading history.</summary>
    public static IServiceCollection AddAnnealing(this IServiceCollection services) => services
        .AddSingleton<LoadBook>().AddSingleton<LoadAnswers>().AddSingleton<CoolingLessons>().AddSingleton<OpeningBook>().AddSingleton<IAnnealingCurves>(s => s.GetRequiredService<LoadBook>());

    public static void MapAnnealing(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/annealing/loads", (LoadBook loads, LoadAnswers answers, TimeProvider clock) =>
        {
            var now = clock.GetCurrentInstant();
            return loads.All.Select(l => answers.Of(l, now, withMeasured: false));
        }).WithName("annealer-loads").WithSummary("Loads of the annealers with their curves, newest first");

        app.MapGet("/api/annealing/loads/{id}", (string id, LoadBook loads, LoadAnswers answers, TimeProvider clock) =>
            loads.Find(id) is { } load
                ? answers.Of(load, clock.GetCurrentInstant(), withMeasured: true)
                : throw new BadHttpRequestException($"there is no load '{id}': see /api/annealing/loads for all", StatusCodes.Status404NotFound))
            .WithName("annealer-load").WithSummary("One load: curve, measured curve, deviation now, when it is done");

        app.MapPost("/api/annealing/loads", async (LoadRequest request, StudioPlan plan, LoadBook loads, LoadAnswers answers, TimeProvider clock, CancellationToken stop) =>
        {
            var now = clock.GetCurrentInstant();
            var (load, problem) = LoadForm.Check(request, Ask.Appliance(plan, request.Appliance), now, () => Guid.CreateVersion7(clock.GetUtcNow()).ToString("N"));
            if (load is null) throw new BadHttpRequestException(problem!);
            var (kept, isNew) = await loads.Add(load, stop);
            return TypedResults.Json(answers.Of(kept, now, withMeasured: false), statusCode: isNew ? StatusCodes.Status201Created : StatusCodes.Status200OK);
        }).WithName("add-annealer-load").WithSummary("Types a load and its curve; the same id is the same load");
    }
}
