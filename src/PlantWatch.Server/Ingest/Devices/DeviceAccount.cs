namespace PlantWatch.Server.Ingest.Devices;

/// <summary>A device that may connect to the embedded broker.</summary>
/// <param name="Name">User name. Its client id is the name too, or begins with it and a dot.</param>
/// <param name="Password">As it is kept.</param>
/// <param name="Topics">Topic filters under which it may publish and subscribe.</param>
internal sealed record DeviceAccount(string Name, DevicePassword Password, IReadOnlyList<string> Topics)
{
    /// <summary>Most signs of a name.</summary>
    public const int LongestName = 64;

    /// <summary>Letters of the alphabet, digits, _ and -: a name is part of client ids, whose dot ends it.</summary>
    public static bool IsName(string name) => name.Length is > 0 and <= LongestName && !DeviceAdapter.IsNameless(name) && name.All(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '-');

    /// <summary>A topic filter that rights can be given by (MQTT 5.0 section 4.7): # at the end alone, + and # each a level of its own, none for system topics.</summary>
    public static bool IsFilter(string filter)
    {
        var levels = filter.Split('/');
        return filter.Length is > 0 and <= 1000 && filter[0] != '$' && !filter.Contains('\0', StringComparison.Ordinal)
            && levels.Select((level, i) => (level.AsSpan().IndexOfAny('+', '#') < 0) || (level is "+") || (level is "#" && i == levels.Length - 1)).All(good => good);
    }

    /// <summary>May it publish at this topic, or subscribe to this filter?</summary>
    public bool Covers(string topicOrFilter) => Topics.Any(own => TopicFilters.Covers(own, topicOrFilter));

    /// <summary>May it call itself so? Sessions are kept by client id: nobody comes near that of another.</summary>
    public bool MayBeCalled(string? clientId) => string.IsNullOrEmpty(clientId) || DeviceAdapter.IsNameless(clientId) || IsOf(Name, clientId);

    /// <summary>True for a client id that belongs to this name.</summary>
    public static bool IsOf(string name, string clientId) => clientId == name || clientId.StartsWith(name + ".", StringComparison.Ordinal);
}
