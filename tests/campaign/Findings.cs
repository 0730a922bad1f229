namespace PlantWatch.Campaign;

/// <summary>What a try found.</summary>
internal sealed record Findings
{
    public required CampaignOptions Options { get; init; }
    public required int Said { get; init; }
    public required int Acknowledged { get; init; }
    public required int SentAgain { get; init; }
    public required long Rows { get; init; }
    public required Tally Tally { get; init; }
    public required Sums Sums { get; init; }
    public required string Integrity { get; init; }
    public required bool StatesAgree { get; init; }
    public required IReadOnlyDictionary<Blow, int> Blows { get; init; }
    public required TimeSpan Spoke { get; init; }
    public required IReadOnlyList<TimeSpan> Restarts { get; init; }

    /// <summary>What is wrong, a sentence each; nothing when the promise was kept.</summary>
    public IEnumerable<string> Broken() => Options.BrokerToo ? Inside() : Stream().Concat(Inside());

    // A killed broker forgets what it acknowledged and had not written, and hands out packet identifiers anew: no promise of ours spans that.
    private IEnumerable<string> Stream()
    {
        if (Tally.Missing > 0) yield return $"{Tally.Missing} acknowledged numbers are missing";
        if (Tally.Doubled > 0) yield return $"{Tally.Doubled} readings are doubled";
        if (Tally.OutOfOrder > 0) yield return $"{Tally.OutOfOrder} readings are out of order";
    }

    private IEnumerable<string> Inside()
    {
        if (Acknowledged != Said) yield return $"{Said - Acknowledged} of {Said} numbers were never acknowledged";
        if (Rows != Sums.Stored) yield return $"the sums say {Sums.Stored} stored, the record holds {Rows}";
        if (!Sums.Close) yield return $"the sums do not close: {Sums}";
        if (Sums.Refused > 0) yield return $"{Sums.Refused} numbers were refused";
        if (Integrity != "ok") yield return $"the record is damaged: {Integrity}";
        if (!StatesAgree) yield return "live, older snapshot with journal, and whole journal give different states";
    }
}

/// <summary>How the server was hurt.</summary>
internal enum Blow
{
    /// <summary>Killed while messages stream.</summary>
    InMidStream = 0,
    /// <summary>Killed before it was ready.</summary>
    WhileStarting,
    /// <summary>Asked to end and killed while it kept its snapshots.</summary>
    WhileStopping,
    /// <summary>Killed in the very first start, which makes the record.</summary>
    AtBirth,
}
