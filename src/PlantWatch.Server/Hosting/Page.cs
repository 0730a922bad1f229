using Microsoft.Extensions.FileProviders;

namespace PlantWatch.Server.Hosting;

/// <summary>The browser's page: it lies beside the program, wherever that is started from.</summary>
internal static class Page
{
    public static void UsePage(this WebApplication app)
    {
        var folder = Path.Combine(AppContext.BaseDirectory, "wwwroot");
        if (!Directory.Exists(folder))
        {
            app.MapGet("/", () => Results.Text("This build has no page: it was made with -p:SkipClient=true. The interface is under /api/v1.", "text/plain"));
            return;
        }

        var files = new PhysicalFileProvider(folder);
        app.UseDefaultFiles(new DefaultFilesOptions { FileProvider = files });
        app.UseStaticFiles(new StaticFileOptions { FileProvider = files, OnPrepareResponse = Cache });
        app.MapFallback("/{**path}", async context =>
        {
            // An unknown address of the interface is an error, one of the page is the page's to show.
            if (context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal) || Path.HasExtension(context.Request.Path.Value))
            {
                context.Response.StatusCode = StatusCodes.Status404NotFound;
                return;
            }

            context.Response.ContentType = "text/html; charset=utf-8";
            context.Response.Headers.CacheControl = "no-cache";
            await context.Response.SendFileAsync(files.GetFileInfo("index.html"));
        });
    }

    // Built files carry a hash of their content in their name; the page that names them must be asked for each time.
    private static void Cache(Microsoft.AspNetCore.StaticFiles.StaticFileResponseContext file) =>
        file.Context.Response.Headers.CacheControl =
            file.Context.Request.Path.StartsWithSegments("/assets", StringComparison.Ordinal) ? "public, max-age=31536000, immutable" : "no-cache";
}
