using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Live;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>The tests by hand of a pool in the order of time, with the rounds that nobody walked as rows of their own.</summary>
internal sealed class TestTable(SheetSource source, PoolPlan pool, Instant now, Wording words)
{
    private readonly LimitsInForce _limits = source.State.Pools.FirstOrDefault(p => p.Id == pool.Id)?.Limits ?? LimitsInForce.None;
    private readonly IReadOnlyList<StandingTest> _tests = Tests.Of(source, pool.Id);

    /// <summary>The rounds of the span that nobody walked, as far as their time is over.</summary>
    public IReadOnlyList<DutyRound> Missed { get; } =
        [.. DutyRounds.Between(source.Plan.TimeZone, pool, [.. Tests.Of(source, pool.Id, inSpan: false).Select(t => t.Check)], source.Span.From, source.Span.To).Where(r => r.IsMissed(now))];

    /// <summary>Those of them that were asked for: a closed pool owes no test.</summary>
    public IEnumerable<DutyRound> Owed => Missed.Where(round => OperationAt.Of(source, pool.Id, round.DueAt).MayBatheIn);

    /// <summary>The table.</summary>
    public Table Make()
    {
        var measured = Measured();
        var missed = Missed.Select(round => (round.DueAt, NotTested(round, measured)));
        var rows = _tests.Select(t => (t.Check.SampledAt, Row(t, measured))).Concat(missed).OrderBy(r => r.Item1).Select(r => r.Item2);
        return new(words.Paper("tests_caption", pool.Name), Columns(measured), [.. rows], words.Paper("tests_none"));
    }

    // What is always asked for comes first, then what was tested or should have been; combined last, since it is mostly worked out.
    private Measurand[] Measured()
    {
        Measurand[] usual = pool.Disinfectant == Disinfectant.Bromine ? [Measurand.Bromine] : [Measurand.FreeChlorine, Measurand.TotalChlorine];
        Measurand[] also = pool.Disinfectant == Disinfectant.StabilisedChlorine ? [Measurand.CyanuricAcid] : [];
        var asked = pool.Duties.SelectMany(d => d.What).Concat(_tests.SelectMany(t => t.Before.Append(t.Entry)).SelectMany(e => e.Check.Results).Select(r => r.Measurand));
        return [.. usual.Concat([Measurand.Ph, Measurand.Temperature, Measurand.TotalAlkalinity, Measurand.CalciumHardness]).Concat(also).Concat(asked.Order()).Where(m => m != Measurand.CombinedChlorine).Distinct()];
    }

    private bool HasCombined => pool.Disinfectant != Disinfectant.Bromine || _tests.Any(t => t.Check.Result(Measurand.CombinedChlorine) is not null);

    private List<Column> Columns(Measurand[] measured)
    {
        List<Column> columns = [new(words.Paper("sampled"), ColumnKind.Time), new(words.Paper("tested_by"))];
        columns.AddRange(measured.Select(m => new Column(words.Heading(m), ColumnKind.Number, m.Unit())));
        if (HasCombined) columns.Add(new(words.Heading(Measurand.CombinedChlorine), ColumnKind.Number, Measurand.CombinedChlorine.Unit()));
        columns.AddRange([new(words.Paper("bottom_seen")), new(words.Paper("bathers"), ColumnKind.Number, ""), new(words.Paper("remarks"), Wide: true)]);
        return columns;
    }

    private List<Cell> Row(StandingTest test, Measurand[] measured)
    {
        List<Cell> cells = [Over(test, c => new When(c.SampledAt)), Over(test, c => new Text(c.Who)) with { Note = Place(test.Check) }];
        cells.AddRange(measured.Select(m => Figure.Of(test, m, _limits, words)));
        if (HasCombined) cells.Add(test.Check.Result(Measurand.CombinedChlorine) is null ? Over(test, Combined) : Figure.Of(test, Measurand.CombinedChlorine, _limits, words));
        cells.AddRange([Over(test, Bottom), Over(test, Bathers), new Text(Remarks(test))]);
        return cells;
    }

    // From the first version to the one that stands.
    private static Cell Over(StandingTest test, Func<ManualCheck, Cell> of) =>
        test.Before.Reverse().Append(test.Entry).Select(e => of(e.Check)).Aggregate((Cell)Blank.Cell, Figure.After);

    private string Place(ManualCheck check) => PaperWords.And(check.Point == SamplePoint.Unknown ? null : words.PaperWord("point", check.Point), check.Place);

    // Total less free of the same sample, and it says so.
    private Cell Combined(ManualCheck check) => CombinedViews.Of(check, words) switch
    {
        { Value: { } value } view => new Number(value, "mg/L") { U = view.U, Note = words.Paper("worked_out"), Beyond = Figure.Side(value, Censoring.None, _limits.Ends(Measurand.CombinedChlorine)) },
        { Remark.Text: var why } => new Dash { Note = why },
        _ => Blank.Cell,
    };

    private Cell Bottom(ManualCheck check) => check.BottomVisible is { } seen ? new Text(words.Paper(seen ? "yes" : "no")) : Blank.Cell;

    private static Cell Bathers(ManualCheck check) => check.Bathers is { } bathers ? new Number(bathers, "") : Blank.Cell;

    private string Remarks(StandingTest test) => PaperWords.Joined("; ",
        [test.Check.Note, .. test.Entry.Remarks.Select(r => words.Paper("doubted", words.Say(r).Text)),
            test.Before.Count == 0 ? null : words.Paper("corrected_by", test.Check.Who, source.Span.Say(test.Entry.ArrivedAt), test.Check.CorrectionReason ?? words.Paper("no_reason"))]);

    private List<Cell> NotTested(DutyRound round, Measurand[] measured)
    {
        var closed = OperationAt.Of(source, pool.Id, round.DueAt) is { MayBatheIn: false } operation ? operation : default;
        var why = closed.State == OperatingState.NotStated ? words.Paper("not_tested") : words.Paper("not_tested_closed", words.Find($"entry.pool_{Wording.Key(closed.State)}"));
        List<Cell> cells = [new When(round.DueAt) { Note = words.Paper("due") }, new Dash()];
        cells.AddRange(measured.Select(m => Asked(round, m)));
        if (HasCombined) cells.Add(Asked(round, Measurand.CombinedChlorine));
        cells.AddRange([Blank.Cell, Blank.Cell, new Text(why)]);
        return cells;
    }

    private static Cell Asked(DutyRound round, Measurand measurand) => round.What.Contains(measurand) ? Dash.Cell : Blank.Cell;
}
