using Microsoft.AspNetCore.Mvc;

namespace HotShop.Monitor.Logbook;

/// <summary>A picture to an entry: the meter's face, the crack in the pot.</summary>
static class PhotoEndpoints
{
    public static void MapPhotos(this IEndpointRouteBuilder app)
    {
        app.MapPost("/api/logbook/{id}/photo", async (string id, HttpRequest request, LogbookBook logbook, PhotoShelf photos, CancellationToken stop) =>
        {
            if (!logbook.Has(id)) throw new BadHttpRequestException($"there is no entry '{id}': log it first, then send its picture", StatusCodes.Status404NotFound);
            using var body = new MemoryStream();
            await request.Body.CopyToAsync(body, stop);
            var content = body.ToArray();
            if (content.Length > PhotoShelf.MostBytes) throw new BadHttpRequestException("the picture is larger than 6 MB: send a smaller one", StatusCodes.Status413PayloadTooLarge);
            if (PhotoShelf.KindOf(content) is not { } kind)
                throw new BadHttpRequestException("this is no JPEG or PNG: send the picture itself as the body", StatusCodes.Status415UnsupportedMediaType);
            if (!await photos.Keep(id, content, kind, stop))
                throw new BadHttpRequestException($"entry '{id}' has another picture already; correct the entry and log it again to change it", StatusCodes.Status409Conflict);
            return Results.Created($"/api/logbook/{Uri.EscapeDataString(id)}/photo", null);
        }).WithName("photo").WithSummary("Adds a picture to an entry: a JPEG or PNG of at most 6 MB as the body")
            // A little more is taken in, so that who sends too much is told so instead of being cut off.
            .WithMetadata(new RequestSizeLimitAttribute(2 * PhotoShelf.MostBytes));

        app.MapGet("/api/logbook/{id}/photo", (string id, PhotoShelf photos, HttpResponse response) =>
        {
            if (photos.Of(id) is not { } kept) throw new BadHttpRequestException($"entry '{id}' has no picture", StatusCodes.Status404NotFound);
            // By what it was seen to be, and nothing a browser would run even if it were something else.
            response.Headers.XContentTypeOptions = "nosniff";
            response.Headers.ContentSecurityPolicy = "default-src 'none'; sandbox";
            return Results.File(kept.Path, kept.Kind == PhotoKind.Jpeg ? "image/jpeg" : "image/png");
        }).WithName("photo-of-entry").WithSummary("The picture of an entry");
    }
}
