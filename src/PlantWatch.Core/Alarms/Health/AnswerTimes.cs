using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Alarms.Health;

/// <summary>How long it took until somebody said that he had seen it.</summary>
internal sealed class AnswerTimes
{
    private TimeSpan[] _times = [];

    public int Unanswered { get; private set; }

    /// <param name="all">In the order of time.</param>
    /// <param name="from">Start, included: only what was told from then on counts.</param>
    /// <param name="to">End, excluded.</param>
    public static AnswerTimes Of(IEnumerable<AlarmHappening> all, Instant from, Instant to)
    {
        var (answers, times, waiting) = (new AnswerTimes(), new List<TimeSpan>(), new Dictionary<string, Instant>(StringComparer.Ordinal));
        foreach (var change in all.Where(c => c.At >= from && c.At < to))
        {
            if (change.Annunciates && !waiting.TryAdd(change.Key, change.At))
            {
                answers.Unanswered++;
                waiting[change.Key] = change.At;
            }

            if (change.Change == AlarmChange.Acknowledged && waiting.Remove(change.Key, out var since)) times.Add(change.At - since);
        }

        answers.Unanswered += waiting.Count;
        answers._times = [.. times.Order()];
        return answers;
    }

    /// <summary>The least time that at least this part of the answers came within; null without answers.</summary>
    public TimeSpan? Quantile(double part) => _times.Length == 0 ? null : _times[Math.Max(0, (int)Math.Ceiling(part * _times.Length) - 1)];
}
