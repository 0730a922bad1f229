using System.Globalization;
using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using InfluxDB.Client.Core.Exceptions;

namespace PlantWatch.Storage.Influx;

/// <summary>What became of lines. The default has not been taken.</summary>
public enum Taking
{
    /// <summary>No answer, too busy, or broken: later it may go.</summary>
    NotNow = 0,
    /// <summary>All of them are there.</summary>
    Taken,
    /// <summary>Some or all of these lines are refused for good; the others of them are there.</summary>
    LinesRefused,
    /// <summary>Some or all of these lines are older than what the server keeps; the others of them are there.</summary>
    BeyondRetention,
    /// <summary>The token is refused.</summary>
    NotAllowed,
    /// <summary>There is no such database or bucket.</summary>
    NotThere,
}

/// <summary>The answer to lines.</summary>
/// <param name="Taking">What became of them.</param>
/// <param name="Words">What the server said, or what went wrong on the way; empty when they were taken.</param>
/// <param name="Dropped">How many lines the server says it refused; null where it does not say.</param>
/// <param name="NotBefore">How long the server asks to be left alone; zero when it does not.</param>
/// <param name="IsTooMuch">Fewer lines at once may go.</param>
public sealed partial record WriteAnswer(Taking Taking, string Words, int? Dropped = null, TimeSpan NotBefore = default, bool IsTooMuch = false)
{
    /// <summary>Words of every answer about lines that are too old to be kept.</summary>
    public const string BeyondRetention = "beyond retention";

    private const int LongestWords = 300;

    /// <summary>They are there.</summary>
    public static WriteAnswer Good { get; } = new(Taking.Taken, "");

    /// <summary>Nothing was heard within the longest time; on a thin line fewer at once may get through.</summary>
    public static WriteAnswer Late { get; } = new(Taking.NotNow, "no answer in time", IsTooMuch: true);

    /// <summary>Lines of it can never be written; the others are there.</summary>
    public bool IsForGood => Taking is Taking.LinesRefused or Taking.BeyondRetention;

    /// <summary>A success that no InfluxDB answers with.</summary>
    public static WriteAnswer NotOfIts(HttpStatusCode status) => new(Taking.NotNow, $"{(int)status} instead of 204: what answers is no InfluxDB");

    /// <summary>Understands what a client throws.</summary>
    public static WriteAnswer Of(Exception fault) => fault switch
    {
        HttpException { Status: > 0 } refused => Of((HttpStatusCode)refused.Status, Line(refused.Message), TimeSpan.FromSeconds(refused.RetryAfter ?? 0)),
        OperationCanceledException or TimeoutException => Late,
        _ => new(Taking.NotNow, Line(fault.GetBaseException().Message)),
    };

    /// <summary>Understands a status and the words with it.</summary>
    public static WriteAnswer Of(HttpStatusCode status, string words, TimeSpan notBefore) => status switch
    {
        HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden => new(Taking.NotAllowed, words),
        HttpStatusCode.NotFound => new(Taking.NotThere, words),
        HttpStatusCode.BadRequest or HttpStatusCode.UnprocessableEntity when SpeaksOfAge(words) => new(Taking.BeyondRetention, BeyondRetention, DroppedOf(words)),
        HttpStatusCode.BadRequest or HttpStatusCode.UnprocessableEntity when SpeaksOfLines().IsMatch(words) => new(Taking.LinesRefused, WithoutFigures(words), DroppedOf(words)),
        _ => new(Taking.NotNow, $"{(int)status}: {words}", null, notBefore, IsTooMuch: status == HttpStatusCode.RequestEntityTooLarge),
    };

    // Of two reasons the one that somebody can mend counts.
    private static bool SpeaksOfAge(string words) =>
        words.Contains("beyond retention policy", StringComparison.OrdinalIgnoreCase) && !words.Contains("unable to parse", StringComparison.OrdinalIgnoreCase) && !words.Contains("conflict", StringComparison.OrdinalIgnoreCase);

    // The same refusal of other lines is the same reason: what is particular to a line is taken out.
    private static string WithoutFigures(string words) => LinesInside().Replace(DroppedFigure().Replace(words, ""), "'...'").Trim();

    private static int? DroppedOf(string words) => DroppedFigure().Match(words) is { Success: true } match ? int.Parse(match.Groups[1].ValueSpan, CultureInfo.InvariantCulture) : null;

    private static string Line(string words)
    {
        var line = Said(words).ReplaceLineEndings(" ").Trim();
        return line.Length <= LongestWords ? line : string.Concat(line.AsSpan(0, LongestWords), "\u2026");
    }

    // Some answers reach us as the object they came in.
    private static string Said(string words)
    {
        if (!words.StartsWith('{')) return words;
        try
        {
            using var document = JsonDocument.Parse(words);
            return InfluxTable.ErrorOf(document.RootElement) ?? words;
        }
        catch (JsonException)
        {
            return words;
        }
    }

    [GeneratedRegex("partial write|unable to parse|field type conflict|beyond retention policy", RegexOptions.IgnoreCase)]
    private static partial Regex SpeaksOfLines();

    [GeneratedRegex(@"\s*dropped=(\d+)")]
    private static partial Regex DroppedFigure();

    [GeneratedRegex("'[^']*'")]
    private static partial Regex LinesInside();
}
