using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using PlantWatch.Simulator.People;

namespace PlantWatch.Simulator.Wire;

/// <summary>What came of typing a check in.</summary>
/// <param name="Taken">The server kept it.</param>
/// <param name="RepeatAsked">The answer doubts the check and wants another.</param>
/// <param name="Words">The answer's words, or the reason it was refused.</param>
internal sealed record CheckOutcome(bool Taken, bool RepeatAsked, string Words);

/// <summary>Types in through the public interface what people found and did.</summary>
internal sealed class CheckDesk(HttpClient http)
{
    private const int Attempts = 20;
    private static readonly TimeSpan RetryAfter = TimeSpan.FromMilliseconds(500);

    /// <summary>Checks the server kept.</summary>
    public int Taken { get; private set; }

    /// <summary>Checks the server refused.</summary>
    public int Refused { get; private set; }

    /// <summary>Sends a check; sending it twice is harmless, so a broken connection is tried again.</summary>
    public async Task<CheckOutcome> SendAsync(CheckSheet sheet, CancellationToken cancellation)
    {
        for (var attempt = 1; ; attempt++)
        {
            try
            {
                using var body = new ByteArrayContent(sheet.Body());
                body.Headers.ContentType = new MediaTypeHeaderValue("application/json");
                using var answer = await http.PutAsync(new Uri($"api/v1/checks/{sheet.Id}", UriKind.Relative), body, cancellation).ConfigureAwait(false);
                var text = await answer.Content.ReadAsStringAsync(cancellation).ConfigureAwait(false);
                if (answer.StatusCode < HttpStatusCode.InternalServerError) return Outcome(answer.IsSuccessStatusCode, text);
                if (attempt == Attempts) return Outcome(false, $"{(int)answer.StatusCode} {text}");
            }
            catch (HttpRequestException e)
            {
                if (attempt == Attempts) return Outcome(false, e.Message);
            }
            await Task.Delay(RetryAfter, cancellation).ConfigureAwait(false);
        }
    }

    /// <summary>Tells of a filter. What is refused is not sent again: somebody has said it before.</summary>
    public async Task<bool> SendAsync(WashWord word, CancellationToken cancellation)
    {
        using var body = JsonContent.Create(new { id = word.Id, by = word.Who, circuit = word.Circuit });
        using var answer = await http.PostAsync(new Uri($"api/v1/filters/{word.Filter}/{(word.Begins ? "backwash" : "washed")}", UriKind.Relative), body, cancellation).ConfigureAwait(false);
        return answer.IsSuccessStatusCode;
    }

    /// <summary>Writes a row of a book; the words of the server when it is refused, null when it is kept.</summary>
    public async Task<string?> SendAsync(BookWord word, CancellationToken cancellation)
    {
        using var body = JsonContent.Create(word.Body);
        using var answer = await http.PutAsync(new Uri($"api/v1/{word.Path}/{word.Id}", UriKind.Relative), body, cancellation).ConfigureAwait(false);
        return answer.IsSuccessStatusCode ? null : await answer.Content.ReadAsStringAsync(cancellation).ConfigureAwait(false);
    }

    private CheckOutcome Outcome(bool taken, string text)
    {
        if (!taken)
        {
            Refused++;
            return new(false, false, text);
        }
        Taken++;
        var verdicts = Verdicts(text);
        return new(true, verdicts.Exists(v => v.EndsWith("check_suspect", StringComparison.Ordinal)), string.Join(", ", verdicts));
    }

    private static List<string> Verdicts(string text)
    {
        try
        {
            using var json = JsonDocument.Parse(text);
            if (json.RootElement.ValueKind != JsonValueKind.Object || !json.RootElement.TryGetProperty("judgements", out var judgements)) return [];
            return [.. judgements.EnumerateArray().Select(j => $"{Word(j, "probeId")} {Word(j, "verdict")}")];
        }
        catch (JsonException)
        {
            return [];
        }
    }

    private static string Word(JsonElement element, string name) => element.TryGetProperty(name, out var value) ? value.ToString() : "";
}
