using System.Globalization;
using System.Text.RegularExpressions;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Dosing;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Stock;

namespace PlantWatch.Core.Tests.GoldenDays;

/// <summary>What happens in a story, at what time: read from the plain text of its events.txt.</summary>
/// <remarks>
/// Times are the site's. <c>07:00 - 09:00  ph 7.40 -> 7.60</c> is a probe that says so every thirty seconds and ripples by its last digit, or says the very same with <c>frozen</c>;
/// a check is typed in five minutes after its sample; <c>x10</c> is a sample diluted to one in ten, and <c>at outlet</c> or <c>at pool, stairs</c> the place of it.
/// <c>10:05 check main corrects 09:50</c> takes the place of the check of that sample time; a dose is in kg and has mixed after half an hour; a fill names product, tank and two people, and <c>went in</c> that it did all the same; <c>tell main/ph</c> says in words what was done about an open exception;
/// a job has one line for each time that somebody writes it, what was seen before what was done.
/// </remarks>
internal sealed partial class Story
{
    private static readonly TimeSpan Interval = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan Typing = TimeSpan.FromMinutes(5);
    private static readonly TimeSpan Mixing = TimeSpan.FromMinutes(30);
    private static readonly int[] Ripple = [0, 1, 0, -1, 0, 0, 1, -1];

    private readonly TimeZoneInfo _zone;
    private readonly Dictionary<Instant, Guid> _checks = [];
    private DateOnly _day;

    public Story(CircuitPlan plan, IEnumerable<string> lines)
    {
        Plan = plan;
        _zone = TimeZoneInfo.FindSystemTimeZoneById(plan.TimeZone);
        foreach (var line in lines.Select(l => l.Split('#')[0].Trim()).Where(l => l.Length > 0)) Read(line);
    }

    public CircuitPlan Plan { get; }

    /// <summary>Everything that happens, by the time it happens.</summary>
    public SortedDictionary<Instant, List<Act>> Acts { get; } = [];

    public string Clock(Instant at) => TimeZoneInfo.ConvertTime(at.ToDateTimeOffset(), _zone).ToString("ddd HH:mm:ss", CultureInfo.InvariantCulture);

    private void Read(string line)
    {
        if (line.StartsWith("day ", StringComparison.Ordinal)) _day = DateOnly.ParseExact(line[4..].Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture);
        else if (Holds().Match(line) is { Success: true } hold) Hold(hold);
        else if (Checked().Match(line) is { Success: true } check) Check(check);
        else if (Declared().Match(line) is { Success: true } d)
            Add(At(d, "at"), new Act.Declare(d.Groups["pool"].Value, Word<IncidentKind>(d.Groups["kind"].Value), Word<IncidentAuthority>(d.Groups["authority"].Value), d.Groups["who"].Value));
        else if (Closed().Match(line) is { Success: true } c) Add(At(c, "at"), new Act.Close(c.Groups["who"].Value, c.Groups["why"].Value));
        else if (Run().Match(line) is { Success: true } run)
            Add(At(run, "at"), new Act.Set(run.Groups["pool"].Value, Word<OperatingState>(run.Groups["state"].Value), run.Groups["cause"].Success, run.Groups["who"].Value, run.Groups["why"].Success ? run.Groups["why"].Value : null));
        else if (Says().Match(line) is { Success: true } says) Add(At(says, "at"), new Act.Message(says.Groups["topic"].Value, says.Groups["text"].Value));
        else if (Acknowledged().Match(line) is { Success: true } seen) Add(At(seen, "at"), new Act.Acknowledge(seen.Groups["key"].Value, seen.Groups["who"].Value, seen.Groups["words"].Value));
        else if (Safe().Match(line) is { Success: true } safe) Add(At(safe, "at"), new Act.MakeSafe(safe.Groups["key"].Value, safe.Groups["who"].Value, safe.Groups["words"].Value));
        else if (Proposed().Match(line) is { Success: true } p) Add(At(p, "at"), new Act.Propose(p.Groups["probe"].Value, Number(p.Groups["offset"].Value), p.Groups["who"].Value));
        else if (Confirmed().Match(line) is { Success: true } row) Add(At(row, "at"), new Act.Confirm(row.Groups["row"].Value, row.Groups["who"].Value, row.Groups["document"].Value));
        else if (Approved().Match(line) is { Success: true } a) Add(At(a, "at"), new Act.Approve(a.Groups["probe"].Value, a.Groups["who"].Value));
        else if (PumpDoes().Match(line) is { Success: true } pump && Plan.Pumps.FirstOrDefault(x => x.Id == pump.Groups["pump"].Value) is { } plan)
            Add(At(pump, "at"), new Act.Message(plan.StateTopic, pump.Groups["does"].Value));
        else if (Poured().Match(line) is { Success: true } poured) Pour(poured);
        else if (Given().Match(line) is { Success: true } g) Dose(g);
        else if (Shut().Match(line) is { Success: true } s) Add(At(s, "at"), new Act.Shut(s.Groups["pool"].Value, s.Groups["who"].Value, s.Groups["why"].Value));
        else if (Told().Match(line) is { Success: true } t) Add(At(t, "at"), new Act.Tell(t.Groups["key"].Value, t.Groups["who"].Value, t.Groups["words"].Value));
        else if (Worked().Match(line) is { Success: true } j)
            Add(At(j, "at"), new Act.Work(j.Groups["asset"].Value, Word<JobState>(j.Groups["state"].Value), j.Groups["who"].Value, j.Groups["seen"].Value, j.Groups["done"].Success ? j.Groups["done"].Value : null));
        else if (Washed().Match(line) is { Success: true } f) Add(At(f, "at"), new Act.Wash(f.Groups["filter"].Value, f.Groups["who"].Value, f.Groups["water"].Success ? Number(f.Groups["water"].Value) : null));
        else throw new FormatException($"a story cannot say: {line}");
    }

    private void Hold(Match hold)
    {
        var probe = Plan.Probes.Single(p => p.Id == hold.Groups["probe"].Value);
        var (from, to) = (At(hold, "from"), At(hold, "to"));
        var first = hold.Groups["first"].Value;
        var (start, end) = (Number(first), hold.Groups["last"].Success ? Number(hold.Groups["last"].Value) : Number(first));
        var decimals = first.Contains('.', StringComparison.Ordinal) ? first.Length - first.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        var step = probe.Measurand == Measurand.SampleFlow || hold.Groups["frozen"].Success ? 0 : Math.Pow(10, -decimals);
        var i = 0;
        for (var at = from; at < to; at += Interval, i++)
        {
            var value = start + ((end - start) * ((at - from) / (to - from))) + (Ripple[i % Ripple.Length] * step);
            Add(at, new Act.Message(probe.Topic, value.ToString("F" + decimals, CultureInfo.InvariantCulture)));
        }
    }

    private void Check(Match line)
    {
        var sampled = At(line, "at");
        var corrected = line.Groups["corrects"].Success ? _checks[At(line, "corrects")] : (Guid?)null;
        var of = corrected is null ? sampled : At(line, "corrects");
        _checks[of] = TimeOrderedId.Derive(sampled, line.Value);
        var said = line.Groups["what"].Value.Split(',', StringSplitOptions.TrimEntries);
        Add(sampled + Typing, new Act.Check(new ManualCheck
        {
            Id = _checks[of], PoolId = line.Groups["pool"].Value, SampledAt = of, Corrects = corrected, CorrectionReason = corrected is null ? null : "typed wrongly", EnteredAt = sampled + Typing, Who = line.Groups["who"].Value,
            Point = line.Groups["point"].Success ? Word<SamplePoint>(line.Groups["point"].Value) : SamplePoint.Pool, Place = line.Groups["place"].Success ? line.Groups["place"].Value : null, BottomVisible = said.Contains("bottom seen") ? true : said.Contains("bottom not seen") ? false : null,
            Results = [.. said.Where(s => !s.StartsWith("bottom", StringComparison.Ordinal)).Select(Result)],
        }));
    }

    private void Dose(Match line)
    {
        var given = At(line, "at");
        Add(given, new Act.Dose(new GivenDose
        {
            Id = TimeOrderedId.Derive(given, line.Value), PoolId = line.Groups["pool"].Value, ProductId = line.Groups["kind"].Value, Product = line.Groups["kind"].Value,
            Kind = Word<ProductKind>(line.Groups["kind"].Value), Kilograms = Number(line.Groups["kg"].Value), GivenAt = given, MixedAt = given + Mixing, By = line.Groups["who"].Value,
        }));
    }

    private void Pour(Match line)
    {
        var (at, product) = (At(line, "at"), Plan.Products.Single(p => p.Id == line.Groups["product"].Value));
        Add(at, new Act.Pour(new StockMove
        {
            Id = TimeOrderedId.Derive(at, line.Value), Act = StockAct.Delivered, ProductId = product.Id, PumpId = line.Groups["pump"].Value, Amount = Number(line.Groups["amount"].Value), Strength = product.Strength,
            HappenedAt = at, By = line.Groups["who"].Value, CheckedBy = line.Groups["other"].Value, WentIn = line.Groups["in"].Success,
        }));
    }

    private static TestResult Result(string said)
    {
        var words = said.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return new(Enum.GetValues<Measurand>().Single(m => m.Key() == words[0]), Number(words[1]), Enum.Parse<TestMethod>(words[2], ignoreCase: true), Dilution: words.Length > 3 ? Number(words[3][1..]) : 1);
    }

    private void Add(Instant at, Act act)
    {
        if (!Acts.TryGetValue(at, out var list)) Acts[at] = list = [];
        list.Add(act);
    }

    private Instant At(Match match, string group)
    {
        var text = match.Groups[group].Value;
        var local = text == "24:00" ? _day.AddDays(1).ToDateTime(default) : _day.ToDateTime(TimeOnly.ParseExact(text, "HH:mm", CultureInfo.InvariantCulture));
        return Instant.From(new DateTimeOffset(local, _zone.GetUtcOffset(local)));
    }

    private static T Word<T>(string key) where T : struct, Enum => Enum.GetValues<T>().Single(value => Telling.Word(value) == key);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?<from>\S+) - (?<to>\S+)\s+(?<probe>\S+) (?<frozen>frozen )?(?<first>-?[\d.]+)( -> (?<last>-?[\d.]+))?$")]
    private static partial Regex Holds();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d) check (?<pool>\S+)( corrects (?<corrects>\d\d:\d\d))?( at (?<point>[a-z_]+)(, (?<place>[a-z ]+?))?)? by (?<who>[^:]+): (?<what>.+)$")]
    private static partial Regex Checked();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d) incident in (?<pool>\S+): (?<kind>\S+), by the figures of (?<authority>\S+), declared by (?<who>.+)$")]
    private static partial Regex Declared();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d) close the incident by (?<who>[^:]+): (?<why>.+)$")]
    private static partial Regex Closed();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d) (?<pool>\S+) (?<state>open|closed|covered|drained)(?<cause> for cause)? by (?<who>[^:]+)(: (?<why>.+))?$")]
    private static partial Regex Run();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d) (?<topic>\S+) says (?<text>.+)$")]
    private static partial Regex Says();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d) acknowledge (?<key>\S+) by (?<who>[^:]+): (?<words>.+)$")]
    private static partial Regex Acknowledged();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d) made safe (?<key>\S+) by (?<who>[^:]+): (?<words>.+)$")]
    private static partial Regex Safe();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d) (?<amount>[\d.]+) L of (?<product>\S+) into (?<pump>\S+) by (?<who>[^,]+), checked by (?<other>[^,]+)(?<in>, went in)?$")]
    private static partial Regex Poured();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d) propose (?<probe>\S+) offset (?<offset>\S+) by (?<who>.+)$")]
    private static partial Regex Proposed();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d) confirm (?<row>\S+) by (?<who>[^:]+): (?<document>.+)$")]
    private static partial Regex Confirmed();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d) approve (?<probe>\S+) by (?<who>.+)$")]
    private static partial Regex Approved();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d) dose (?<pool>\S+) by (?<who>[^:]+): (?<kg>[\d.]+) (?<kind>\S+)$")]
    private static partial Regex Given();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d) pool (?<pool>\S+) closed for cause by (?<who>[^:]+): (?<why>.+)$")]
    private static partial Regex Shut();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d) tell (?<key>\S+) by (?<who>[^:]+): (?<words>.+)$")]
    private static partial Regex Told();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d) job on (?<asset>\S+) (?<state>open|in_hand|waiting_for_parts|done) by (?<who>[^:]+): (?<seen>[^;]+)(; (?<done>.+))?$")]
    private static partial Regex Worked();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d) washed (?<filter>\S+) by (?<who>[^:]+)(: (?<water>[\d.]+) m3)?$")]
    private static partial Regex Washed();

    [GeneratedRegex(@"^(?<at>\d\d:\d\d)\s+(?<pump>\S+) (?<does>stopped|running|fault)$")]
    private static partial Regex PumpDoes();
}

/// <summary>One thing that happens in a story.</summary>
internal abstract record Act
{
    public sealed record Message(string Topic, string Text) : Act;
    public sealed record Check(ManualCheck Made) : Act;
    public sealed record Acknowledge(string Key, string Who, string Words) : Act;
    public sealed record MakeSafe(string Key, string Who, string Words) : Act;
    public sealed record Propose(string Probe, double Offset, string Who) : Act;
    public sealed record Declare(string Pool, IncidentKind Kind, IncidentAuthority Authority, string Who) : Act;
    public sealed record Close(string Who, string Why) : Act;
    public sealed record Set(string Pool, OperatingState State, bool ForCause, string Who, string? Why) : Act;
    public sealed record Confirm(string Row, string Who, string Document) : Act;
    public sealed record Dose(GivenDose Given) : Act;
    public sealed record Pour(StockMove Move) : Act;
    public sealed record Shut(string Pool, string Who, string Why) : Act;
    public sealed record Tell(string Key, string Who, string Words) : Act;
    public sealed record Work(string Asset, JobState State, string Who, string Seen, string? Done) : Act;
    public sealed record Wash(string Filter, string Who, double? CubicMetres) : Act;
    public sealed record Approve(string Probe, string Who) : Act;
}
