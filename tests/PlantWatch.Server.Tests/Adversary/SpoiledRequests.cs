using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Whole;

namespace PlantWatch.Server.Tests.Adversary;

/// <summary>Requests near good ones: in the path a star stands for anything and a wave for an id; each answer is held to be in words and never a failure of ours.</summary>
internal static class SpoiledRequests
{
    /// <summary>Sends so many of them to so many doors, one after the other.</summary>
    public static async Task SendAsync(WholeServer server, IReadOnlyList<(string Method, string Path, string? Body)> doors, int count, Mutator mutator)
    {
        using var http = new HttpClient { BaseAddress = server.Address, Timeout = TimeSpan.FromSeconds(20) };
        for (var i = 0; i < count; i++)
        {
            using var request = Request(doors, mutator);
            // A connection each: the server closes one that spoke no HTTP, and the next request must not run into that.
            request.Headers.ConnectionClose = true;
            using var answer = await http.SendAsync(request);
            var text = await answer.Content.ReadAsStringAsync();
            var said = $"{request.Method} {request.RequestUri} {await SentAsync(request)}: {(int)answer.StatusCode} {text[..Math.Min(600, text.Length)]}";
            Assert.True((int)answer.StatusCode < 500 && answer.StatusCode != HttpStatusCode.UnprocessableEntity, said);
            Assert.True(text.Length < 4_000_000, said);
            // What is no address at all, or one without end, is turned away before anything of ours sees it.
            if (answer.IsSuccessStatusCode || (text.Length == 0 && answer.StatusCode is HttpStatusCode.BadRequest or HttpStatusCode.RequestUriTooLong)) continue;
            Assert.True(text.Length > 0, said);
            Assert.DoesNotContain("Exception", text, StringComparison.Ordinal);
            Assert.DoesNotContain("PlantWatch.", text, StringComparison.Ordinal);
            var problem = JsonSerializer.Deserialize<Problem>(text, PlantJson.Options);
            Assert.True(problem is { Errors.Count: > 0 } && problem.Errors.All(e => e.Text.Length > 0), said);
        }
    }

    private static async Task<string> SentAsync(HttpRequestMessage request)
    {
        if (request.Content is null) return "";
        var sent = await request.Content.ReadAsStringAsync();
        return sent[..Math.Min(600, sent.Length)];
    }

    private static HttpRequestMessage Request(IReadOnlyList<(string Method, string Path, string? Body)> doors, Mutator mutator)
    {
        var (method, path, body) = mutator.One(doors);
        while (path.IndexOf('*', StringComparison.Ordinal) is >= 0 and var star) path = path[..star] + mutator.Text() + path[(star + 1)..];
        if (path.Contains('~', StringComparison.Ordinal)) path = path.Replace("~", mutator.Chance(0.1) ? mutator.Text() : Guid.CreateVersion7().ToString(), StringComparison.Ordinal);
        if (mutator.Chance(0.03)) method = mutator.One(["DELETE", "PATCH", "POST", "PUT", "OPTIONS"]);
        var request = new HttpRequestMessage(new HttpMethod(method), new Uri("/api/v1" + path, UriKind.Relative));
        if (body is null) return request;
        request.Content = new ByteArrayContent(mutator.Body(body));
        request.Content.Headers.ContentType = new MediaTypeHeaderValue(mutator.Chance(0.03) ? "text/plain" : "application/json");
        return request;
    }
}
