namespace PlantWatch.Server.Ingest;

/// <summary>Which topic filters to subscribe, so that no message comes twice.</summary>
/// <remarks>
/// Where two of a client's filters match one message, a broker may deliver it once for each (MQTT 5.0 section 3.3.4). Two packets would be two
/// readings; so what another filter covers is left out.
/// </remarks>
internal static class TopicFilters
{
    /// <summary>The filters that cover all topics and further filters, in a settled order. Filters that cross without covering each other, as a/+/c and a/b/+ do, stay both.</summary>
    public static IReadOnlyList<string> Fewest(IEnumerable<string> topics, IEnumerable<string> further)
    {
        var all = topics.Concat(further).Where(filter => filter.Length > 0).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        // Only a filter with a wildcard covers another one.
        var broad = all.Where(filter => filter.AsSpan().IndexOfAny('+', '#') >= 0).ToList();
        return [.. all.Where(filter => !broad.Exists(other => other != filter && Covers(other, filter)))];
    }

    /// <summary>True when every topic that <paramref name="filter"/> matches is matched by <paramref name="broad"/> (MQTT 5.0 section 4.7).</summary>
    public static bool Covers(string broad, string filter)
    {
        // A shared subscription is delivered apart from all others.
        if (broad.StartsWith("$share/", StringComparison.Ordinal) || filter.StartsWith("$share/", StringComparison.Ordinal)) return false;
        var (general, special) = (broad.Split('/'), filter.Split('/'));
        // A wildcard at the first level does not reach topics that begin with $ (section 4.7.2).
        if (special[0].StartsWith('$') && (general[0] is "+" or "#")) return false;
        for (var level = 0; level < general.Length; level++)
        {
            // # stands for its parent as well: a/# matches a.
            if (general[level] == "#") return true;
            if (level >= special.Length || special[level] == "#") return false;
            if (general[level] != "+" && general[level] != special[level]) return false;
        }
        return general.Length == special.Length;
    }
}
