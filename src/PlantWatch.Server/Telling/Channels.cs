using System.Collections.Concurrent;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Telling;

/// <summary>The ways out of the plan in force, made when they are first used and made anew when the plan says otherwise.</summary>
internal sealed class Channels(ChannelSecrets secrets, IAlarmTopic topic, PlantWatchOptions options, TimeProvider clock) : IDisposable
{
    private readonly HttpClient _http = WebhookChannel.Client();
    private readonly ConcurrentDictionary<(ChannelPlan Plan, SitePlan Site), IChannel> _made = new();

    /// <summary>The way of a plan.</summary>
    public IChannel Of(ChannelPlan plan, SitePlan site) => _made.GetOrAdd((plan, site), Make);

    public void Dispose() => _http.Dispose();

    private IChannel Make((ChannelPlan Plan, SitePlan Site) of) => of.Plan.Kind switch
    {
        ChannelKind.Webhook => new WebhookChannel(of.Plan, secrets, _http, clock),
        ChannelKind.Email => new MailChannel(of.Plan, secrets, new LetterWriter(new MessageText(Wording.Of(of.Site), of.Site.TimeZone, Page))),
        _ => new TopicChannel(of.Plan, topic),
    };

    private string? Page => options.Origins.FirstOrDefault() is { } origin ? $"{origin.TrimEnd('/')}/#/alarms" : null;
}
