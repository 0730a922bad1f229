using System.Net;
using PlantWatch.Server.Telling;

namespace PlantWatch.Server.PlantFile;

/// <summary>A channel has what its kind needs and nothing else, speaks where the plant does not listen, and lets no secret travel in the open.</summary>
internal static class ChannelChecks
{
    private static readonly Dictionary<string, string[]> Needs = new(StringComparer.Ordinal) { ["mqtt"] = ["topic"], ["webhook"] = ["url"], ["email"] = ["host", "sender"] };

    private static readonly Dictionary<string, string[]> Takes = new(StringComparer.Ordinal)
    {
        ["mqtt"] = ["topic"], ["webhook"] = ["url", "url_kept_apart"], ["email"] = ["host", "sender", "port", "security", "user"],
    };

    public static void Check(Place root, Complaints complaints)
    {
        var topics = new List<Place>();
        foreach (var channel in root["telling"]["channels"].Items)
        {
            if (channel["kind"].String is not { } kind || !Takes.TryGetValue(kind, out var takes)) continue;
            var isApart = kind == "webhook" && channel["url_kept_apart"].Boolean == true;
            foreach (var key in Needs[kind].Where(key => !channel[key].Exists && !(isApart && key == "url"))) complaints.Add(channel, $"the key '{key}' is missing: a channel of kind {kind} needs it");
            foreach (var key in Takes.Values.SelectMany(keys => keys).Except(takes).Where(key => channel[key].Exists)) complaints.Add(channel[key], $"a channel of kind {kind} has no '{key}'");
            if (kind == "mqtt") Topic(root, channel["topic"], topics, complaints);
            else if (kind == "webhook") Address(channel["url"], isApart, complaints);
            else Way(channel, complaints);
        }
    }

    // What the plant says of itself must never come back as a reading.
    private static void Topic(Place root, Place topic, List<Place> others, Complaints complaints)
    {
        if (topic.String is not { Length: > 0 } own) return;
        if (TopicChecks.Fault(own) is { } fault) complaints.Add(topic, fault);
        foreach (var read in TopicChecks.Read(root).Where(read => IsUnder(own, read.String!)))
            complaints.Add(topic, $"the plant itself reads '{Text.Short(read.String!)}' (line {read.Line}); alarms need a topic that no probe or pump is at or under");
        foreach (var other in others.Where(other => IsUnder(own, other.String!) || IsUnder(other.String!, own)))
            complaints.Add(topic, $"the channel on line {other.Line} publishes at '{Text.Short(other.String!)}'; two channels need topics of which neither is under the other");
        others.Add(topic);
    }

    private static bool IsUnder(string topic, string other) => other == topic || other.StartsWith(topic + "/", StringComparison.Ordinal);

    private static void Address(Place url, bool isApart, Complaints complaints)
    {
        if (url.String is not { } text) return;
        if (isApart) complaints.Add(url, "the address is kept apart from the plant file, and here it stands in it: one of the two");
        var fault = WebhookAddress.Judge(text, out var address);
        if (fault == AddressFault.NotAnAddress) complaints.Add(url, $"expected an address such as https://desk.example/alarms, found '{Text.Short(text)}'");
        if (fault == AddressFault.NamesSomebody) complaints.Add(url, "an address carries no name and password; the key with which requests are signed is kept apart from the plant file");
        if (fault == AddressFault.InTheOpen) complaints.Add(url, $"expected https: '{Text.Short(address!.Host)}' is another machine, and on the way there everybody could read and change what is told");
    }

    private static void Way(Place channel, Complaints complaints)
    {
        if (channel["security"].String == "plain" && channel["host"].String is { } host && !IsHere(host))
            complaints.Add(channel["security"], $"expected starttls or tls: '{Text.Short(host)}' is another machine; plain is for a mail server on this one");
    }

    private static bool IsHere(string host) => host == "localhost" || (IPAddress.TryParse(host, out var address) && IPAddress.IsLoopback(address));
}
