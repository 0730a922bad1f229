namespace PlantWatch.Campaign;

/// <summary>What became of one probe's numbers. Every value was said twice, so a value is there as often as it was acknowledged, or something is wrong.</summary>
/// <param name="Missing">Acknowledged and not in the record.</param>
/// <param name="Doubled">In the record more often than said.</param>
/// <param name="OutOfOrder">Readings whose value is below the one before.</param>
internal readonly record struct Tally(int Missing, int Doubled, int OutOfOrder)
{
    public static Tally operator +(Tally a, Tally b) => new(a.Missing + b.Missing, a.Doubled + b.Doubled, a.OutOfOrder + b.OutOfOrder);

    /// <summary>Compares the readings of a probe, in time order, with what its device said and saw acknowledged.</summary>
    public static Tally Of(IReadOnlyList<double> stored, int said, Func<int, bool> acknowledged)
    {
        var there = new int[(said / 2) + 1];
        var (doubled, outOfOrder) = (0, 0);
        for (var i = 0; i < stored.Count; i++)
        {
            if (i > 0 && stored[i] < stored[i - 1]) outOfOrder++;
            var value = (int)stored[i];
            if (value >= 0 && value < there.Length) there[value]++;
            else doubled++; // never said at all
        }

        var missing = 0;
        for (var value = 0; value < there.Length; value++)
        {
            int[] sent = [.. new[] { 2 * value, (2 * value) + 1 }.Where(n => n < said)];
            missing += Math.Max(0, sent.Count(acknowledged) - there[value]);
            doubled += Math.Max(0, there[value] - sent.Length);
        }
        return new Tally(missing, doubled, outOfOrder);
    }
}
