using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>Which account of a pump is believed: one that has foreseen the water so much better than the healthy one that chance will not do, and better than its rivals.</summary>
internal sealed class PumpJudge
{
    /// <summary>Log odds against any trouble before it is looked at: a pump fails about once a year, and an account begins anew every few hours (common practice).</summary>
    public const double Beforehand = 7;

    // What a healthy pump reaches in a year of chance lies below; a siphon is also what an idle day looks like, and weak product what a busy week does.
    private const double NoDelivery = 15, Siphon = 20, Weak = 17;

    // So much more than its limit nothing can become, so that the end of a trouble is seen in time.
    private const double Room = 12;
    private const double Over = 1, Rival = 2;

    // The pattern of a week tells busy days from weak product; the first days tell nothing.
    public const double LeastDays = 4;
    private const double LeastDaysForWeak = 5;

    public PumpAccount[] Accounts { get; } =
    [
        new(PumpTrouble.LostPrime, 0, 0), new(PumpTrouble.WeakProduct, 0.65, 0), new(PumpTrouble.WeakProduct, 0.4, 0),
        new(PumpTrouble.Siphon, 1, 1.3), new(PumpTrouble.Siphon, 1, 3), new(PumpTrouble.Siphon, 1, 8),
    ];

    /// <summary>What is believed.</summary>
    public PumpTrouble Said { get; private set; }

    /// <summary>The pattern is known well enough to judge at all.</summary>
    public static bool IsReady(DosingLoop loop) => loop.Pattern.Days >= LeastDays;

    /// <summary>Likewise for weak product.</summary>
    public static bool IsReadyForWeak(DosingLoop loop) => loop.Pattern.Days >= LeastDaysForWeak;

    public double Best => Accounts.Max(a => a.Odds);

    /// <summary>Accounts that have fallen behind begin anew; all do while nothing is known.</summary>
    public void Renew(DosingLoop loop, in TankBelief tank, Instant at)
    {
        foreach (var account in Accounts)
            if (account.Odds < 0 || !IsReady(loop)) account.Begin(loop, tank, at);
    }

    /// <summary>The account that is newly believed, null when none is; and whether what was said is over or replaced.</summary>
    public (PumpAccount? Raised, PumpTrouble Cleared) Judge(DosingLoop loop, bool mayRaise)
    {
        var best = Accounts.MaxBy(a => a.Odds)!;
        Cap(best);
        var before = Said;
        var standing = before == PumpTrouble.None ? 0 : Accounts.Where(a => a.Kind == before).Max(a => a.Odds);
        if (mayRaise && IsBelieved(best, loop) && best.Kind != before && best.Odds >= standing + (before == PumpTrouble.None ? 0 : Rival))
        {
            Said = best.Kind;
            return (best, before);
        }

        if (before == PumpTrouble.None || standing >= Over) return (null, PumpTrouble.None);
        Said = PumpTrouble.None;
        return (null, before);
    }

    public void Keep(Tape tape)
    {
        foreach (var account in Accounts) account.Keep(tape);
        Said = (PumpTrouble)tape.Next((int)Said);
    }

    private static bool IsBelieved(PumpAccount account, DosingLoop loop) =>
        account.Odds > Limit(account.Kind) && (account.Kind != PumpTrouble.WeakProduct || IsReadyForWeak(loop));

    private static double Limit(PumpTrouble kind) => kind switch { PumpTrouble.WeakProduct => Weak, PumpTrouble.Siphon => Siphon, _ => NoDelivery };

    private void Cap(PumpAccount best)
    {
        if (best.Odds - Limit(best.Kind) - Room is not (> 0 and var excess)) return;
        foreach (var account in Accounts) account.Odds = Math.Max(0, account.Odds - excess);
    }
}
