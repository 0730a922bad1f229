namespace PlantWatch.Server.Tests.PlantFile;

/// <summary>A clock that a test moves by hand. Timers fire on the thread that moves it, in the order in which they are due.</summary>
internal sealed class HandClock : TimeProvider
{
    private readonly Lock gate = new();
    private readonly List<HandTimer> timers = [];
    private DateTimeOffset now = new(2026, 3, 2, 12, 0, 0, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow()
    {
        lock (gate) return now;
    }

    /// <summary>How many timers wait for exactly this span: a test sees that somebody has come to wait.</summary>
    public int WaitingFor(TimeSpan span)
    {
        lock (gate) return timers.Count(timer => timer.Due is not null && timer.Span == span);
    }

    public void Advance(TimeSpan span)
    {
        var end = GetUtcNow() + span;
        while (NextDue(end) is { } timer) timer.Fire();
        lock (gate) now = end;
    }

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = new HandTimer(this, () => callback(state));
        timer.Change(dueTime, period);
        lock (gate) timers.Add(timer);
        return timer;
    }

    private HandTimer? NextDue(DateTimeOffset end)
    {
        lock (gate)
        {
            var next = timers.Where(timer => timer.Due <= end).MinBy(timer => timer.Due);
            if (next is null) return null;
            now = next.Due!.Value;
            next.Due = next.Period > TimeSpan.Zero ? now + next.Period : null;
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
            lock (clock.gate)
            {
                (Span, Period) = (dueTime, period);
                Due = dueTime < TimeSpan.Zero ? null : clock.now + dueTime;
            }

            return true;
        }

        public void Dispose()
        {
            lock (clock.gate) clock.timers.Remove(this);
        }

        public ValueTask DisposeAsync()
        {
            Dispose();
            return ValueTask.CompletedTask;
        }
    }
}
