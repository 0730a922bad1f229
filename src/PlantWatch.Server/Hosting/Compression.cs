using System.IO.Compression;
using Microsoft.AspNetCore.ResponseCompression;

namespace PlantWatch.Server.Hosting;

/// <summary>What a phone at the poolside loads is packed: the page is text, and so are readings.</summary>
/// <remarks>
/// Over TLS too. What packing can betray there (RFC 9325, section 3.3; CVE-2013-3587) is a secret that stands in an answer beside what somebody else put into it:
/// answers of this interface carry no token and no password.
/// </remarks>
internal static class Compression
{
    private static readonly string[] Packed = [.. ResponseCompressionDefaults.MimeTypes, "image/svg+xml", "application/problem+json", "application/manifest+json"];

    public static IServiceCollection AddCompression(this IServiceCollection services) => services
        .Configure<BrotliCompressionProviderOptions>(o => o.Level = CompressionLevel.Optimal)
        .Configure<GzipCompressionProviderOptions>(o => o.Level = CompressionLevel.Optimal)
        .AddResponseCompression(o =>
        {
            o.EnableForHttps = true;
            o.MimeTypes = Packed;
        });
}
