using System.Text;
using PlantWatch.Core.Plans;

namespace PlantWatch.Server.PlantFile;

/// <summary>Topics must be legal MQTT topic names, and what arrives on one must belong to exactly one probe or pump.</summary>
internal static class TopicChecks
{
    public static void Check(Place root, Complaints complaints)
    {
        var claims = new Dictionary<string, Claim>(StringComparer.Ordinal);
        var records = new Dictionary<(string Topic, string Record), Place>();
        foreach (var claim in Claims(root))
        {
            if (claim.Topic.String is not { } topic) continue;
            if (Fault(topic) is { } fault) complaints.Add(claim.Topic, fault);
            else if (!claims.TryAdd(topic, claim)) Shared(topic, claims[topic], claim, complaints);
            if (claim.Record.String is { } record && !records.TryAdd((topic, record), claim.Record))
                complaints.Add(claim.Record, $"the record '{Text.Short(record)}' of this topic is taken on line {records[(topic, record)].Line}; every probe needs its own");
        }
    }

    /// <summary>Every topic that the plant reads, where it stands in the file.</summary>
    public static IEnumerable<Place> Read(Place root) => Claims(root).Select(claim => claim.Topic).Where(topic => topic.String is not null);

    private static IEnumerable<Claim> Claims(Place root)
    {
        foreach (var circuit in root["circuits"].Items)
        {
            foreach (var probe in circuit["probes"].Items)
                yield return new(circuit.Path, probe["topic"], probe["record"], EnumWords<PayloadFormat>.Find(probe["format"].String) ?? PayloadFormat.Number);
            foreach (var pump in circuit["pumps"].Items)
            {
                yield return new(circuit.Path, pump["state_topic"], default, PayloadFormat.Number);
                yield return new(circuit.Path, pump["tank_topic"], default, PayloadFormat.Number);
                yield return new(circuit.Path, pump["strokes_topic"], default, PayloadFormat.Number);
            }
        }
    }

    private static void Shared(string topic, Claim first, Claim second, Complaints complaints)
    {
        var why = (first.Format, second.Format) switch
        {
            (PayloadFormat.Number, PayloadFormat.Number) => "a plain number cannot say whose it is; give each its own topic, or send SenML",
            var (one, other) when one != other => "one topic has one format",
            _ => first.Circuit == second.Circuit ? null : "a message belongs to one circuit, so each circuit needs its own topic",
        };
        if (why is null) return;
        complaints.Add(second.Topic, $"the topic '{Text.Short(topic)}' is taken on line {first.Topic.Line}; {why}");
    }

    /// <summary>What MQTT 5.0 (section 4.7) or good sense forbids in a topic name; null when nothing.</summary>
    public static string? Fault(string topic)
    {
        if (topic.AsSpan().ContainsAny('+', '#')) return $"expected one exact topic, found a wildcard (+ or #) in '{Text.Short(topic)}'";
        if (topic.StartsWith('$')) return $"a topic that begins with $ belongs to the broker, found '{Text.Short(topic)}'";
        if (topic.Any(char.IsControl) || !IsWellFormed(topic)) return $"expected printable characters, found '{Text.Short(topic)}'";
        if (topic.Length > 0 && (char.IsWhiteSpace(topic[0]) || char.IsWhiteSpace(topic[^1]))) return $"a topic begins and ends without a space, found '{Text.Short(topic)}'";
        return null;
    }

    private static bool IsWellFormed(string text)
    {
        foreach (var rune in text.EnumerateRunes())
            if (rune == Rune.ReplacementChar) return false;
        return true;
    }

    private sealed record Claim(string Circuit, Place Topic, Place Record, PayloadFormat Format);
}
