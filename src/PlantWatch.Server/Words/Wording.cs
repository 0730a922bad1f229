using System.Collections.Frozen;
using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Api;
using PlantWatch.Server.Units;

namespace PlantWatch.Server.Words;

/// <summary>Puts reasons into sentences. The sentences stand in one folder a language, a file a subject, by code; figures go where the sentence wants them.</summary>
/// <remarks>
/// <c>{0:0.00}</c> is a figure with its format, <c>{1}</c> a name; a name that has words of its own (<c>name.free_chlorine</c>) is given in them.
/// <c>{0:in 2}</c> is a figure with the decimals that people write in the unit that fact 2 names, and the unit after it; <c>{0:bare 2}</c> is the same without
/// the unit, and <c>{0:diff 2}</c> the same with its sign always shown. <c>{0:mass}</c> (kg), <c>{0:volume}</c> (L), <c>{0:water}</c> (m3) and
/// <c>{0:temperature}</c> (degC) are amounts, said in the units of the plant with the SI figure beside them. <c>{0:span}</c> is a length of time in seconds, said as
/// people say it.
/// </remarks>
internal sealed partial class Wording
{
    private readonly FrozenDictionary<string, string> _sentences;

    private readonly AmountWords _amounts;

    private static readonly FrozenDictionary<string, Wording> Spoken = Language.All.ToFrozenDictionary(l => l.Code, Load, StringComparer.Ordinal);

    private Wording(FrozenDictionary<string, string> sentences, Language language, UnitSystem units)
    {
        _sentences = sentences;
        _amounts = new(units, language);
    }

    /// <summary>English.</summary>
    public static Wording English => Of(Language.English);

    /// <summary>The sentences of a language.</summary>
    public static Wording Of(Language language) => Spoken[language.Code];

    /// <summary>The sentences for what is sent from a site without being asked for.</summary>
    public static Wording Of(SitePlan site) => Of(Language.Find(site.Language) ?? Language.English);

    /// <summary>The language.</summary>
    public Language Language => _amounts.Language;

    /// <summary>The units people measure out in.</summary>
    public UnitSystem Units => _amounts.Units;

    /// <summary>The same sentences for people who measure out in these units.</summary>
    public Wording In(UnitSystem units) => units == _amounts.Units ? this : new(_sentences, Language, units);

    public IEnumerable<string> Codes => _sentences.Keys;

    public Said Say(Reason reason) => new(reason.Code, Text(reason));

    public IReadOnlyList<Said> Say(IEnumerable<Reason> reasons) => [.. reasons.Select(Say)];

    public FieldSaid Say(FieldRemark remark) => new(remark.Field, remark.Reason.Code, Text(remark.Reason));

    /// <summary>Why an item was refused, with the offending part.</summary>
    public string Say(Refusal refusal)
    {
        var sentence = Find($"refusal.{Key(refusal.Reason)}");
        return refusal.Detail.Length > 0 ? $"{sentence}: {refusal.Detail}" : sentence;
    }

    /// <summary>A sentence of a rule: title, consequence, action or respond.</summary>
    public string OfRule(string rule, string part) => Find($"{rule}.{part}");

    public string Text(Reason reason) => _sentences.TryGetValue(reason.Code, out var sentence) ? Fill(sentence, reason) : reason.Code;

    internal string Fill(string sentence, Reason reason) => Hole().Replace(sentence, hole => Fill(reason, hole));

    public string Find(string code) => _sentences.GetValueOrDefault(code, code);

    public static string Key<T>(T value) where T : struct, Enum => JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString());

    private string Fill(Reason reason, Match hole)
    {
        var index = int.Parse(hole.Groups[1].ValueSpan, CultureInfo.InvariantCulture);
        if (index >= reason.Facts.Length) return "?";
        var fact = reason.Facts[index];
        if (fact.Text is { } name) return _sentences.GetValueOrDefault($"name.{name}", name);
        var format = hole.Groups[2].Success ? hole.Groups[2].Value : "0.##";
        if (InUnit().Match(format) is { Success: true } asked) return OfUnit(reason, fact.Number, asked);
        if (format == "span" && fact.Number is { } seconds) return Spans.Of(seconds, this);
        if (OfAmount(fact.Number, format) is { } amount) return amount.ToString();
        return fact.Number is { } number ? Language.Write(number.ToString(format, CultureInfo.InvariantCulture)) : Find("name.none");
    }

    private Amount? OfAmount(double? number, string format) => (number, format) switch
    {
        (null, _) => null,
        (_, "mass") => _amounts.Mass(number.Value),
        (_, "volume") => _amounts.Volume(number.Value),
        (_, "water") => _amounts.Water(number.Value),
        (_, "temperature") => _amounts.Temperature(number.Value),
        _ => null,
    };

    private static IEnumerable<double> Others(Reason reason, double value) => reason.Facts.Select(f => f.Number).OfType<double>().Where(n => n != value);

    private string OfUnit(Reason reason, double? number, Match asked)
    {
        if (number is not { } value) return Find("name.none");
        var at = int.Parse(asked.Groups[2].ValueSpan, CultureInfo.InvariantCulture);
        var unit = at < reason.Facts.Length ? reason.Facts[at].Text ?? "" : "";
        return asked.Groups[1].Value switch
        {
            "bare" => Language.Write(Figures.Beside(value, Others(reason, value), unit)),
            "diff" => Language.Write(Figures.Signed(value, unit)) + Figures.After(unit),
            _ => Language.Write(Figures.Beside(value, Others(reason, value), unit)) + Figures.After(unit),
        };
    }

    // What a language does not say yet is said in English: a sentence in another language is worth more than a code.
    private static Wording Load(Language language)
    {
        var all = Written(Language.English);
        foreach (var (code, sentence) in Written(language)) all[code] = sentence;
        foreach (var (code, sentence) in RuleSheets.Sentences(language)) all[code] = sentence;
        return new Wording(all.ToFrozenDictionary(StringComparer.Ordinal), language, UnitSystem.Metric);
    }

    /// <summary>What the files of a language say, a file a subject; what is said of a rule stands once, in its section of the page, and not here.</summary>
    /// <exception cref="ArgumentException">Two sentences for one code: a mistake of ours, which stops the start.</exception>
    internal static Dictionary<string, string> Written(Language language)
    {
        var all = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var file in typeof(Wording).Assembly.GetManifestResourceNames().Where(n => n.StartsWith($"Words.{language.Code}.", StringComparison.Ordinal)))
        {
            using var stream = typeof(Wording).Assembly.GetManifestResourceStream(file)!;
            foreach (var (code, sentence) in JsonSerializer.Deserialize<Dictionary<string, string>>(stream) ?? []) all.Add(code, sentence);
        }

        return all;
    }

    [GeneratedRegex(@"\{(\d)(?::([^}]+))?\}")]
    private static partial Regex Hole();

    [GeneratedRegex(@"^(in|bare|diff) (\d)$")]
    private static partial Regex InUnit();
}
