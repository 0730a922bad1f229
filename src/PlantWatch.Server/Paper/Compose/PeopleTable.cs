using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Live;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>Who the plant file names and what each answers for, and who signed within the span; whoever signed and is not named is listed as that.</summary>
internal static class PeopleTable
{
    /// <summary>The table.</summary>
    public static Table Of(IReadOnlyList<SheetSource> sources, Wording words)
    {
        var people = sources.Count == 0 ? [] : sources[0].Plan.People;
        var signed = sources.SelectMany(s => s.Rows.Select(r => By(s, r, words))).OfType<string>().Select(n => n.Trim()).GroupBy(n => n, StringComparer.OrdinalIgnoreCase).ToDictionary(g => g.Key, g => g.Count(), StringComparer.OrdinalIgnoreCase);
        var named = people.Select(p => Row(p.Name, words.PaperWord("role", p.Role), Rights(p, words), signed.GetValueOrDefault(p.Name), words));
        var strangers = signed.Keys.Where(n => people.Named(n) is null).Order(StringComparer.OrdinalIgnoreCase).Select(n => Row(n, null, words.Paper("not_in_plant_file"), signed[n], words));
        return new(words.Paper("people_caption"), Columns(words), [.. named.Concat(strangers)], words.Paper("people_none"));
    }

    private static Column[] Columns(Wording words) => [new(words.Paper("name")), new(words.Paper("answers_as")), new(words.Paper("may"), Wide: true), new(words.Paper("signed"), ColumnKind.Number, "")];

    private static Cell[] Row(string name, string? role, string rights, int signed, Wording words) => [new Text(name), role is null ? Dash.Cell : new Text(role), new Text(rights), new Number(signed, "")];

    private static string Rights(PersonPlan person, Wording words) => PaperWords.And(
        words.Paper("may_test"), person.MayReopen ? words.Paper("may_reopen") : null, person.MaySetLimits ? words.Paper("may_set_limits") : null, person.MayEditStops ? words.Paper("may_edit_stops") : null);

    private static string? By(SheetSource source, RecordEntry row, Wording words) => row.Body is AlarmEntry alarm ? alarm.By : EntryViews.Of(source.Plan, row, words)?.By;
}
