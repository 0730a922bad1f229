namespace PlantWatch.Core.Probes;

/// <summary>What a step costs and tells. All figures are common practice, put down so that they can be argued with.</summary>
/// <param name="Minutes">About how long it takes.</param>
/// <param name="IfWrong">How often its outcome speaks against the part when the part is wrong.</param>
/// <param name="IfRight">How often it does when the part is right.</param>
/// <param name="Mends">How often it also puts the part right.</param>
internal readonly record struct StepFigures(double Minutes, double IfWrong, double IfRight, double Mends)
{
    // Walking there, writing down: what even the shortest step costs.
    private const double Overhead = 5;

    /// <summary>The table.</summary>
    public static StepFigures Of(StoryAct act) => act switch
    {
        StoryAct.RepeatTest => new(5, 0.85, 0.05, 0.6),
        StoryAct.OtherLot => new(10, 0.95, 0.05, 0.7),
        StoryAct.Dilute => new(8, 0.95, 0.03, 0.8),
        StoryAct.RestoreFlow => new(10, 0, 0, 0.9),
        StoryAct.WaitForMixing => new(30, 0.8, 0.1, 0.5),
        StoryAct.ReadPanel => new(1, 0.3, 0.02, 0),
        StoryAct.CheckScaling => new(15, 0.8, 0.05, 0.5),
        StoryAct.LookAtSignal => new(10, 0.6, 0.1, 0.3),
        StoryAct.Clean => new(20, 0.5, 0.1, 0.45),
        StoryAct.CheckInBuffer => new(25, 0.95, 0.05, 0),
        StoryAct.CheckInSolution => new(15, 0.85, 0.1, 0),
        StoryAct.CheckCell => new(20, 0.8, 0.1, 0.2),
        StoryAct.Calibrate => new(30, 0, 0, 0.85),
        StoryAct.Replace => new(60, 0, 0, 0.97),
        StoryAct.LookAtPump => new(5, 0.3, 0.2, 0.6),
        _ => default,
    };

    /// <summary>Mean information of the outcome about a part that is wrong with this probability, in bits.</summary>
    public double Settles(double wrong)
    {
        var says = (wrong * IfWrong) + ((1 - wrong) * IfRight);
        return Math.Max(0, Bits(says) - (wrong * Bits(IfWrong)) - ((1 - wrong) * Bits(IfRight)));
    }

    /// <summary>What it brings a minute: information on what is asked, and the chance that it mends what is wrong.</summary>
    public double Worth(double asked, double wrong) => (Settles(asked) + (Mends * wrong)) / (Minutes + Overhead);

    private static double Bits(double p) => p is <= 0 or >= 1 ? 0 : -(p * Math.Log2(p)) - ((1 - p) * Math.Log2(1 - p));
}
