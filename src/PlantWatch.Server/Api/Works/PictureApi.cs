using Microsoft.AspNetCore.Http.Features;
using PlantWatch.Core.Maintenance.Pictures;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

// ---- POST /api/v1/pictures          the bytes of a JPEG, PNG or WebP, 2 MiB at most -> PictureView
//      GET  /api/v1/pictures/{hash}   the picture as it is kept

/// <summary>A picture as it was taken in.</summary>
/// <param name="Hash">The name to give with the job: SHA-256 of what is kept.</param>
/// <param name="Width">Its width in pixels.</param>
/// <param name="Height">Its height in pixels.</param>
/// <param name="Bytes">How many bytes are kept: the image alone.</param>
public sealed record PictureView(string Hash, int Width, int Height, int Bytes);

/// <summary>Pictures of jobs. What is sent is told by its content, stripped to the image, and served as nothing but a picture.</summary>
internal static class PictureApi
{
    // Should a browser take it for a page after all, that page may do nothing.
    private const string Policy = "default-src 'none'; sandbox";

    public static void MapPictures(this RouteGroupBuilder api)
    {
        api.MapPost("/pictures", TakeAsync).Produces<PictureView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status413PayloadTooLarge);
        api.MapGet("/pictures/{hash}", ShowAsync).Produces(StatusCodes.Status200OK, contentType: "image/jpeg").Produces<Problem>(StatusCodes.Status404NotFound);
    }

    private static async Task<IResult> TakeAsync(HttpRequest request, IPictureStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (request.HttpContext.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit) limit.MaxRequestBodySize = Picture.MostBytes + 1;
        if (request.ContentLength > Picture.MostBytes || await ReadAsync(request.Body, cancellation) is not { } sent) return Refused(PictureFault.TooLarge);
        if (Picture.Take(sent.Span, out var picture) is var fault && picture is null) return Refused(fault);
        return await store.KeepAsync(picture, Instant.From(clock.GetUtcNow()), cancellation)
            ? Answers.Ok(new PictureView(picture.Hash, picture.Width, picture.Height, picture.Bytes.Length)) : Answers.Conflict("picture", "picture.too_many_wait");
    }

    // Never more than is taken, whatever the sender says of its length.
    private static async Task<ReadOnlyMemory<byte>?> ReadAsync(Stream body, CancellationToken cancellation)
    {
        using var kept = new MemoryStream();
        var part = new byte[64 * 1024];
        while (await body.ReadAsync(part, cancellation) is > 0 and var count)
        {
            if (kept.Length + count > Picture.MostBytes) return null;
            kept.Write(part, 0, count);
        }

        return kept.ToArray();
    }

    private static IResult Refused(PictureFault fault)
    {
        var code = $"picture.{Wording.Key(fault)}";
        return fault == PictureFault.TooLarge
            ? Answers.Problem(StatusCodes.Status413PayloadTooLarge, "Too large", [new FieldSaid("picture", code, Reader.Words.Find(code))]) : Answers.Invalid("picture", code);
    }

    private static async Task<IResult> ShowAsync(string hash, HttpContext context, IPictureStore store, CancellationToken cancellation)
    {
        if (await store.PictureAsync(hash, cancellation) is not { } kept) return Answers.NotFound("picture of that name");
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        // Its name is its content: it never becomes another.
        headers.CacheControl = "private, max-age=31536000, immutable";
        var (type, ending) = kept.Kind switch { PictureKind.Png => ("image/png", "png"), PictureKind.WebP => ("image/webp", "webp"), _ => ("image/jpeg", "jpg") };
        headers.ContentDisposition = $"inline; filename=\"{hash}.{ending}\"";
        return Results.Bytes(kept.Bytes, type);
    }
}
