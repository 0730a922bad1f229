using System.Text;
using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Telling;

/// <summary>A message for a person to read: what it is, where, since when on the site's clock, what follows, what to do and how long there is.</summary>
/// <param name="words">The language.</param>
/// <param name="timeZone">IANA zone of the site.</param>
/// <param name="page">Address of the page; null when none is known.</param>
internal sealed class MessageText(Wording words, string timeZone, string? page)
{
    private const int LongestSubject = 150;
    private readonly TimeZoneInfo _zone = TimeZoneInfo.FindSystemTimeZoneById(timeZone);

    /// <summary>The first words: enough to decide whether to read on.</summary>
    public string Subject(Message message)
    {
        var subject = message.Kind == NoticeKind.Sheet ? message.Title.ReplaceLineEndings(" ") : words.Text(Reason.Of($"telling.subject_{Code(message)}", Named(message), Place(message), message.Title)).ReplaceLineEndings(" ");
        return subject.Length <= LongestSubject ? subject : string.Concat(subject.AsSpan(0, LongestSubject - 1), "\u2026");
    }

    /// <summary>The letter.</summary>
    public string Body(Message message)
    {
        if (message.Kind == NoticeKind.Sheet) return page is null ? message.Cause + "\n" : $"{message.Cause}\n{words.Text(Reason.Of("telling.page", page))}\n";
        var text = new StringBuilder();
        text.Append(Subject(message)).Append("\n\n").Append(message.Cause).Append("\n\n");
        Line("telling.where", message.PoolName is null ? message.CircuitName : $"{message.PoolName}, {message.CircuitName}", message.Site);
        Line("telling.since", At(message.Since), timeZone);
        if (message.Kind == NoticeKind.Acknowledged) Line("telling.acknowledged", message.By ?? "?", At(message.HappenedAt ?? message.Since));
        if (message.Kind == NoticeKind.Cleared && message.HappenedAt is { } over) Line("telling.over", At(over));
        if (message.Kind == NoticeKind.Raised && message.Rule.Length > 0) Do(message);
        text.Append('\n').Append(words.Find("telling.advice")).Append('\n');
        if (page is not null) Line("telling.page", page);
        return text.ToString();

        void Line(string code, params Fact[] facts) => text.Append(words.Text(new Reason(code, [.. facts]))).Append('\n');

        void Do(Message m)
        {
            Line("telling.respond", m.TimeToRespond);
            Line("telling.what_to_do", m.WhatToDo);
            Line("telling.consequence", m.Consequence);
            foreach (var follows in m.Follows) Line("telling.follows", follows);
            Line(m.Step == 0 ? "telling.on_call" : "telling.passed_on");
        }
    }

    private static string Code(Message message) => message.Rule.Length == 0 ? "test" : Wording.Key(message.Kind);

    private string Named(Message message) => words.Find($"telling.priority_{Wording.Key(message.Priority)}");

    private static string Place(Message message) => message.PoolName ?? message.CircuitName;

    private string At(Instant at) => Moments.Of(TimeZoneInfo.ConvertTime(at.ToDateTimeOffset(), _zone).DateTime, words);
}
