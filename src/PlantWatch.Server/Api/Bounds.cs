using System.Globalization;

namespace PlantWatch.Server.Api;

/// <summary>How much a request may hold. Generous for people; what lies beyond would be carried in every state and sent to every page.</summary>
internal static class Bounds
{
    /// <summary>Characters of a name or a place.</summary>
    public const int Name = 200;

    /// <summary>Characters of a remark.</summary>
    public const int Remark = 4000;

    /// <summary>Results of one check: every measurand once, and room for mistakes to be named.</summary>
    public const int Results = 40;

    /// <summary>Panel readings of one check.</summary>
    public const int Panel = 500;

    /// <summary>Checks that a calibration rests on.</summary>
    public const int Checks = 500;

    /// <summary>The objection to a name that is too long, or is all of signs that nobody sees; null when there is none.</summary>
    public static IResult? OfName(string field, string? text) => text?.Length > Name ? Answers.Invalid(field, "field.name_too_long") : IsUnseen(text) ? Answers.Invalid(field, "field.required") : null;

    // Nothing at all is for each door to say: some names may be left out.
    private static bool IsUnseen(string? text) => !string.IsNullOrWhiteSpace(text) && text.All(sign => char.IsWhiteSpace(sign)
        || char.GetUnicodeCategory(sign) is UnicodeCategory.Format or UnicodeCategory.Control or UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.OtherNotAssigned);

    /// <summary>The objection to a remark that is too long; null when there is none.</summary>
    public static IResult? OfRemark(string field, string? text) => text?.Length > Remark ? Answers.Invalid(field, "field.remark_too_long") : null;

    /// <summary>The objection to a list that is too long or has holes; null when there is none.</summary>
    public static IResult? OfList<T>(string field, IReadOnlyList<T> list, int most)
    {
        if (list.Count > most) return Answers.Invalid(field, "field.too_many");
        for (var i = 0; i < list.Count; i++)
            if (list[i] is null) return Answers.Invalid($"{field}[{i}]", "field.required");
        return null;
    }
}
