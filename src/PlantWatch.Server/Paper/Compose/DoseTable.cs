using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>The doses that people gave to a pool, with what a retest said of them.</summary>
internal sealed class DoseTable(SheetSource source, PoolPlan pool, Wording words)
{
    private readonly DoseEntry[] _all = [.. source.Wide.Select(r => r.Body).OfType<DoseEntry>()];
    private readonly ILookup<Guid, DoseResponse> _responses = source.Wide.Select(r => r.Body).OfType<DoseResponseEntry>().Select(r => r.Response).ToLookup(r => r.DoseId);

    /// <summary>The table.</summary>
    public Table Make()
    {
        var corrected = _all.Select(d => d.Dose.Corrects).OfType<Guid>().ToHashSet();
        var rows = _all.Where(d => d.Dose.PoolId == pool.Id && source.Span.Holds(d.Dose.GivenAt) && !corrected.Contains(d.Dose.Id)).OrderBy(d => d.Dose.GivenAt).Select(Row);
        return new(words.Paper("doses_caption", pool.Name), Columns(), [.. rows], words.Paper("doses_none"));
    }

    private Column[] Columns() =>
    [
        new(words.Paper("given_at"), ColumnKind.Time), new(words.Paper("product")), new(words.Paper("amount"), ColumnKind.Number, "kg"), new(words.Paper("strength"), ColumnKind.Number, "%"),
        new(words.Paper("by")), new(words.Paper("answer"), Wide: true), new(words.Paper("remarks"), Wide: true),
    ];

    private Cell[] Row(DoseEntry entry)
    {
        var (dose, was) = (entry.Dose, Before(entry.Dose));
        Cell Over(Func<GivenDose, Cell> of) => was is null ? of(dose) : Figure.After(of(was), of(dose));
        return
        [
            Over(d => new When(d.GivenAt)), Over(d => new Text(d.Product)), Over(d => new Number(d.Kilograms, "kg")), Over(d => d.Strength > 0 ? new Number(100 * d.Strength, "%") : Blank.Cell),
            Over(d => new Text(d.By)), new Text(Answer(dose)), new Text(Remarks(entry)),
        ];
    }

    private GivenDose? Before(GivenDose dose) => dose.Corrects is { } wrong ? _all.FirstOrDefault(d => d.Dose.Id == wrong)?.Dose : null;

    private string Answer(GivenDose dose) =>
        string.Join("; ", _responses[dose.Id].SelectMany(r => r.Figures).Select(f => words.Text(f.Saying())));

    private string Remarks(DoseEntry entry) => PaperWords.Joined("; ", entry.Dose.Note,
        entry.Dose.Corrects is null ? null : words.Paper("corrected_by", entry.Dose.By, source.Span.Say(entry.ArrivedAt), entry.Dose.CorrectionReason ?? words.Paper("no_reason")));
}
