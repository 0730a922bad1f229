using System.Globalization;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Server.Words;

/// <summary>A moment as people write it in a letter: Tuesday 3 March 2026, 14:05.</summary>
internal static class Moments
{
    /// <param name="local">The moment on the clock it is said by.</param>
    /// <param name="words">The language.</param>
    public static string Of(DateTime local, Wording words) => words.Text(Reason.Of(
        "moment", words.Find($"weekday.{(int)local.DayOfWeek}"), local.Day, words.Find($"month.{local.Month}"), local.Year, local.ToString("HH:mm", CultureInfo.InvariantCulture)));
}
