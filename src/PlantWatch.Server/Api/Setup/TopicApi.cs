using System.Text;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings.Payloads;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/topics/heard   HeardView; asking keeps the server listening for two minutes

/// <summary>What is heard at the broker while somebody picks from it.</summary>
/// <param name="Broker">How the broker stands, in words.</param>
/// <param name="Address">Where devices publish to.</param>
/// <param name="Topics">Newest first, at most five hundred.</param>
/// <param name="Forgotten">Topics that gave way to newer ones.</param>
public sealed record HeardView(string Broker, string Address, IReadOnlyList<HeardTopicView> Topics, long Forgotten);

/// <summary>A topic.</summary>
/// <param name="Topic">Its name.</param>
/// <param name="LastAt">When it was last heard.</param>
/// <param name="Count">How often since somebody began to ask.</param>
/// <param name="EverySeconds">Time between two messages, on average; null before the second.</param>
/// <param name="Retained">A last value that the broker keeps, no new sample.</param>
/// <param name="Payload">The beginning of the newest payload as text.</param>
/// <param name="Bytes">Its length.</param>
/// <param name="Format">How a probe would read it: number, senml_json or senml_cbor; null when as neither.</param>
/// <param name="Values">What a probe would read in it.</param>
/// <param name="Trouble">Why it cannot be read; null when it can.</param>
public sealed record HeardTopicView(
    string Topic, Instant LastAt, long Count, double? EverySeconds, bool Retained, string Payload, int Bytes, PayloadFormat? Format, IReadOnlyList<HeardValue> Values, string? Trouble);

/// <summary>A value in a payload.</summary>
/// <param name="Record">Name of the record, of SenML; null for a plain number.</param>
/// <param name="Unit">Unit that it names; null for none.</param>
/// <param name="Value">The number; null for what is no number, such as the word of a pump's state.</param>
/// <param name="TakenBy">The probe or pump that reads it already; null for none.</param>
/// <param name="Guess">What it may be; none when nothing speaks for anything.</param>
public sealed record HeardValue(string? Record, string? Unit, double? Value, string? TakenBy, Measurand Guess);

/// <summary>Listening to the broker, for whoever sets up a plant.</summary>
internal static class TopicApi
{
    private const int Shown = 200;

    public static void MapTopics(this RouteGroupBuilder api) => api.MapGet("/topics/heard",
        (TopicEar ear, IBrokerStatus broker, PlantHost host, TimeProvider clock) => Answers.Ok(View(ear, broker, host, Instant.From(clock.GetUtcNow())))).Produces<HeardView>();

    private static HeardView View(TopicEar ear, IBrokerStatus broker, PlantHost host, Instant now) =>
        new(BrokerWords.Say(broker.State, Reader.Words), broker.State.Trouble?.Address ?? broker.State.Detail, [.. ear.Ask(now).Select(t => Topic(t, host.Plan, now))], ear.Forgotten);

    private static HeardTopicView Topic(HeardTopic heard, PlantPlan? plan, Instant now)
    {
        var (format, values, trouble) = Decode(heard, plan, now);
        double? every = heard.Count > 1 ? (heard.LastAt - heard.FirstAt).TotalSeconds / (heard.Count - 1) : null;
        return new(heard.Topic, heard.LastAt, heard.Count, every, heard.Retained, Beginning(heard.Payload.Span), heard.Bytes, format, values, trouble);
    }

    private static string Beginning(ReadOnlySpan<byte> payload) =>
        ForeignBytes.IsText(payload) ? string.Concat(Encoding.UTF8.GetString(payload[..Math.Min(Shown, payload.Length)]).Select(c => char.IsControl(c) ? '\u00b7' : c)) : ForeignBytes.Hex(payload);

    private static (PayloadFormat?, IReadOnlyList<HeardValue>, string?) Decode(HeardTopic heard, PlantPlan? plan, Instant now)
    {
        if (heard.Bytes > heard.Payload.Length) return (null, [], Reader.Words.Find("topics.too_long"));
        var plain = PlainNumber.Decode(heard.Payload.Span);
        if (plain.IsSample) return (PayloadFormat.Number, [Value(heard.Topic, null, null, plain.Sample.Value, plan)], null);
        var items = new List<DecodedItem>();
        SenmlJson.Decode(heard.Payload.Span, now, items);
        if (Values(heard.Topic, items, plan) is { Count: > 0 } json) return (PayloadFormat.SenmlJson, json, null);
        items.Clear();
        SenmlCbor.Decode(heard.Payload.Span, now, items);
        if (Values(heard.Topic, items, plan) is { Count: > 0 } cbor) return (PayloadFormat.SenmlCbor, cbor, null);
        return (null, TakenBy(heard.Topic, null, plan) is { } pump ? [new(null, null, null, pump, Measurand.None)] : [], Reader.Words.Find("topics.no_reading"));
    }

    private static List<HeardValue> Values(string topic, List<DecodedItem> items, PlantPlan? plan) =>
        [.. items.Where(i => i.IsSample).Select(i => i.Sample).GroupBy(s => s.Name).Select(g => Value(topic, g.Key, g.Last().Unit, g.Last().Value, plan))];

    private static HeardValue Value(string topic, string? record, string? unit, double value, PlantPlan? plan) =>
        new(record, unit, value, TakenBy(topic, record, plan), TopicGuess.Of(record ?? topic, unit));

    private static string? TakenBy(string topic, string? record, PlantPlan? plan) =>
        plan?.Circuits.SelectMany(c => c.Probes).FirstOrDefault(p => p.Topic == topic && (record is null || p.RecordName == record))?.Name
        ?? plan?.Circuits.SelectMany(c => c.Pumps).FirstOrDefault(p => p.StateTopic == topic || p.TankTopic == topic || p.StrokesTopic == topic)?.Name;
}
