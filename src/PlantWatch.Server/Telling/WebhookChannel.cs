using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using PlantWatch.Core.Plans.Telling;

namespace PlantWatch.Server.Telling;

/// <summary>Tells another program: one signed POST, no redirects, taken when the answer is 2xx.</summary>
internal sealed class WebhookChannel(ChannelPlan plan, ChannelSecrets secrets, HttpClient http, TimeProvider clock) : IChannel
{
    /// <summary>A client that goes where it is sent and nowhere else.</summary>
    public static HttpClient Client() => new(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false, ConnectTimeout = TimeSpan.FromSeconds(5), PooledConnectionLifetime = TimeSpan.FromMinutes(5) });

    public async Task<Delivery> SendAsync(Outgoing outgoing, CancellationToken cancellation)
    {
        if (secrets.Find(plan) is not { } key) return Delivery.Failed("no key is set for this channel, and nothing is sent that nobody could tell from a forgery");
        if (Address() is not { } address) return Delivery.Failed("the address that is kept apart for this channel is missing, or is neither https nor http on this machine");
        using var request = Request(outgoing.Message, key, address);
        using var answer = await http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, cancellation);
        return answer.IsSuccessStatusCode ? Delivery.Done : Delivery.Failed(Words(answer.StatusCode));
    }

    // What is wrong with an address that is kept apart is said without it.
    private Uri? Address()
    {
        if (!plan.AddressIsApart) return plan.Address;
        return secrets.FindAddress(plan) is { } text && WebhookAddress.Judge(text, out var address) == AddressFault.None ? address : null;
    }

    private HttpRequestMessage Request(Message message, string key, Uri address)
    {
        var body = CloudEvent.Write(message);
        var (id, seconds) = (message.Id.ToString(), clock.GetUtcNow().ToUnixTimeSeconds());
        var request = new HttpRequestMessage(HttpMethod.Post, address) { Content = new ByteArrayContent(body) };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue(CloudEvent.ContentType) { CharSet = "utf-8" };
        request.Headers.UserAgent.Add(new ProductInfoHeaderValue("PlantWatch", null));
        request.Headers.Add("webhook-id", id);
        request.Headers.Add("webhook-timestamp", seconds.ToString(CultureInfo.InvariantCulture));
        request.Headers.Add("webhook-signature", WebhookSignature.Of(key, id, seconds, body));
        return request;
    }

    private static string Words(HttpStatusCode status) => (int)status switch
    {
        >= 300 and < 400 => string.Create(CultureInfo.InvariantCulture, $"the receiver answers with a redirect ({(int)status}), which is not followed"),
        _ => string.Create(CultureInfo.InvariantCulture, $"the receiver answers {(int)status} {status}"),
    };
}
