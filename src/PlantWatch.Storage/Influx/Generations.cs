using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Web;

namespace PlantWatch.Storage.Influx;

/// <summary>Speaks to every generation of the server: signs each request, and turns the newer way of writing into the older one where the server says that it is one of those.</summary>
/// <remarks>1.x before 1.8 has no <c>/api/v2/write</c>, and 1.x takes user and password at <c>/query</c>. It names its version in every answer, so nothing needs to be set.</remarks>
internal sealed class Generations(InfluxPlace place, HttpMessageHandler inner) : DelegatingHandler(inner)
{
    private const string NewWrite = "/api/v2/write";
    private volatile bool _isOne;
    private volatile bool _writesOldWay;

    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        var asked = request.RequestUri!;
        var isWrite = asked.AbsolutePath.EndsWith(NewWrite, StringComparison.Ordinal);
        var answer = await TryAsync(request, asked, isWrite, cancellationToken).ConfigureAwait(false);
        if (!LearnsFrom(answer, isWrite)) return answer;
        answer.Dispose();
        return await TryAsync(request, asked, isWrite, cancellationToken).ConfigureAwait(false);
    }

    private Task<HttpResponseMessage> TryAsync(HttpRequestMessage request, Uri asked, bool isWrite, CancellationToken cancellation)
    {
        request.RequestUri = isWrite && _writesOldWay ? OldWay(asked) : asked;
        request.Headers.Authorization = Signature(isWrite);
        return base.SendAsync(request, cancellation);
    }

    // True when the same request is worth another try with what the answer taught.
    private bool LearnsFrom(HttpResponseMessage answer, bool isWrite)
    {
        if (_isOne && (_writesOldWay || !isWrite)) return false;
        if (!answer.Headers.TryGetValues("X-Influxdb-Version", out var version) || version.FirstOrDefault() is not { } said || !said.TrimStart('v').StartsWith("1.", StringComparison.Ordinal)) return false;
        _isOne = true;
        _writesOldWay |= isWrite && answer.StatusCode == HttpStatusCode.NotFound;
        return (isWrite && _writesOldWay) || answer.StatusCode == HttpStatusCode.Unauthorized;
    }

    private AuthenticationHeaderValue? Signature(bool isWrite)
    {
        if (place.Token() is not { Length: > 0 } token) return null;
        var asUser = _isOne && (!isWrite || _writesOldWay) && token.Contains(':', StringComparison.Ordinal);
        return asUser ? new("Basic", Convert.ToBase64String(Encoding.UTF8.GetBytes(token))) : new("Token", token);
    }

    private static Uri OldWay(Uri asked)
    {
        var query = HttpUtility.ParseQueryString(asked.Query);
        var place = (query["bucket"] ?? "").Split('/', 2);
        var keep = place.Length > 1 ? "&rp=" + Uri.EscapeDataString(place[1]) : "";
        return new UriBuilder(asked)
        {
            Path = asked.AbsolutePath[..^NewWrite.Length] + "/write", Query = $"db={Uri.EscapeDataString(place[0])}{keep}&precision={(query["precision"] == "us" ? "u" : query["precision"])}",
        }.Uri;
    }
}
