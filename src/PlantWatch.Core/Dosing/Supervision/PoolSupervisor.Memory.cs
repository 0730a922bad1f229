namespace PlantWatch.Core.Dosing.Supervision;

public sealed partial class PoolSupervisor
{
    /// <summary>The pool and its pumps as it reckons with them.</summary>
    public PumpedPool Pool => _pool;

    /// <summary>Another one that has seen the same. What the one is told later the other does not know.</summary>
    public PoolSupervisor Copy() => Remembering(_pool, Written().Rewound());

    /// <summary>All that it remembers, in bytes.</summary>
    public byte[] Memory() => Written().Bytes();

    /// <summary>One that remembers.</summary>
    /// <exception cref="FormatException">The bytes are not those of a memory.</exception>
    internal static PoolSupervisor Remembering(PumpedPool pool, ReadOnlySpan<byte> memory) => Remembering(pool, Tape.Of(memory));

    private static PoolSupervisor Remembering(PumpedPool pool, Tape tape)
    {
        var one = new PoolSupervisor(pool);
        one.Keep(tape);
        return tape.IsSpent ? one : throw new FormatException("the row does not end where it should");
    }

    private Tape Written()
    {
        var tape = Tape.Blank();
        Keep(tape);
        return tape;
    }

    private void Keep(Tape tape)
    {
        foreach (var pump in _pumps) pump.Keep(tape);
        _swap.Keep(tape);
        _redox.Keep(tape);
        _sights.Keep(tape);
        _chlorine.Keep(tape);
        _need.Keep(tape);
        (_stoodAt, _stepped) = (tape.Next(_stoodAt), tape.Next(_stepped));
        if (tape.Next(_bin is not null)) (_bin ??= FiveMinutes.Of(default)).Keep(tape);
    }
}
