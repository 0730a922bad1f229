namespace PlantWatch.Server.Tests.PlantFile;

/// <summary>A clock that a test moves by hand. Timers fire on the thread that moves it, in the order in which they are due.</summary>
internal sealed class HandClock : TimeProvider
{
    private readonly Lock _gate = new();
    private readonly List<HandTimer> _timers = [];
    private DateTimeOffset _now = new(2026, 3, 2, 12, 0, 0, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow()
    {
        lock (_gate) return _now;
    }

    /// <summary>How many timers wait for exactly this span: a test sees that somebody has come to wait.</summary>
    public int WaitingFor(TimeSpan span)
    {
        lock (_gate) return _timers.Count(timer => timer.Due is not null && timer.Span == span);
    }

    public void Advance(TimeSpan span)
    {
        var end = GetUtcNow() + span;
        while (NextDue(end) is { } timer) timer.Fire();
        lock (_gate) _now = end;
    }

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = new HandTimer(this, () => callback(state));
        timer.Change(dueTime, period);
        lock (_gate) _timers.Add(timer);
        return timer;
    }

    private HandTimer? NextDue(DateTimeOffset end)
    {
        lock (_gate)
        {
            var next = _timers.Where(timer => timer.Due <= end).MinBy(timer => timer.Due);
            if (next is null) return null;
            _now = next.Due!.Value;
            next.Due = next.Period > TimeSpan.Zero ? _now + next.Period : null;
            return next;
        }
    }

    private sealed class HandTimer(HandClock clock, Action fire) : ITimer
    {
        public DateTimeOffset? Due { get; set; }

        public TimeSpan Span { get; private set; }

        public TimeSpan Period { get; private set; }

        public void Fire() => fire();

        public bool Change(TimeSpan dueTime, TimeSpan period)
        {
            lock (clock._gate)
            {
                (Span, Period) = (dueTime, period);
                Due = dueTime < TimeSpan.Zero ? null : clock._now + dueTime;
            }

            return true;
        }

        public void Dispose()
        {
            lock (clock._gate) clock._timers.Remove(this);
        }

        public ValueTask DisposeAsync()
        {
            Dispose();
            return ValueTask.CompletedTask;
        }
    }
}
