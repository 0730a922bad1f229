using System.Net.Http.Json;
using System.Text.Json.Nodes;

namespace PlantWatch.Demo;

/// <summary>The interface as anybody sees it: addresses and JSON, no shared types.</summary>
internal sealed class PublicApi(HttpClient http)
{
    /// <summary>Reads something; null where the server refuses or has none.</summary>
    public async Task<JsonNode?> GetAsync(string path, CancellationToken cancellation)
    {
        using var answer = await http.GetAsync(new Uri("api/v1/" + path, UriKind.Relative), cancellation);
        return answer.IsSuccessStatusCode ? await JsonNode.ParseAsync(await answer.Content.ReadAsStreamAsync(cancellation), cancellationToken: cancellation) : null;
    }

    /// <summary>Puts something; false with the server's words where it refuses.</summary>
    public Task<(bool Taken, string Words)> PutAsync(string path, JsonObject body, CancellationToken cancellation) => SendAsync(HttpMethod.Put, path, body, cancellation);

    /// <summary>Posts something; false with the server's words where it refuses.</summary>
    public Task<(bool Taken, string Words)> PostAsync(string path, JsonObject body, CancellationToken cancellation) => SendAsync(HttpMethod.Post, path, body, cancellation);

    private async Task<(bool Taken, string Words)> SendAsync(HttpMethod method, string path, JsonObject body, CancellationToken cancellation)
    {
        using var request = new HttpRequestMessage(method, new Uri("api/v1/" + path, UriKind.Relative)) { Content = JsonContent.Create(body) };
        using var answer = await http.SendAsync(request, cancellation);
        return (answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(cancellation));
    }
}
