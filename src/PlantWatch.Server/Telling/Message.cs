using System.Text.Json;
using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Telling;

/// <summary>One message in words, as it is written down and sent: the same for ever, whatever has become of the alarm since.</summary>
/// <param name="Id">Id of the notice: the same message sent again has the same id.</param>
/// <param name="Kind">What it says.</param>
/// <param name="Priority">Priority of the alarm.</param>
/// <param name="Step">0 for who is on call, then the place in the escalation.</param>
/// <param name="Alarm">Id of the occurrence.</param>
/// <param name="Rule">Number of the rule.</param>
/// <param name="Subject">What the alarm is about.</param>
/// <param name="Site">The site.</param>
/// <param name="Circuit">Id of the circuit.</param>
/// <param name="CircuitName">Its name.</param>
/// <param name="Pool">Id of the pool; null for what the whole circuit shares.</param>
/// <param name="PoolName">Its name.</param>
/// <param name="Title">The alarm in a few words.</param>
/// <param name="Cause">Why, with figures.</param>
/// <param name="Since">When it was raised.</param>
/// <param name="Consequence">What follows when nothing is done.</param>
/// <param name="WhatToDo">What to do.</param>
/// <param name="TimeToRespond">How long there is.</param>
/// <param name="HappenedAt">When it was acknowledged or over; null of one that was raised.</param>
/// <param name="By">Who acknowledged.</param>
/// <param name="Follows">Alarms that follow from it, in words.</param>
internal sealed record Message(
    Guid Id, NoticeKind Kind, Priority Priority, int Step, Guid Alarm, string Rule, string Subject, string Site, string Circuit, string CircuitName, string? Pool, string? PoolName,
    string Title, string Cause, Instant Since, string Consequence, string WhatToDo, string TimeToRespond, Instant? HappenedAt, string? By, IReadOnlyList<string> Follows)
{
    /// <summary>The sheet that it encloses; null where it tells of an alarm.</summary>
    public SheetOrder? Sheet { get; init; }

    /// <summary>As it is written down.</summary>
    public string Write() => JsonSerializer.Serialize(this, PlantJson.Options);

    /// <summary>As it was written down.</summary>
    /// <exception cref="JsonException">It is none of ours.</exception>
    public static Message Read(string content) => JsonSerializer.Deserialize<Message>(content, PlantJson.Options) ?? throw new JsonException("a message cannot be null");
}
