using System.Globalization;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>A pool day by day: how often it was tested and missed, least, mean and most of what is tested daily, and how many breaches began.</summary>
internal sealed class MonthTable(SheetDraft draft, SheetSource source, PoolPlan pool)
{
    private static readonly string[] Ends = ["least", "mean", "most"], EndsAlone = ["least_of", "mean_of", "most_of"];
    private readonly Wording _words = draft.Words;
    private readonly IReadOnlyList<StandingTest> _tests = Tests.Of(source, pool.Id);
    private readonly LimitsInForce _limits = source.State.Pools.FirstOrDefault(p => p.Id == pool.Id)?.Limits ?? LimitsInForce.None;
    private readonly Measurand[] _daily = pool.Disinfectant == Disinfectant.Bromine
        ? [Measurand.Bromine, Measurand.Ph, Measurand.Temperature] : [Measurand.FreeChlorine, Measurand.CombinedChlorine, Measurand.Ph, Measurand.Temperature];

    /// <summary>A line a day.</summary>
    public Table Days()
    {
        var missed = new TestTable(source, pool, draft.Now, _words).Owed.ToArray();
        var lines = new ExceptionRows(source, draft.Now, _words).Lines().Where(l => l.PoolId == pool.Id).ToArray();
        List<Column> columns = [new(_words.Paper("day")), new(_words.Paper("tests"), ColumnKind.Number, ""), new(_words.Paper("missed"), ColumnKind.Number, ""), new(_words.Paper("breaches"), ColumnKind.Number, "")];
        columns.AddRange(_daily.SelectMany(m => Ends.Select(end => new Column(_words.Paper(end, _words.Heading(m)), ColumnKind.Number, m.Unit()))));
        return new(_words.Paper("days_caption", pool.Name), columns, [.. Enumerable.Range(0, draft.Span.Days).Where(Begun).Select(Row)], _words.Paper("days_none"));

        IReadOnlyList<Cell> Row(int day)
        {
            var tests = _tests.Where(t => Of(day, t.Check.SampledAt)).ToArray();
            return
            [
                new Text(Iso(day)), new Number(tests.Length, ""), new Number(missed.Count(r => Of(day, r.DueAt)), ""), new Number(lines.Count(l => Of(day, l.Reading.At)), ""),
                .. _daily.SelectMany(m => DayFigures.Of(tests, m, _words).Cells(_limits.Ends(m))),
            ];
        }
    }

    /// <summary>What is tested now and then, a line a quantity.</summary>
    public Table Others()
    {
        var others = _tests.SelectMany(t => t.Check.Results).Select(r => r.Measurand).Distinct().Except(_daily).Order();
        return new(_words.Paper("others_caption", pool.Name),
            [new(_words.Paper("quantity")), new(_words.Paper("tests"), ColumnKind.Number, ""), .. EndsAlone.Select(end => new Column(_words.Paper(end), ColumnKind.Number))],
            [.. others.Select(Row)], _words.Paper("others_none"));

        IReadOnlyList<Cell> Row(Measurand measurand)
        {
            var figures = DayFigures.Of(_tests, measurand, _words);
            return [new Text(_words.Heading(measurand)), new Number(figures.Results.Count, ""), .. figures.Cells(_limits.Ends(measurand))];
        }
    }

    private bool Begun(int day) => draft.Span.Starts[day] <= draft.Now;

    private bool Of(int day, Instant at) => at >= draft.Span.Starts[day] && at < draft.Span.Starts[day + 1];

    private string Iso(int day) => draft.Span.First.AddDays(day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
