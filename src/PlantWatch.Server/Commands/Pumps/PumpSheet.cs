using System.Globalization;
using PlantWatch.Core.Dosing.Supervision;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Commands.Pumps;

/// <summary>Writes verdicts and what speaks for them.</summary>
internal sealed class PumpSheet(TextWriter verdicts, TextWriter evidence)
{
    public const string VerdictHead = "time,pool,pump,kind,state\n", EvidenceHead = "time,pool,pump,kind,since,strokes,litres_missing,expected,observed,certainty\n";

    public void Write(string pool, PumpVerdict verdict)
    {
        var head = $"{Time(verdict.At)},{pool},{(verdict.Pump == DosedProduct.Acid ? "acid" : "chlorine")},{Kind(verdict.Trouble)}";
        verdicts.Write($"{head},{(verdict.Raised ? "raised" : "cleared")}\n");
        if (verdict.Evidence is not { } e) return;
        evidence.Write(string.Create(CultureInfo.InvariantCulture, $"{head},{Time(e.Since)},{e.Strokes:0},{e.LitresMissing:0.###},{e.Expected:0.####},{e.Observed:0.####},{e.Certainty:0.####}\n"));
    }

    private static string Kind(PumpTrouble trouble) => trouble switch
    {
        PumpTrouble.LostPrime => "lost_prime",
        PumpTrouble.EmptyTank => "empty_tank",
        PumpTrouble.Siphon => "siphon",
        PumpTrouble.WeakProduct => "weak_product",
        PumpTrouble.StuckOn => "stuck_on",
        PumpTrouble.Swapped => "swapped",
        PumpTrouble.WithoutCirculation => "no_circulation",
        _ => throw new ArgumentOutOfRangeException(nameof(trouble), trouble, "nothing is wrong"),
    };

    private static string Time(Instant at) => at.ToDateTimeOffset().UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);
}
