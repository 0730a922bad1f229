using System.Security.Cryptography;
using System.Text;

namespace PlantWatch.Server.Telling;

/// <summary>Signs a request so that its receiver knows it is ours, whole and new: HMAC-SHA256 over id, time and body, after the open specification Standard Webhooks.</summary>
/// <remarks>A key that begins with <c>whsec_</c> is Base64 after that, as the specification writes keys; any other is taken as its UTF-8 bytes.</remarks>
internal static class WebhookSignature
{
    private const string Prefix = "whsec_";

    /// <summary>Value of the header webhook-signature.</summary>
    /// <param name="key">The key.</param>
    /// <param name="id">Value of webhook-id.</param>
    /// <param name="seconds">Value of webhook-timestamp: seconds since 1970.</param>
    /// <param name="body">The body as sent.</param>
    /// <exception cref="FormatException">A key with the prefix whsec_ is no Base64.</exception>
    public static string Of(string key, string id, long seconds, ReadOnlySpan<byte> body)
    {
        using var mac = IncrementalHash.CreateHMAC(HashAlgorithmName.SHA256, Bytes(key));
        mac.AppendData(Encoding.UTF8.GetBytes(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{id}.{seconds}.")));
        mac.AppendData(body);
        return "v1," + Convert.ToBase64String(mac.GetHashAndReset());
    }

    private static byte[] Bytes(string key) =>
        key.StartsWith(Prefix, StringComparison.Ordinal) ? Convert.FromBase64String(key[Prefix.Length..]) : Encoding.UTF8.GetBytes(key);
}
