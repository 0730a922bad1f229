using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>A value that leapt away and has to show within a quarter of an hour whether it stays there, in constant memory.</summary>
/// <param name="At">Measured time of the first reading that leapt.</param>
/// <param name="Before">Value before the leap: mean of three readings.</param>
/// <param name="Rise">How much it rose by itself over three readings before the leap.</param>
/// <param name="Limit">The limit it leapt over.</param>
/// <param name="Readings">Readings since, the first included.</param>
/// <param name="First">Sum of the second to fourth reading.</param>
/// <param name="Next">Sum of the fifth to seventh reading.</param>
/// <param name="Late">Sum of the readings in the last third of the trial.</param>
/// <param name="LateReadings">How many these are.</param>
/// <param name="Back">Readings in a row that lie near the value before.</param>
public sealed record LeapTrial(
    Instant At, double Before, double Rise, double Limit, int Readings = 0, double First = 0, double Next = 0, double Late = 0, int LateReadings = 0, int Back = 0)
{
    /// <summary>How long the water of a dosing stroke may take to pass the cell; what stayed longer is no slug.</summary>
    public static readonly TimeSpan Lasts = TimeSpan.FromMinutes(15);

    internal LeapTrial Hear(Instant at, double raw)
    {
        var n = Readings + 1;
        var late = at - At >= Lasts * (2 / 3.0);
        return this with
        {
            Readings = n,
            First = n is >= 2 and <= 4 ? First + raw : First,
            Next = n is >= 5 and <= 7 ? Next + raw : Next,
            Late = late ? Late + raw : Late,
            LateReadings = late ? LateReadings + 1 : LateReadings,
            Back = Math.Abs(raw - Before) < Limit / 2 ? Back + 1 : 0,
        };
    }

    /// <summary>Back at once, within two readings: no water does that.</summary>
    internal bool WasSpike => Back == 1 && Readings <= 3;

    /// <summary>Back to where it was: a slug of dosing water, or a spike.</summary>
    internal bool IsBack => Back >= 2 || WasSpike;

    internal bool IsOver(Instant at) => at - At >= Lasts;

    /// <summary>How far it leapt, in the measurand's unit.</summary>
    internal double By => (First / 3) - Before;

    /// <summary>True when it leapt within a reading or two, and most of it stayed.</summary>
    internal bool Stayed
    {
        get
        {
            if (Readings < 7 || LateReadings == 0) return false;
            // A steep ramp rises before and after as well; a leap does not. Four intervals lie between the two means, three within each rise.
            var sudden = By - ((Rise + (Next / 3) - (First / 3)) * 2 / 3);
            var stays = (Late / LateReadings) - Before;
            return Math.Abs(sudden) >= Limit && Math.Sign(sudden) == Math.Sign(stays) && Math.Abs(stays) >= 0.6 * Math.Abs(sudden);
        }
    }
}
