using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Hosting;

/// <summary>Pages of other sites may neither act here nor listen in through the browser of somebody who can reach this server.</summary>
/// <remarks>
/// A browser asks nobody before it opens a WebSocket for a foreign page, and names that page in Origin (RFC 6455, section 10.2).
/// A reverse proxy must hand on the Host that it was asked for, or its address is named in the options.
/// </remarks>
internal static class ForeignOrigins
{
    public static void UseForeignOrigins(this WebApplication app)
    {
        var known = app.Services.GetRequiredService<PlantWatchOptions>().Origins;
        app.Use((context, next) => IsForeign(context.Request, known)
            ? Answers.Problem(StatusCodes.Status403Forbidden, "Not from there", [new FieldSaid("Origin", "origin.foreign", Reader.Words.Find("origin.foreign"))]).ExecuteAsync(context)
            : next(context));
    }

    private static bool IsForeign(HttpRequest request, IEnumerable<string> known)
    {
        var only = HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method) || HttpMethods.IsOptions(request.Method);
        if (only && !request.Path.StartsWithSegments("/live", StringComparison.OrdinalIgnoreCase)) return false;
        if (request.Headers.Origin is not [{ Length: > 0 } origin, ..]) return false;
        if (known.Contains(origin, StringComparer.OrdinalIgnoreCase)) return false;
        return !Uri.TryCreate(origin, UriKind.Absolute, out var from) || !string.Equals(from.Authority, request.Host.Value, StringComparison.OrdinalIgnoreCase);
    }
}
