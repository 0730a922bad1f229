using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Alarms;

/// <summary>Whether combined chlorine is too large a part only because free chlorine is too low, or because there is too much of it: with that figure at its limit the part would be inside.</summary>
public static class CombinedShare
{
    /// <summary>True when the test that is outside accounts for the part that is. Both reasons carry figure and limit; one without them accounts for nothing.</summary>
    public static bool IsExplained(Reason test, Reason part)
    {
        ArgumentNullException.ThrowIfNull(test);
        ArgumentNullException.ThrowIfNull(part);
        if (part.Facts.Length < 4 || Figures(test, 2) is not ({ } value, { } limit) || Figures(part, 1) is not ({ } share, { } most)) return false;
        if (part.Facts[3].Text == Measurand.TotalChlorine.Key()) (share, most) = (OfFree(share), OfFree(most));
        var ofFree = test.Facts[1].Text == Measurand.FreeChlorine.Key();
        if (ofFree ? value >= limit : value <= limit) return false;
        return share * (ofFree ? value / limit : limit / value) <= most;
    }

    private static (double?, double?) Figures(Reason reason, int from) => reason.Facts.Length > from + 1 ? (reason.Facts[from].Number, reason.Facts[from + 1].Number) : default;

    // Total is free and combined: c / (f + c) told as c / f.
    private static double OfFree(double ofTotal) => ofTotal < 1 ? ofTotal / (1 - ofTotal) : double.PositiveInfinity;
}
