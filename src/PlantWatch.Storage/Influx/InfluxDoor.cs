using System.Net;
using InfluxDB.Client;
using InfluxDB.Client.Api.Domain;

namespace PlantWatch.Storage.Influx;

/// <summary>The connection to an InfluxDB server: lines go in, questions are asked. It queues nothing and tries nothing again.</summary>
public sealed class InfluxDoor : IDisposable
{
    private readonly HttpClient _http;
    private readonly InfluxDBClient _client;
    private readonly WriteApiAsync _writer;
    private readonly TimeProvider _clock;

    /// <summary>Makes it; nothing is sent yet.</summary>
    /// <param name="place">Where the server is.</param>
    /// <param name="clock">By which an answer is too late.</param>
    public InfluxDoor(InfluxPlace place, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(place);
        (Place, _clock) = (place, clock);
        _http = new(new Generations(place, new SocketsHttpHandler { ConnectTimeout = TimeSpan.FromSeconds(5), PooledConnectionLifetime = TimeSpan.FromMinutes(5), AllowAutoRedirect = false }))
        {
            Timeout = Timeout.InfiniteTimeSpan,
        };
        _client = new(new InfluxDBClientOptions(place.Url.ToString().TrimEnd('/')) { Bucket = place.Database, Org = place.Organisation ?? "-", HttpClient = _http, Timeout = LongestAnswer * 2 });
        // The awaited one: the client's background writer loses what it holds when it ends.
        _writer = _client.GetWriteApiAsync();
    }

    /// <summary>A server that takes longer is treated as one that does not answer.</summary>
    public static TimeSpan LongestAnswer { get; } = TimeSpan.FromSeconds(30);

    /// <summary>Where the server is.</summary>
    public InfluxPlace Place { get; }

    /// <summary>Hands lines over and waits for the answer.</summary>
    public async Task<WriteAnswer> WriteAsync(IEnumerable<string> lines, CancellationToken cancellation)
    {
        using var late = new CancellationTokenSource(LongestAnswer, _clock);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(late.Token, cancellation);
        try
        {
            var answer = await _writer.WriteRecordsAsyncWithIRestResponse(lines, WritePrecision.Us, cancellationToken: either.Token).ConfigureAwait(false);
            // Every generation says 204 and nothing else. Another 2xx is of something in between that took nothing.
            return answer.StatusCode == HttpStatusCode.NoContent ? WriteAnswer.Good : WriteAnswer.NotOfIts(answer.StatusCode);
        }
        catch (Exception) when (cancellation.IsCancellationRequested)
        {
            // The client gives a request that was called off back as one that failed.
            throw new OperationCanceledException(cancellation);
        }
        catch (Exception) when (late.IsCancellationRequested)
        {
            return WriteAnswer.Late;
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            return WriteAnswer.Of(fault);
        }
    }

    /// <summary>Asks InfluxQL at <c>/query</c>, which every generation answers.</summary>
    /// <exception cref="StorageException">It was not answered.</exception>
    public async Task<IReadOnlyList<InfluxTable>> AskAsync(string query, CancellationToken cancellation)
    {
        using var late = new CancellationTokenSource(LongestAnswer, _clock);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(late.Token, cancellation);
        try
        {
            var place = Place.Database.Split('/', 2);
            var keep = place.Length > 1 ? "&rp=" + Uri.EscapeDataString(place[1]) : "";
            using var answer = await _http.GetAsync(
                new Uri($"{Place.Url.ToString().TrimEnd('/')}/query?db={Uri.EscapeDataString(place[0])}{keep}&epoch=u&q={Uri.EscapeDataString(query)}"), HttpCompletionOption.ResponseHeadersRead, either.Token).ConfigureAwait(false);
            return await InfluxTable.ReadAsync(answer, either.Token).ConfigureAwait(false);
        }
        catch (Exception fault) when (fault is HttpRequestException or IOException or System.Text.Json.JsonException || (fault is OperationCanceledException && !cancellation.IsCancellationRequested))
        {
            throw new StorageException($"InfluxDB: {WriteAnswer.Of(fault).Words}", mayPass: true);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _client.Dispose();
        _http.Dispose();
    }
}
