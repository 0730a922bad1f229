namespace PlantWatch.Core.Probes;

/// <summary>One account of what happened so far, how likely it is, and what is believed under it.</summary>
internal struct Hypothesis
{
    /// <summary>Probability, 0 to 1.</summary>
    public double Weight;

    /// <summary>Days since the probe began to drift; below 0 while it is stable.</summary>
    public double DriftDays;

    /// <summary>The drift is of the fast kind; meaningless while stable.</summary>
    public bool Fast;

    /// <summary>The lot of reagent in use is bad.</summary>
    public bool LotOff;

    /// <summary>The newest test was a slip.</summary>
    public bool LastWild;

    /// <summary>It jumped with the newest check, and only that one speaks for it.</summary>
    public bool JustJumped;

    /// <summary>Checks for which this account is kept apart from the one it departed from.</summary>
    public byte Apart;

    /// <summary>A bit for each kept pair, the newest lowest: the test is not believed.</summary>
    public ulong Doubted;

    /// <summary>What is believed.</summary>
    public Belief Belief;

    public readonly bool Drifts => DriftDays >= 0;

    /// <summary>Accounts that differ in none of these are one account.</summary>
    public readonly int Kind => Age + (LotOff ? 8 : 0) + (LastWild ? 16 : 0) + (Apart > 0 ? 32 : 0) + (Fast ? 64 : 0) + (JustJumped ? 128 : 0);

    // A drift is told apart by its age in steps that grow, since what began long ago hardly differs from what began a little before.
    private readonly int Age => DriftDays switch { < 0 => 0, < 2 => 1, < 6 => 2, < 18 => 3, _ => 4 };

    /// <summary>Joins another of the same kind.</summary>
    public void Join(in Hypothesis other)
    {
        var total = Weight + other.Weight;
        if (total <= 0) return;
        var share = other.Weight / total;
        if (share > 0.5) (Doubted, Apart) = (other.Doubted, Math.Max(Apart, other.Apart));
        if (Drifts) DriftDays += share * (other.DriftDays - DriftDays);
        Belief.Mix(other.Belief, share);
        Weight = total;
    }
}
