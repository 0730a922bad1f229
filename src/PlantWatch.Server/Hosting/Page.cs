using Microsoft.Extensions.FileProviders;

namespace PlantWatch.Server.Hosting;

/// <summary>The browser's page: it lies beside the program, wherever that is started from.</summary>
internal static class Page
{
    private static string Folder => Path.Combine(AppContext.BaseDirectory, "wwwroot");

    /// <summary>Serves the files. Before routing: the fallback of the page would otherwise take every file's address.</summary>
    public static void UsePageFiles(this WebApplication app)
    {
        if (!Directory.Exists(Folder)) return;
        var files = new PhysicalFileProvider(Folder);
        app.UseDefaultFiles(new DefaultFilesOptions { FileProvider = files });
        app.UseStaticFiles(new StaticFileOptions { FileProvider = files, OnPrepareResponse = Cache });
    }

    /// <summary>Gives the page itself for every address that is nobody else's.</summary>
    public static void MapPage(this WebApplication app)
    {
        if (!Directory.Exists(Folder))
        {
            app.MapGet("/", () => Results.Text("This build has no page: it was made with -p:SkipClient=true. The interface is under /api/v1.", "text/plain"));
            return;
        }

        var page = new PhysicalFileProvider(Folder).GetFileInfo("index.html");
        // Not as a route: it would match every address, and nobody would be told that his method or content type is not taken.
        app.Use(async (context, next) =>
        {
            var request = context.Request;
            var asksForPage = context.GetEndpoint() is null && (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method));
            // An unknown address of the interface is an error, one of the page is the page's to show.
            if (!asksForPage || request.Path.StartsWithSegments("/api", StringComparison.Ordinal) || Path.HasExtension(request.Path.Value))
            {
                await next(context);
                return;
            }

            context.Response.ContentType = "text/html; charset=utf-8";
            context.Response.Headers.CacheControl = "no-cache";
            await context.Response.SendFileAsync(page);
        });
    }

    // Built files carry a hash of their content in their name; the page that names them must be asked for each time.
    private static void Cache(Microsoft.AspNetCore.StaticFiles.StaticFileResponseContext file) =>
        file.Context.Response.Headers.CacheControl =
            file.Context.Request.Path.StartsWithSegments("/assets", StringComparison.Ordinal) ? "public, max-age=31536000, immutable" : "no-cache";
}
