using PlantWatch.Core.Plans;

namespace PlantWatch.Server.Words;

/// <summary>Who an answer is for: in which language, and in which units where those of the plant are not wanted.</summary>
/// <param name="Language">The language.</param>
/// <param name="Units">Units asked for; null for those of the plant.</param>
/// <remarks>It travels with the request as the culture does in any web server: an answer is put into words in many places, and none of them decides whom it speaks to.</remarks>
internal sealed record Reader(Language Language, UnitSystem? Units)
{
    private const string UnitsHeader = "Accept-Units";
    private static readonly AsyncLocal<Reader?> Present = new();
    private static readonly Reader Anybody = new(Language.English, null);

    /// <summary>The reader of the answer that is being made; whoever reads no answer is spoken to in English and in the units of the plant.</summary>
    public static Reader Here => Present.Value ?? Anybody;

    /// <summary>Sentences for the reader.</summary>
    public static Wording Words => Wording.Of(Here.Language);

    /// <summary>The units the reader measures out in.</summary>
    /// <param name="plan">The plant; metric while there is none.</param>
    public static UnitSystem UnitsIn(PlantPlan? plan) => Here.Units ?? plan?.Site.Units ?? UnitSystem.Metric;

    /// <summary>Every answer from here on is for who asked.</summary>
    public static void UseReader(WebApplication app) => app.Use((context, next) =>
    {
        Present.Value = Of(context.Request);
        return next(context);
    });

    private static Reader Of(HttpRequest request) => new(
        Language.Find(request.Query["language"]) ?? Language.Asked(request.Headers.AcceptLanguage),
        Enum.TryParse<UnitSystem>(request.Headers[UnitsHeader], ignoreCase: true, out var units) && Enum.IsDefined(units) ? units : null);
}
