using PlantWatch.Core.Quantities;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Ingest.Links;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/broker   BrokerView

/// <summary>How the MQTT side stands, in words.</summary>
/// <param name="Kind">embedded or external.</param>
/// <param name="Well">Nothing is wrong at the moment and readings can arrive.</param>
/// <param name="Text">The state in a sentence.</param>
/// <param name="Since">Since when; null before the start.</param>
/// <param name="Encrypted">The way to an external broker is encrypted.</param>
/// <param name="Troubles">What is wrong, the present first.</param>
/// <param name="Silent">Topics of the plant file on which nothing has come yet.</param>
public sealed record BrokerView(
    BrokerMode Kind, bool Well, string Text, Instant? Since, bool Encrypted, IReadOnlyList<BrokerTroubleView> Troubles, IReadOnlyList<SilentTopicView> Silent);

/// <summary>Something that is wrong, or was a short while ago.</summary>
/// <param name="What">Which of the closed list.</param>
/// <param name="Now">It stands; otherwise it is over and told for a while.</param>
/// <param name="Text">The sentence.</param>
/// <param name="Todo">What to do about it.</param>
/// <param name="Since">Since when; of what is over, when it happened.</param>
/// <param name="Topics">Topics that it is about.</param>
public sealed record BrokerTroubleView(BrokerFailure What, bool Now, string Text, string Todo, Instant Since, IReadOnlyList<string> Topics);

/// <summary>A topic that has never spoken.</summary>
/// <param name="Topic">Its name.</param>
/// <param name="Of">The probe or pump it belongs to.</param>
/// <param name="Since">Waited for since then.</param>
public sealed record SilentTopicView(string Topic, string Of, Instant Since);

/// <summary>The connection to the broker, for whoever looks why nothing comes.</summary>
internal static class BrokerApi
{
    public static void MapBroker(this RouteGroupBuilder api) => api.MapGet("/broker",
        (IBrokerStatus broker, TopicSilence silence, PlantWatchOptions options, TimeProvider clock) => Answers.Ok(View(broker, silence, options, Instant.From(clock.GetUtcNow())))).Produces<BrokerView>();

    private static BrokerView View(IBrokerStatus broker, TopicSilence silence, PlantWatchOptions options, Instant now)
    {
        var (state, words) = (broker.State, Reader.Words);
        return new(
            state.Kind, state.Word is BrokerWord.Listening or BrokerWord.Connected, BrokerWords.Say(state, words), state.Since.IsSet ? state.Since : null,
            state.Kind == BrokerMode.External && options.Broker.Tls.On,
            [.. broker.Troubles.Select(t => new BrokerTroubleView(t.Failure, t == state.Trouble, BrokerWords.Of(t, words), BrokerWords.Todo(t, words), t.Since, t.Topics))],
            [.. silence.At(now).Select(s => new SilentTopicView(s.Topic, s.Of, s.Since))]);
    }
}
