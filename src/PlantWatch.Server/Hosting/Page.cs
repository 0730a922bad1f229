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
        // Only what a browser asks a page by: any other method at an address of the interface is to be told so, and not to get the page.
        app.MapMethods("/{**path}", ["GET", "HEAD"], async context =>
        {
            // An unknown address of the interface is an error, one of the page is the page's to show.
            if (context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal) || Path.HasExtension(context.Request.Path.Value))
            {
                context.Response.StatusCode = StatusCodes.Status404NotFound;
                return;
            }

            context.Response.ContentType = "text/html; charset=utf-8";
            context.Response.Headers.CacheControl = "no-cache";
            await context.Response.SendFileAsync(page);
        }).Add(endpoint => ((RouteEndpointBuilder)endpoint).Order = int.MaxValue);
    }

    // Built files carry a hash of their content in their name; the page that names them must be asked for each time.
    private static void Cache(Microsoft.AspNetCore.StaticFiles.StaticFileResponseContext file) =>
        file.Context.Response.Headers.CacheControl =
            file.Context.Request.Path.StartsWithSegments("/assets", StringComparison.Ordinal) ? "public, max-age=31536000, immutable" : "no-cache";
}
