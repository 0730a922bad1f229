namespace PlantWatch.Core.Dosing.Supervision;

public sealed partial class PoolSupervisor
{
    /// <summary>One that has learned nothing of the water and still knows what the samples of its pumps showed: a leap, an empty tank and the rate flat out are the pump's.</summary>
    /// <param name="pool">The pool and its pumps as they are now.</param>
    /// <param name="acid">What stayed of the acid pump.</param>
    /// <param name="chlorine">What stayed of the chlorine pump.</param>
    public PoolSupervisor Anew(PumpedPool pool, PumpKept acid, PumpKept chlorine)
    {
        var next = new PoolSupervisor(pool) { _stoodAt = _stoodAt };
        if (acid != PumpKept.Nothing) next._pumps[0].GoesOnFrom(_pumps[0], acid == PumpKept.Strokes);
        if (chlorine != PumpKept.Nothing) next._pumps[1].GoesOnFrom(_pumps[1], chlorine == PumpKept.Strokes);
        return next;
    }

    /// <summary>Enough was learned to judge whether a trouble of a pump holds. What single samples say needs no learning, and is never settled by it.</summary>
    public bool CanJudge(DosedProduct pump, PumpTrouble trouble) => trouble switch
    {
        PumpTrouble.LostPrime or PumpTrouble.Siphon => PumpJudge.IsReady(_pumps[(int)pump].Loop),
        PumpTrouble.WeakProduct => PumpJudge.IsReadyForWeak(_pumps[(int)pump].Loop),
        PumpTrouble.Swapped => PumpJudge.IsReady(_pumps[0].Loop) && PumpJudge.IsReady(_pumps[1].Loop),
        _ => false,
    };
}
