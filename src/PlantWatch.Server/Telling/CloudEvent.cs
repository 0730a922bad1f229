using System.Text.Json;
using System.Text.Json.Serialization;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Telling;

/// <summary>A message for other programs: an event in the structured JSON form of CloudEvents 1.0 (Cloud Native Computing Foundation), so that a receiver needs no form of ours to route it.</summary>
/// <param name="Specversion">Always 1.0.</param>
/// <param name="Id">The same for the same message: with the source it tells doubles.</param>
/// <param name="Source">The circuit.</param>
/// <param name="Type">plantwatch.alarm.raised, .acknowledged, .cleared or .test.</param>
/// <param name="Subject">Rule and subject of the alarm.</param>
/// <param name="Time">When what it says happened.</param>
/// <param name="Datacontenttype">Always application/json.</param>
/// <param name="Data">The message.</param>
internal sealed record CloudEvent(
    [property: JsonPropertyName("specversion")] string Specversion, Guid Id, string Source, string Type, string Subject, Instant Time,
    [property: JsonPropertyName("datacontenttype")] string Datacontenttype, Message Data)
{
    /// <summary>Content type of the structured form.</summary>
    public const string ContentType = "application/cloudevents+json";

    /// <summary>The event of a message as bytes; the same message gives the same bytes.</summary>
    public static byte[] Write(Message message) => JsonSerializer.SerializeToUtf8Bytes(
        new CloudEvent("1.0", message.Id, $"urn:plantwatch:{message.Circuit}", TypeOf(message), $"{message.Rule}/{message.Subject}", message.HappenedAt ?? message.Since, "application/json", message),
        PlantJson.Options);

    private static string TypeOf(Message message) => message.Rule.Length == 0 ? "plantwatch.alarm.test" : $"plantwatch.alarm.{Wording.Key(message.Kind)}";
}
